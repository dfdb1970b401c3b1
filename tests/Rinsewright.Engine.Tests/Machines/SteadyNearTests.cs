using Rinsewright.Engine.Machines;
using Rinsewright.Engine.Quantities;
using Xunit;

namespace Rinsewright.Engine.Tests.Machines;

/// <summary>A quick reading near a known one is held against the full reading of the same machine: two ways, one answer.</summary>
public sealed class SteadyNearTests
{
    // What is in sight while a figure is slid, and what decides.
    private static readonly Observable[] InSight =
    [
        Observables.WashTankTemperature,
        Observables.FinalRinseTemperature,
        Observables.FinalRinseLowest,
        Observables.FinalRinsePressure,
        Observables.PlatePeakTemperature,
        Observables.RinseVolumePerRack,
    ];

    [Theory]
    [InlineData(MachineKind.Undercounter, 15)]
    [InlineData(MachineKind.DoorHotWater, 25)]
    [InlineData(MachineKind.DoorChemical, 25)]
    [InlineData(MachineKind.RackConveyorTwoTank, 150)]
    public void The_known_machine_itself_reads_as_it_was_read(MachineKind kind, double racks)
    {
        var machine = TypicalMachines.Of(kind);
        var read = SteadyState.Of(machine, racks);
        var near = new SteadyNear(machine, read).Of(machine, racks);

        Assert.Equal(read.Observables.Count, near.Observables.Count);
        foreach (var (was, now) in read.Observables.Zip(near.Observables))
        {
            Assert.Equal(was.Observable, now.Observable);
            Assert.Equal(was.Absence, now.Absence);
            if (was.Value is { } value)
            {
                Relative.Equal(value.Value, now.Value!.Value.Value, 1e-9);
            }
        }

        Relative.Equal(read.Load.WaterLitrePerHour, near.Load.WaterLitrePerHour, 1e-9);
        Relative.Equal(read.Load.ElectricKilowatt, near.Load.ElectricKilowatt, 1e-9);
    }

    [Theory] // tolerance: twice what gauges and eyes tell apart, for a figure that the full one replaces when the slider rests
    [InlineData(MachineKind.Undercounter, 15)]
    [InlineData(MachineKind.DoorHotWater, 25)]
    [InlineData(MachineKind.DoorChemical, 25)]
    public void What_is_in_sight_while_a_slider_moves_is_what_comes_when_it_rests(MachineKind kind, double racks)
    {
        var machine = TypicalMachines.Of(kind);
        var near = new SteadyNear(machine, SteadyState.Of(machine, racks));
        foreach (var fahrenheit in new[] { 90.0, 110, 125, 140, 155 })
        {
            var changed = machine with { Supply = machine.Supply with { Water = new(new Amount(fahrenheit, Units.Fahrenheit)) } };
            foreach (var rate in new[] { 0.6 * racks, racks, 1.4 * racks })
            {
                var full = SteadyState.Of(changed, rate);
                var quick = near.Of(changed, rate);
                foreach (var observable in InSight)
                {
                    if (full.Of(observable.Id)?.Value is { } value)
                    {
                        var told = quick.Of(observable.Id)!.Value!.Value.Value;
                        Assert.True(
                            Math.Abs(told - value.Value) <= 2 * observable.Threshold,
                            $"{fahrenheit} °F, {rate} racks an hour, {observable.Id}: {told} at once, {value.Value} in full"
                        );
                    }
                }
            }
        }
    }

    [Fact]
    public void A_machine_without_racks_is_refused()
    {
        var machine = TypicalMachines.Of(MachineKind.DoorHotWater);
        var near = new SteadyNear(machine, SteadyState.Of(machine, 25));

        Assert.Throws<ArgumentOutOfRangeException>(() => near.Of(machine, 0));
    }
}
