using System.Globalization;
using CsCheck;
using Rinsewright.Engine.Quantities;

namespace Rinsewright.Engine.Tests.Quantities;

/// <summary>What people type, what comes of it, and what is refused with which reason. Under every culture alike.</summary>
public sealed class AmountTextTests
{
    /// <summary>Signs as in the United States, Germany, Mexico and Sweden (which writes U+2212), whatever cultures the machine has.</summary>
    public static readonly TheoryData<string, string, string> Cultures = new()
    {
        { ".", ",", "-" },
        { ",", ".", "-" },
        { ",", "\u00a0", "\u2212" },
        { "\u066b", "\u066c", "-" },
    };

    private static readonly (char, string)[] Signs = [('.', ","), (',', "."), (',', "\u202f"), ('.', "'"), ('.', "")];

    [Theory]
    [InlineData("71,4 °C", Dimension.Temperature, 71.4, "Cel")]
    [InlineData("71.4Cel", Dimension.Temperature, 71.4, "Cel")]
    [InlineData("71.4 c", Dimension.Temperature, 71.4, "Cel")]
    [InlineData("71,4 º C", Dimension.Temperature, 71.4, "Cel")]
    [InlineData("71.4 ℃", Dimension.Temperature, 71.4, "Cel")]
    [InlineData("160 F", Dimension.Temperature, 160, "[degF]")]
    [InlineData("160\u00a0°F", Dimension.Temperature, 160, "[degF]")]
    [InlineData("  160 [degF] ", Dimension.Temperature, 160, "[degF]")]
    [InlineData("160degF", Dimension.Temperature, 160, "[degF]")]
    [InlineData("−3 °C", Dimension.Temperature, -3, "Cel")]
    [InlineData("- 3 °C", Dimension.Temperature, -3, "Cel")]
    [InlineData("–3 °C", Dimension.Temperature, -3, "Cel")]
    [InlineData("+3 °C", Dimension.Temperature, 3, "Cel")]
    [InlineData(".5 °C", Dimension.Temperature, 0.5, "Cel")]
    [InlineData("0,125 L", Dimension.Volume, 0.125, "L")]
    [InlineData("3 °F", Dimension.TemperatureDifference, 3, "[degF]{diff}")]
    [InlineData("±0.9 F", Dimension.TemperatureDifference, 0.9, "[degF]{diff}")]
    [InlineData("+/- 0,5 K", Dimension.TemperatureDifference, 0.5, "K{diff}")]
    [InlineData("0.5 Cel", Dimension.TemperatureDifference, 0.5, "K{diff}")]
    [InlineData("20 psi", Dimension.GaugePressure, 20, "[psi]")]
    [InlineData("20 PSIG", Dimension.GaugePressure, 20, "[psi]")]
    [InlineData("138 kpa", Dimension.GaugePressure, 138, "kPa")]
    [InlineData("14.7 psia", Dimension.AbsolutePressure, 14.7, "[psi]{abs}")]
    [InlineData("101,3 kPa", Dimension.AbsolutePressure, 101.3, "kPa{abs}")]
    [InlineData("1 250 L", Dimension.Volume, 1250, "L")]
    [InlineData("1\u202f250,5 L", Dimension.Volume, 1250.5, "L")]
    [InlineData("1'250 L", Dimension.Volume, 1250, "L")]
    [InlineData("1,250.5 L", Dimension.Volume, 1250.5, "L")]
    [InlineData("1.250,5 L", Dimension.Volume, 1250.5, "L")]
    [InlineData("1,250,000 L", Dimension.Volume, 1250000, "L")]
    [InlineData("1.25e3 L", Dimension.Volume, 1250, "L")]
    [InlineData("12500 mL", Dimension.Volume, 12500, "mL")]
    [InlineData("0.89 gal", Dimension.Volume, 0.89, "[gal_us]")]
    [InlineData("4 fl. oz.", Dimension.Volume, 4, "[foz_us]")]
    [InlineData("4.8 gpm", Dimension.VolumeFlow, 4.8, "[gal_us]/min")]
    [InlineData("4.8 [gal_us]/min", Dimension.VolumeFlow, 4.8, "[gal_us]/min")]
    [InlineData("50 ppm", Dimension.MassConcentration, 50, "mg/L")]
    [InlineData("50 [ppm]", Dimension.MassConcentration, 50, "mg/L")]
    [InlineData("50 mg / l", Dimension.MassConcentration, 50, "mg/L")]
    [InlineData("10 gpg", Dimension.Hardness, 10, "[gr]/[gal_us]")]
    [InlineData("20 °dH", Dimension.Hardness, 20, "{dH}")]
    [InlineData("250 mg/L", Dimension.Hardness, 250, "mg/L{CaCO3}")]
    [InlineData("250 ppm", Dimension.Alkalinity, 250, "mg/L{alkalinity}")]
    [InlineData("850 µS/cm", Dimension.Conductivity, 850, "uS/cm")]
    [InlineData("850 \u03bcS/cm", Dimension.Conductivity, 850, "uS/cm")]
    [InlineData("7,5", Dimension.Acidity, 7.5, "[pH]")]
    [InlineData("pH 7.5", Dimension.Acidity, 7.5, "[pH]")]
    [InlineData("pH: 7.5", Dimension.Acidity, 7.5, "[pH]")]
    [InlineData("7.5 pH", Dimension.Acidity, 7.5, "[pH]")]
    [InlineData("pH 0.4", Dimension.AcidityDifference, 0.4, "[pH]{diff}")]
    [InlineData("0.3 pH", Dimension.AcidityDifference, 0.3, "[pH]{diff}")]
    [InlineData("0,3", Dimension.AcidityDifference, 0.3, "[pH]{diff}")]
    [InlineData("8.4 %", Dimension.Ratio, 8.4, "%")]
    [InlineData("90 seg", Dimension.Duration, 90, "s")]
    [InlineData("6 ft/min", Dimension.Speed, 6, "[ft_i]/min")]
    [InlineData("3600 HUE", Dimension.HeatUnits, 3600, "{HUE}")]
    [InlineData("12 kW", Dimension.Power, 12, "kW")]
    [InlineData("2 MJ", Dimension.Energy, 2, "MJ")]
    public void Typed_amount_is_read(string text, Dimension dimension, double value, string ucum)
    {
        Assert.True(AmountText.TryParse(text, dimension, out var amount, out var problem), problem?.Key);
        Assert.Equal((value, ucum, (ParseProblem?)null), (amount.Value, amount.Unit.Ucum, problem));
    }

