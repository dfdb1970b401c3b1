using System.Text.Json;
using Rinsewright.Contracts.Records;
using Rinsewright.Contracts.Sanitization;
using Rinsewright.Engine.Visits;

namespace Rinsewright.Contracts.Visits;

/// <summary>
/// A visit as it travels and rests. What is absent was not looked at. Words of enumerations in camel case (<c>asFound</c>, <c>load</c>, <c>worn</c>); ids are those of the knowledge. Later versions
/// read every earlier one.
/// </summary>
/// <param name="Id">UUID version 7 made on the device.</param>
/// <param name="Version">Schema version of this record.</param>
/// <param name="Kitchen">Kitchen's name as typed.</param>
/// <param name="Machine">The machine as described on that day: a machine file, <c>rinsewright.machine/1</c>.</param>
/// <param name="Began">When it began, kitchen's local time with offset.</param>
public sealed record VisitDocument(Guid Id, int Version, string Kitchen, JsonElement Machine, DateTimeOffset Began)
{
    /// <summary>Schema version written today.</summary>
    public const int CurrentVersion = 1;

    /// <summary>When it ended.</summary>
    public DateTimeOffset? Ended { get; init; }

    /// <summary>Who made it.</summary>
    public string? Technician { get; init; }

    /// <summary>Rule set in force; absent for the one taken where nobody chose.</summary>
    public string? RuleSet { get; init; }

    /// <summary>A rule set of the service's own, in front of <see cref="RuleSet"/>.</summary>
    public string? RuleSetJson { get; init; }

    /// <summary>Label of the sanitizer.</summary>
    public SanitizerLabelDto? Label { get; init; }

    /// <summary>What the kitchen says.</summary>
    public string? Complaint { get; init; }

    /// <summary>What it proved to be.</summary>
    public VisitCauseDto? Cause { get; init; }

    /// <summary>Instruments by the name readings call them.</summary>
    public IReadOnlyDictionary<string, InstrumentDto>? Instruments { get; init; }

    /// <summary>Strips and labels by the name readings call them.</summary>
    public IReadOnlyDictionary<string, TestSupplyDto>? TestSupplies { get; init; }

    /// <summary>Readings.</summary>
    public IReadOnlyList<VisitReadingDto>? Readings { get; init; }

    /// <summary>Proofs made of their own and counted with the visit.</summary>
    public IReadOnlyList<CountedProofDto>? Proofs { get; init; }

    /// <summary>What was looked for on the ware.</summary>
    public IReadOnlyList<WareSeenDto>? Ware { get; init; }

    /// <summary>Logs of the crew that were looked through.</summary>
    public IReadOnlyList<CrewLogDto>? CrewLogs { get; init; }

    /// <summary>Symptoms and checks.</summary>
    public IReadOnlyList<VisitFindingDto>? Findings { get; init; }

    /// <summary>Parts looked at.</summary>
    public IReadOnlyList<PartLookDto>? Parts { get; init; }

    /// <summary>Photographs.</summary>
    public IReadOnlyList<VisitPhotoDto>? Photos { get; init; }

    /// <summary>Changes.</summary>
    public IReadOnlyList<VisitChangeDto>? Changes { get; init; }

    /// <summary>Parts fitted, on site, ordered.</summary>
    public IReadOnlyList<PartUseDto>? PartsUsed { get; init; }

    /// <summary>Supplies counted.</summary>
    public IReadOnlyList<SupplyCountDto>? Supplies { get; init; }

    /// <summary>Looks for leaks.</summary>
    public IReadOnlyList<LeakLookDto>? Leaks { get; init; }

    /// <summary>What of the acceptance test was declined.</summary>
    public IReadOnlyList<DeclinedDto>? Declined { get; init; }

    /// <summary>Lessons.</summary>
    public IReadOnlyList<TrainingDto>? Training { get; init; }

    /// <summary>Recurring work.</summary>
    public IReadOnlyList<UpkeepDto>? Upkeep { get; init; }

    /// <summary>What the last acceptance test left.</summary>
    public IReadOnlyList<EarlierReadingDto>? Earlier { get; init; }

    /// <summary>Language the kitchen was shown its three plain lines in, <c>en</c> or <c>es</c>; absent where nobody chose.</summary>
    public string? KitchenLanguage { get; init; }

    /// <summary>Signatures.</summary>
    public IReadOnlyList<VisitSignatureDto>? Signatures { get; init; }
}

