using Rinsewright.Engine.Records;

namespace Rinsewright.Engine.Knowledge;

/// <summary>A named thing of the shared lists: a zone, a machine state, how often, what a fault harms.</summary>
/// <param name="Id">Its id.</param>
/// <param name="Name">Its name.</param>
/// <param name="Src">Where it comes from: ids of <see cref="KnownSource"/>.</param>
public sealed record KnownName(string Id, Phrase Name, IReadOnlyList<string> Src);

/// <summary>A class of what can hurt somebody at a step.</summary>
/// <param name="Id">Its id: <c>none</c>, <c>scald</c>, <c>caustic</c>, <c>glass</c>, <c>electrical</c>, <c>moving-part</c>, <c>slip</c>, <c>toxic-gas</c>.</param>
/// <param name="Name">Its name.</param>
/// <param name="Caution">What to heed, shown at the step where the step says nothing more particular.</param>
/// <param name="Src">Where it comes from.</param>
public sealed record Hazard(string Id, Phrase Name, Phrase Caution, IReadOnlyList<string> Src);

/// <summary>Who may do a thing.</summary>
/// <param name="Id">Its id, from <c>crew</c> to the licensed trades.</param>
/// <param name="Name">Its name.</param>
/// <param name="Licensed">Whether the work is deferred to somebody with a licence.</param>
/// <param name="Src">Where it comes from.</param>
public sealed record Person(string Id, Phrase Name, bool Licensed, IReadOnlyList<string> Src);

/// <summary>Something that a test or a cure puts on ware and that stays there until it is rinsed off.</summary>
/// <param name="Id">Its id: <c>acid</c>, <c>hypochlorite</c>, <c>alkali</c>, <c>iodine</c>.</param>
/// <param name="Name">Its name.</param>
/// <param name="Reacts">Ids of the agents it must never meet.</param>
/// <param name="Caution">What to heed with it.</param>
/// <param name="Src">Where it comes from.</param>
public sealed record Agent(string Id, Phrase Name, IReadOnlyList<string> Reacts, Phrase Caution, IReadOnlyList<string> Src);

/// <summary>The step between two agents.</summary>
/// <param name="Action">What is done.</param>
/// <param name="Check">How one sees that it is done.</param>
/// <param name="Caution">What to heed.</param>
/// <param name="Src">Where it comes from.</param>
public sealed record RinseBetween(Phrase Action, Phrase Check, Phrase Caution, IReadOnlyList<string> Src);

/// <summary>A source of the knowledge.</summary>
/// <param name="Id">Its id, as items name it.</param>
/// <param name="Label">What a reader knows it by.</param>
/// <param name="Basis"><c>opened</c>, <c>second-hand</c>, <c>from-memory</c> or <c>common-practice</c>.</param>
/// <param name="Bib">Key of the same text in docs/references.bib; null where there is none.</param>
public sealed record KnownSource(string Id, Phrase Label, string Basis, string? Bib = null)
{
    /// <summary>How well it is known.</summary>
    public Basis Known =>
        Basis switch
        {
            "opened" => Records.Basis.Opened,
            "second-hand" => Records.Basis.SecondHand,
            "from-memory" => Records.Basis.FromMemory,
            _ => Records.Basis.CommonPractice,
        };
}

/// <summary>The shared lists.</summary>
/// <param name="Groups">Names that stand for several machine types.</param>
/// <param name="Zones">Stretches of a machine and of its site.</param>
/// <param name="Hazards">What can hurt.</param>
/// <param name="People">Who may do a thing.</param>
/// <param name="States">What state a machine is in for a check.</param>
/// <param name="Frequencies">How often a thing is done.</param>
/// <param name="Impacts">What a fault harms.</param>
/// <param name="Agents">What tests and cures put on ware.</param>
/// <param name="Rinse">The step between two agents.</param>
public sealed record SharedLists(
    IReadOnlyDictionary<string, IReadOnlyList<string>> Groups,
    IReadOnlyList<KnownName> Zones,
    IReadOnlyList<Hazard> Hazards,
    IReadOnlyList<Person> People,
    IReadOnlyList<KnownName> States,
    IReadOnlyList<KnownName> Frequencies,
    IReadOnlyList<KnownName> Impacts,
    IReadOnlyList<Agent> Agents,
    RinseBetween Rinse
);

/// <summary>A term of the trade.</summary>
/// <param name="Id">Its id.</param>
/// <param name="Term">The word.</param>
/// <param name="Means">What it means, in one line.</param>
/// <param name="Src">Where it comes from.</param>
public sealed record TradeTerm(string Id, Phrase Term, Phrase Means, IReadOnlyList<string> Src);
