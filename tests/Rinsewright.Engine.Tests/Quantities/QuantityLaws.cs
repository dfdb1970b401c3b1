using CsCheck;
using Rinsewright.Engine.Quantities;

namespace Rinsewright.Engine.Tests.Quantities;

/// <summary>Laws that hold for any value.</summary>
public sealed class QuantityLaws
{
    private static readonly Gen<double> Sensible = Gen.Double[-200, 100000];
    private static readonly Gen<Unit> AnyUnit = Gen.Int[0, Units.All.Count - 1].Select(i => Units.All[i]);

    [Fact]
    public void Conversion_there_and_back_is_the_same() =>
        Gen.Select(Sensible, AnyUnit, Gen.Int[0, 100])
            .Select((value, a, i) => (Value: value, From: a, To: Units.Of(a.Dimension)[i % Units.Of(a.Dimension).Count]))
            .Sample(x => Close(x.Value, new Amount(x.Value, x.From).In(x.To).In(x.From).Value, Math.Max(1000, Math.Abs(x.Value))));

    [Fact]
    public void Point_and_difference_undo_each_other() =>
        Gen.Select(Gen.Double[0, 1000], Gen.Double[0, 1000])
            .Sample(
                (a, b) =>
                {
                    var (first, second) = (Temperature.FromKelvin(a), Temperature.FromKelvin(b));
                    var difference = first - second;
                    return Close(first.InKelvin, (second + difference).InKelvin, 1000)
                        && Close(second.InKelvin, (first - difference).InKelvin, 1000)
                        && (first > second) == (difference > default(TemperatureDifference));
                }
            );

    [Fact]
    public void A_difference_is_the_same_on_every_scale_up_to_its_factor() =>
        Gen.Select(Gen.Double[0, 200], Gen.Double[0, 200])
            .Sample((f1, f2) => Close(f1 - f2, (Temperature.FromFahrenheit(f1) - Temperature.FromFahrenheit(f2)).InFahrenheit, 1000));

    [Fact]
    public void Gauge_and_absolute_undo_each_other_under_any_air() =>
        Gen.Select(Gen.Double[-10, 200], Gen.Double[10.2, 16])
            .Sample(
                (psi, air) =>
                {
                    var atmosphere = AbsolutePressure.FromPsi(air);
                    return Close(psi, GaugePressure.FromPsi(psi).ToAbsolute(atmosphere).ToGauge(atmosphere).InPsi, 300);
                }
            );

    [Fact]
    public void Products_and_their_quotients_undo_each_other() =>
        Gen.Select(Gen.Double[0.01, 1e4], Gen.Double[0.01, 1e4])
            .Sample(
                (a, b) =>
                    Close(a, (Power.FromKilowatt(a) * Duration.FromHour(b) / Duration.FromHour(b)).InKilowatt, a)
                    && Close(b, (Power.FromKilowatt(a) * Duration.FromHour(b) / Power.FromKilowatt(a)).InHour, b)
                    && Close(a, (VolumeFlow.FromGallonPerMinute(a) * Duration.FromMinute(b) / Duration.FromMinute(b)).InGallonPerMinute, a)
                    && Close(b, (Mass.FromGram(b) / Volume.FromLitre(a) * Volume.FromLitre(a)).InGram, b)
                    && Close(a, (Mass.FromGram(b) / (Mass.FromGram(b) / Volume.FromLitre(a))).InLitre, a)
                    && Close(
                        a,
                        (
                            Speed.FromFootPerMinute(a) * Duration.FromMinute(b) / Speed.FromFootPerMinute(a) / Duration.FromMinute(b)
                        ).InFraction * a,
                        a
                    )
                    && Close(a, (MassFlow.FromKilogramPerHour(a) * Duration.FromHour(b) / Duration.FromHour(b)).InKilogramPerHour, a)
                    && Close(a, (Length.FromMetre(a) * Length.FromMetre(b) / Length.FromMetre(b)).InMetre, a)
                    && Close(a, (Area.FromSquareMetre(b) * Length.FromMetre(a) / Area.FromSquareMetre(b)).InMetre, a)
            );

    [Theory]
    // By hand: 12 kW for 30 min; 4.8 gal/min for 10 s; 6 ft/min for 20 s; 50 mg/L in 80 L.
    [InlineData("power", 6)]
    [InlineData("flow", 0.8)]
    [InlineData("speed", 2)]
    [InlineData("dose", 4)]
    public void Products_by_hand(string which, double expected)
    {
        var actual = which switch
        {
            "power" => (Power.FromKilowatt(12) * Duration.FromMinute(30)).InKilowattHour,
            "flow" => (VolumeFlow.FromGallonPerMinute(4.8) * Duration.FromSecond(10)).InGallon,
            "speed" => (Speed.FromFootPerMinute(6) * Duration.FromSecond(20)).InFoot,
            _ => (MassConcentration.FromMilligramPerLitre(50) * Volume.FromLitre(80)).InGram,
        };
        Assert.Equal(expected, actual, 1e-12);
    }

    [Fact]
    public void Nothing_is_colder_than_absolute_zero_or_emptier_than_vacuum()
    {
        Assert.Equal(0, Temperature.FromCelsius(-273.15).InKelvin);
        Assert.Throws<ArgumentOutOfRangeException>(() => Temperature.FromCelsius(-273.16));
        Assert.Throws<ArgumentOutOfRangeException>(() => Temperature.FromFahrenheit(-460));
        Assert.Throws<ArgumentOutOfRangeException>(() => Temperature.FromKelvin(10) - TemperatureDifference.FromCelsius(11));
        Assert.Throws<ArgumentOutOfRangeException>(() => AbsolutePressure.FromKilopascal(-0.1));
        Assert.Throws<ArgumentOutOfRangeException>(() => GaugePressure.FromPsi(-15).ToAbsolute(AbsolutePressure.FromPsi(14.7)));
        Assert.Throws<ArgumentOutOfRangeException>(() => Power.FromKilowatt(1) / default(Power) * double.MaxValue);
    }

    private static bool Close(double expected, double actual, double size) => Math.Abs(expected - actual) <= 1e-12 * size;
}
