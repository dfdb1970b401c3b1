using Rinsewright.Engine.Records;

namespace Rinsewright.Engine.Knowledge;

/// <summary>What the trade knows, from <c>knowledge/</c>. Each section is read when it is first asked for.</summary>
/// <remarks>Weights and likelihoods are an expert's estimates and are shown as such; limits yield to the data plate and to local code.</remarks>
public sealed class TradeKnowledge
{
    private readonly Lazy<SharedLists> common;
    private readonly Lazy<Dictionary<string, KnownSource>> sources;
    private readonly Lazy<Anatomy> anatomy;
    private readonly Lazy<IReadOnlyList<Procedure>> procedures;
    private readonly Lazy<TradeObservables> observables;
    private readonly Lazy<Dictionary<string, TradeFault>> faults;
    private readonly Lazy<Likelihoods> likelihoods;
    private readonly Lazy<IReadOnlyList<WareResult>> ware;
    private readonly Lazy<ServiceVisit> visit;
    private readonly Lazy<IReadOnlyList<TradeTerm>> terms;
    private readonly Lazy<Dictionary<string, TradeCheck>> checks;
    private readonly Lazy<Dictionary<string, (KnownReading Kind, ReadingState State)>> states;
    private readonly Lazy<Dictionary<string, Symptom>> symptoms;
    private readonly Lazy<Dictionary<string, Dictionary<string, Level>>> levels;

    /// <summary>Knowledge over sections that are read late.</summary>
    public TradeKnowledge(IKnowledgeSections sections)
    {
        common = new(sections.Common);
        sources = new(() => sections.Sources().ToDictionary(s => s.Id, StringComparer.Ordinal));
        anatomy = new(sections.Anatomy);
        procedures = new(sections.Procedures);
        observables = new(sections.Observables);
        faults = new(() => sections.Faults().ToDictionary(f => f.Id, StringComparer.Ordinal));
        likelihoods = new(sections.Likelihoods);
        ware = new(sections.WareResults);
        visit = new(sections.Visit);
        terms = new(sections.Terms);
        checks = new(() => Observables.Checks.ToDictionary(c => c.Id, StringComparer.Ordinal));
        symptoms = new(() => Observables.Symptoms.ToDictionary(s => s.Id, StringComparer.Ordinal));
        states = new(() =>
            Observables
                .Readings.SelectMany(r => r.States.Select(s => (s.Id, Value: (r, s))))
                .ToDictionary(s => s.Id, s => s.Value, StringComparer.Ordinal)
        );
        levels = new(() =>
            Likelihoods.Faults.ToDictionary(
                f => f.Id,
                f => f.All().ToDictionary(l => l.Finding, l => l.Level, StringComparer.Ordinal),
                StringComparer.Ordinal
            )
        );
    }

    /// <summary>Shared lists.</summary>
    public SharedLists Common => common.Value;

    /// <summary>Sources by id.</summary>
    public IReadOnlyDictionary<string, KnownSource> Sources => sources.Value;

    /// <summary>Machine types and parts.</summary>
    public Anatomy Anatomy => anatomy.Value;

    /// <summary>Jobs in steps.</summary>
    public IReadOnlyList<Procedure> Procedures => procedures.Value;

    /// <summary>Symptoms, readings, checks.</summary>
    public TradeObservables Observables => observables.Value;

    /// <summary>Faults by id.</summary>
    public IReadOnlyDictionary<string, TradeFault> Faults => faults.Value;

    /// <summary>How faults and findings hang together.</summary>
    public Likelihoods Likelihoods => likelihoods.Value;

    /// <summary>Pictures on ware.</summary>
    public IReadOnlyList<WareResult> WareResults => ware.Value;

    /// <summary>The visit.</summary>
    public ServiceVisit Visit => visit.Value;

    /// <summary>Terms of the trade.</summary>
    public IReadOnlyList<TradeTerm> Terms => terms.Value;

    /// <summary>A check by id; null where there is none.</summary>
    public TradeCheck? FindCheck(string id) => checks.Value.GetValueOrDefault(id);

    /// <summary>A symptom or context by id; null where there is none.</summary>
    public Symptom? FindSymptom(string id) => symptoms.Value.GetValueOrDefault(id);

    /// <summary>The reading a state belongs to, and the state, by <c>reading/state</c>; null where there is none.</summary>
    public (KnownReading Kind, ReadingState State)? FindState(string id) => states.Value.TryGetValue(id, out var found) ? found : null;

    /// <summary>A hazard by id.</summary>
    /// <exception cref="KeyNotFoundException">There is none of that id.</exception>
    public Hazard HazardOf(string id) =>
        Common.Hazards.FirstOrDefault(h => h.Id == id) ?? throw new KeyNotFoundException($"No hazard '{id}'.");

    /// <summary>Whether a list of machine types and groups takes in a machine type.</summary>
    public bool Fits(IReadOnlyList<string> machines, string type) =>
        machines.Any(m => m == type || (Common.Groups.TryGetValue(m, out var members) && members.Contains(type, StringComparer.Ordinal)));

    /// <summary>How often a fault shows a finding.</summary>
    public Level LevelOf(string fault, string finding) =>
        levels.Value.TryGetValue(fault, out var found) && found.TryGetValue(finding, out var level) ? level : Level.Unlisted;

    /// <summary>
    /// Chance of a finding if one fault is there and no other: <c>1-(1-level)(1-leak)</c> where it is listed, the leak where it is not, at most 0.01 where it
    /// is <see cref="Level.Never"/>. An expert's estimate.
    /// </summary>
    public double ChanceOf(string finding, string fault)
    {
        var leak = Likelihoods.Leaks[finding];
        return LevelOf(fault, finding) switch
        {
            Level.Unlisted => leak,
            Level.Never => Math.Min(Likelihoods.Levels["never"], leak),
            var level => 1 - ((1 - Likelihoods.Levels[NameOf(level)]) * (1 - leak)),
        };
    }

    /// <summary>How well an item with these sources is known: as its weakest source.</summary>
    public Basis BasisOf(IReadOnlyList<string> src)
    {
        var known = src.Select(s => Sources[s].Known).ToList();
        return known.Contains(Basis.FromMemory) ? Basis.FromMemory
            : known.Contains(Basis.CommonPractice) ? Basis.CommonPractice
            : known.Contains(Basis.SecondHand) ? Basis.SecondHand
            : Basis.Opened;
    }

    private static string NameOf(Level level) =>
        level switch
        {
            Level.Always => "always",
            Level.Usual => "usual",
            Level.Often => "often",
            Level.Sometimes => "sometimes",
            _ => "rare",
        };
}

/// <summary>Where the sections of the knowledge come from. Each is asked for at most once.</summary>
public interface IKnowledgeSections
{
    /// <summary>Shared lists.</summary>
    SharedLists Common();

    /// <summary>Sources.</summary>
    IReadOnlyList<KnownSource> Sources();

    /// <summary>Machine types and parts.</summary>
    Anatomy Anatomy();

    /// <summary>Jobs in steps.</summary>
    IReadOnlyList<Procedure> Procedures();

    /// <summary>Symptoms, readings, checks.</summary>
    TradeObservables Observables();

    /// <summary>Faults.</summary>
    IReadOnlyList<TradeFault> Faults();

    /// <summary>How faults and findings hang together.</summary>
    Likelihoods Likelihoods();

    /// <summary>Pictures on ware.</summary>
    IReadOnlyList<WareResult> WareResults();

    /// <summary>The visit.</summary>
    ServiceVisit Visit();

    /// <summary>Terms of the trade.</summary>
    IReadOnlyList<TradeTerm> Terms();
}
