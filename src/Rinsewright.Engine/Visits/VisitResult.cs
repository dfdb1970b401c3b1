using Rinsewright.Engine.Knowledge;
using Rinsewright.Engine.Quantities;
using Rinsewright.Engine.Records;
using Rinsewright.Engine.Sanitization;

namespace Rinsewright.Engine.Visits;

/// <summary>How a machine is left, the worst first.</summary>
public enum VisitStanding
{
    /// <summary>Somebody can get hurt: nobody uses it.</summary>
    StopUse,

    /// <summary>Ware is not sanitized: not used for sanitizing until it is proved again.</summary>
    NotSanitary,

    /// <summary>Not proved today.</summary>
    NotProved,

    /// <summary>Proved, with something to look at again.</summary>
    Watch,

    /// <summary>Sanitizing proved, nothing open.</summary>
    Sanitary,
}

/// <summary>Why a machine must not be used.</summary>
public enum StopKind
{
    /// <summary>Somebody can get hurt.</summary>
    Danger,

    /// <summary>Ware is not sanitized.</summary>
    Sanitizing,
}

/// <summary>A reason to stop.</summary>
/// <param name="Kind">Kind.</param>
/// <param name="Id">Id of the fault, or of the symptom that is acted on before anything else.</param>
/// <param name="Name">Its name.</param>
/// <param name="FoundBy">What was found.</param>
/// <param name="Open">Whether it still stands: false where it was looked for again at the end and was gone.</param>
/// <param name="Hazards">What can hurt at its cure, with the caution.</param>
/// <param name="Who">Who may cure it.</param>
/// <param name="Cure">What mends it; null where only a check tells.</param>
/// <param name="Checks">How it is looked for again: it is safe when these find it gone.</param>
public sealed record StopReason(
    StopKind Kind,
    string Id,
    Phrase Name,
    Statement FoundBy,
    bool Open,
    IReadOnlyList<Hazard> Hazards,
    Person? Who,
    Phrase? Cure,
    IReadOnlyList<Phrase> Checks
);

/// <summary>How a reading lies against the machine's own band.</summary>
public enum BandStanding
{
    /// <summary>Not read.</summary>
    NotRead,

    /// <summary>No band: the model reads no such thing in that state, or the state was not said.</summary>
    NoBand,

    /// <summary>Inside.</summary>
    Inside,

    /// <summary>Outside by no more than the instrument may be off.</summary>
    Edge,

    /// <summary>Below.</summary>
    Below,

    /// <summary>Above.</summary>
    Above,
}

/// <summary>A line of readings with everything it was held against.</summary>
/// <param name="Reading">The reading.</param>
/// <param name="Known">The knowledge's entry; null for the readings of our own.</param>
/// <param name="Rule">Against rule and data plate; null where neither speaks of it, or where it may not be used.</param>
/// <param name="Band">Against the machine's own band.</param>
/// <param name="Own">That band, in the unit of the reading; null where there is none.</param>
/// <param name="Usual">What is usual of the trade, where neither rule nor band speaks; null otherwise.</param>
/// <param name="UsualSource">Where that comes from.</param>
/// <param name="Says">What there is to say of it, the weightiest first.</param>
public sealed record JudgedReading(
    VisitReading Reading,
    KnownReading? Known,
    Check? Rule,
    BandStanding Band,
    OwnBand? Own,
    (Amount? Low, Amount? High)? Usual,
    IReadOnlyList<string> UsualSource,
    IReadOnlyList<Statement> Says
)
{
    /// <summary>How to show it: by the rule where it speaks, else by the band, else by what is usual. Outside a band or the usual is <i>near limit</i>: unusual, not forbidden.</summary>
    public ReadingStatus Status =>
        Reading.Value is null ? ReadingStatus.NotRead
        : Rule is { Status: not ReadingStatus.NoLimit } rule ? rule.Status
        : Band is BandStanding.Below or BandStanding.Above ? ReadingStatus.NearLimit
        : Band is BandStanding.Inside or BandStanding.Edge ? ReadingStatus.InRange
        : Usual is { } usual
            ? (
                (usual.Low is { } low && Reading.Value.Value.SI < low.SI) || (usual.High is { } high && Reading.Value.Value.SI > high.SI)
                    ? ReadingStatus.NearLimit
                    : ReadingStatus.InRange
            )
        : ReadingStatus.NoLimit;
}

