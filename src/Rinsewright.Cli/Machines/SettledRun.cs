using Rinsewright.Engine.Machines;

namespace Rinsewright.Cli.Machines;

/// <summary>
/// What a machine reads in a scenario, as the Machine screen computes it: a steady load from the settled machine, so that both say the same to the last
/// figure; every other scenario, and every course over time, step by step.
/// </summary>
internal static class SettledRun
{
    private const string Steady = "steady";

    /// <summary>Reads a machine.</summary>
    /// <param name="machine">Machine.</param>
    /// <param name="scenario">What it goes through.</param>
    /// <param name="racks">Racks an hour asked for.</param>
    /// <param name="faults">Faults in it.</param>
    /// <param name="seriesEvery">Seconds between the points of a course; 0 for none.</param>
    /// <param name="cancellation">Stops a run over time.</param>
    public static RunResult Of(
        Machine machine,
        Scenario scenario,
        double racks,
        IReadOnlyList<FaultAtSeverity> faults,
        double seriesEvery,
        CancellationToken cancellation
    ) =>
        scenario.Id == Steady && seriesEvery == 0
            ? new RunResult(scenario, faults, SteadyState.Of(machine, racks, faults).Observables, null, 0)
            : MachineRun.Run(machine, scenario, faults, RunOptions.Usual with { SeriesEvery = seriesEvery }, cancellation: cancellation);
}
