namespace Rinsewright.Engine.Machines;

/// <summary>
/// Reads machines at once that are near one that was read, for a figure that follows a slider. The cold start goes in long steps, and a machine with doors through few and coarse
/// cycles; so does the one that was read, and what its full reading differs by is added to this one too: temperatures, pressures and levels are moved by it, all else is multiplied. Follow it with
/// <see cref="SteadyState.Of"/> when the slider rests.
/// </summary>
public sealed class SteadyNear
{
    private readonly CycleAnchor anchor;
    private readonly Consumption load;
    private readonly Consumption coarse;

    /// <summary>Near a machine that was read.</summary>
    /// <param name="known">The machine, without faults.</param>
    /// <param name="reading">What <see cref="SteadyState.Of"/> read of it.</param>
    /// <exception cref="ArgumentException">The description does not fit together.</exception>
    public SteadyNear(Machine known, SteadyReading reading)
    {
        var p = ModelParameters.From(known);
        var few = new SteadyReader(p.Tanks.Length).Read(p, reading.RacksPerHour, CyclesStepped.Few(p));
        anchor = new CycleAnchor(few.Observables, reading.Observables);
        load = reading.Load;
        coarse = few.Load;
    }

    /// <summary>Reads a machine.</summary>
    /// <param name="machine">Machine, of the kind of the one that was read.</param>
    /// <param name="racksPerHour">Racks an hour asked for, above 0; as many as fit where it is more.</param>
    /// <param name="faults">Faults, none or several; they act together.</param>
    /// <exception cref="ArgumentException">The description does not fit together, or the machine cannot have one of the faults.</exception>
    /// <exception cref="ArgumentOutOfRangeException">No rate above 0.</exception>
    public SteadyReading Of(Machine machine, double racksPerHour, IReadOnlyList<FaultAtSeverity>? faults = null)
    {
        var p = SteadyState.Changed(machine, racksPerHour, faults ?? []);
        var near = new SteadyReader(p.Tanks.Length).Read(p, racksPerHour, CyclesStepped.Few(p));
        return near with { Observables = anchor.Moved(near.Observables), Load = near.Load.Moved(coarse, load) };
    }
}
