using Rinsewright.Engine.Quantities;

namespace Rinsewright.Engine.Chemistry;

/// <summary>
/// Strength of bleach in the ways it is stated. Equation C30; molar masses 70.906 (chlorine) and 74.442 (hypochlorite). Trade percent is grams of available chlorine in 100 mL.
/// </summary>
/// <param name="Available">Available chlorine in the stock.</param>
/// <param name="Density">Of the stock: 1.08 at 5 to 6 %, 1.10 at 8 %, 1.16 to 1.20 at 12.5 to 15 %.</param>
public sealed record Bleach(MassConcentration Available, MassConcentration Density)
{
    private const double HypochloriteToChlorine = 74.442 / 70.906;

    /// <summary>Available chlorine, by weight.</summary>
    public Ratio ByWeight => Available / Density;

    /// <summary>Sodium hypochlorite, by weight: what most labels print.</summary>
    public Ratio HypochloriteByWeight => Ratio.FromFraction(ByWeight.InFraction * HypochloriteToChlorine);

    /// <summary>Trade percent.</summary>
    public Ratio Trade => Ratio.FromFraction(Available.InGramPerLitre / 1000);

    /// <summary>From sodium hypochlorite by weight.</summary>
    public static Bleach FromHypochlorite(Ratio byWeight, MassConcentration density) =>
        new(density * (byWeight.InFraction / HypochloriteToChlorine), density);

    /// <summary>From available chlorine by weight.</summary>
    public static Bleach FromAvailable(Ratio byWeight, MassConcentration density) => new(density * byWeight.InFraction, density);

    /// <summary>From trade percent.</summary>
    public static Bleach FromTrade(Ratio trade, MassConcentration density) =>
        new(MassConcentration.FromGramPerLitre(1000 * trade.InFraction), density);

    /// <summary>Available chlorine by titration with thiosulfate: mL · N · 35.453 / sample.</summary>
    public static MassConcentration ByThiosulfate(Volume titrant, double normality, Volume sample) =>
        MassConcentration.FromGramPerLitre(titrant.InLitre * normality * 35.453 / sample.InLitre);
}

/// <summary>How chlorine in water is split. Equations C31 to C33.</summary>
public static class Chlorine
{
    private const double KelvinAtZeroCelsius = 273.15;

    // [HOCl][H+][Cl-]/[Cl2] at 25 degC, from memory.
    private const double GasConstant25 = 4.5e-4;

    /// <summary>pKa of hypochlorous acid: 3000/T − 10.0686 + 0.0253 T ([morris-1966], coefficients from memory; they return its printed figures).</summary>
    public static double PKa(Temperature at)
    {
        var t = at.InCelsius + KelvinAtZeroCelsius;
        return (3000.00 / t) - 10.0686 + (0.0253 * t);
    }

    /// <summary>Share present as hypochlorous acid, the part that kills.</summary>
    public static Ratio HypochlorousShare(Acidity pH, Temperature at) => Ratio.FromFraction(1 / (1 + Math.Pow(10, pH.InPH - PKa(at))));

    /// <summary>
    /// Share of the free chlorine that is dissolved chlorine gas at 25 °C: why acid never meets chlorine. <paramref name="chloride"/> in mol/L.
    /// </summary>
    public static Ratio GasShare(Acidity pH, double chloride)
    {
        var hypochlorous = HypochlorousShare(pH, Temperature.FromCelsius(25)).InFraction;
        var gasToHypochlorous = Math.Pow(10, -pH.InPH) * chloride / GasConstant25;
        var gas = gasToHypochlorous * hypochlorous;
        return Ratio.FromFraction(gas / (1 + gas));
    }
}
