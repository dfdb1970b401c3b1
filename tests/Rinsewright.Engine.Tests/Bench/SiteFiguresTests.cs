using Rinsewright.Engine.Bench;
using Rinsewright.Engine.Machines;
using Rinsewright.Engine.Quantities;

namespace Rinsewright.Engine.Tests.Bench;

/// <summary>What a machine's site has said, taken into the sums.</summary>
public sealed class SiteFiguresTests
{
    private static readonly Tariff Said = new(
        ElectricityPerKilowattHour: 0.14,
        FuelPerKilowattHour: 0.05,
        WaterPerCubicMetre: 3.2,
        DetergentPerKilogram: 5.5
    );

    private static Dictionary<string, double> Of(string tool, Machine machine, DayOfUse? use) =>
        SiteFigures.For(BenchTools.Find(tool)!, machine, Said, use).ToDictionary(f => f.Key, f => f.Value.Value, StringComparer.Ordinal);

    [Fact]
    public void Cost_takes_racks_and_prices_of_the_site()
    {
        var known = Of("use-and-cost", TypicalMachines.Of(MachineKind.DoorHotWater), new DayOfUse(240, 6));

        Assert.Equal(240, known["racksPerDay"]);
        Assert.Equal(5.5, known["detergentPrice"]);
        Assert.Equal(3.2, known["waterPrice"]);
        Assert.Equal(0.14, known["energyPrice"]);
        // Priced by mass at the site, asked by litre here.
        Assert.DoesNotContain("additivePrice", known.Keys);
        Assert.DoesNotContain("sanitizerPrice", known.Keys);
    }

    [Fact]
    public void Heat_of_a_steam_coil_is_paid_as_fuel()
    {
        var machine = TypicalMachines.Of(MachineKind.RackConveyorTwoTank);
        var electric = machine.Booster!.Heater;
        var steam = machine with { Booster = machine.Booster with { Heater = electric with { Kind = HeaterKind.SteamCoil } } };

        Assert.Equal(0.14, Of("use-and-cost", machine, null)["energyPrice"]);
        Assert.Equal(0.05, Of("use-and-cost", steam, null)["energyPrice"]);
        // The vent's heat comes from the tank, whose heater is electric still.
        Assert.Equal(0.14, Of("vent-loss", steam, null)["energyPrice"]);
    }

    [Fact]
    public void What_nobody_said_or_no_tool_can_use_is_left_out()
    {
        var machine = TypicalMachines.Of(MachineKind.DoorHotWater);

        Assert.Empty(SiteFigures.For(BenchTools.Find("use-and-cost")!, machine, new Tariff(), null));
        // A tool that asks for no price takes none.
        Assert.Empty(SiteFigures.For(BenchTools.Find("titration")!, machine, Said, new DayOfUse(240, 6)));
        // Racks beyond what the tool allows are not filled in.
        Assert.DoesNotContain("racksPerDay", Of("use-and-cost", machine, new DayOfUse(90_000, 6)).Keys);
    }
}
