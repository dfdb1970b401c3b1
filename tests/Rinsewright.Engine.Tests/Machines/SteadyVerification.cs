using Rinsewright.Engine.Machines;
using Rinsewright.Engine.Water;

namespace Rinsewright.Engine.Tests.Machines;

/// <summary>Rows R44, R45, R63 to R67, R72, R73 of the check list: booster, balances of the steady state.</summary>
public sealed class SteadyVerification
{
    [Theory] // R44, R45
    [InlineData(18, 140, 0, 184.573)]
    [InlineData(24, 100, 2, 159.200)]
    public void A_booster_out_of_power_gives_what_the_balance_says(double kilowatt, double supply, double shell, double fahrenheit)
    {
        var p = Typicals.TwoTank;
        var booster = p.Booster! with { Shell = shell, Heater = p.Booster.Heater with { Power = 1000 * kilowatt } };
        p = p with { Booster = booster, SupplyTemperature = (supply - 32) / 1.8 };

        Relative.Equal(fahrenheit, Typicals.Fahrenheit(p.Steady(1000).Booster), 1e-5);
    }

    [Fact] // R63; ware and film are what is left of the heat
    public void Heat_in_is_heat_out()
    {
        var p = Typicals.TwoTank;
        var s = p.Steady(150);
        double heaters = s.Tanks[0].Power + s.Tanks[1].Power,
            pumps = s.Tanks[0].PumpHeat + s.Tanks[1].PumpHeat,
            shells = (15 * (s.Tanks[0].Celsius - 24)) + (15 * (s.Tanks[1].Celsius - 24)) + (2 * (s.Booster - 24)),
            evaporates = s.RinseEvaporation + s.Tanks[0].Evaporation + s.Tanks[1].Evaporation,
            drained = s.Tanks[0].Overflow * 4186 * (s.Tanks[0].Celsius - 60);

        Assert.Equal(1450, pumps, 1e-9);
        Relative.Equal(33141, heaters + s.BoosterPower + pumps, 0.005);
        Relative.Equal(5101, s.Vent, 0.006); // the row's means come from a stepped run; the balance of R64 gives 5129
        Relative.Equal(441, evaporates * 4186 * 60, 0.01);
        Relative.Equal(1571, shells, 0.01);
        Relative.Equal(6538, drained, 0.035); // heater bands: 0.35 K of the wash tank are 200 W here
    }

    [Fact] // R64
    public void Two_tanks_at_their_normal_load()
    {
        var s = Typicals.TwoTank.Steady(150);

        Relative.Equal(71.1111, s.Tanks[0].Celsius, 1e-5);
        Relative.Equal(73.8889, s.Tanks[1].Celsius, 1e-5);
        Relative.Equal(16829, s.Tanks[0].Power, 0.002);
        Relative.Equal(342, s.Tanks[1].Power, 0.002);
        Relative.Equal(14531, s.BoosterPower, 0.002);
        Relative.Equal(0.13593, s.Tanks[0].Overflow, 0.002);
        Relative.Equal(0.13741, s.Tanks[1].Overflow, 0.002);
        Relative.Equal(5129, s.Vent, 0.002);
        Assert.InRange(s.Rounds, 1, 8);
    }

    [Theory] // R65
    [InlineData(60, 7.76, 160, 5.89)]
    [InlineData(90, 10.78, 160, 8.77)]
    [InlineData(120, 13.81, 160, 11.65)]
    [InlineData(150, 16.83, 160, 14.53)]
    [InlineData(171, 18, 158.5, 16.59)]
    [InlineData(200, 18, 154.5, 18.29)]
    [InlineData(231, 18, 150.2, 18.29)]
    public void Two_tanks_by_rate(double racksPerHour, double kilowatt, double fahrenheit, double booster)
    {
        var s = Typicals.TwoTank.Steady(racksPerHour);

        Relative.Equal(kilowatt, s.Tanks[0].Power / 1000, 0.005);
        Relative.Equal(fahrenheit, Typicals.Fahrenheit(s.Tanks[0].Celsius), 0.005);
        Relative.Equal(booster, s.BoosterPower / 1000, 0.005);
    }

    [Theory] // R66
    [InlineData(60, 8.21, 166)]
    [InlineData(90, 11.21, 166)]
    [InlineData(120, 14.22, 166)]
    [InlineData(150, 17.23, 166)]
    [InlineData(171, 18, 163.0)]
    [InlineData(201, 18, 156.3)]
    public void One_tank_by_rate(double racksPerHour, double kilowatt, double fahrenheit)
    {
        var s = Typicals.OneTank.Steady(racksPerHour);

        Relative.Equal(kilowatt, s.Tanks[0].Power / 1000, 0.005);
        Relative.Equal(fahrenheit, Typicals.Fahrenheit(s.Tanks[0].Celsius), 0.005);
    }

    [Theory] // R67, and the reference's section 1.9: three-tank prewash 54.6 °C stepped or steady within 1 K
    [InlineData(MachineKind.DoorHotWater, 5325, 5324)]
    [InlineData(MachineKind.Undercounter, 2669, 2384)]
    public void Doors_at_their_full_rate(MachineKind kind, double tank, double booster)
    {
        var s = Typicals.Of(kind).Steady(1000);

        Relative.Equal(tank, s.Tanks[0].Power, 0.005);
        Relative.Equal(booster, s.BoosterPower, 0.005);
    }

    [Fact] // R72
    public void A_steam_coil_gives_heat_by_the_difference() =>
        Assert.Equal(
            19800,
            new HeaterParameters
            {
                Coil = 450,
                Steam = 115,
                SetPoint = 72,
                Band = 2,
            }.HeatAt(71),
            1e-9
        );

    [Fact] // R73: with a heater that could do it
    public void A_fill_that_never_shuts_needs_its_heat()
    {
        var p = Typicals.TwoTank.WithTank(0, t => t with { Heater = t.Heater! with { Power = 40000 } });
        var open = p.WithTank(0, t => t with { FillLeak = t.FillFlow });
        var still = p.Steady(0).Tanks[0];
        var running = open.Steady(0).Tanks[0];
        // What evaporates was made up before; now it comes out of the stream.
        var madeUp = still.Fill * LiquidWater.HeatCapacity * (71.1111 - 60);

        Relative.Equal(17310, running.Power - still.Power + madeUp, 2e-4);
    }
}
