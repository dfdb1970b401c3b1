using Rinsewright.Engine.Quantities;
using Rinsewright.Engine.Water;

namespace Rinsewright.Engine.Tests.Water;

/// <summary>Carbonate constants, indices and precipitation: rows CHV034 to CHV059 of the check list.</summary>
public sealed class CarbonateVerification
{
    // Heated without loss: pH 7.6 at 15 degC, calcium 100 mg/L, alkalinity 220, solids 400.
    private static readonly WaterAnalysis Hard = Water(15, 7.6, 100 * 2.497, 220, 400);

    [Theory] // CHV034 to CHV037, computed; CHV038 and CHV039 print the same to two digits, from memory
    [InlineData(10, 6.463, 10.488, 8.410, 14.533, 0.4982)]
    [InlineData(25, 6.352, 10.329, 8.480, 13.995, 0.5108)]
    [InlineData(60, 6.290, 10.144, 8.759, 13.016, 0.5485)]
    [InlineData(85, 6.357, 10.129, 9.054, 12.506, 0.5833)]
    public void Constants(double celsius, double pk1, double pk2, double pks, double pkw, double a)
    {
        var c = new CarbonateConstants(celsius, 0.01);

        Assert.Equal(pk1, c.PK1, 0.001);
        Assert.Equal(pk2, c.PK2, 0.001);
        Assert.Equal(pks, c.PKs, 0.001);
        Assert.Equal(pkw, c.PKw, 0.001);
        Assert.Equal(a, c.DebyeHueckel, 0.0001);
    }

    [Fact] // CHV040, opened: intermediate values noted in a public implementation
    public void Activity()
    {
        var c = new CarbonateConstants(10, 2.5e-5 * 364);

        Relative.Equal(83.7725077, c.Dielectric, 1e-6);
        Relative.Equal(0.49818915, c.DebyeHueckel, 1e-6);
        Relative.Equal(0.04202545, c.PF, 1e-6);
        Relative.Equal(0.90776734, Math.Pow(10, -c.PF), 1e-6);
        Relative.Equal(0.67904447, Math.Pow(10, -4 * c.PF), 1e-6);
    }

    [Fact] // CHV041, opened
    public void Ionic_strength_of_solids_and_of_conductivity()
    {
        Assert.Equal(0.0100, Water(25, 8, 100, 100, 400).IonicStrength, 1e-12);
        var solids = WaterAnalysis.DissolvedFrom(Conductivity.FromMicrosiemensPerCentimetre(500));
        Assert.Equal(0.0080, 2.5e-5 * solids.InMilligramPerLitre, 1e-12);
    }

    [Theory] // CHV042 to CHV045: test file of an open drinking-water library (printed, with its tolerance), and computed to the digit
    [InlineData(8, 40, 200, 173, 16, 1, 16.51)]
    [InlineData(8, 40, 5, 56, -1.3, 0.1, -1.32)]
    [InlineData(6.9, 20, 5, 30, -4, 1, -4.46)]
    [InlineData(6.85, 32, 80, 90, -34, 1.5, -34.72)]
    public void Carbonate_that_can_fall_out(
        double pH,
        double calcium,
        double alkalinity,
        double solids,
        double printed,
        double within,
        double computed
    )
    {
        var found = ScaleIndices.Of(Water(25, pH, calcium * 2.497, alkalinity, solids), Temperature.FromCelsius(25)).Precipitable;

        Assert.Equal(printed, found.InMilligramPerLitre, within);
        Assert.Equal(computed, found.InMilligramPerLitre, 0.02);
    }

    [Fact] // CHV046: the library above prints 0.8 for this water because it counts an activity twice
    public void Saturation_of_the_first_of_them()
    {
        var found = ScaleIndices.Of(Water(25, 8, 40 * 2.497, 200, 173), Temperature.FromCelsius(25));

        Assert.Equal(0.592, found.Saturation, 0.01);
        Assert.Equal(8 - 0.592, found.PH.InPH - found.Saturation, 0.01);
    }

    [Theory] // CHV056 to CHV059, computed by another program
    [InlineData(15, 7.60, 0.42, 23.9)]
    [InlineData(25, 7.53, 0.50, 29.2)]
    [InlineData(40, 7.47, 0.64, 39.6)]
    [InlineData(55, 7.45, 0.81, 52.7)]
    [InlineData(70, 7.47, 1.00, 68.3)]
    [InlineData(85, 7.50, 1.21, 85.6)]
    public void Heated_without_loss(double celsius, double pH, double saturation, double precipitable)
    {
        var found = ScaleIndices.Of(Hard, Temperature.FromCelsius(celsius));

        Assert.Equal(pH, found.PH.InPH, 0.01);
        Assert.Equal(saturation, found.Saturation, 0.02);
        Assert.Equal(precipitable, found.Precipitable.InMilligramPerLitre, 0.5);
    }

    [Theory] // The same table, pH held
    [InlineData(25, 0.57, 6.47)]
    [InlineData(55, 0.95, 5.70)]
    [InlineData(82.2, 1.27, 5.06)]
    public void Heated_at_the_same_pH(double celsius, double saturation, double ryznar)
    {
        var found = ScaleIndices.Of(Hard, Temperature.FromCelsius(celsius), Heating.SamePH);

        Assert.Equal(saturation, found.Saturation, 0.02);
        Assert.Equal(ryznar, found.Ryznar, 0.03);
    }

