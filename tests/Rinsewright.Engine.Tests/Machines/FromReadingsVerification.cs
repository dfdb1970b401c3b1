using Rinsewright.Engine.Heat;
using Rinsewright.Engine.Machines;
using Rinsewright.Engine.Quantities;
using Rinsewright.Engine.Water;

namespace Rinsewright.Engine.Tests.Machines;

/// <summary>
/// The inverse formulas, each on readings that another program simulated with a known fault (check list, section 4). Tolerances: what the rounding of the printed reading moves the result by.
/// </summary>
public sealed class FromReadingsVerification
{
    private const double Wash = 68.8396; // 18.5 gal, kg
    private static readonly LumpedHeat Tank = new((Wash * LiquidWater.HeatCapacity) + 45000, 15, 24);
    private static readonly double Gpm = VolumeFlow.FromGallonPerMinute(1).InCubicMetrePerSecond * LiquidWater.Density;

    [Theory] // 1: seconds printed whole
    [InlineData(136, 18021, 18000, 17145)]
    [InlineData(209, 12021, 12000, 11146)]
    [InlineData(286, 9021, 9000, 8146)]
    public void Heater_power_from_a_heat_up(double seconds, double printed, double truth, double lossless)
    {
        var vent = VentExchange.Of(1.2e-3, 0.6, 65.5, new RoomAir(24, 0.5)).Heat;
        var power = FromReadings.HeaterPower(Tank, 62, 69, seconds, vent)!.Value;

        Relative.Equal(printed, power, 0.5 / seconds);
        Relative.Equal(truth, power, 0.005);
        Relative.Equal(lossless, FromReadings.HeaterPower(Tank with { Loss = 0 }, 62, 69, seconds, 0)!.Value, 0.5 / seconds);
    }

    [Theory] // 3
    [InlineData(24.99, 6.00e-5)]
    [InlineData(5.13, 1.205e-5)]
    public void Leak_from_the_fall_of_the_level(double millimetres, double opening)
    {
        Relative.Equal(opening, FromReadings.LeakOpening(0.30, 0.2334, 0.2334 - (millimetres / 1000), 60)!.Value, 0.002);
    }

    [Fact] // 3: 462 L/h at full
    public void Leak_of_a_full_tank()
    {
        var opening = FromReadings.LeakOpening(0.30, 0.2334, 0.2334 - 0.02499, 60)!.Value;
        Relative.Equal(462, Outlet.Of(opening, 0.30).FlowAt(Wash) / LiquidWater.Density * 3600 * 1000, 0.002);
    }

    [Fact] // 4: 443 of 1363 L/h is 32 % of the time
    public void Leak_from_the_fill_duty() => Relative.Equal(443, FromReadings.LeakFromFillDuty(0.325, 1363, 0), 0.003);

    [Theory] // 5
    [InlineData(180, 5.98)]
    [InlineData(599.5, 1.80)]
    public void Fill_flow(double seconds, double gpm) => Assert.Equal(gpm, FromReadings.FillFlow(0.97 * Wash, seconds)!.Value / Gpm, 0.005);

    [Theory] // 6: healthy; 40 % limed; pressure low
    [InlineData(0.888, 20, 0.626)]
    [InlineData(0.533, 20, 0.376)]
    [InlineData(0.562, 8, 0.626)]
    public void Nozzles(double gallons, double psi, double coefficient)
    {
        var seconds = FromReadings.RinseSeconds(0.508, 0.12, 0.0330)!.Value;
        Assert.Equal(19.03, seconds, 0.005);
        Assert.Equal(coefficient, FromReadings.NozzleCoefficient(gallons, seconds / 60, psi)!.Value, 0.001);
    }

