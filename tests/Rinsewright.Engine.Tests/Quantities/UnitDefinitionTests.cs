using Rinsewright.Engine.Quantities;

namespace Rinsewright.Engine.Tests.Quantities;

/// <summary>Factors against literals from named sources; none is computed by the code under test.</summary>
public sealed class UnitDefinitionTests
{
    [Theory]
    // NIST Special Publication 811 (2008), Appendix B.8, to the digits printed there.
    [InlineData("[psi]", 6894.757, 1e-3)]
    [InlineData("[psi]{abs}", 6894.757, 1e-3)]
    [InlineData("[in_i]", 0.0254, 0)]
    [InlineData("[ft_i]", 0.3048, 0)]
    [InlineData("[sin_i]", 6.4516e-4, 0)]
    [InlineData("[sft_i]", 0.09290304, 0)]
    [InlineData("[gal_us]", 3.785412e-3, 5e-10)]
    [InlineData("[foz_us]", 2.957353e-5, 5e-12)]
    [InlineData("[gal_us]/min", 6.309020e-5, 5e-12)]
    [InlineData("[lb_av]", 0.45359237, 0)]
    [InlineData("[oz_av]", 2.834952e-2, 5e-9)]
    [InlineData("[Btu_IT]", 1055.05585262, 0)]
    [InlineData("[Btu_IT]/h", 0.2930711, 5e-8)]
    [InlineData("[HP]", 745.6999, 5e-5)]
    [InlineData("kW.h", 3.6e6, 0)]
    [InlineData("[ft_i]/min", 5.08e-3, 1e-18)]
    [InlineData("[oz_av]/[gal_us]", 7.489152, 5e-7)]
    // SI itself.
    [InlineData("W/K", 1, 0)]
    // 1 gpg = 17.118 mg/L and 1 °dH = 17.848 mg/L as CaCO3: USGS and WQA hardness classes, as tabulated in the literature.
    [InlineData("[gr]/[gal_us]", 0.017118, 5e-7)]
    [InlineData("{dH}", 0.017848, 1e-15)]
    // 1 °f = 10 mg/L as CaCO3: definition of the French degree.
    [InlineData("{fH}", 0.010, 1e-15)]
    // Molar mass of CaCO3 100.087 g/mol, two equivalents to the mole.
    [InlineData("mmol/L{CaCO3}", 0.100087, 1e-15)]
    [InlineData("meq/L", 0.0500435, 1e-15)]
    // One normal is one equivalent in a litre, a thousand in a cubic metre: definition.
    [InlineData("eq/L", 1000, 0)]
    public void One_unit_in_SI_is_what_the_source_prints(string ucum, double si, double tolerance) =>
        Assert.InRange(Units.Find(ucum)!.ToSI(1), si - tolerance, si + tolerance);

    [Theory]
    // Exact by definition of the scales (BIPM SI brochure for °C; NIST SP 811 for °F); the pairs are the fixed points and the food code's own.
    [InlineData(32, 0)]
    [InlineData(212, 100)]
    [InlineData(-40, -40)]
    [InlineData(-459.67, -273.15)]
    [InlineData(176, 80)]
    [InlineData(194, 90)]
    public void Fahrenheit_and_Celsius_meet_at_the_fixed_points(double fahrenheit, double celsius)
    {
        Assert.Equal(celsius, Temperature.FromFahrenheit(fahrenheit).InCelsius, 1e-12);
        Assert.Equal(fahrenheit, Temperature.FromCelsius(celsius).InFahrenheit, 1e-12);
    }

    [Theory]
    // Rounded pairs as the FDA Food Code prints them are not equal temperatures: 71 °C is 159.8 °F, 82 °C is 179.6 °F, 77 °C is 170.6 °F.
    [InlineData(71, 159.8)]
    [InlineData(82, 179.6)]
    [InlineData(77, 170.6)]
    public void Printed_pairs_of_the_food_code_convert_exactly(double celsius, double fahrenheit) =>
        Assert.Equal(fahrenheit, Temperature.FromCelsius(celsius).InFahrenheit, 1e-9);

    [Fact]
    public void Every_code_is_found_and_stands_once()
    {
        Assert.Equal(Units.All.Count, Units.All.Select(u => u.Ucum).Distinct(StringComparer.Ordinal).Count());
        Assert.All(Units.All, u => Assert.Same(u, Units.Find(u.Ucum)));
        Assert.Null(Units.Find("cel"));
        Assert.Null(Units.Find(""));
    }

    [Fact]
    public void No_spelling_means_two_units_of_one_dimension()
    {
        // A unit may spell itself twice; two units may not share a spelling. Upper and lower case of codes are told apart exactly.
        var clashes = Units
            .All.SelectMany(u =>
                ((string[])[u.Symbol, .. u.Spellings]).Select(s =>
                    (u.Dimension, Plain: s.Replace(" ", "", StringComparison.Ordinal).ToLowerInvariant(), u.Ucum)
                )
            )
            .Distinct()
            .GroupBy(s => (s.Dimension, s.Plain))
            .Where(g => g.Count() > 1);
        Assert.Empty(clashes);
    }
}
