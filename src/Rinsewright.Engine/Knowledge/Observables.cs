namespace Rinsewright.Engine.Knowledge;

/// <summary>What can be said, read and looked at.</summary>
/// <param name="Symptoms">What people say, and when or of which ware.</param>
/// <param name="Readings">What is read, with its named states.</param>
/// <param name="Checks">What is found or not found.</param>
public sealed record TradeObservables(
    IReadOnlyList<Symptom> Symptoms,
    IReadOnlyList<KnownReading> Readings,
    IReadOnlyList<TradeCheck> Checks
);

/// <summary>What people say.</summary>
/// <param name="Id">Its id, <c>sym-</c>, or <c>ctx-</c> for when, what changed and which ware.</param>
/// <param name="Kind"><c>ware</c>, <c>machine</c>, <c>proof</c> or <c>context</c>.</param>
/// <param name="Cluster">Name shared by symptoms that say nearly the same.</param>
/// <param name="Name">Its name.</param>
/// <param name="Machines">Machine types or groups.</param>
/// <param name="Say">How kitchens put it, in English.</param>
/// <param name="SayEs">How kitchens put it, in Spanish: other sayings, not translations.</param>
/// <param name="AskNext">Ids of findings worth asking for next.</param>
/// <param name="First">Whether it is acted on before any ranking.</param>
/// <param name="Src">Where it comes from.</param>
public sealed record Symptom(
    string Id,
    string Kind,
    string Cluster,
    Phrase Name,
    IReadOnlyList<string> Machines,
    IReadOnlyList<string> Say,
    IReadOnlyList<string> SayEs,
    IReadOnlyList<string> AskNext,
    IReadOnlyList<string> Src,
    bool First = false
);

/// <summary>Something that is read.</summary>
/// <param name="Id">Its id, <c>rd-</c>.</param>
/// <param name="Zone">Id of its zone.</param>
/// <param name="Name">Its name.</param>
/// <param name="Unit">Unit as the trade writes it.</param>
/// <param name="Machines">Machine types or groups.</param>
/// <param name="Normal">What is normal, by machine and mode. The data plate and local code override every figure.</param>
/// <param name="States">Named states outside the normal.</param>
/// <param name="Method">How it is read.</param>
/// <param name="Instrument">With what.</param>
/// <param name="Accuracy">How well.</param>
/// <param name="Minutes">How long it takes.</param>
/// <param name="Machine">Id of the state the machine is in.</param>
/// <param name="Risk">Id of the hazard.</param>
/// <param name="Who">Who reads it.</param>
/// <param name="Sanitizing">Only in this mode; null for any.</param>
/// <param name="Src">Where it comes from.</param>
public sealed record KnownReading(
    string Id,
    string Zone,
    Phrase Name,
    string Unit,
    IReadOnlyList<string> Machines,
    IReadOnlyList<NormalRange> Normal,
    IReadOnlyList<ReadingState> States,
    Phrase Method,
    Phrase Instrument,
    Phrase Accuracy,
    double Minutes,
    string Machine,
    string Risk,
    string Who,
    IReadOnlyList<string> Src,
    string? Sanitizing = null
);

/// <summary>What is normal for a reading on some machines.</summary>
/// <param name="Machines">Machine types or groups.</param>
/// <param name="Mode">Way of sanitizing, or a fitting; <c>any</c> for all.</param>
/// <param name="Min">Least; null where there is none.</param>
/// <param name="Max">Most; null where there is none.</param>
/// <param name="Note">What goes with it.</param>
/// <param name="Src">Where it comes from.</param>
/// <param name="MaxSrc">Where the most comes from, if elsewhere.</param>
public sealed record NormalRange(
    IReadOnlyList<string> Machines,
    string Mode,
    IReadOnlyList<string> Src,
    double? Min = null,
    double? Max = null,
    Phrase? Note = null,
    string? MaxSrc = null
);

/// <summary>A named state of a reading.</summary>
/// <param name="Id"><c>reading/state</c>.</param>
/// <param name="When">When it is in this state.</param>
public sealed record ReadingState(string Id, Phrase When);

/// <summary>Something that is looked at or tried, and found or not found.</summary>
/// <param name="Id">Its id, <c>chk-</c>.</param>
/// <param name="Zone">Id of its zone.</param>
/// <param name="Name">Its name.</param>
/// <param name="FoundWhen">What counts as found.</param>
/// <param name="How">How it is done.</param>
/// <param name="Kind"><c>visual</c> or <c>functional</c>.</param>
/// <param name="Minutes">How long it takes.</param>
/// <param name="Machine">Id of the state the machine is in.</param>
/// <param name="Tool">What is needed; null for nothing.</param>
/// <param name="Risk">Id of the hazard.</param>
/// <param name="Who">Who may do it.</param>
/// <param name="Machines">Machine types or groups.</param>
/// <param name="Agents">What it puts on the piece, in order; <c>rinse</c> between.</param>
/// <param name="First">Whether it is done before any ranking.</param>
/// <param name="Src">Where it comes from.</param>
public sealed record TradeCheck(
    string Id,
    string Zone,
    Phrase Name,
    Phrase FoundWhen,
    Phrase How,
    string Kind,
    double Minutes,
    string Machine,
    string Risk,
    string Who,
    IReadOnlyList<string> Machines,
    IReadOnlyList<string> Agents,
    IReadOnlyList<string> Src,
    Phrase? Tool = null,
    bool First = false
);