    [Fact] // CHV049 and CHV050, opened: UFC 3-240-13FN examples B-1 and B-2; the equilibrium gives 6.89 and +1.31
    public void Handbook_example()
    {
        var at = Temperature.FromFahrenheit(120);
        var form = ShortScaleIndex.Of(
            MassConcentration.FromMilligramPerLitre(1000),
            at,
            Hardness.FromMilligramPerLitre(500),
            Alkalinity.FromMilligramPerLitre(100)
        );

        Assert.Equal(0.20, form.Solids, 0.005);
        Assert.Equal(2.30, form.Calcium, 0.005);
        Assert.Equal(2.00, form.Alkalinity, 0.005);
        // Its table prints 1.57 for the warmth; the logarithm it stands for gives 1.65 (the table differs by up to 0.12).
        Assert.Equal(1.57, form.Warmth, 0.12);
        Assert.Equal(6.77, form.SaturationPH, 0.12);
        Assert.Equal(1.43, form.At(Acidity.FromPH(8.2)), 0.12);

        var found = ScaleIndices.Of(Water(48.889, 8.2, 500, 100, 1000), at);
        Assert.Equal(1.31, found.Saturation, 0.01);
        // CHV051: 1.465 gives the 7.47 of its table B-7 at 100 mg/L; its text prints 1.485, a misprint.
        Assert.Equal(2 * (8.2 - found.Saturation) - 7.47, found.Puckorius, 0.005);
    }

    [Theory] // CHV047 and CHV048: the same water changes sign at the temperature of a final rinse; inputs, A and B opened
    [InlineData(25, 2.09, 8.231, -0.731)]
    [InlineData(82, 1.09, 7.234, 0.266)]
    public void Encyclopedia_example(double celsius, double warmth, double saturation, double index)
    {
        var form = ShortScaleIndex.Of(
            MassConcentration.FromMilligramPerLitre(320),
            Temperature.FromCelsius(celsius),
            Hardness.FromMilligramPerLitre(150),
            Alkalinity.FromMilligramPerLitre(34)
        );

        Assert.Equal(warmth, form.Warmth, 0.005);
        Assert.Equal(saturation, form.SaturationPH, 0.005);
        Assert.Equal(index, form.At(Acidity.FromPH(7.5)), 0.005);
    }

    [Fact] // CHV055: Davis, Table 7-5 prints 1.72 and 1.44 at I = 0.010; older constants, which run 0.05 to 0.24 higher
    public void Textbook_constant_is_higher_than_the_modern_one()
    {
        Assert.Equal(1.63, Constant(60), 0.01);
        Assert.Equal(1.39, Constant(80), 0.01);
        Assert.InRange(1.72 - Constant(60), 0.045, 0.245); // printed to two digits
        Assert.InRange(1.44 - Constant(80), 0.045, 0.245);
    }

    [Fact]
    public void Alkalinity_below_what_the_pH_needs_is_refused()
    {
        var water = Water(25, 11, 100, 20, 200);

        Assert.Contains(
            "read both again",
            Assert.Throws<InvalidOperationException>(() => water.Carbonates()).Message,
            StringComparison.Ordinal
        );
    }

    private static double Constant(double celsius)
    {
        var c = new CarbonateConstants(celsius, 0.010);
        return c.PK2 - c.PKs + (5 * c.PF);
    }

    private static WaterAnalysis Water(double celsius, double pH, double calciumAsCarbonate, double alkalinity, double solids) =>
        new(
            Temperature.FromCelsius(celsius),
            Acidity.FromPH(pH),
            Hardness.FromMilligramPerLitre(calciumAsCarbonate),
            Alkalinity.FromMilligramPerLitre(alkalinity),
            MassConcentration.FromMilligramPerLitre(solids)
        );

    [Fact] // CHV029, opened: the release on ionization gives 13.9066 at 300 K; the form that the indices are defined with (W21) is 0.027 above it
    public void Ionization_of_water_beside_the_release() => Assert.Equal(13.9066, new CarbonateConstants(26.85, 0).PKw, 0.03);

    [Theory] // CHV052 to CHV054, opened: problems of a pool operator course, index = pH + three factors from a table − 12.1. Factors: alkalinity log₁₀, calcium log₁₀ − 0.4; the
    // temperatures of 0.6, 0.7 and 0.8 (76, 84, 94 °F) from memory; 12.1 stands for few dissolved solids, here 400 mg/L. Each factor is rounded to 0.05: together 0.1.
    [InlineData(7.0, 1.7, 1.9, 76, -0.9)]
    [InlineData(7.6, 1.9, 2.1, 84, 0.2)]
    [InlineData(8.0, 2.2, 2.2, 94, 1.1)]
    public void Index_by_the_factors_of_a_pool(double pH, double alkalinity, double calcium, double fahrenheit, double expected)
    {
        var terms = ShortScaleIndex.Of(
            MassConcentration.FromMilligramPerLitre(400),
            Temperature.FromFahrenheit(fahrenheit),
            Hardness.FromMilligramPerLitre(Math.Pow(10, calcium + 0.4)),
            Alkalinity.FromMilligramPerLitre(Math.Pow(10, alkalinity))
        );

        Assert.Equal(expected, terms.At(Acidity.FromPH(pH)), 0.1);
    }
}
