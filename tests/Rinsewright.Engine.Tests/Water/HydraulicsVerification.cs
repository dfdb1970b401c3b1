using Rinsewright.Engine.Quantities;
using Rinsewright.Engine.Water;

namespace Rinsewright.Engine.Tests.Water;

/// <summary>Rows R46 to R53 of the check list: closed forms evaluated by another program.</summary>
public sealed class HydraulicsVerification
{
    private static readonly double Gpm = VolumeFlow.FromGallonPerMinute(1).InCubicMetrePerSecond;
    private static readonly double Psi = GaugePressure.FromPsi(1).InKilopascal * 1000;
    private static readonly SprayCircuit Wash = SprayCircuit.FromNominal(165 * Gpm, 35000);
    private static readonly RinseCircuit Rinse = RinseCircuit.FromNominal(2.8 * Gpm * LiquidWater.Density, 20 * Psi);

    [Fact] // R49
    public void New_and_clean()
    {
        var flow = Wash.At(SprayCondition.Clean);

        Relative.Equal(165.00, flow.Total / Gpm, 1e-4);
        Relative.Equal(5.0763, flow.ArmPressure / Psi, 1e-4);
    }

    [Fact] // R49
    public void An_open_end_cap_lowers_the_pressure_and_raises_the_flow()
    {
        var flow = Wash.At(SprayCondition.Clean with { CapOpening = 3.3e-4 });

        Relative.Equal(184.33, flow.Total / Gpm, 1e-4);
        Relative.Equal(145.43, flow.Spray / Gpm, 1e-4);
        Relative.Equal(38.90, flow.Cap / Gpm, 2e-4); // printed to four digits
        Relative.Equal(3.9433, flow.ArmPressure / Psi, 1e-4);
    }

    [Theory] // R50
    [InlineData(1, 1, 1, 0.3, 132.63, 6.6933)]
    [InlineData(1, 1, 8, 0, 125.20, 2.9227)]
    [InlineData(0.75, 1, 1, 0, 123.75, 2.8554)]
    [InlineData(1, 0.35, 1, 0, 97.62, 1.7767)]
    public void Plugged_clogged_worn_reversed(double wear, double direction, double strainer, double plugged, double gpm, double psi)
    {
        var flow = Wash.At(new SprayCondition(wear, direction, strainer, plugged));

        Relative.Equal(gpm, flow.Total / Gpm, 1e-4);
        Relative.Equal(psi, flow.ArmPressure / Psi, 1e-4);
    }

    [Fact] // suction loss of the clogged strainer, 4.7 psi against 1.0
    public void A_clogged_strainer_takes_the_suction()
    {
        Assert.Equal(1.0, Wash.At(SprayCondition.Clean).SuctionLoss / Psi, 0.05);
        Assert.Equal(4.7, Wash.At(SprayCondition.Clean with { Strainer = 8 }).SuctionLoss / Psi, 0.05);
    }

    [Fact] // R51
    public void Jet_speed() => Relative.Equal(8.4386, SprayCircuit.JetSpeedAt(35000), 1e-4);

    [Theory] // R52
    [InlineData(8, 1.77088)]
    [InlineData(35, 3.70405)]
    public void Rinse_flow_goes_with_the_root_of_the_pressure(double psi, double gpm) =>
        Relative.Equal(gpm, Rinse.At(psi * Psi, 1000 * Psi).Flow / LiquidWater.Density / Gpm, 1e-5);

    [Theory] // R53: regulator failed open; strainer 35 times; static 12 psi
    [InlineData(double.PositiveInfinity, 50, 1, 43.478)]
    [InlineData(20, 50, 35, 8.000)]
    [InlineData(20, 12, 1, 10.435)]
    public void Arm_gauge_behind_a_line(double regulator, double supply, double strainer, double psi) =>
        Assert.Equal(psi, Rinse.At(regulator * Psi, supply * Psi, strainer: strainer).Pressure / Psi, 0.0006);

    [Fact] // R46
    public void Leak_of_a_full_tank() => Relative.Equal(0.126201, Outlet.Of(6e-5, 0.30).FlowAt(68.8396), 1e-5);

    [Fact] // R47
    public void Fall_of_an_unfed_tank()
    {
        var outlet = Outlet.Of(6e-5, 0.30);

        Relative.Equal(55.984, outlet.SecondsToFall(68.8396, 0.9 * 68.8396)!.Value, 1e-5);
        Relative.Equal(1090.95, outlet.SecondsToFall(68.8396, 0)!.Value, 1e-5);
    }

    [Fact] // R48
    public void Implicit_leak_is_first_order_in_the_step()
    {
        var outlet = Outlet.Of(6e-5, 0.30);
        var exact = outlet.MassAfter(68.8396, 200);
        double[] steps = [40, 20, 10, 5],
            printed = [0.4092, 0.2066, 0.1038, 0.0520];
        var errors = steps.Select(dt => Unfed(outlet, dt) - exact).ToArray();

        Assert.All(errors.Zip(printed), e => Assert.Equal(e.Second, e.First, 0.0001));
        Assert.All(errors.Zip(errors.Skip(1)), e => Assert.Equal(1.0, Math.Log2(e.First / e.Second), 0.02));

        static double Unfed(Outlet outlet, double dt)
        {
            var mass = 68.8396;
            for (double t = 0; t < 200; t += dt)
            {
                mass = outlet.Step(mass, 0, 100, dt).Mass;
            }

            return mass;
        }
    }

    [Fact] // section 1.4: no flow below 35 % of full, all of it from 60 %
    public void A_low_tank_starves_its_pump()
    {
        Assert.Equal(0, SprayCircuit.FillingAt(34, 100));
        Assert.Equal(1, SprayCircuit.FillingAt(60, 100));
        var half = Wash.At(SprayCondition.Clean with { Filling = 0.5 });
        Relative.Equal(165.0 / 2, half.Total / Gpm, 1e-9);
        Relative.Equal(35000.0 / 4, half.ArmPressure, 1e-9);
    }
}
