using Rinsewright.Engine.Machines;

namespace Rinsewright.Engine.Tests.Machines;

/// <summary>A machine that is filled with water hot enough.</summary>
public sealed class NothingToHeatTests
{
    [Fact] // whatever the step: steps of the full reading and of the one a slider follows differ
    public void Is_ready_when_it_is_full()
    {
        var machine = TypicalMachines.Of(MachineKind.DoorChemical);
        var racks = SteadyState.UsualRate(machine);
        var p = ModelParameters.From(machine);
        var few = new SteadyReader(p.Tanks.Length).Read(p, racks, CyclesStepped.Few(p));
        foreach (var reading in (SteadyReading[])[SteadyState.Of(machine, racks), few])
        {
            var fill = reading.Of(Observables.FillTime.Id)!.Value!.Value.Value;
            Assert.True(fill > 5);
            Assert.Equal(fill, reading.Of(Observables.HeatUpTime.Id)!.Value!.Value.Value, 1e-9);
        }
    }
}
