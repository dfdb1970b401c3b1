using Rinsewright.Engine.Quantities;

namespace Rinsewright.Engine.Water;

/// <summary>What a softener has to do.</summary>
/// <param name="Daily">Hardness to be taken out in a day.</param>
/// <param name="Capacity">Hardness the resin takes between two regenerations.</param>
/// <param name="Interval">Time between regenerations.</param>
/// <param name="SaltEach">Salt for one regeneration.</param>
/// <param name="SodiumAdded">Sodium that softening adds to the water.</param>
public sealed record SoftenerPlan(Mass Daily, Mass Capacity, Duration Interval, Mass SaltEach, MassConcentration SodiumAdded);

/// <summary>An ion-exchange softener. Equations W60 to W63 of this folder's README.</summary>
/// <param name="Resin">Volume of resin.</param>
/// <param name="SaltPerResin">Salt for each regeneration, mass for each volume of resin: 6 to 15 lb/ft³.</param>
public sealed record Softener(Volume Resin, MassConcentration SaltPerResin)
{
    // Capacity of the resin against salt: lb/ft³ and grains/ft³, [softener-capacity].
    private static readonly (double Salt, double Grains)[] Table = [(6, 20000), (8, 24000), (10, 27000), (15, 30000)];

    // Each mg/L of iron or manganese counts as so many grains per gallon [softener-sizing]; others use 3 or 5.
    private const double GrainsPerIron = 2;

    // mg/L of sodium for each mg/L of hardness: 2 · 22.990 / 100.087.
    private const double SodiumPerHardness = 0.45940;
    private const double CubicFoot = 0.3048 * 0.3048 * 0.3048; // m³

    /// <summary>
    /// Capacity for hardness, by straight lines between the points of the table (6 lb/ft³ of salt: 20,000 grains; 8: 24,000; 10: 27,000; 15: 30,000).
    /// Null outside them: nobody has said.
    /// </summary>
    public Mass? Capacity()
    {
        var salt = SaltPerResin.InKilogramPerCubicMetre * CubicFoot / Mass.FromPound(1).InKilogram;
        for (var i = 1; i < Table.Length; i++)
        {
            var (a, b) = (Table[i - 1], Table[i]);
            // The ends count as inside for salt written to a tenth of a pound.
            if (salt >= a.Salt - 1e-9 && salt <= b.Salt + 1e-9)
            {
                var grains = a.Grains + ((b.Grains - a.Grains) * (salt - a.Salt) / (b.Salt - a.Salt));
                return Mass.FromGram(grains * 0.06479891 * Resin.InCubicMetre / CubicFoot);
            }
        }

        return null;
    }

    /// <summary>What it has to do for a water and a day's use, all of it softened. Null where <see cref="Capacity"/> is not known or nothing is used.</summary>
    /// <param name="hardness">Of the raw water.</param>
    /// <param name="iron">Iron and manganese in the raw water.</param>
    /// <param name="daily">Water a day.</param>
    public SoftenerPlan? Plan(Hardness hardness, MassConcentration iron, Volume daily)
    {
        var perLitre =
            hardness.InMilligramPerLitre + (GrainsPerIron * iron.InMilligramPerLitre * Hardness.FromGrainPerGallon(1).InMilligramPerLitre);
        var load = Mass.FromGram(perLitre * daily.InLitre / 1000);
        return Capacity() is { } capacity && load.InGram > 0
            ? new SoftenerPlan(
                load,
                capacity,
                Duration.FromSecond(86400 * (capacity / load).InFraction),
                SaltPerResin * Resin,
                MassConcentration.FromMilligramPerLitre(SodiumPerHardness * hardness.InMilligramPerLitre)
            )
            : null;
    }

    /// <summary>Share of the water that goes round the softener for a blend: (target − softened)/(raw − softened). Equation W62.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The target is not between softened and raw water.</exception>
    public static Ratio BypassFor(Hardness target, Hardness softened, Hardness raw) =>
        target >= softened && target <= raw && softened < raw
            ? Ratio.FromFraction(
                (target.InMilligramPerLitre - softened.InMilligramPerLitre) / (raw.InMilligramPerLitre - softened.InMilligramPerLitre)
            )
            : throw new ArgumentOutOfRangeException(nameof(target), target, "It must lie between softened and raw water.");
}
