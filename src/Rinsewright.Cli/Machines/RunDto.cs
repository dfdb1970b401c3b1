using Rinsewright.Contracts;
using Rinsewright.Engine.Machines;

namespace Rinsewright.Cli.Machines;

/// <summary>What <c>machine run --json</c> prints.</summary>
/// <param name="Schema">Format id.</param>
/// <param name="Scenario">What the machine went through.</param>
/// <param name="RacksPerHour">Racks an hour asked for; absent where the scenario has none.</param>
/// <param name="Faults">Faults that were in it.</param>
/// <param name="Observables">What could be read, by id.</param>
internal sealed record RunDto(
    string Schema,
    string Scenario,
    double? RacksPerHour,
    IReadOnlyList<FaultDto> Faults,
    IReadOnlyDictionary<string, ObservedDto> Observables
)
{
    public const string CurrentSchema = "rinsewright.machine-run/1";

    public static RunDto Of(RunResult result, double racks) =>
        new(
            CurrentSchema,
            result.Scenario.Id,
            result.Scenario.Stages.Any(s => s.RacksPerHour > 0) ? racks : null,
            [.. result.Faults.Select(f => new FaultDto(f.Fault.Id, f.Severity))],
            result.Observables.ToDictionary(o => o.Observable.Id, ObservedDto.Of, StringComparer.Ordinal)
        );

    /// <summary>Of a settled machine without faults.</summary>
    public static RunDto Of(SteadyReading reading) =>
        new(
            CurrentSchema,
            Engine.Machines.Scenario.Steady(reading.RacksPerHour).Id,
            reading.RacksPerHour,
            [],
            reading.Observables.ToDictionary(o => o.Observable.Id, ObservedDto.Of, StringComparer.Ordinal)
        );
}

/// <summary>A fault and how bad it is.</summary>
/// <param name="Id">Fault.</param>
/// <param name="Severity">0 none, 1 as in the catalogue.</param>
internal sealed record FaultDto(string Id, double Severity);

/// <summary>One observable.</summary>
/// <param name="Value">Value; absent where there is none.</param>
/// <param name="Unit">UCUM code.</param>
/// <param name="During"><c>heatUp</c>, <c>idle</c>, <c>load</c> or <c>fullRate</c>.</param>
/// <param name="Absent">Why there is no value: <c>never</c> comes to it, or <c>nothing</c> of the kind happens.</param>
internal sealed record ObservedDto(double? Value, string Unit, string During, string? Absent)
{
    public static ObservedDto Of(Observed o) =>
        new(o.Value?.Value, o.Observable.Unit.Ucum, Wire.Name(o.Observable.During), o.Value is null ? Wire.Name(o.Absence) : null);
}

/// <summary>What <c>machine whatif --json</c> prints.</summary>
/// <param name="Schema">Format id.</param>
/// <param name="Scenario">What both machines went through.</param>
/// <param name="RacksPerHour">Racks an hour asked for; absent where the scenario has none.</param>
/// <param name="Changes">What was changed.</param>
/// <param name="Faults">Faults that were in both.</param>
/// <param name="Before">Readings before.</param>
/// <param name="After">Readings after.</param>
/// <param name="Shows">Ids of those whose difference shows.</param>
internal sealed record WhatIfDto(
    string Schema,
    string Scenario,
    double? RacksPerHour,
    IReadOnlyList<ChangeDto> Changes,
    IReadOnlyList<FaultDto> Faults,
    IReadOnlyDictionary<string, ObservedDto> Before,
    IReadOnlyDictionary<string, ObservedDto> After,
    IReadOnlyList<string> Shows
)
{
    public const string CurrentSchema = "rinsewright.machine-whatif/1";
}

/// <summary>One change.</summary>
/// <param name="Path">Place in the machine file.</param>
/// <param name="Text">As typed.</param>
internal sealed record ChangeDto(string Path, string Text);
