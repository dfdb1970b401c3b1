using Rinsewright.Engine.Quantities;

namespace Rinsewright.Engine.Machines;

/// <summary>How a run is made.</summary>
/// <param name="LongestStep">Longest step, s; null for what suits the kind. Steps end with the phases of a door machine.</param>
/// <param name="SeriesEvery">Seconds between the entries of the series; 0 for no series.</param>
/// <param name="FullRate">Racks an hour that count as full rate; null for as many as fit.</param>
public sealed record RunOptions(double? LongestStep = null, double SeriesEvery = 10, double? FullRate = null)
{
    /// <summary>Usual steps and a series every ten seconds.</summary>
    public static RunOptions Usual { get; } = new();
}

/// <summary>One line of a series.</summary>
/// <param name="Id">What, as an observable's name where there is one.</param>
/// <param name="Unit">Unit.</param>
/// <param name="Values">One for each time.</param>
public sealed record SeriesLine(string Id, Unit Unit, IReadOnlyList<double> Values);

/// <summary>How a machine went through a scenario.</summary>
/// <param name="Seconds">Times, s from the start of the fill.</param>
/// <param name="Lines">Lines over these times.</param>
public sealed record Series(IReadOnlyList<double> Seconds, IReadOnlyList<SeriesLine> Lines);

/// <summary>What came out of a run.</summary>
/// <param name="Scenario">What the machine went through.</param>
/// <param name="Faults">Faults that were in it.</param>
/// <param name="Observables">What could be read, in the order they are shown.</param>
/// <param name="Series">Its course; null where none was asked for.</param>
/// <param name="LedgerGap">Largest relative gap in the ledgers of water, heat and solutes: rounding, below 1e-9.</param>
public sealed record RunResult(
    Scenario Scenario,
    IReadOnlyList<FaultAtSeverity> Faults,
    IReadOnlyList<Observed> Observables,
    Series? Series,
    double LedgerGap
)
{
    /// <summary>Every stage that was read, in order: each observable in heat-up, idle and load of its own, where <see cref="Observables"/> has it once, when it is usually read.</summary>
    public IReadOnlyList<StageReading> Stages { get; init; } = [];

    /// <summary>What was read of an observable; null where the scenario does not read it or the machine does not have it.</summary>
    public Observed? Of(string id)
    {
        foreach (var observed in Observables)
        {
            if (observed.Observable.Id == id)
            {
                return observed;
            }
        }

        return null;
    }
}

/// <summary>
/// Runs a machine, healthy or with faults, through a scenario. It is a model, not a measurement: no machine was measured for it, and nothing it says proves that ware is
/// sanitized.
/// </summary>
public static class MachineRun
{
    /// <summary>Runs a machine.</summary>
    /// <param name="machine">Machine.</param>
    /// <param name="scenario">What it goes through.</param>
    /// <param name="faults">Faults, none or several; they act together.</param>
    /// <param name="options">How; null for the usual.</param>
    /// <param name="progress">Told the share done, 0 to 1.</param>
    /// <param name="cancellation">Ends it.</param>
    /// <exception cref="ArgumentException">The description does not fit together, or the machine cannot have one of the faults.</exception>
    /// <exception cref="OperationCanceledException">Ended.</exception>
    public static RunResult Run(
        Machine machine,
        Scenario scenario,
        IReadOnlyList<FaultAtSeverity>? faults = null,
        RunOptions? options = null,
        IProgress<double>? progress = null,
        CancellationToken cancellation = default
    ) => Run(ModelParameters.From(machine), scenario, faults ?? [], options ?? RunOptions.Usual, progress, cancellation);

    internal static RunResult Run(
        ModelParameters parameters,
        Scenario scenario,
        IReadOnlyList<FaultAtSeverity> faults,
        RunOptions options,
        IProgress<double>? progress = null,
        CancellationToken cancellation = default
    )
    {
        Check(parameters, faults);
        return new ScenarioRun(parameters, scenario, faults, options, progress, cancellation).Run();
    }

    internal static void Check(ModelParameters parameters, IReadOnlyList<FaultAtSeverity> faults)
    {
        foreach (var fault in faults)
        {
            if (!fault.Fault.AppliesTo(parameters))
            {
                throw new ArgumentException($"This machine cannot have {fault.Fault.Id}: it lacks the part.", nameof(faults));
            }
        }
    }
}
