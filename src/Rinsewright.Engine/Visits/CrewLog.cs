using Rinsewright.Engine.Knowledge;
using Rinsewright.Engine.Quantities;
using Rinsewright.Engine.Records;
using Rinsewright.Engine.Sanitization;

namespace Rinsewright.Engine.Visits;

/// <summary>A log that the crew keeps on paper, as far as it was copied on a visit. What was not copied is not known; what is not written there is missing.</summary>
/// <param name="Kind">What the crew reads: id of <see cref="VisitReadingKinds"/>.</param>
/// <param name="Unit">Unit as printed on the paper.</param>
/// <param name="Until">Last day looked at.</param>
/// <param name="Days">Days looked at, at least 1.</param>
/// <param name="ShiftsPerDay">Entries a day that should be written, at least 1.</param>
public sealed record CrewLog(string Kind, Unit Unit, DateOnly Until, int Days, int ShiftsPerDay)
{
    /// <summary>Days that are looked at, as the knowledge's check <c>chk-log-gaps</c> has it.</summary>
    public const int UsualDays = 14;

    /// <summary>What the machine does when the crew reads it.</summary>
    public OperatingState State { get; init; }

    /// <summary>Whether everything on the paper is copied. Otherwise only the days from the first copied entry to the last count.</summary>
    public bool Whole { get; init; }

    /// <summary>What is written.</summary>
    public IReadOnlyList<CrewEntry> Entries { get; init; } = [];

    /// <summary>What is written and cannot be read.</summary>
    public IReadOnlyList<UnreadEntry> Unread { get; init; } = [];

    /// <summary>Days on which the kitchen was closed.</summary>
    public IReadOnlyList<DateOnly> Closed { get; init; } = [];

    /// <summary>First day looked at.</summary>
    public DateOnly From => Until.AddDays(1 - Days);

    /// <summary>Whether anything of it was looked at.</summary>
    public bool LookedThrough => Whole || Entries.Count > 0 || Unread.Count > 0;

    /// <summary>Entries of the days and shifts looked at, in their order; what lies outside is kept, and does not count.</summary>
    public IReadOnlyList<CrewEntry> Looked =>
        [
            .. Entries
                .Where(e => e.On >= From && e.On <= Until && e.Shift >= 1 && e.Shift <= ShiftsPerDay)
                .OrderBy(e => e.On)
                .ThenBy(e => e.Shift)
                .ThenBy(e => e.Value)
                .DistinctBy(e => (e.On, e.Shift)),
        ];

    /// <summary>Entries of the days and shifts looked at that cannot be read, in their order.</summary>
    public IReadOnlyList<UnreadEntry> LookedUnread =>
        [
            .. Unread
                .Where(e => e.On >= From && e.On <= Until && e.Shift >= 1 && e.Shift <= ShiftsPerDay)
                .OrderBy(e => e.On)
                .ThenBy(e => e.Shift),
        ];

    /// <summary>First and last day that count; null where nothing was copied.</summary>
    public (DateOnly First, DateOnly Last)? Counts =>
        Whole ? (From, Until)
        : Looked.Select(e => e.On).Concat(LookedUnread.Select(e => e.On)).Order().ToList() is [var first, ..] days ? (first, days[^1])
        : null;

    /// <summary>Line of the paper that a day stands on, from 1: a day a line, the first day looked at in front.</summary>
    public int LineOf(DateOnly day) => day.DayNumber - From.DayNumber + 1;
}

/// <summary>A value in a crew's log.</summary>
/// <param name="On">Day.</param>
/// <param name="Shift">Shift, from 1.</param>
/// <param name="Value">As written, in the unit of the log.</param>
/// <param name="ActionWritten">Of a value outside its limit, whether it is written what was done; null where nobody looked.</param>
public sealed record CrewEntry(DateOnly On, int Shift, double Value, bool? ActionWritten = null);

