using Rinsewright.Engine.Machines;
using Rinsewright.Tests.Shared;

namespace Rinsewright.Engine.Tests.Machines;

/// <summary>Every fault side by side, against the full reading of each and against what the trade knows.</summary>
public sealed class FaultTableTests
{
    [Theory] // the other route: what the screen shows of one fault
    [InlineData(MachineKind.RackConveyorOneTank)]
    [InlineData(MachineKind.RackConveyorTwoTank)]
    [InlineData(MachineKind.RackConveyorThreeTank)]
    [InlineData(MachineKind.Flight)]
    public void On_a_conveyor_the_table_is_the_full_reading_of_each_fault(MachineKind kind)
    {
        var machine = TypicalMachines.Of(kind);
        var racks = SteadyState.UsualRate(machine);
        var table = FaultTable.Of(machine, racks);

        Assert.Equal(MachineFaults.Of(machine).Select(f => f.Id), table.Select(r => r.Fault.Id));
        var different = new List<string>();
        foreach (var row in table)
        {
            var full = SteadyState.Of(machine, racks, [row.Fault.At(1)]);
            foreach (var d in row.Differences)
            {
                var other = full.Of(d.Observable.Id)?.Value?.Value;
                var mine = d.After?.Value?.Value;
                if (other.HasValue != mine.HasValue || Math.Abs((other ?? 0) - (mine ?? 0)) > 1e-6)
                {
                    different.Add($"{row.Fault.Id} {d.Observable.Id}: {mine} in the table, {other} read");
                }
            }
        }

        Findings.None(different);
    }

    [Theory] // common practice, no source
    [InlineData(MachineKind.RackConveyorTwoTank, "booster-thermostat-low")]
    [InlineData(MachineKind.DoorHotWater, "booster-thermostat-low")]
    public void A_weak_booster_takes_the_final_rinse_and_the_plate_down(MachineKind kind, string fault)
    {
        var machine = TypicalMachines.Of(kind);
        var row = FaultTable.Of(machine, SteadyState.UsualRate(machine)).Single(r => r.Fault.Id == fault);

        foreach (var observable in (Observable[])[Observables.FinalRinseTemperature, Observables.PlatePeakTemperature])
        {
            var d = row.Differences.Single(x => x.Observable == observable);
            Assert.True(d.Shows);
            Assert.True(d.After!.Value!.Value.Value < d.Before!.Value!.Value.Value);
        }
    }

    [Fact]
    public void New_water_with_every_rack_has_no_balance() => Assert.Empty(FaultTable.Of(TypicalMachines.Of(MachineKind.DoorChemical), 25));

    [Fact]
    public void A_fault_that_no_gauge_tells_under_load_says_so()
    {
        var machine = TypicalMachines.Of(MachineKind.RackConveyorTwoTank);

        Assert.Contains(FaultTable.Of(machine, 150), r => !r.Shows);
    }
}
