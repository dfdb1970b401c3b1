using CsCheck;
using Rinsewright.Engine.Water;

namespace Rinsewright.Engine.Tests.Water;

/// <summary>The equilibrium closes for every water, and moves the way it must.</summary>
public sealed class CarbonateLaws
{
    // Waters that can be: carbonate and pH first, alkalinity from them. Hardness 0 to 1500 mg/L as carbonate, pH 5 to 11, 0 to 95 degC.
    private static readonly Gen<(CarbonateSystem System, double PH, double Celsius)> Waters = Gen.Select(
        Gen.Double[0, 0.015],
        Gen.Double[-6, -1.8],
        Gen.Double[5, 11],
        Gen.Double[0, 95],
        Gen.Double[0, 0.1],
        (calcium, carbon, pH, celsius, strength) =>
        {
            var at = new CarbonateConstants(celsius, strength);
            // By the charge of a system of this pH: an alkalinity that fits.
            var neutral = new CarbonateSystem(calcium, Math.Pow(10, carbon), 0, strength);
            return (neutral with { Alkalinity = neutral.ChargeGap(pH, 0, at) }, pH, celsius);
        }
    );

    [Fact]
    public void The_pH_is_found_again_and_the_charges_balance() =>
        Waters.Sample(
            w =>
            {
                var at = new CarbonateConstants(w.Celsius, w.System.IonicStrength);
                var found = w.System.PH(at);
                Assert.Equal(w.PH, found, 1e-6);
                Assert.True(Math.Abs(w.System.ChargeGap(found, 0, at)) <= 1e-9 * (Math.Abs(w.System.Alkalinity) + w.System.Carbon));
            },
            iter: 20000
        );

    [Fact]
    public void What_is_left_after_falling_out_is_just_saturated_and_balanced() =>
        Waters
            .Where(w => w.System.Calcium > 1e-6)
            .Sample(
                w =>
                {
                    var at = new CarbonateConstants(w.Celsius, w.System.IonicStrength);
                    var x = w.System.Precipitable(at);
                    var left = w.System with
                    {
                        Calcium = w.System.Calcium - x,
                        Carbon = w.System.Carbon - x,
                        Alkalinity = w.System.Alkalinity - (2 * x),
                    };
                    Assert.True(left.Calcium > 0 && left.Carbon > 0);
                    var pH = left.PH(at);
                    Assert.Equal(0, left.SaturationAt(pH, at), 1e-6);
                    Assert.True(Math.Abs(left.ChargeGap(pH, 0, at)) <= 1e-9 * (Math.Abs(left.Alkalinity) + left.Carbon));
                },
                iter: 20000
            );

    [Fact]
    public void More_calcium_is_more_to_fall_out() =>
        Waters
            .Where(w => w.System.Calcium > 1e-6)
            .Sample(
                w =>
                {
                    var at = new CarbonateConstants(w.Celsius, w.System.IonicStrength);
                    var more = w.System with { Calcium = w.System.Calcium * 1.5 };
                    Assert.True(more.Precipitable(at) >= w.System.Precipitable(at));
                },
                iter: 5000
            );
}