/// <summary>Something in a crew's log that is no number, or none that such a reading can have: written, and so not missing, but it says nothing.</summary>
/// <param name="On">Day.</param>
/// <param name="Shift">Shift, from 1.</param>
/// <param name="Text">As written.</param>
public sealed record UnreadEntry(DateOnly On, int Shift, string Text);

/// <summary>A value that stands in a log again and again.</summary>
/// <param name="Value">The value.</param>
/// <param name="Count">How often it stands.</param>
/// <param name="Of">Of how many entries.</param>
/// <param name="Shift">The shift that writes it; null for all of them.</param>
/// <param name="Step">Smallest step the entries are written in, or that a gauge may have.</param>
/// <param name="Chance">Most chance that real readings agree so; null where it is not known how they vary.</param>
public sealed record SameNumber(Amount Value, int Count, int Of, int? Shift, Amount Step, double? Chance)
{
    /// <summary>Whether it was likely written without reading. A suspicion, no proof.</summary>
    public bool Likely => Chance < CrewLogJudgement.Risk;
}

/// <summary>An entry outside a limit.</summary>
/// <param name="Entry">The entry.</param>
/// <param name="Limit">The limit it misses.</param>
public sealed record OutsideEntry(CrewEntry Entry, Limit Limit);

/// <summary>The middle of a log beside what was read on the visit.</summary>
/// <param name="Middle">Half of the entries are above it.</param>
/// <param name="Read">What was read as found with an instrument, in the unit of the log.</param>
/// <param name="MayDiffer">What gauge and instrument together may be off, as a difference.</param>
public sealed record LogMiddle(Amount Middle, Amount Read, Amount MayDiffer)
{
    /// <summary>Whether they differ by more than both may be off.</summary>
    public bool Apart => Math.Abs(Middle.Value - Read.Value) > MayDiffer.Value;
}

/// <summary>A crew's log with what it says.</summary>
/// <param name="Log">The log.</param>
/// <param name="Known">The knowledge's entry of what is read; null for the readings of our own.</param>
/// <param name="Expected">Entries that should be written on the days that count.</param>
/// <param name="MissingByShift">How many are missing, by shift.</param>
/// <param name="Same">What stands most often; null where too little is copied.</param>
/// <param name="Outside">Entries outside rule or data plate; null where neither speaks of it.</param>
/// <param name="Middle">Against what was read; null where nothing fit was read.</param>
/// <param name="Says">Everything there is to say.</param>
/// <param name="Because">What of it has to be looked at again.</param>
public sealed record JudgedCrewLog(
    CrewLog Log,
    KnownReading? Known,
    int Expected,
    IReadOnlyList<int> MissingByShift,
    SameNumber? Same,
    IReadOnlyList<OutsideEntry>? Outside,
    LogMiddle? Middle,
    IReadOnlyList<Statement> Says,
    IReadOnlyList<Statement> Because
)
{
    /// <summary>Limits of rule and data plate that its entries are held against.</summary>
    public IReadOnlyList<Limit> Limits { get; init; } = [];

    /// <summary>The machine's own band of what is read, in the state it is read in; null where there is none.</summary>
    public OwnBand? Own { get; init; }

    /// <summary>What the machine's gauge may be off, as a difference in the unit of the log; null where nobody knows.</summary>
    public Amount? GaugeOff { get; init; }

    /// <summary>Name of what is read: the knowledge's phrase, or the place's own word.</summary>
    public object Name => Known is { } known ? known.Name : Statement.Of($"visit.kind.{Log.Kind}");

    /// <summary>Something it says, with what it is a log of in front.</summary>
    public Statement Of(Statement says) => Statement.Of("visit.log.of", ("reading", Name), ("says", says));

    /// <summary>Entries that are missing.</summary>
    public int Missing => MissingByShift.Sum();

    /// <summary>Whether the knowledge's check <c>chk-log-gaps</c> finds it: shifts missing, or the same number again and again.</summary>
    public bool Gaps => Missing > 0 || Same is { Likely: true };
}
