namespace Rinsewright.Engine.Machines;

/// <summary>What one fault does to the temperatures under load.</summary>
/// <param name="Fault">Fault, as bad as it gets.</param>
/// <param name="Differences">Each tank, the final rinse and the plate's peak: healthy, with the fault, and whether a gauge tells.</param>
public sealed record FaultRow(MachineFault Fault, IReadOnlyList<Difference> Differences)
{
    /// <summary>Whether a gauge or a label would tell at all.</summary>
    public bool Shows => Differences.Any(d => d.Shows);
}

/// <summary>
/// Every fault of a machine side by side, by the temperatures alone: the balance and a plate's pass, no cold start, no idling, no stepping. What it cannot show (water, chemicals, times, what is
/// read while idle) the full reading of one fault shows, <see cref="SteadyState.Of"/>.
/// </summary>
public static class FaultTable
{
    /// <summary>The table; empty for a machine that takes new water with every rack, which has no balance.</summary>
    /// <param name="machine">Machine.</param>
    /// <param name="racksPerHour">Racks an hour asked for, above 0; as many as fit where it is more.</param>
    /// <exception cref="ArgumentException">The description does not fit together.</exception>
    /// <exception cref="ArgumentOutOfRangeException">No rate above 0.</exception>
    public static IReadOnlyList<FaultRow> Of(Machine machine, double racksPerHour)
    {
        var sound = SteadyState.Changed(machine, racksPerHour, []);
        if (sound.Travel.Cycle is { Dumps: true })
        {
            return [];
        }

        var solver = new SteadySolver(sound.Tanks.Length);
        var reader = new SteadyReader(sound.Tanks.Length);
        IReadOnlyList<Observed> Read(ModelParameters p)
        {
            var solution = solver.Solve(p, racksPerHour / 3600);
            var readout = new Readout();
            readout.Temperatures(p, solution, reader.Pass(p, solution));
            return readout.InOrder();
        }

        var healthy = Read(sound);
        return
        [
            .. MachineFaults
                .Of(machine)
                .Select(fault => new FaultRow(fault, Compare(healthy, Read(MachineFaults.Changed(sound, [fault.At(1)]))))),
        ];
    }

    private static Difference[] Compare(IReadOnlyList<Observed> before, IReadOnlyList<Observed> after) =>
        [
            .. before.Select(was =>
            {
                var now = after.FirstOrDefault(a => a.Observable == was.Observable);
                return new Difference(was.Observable, was, now, WhatIf.Shows(was.Observable, was, now));
            }),
        ];
}
