using Rinsewright.Engine.Quantities;
using Rinsewright.Engine.Records;

namespace Rinsewright.Engine.Sanitization;

/// <summary>What the evidence amounts to.</summary>
public enum Outcome
{
    /// <summary>The evidence passes even at its lower bound.</summary>
    Proven,

    /// <summary>The evidence fails even at its upper bound.</summary>
    NotProven,

    /// <summary>The evidence does not settle it.</summary>
    Undetermined,
}

/// <summary>How a reading stands against its limits.</summary>
public enum ReadingStatus
{
    /// <summary>Within every limit.</summary>
    InRange,

    /// <summary>Within the limits, but the instrument's uncertainty or the working band leaves doubt.</summary>
    NearLimit,

    /// <summary>Outside a limit.</summary>
    OutOfRange,

    /// <summary>Nobody read it. Never shown as in range.</summary>
    NotRead,

    /// <summary>What was read does not settle whether the limit was met.</summary>
    Open,

    /// <summary>Read, and the rules in force have no limit for it.</summary>
    NoLimit,
}

/// <summary>A computed value with the bounds it can truly have.</summary>
/// <param name="Value">Best value.</param>
/// <param name="Low">Lower bound.</param>
/// <param name="High">Upper bound.</param>
public readonly record struct Bounded(double Value, double Low, double High);

/// <summary>One step of a derivation: data, so that every screen and sheet renders the same working.</summary>
/// <param name="Equation">Equation id of the slice's README, for example <c>S1</c>; empty for a plain comparison.</param>
/// <param name="Says">The step in words.</param>
/// <param name="Result">What it gives; null for a step that states an assumption.</param>
/// <param name="Citation">Where the equation or figure comes from; null where it is arithmetic.</param>
public sealed record DerivationStep(string Equation, Statement Says, Amount? Result = null, Citation? Citation = null);

/// <summary>One proof on its own line: one never excuses another.</summary>
/// <param name="Id">Stable id: <c>heat-dose</c>, <c>peak</c>, or the point and dimension of a reading.</param>
/// <param name="Outcome">What it amounts to.</param>
/// <param name="Status">How to show it.</param>
/// <param name="Value">What was found; null where not read.</param>
/// <param name="Low">Lower bound in the unit of <paramref name="Value"/>; null where there is none.</param>
/// <param name="High">Upper bound in the unit of <paramref name="Value"/>; null where there is none.</param>
/// <param name="Limit">The limit that decided; null where none applies.</param>
/// <param name="Because">The reason in words.</param>
/// <param name="WouldSettle">What would settle it where it is undetermined.</param>
/// <param name="Derivation">The working.</param>
/// <param name="Reading">The reading judged; null for a trace.</param>
public sealed record Check(
    string Id,
    Outcome Outcome,
    ReadingStatus Status,
    Amount? Value,
    Amount? Low,
    Amount? High,
    Limit? Limit,
    Statement Because,
    IReadOnlyList<Statement> WouldSettle,
    IReadOnlyList<DerivationStep> Derivation,
    Reading? Reading = null
);

/// <summary>The verdict over several checks.</summary>
/// <param name="Outcome">Worst of the checks that count.</param>
/// <param name="Because">Reasons, the deciding one first.</param>
/// <param name="WouldSettle">What would settle an undetermined one.</param>
public sealed record Verdict(Outcome Outcome, IReadOnlyList<Statement> Because, IReadOnlyList<Statement> WouldSettle);

/// <summary>A heating leg inside a pass: one zone or phase of the machine as the ware felt it.</summary>
/// <param name="StartSeconds">When the surface began to rise.</param>
/// <param name="PeakSeconds">When it stopped rising.</param>
/// <param name="Peak">Highest value in the leg, in the trace's unit.</param>
/// <param name="Name">Word key of the zone where the machine type names it, for example <c>zone.wash</c>; null where it cannot be told.</param>
public sealed record ZoneSeen(double StartSeconds, double PeakSeconds, Amount Peak, string? Name);

/// <summary>What one channel shows.</summary>
/// <param name="Trace">The samples.</param>
/// <param name="Role">Where the sensor was.</param>
/// <param name="Passes">Passes found.</param>
/// <param name="Notes">What else was seen: idle drift, a logger on the counter, too slow a logger.</param>
public sealed record ChannelProof(Trace Trace, MeasuringPoint Role, IReadOnlyList<Pass> Passes, IReadOnlyList<Statement> Notes);

/// <summary>The whole proof.</summary>
/// <param name="Terms">What it was judged against.</param>
/// <param name="Limits">The limits that apply, the deciding ones of each point first.</param>
/// <param name="Channels">Channels of the logger file; empty where there was none.</param>
/// <param name="Checks">Checks of typed-in readings, <i>not read</i> ones included.</param>
/// <param name="Verdict">Verdict over all.</param>
public sealed record Proof(
    ProofTerms Terms,
    IReadOnlyList<Limit> Limits,
    IReadOnlyList<ChannelProof> Channels,
    IReadOnlyList<Check> Checks,
    Verdict Verdict
);

/// <summary>What a proof is judged against.</summary>
/// <param name="Machine">Machine type.</param>
/// <param name="Method">Sanitizing method.</param>
/// <param name="Rules">Rule set in force.</param>
/// <param name="Plate">Data plate of the machine.</param>
/// <param name="Label">Label of the sanitizer product.</param>
/// <param name="Instrument">The logger; its uncertainty null where not stated, then the worst the rules allow is taken and said.</param>
/// <param name="HeatUnits">Options of the heat-unit sum.</param>
public sealed record ProofTerms(
    MachineType Machine,
    SanitizingMethod Method,
    RuleSet Rules,
    DataPlate? Plate = null,
    SanitizerLabel? Label = null,
    Instrument? Instrument = null,
    HeatUnitOptions? HeatUnits = null
);

/// <summary>Named options of the heat-unit sum.</summary>
/// <param name="Cap">Surface temperature above which no further credit is given; null for no cap.</param>
/// <param name="Floor">Surface temperature below which nothing counts; null for no floor. An assumption: the source does not say.</param>
public sealed record HeatUnitOptions(Temperature? Cap, Temperature? Floor)
{
    /// <summary>Cap 165 °F as the source says, floor 143 °F, the lower anchor of its curve (an assumption, named on every sheet).</summary>
    public static HeatUnitOptions Default { get; } = new(Temperature.FromFahrenheit(165), Temperature.FromFahrenheit(143));
}
