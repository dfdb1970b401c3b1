using Rinsewright.Engine.Quantities;

namespace Rinsewright.Engine.Chemistry;

/// <summary>How much soil the ware brings.</summary>
public enum SoilLoad
{
    /// <summary>Bar, cafe.</summary>
    Light,

    /// <summary>Plates of a restaurant.</summary>
    Normal,

    /// <summary>Bakery, pots.</summary>
    Heavy,
}

/// <summary>
/// Strength that is usual for a built alkaline detergent by soil and hardness. Table C46: common practice, from memory, no source; a start to work from where no label is at hand. The label rules.
/// </summary>
/// <param name="Low">Least usual.</param>
/// <param name="High">Most usual.</param>
public sealed record DetergentBand(MassConcentration Low, MassConcentration High)
{
    // Soft to 60, medium to 180, hard to 350 mg/L, above; g/L of product.
    private static readonly double[] Limits = [60, 180, 350];
    private static readonly (double Low, double High)[,] Usual =
    {
        { (0.6, 1.0), (1.0, 1.5), (1.2, 2.0), (0, 0) },
        { (0.8, 1.2), (1.2, 2.0), (1.8, 2.5), (2.5, 3.0) },
        { (1.2, 2.0), (2.0, 2.5), (2.5, 3.0), (3.0, 4.0) },
    };

    /// <summary>What is usual; null for light soil in water over 350 mg/L, which is softened first.</summary>
    public static DetergentBand? Of(SoilLoad soil, Hardness hardness)
    {
        var column = Limits.Count(l => hardness.InMilligramPerLitre > l);
        var (low, high) = Usual[(int)soil, column];
        return high == 0 ? null : new DetergentBand(MassConcentration.FromGramPerLitre(low), MassConcentration.FromGramPerLitre(high));
    }
}