    [Theory]
    [InlineData("", Dimension.Temperature, "amount.empty", "", 0)]
    [InlineData(" \u00a0 ", Dimension.Temperature, "amount.empty", "", 0)]
    [InlineData("hot", Dimension.Temperature, "amount.no-number", "hot", 0)]
    [InlineData("- °C", Dimension.Temperature, "amount.no-number", "- °C", 0)]
    [InlineData("NaN °C", Dimension.Temperature, "amount.no-number", "NaN °C", 0)]
    [InlineData("1,250 L", Dimension.Volume, "amount.ambiguous-mark", "1,250", 0)]
    [InlineData(" 1.250 L", Dimension.Volume, "amount.ambiguous-mark", "1.250", 1)]
    [InlineData("1,25,000 L", Dimension.Volume, "amount.bad-groups", "1,25,000", 0)]
    [InlineData("1.2.3 L", Dimension.Volume, "amount.bad-groups", "1.2.3", 0)]
    [InlineData("160", Dimension.Temperature, "amount.no-unit", "160", 0)]
    [InlineData("160 °", Dimension.Temperature, "amount.no-scale", "°", 4)]
    [InlineData("160 degrees", Dimension.Temperature, "amount.no-scale", "degrees", 4)]
    [InlineData("160 X", Dimension.Temperature, "amount.unknown-unit", "X", 4)]
    [InlineData("160 psi", Dimension.Temperature, "amount.other-dimension", "psi", 4)]
    [InlineData("50 mg/L", Dimension.Temperature, "amount.other-dimension", "mg/L", 3)]
    [InlineData("1e400 L", Dimension.Volume, "amount.too-large", "1e400", 0)]
    [InlineData("1e308 kW", Dimension.Power, "amount.too-large", "1e308", 0)]
    [InlineData("-500 °F", Dimension.Temperature, "amount.below-zero", "-500 °F", 0)]
    [InlineData("-1 psia", Dimension.AbsolutePressure, "amount.below-zero", "-1 psia", 0)]
    [InlineData("180-194 F", Dimension.Temperature, "amount.unknown-unit", "-194 F", 3)]
    [InlineData("１６０ F", Dimension.Temperature, "amount.no-number", "１６０ F", 0)]
    public void Doubtful_amount_is_refused_with_the_reason_and_the_place(
        string text,
        Dimension dimension,
        string key,
        string piece,
        int position
    )
    {
        Assert.False(AmountText.TryParse(text, dimension, out _, out var problem));
        Assert.Equal(new ParseProblem(key, piece, position), problem);
    }

    [Theory]
    [InlineData("1,250 L", '.', 1250)]
    [InlineData("1,250 L", ',', 1.25)]
    [InlineData("1.250 L", ',', 1250)]
    [InlineData("1.250 L", '.', 1.25)]
    // The mark settles only what both could mean: a comma stays a decimal comma for a person whose keypad has no point.
    [InlineData("71,4 L", '.', 71.4)]
    public void Known_mark_settles_only_what_is_doubtful(string text, char mark, double value)
    {
        Assert.True(AmountText.TryParse(text, Dimension.Volume, out var amount, out _, mark));
        Assert.Equal(value, amount.Value);
    }

