namespace Rinsewright.Engine.Knowledge;

/// <summary>What machines are made of.</summary>
/// <param name="MachineTypes">Kinds of machine.</param>
/// <param name="Parts">Their parts.</param>
public sealed record Anatomy(IReadOnlyList<KnownMachine> MachineTypes, IReadOnlyList<Part> Parts);

/// <summary>A kind of machine.</summary>
/// <param name="Id">Its id.</param>
/// <param name="Name">Its name.</param>
/// <param name="Sanitizing"><c>hot</c>, <c>chemical</c> or both.</param>
/// <param name="Flow">How ware goes through it.</param>
/// <param name="Tanks">Tanks with a pump.</param>
/// <param name="Zones">Ids of its zones, in the way of the ware.</param>
/// <param name="Cycle">What happens in a cycle.</param>
/// <param name="Typical">Usual ranges, by their name, in the units the name says.</param>
/// <param name="WaterChange">When its water is changed.</param>
/// <param name="OutOrder">Ids of the parts in the order they come out.</param>
/// <param name="InOrder">Ids of the parts in the order they go back.</param>
/// <param name="Curtains">Where curtains hang: a default known poorly; the plan posted at the machine overrides it.</param>
/// <param name="Watch">What to look out for.</param>
/// <param name="Src">Where it comes from.</param>
public sealed record KnownMachine(
    string Id,
    Phrase Name,
    IReadOnlyList<string> Sanitizing,
    Phrase Flow,
    int Tanks,
    IReadOnlyList<string> Zones,
    Phrase Cycle,
    IReadOnlyDictionary<string, string> Typical,
    Phrase WaterChange,
    IReadOnlyList<string> OutOrder,
    IReadOnlyList<string> InOrder,
    IReadOnlyList<CurtainSlot> Curtains,
    IReadOnlyList<Phrase> Watch,
    IReadOnlyList<string> Src
);

/// <summary>Where a curtain hangs.</summary>
/// <param name="Slot">Between which zones.</param>
/// <param name="Length"><c>long</c> or <c>short</c>.</param>
/// <param name="Why">What it is for.</param>
public sealed record CurtainSlot(string Slot, string Length, Phrase Why);

/// <summary>A part of a machine or of its site.</summary>
/// <param name="Id">Its id.</param>
/// <param name="Name">Its name.</param>
/// <param name="Zone">Id of its zone.</param>
/// <param name="Machines">Ids of machine types or groups that have it.</param>
/// <param name="Does">What it is for.</param>
/// <param name="Out">How it comes out, in order; never by force. Empty where it stays in.</param>
/// <param name="In">How it goes back, in order.</param>
/// <param name="Check">How it looks when it is sound.</param>
/// <param name="Wear">How it looks when it is not.</param>
/// <param name="CleanTool">What it is cleaned with.</param>
/// <param name="CleanWay">How it is cleaned.</param>
/// <param name="CleanEvery">Id of how often; null where nobody has a habit.</param>
/// <param name="CheckEvery">Id of how often it is looked at.</param>
/// <param name="Who">Who cleans or checks it.</param>
/// <param name="Faults">Ids of faults it can have.</param>
/// <param name="Src">Where it comes from.</param>
public sealed record Part(
    string Id,
    Phrase Name,
    string Zone,
    IReadOnlyList<string> Machines,
    Phrase Does,
    IReadOnlyList<Phrase> Out,
    IReadOnlyList<Phrase> In,
    IReadOnlyList<Phrase> Check,
    IReadOnlyList<Phrase> Wear,
    string CheckEvery,
    string Who,
    IReadOnlyList<string> Faults,
    IReadOnlyList<string> Src,
    Phrase? CleanTool = null,
    Phrase? CleanWay = null,
    string? CleanEvery = null
);

/// <summary>A job in steps.</summary>
/// <param name="Id">Its id.</param>
/// <param name="Name">Its name.</param>
/// <param name="Purpose">What it is for.</param>
/// <param name="When">When it is done.</param>
/// <param name="Machines">Ids of machine types or groups.</param>
/// <param name="Supervision">Who stands by.</param>
/// <param name="Ppe">What is worn.</param>
/// <param name="Minutes">For one trained person on a mid-size machine.</param>
/// <param name="Steps">Its steps, in order.</param>
/// <param name="Src">Where it comes from.</param>
public sealed record Procedure(
    string Id,
    Phrase Name,
    Phrase Purpose,
    Phrase When,
    IReadOnlyList<string> Machines,
    Phrase Supervision,
    IReadOnlyList<Phrase> Ppe,
    double Minutes,
    IReadOnlyList<ProcedureStep> Steps,
    IReadOnlyList<string> Src
);

/// <summary>A step of a job.</summary>
/// <param name="Id">Its id.</param>
/// <param name="Zone">Id of the zone.</param>
/// <param name="Part">Id of the part.</param>
/// <param name="Machines">Machine types or groups it applies to.</param>
/// <param name="Who">Who does it.</param>
/// <param name="Minutes">How long it takes.</param>
/// <param name="Action">What is done.</param>
/// <param name="Check">How one sees that it is done.</param>
/// <param name="Hazard">Id of the hazard.</param>
/// <param name="Caution">What to heed at this step; null only where nothing can hurt.</param>
/// <param name="Prevents">Ids of faults it keeps away.</param>
/// <param name="Src">Where it comes from.</param>
public sealed record ProcedureStep(
    string Id,
    string Zone,
    string Part,
    IReadOnlyList<string> Machines,
    string Who,
    double Minutes,
    Phrase Action,
    Phrase Check,
    string Hazard,
    IReadOnlyList<string> Prevents,
    IReadOnlyList<string> Src,
    Phrase? Caution = null
);
