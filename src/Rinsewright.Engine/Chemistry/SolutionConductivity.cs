using Rinsewright.Engine.Quantities;

namespace Rinsewright.Engine.Chemistry;

/// <summary>A dissolved substance whose conductivity is known.</summary>
public enum Electrolyte
{
    /// <summary>Caustic soda, NaOH.</summary>
    SodiumHydroxide,

    /// <summary>Caustic potash, KOH.</summary>
    PotassiumHydroxide,

    /// <summary>Soda ash, Na₂CO₃.</summary>
    SodiumCarbonate,

    /// <summary>Salt, NaCl.</summary>
    SodiumChloride,

    /// <summary>Bicarbonate, NaHCO₃.</summary>
    SodiumBicarbonate,

    /// <summary>Calcium chloride, CaCl₂.</summary>
    CalciumChloride,
}

/// <summary>
/// Conductivity of one substance in water. Equation C10: Λ = Λ₀(t) − A(t) √m / (1 + B √m), 5 to 90 °C [mccleskey-2011]; caustic potash by Kohlrausch and Onsager at 25 °C with the
/// temperature ratio of caustic soda (constants from memory). Below 1 g/L molality counts as molarity.
/// </summary>
public static class SolutionConductivity
{
    private readonly record struct Row(double MolarMass, double C1, double C2, double C3, double D1, double D2, double D3, double B);

    /// <summary>Conductivity of so much of it at a temperature, 5 to 90 °C.</summary>
    public static Conductivity Of(Electrolyte electrolyte, MassConcentration strength, Temperature at)
    {
        if (electrolyte == Electrolyte.PotassiumHydroxide)
        {
            var c = strength.InGramPerLitre / 56.105;
            var soda = Electrolyte.SodiumHydroxide;
            var ratio = Molar(soda, c, at.InCelsius) / Molar(soda, c, 25);
            const double Lambda0 = 271.5;
            var lambda = Lambda0 - ((60.2 + (0.229 * Lambda0)) * Math.Sqrt(c));
            return Conductivity.FromMillisiemensPerCentimetre(lambda * c * ratio);
        }

        var moles = strength.InGramPerLitre / RowOf(electrolyte).MolarMass;
        return Conductivity.FromMillisiemensPerCentimetre(Molar(electrolyte, moles, at.InCelsius) * moles);
    }

    /// <summary>
    /// Conductivity of a citric acid bath at 20 °C: only the first proton comes off to speak of. Equation C12: x²/(c − x) = K₁, κ = x (Λ(H⁺) + Λ(HCit⁻)), activities left out.
    /// K₁ and the conductances at 20 °C are from memory. From 8 to 25 g/L it agrees with the handbook's table within 4 %.
    /// </summary>
    /// <param name="strength">Of pure citric acid, above 0.</param>
    public static Conductivity Citric(MassConcentration strength)
    {
        const double MolarMass = 192.12;
        const double FirstConstant = 7.2e-4; // mol/L
        const double Conductance = 325 + 27; // S cm²/mol: hydrogen ion and dihydrogen citrate
        var c = strength.InGramPerLitre / MolarMass;
        var split = (Math.Sqrt((FirstConstant * FirstConstant) + (4 * FirstConstant * c)) - FirstConstant) / 2;
        return Conductivity.FromMillisiemensPerCentimetre(split * Conductance);
    }

    /// <summary>Mean rise of conductivity per kelvin from 25 °C to a temperature, as a share of that at 25 °C. 1.8 % for a caustic tank at 40 to 70 °C; the customary 2 % reads it 4 to 5 % low.</summary>
    public static double TemperatureFactor(Electrolyte electrolyte, MassConcentration strength, Temperature at) =>
        (
            (
                Of(electrolyte, strength, at).InMillisiemensPerCentimetre
                / Of(electrolyte, strength, Temperature.FromCelsius(25)).InMillisiemensPerCentimetre
            ) - 1
        ) / (at.InCelsius - 25);

    /// <summary>Reading referred to 25 °C: κ/(1 + α (t − 25)). Equation C11.</summary>
    /// <param name="reading">At <paramref name="at"/>, not compensated by the meter.</param>
    /// <param name="at">Temperature of the solution.</param>
    /// <param name="factor">α, per kelvin: 0.018 for a wash tank, 0.02 for supply water.</param>
    public static Conductivity At25(Conductivity reading, Temperature at, double factor) =>
        Conductivity.FromMicrosiemensPerCentimetre(reading.InMicrosiemensPerCentimetre / (1 + (factor * (at.InCelsius - 25))));

    // S cm²/mol, at a molarity.
    private static double Molar(Electrolyte electrolyte, double moles, double t)
    {
        var r = RowOf(electrolyte);
        var root = Math.Sqrt(moles);
        return (((r.C1 * t) + r.C2) * t) + r.C3 - (((((r.D1 * t) + r.D2) * t) + r.D3) * root / (1 + (r.B * root)));
    }

    // Coefficients as an open library tabulates them. That table lists a multiplier of 2 for soda ash; its row is molar already and takes 1 (handbook rows at 20 °C agree).
    private static Row RowOf(Electrolyte electrolyte) =>
        electrolyte switch
        {
            Electrolyte.SodiumHydroxide => new Row(39.997, 0.006936, 3.872, 148.3, 0.01018, 0.67421, 56.76, 0.2),
            Electrolyte.SodiumCarbonate => new Row(105.988, 0.02296, 5.211, 147, 0.05707, 22.22, 455.8, 4.8),
            Electrolyte.SodiumChloride => new Row(58.443, 0.008967, 2.196, 67.03, 0.00726, 1.762, 44.55, 1.3),
            Electrolyte.SodiumBicarbonate => new Row(84.007, 0.0126, 1.543, 52.09, 0.02793, 0.4556, 52.94, 1.1),
            // Tabulated for each equivalent, of which a mol has two.
            Electrolyte.CalciumChloride => new Row(110.984, 2 * 0.01124, 2 * 2.224, 2 * 72.36, 2 * 0.03918, 2 * 3.905, 2 * 137.7, 3.8),
            _ => throw new ArgumentOutOfRangeException(nameof(electrolyte), electrolyte, "No row of its own."),
        };
}