    [Fact] // 7: one line lost, 120 °F in, 149.5 °F out at 2.8 gpm
    public void Booster_power()
    {
        double supply = Temperature.FromFahrenheit(120).InCelsius,
            delivered = Temperature.FromFahrenheit(149.5).InCelsius;
        // a tenth of a degree of the printed outlet is 0.3 % of the rise
        Relative.Equal(12000, FromReadings.BoosterPower(2.8 * Gpm, supply, delivered, 2, 24), 0.003);
        Assert.Equal(83, 2 * (delivered - 24), 0.5);
    }

    [Fact] // 8: 6 % low in a two-tank machine
    public void Overflow_from_dilution()
    {
        var overflow = FromReadings.OverflowFromDilution(Wash, 0.481, 0.158, 600)!.Value;
        Relative.Equal(0.1275, overflow, 0.004);
        Relative.Equal(0.1357, overflow, 0.065);
    }

    [Theory] // 9
    [InlineData(0.0803, 0.0005)]
    [InlineData(0.3417, 0.0060)]
    [InlineData(0.6180, 0.0200)]
    public void Cross_flow(double ratio, double cross) =>
        Relative.Equal(cross, FromReadings.CrossFlow(ratio, 0.1364, 0.00625, 0.040446, 10.23)!.Value, 0.005);

    [Fact] // 10: half the last printed digit, and what half a hundredth of a degree of the printed reading moves the result by (0.013)
    public void Heat_loss_overnight() => Assert.Equal(20.5, FromReadings.HeatLoss(Tank.Capacity, 70.0, 60.84, 24, 3600)!.Value, 0.063);

    [Fact] // 11: the flow and rise of row R43
    public void Supply_temperature()
    {
        var supply = FromReadings.SupplyTemperature(Temperature.FromFahrenheit(180).InCelsius, 16.1533 / 24, 24000, 2.8 * Gpm)!.Value;
        Assert.Equal(140, Temperature.FromCelsius(supply).InFahrenheit, 0.001);
    }

    [Fact] // 12, R55
    public void Speed() => Relative.Equal(233.86, FromReadings.RacksPerHour(0.0330, 0.508), 1e-4);

    [Fact] // 13
    public void Probe() => Assert.Equal(0.60, FromReadings.ProbeFactor(1.48, 2.46)!.Value, 0.005);

    [Fact] // 14: 6.3 kg/h of the two-tank machine is what 0.0017 kg/s is
    public void Vapour() => Assert.Equal(6.3, FromReadings.VapourLoss(0.13765, 0.13590) * 3600, 0.05);

    [Fact] // 15: a wash of 66 K rise on 18 kW is not to be had
    public void Contradiction()
    {
        var rack = 5806 + 3040.0;
        var possible = FromReadings.HeatNeeded(150 / 3600.0, rack, 30, 2000, 0);
        var impossible = FromReadings.HeatNeeded(231 / 3600.0, rack, 40, 2000, 0);

        Assert.False(FromReadings.Contradict(possible, 18000, 1));
        Assert.True(FromReadings.Contradict(impossible, 18000, 1));
        Assert.True(FromReadings.Contradict(possible, 18000, 0.5));
    }

    [Fact]
    public void What_does_not_determine_a_figure_gives_none()
    {
        Assert.Null(FromReadings.HeaterPower(Tank, 62, 69, 0, 0));
        Assert.Null(FromReadings.LeakOpening(0.3, 0.2, 0.21, 60));
        Assert.Null(FromReadings.FillFlow(60, 0));
        Assert.Null(FromReadings.NozzleCoefficient(0.9, 0.3, 0));
        Assert.Null(FromReadings.OverflowFromDilution(60, 0.4, 0, 600));
        Assert.Null(FromReadings.CrossFlow(1, 0.13, 0.006, 0.04, 10));
        Assert.Null(FromReadings.HeatLoss(3e5, 60, 20, 24, 3600));
        Assert.Null(FromReadings.SupplyTemperature(82, 0.5, 24000, 0));
        Assert.Null(FromReadings.ProbeFactor(1.5, 0));
    }
}
