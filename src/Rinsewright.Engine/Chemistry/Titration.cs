using Rinsewright.Engine.Quantities;

namespace Rinsewright.Engine.Chemistry;

/// <summary>Colour change at which a titration of alkalinity stops.</summary>
public enum EndPoint
{
    /// <summary>Phenolphthalein, pH 8.3: caustic and half the carbonate.</summary>
    P,

    /// <summary>Total, pH 4.3 to 4.5: caustic, all carbonate and bicarbonate.</summary>
    M,
}

/// <summary>
/// A drop or burette titration of alkalinity with acid. Equation C1 of this folder's README: meq/L = volume · normality / sample. One drop is the resolution: the band is half a drop
/// either way and is part of the answer.
/// </summary>
/// <param name="Titrant">Acid used up.</param>
/// <param name="Step">Smallest amount that can be told: one drop, or a mark of the burette.</param>
/// <param name="Normality">Of the acid, eq/L, above 0.</param>
/// <param name="Sample">Sample, above 0.</param>
public sealed record Titration(Volume Titrant, Volume Step, double Normality, Volume Sample)
{
    /// <summary>Titration by drops.</summary>
    /// <param name="drops">Counted, 0 or more.</param>
    /// <param name="drop">Volume of one: 0.05 mL is usual (from memory); count the drops in 1 mL to know.</param>
    /// <param name="normality">Of the acid, eq/L.</param>
    /// <param name="sample">Sample.</param>
    /// <exception cref="ArgumentOutOfRangeException">A count below 0, or a volume or normality that is not above 0.</exception>
    public static Titration ByDrops(int drops, Volume drop, double normality, Volume sample)
    {
        ArgumentOutOfRangeException.ThrowIfNegative(drops);
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(drop.InLitre, nameof(drop));
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(normality);
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(sample.InLitre, nameof(sample));
        return new Titration(drops * drop, drop, normality, sample);
    }

    /// <summary>Alkalinity found.</summary>
    public Alkalinity Found => Of(Titrant);

    /// <summary>Half a step less, not below none.</summary>
    public Alkalinity Low => Of(Titrant > Step / 2 ? Titrant - (Step / 2) : default);

    /// <summary>Half a step more.</summary>
    public Alkalinity High => Of(Titrant + (Step / 2));

    /// <summary>What one step more would add.</summary>
    public Alkalinity OneStep => Of(Step);

    /// <summary>
    /// Normality that makes so many drops stand for a strength of product. Equation C3: N = strength · active / (31.0 g/eq · drops · drop / sample).
    /// </summary>
    /// <param name="drops">Drops that are to stand for <paramref name="strength"/>.</param>
    /// <param name="strength">Product in the solution.</param>
    /// <param name="active">Active alkali of the product as Na₂O, at the end point that is used.</param>
    /// <param name="drop">Volume of one drop.</param>
    /// <param name="sample">Sample.</param>
    public static double NormalityFor(double drops, MassConcentration strength, Ratio active, Volume drop, Volume sample) =>
        strength.InGramPerLitre * active.InFraction * sample.InLitre / (Alkali.SodiumOxidePerEquivalent * drops * drop.InLitre);

    private Alkalinity Of(Volume acid) => Alkalinity.FromMilliequivalentPerLitre(1000 * acid.InLitre * Normality / Sample.InLitre);
}
