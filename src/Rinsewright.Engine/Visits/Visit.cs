using Rinsewright.Engine.Machines;
using Rinsewright.Engine.Records;
using Rinsewright.Engine.Sanitization;

namespace Rinsewright.Engine.Visits;

/// <summary>
/// What a technician found, read, did and left at one machine. Immutable: whatever is entered makes another visit, and none of it depends on the order of entry. What was not looked at is absent.
/// </summary>
public sealed record Visit
{
    /// <summary>The machine as described.</summary>
    public required Machine Machine { get; init; }

    /// <summary>When it began, kitchen's local time with its offset.</summary>
    public required DateTimeOffset Began { get; init; }

    /// <summary>When it ended; null while it lasts.</summary>
    public DateTimeOffset? Ended { get; init; }

    /// <summary>Who made it; null where not said.</summary>
    public string? Technician { get; init; }

    /// <summary>Label of the sanitizer in use; null where not read.</summary>
    public SanitizerLabel? Label { get; init; }

    /// <summary>What the kitchen says, in its words; null for a routine visit without complaint.</summary>
    public string? Complaint { get; init; }

    /// <summary>What it proved to be; null while not known.</summary>
    public VisitCause? Cause { get; init; }

    /// <summary>Instruments, picked once for the visit, by the name readings call them.</summary>
    public IReadOnlyDictionary<string, Instrument> Instruments { get; init; } = new Dictionary<string, Instrument>(StringComparer.Ordinal);

    /// <summary>Strips and labels, by the name readings call them.</summary>
    public IReadOnlyDictionary<string, TestSupply> TestSupplies { get; init; } = new Dictionary<string, TestSupply>(StringComparer.Ordinal);

    /// <summary>What was read, and what was not.</summary>
    public IReadOnlyList<VisitReading> Readings { get; init; } = [];

    /// <summary>Proofs made of their own on this machine and counted with the visit.</summary>
    public IReadOnlyList<CountedProof> Proofs { get; init; } = [];

    /// <summary>What was looked for on the ware.</summary>
    public IReadOnlyList<WareSeen> Ware { get; init; } = [];

    /// <summary>Logs of the crew that were looked through.</summary>
    public IReadOnlyList<CrewLog> CrewLogs { get; init; } = [];

    /// <summary>Symptoms and checks of the knowledge, found or not.</summary>
    public IReadOnlyList<VisitFinding> Findings { get; init; } = [];

    /// <summary>Parts looked at.</summary>
    public IReadOnlyList<PartLook> Parts { get; init; } = [];

    /// <summary>Photographs.</summary>
    public IReadOnlyList<VisitPhoto> Photos { get; init; } = [];

    /// <summary>What was changed.</summary>
    public IReadOnlyList<VisitChange> Changes { get; init; } = [];

    /// <summary>Parts fitted, on site, ordered.</summary>
    public IReadOnlyList<PartUse> PartsUsed { get; init; } = [];

    /// <summary>Supplies counted.</summary>
    public IReadOnlyList<SupplyCount> Supplies { get; init; } = [];

    /// <summary>Looks for leaks, running and at rest.</summary>
    public IReadOnlyList<LeakLook> Leaks { get; init; } = [];

    /// <summary>Parts of the acceptance test that were declined, each with its reason.</summary>
    public IReadOnlyList<Declined> Declined { get; init; } = [];

    /// <summary>What was taught.</summary>
    public IReadOnlyList<Training> Training { get; init; } = [];

    /// <summary>When recurring work was last done, by the ids of the knowledge's intervals.</summary>
    public IReadOnlyList<Upkeep> Upkeep { get; init; } = [];

    /// <summary>What the last acceptance test left, to be compared with what is found.</summary>
    public IReadOnlyList<EarlierReading> Earlier { get; init; } = [];

    /// <summary>Signatures.</summary>
    public IReadOnlyList<VisitSignature> Signatures { get; init; } = [];

    /// <summary>Day of the visit at the kitchen.</summary>
    public DateOnly On => DateOnly.FromDateTime(Began.DateTime);

    /// <summary>Whether anything was changed: a setting, a cleaning, a repair, a part fitted, a container changed.</summary>
    public bool Touched => Changes.Count > 0 || PartsUsed.Any(p => p.Where == PartWhere.Fitted) || Supplies.Any(s => s.Changed);
}

/// <summary>When something was read or seen.</summary>
public enum VisitMoment
{
    /// <summary>Before anything was touched.</summary>
    AsFound,

    /// <summary>While working.</summary>
    Between,

    /// <summary>When everything was done.</summary>
    AsLeft,
}

/// <summary>What the machine did while it was read.</summary>
public enum OperatingState
{
    /// <summary>Not said: the reading is held against no band.</summary>
    Unknown,

    /// <summary>Hot, without racks.</summary>
    Idle,

    /// <summary>Racks going through.</summary>
    Load,