/// <summary>A line of readings; without a value it was not read.</summary>
public sealed record VisitReadingDto(
    string Kind,
    AmountDto? Value,
    string Moment,
    string State = "unknown",
    string Method = "probe",
    string? Instrument = null,
    string? Supply = null,
    DateTimeOffset? At = null,
    bool? Reached = null,
    double? RacksPerHour = null,
    string? NotReadBecause = null
);

/// <summary>A strip or label; <c>Tests</c> is a sanitizing method, absent for a temperature label.</summary>
public sealed record TestSupplyDto(string? Tests = null, string? Lot = null, DateOnly? Expires = null);

/// <summary>A proof counted with the visit: what it was judged as (<c>Machine</c>, <c>Method</c>, <c>RuleSet</c> as in <see cref="ProofRequest"/>) and what came out.</summary>
public sealed record CountedProofDto(
    string Name,
    string Moment,
    string Outcome,
    int Passes,
    string Machine,
    string Method,
    string RuleSet,
    Guid? Proof = null,
    DateTimeOffset? At = null,
    bool ClockOff = false,
    AmountDto? LowestPeak = null
);

/// <summary>A result looked for on the ware; <c>Found</c> is false where it was gone.</summary>
public sealed record WareSeenDto(string Result, bool Found, string Moment, string? Note = null);

/// <summary>
/// A log of the crew: what is read there, its unit, the last of the days looked at. Without <c>Whole</c> only the days from the first entry to the last count; <c>Closed</c> are days without a
/// service.
/// </summary>
public sealed record CrewLogDto(
    string Kind,
    string Unit,
    DateOnly Until,
    int Days = CrewLog.UsualDays,
    int ShiftsPerDay = 1,
    string State = "unknown",
    bool Whole = false,
    IReadOnlyList<CrewEntryDto>? Entries = null,
    IReadOnlyList<DateOnly>? Closed = null,
    IReadOnlyList<CrewUnreadDto>? Unread = null
);

/// <summary>A value of a crew's log, in its unit; <c>Shift</c> from 1, <c>ActionWritten</c> of a value outside its limit.</summary>
public sealed record CrewEntryDto(DateOnly On, int Shift, double Value, bool? ActionWritten = null);

/// <summary>An entry of a crew's log that is written and cannot be read, as it was copied.</summary>
public sealed record CrewUnreadDto(DateOnly On, int Shift, string Text);

/// <summary>A symptom or check.</summary>
public sealed record VisitFindingDto(string Id, bool Found, string Moment, string? Note = null);

/// <summary>A look at a part.</summary>
public sealed record PartLookDto(
    string Part,
    string State,
    string Moment = "asFound",
    IReadOnlyList<int>? Wear = null,
    string? Fault = null,
    string? Note = null
);

/// <summary>A photograph by its content.</summary>
public sealed record VisitPhotoDto(string Sha256, string Moment, string? Zone = null, string? Part = null, DateTimeOffset? At = null);

/// <summary>A change.</summary>
public sealed record VisitChangeDto(
    string Kind,
    string What,
    IReadOnlyList<string>? Areas = null,
    string? Part = null,
    AmountDto? Before = null,
    AmountDto? After = null,
    DateTimeOffset? At = null
);

/// <summary>A part fitted, on site or ordered.</summary>
public sealed record PartUseDto(string What, int Count, string Where, DateOnly? Expected = null);

/// <summary>A supply counted.</summary>
public sealed record SupplyCountDto(
    string Product,
    string? Feeds = null,
    double Count = 0,
    double? DaysLeft = null,
    bool Changed = false,
    bool Primed = false
);

/// <summary>A look for leaks.</summary>
public sealed record LeakLookDto(bool Dry, string Moment, string? Where = null, DateTimeOffset? At = null);

/// <summary>A declined part of the acceptance test.</summary>
public sealed record DeclinedDto(string Area, string Because);

/// <summary>A lesson.</summary>
public sealed record TrainingDto(string Topic, IReadOnlyList<string>? Names = null, bool Shown = false);

/// <summary>Recurring work.</summary>
public sealed record UpkeepDto(string Interval, DateOnly? Last = null);

/// <summary>What an earlier acceptance test left.</summary>
public sealed record EarlierReadingDto(string Kind, AmountDto Value, string State, DateOnly On);

/// <summary>A cause.</summary>
public sealed record VisitCauseDto(string Fault, string Known, string Owner);

/// <summary>A signature; <c>Strokes</c> as <see cref="SignatureStrokes"/> writes them where it was drawn with a finger.</summary>
public sealed record VisitSignatureDto(string For, string Name, DateTimeOffset At, string? Image = null, string? Strokes = null);
