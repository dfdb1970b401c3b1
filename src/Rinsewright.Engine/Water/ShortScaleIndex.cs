using Rinsewright.Engine.Quantities;

namespace Rinsewright.Engine.Water;

/// <summary>
/// The saturation pH by four logarithms, as handbooks work it by hand. Equation W28. Its index is up to 0.19 off the equilibrium of <see cref="ScaleIndices"/>; it is here to check a
/// report that used it.
/// </summary>
/// <param name="Solids">A = (log₁₀ dissolved solids − 1) / 10.</param>
/// <param name="Warmth">B = 34.55 − 13.12 log₁₀(°C + 273).</param>
/// <param name="Calcium">C = log₁₀ calcium hardness − 0.4.</param>
/// <param name="Alkalinity">D = log₁₀ alkalinity.</param>
public readonly record struct ShortScaleIndex(double Solids, double Warmth, double Calcium, double Alkalinity)
{
    /// <summary>pH at which the water would be just saturated.</summary>
    public double SaturationPH => 9.3 + Solids + Warmth - Calcium - Alkalinity;

    /// <summary>Terms for a water at a temperature; all three amounts above 0.</summary>
    public static ShortScaleIndex Of(MassConcentration dissolved, Temperature at, Hardness calcium, Alkalinity alkalinity) =>
        new(
            (Math.Log10(dissolved.InMilligramPerLitre) - 1) / 10,
            34.55 - (13.12 * Math.Log10(at.InCelsius + 273)),
            Math.Log10(calcium.InMilligramPerLitre) - 0.4,
            Math.Log10(alkalinity.InMilligramPerLitre)
        );

    /// <summary>Saturation index of a water with this pH.</summary>
    public double At(Acidity pH) => pH.InPH - SaturationPH;
}