    /// <summary>From cold until it is at its temperature.</summary>
    HeatUp,
}

/// <summary>One line of readings.</summary>
/// <param name="Kind">Id of the knowledge's reading, <c>rd-</c>, or of <see cref="VisitReadingKinds.Own"/>.</param>
/// <param name="Value">As typed; null where it was not read.</param>
/// <param name="Moment">When.</param>
/// <param name="State">What the machine did.</param>
public sealed record VisitReading(string Kind, Quantities.Amount? Value, VisitMoment Moment, OperatingState State = OperatingState.Unknown)
{
    /// <summary>How.</summary>
    public ReadingMethod Method { get; init; } = ReadingMethod.Probe;

    /// <summary>Name of the instrument in <see cref="Visit.Instruments"/>; null where not said.</summary>
    public string? Instrument { get; init; }

    /// <summary>Name of the strip or label in <see cref="Visit.TestSupplies"/>; null for other methods.</summary>
    public string? Supply { get; init; }

    /// <summary>Moment; null where not said.</summary>
    public DateTimeOffset? At { get; init; }

    /// <summary>Of a label: whether it turned.</summary>
    public bool? Reached { get; init; }

    /// <summary>Racks an hour meanwhile; null for a busy hour of the kind.</summary>
    public double? RacksPerHour { get; init; }

    /// <summary>Why it was not read; null where it was, or where nobody said.</summary>
    public string? NotReadBecause { get; init; }
}

/// <summary>A strip or label: what it tests, its lot, its expiry.</summary>
/// <param name="Tests">Sanitizer it is made for; null for a temperature label.</param>
/// <param name="Lot">Lot; null where not read.</param>
/// <param name="Expires">Expiry; null where not read.</param>
public sealed record TestSupply(SanitizingMethod? Tests, string? Lot = null, DateOnly? Expires = null);

/// <summary>A symptom or check of the knowledge.</summary>
/// <param name="Id"><c>sym-</c>, <c>ctx-</c> or <c>chk-</c>.</param>
/// <param name="Found">Whether it was found.</param>
/// <param name="Moment">When.</param>
/// <param name="Note">What was seen.</param>
public sealed record VisitFinding(string Id, bool Found, VisitMoment Moment, string? Note = null);

/// <summary>State of a part.</summary>
public enum PartState
{
    /// <summary>Nobody looked.</summary>
    NotLookedAt,

    /// <summary>As the knowledge says it looks when sound.</summary>
    Sound,

    /// <summary>One of the knowledge's signs of wear.</summary>
    Worn,

    /// <summary>It does not do its work.</summary>
    Broken,

    /// <summary>It is not there.</summary>
    Missing,
}

/// <summary>A look at a part.</summary>
/// <param name="Part">Id of the part.</param>
/// <param name="State">State.</param>
/// <param name="Moment">When.</param>
public sealed record PartLook(string Part, PartState State, VisitMoment Moment = VisitMoment.AsFound)
{
    /// <summary>Which of the part's signs of wear, from 0.</summary>
    public IReadOnlyList<int> Wear { get; init; } = [];

    /// <summary>Id of the fault that it has; null where it has none or it is not told.</summary>
    public string? Fault { get; init; }

    /// <summary>Note.</summary>
    public string? Note { get; init; }
}

/// <summary>A photograph by its content.</summary>
/// <param name="Sha256">Lower-case hex of its SHA-256.</param>
/// <param name="Moment">When.</param>
/// <param name="Zone">Id of the zone; null where not said.</param>
/// <param name="Part">Id of the part; null where not said.</param>
/// <param name="At">Moment; null where not said.</param>
public sealed record VisitPhoto(string Sha256, VisitMoment Moment, string? Zone = null, string? Part = null, DateTimeOffset? At = null);

/// <summary>Kinds of change.</summary>
public enum ChangeKind
{
    /// <summary>A setting.</summary>
    Set,

    /// <summary>Cleaned or delimed.</summary>
    Cleaned,

    /// <summary>Repaired or adjusted.</summary>
    Repaired,

    /// <summary>A part replaced.</summary>
    Replaced,
}

/// <summary>Something that was changed.</summary>
/// <param name="Kind">Kind.</param>
/// <param name="What">What, in a few words of the technician's.</param>
/// <param name="Areas">Parts of the acceptance test whose readings it moves.</param>
public sealed record VisitChange(ChangeKind Kind, string What, IReadOnlyList<AcceptanceArea> Areas)
{
    /// <summary>Id of the part; null where not said.</summary>
    public string? Part { get; init; }

    /// <summary>Setting before; null where it has no figure.</summary>
    public Quantities.Amount? Before { get; init; }

    /// <summary>Setting after.</summary>
    public Quantities.Amount? After { get; init; }

    /// <summary>Moment; null where not said.</summary>
    public DateTimeOffset? At { get; init; }
}

