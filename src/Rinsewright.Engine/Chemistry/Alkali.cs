using Rinsewright.Engine.Quantities;

namespace Rinsewright.Engine.Chemistry;

/// <summary>Alkalinity in the other ways it is stated, and what it says of a product. Equations C2 and C4.</summary>
public static class Alkali
{
    /// <summary>Grams of Na₂O in an equivalent.</summary>
    public const double SodiumOxidePerEquivalent = 30.9895;

    private const double SodiumHydroxidePerEquivalent = 39.997;

    /// <summary>As sodium oxide, the way active alkali of products is stated.</summary>
    public static MassConcentration AsSodiumOxide(Alkalinity alkalinity) =>
        MassConcentration.FromMilligramPerLitre(SodiumOxidePerEquivalent * alkalinity.InMilliequivalentPerLitre);

    /// <summary>As caustic soda.</summary>
    public static MassConcentration AsSodiumHydroxide(Alkalinity alkalinity) =>
        MassConcentration.FromMilligramPerLitre(SodiumHydroxidePerEquivalent * alkalinity.InMilliequivalentPerLitre);

    /// <summary>Product in a solution from its alkalinity.</summary>
    /// <param name="alkalinity">Of the solution less that of the tap water, at one end point.</param>
    /// <param name="active">Active alkali of the product as Na₂O at the same end point, above 0; from its data sheet.</param>
    /// <exception cref="ArgumentOutOfRangeException">No active alkali: then alkalinity says nothing of the product.</exception>
    public static MassConcentration Product(Alkalinity alkalinity, Ratio active)
    {
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(active.InFraction, nameof(active));
        return AsSodiumOxide(alkalinity) / active.InFraction;
    }

    /// <summary>
    /// Alkalinity of the product alone. At P the tap water hardly counts (its bicarbonate is not seen; its carbon dioxide takes 0.05 to 0.5 meq/L); at M all of the tap's alkalinity is
    /// taken off. Never below none. Equation C5.
    /// </summary>
    /// <param name="found">Of the tank.</param>
    /// <param name="tap">Of the water it was filled with, at M.</param>
    /// <param name="endPoint">End point of <paramref name="found"/>.</param>
    public static Alkalinity LessTap(Alkalinity found, Alkalinity tap, EndPoint endPoint) =>
        endPoint == EndPoint.P
            ? found
            : Alkalinity.FromMilliequivalentPerLitre(Math.Max(0, found.InMilliequivalentPerLitre - tap.InMilliequivalentPerLitre));
}

/// <summary>What the alkalinity of a solution is made of, from both end points. Equation C6, the five classical cases [sm-2320].</summary>
/// <param name="Hydroxide">Caustic.</param>
/// <param name="Carbonate">Carbonate.</param>
/// <param name="Bicarbonate">Bicarbonate.</param>
public sealed record AlkalinitySplit(Alkalinity Hydroxide, Alkalinity Carbonate, Alkalinity Bicarbonate)
{
    /// <summary>Split of a solution with these alkalinities; null where P is more than M, which cannot be: one of the two titrations is wrong.</summary>
    public static AlkalinitySplit? Of(Alkalinity p, Alkalinity m)
    {
        var (a, b) = (p.InMilliequivalentPerLitre, m.InMilliequivalentPerLitre);
        if (a > b)
        {
            return null;
        }

        var (hydroxide, carbonate, bicarbonate) = 2 * a > b ? ((2 * a) - b, 2 * (b - a), 0.0) : (0.0, 2 * a, b - (2 * a));
        return new AlkalinitySplit(
            Alkalinity.FromMilliequivalentPerLitre(hydroxide),
            Alkalinity.FromMilliequivalentPerLitre(carbonate),
            Alkalinity.FromMilliequivalentPerLitre(bicarbonate)
        );
    }
}

/// <summary>What a change of P and M between two titrations of one tank points to. Equation C7.</summary>
public enum AlkalinityTrend
{
    /// <summary>No more change than the titration can tell.</summary>
    Steady,

    /// <summary>Both fall in the same proportion: rinse water dilutes it, or the feeder gives too little.</summary>
    Diluted,

    /// <summary>P falls and M stays: carbon dioxide taken up, an aged tank.</summary>
    Carbonated,

    /// <summary>P falls much, M less: soil uses the alkali up.</summary>
    UsedBySoil,

    /// <summary>M falls twice as much as P: carbonate falls out as scale.</summary>
    Scaling,

    /// <summary>Both rise.</summary>
    Stronger,
}

/// <summary>Compares two titrations of one tank.</summary>
public static class AlkalinityTrends
{
    /// <summary>What the change says; steady where neither moved by more than <paramref name="tells"/>.</summary>
    /// <param name="p0">P before.</param>
    /// <param name="m0">M before, less the tap water.</param>
    /// <param name="p1">P after.</param>
    /// <param name="m1">M after, less the tap water.</param>
    /// <param name="tells">Smallest difference the titration tells: one drop.</param>
    public static AlkalinityTrend Of(Alkalinity p0, Alkalinity m0, Alkalinity p1, Alkalinity m1, Alkalinity tells)
    {
        var dp = p1.InMilliequivalentPerLitre - p0.InMilliequivalentPerLitre;
        var dm = m1.InMilliequivalentPerLitre - m0.InMilliequivalentPerLitre;
        var step = tells.InMilliequivalentPerLitre;
        if (Math.Abs(dp) <= step && Math.Abs(dm) <= step)
        {
            return AlkalinityTrend.Steady;
        }

        if (dp >= -step && dm >= -step)
        {
            return AlkalinityTrend.Stronger;
        }

        if (Math.Abs(dm) <= step)
        {
            return AlkalinityTrend.Carbonated;
        }

        // A straight dilution keeps P/M; one drop of doubt on each side of that.
        var diluted = p0.InMilliequivalentPerLitre * m1.InMilliequivalentPerLitre / m0.InMilliequivalentPerLitre;
        var off = p1.InMilliequivalentPerLitre - diluted;
        return Math.Abs(off) <= step ? AlkalinityTrend.Diluted
            : off < 0 ? AlkalinityTrend.UsedBySoil
            : AlkalinityTrend.Scaling;
    }
}
