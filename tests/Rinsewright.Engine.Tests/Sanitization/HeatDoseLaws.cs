using CsCheck;
using Rinsewright.Engine.Quantities;
using Rinsewright.Engine.Records;
using Rinsewright.Engine.Sanitization;
using Xunit;

namespace Rinsewright.Engine.Tests.Sanitization;

/// <summary>What must hold for every trace.</summary>
public class HeatDoseLaws
{
    private static readonly TemperatureDifference None = TemperatureDifference.FromCelsius(0);

    private static readonly Gen<HeatDose> Doses = Gen.OneOf(
        Gen.Const(HeatDose.HeatUnits(HeatUnitOptions.Default)),
        Gen.Const(HeatDose.HeatUnits(new HeatUnitOptions(null, null))),
        Gen.Const(HeatDose.HeatUnits(new HeatUnitOptions(Temperature.FromFahrenheit(165), null))),
        Gen.Const(HeatDose.A0(Temperature.FromCelsius(65))),
        Gen.Const(HeatDose.A0(null))
    );

    private static readonly Gen<double[]> Samples = Gen.Double[15, 95].Array[2, 60];
    private static readonly Gen<double> Uncertainty = Gen.Double[0, 3];

    private static Trace Of(double[] celsius, double interval = 1) =>
        TraceBuilder.From("t", Units.Celsius, [.. celsius.Select((_, i) => i * interval)], celsius);

    private static Bounded Whole(HeatDose dose, Trace trace, double uncertainty = 0) =>
        dose.Over(trace, 0, trace.Count - 1, TemperatureDifference.FromCelsius(uncertainty));

    [Fact]
    public void The_value_lies_between_its_bounds() =>
        Gen.Select(Doses, Samples, Uncertainty)
            .Sample(
                (dose, s, u) =>
                {
                    var d = Whole(dose, Of(s), u);
                    Assert.True(d.Low <= d.Value * (1 + 1e-12) && d.Value <= d.High * (1 + 1e-12), $"{d}");
                }
            );

    [Fact]
    public void Hotter_at_any_sample_never_proves_less() =>
        Gen.Select(Doses, Samples, Uncertainty, Gen.Int[0, 59], Gen.Double[0, 20])
            .Sample(
                (dose, s, u, at, by) =>
                {
                    var hotter = s.ToArray();
                    hotter[at % s.Length] += by;
                    Bounded a = Whole(dose, Of(s), u),
                        b = Whole(dose, Of(hotter), u);
                    Assert.True(
                        b.Low >= a.Low * (1 - 1e-9) && b.Value >= a.Value * (1 - 1e-9) && b.High >= a.High * (1 - 1e-9),
                        $"{a} {b}"
                    );
                }
            );

    [Fact]
    public void Longer_never_proves_less() =>
        Gen.Select(Doses, Samples, Uncertainty, Gen.Double[15, 95])
            .Sample(
                (dose, s, u, more) =>
                {
                    Bounded a = Whole(dose, Of(s), u),
                        b = Whole(dose, Of([.. s, more]), u);
                    Assert.True(b.Low >= a.Low - 1e-9 && b.Value >= a.Value - 1e-9 && b.High >= a.High - 1e-9);
                }
            );

    [Fact]
    public void Splitting_a_window_changes_nothing() =>
        Gen.Select(Doses, Samples, Uncertainty, Gen.Int[0, 59])
            .Sample(
                (dose, s, u, cut) =>
                {
                    var trace = Of(s);
                    var at = cut % s.Length;
                    var whole = Whole(dose, trace, u);
                    var unsure = TemperatureDifference.FromCelsius(u);
                    Bounded left = dose.Over(trace, 0, at, unsure),
                        right = dose.Over(trace, at, trace.Count - 1, unsure);
                    Close(whole.Value, left.Value + right.Value);
                    Close(whole.Low, left.Low + right.Low);
                    Close(whole.High, left.High + right.High);
                }
            );

    [Fact]
    public void A_sample_on_the_line_changes_no_value() =>
        Gen.Select(Doses, Gen.Double[15, 95].Array[5, 60], Gen.Double[0.1, 0.9])
            .Sample(
                (dose, s, share) =>
                {
                    var trace = Of(s, 10);
                    var t = Math.Round(share * 10, 3);
                    var between = s[0] + ((s[1] - s[0]) * t / 10);
                    var more = TraceBuilder.From(
                        "t",
                        Units.Celsius,
                        [0, t, .. s.Skip(1).Select((_, i) => (i + 1) * 10.0)],
                        [s[0], between, .. s.Skip(1)]
                    );
                    Close(Whole(dose, trace).Value, Whole(dose, more).Value, 1e-6);
                }
            );

    [Fact]
    public void The_unit_of_entry_changes_nothing() =>
        Gen.Select(Doses, Samples, Uncertainty)
            .Sample(
                (dose, s, u) =>
                {
                    double[] times = [.. s.Select((_, i) => (double)i)];
                    var f = TraceBuilder.From(
                        "t",
                        Units.Fahrenheit,
                        times,
                        [.. s.Select(c => Units.Fahrenheit.FromSI(Units.Celsius.ToSI(c)))]
                    );
                    var k = TraceBuilder.From("t", Units.Kelvin, times, [.. s.Select(c => c + 273.15)]);
                    // At a floor or cap a rounding step of 1e-13 may fall on the other side: leave those traces out.
                    foreach (var other in new[] { f, k })
                    {
                        Close(Whole(dose, Of(s), u).Value, Whole(dose, other, u).Value, 1e-7);
                    }
                }
            );

    [Fact]
    public void Noise_within_the_uncertainty_never_turns_proven_into_not_proven() =>
        Gen.Select(Doses, Samples, Uncertainty, Gen.Double[-1, 1].Array[60])
            .Sample(
                (dose, s, u, noise) =>
                {
                    var noisy = s.Select((v, i) => v + (noise[i] * u)).ToArray();
                    // Any threshold that the clean lower bound meets, the noisy upper bound meets too.
                    Assert.True(Whole(dose, Of(noisy), u).High >= Whole(dose, Of(s), u).Low * (1 - 1e-9));
                }
            );

    [Fact]
    public void A_hole_adds_nothing_to_value_and_lower_bound_and_all_to_the_upper()
    {
        var dose = HeatDose.HeatUnits(HeatUnitOptions.Default);
        var builder = new TraceBuilder();
        foreach (var t in new[] { 0, 1, 2, 3, 23, 24, 25 })
        {
            builder.Add(t * 1000, 70);
        }

        var trace = builder.Build(Units.Celsius);
        Assert.Equal(TraceMarkKind.Gap, Assert.Single(trace.Marks).Kind);
        var d = dose.Over(trace, 0, trace.Count - 1, None);
        // 158 °F (70 °C) gives 54.0352 HUE/s (hue-history-2009 table); the cap 347.7349.
        Assert.Equal(5 * 54.0352, d.Value, 0.01);
        Assert.Equal(5 * 54.0352, d.Low, 0.01);
        Assert.Equal((5 * 54.0352) + (20 * 347.7349), d.High, 0.05);
    }

    private static void Close(double a, double b, double relative = 1e-9) =>
        Assert.True(Math.Abs(a - b) <= relative * Math.Max(1, Math.Max(Math.Abs(a), Math.Abs(b))), $"{a} {b}");
}