/// <summary>What became of a part.</summary>
public enum PartWhere
{
    /// <summary>Fitted on this visit.</summary>
    Fitted,

    /// <summary>Lies at the kitchen and is not fitted.</summary>
    OnSite,

    /// <summary>Ordered.</summary>
    Ordered,
}

/// <summary>A part fitted, on site or ordered.</summary>
/// <param name="What">What.</param>
/// <param name="Count">How many, at least 1.</param>
/// <param name="Where">What became of it.</param>
/// <param name="Expected">Of an ordered one, when it is expected; null where not known.</param>
public sealed record PartUse(string What, int Count, PartWhere Where, DateOnly? Expected = null);

/// <summary>A supply counted.</summary>
/// <param name="Product">Name as on the container.</param>
/// <param name="Feeds">What it is for; null for strips, labels, salt and the like.</param>
/// <param name="Count">Containers, whole or part.</param>
/// <param name="DaysLeft">Days it lasts; null where not worked out.</param>
public sealed record SupplyCount(string Product, FedProduct? Feeds, double Count, double? DaysLeft = null)
{
    /// <summary>Whether the container was changed on this visit.</summary>
    public bool Changed { get; init; }

    /// <summary>Whether the line was primed after the change.</summary>
    public bool Primed { get; init; }
}

/// <summary>A look for leaks.</summary>
/// <param name="Dry">Nothing drips, running and at rest.</param>
/// <param name="Moment">When.</param>
/// <param name="Where">Where it drips.</param>
/// <param name="At">Moment; null where not said.</param>
public sealed record LeakLook(bool Dry, VisitMoment Moment, string? Where = null, DateTimeOffset? At = null);

/// <summary>A part of the acceptance test that was not run, and why.</summary>
/// <param name="Area">Which.</param>
/// <param name="Because">Why; never empty.</param>
public sealed record Declined(AcceptanceArea Area, string Because);

/// <summary>A lesson given.</summary>
/// <param name="Topic">Id of the knowledge's topic, <c>tt-</c>.</param>
/// <param name="Names">Who was taught.</param>
/// <param name="Shown">Whether they showed it back.</param>
public sealed record Training(string Topic, IReadOnlyList<string> Names, bool Shown);

/// <summary>Recurring work.</summary>
/// <param name="Interval">Id of the knowledge's interval, <c>iv-</c>.</param>
/// <param name="Last">When it was last done, this visit included; null where nobody knows.</param>
public sealed record Upkeep(string Interval, DateOnly? Last);

/// <summary>What an earlier acceptance test left.</summary>
/// <param name="Kind">Id of the reading.</param>
/// <param name="Value">Value.</param>
/// <param name="State">What the machine did.</param>
/// <param name="On">Day.</param>
public sealed record EarlierReading(string Kind, Quantities.Amount Value, OperatingState State, DateOnly On);

/// <summary>How sure a cause is.</summary>
public enum CauseKnown
{
    /// <summary>Shown by a check, and gone after the cure.</summary>
    Confirmed,

    /// <summary>Fits best.</summary>
    Likely,
}

/// <summary>Whose a cause is.</summary>
public enum CauseOwner
{
    /// <summary>Water, power, drain and air of the building.</summary>
    Building,

    /// <summary>Chemicals and their feeders.</summary>
    Chemicals,

    /// <summary>The machine.</summary>
    Machine,

    /// <summary>Habits.</summary>
    Crew,
}

/// <summary>What a complaint proved to be.</summary>
/// <param name="Fault">Id of the fault.</param>
/// <param name="Known">How sure.</param>
/// <param name="Owner">Whose.</param>
public sealed record VisitCause(string Fault, CauseKnown Known, CauseOwner Owner);

/// <summary>Who signs.</summary>
public enum SignedFor
{
    /// <summary>The technician.</summary>
    Technician,

    /// <summary>The kitchen.</summary>
    Kitchen,
}

/// <summary>A signature.</summary>
/// <param name="For">For whom.</param>
/// <param name="Name">Name.</param>
/// <param name="At">Moment.</param>
/// <param name="Image">SHA-256 of the drawn signature; null where the name was typed.</param>
/// <param name="Strokes">The signature as drawn with a finger; null where the name alone was typed.</param>
public sealed record VisitSignature(SignedFor For, string Name, DateTimeOffset At, string? Image = null, string? Strokes = null);

/// <summary>Parts of the acceptance test.</summary>
public enum AcceptanceArea
{
    /// <summary>Temperatures, and the proof on the ware.</summary>
    Heat,

    /// <summary>Flow pressure of the final rinse.</summary>
    Pressure,

    /// <summary>Detergent, rinse additive, sanitizer.</summary>
    Chemistry,

    /// <summary>Conveyor speed or cycle times.</summary>
    Timing,

    /// <summary>Leaks, running and at rest.</summary>
    Leaks,
}
