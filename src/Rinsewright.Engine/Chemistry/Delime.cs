using Rinsewright.Engine.Quantities;

namespace Rinsewright.Engine.Chemistry;

/// <summary>An acid that dissolves lime.</summary>
public enum LimeAcid
{
    /// <summary>Phosphoric, to the soluble salt.</summary>
    Phosphoric,

    /// <summary>Citric, one mol for each mol of lime, so that the salt stays dissolved.</summary>
    Citric,

    /// <summary>Sulfamic. Slowly turns to sulfate above about 60 °C.</summary>
    Sulfamic,

    /// <summary>Glycolic.</summary>
    Glycolic,

    /// <summary>Methanesulfonic.</summary>
    Methanesulfonic,

    /// <summary>Lactic.</summary>
    Lactic,
}

/// <summary>What a mass of lime takes.</summary>
/// <param name="Acid">Pure acid.</param>
/// <param name="Product">Product that holds it, with the excess.</param>
/// <param name="Gas">Carbon dioxide set free, at 25 °C and one atmosphere: ventilate.</param>
public sealed record DelimeDose(Mass Acid, Volume Product, Volume Gas);

/// <summary>
/// Acid for lime. Equations C40 to C42: CaCO₃ + 2 H⁺ → Ca²⁺ + H₂O + CO₂. Hydrochloric acid is left out: it pits stainless steel. The product's label rules; these are stoichiometry.
/// </summary>
public static class Delime
{
    private const double LimeMolarMass = 100.087;
    private const double GasLitrePerGram = 0.2445; // 24.47 L/mol at 25 °C

    /// <summary>Grams of pure acid for a gram of lime.</summary>
    public static double PerGram(LimeAcid acid) =>
        acid switch
        {
            LimeAcid.Phosphoric => 2 * 97.995 / LimeMolarMass,
            LimeAcid.Citric => 192.12 / LimeMolarMass,
            LimeAcid.Sulfamic => 2 * 97.09 / LimeMolarMass,
            LimeAcid.Glycolic => 2 * 76.05 / LimeMolarMass,
            LimeAcid.Methanesulfonic => 2 * 96.11 / LimeMolarMass,
            LimeAcid.Lactic => 2 * 90.08 / LimeMolarMass,
            _ => throw new ArgumentOutOfRangeException(nameof(acid)),
        };

    /// <summary>Dose for a mass of lime.</summary>
    /// <param name="lime">Scale, as calcium carbonate.</param>
    /// <param name="acid">Acid of the product.</param>
    /// <param name="byWeight">Acid in the product, above 0.</param>
    /// <param name="density">Of the product.</param>
    /// <param name="excess">More than stoichiometry asks for: 30 to 50 % is usual (from memory).</param>
    public static DelimeDose Dose(Mass lime, LimeAcid acid, Ratio byWeight, MassConcentration density, Ratio excess)
    {
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(byWeight.InFraction, nameof(byWeight));
        var pure = PerGram(acid) * lime;
        var product = pure * (1 + excess.InFraction) / (density * byWeight.InFraction);
        return new DelimeDose(pure, product, Volume.FromLitre(GasLitrePerGram * lime.InGram));
    }

    /// <summary>Acid in a bath by titration with caustic to phenolphthalein. Equation C42. Phosphoric gives two of its three protons there.</summary>
    /// <param name="caustic">Used up.</param>
    /// <param name="normality">Of the caustic, eq/L.</param>
    /// <param name="sample">Sample.</param>
    /// <param name="acid">Acid in the bath.</param>
    public static MassConcentration Strength(Volume caustic, double normality, Volume sample, LimeAcid acid)
    {
        var perEquivalent = acid switch
        {
            LimeAcid.Phosphoric => 97.995 / 2,
            LimeAcid.Citric => 192.12 / 3,
            LimeAcid.Sulfamic => 97.09,
            LimeAcid.Glycolic => 76.05,
            LimeAcid.Methanesulfonic => 96.11,
            LimeAcid.Lactic => 90.08,
            _ => throw new ArgumentOutOfRangeException(nameof(acid)),
        };
        return MassConcentration.FromGramPerLitre(perEquivalent * caustic.InLitre * normality / sample.InLitre);
    }
}

/// <summary>What must be known before acid goes in. Each is a plain yes; not known is not yes.</summary>
/// <param name="ChlorineFeedOff">Every chlorine feed (sanitizer, chlorinated detergent) is off and its line pulled.</param>
/// <param name="Drained">The tank that held chlorine is drained and rinsed.</param>
/// <param name="NoChlorineFound">A strip or titration of the water in the tank shows no chlorine.</param>
public sealed record DelimeGate(bool? ChlorineFeedOff, bool? Drained, bool? NoChlorineFound)
{
    /// <summary>Whether acid may go in: all three are known and so. Acid on chlorine sets chlorine gas free.</summary>
    public bool Open => ChlorineFeedOff == true && Drained == true && NoChlorineFound == true;
}