    [Fact]
    public void Bare_number_takes_the_assumed_unit_only_where_one_is_given()
    {
        Assert.True(AmountText.TryParse("182", Dimension.Temperature, out var amount, out _, assumed: Units.Fahrenheit));
        Assert.Equal(new Amount(182, Units.Fahrenheit), amount);
        Assert.True(AmountText.TryParse("82 C", Dimension.Temperature, out amount, out _, assumed: Units.Fahrenheit));
        Assert.Equal(new Amount(82, Units.Celsius), amount);
    }

    [Theory]
    [MemberData(nameof(Cultures))]
    public void Reading_and_writing_are_the_same_under_every_culture(string mark, string group, string minus)
    {
        var culture = (CultureInfo)CultureInfo.InvariantCulture.Clone();
        culture.NumberFormat.NumberDecimalSeparator = mark;
        culture.NumberFormat.NumberGroupSeparator = group;
        culture.NumberFormat.NegativeSign = minus;
        var before = CultureInfo.CurrentCulture;
        CultureInfo.CurrentCulture = culture;
        try
        {
            Assert.True(
                AmountText.TryParse(
                    "-1 071.4 °C".Replace("-1 0", "", StringComparison.Ordinal),
                    Dimension.Temperature,
                    out var amount,
                    out _
                )
            );
            Assert.Equal(71.4, amount.Value);
            Assert.True(AmountText.TryParse("-3,5 °C", Dimension.Temperature, out amount, out _));
            Assert.Equal(-3.5, amount.Value);
            Assert.Equal("-3.5 Cel", AmountFormat.Ucum(amount));
            Assert.Equal("-3,5\u00a0°C", AmountFormat.Show(amount, ',', "."));
            Assert.Equal("1,250.5\u00a0L", AmountFormat.Show(new Amount(1250.5, Units.Litre)));
            Assert.Equal("-3.5 °C", amount.ToString());
        }
        finally
        {
            CultureInfo.CurrentCulture = before;
        }
    }

    [Theory]
    [InlineData(0.0869, "kW.h", "0.087\u00a0kWh")]
    [InlineData(12.34, "kW.h", "12.34\u00a0kWh")]
    [InlineData(5856.4, "{HUE}", "5,856\u00a0HUE")]
    [InlineData(160, "[degF]", "160\u00a0°F")]
    [InlineData(0.04, "Cel", "0\u00a0°C")]
    [InlineData(-0.2, "kPa", "-0.2\u00a0kPa")]
    [InlineData(0.5, "1", "0.5")]
    [InlineData(0.000063, "m3/s", "0.000063\u00a0m³/s")]
    public void Written_with_digits_that_suit_the_unit_and_the_size(double value, string ucum, string expected) =>
        Assert.Equal(expected, AmountFormat.Show(new Amount(value, Units.Find(ucum)!)));

    [Fact]
    public void What_is_written_for_files_reads_back_the_same() =>
        Gen.Select(Gen.Double[-200, 1e7], Gen.Int[0, Units.All.Count - 1].Select(i => Units.All[i]))
            .Where((v, u) => u.ToSI(v) >= 0)
            .Sample(
                (value, unit) =>
                    AmountText.TryParse(AmountFormat.Ucum(new Amount(value, unit)), unit.Dimension, out var back, out _, '.')
                    && back == new Amount(value, unit)
            );

    [Fact]
    public void What_is_written_for_people_reads_back_the_same_to_the_digits_shown() =>
        Gen.Select(
                Gen.Int[-2000000, 20000000],
                Gen.Int[0, Units.All.Count - 1].Select(i => Units.All[i]),
                Gen.Int[0, Signs.Length - 1].Select(i => Signs[i])
            )
            .Select((n, u, s) => (Value: n / Math.Pow(10, u.Digits), Unit: u, Mark: s.Item1, Group: s.Item2))
            .Where(x => x.Unit.ToSI(x.Value) >= 0)
            .Sample(x =>
            {
                var amount = new Amount(x.Value, x.Unit);
                var text = AmountFormat.Show(amount, x.Mark, x.Group);
                return AmountText.TryParse(text, x.Unit.Dimension, out var back, out _, x.Mark, x.Unit)
                    && Math.Abs(back.SI - amount.SI) <= 1e-9 * Math.Abs(amount.SI);
            });

    [Fact]
    public void No_text_whatever_throws() =>
        Gen.Select(Gen.String[Gen.Char["0123456789.,' eE+-−±°FCpHsikaLmg/[]{}%\u00a0\u202f"], 0, 14], Gen.Enum<Dimension>())
            .Sample(
                (text, dimension) =>
                {
                    var read = AmountText.TryParse(text, dimension, out var amount, out var problem);
                    return read
                        ? double.IsFinite(amount.SI) && amount.Unit.Dimension == dimension
                        : problem is not null && problem.Position <= text.Length;
                }
            );
}
