namespace Rinsewright.Engine.Knowledge;

/// <summary>How often a fault shows a finding, as an expert says it.</summary>
public enum Level
{
    /// <summary>Speaks against the fault.</summary>
    Never,

    /// <summary>Not listed: only as often as without the fault.</summary>
    Unlisted,

    /// <summary>Rare.</summary>
    Rare,

    /// <summary>Sometimes.</summary>
    Sometimes,

    /// <summary>Often.</summary>
    Often,

    /// <summary>Usual.</summary>
    Usual,

    /// <summary>Always.</summary>
    Always,
}

/// <summary>What can be wrong.</summary>
/// <param name="Id">Its id, shared with the faults of the machine model.</param>
/// <param name="Zone">Id of its zone.</param>
/// <param name="Part">Id of its part.</param>
/// <param name="Name">Its name.</param>
/// <param name="Machines">Machine types or groups.</param>
/// <param name="Impact">Id of what it harms.</param>
/// <param name="StopUse"><c>yes</c>, <c>if-proof-fails</c> or <c>no</c>.</param>
/// <param name="Prior">How often it is met.</param>
/// <param name="Mechanism">How it comes about.</param>
/// <param name="Confirm">What confirms it.</param>
/// <param name="Cure">What mends it.</param>
/// <param name="Minutes">How long that takes.</param>
/// <param name="Spares">What is needed.</param>
/// <param name="Who">Who may do it.</param>
/// <param name="Safety">Ids of the hazards of the cure.</param>
/// <param name="Recurs">When it comes back.</param>
/// <param name="Agents">What the cure puts on ware or machine, in order.</param>
/// <param name="Sanitizing">Only in this mode; null for any.</param>
/// <param name="Src">Where it comes from.</param>
public sealed record TradeFault(
    string Id,
    string Zone,
    string Part,
    Phrase Name,
    IReadOnlyList<string> Machines,
    string Impact,
    string StopUse,
    FaultPrior Prior,
    Phrase Mechanism,
    Confirmation Confirm,
    Phrase Cure,
    double Minutes,
    IReadOnlyList<Phrase> Spares,
    string Who,
    IReadOnlyList<string> Safety,
    Phrase Recurs,
    IReadOnlyList<string> Agents,
    IReadOnlyList<string> Src,
    string? Sanitizing = null
);

/// <summary>How often a fault is met before anybody looks: an expert's estimate.</summary>
/// <param name="Weight">Visits of a thousand that show it.</param>
public sealed record FaultPrior(double Weight);

/// <summary>What confirms a fault.</summary>
/// <param name="By">Ids of findings.</param>
/// <param name="Also">What else shows it.</param>
public sealed record Confirmation(IReadOnlyList<string> By, Phrase? Also = null);

/// <summary>How faults and findings hang together: an expert's estimate throughout.</summary>
/// <param name="Levels">Chance of a finding for each level.</param>
/// <param name="PriorScale">Chance of a fault for each unit of its weight.</param>
/// <param name="Leaks">Chance of each finding when no fault causes it.</param>
/// <param name="Faults">Findings of each fault by level.</param>
/// <param name="Src">Where it comes from.</param>
public sealed record Likelihoods(
    IReadOnlyDictionary<string, double> Levels,
    double PriorScale,
    IReadOnlyDictionary<string, double> Leaks,
    IReadOnlyList<FaultFindings> Faults,
    IReadOnlyList<string> Src
);

/// <summary>Findings of a fault.</summary>
/// <param name="Id">Id of the fault.</param>
/// <param name="Always">Ids of findings at each level.</param>
/// <param name="Usual">Usual.</param>
/// <param name="Often">Often.</param>
/// <param name="Sometimes">Sometimes.</param>
/// <param name="Rare">Rare.</param>
/// <param name="Never">What speaks against it.</param>
public sealed record FaultFindings(
    string Id,
    IReadOnlyList<string> Always,
    IReadOnlyList<string> Usual,
    IReadOnlyList<string> Often,
    IReadOnlyList<string> Sometimes,
    IReadOnlyList<string> Rare,
    IReadOnlyList<string> Never
)
{
    /// <summary>Every finding with its level.</summary>
    public IEnumerable<(string Finding, Level Level)> All() =>
        Always
            .Select(f => (f, Level.Always))
            .Concat(Usual.Select(f => (f, Level.Usual)))
            .Concat(Often.Select(f => (f, Level.Often)))
            .Concat(Sometimes.Select(f => (f, Level.Sometimes)))
            .Concat(Rare.Select(f => (f, Level.Rare)))
            .Concat(Never.Select(f => (f, Level.Never)));
}

/// <summary>A picture on ware: what is seen, what may be behind it, how to tell, what helps.</summary>
/// <param name="Id">Its id, <c>wr-</c>.</param>
/// <param name="Name">Its name.</param>
/// <param name="Symptoms">Ids of the symptoms it is.</param>
/// <param name="Look">How it looks.</param>
/// <param name="Causes">Ids of faults that make it, the likelier first.</param>
/// <param name="Tests">What tells the causes apart.</param>
/// <param name="Cure">What helps, in order.</param>
/// <param name="Agents">What the cure puts on ware, in order.</param>
/// <param name="Safety">Ids of the hazards of the cure.</param>
/// <param name="Mistake">What is usually done wrong.</param>
/// <param name="Src">Where it comes from.</param>
public sealed record WareResult(
    string Id,
    Phrase Name,
    IReadOnlyList<string> Symptoms,
    Phrase Look,
    IReadOnlyList<string> Causes,
    IReadOnlyList<WareTest> Tests,
    IReadOnlyList<Phrase> Cure,
    IReadOnlyList<string> Agents,
    IReadOnlyList<string> Safety,
    Phrase Mistake,
    IReadOnlyList<string> Src
);

/// <summary>A test that tells causes apart.</summary>
/// <param name="Do">Id of the check, or of the state of a reading.</param>
/// <param name="IfFound">What is found, in this picture's words.</param>
/// <param name="Points">Ids of the faults it then points to.</param>
public sealed record WareTest(string Do, Phrase IfFound, IReadOnlyList<string> Points);
