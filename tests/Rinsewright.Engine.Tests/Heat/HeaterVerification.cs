using Rinsewright.Engine.Heat;
using Rinsewright.Engine.Quantities;
using Rinsewright.Engine.Water;

namespace Rinsewright.Engine.Tests.Heat;

/// <summary>Rows R39 to R43, R54, R54a, R60, R61, R72 and R73 of the check list: closed forms evaluated by another program.</summary>
public sealed class HeaterVerification
{
    // 18.5 gal of water and 45 kJ/K of metal.
    private static readonly LumpedHeat WashTank = new((68.8396 * LiquidWater.HeatCapacity) + 45000, 15, 24);
    private static readonly double Gpm = VolumeFlow.FromGallonPerMinute(1).InCubicMetrePerSecond * LiquidWater.Density;

    [Theory]
    [InlineData(60, 18000, 213.035)] // R39
    [InlineData(15, 18000, 1055.52)] // R40
    [InlineData(60, 9000, 441.933)] // R41
    [InlineData(60, 12000, 325.392)] // R41
    public void Heat_up_to_160_F(double from, double power, double seconds)
    {
        // 1e-5 of the figure plus half of its last digit
        Assert.Equal(seconds, WashTank.SecondsBetween(from, 71.0 + (1.0 / 9), power)!.Value, (seconds * 1e-5) + 0.005);
        Assert.Equal(71.0 + (1.0 / 9), WashTank.After(from, power, WashTank.SecondsBetween(from, 71.0 + (1.0 / 9), power)!.Value), 1e-9);
    }

    [Fact] // R39
    public void Heat_up_without_losses() =>
        Relative.Equal(205.656, (WashTank with { Loss = 0 }).SecondsBetween(60, 71.0 + (1.0 / 9), 18000)!.Value, 1e-5);

    [Fact]
    public void A_heater_too_small_never_gets_there() => Assert.Null(WashTank.SecondsBetween(60, 71, 600));

    // R42 and R43 check the constants of water; R44 and R45 come with the booster of the model.
    [Fact]
    public void Heat_of_a_flow()
    {
        Relative.Equal(0.1442255, Gpm * LiquidWater.HeatCapacity / 1.8 / 1000, 1e-6); // kW per gpm and °F
        Relative.Equal(16.1533, 2.8 * Gpm * LiquidWater.HeatCapacity * 40 / 1.8 / 1000, 1e-5);
    }

    [Fact] // R54: share of the power
    public void Lost_line_and_open_element()
    {
        Assert.Equal(1.0, ThreePhase.Delta(1, 1, 1).Power, 1e-12);
        Assert.Equal(0.5, ThreePhase.Delta(1, 1, 1, lineC: false).Power, 1e-12);
        Assert.Equal(0.5, ThreePhase.Wye(1, 1, 0).Power, 1e-12);
        Assert.Equal(2.0 / 3, ThreePhase.WyeWithNeutral(1, 1, 0).Power, 1e-12);
        Assert.Equal(2.0 / 3, ThreePhase.Delta(1, 1, 0).Power, 1e-12);
        Assert.Equal(0.75111, ThreePhase.Delta(1, 1, 1, voltage: 208.0 / 240).Power, 1e-5);
    }

    [Fact] // R54a: line currents
    public void Line_currents_part_them()
    {
        Currents(ThreePhase.Delta(1, 1, 1, lineC: false), 0.8660, 0.8660, 0);
        // Element from third to first line open: the second line keeps its current.
        Currents(ThreePhase.Delta(1, 1, 0), 0.5774, 1, 0.5774);
        Currents(ThreePhase.Wye(1, 1, 0), 0.8660, 0.8660, 0);
        Currents(ThreePhase.Wye(1, 1, 1, 208.0 / 240), 0.8667, 0.8667, 0.8667);

        static void Currents(ElementDraw draw, double a, double b, double c)
        {
            Assert.Equal(a, draw.LineA, 0.00005);
            Assert.Equal(b, draw.LineB, 0.00005);
            Assert.Equal(c, draw.LineC, 0.00005);
        }
    }

    [Fact] // R61
    public void Final_rinse_is_limited_by_its_own_water()
    {
        var water = 436.138 / LiquidWater.HeatCapacity;
        Relative.Equal(839.6, SprayTransfer.OfZone(3000, 0.503150, water), 1e-4);
        Relative.Equal(436.138 / 0.503150 * (1 - Math.Exp(-3.46094)), SprayTransfer.OfZone(3000, 0.503150, water), 1e-5);
    }

    [Fact] // R72
    public void Steam_coil() => Assert.Equal(19800, ScaleLayer.CoilPower(450, 115, 71), 1e-9);

    [Fact] // R73: 6 gpm of 140 F into 160 F
    public void Fill_against_heater() => Assert.Equal(17.31, 6 * Gpm * LiquidWater.HeatCapacity * 20 / 1.8 / 1000, 0.005); // half of the last printed digit

    [Fact] // section 1.3: 50 W/in² and 1 mm of scale
    public void Scaled_element_is_hotter_not_weaker() => Assert.Equal(35, ScaleLayer.SheathRise(77500, 0.001), 0.3);

    [Fact] // CHV093: 1 mm of scale, 2.2 W/(m K), on 1500 W/(m² K): 892 left, 40.5 % lost
    public void A_millimetre_of_scale_on_a_coil()
    {
        Relative.Equal(892, ScaleLayer.ScaledCoil(1500, 0.001, 1), 0.001);
        Assert.Equal(0.405, 1 - (ScaleLayer.ScaledCoil(1500, 0.001, 1) / 1500), 0.0005);
    }

    [Theory] // CHV094, opened: [nist-handbook-115]; between its figures a straight line, beyond them nothing
    [InlineData(64, 0.010)]
    [InlineData(32, 0.020)]
    [InlineData(64 / 3.0, 0.030)]
    [InlineData(16, 0.039)]
    [InlineData(15.9, null)]
    public void Fuel_lost_to_scale(double inchDividedBy, double? lost)
    {
        var found = ScaleLayer.FuelLost(0.0254 / inchDividedBy);
        Assert.Equal(lost is null, found is null);
        Assert.Equal(lost ?? 0, found ?? 0, 1e-9);
    }

    [Fact] // Law: more scale never costs less
    public void More_scale_costs_more_fuel()
    {
        var before = -1.0;
        for (var t = 0.0; t <= 0.0254 / 16; t += 1e-5)
        {
            var lost = ScaleLayer.FuelLost(t)!.Value;
            Assert.True(lost > before);
            before = lost;
        }
    }
}
