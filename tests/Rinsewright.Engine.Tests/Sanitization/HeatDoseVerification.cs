using Rinsewright.Engine.Quantities;
using Rinsewright.Engine.Records;
using Rinsewright.Engine.Sanitization;
using Xunit;

namespace Rinsewright.Engine.Tests.Sanitization;

/// <summary>Heat units and A0 against published values; sources in the head of each file.</summary>
public class HeatDoseVerification
{
    private static readonly HeatDose Capped = HeatDose.HeatUnits(new HeatUnitOptions(Temperature.FromFahrenheit(165), null));
    private static readonly HeatDose Default = HeatDose.HeatUnits(HeatUnitOptions.Default);

    public static TheoryData<double, double, double> PerSecond() =>
        [
            .. Published
                .Rows("Sanitization", "hue-per-second.csv")
                .Select(r => (r.Number("surface_f"), r.Number("hue_per_s"), r.Number("seconds_for_3600"))),
        ];

    public static TheoryData<string, double, double, double, double> Exposures() =>
        [
            .. Published
                .Rows("Sanitization", "hue-exposures.csv")
                .Select(r => (r["id"], r.Number("surface_f"), r.Number("seconds"), r.Number("hue"), r.Number("tolerance_percent"))),
        ];

    public static TheoryData<double, double, double> A0Rows() =>
        [.. Published.Rows("Sanitization", "a0.csv").Select(r => (r.Number("deg_c"), r.Number("seconds"), r.Number("a0")))];

    [Theory]
    [MemberData(nameof(PerSecond))]
    public void Rate_matches_the_table(double surfaceF, double huePerSecond, double secondsFor3600)
    {
        var rate = Capped.RateAt(Temperature.FromFahrenheit(surfaceF));
        // The table is rounded to four decimals, its time to one.
        Assert.Equal(huePerSecond, rate, 0.00006);
        Assert.Equal(secondsFor3600, 3600 / rate, 0.06);
    }

    [Theory]
    [MemberData(nameof(Exposures))]
    public void Constant_exposure_matches_the_source(string id, double surfaceF, double seconds, double hue, double tolerancePercent)
    {
        var t = Temperature.FromFahrenheit(surfaceF);
        Assert.True(
            Math.Abs((Capped.Over(t, t, seconds) / hue) - 1) * 100 <= tolerancePercent,
            $"{id}: {Capped.Over(t, t, seconds)} against {hue}"
        );
    }

    [Theory]
    [MemberData(nameof(A0Rows))]
    public void A0_matches_the_table(double celsius, double seconds, double a0)
    {
        var t = Temperature.FromCelsius(celsius);
        Assert.Equal(a0, HeatDose.A0(null).Over(t, t, seconds), Math.Max(0.006, a0 * 1e-5));
    }

    [Fact] // CV044, CV045 (iso-15883-1, computed from its definition elsewhere)
    public void A0_of_two_more_exposures()
    {
        Assert.Equal(11971.6, HeatDose.A0(null).Over(Temperature.FromCelsius(93), Temperature.FromCelsius(93), 600), 1);
        Assert.Equal(0.1259, HeatDose.A0(null).Over(Temperature.FromCelsius(71), Temperature.FromCelsius(71), 1), 0.0005);
    }

    [Fact] // CV040 (hue-history-2009): a tenfold rate every 8.657 °F
    public void Curve_slope_is_the_published_z_value()
    {
        var ratio = Capped.RateAt(Temperature.FromFahrenheit(150 + 8.657)) / Capped.RateAt(Temperature.FromFahrenheit(150));
        Assert.Equal(10, ratio, 0.005);
    }

    // CV038, CV039, CV046 are rectangle sums over one-second samples: every sample stands for one second. A trace that holds each value for its
    // second and steps in a millisecond to the next has that sum.
    [Fact]
    public void Rectangle_sums_of_the_collection_are_met()
    {
        double[] cv038 = [150, 158, 165, 165, 165, 165, 165, 165, 165, 165, 165, 165, 165, 160, 154];
        double[] cv039 = [140, 150, 158, 162, 166, 168, 165, 163, 160, 157, 153, 149, 144, 139];
        double[] cv046 = [60, 64, 66, 70, 75, 80, 82, 80, 76, 70, 66, 62];
        Assert.Equal(3996, Steps(Default, cv038, Units.Fahrenheit), 3996 * 0.01);
        Assert.Equal(1618, Steps(Default, cv039, Units.Fahrenheit), 1618 * 0.01);
        Assert.Equal(4.579, Steps(HeatDose.A0(Temperature.FromCelsius(65)), cv046, Units.Celsius), 0.005);
    }

    private static double Steps(HeatDose dose, double[] samples, Unit unit)
    {
        var seconds = samples.SelectMany((_, i) => new[] { i, i + 0.999 }).ToArray();
        var values = samples.SelectMany(v => new[] { v, v }).ToArray();
        var trace = TraceBuilder.From("steps", unit, seconds, values);
        return dose.Over(trace, 0, trace.Count - 1, TemperatureDifference.FromCelsius(0)).Value;
    }

    [Theory] // Closed form of the integral of exp over a ramp, evaluated with 30 digits by another program (Python decimal).
    [InlineData(150, 160, 10, 321.632213216678)]
    [InlineData(160, 150, 10, 321.632213216678)]
    [InlineData(143, 165, 22, 1303.65184753830)]
    public void Ramp_matches_high_precision_integral(double fromF, double toF, double seconds, double hue)
    {
        Assert.Equal(hue, Capped.Over(Temperature.FromFahrenheit(fromF), Temperature.FromFahrenheit(toF), seconds), hue * 1e-9);
    }
}
