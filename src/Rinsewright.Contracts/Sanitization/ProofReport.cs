using Rinsewright.Contracts.Records;

namespace Rinsewright.Contracts.Sanitization;

/// <summary>
/// Result of a proof as it travels and rests: what <c>rinsewright proof --json</c> prints, what the browser's compute worker returns and what the
/// sheet is made from. Texts (<c>because</c>) are in the language asked for; the statements beside them let any reader say it in another.
/// Outcomes: <c>proven</c>, <c>notProven</c>, <c>undetermined</c>. Statuses: <c>inRange</c>, <c>nearLimit</c>,
/// <c>open</c>, <c>outOfRange</c>, <c>noLimit</c>, <c>notRead</c>.
/// </summary>
public sealed record ProofReport(
    string Schema,
    string? File,
    long Rows,
    long RejectedCount,
    IReadOnlyList<RejectedDto> Rejected,
    IReadOnlyList<DecisionDto> Decisions,
    IReadOnlyList<ChannelDto> Channels,
    IReadOnlyList<PassDto> Passes,
    IReadOnlyList<CheckDto> Checks,
    IReadOnlyList<LimitDto> Limits,
    string Verdict,
    IReadOnlyList<string> Because,
    IReadOnlyList<string> WouldSettle,
    IReadOnlyList<StatementDto> Reasons,
    IReadOnlyList<StatementDto> Settles,
    TermsDto Terms
)
{
    /// <summary>Schema id of this version.</summary>
    public const string CurrentSchema = "rinsewright.proof/1";

    /// <summary>The pass that decides: the first that is not proven, else the first undetermined, else the one with the least dose to spare.</summary>
    public PassDto? DecidingPass() =>
        Passes.FirstOrDefault(p => p.Verdict == "notProven")
        ?? Passes.FirstOrDefault(p => p.Verdict == "undetermined")
        ?? Passes.OrderBy(p => p.HeatUnits.Low).FirstOrDefault();
}

/// <summary>A row of the file that was refused.</summary>
public sealed record RejectedDto(long Line, string Reason, StatementDto? Says = null);

/// <summary>
/// One decision of the reader. Basis: <c>read</c> (the file says so), <c>inferred</c> (follows from the whole file), <c>assumed</c> (nothing says
/// otherwise), <c>given</c> (the person said so), <c>open</c> (must be asked). Alternatives: values the person may give instead.
/// </summary>
public sealed record DecisionDto(
    string Id,
    string Value,
    string Because,
    string Basis,
    IReadOnlyList<string> Alternatives,
    StatementDto? Says = null
);

/// <summary>One channel, with points thinned to the extremes of each stretch for drawing (never more than a few thousand).</summary>
public sealed record ChannelDto(
    string Name,
    string Unit,
    long Samples,
    AmountDto? Interval,
    string Role,
    DateTime? Start,
    TimeSpan? UtcOffset,
    IReadOnlyList<MarkDto> Marks,
    IReadOnlyList<string> Notes,
    IReadOnlyList<StatementDto> Remarks,
    double[] Seconds,
    double[] Values
);

/// <summary>A marked stretch of a channel: hole or suspect samples.</summary>
public sealed record MarkDto(string Kind, double FromSeconds, double ToSeconds, long Rows, long? Line, string Reason);

/// <summary>One pass. <c>Start</c>, <c>End</c>: local clock time where the file has one. Curve: points of this pass with the dose gathered so far.</summary>
public sealed record PassDto(
    string Channel,
    int Number,
    DateTime? Start,
    DateTime? End,
    double StartSeconds,
    double PeakSeconds,
    double EndSeconds,
    AmountDto Peak,
    BoundedDto HeatUnits,
    BoundedDto A0,
    IReadOnlyList<ZoneDto> Zones,
    IReadOnlyList<CheckDto> Checks,
    string Verdict,
    IReadOnlyList<string> Because,
    IReadOnlyList<StatementDto> Reasons,
    CurveDto Curve
);

/// <summary>Seconds from the pass's start, surface values in the channel's unit, HUE gathered.</summary>
public sealed record CurveDto(double[] Seconds, double[] Values, double[] HeatUnits);

/// <summary>A heating leg; name is a word key or null.</summary>
public sealed record ZoneDto(string? Name, double StartSeconds, double PeakSeconds, AmountDto Peak);

/// <summary>One proof line with its working.</summary>
public sealed record CheckDto(
    string Id,
    string Outcome,
    string Status,
    AmountDto? Value,
    AmountDto? Low,
    AmountDto? High,
    LimitDto? Limit,
    string Because,
    StatementDto Says,
    IReadOnlyList<StatementDto> Settles,
    IReadOnlyList<StepDto> Derivation,
    ReadingDto? Reading
);

/// <summary>One step of the working.</summary>
public sealed record StepDto(string Equation, string Text, StatementDto Says, AmountDto? Result, CitationDto? Citation);

/// <summary>A limit; force and sense in camel case.</summary>
public sealed record LimitDto(string Id, string Point, string Sense, IReadOnlyList<AmountDto> Printed, string Force, CitationDto Citation);

/// <summary>What it was judged against.</summary>
public sealed record TermsDto(
    string Machine,
    string Method,
    string RuleSet,
    string RuleSetTitle,
    string RuleSetEdition,
    InstrumentDto? Instrument,
    AmountDto UncertaintyUsed,
    bool UncertaintyStated,
    AmountDto? Cap,
    AmountDto? Floor
);