/// <summary>How a part of the acceptance test stands.</summary>
public enum AcceptanceStanding
{
    /// <summary>Nothing was changed: none is needed.</summary>
    NotNeeded,

    /// <summary>The machine has no such thing.</summary>
    HasNone,

    /// <summary>Run after the last change, and passed.</summary>
    Passed,

    /// <summary>Run, and failed.</summary>
    Failed,

    /// <summary>Declined, with a reason.</summary>
    Declined,

    /// <summary>Needed, and not run.</summary>
    NotRun,
}

/// <summary>A part of the acceptance test.</summary>
/// <param name="Area">Which.</param>
/// <param name="Standing">How it stands.</param>
/// <param name="Because">Why.</param>
/// <param name="Needs">Ids of the readings that are still needed.</param>
public sealed record AcceptanceLine(AcceptanceArea Area, AcceptanceStanding Standing, Statement Because, IReadOnlyList<string> Needs);

/// <summary>Something that is missing before the visit can be signed.</summary>
/// <param name="Says">What, and what mends it.</param>
/// <param name="Blocks">Whether it keeps the visit from being signed; otherwise it is signed with this said.</param>
public sealed record Lacking(Statement Says, bool Blocks);

/// <summary>Readings that cannot both be true.</summary>
/// <param name="Says">Why.</param>
/// <param name="Readings">Places of the readings in <see cref="VisitResult.Readings"/>, the likeliest wrong one first.</param>
public sealed record ReadingClash(Statement Says, IReadOnlyList<int> Readings);

/// <summary>When the next visit is due, and why.</summary>
/// <param name="On">Day.</param>
/// <param name="Because">The reason that makes it the earliest.</param>
/// <param name="Others">Other reasons with their days, the earlier first.</param>
public sealed record NextVisit(DateOnly On, Statement Because, IReadOnlyList<(DateOnly On, Statement Because)> Others);

/// <summary>A plain line for the kitchen.</summary>
/// <param name="Parts">What it says, in order.</param>
public sealed record PlainLine(IReadOnlyList<Statement> Parts);

/// <summary>A part to look at, as it stands.</summary>
/// <param name="Part">The part.</param>
/// <param name="Found">Worst of the looks before; null where nobody looked.</param>
/// <param name="Left">Last look when everything was done; null where nobody looked again.</param>
public sealed record PartLine(Part Part, PartLook? Found, PartLook? Left)
{
    /// <summary>State to show.</summary>
    public PartState State => (Left ?? Found)?.State ?? PartState.NotLookedAt;
}

/// <summary>What a visit amounts to so far.</summary>
/// <param name="Standing">How the machine is left.</param>
/// <param name="Because">Why, the deciding reason first.</param>
/// <param name="Stops">Reasons to stop, dangers first; those made safe too.</param>
/// <param name="Before">Proof as found.</param>
/// <param name="After">Proof as left.</param>
/// <param name="Readings">Every line, what was not read too.</param>
/// <param name="Clashes">Readings that cannot both be true.</param>
/// <param name="Unexplained">Changes of readings that nothing recorded explains.</param>
/// <param name="CrewLogs">Logs of the crew, in the order of the visit.</param>
/// <param name="Parts">Parts in the machine's own order.</param>
/// <param name="Acceptance">The acceptance test.</param>
/// <param name="Missing">What is missing before it can be signed.</param>
/// <param name="Warnings">What else the technician should know.</param>
/// <param name="Next">Next visit.</param>
/// <param name="Was">What it was.</param>
/// <param name="Done">What was done.</param>
/// <param name="YouDo">What the kitchen does.</param>
public sealed record VisitResult(
    VisitStanding Standing,
    IReadOnlyList<Statement> Because,
    IReadOnlyList<StopReason> Stops,
    Proof Before,
    Proof After,
    IReadOnlyList<JudgedReading> Readings,
    IReadOnlyList<ReadingClash> Clashes,
    IReadOnlyList<Statement> Unexplained,
    IReadOnlyList<JudgedCrewLog> CrewLogs,
    IReadOnlyList<PartLine> Parts,
    IReadOnlyList<AcceptanceLine> Acceptance,
    IReadOnlyList<Lacking> Missing,
    IReadOnlyList<Statement> Warnings,
    NextVisit Next,
    PlainLine Was,
    PlainLine Done,
    PlainLine YouDo
)
{
    /// <summary>Whether nothing keeps it from being signed.</summary>
    public bool MayBeSigned => Missing.All(m => !m.Blocks);
}
