using Rinsewright.Engine.Knowledge;

namespace Rinsewright.Engine.Ware;

/// <summary>At which machine, and who looks.</summary>
/// <param name="MachineType">Id of the machine type; null where any.</param>
/// <param name="Sanitizing"><c>hot</c> or <c>chemical</c>; null where any.</param>
/// <param name="Who"><c>crew</c>, <c>supervisor</c> or <c>technician</c>: which tests are open.</param>
public sealed record WareSetting(string? MachineType = null, string? Sanitizing = null, string Who = "technician");

/// <summary>A cause with its share among all that can make the picture.</summary>
/// <param name="Fault">What can be wrong.</param>
/// <param name="Share">0 to 1: an expert's estimate turned by what was found; not a measured frequency.</param>
/// <param name="Named">Whether the picture names it.</param>
public sealed record WareCause(TradeFault Fault, double Share, bool Named);

/// <summary>What comes next.</summary>
public enum WareNextKind
{
    /// <summary>Stop: somebody can get hurt. <see cref="WareNext.Fault"/> says of what.</summary>
    Stop,

    /// <summary>Rinse before anything else is put on the piece.</summary>
    Rinse,

    /// <summary>A test: <see cref="WareNext.Offer"/>.</summary>
    Test,

    /// <summary>Enough is known: the cure of <see cref="WareNext.Fault"/>.</summary>
    Cure,
}

/// <summary>What comes next, and why.</summary>
/// <param name="Kind">What.</param>
/// <param name="Offer">The test; null for another kind.</param>
/// <param name="Fault">The fault it is about; null for a test or a rinse, and where nothing is left to tell.</param>
public sealed record WareNext(WareNextKind Kind, WareOffer? Offer = null, TradeFault? Fault = null);

/// <summary>
/// From what is seen on ware to its cause: each answer turns the shares of all faults that fit (equation W1), the next test is the one that tells most per minute
/// (W2), dangers are asked for first, and the law of <see cref="WareTrail"/> holds throughout. Immutable: every answer gives a new inquiry.
/// </summary>
public sealed class WareInquiry
{
    /// <summary>A cause with this share is told; its confirming check is among the tests before.</summary>
    public const double Enough = 0.85;

    // A test that tells less is not worth offering as the next one, bit.
    private const double LeastWorth = 0.02;

    private readonly HashSet<string> skipped;
    private readonly Lazy<IReadOnlyList<WareOffer>> open;

    private WareInquiry(
        TradeKnowledge knowledge,
        IReadOnlyList<WareResult> pictures,
        WareSetting setting,
        WareTrail trail,
        HashSet<string> skipped
    )
    {
        Knowledge = knowledge;
        Pictures = pictures;
        Setting = setting;
        Trail = trail;
        this.skipped = skipped;
        (Causes, Elsewhere) = Ranked();
        open = new(() => WareOffers.Of(this));
    }

    /// <summary>Knowledge it asks.</summary>
    public TradeKnowledge Knowledge { get; }

    /// <summary>What is seen.</summary>
    public IReadOnlyList<WareResult> Pictures { get; }

    /// <summary>Where, and who.</summary>
    public WareSetting Setting { get; }

    /// <summary>What was done.</summary>
    public WareTrail Trail { get; }

    /// <summary>Faults that fit the machine and can make a picture, the likeliest first; with <see cref="Elsewhere"/> their shares sum to 1.</summary>
    public IReadOnlyList<WareCause> Causes { get; }

    /// <summary>Share of something that none of these faults is: the leak of what was seen.</summary>
    public double Elsewhere { get; }

    /// <summary>Tests that are open now, dangers first, then what tells most per minute. What must wait for a rinse is not among them.</summary>
    public IReadOnlyList<WareOffer> Offers => [.. open.Value.Where(o => !o.Licensed && Trail.Allows(o.Agents))];

    /// <summary>Tests that must wait until the piece is rinsed.</summary>
    public IReadOnlyList<WareOffer> Waiting => [.. open.Value.Where(o => !o.Licensed && !Trail.Allows(o.Agents))];

    /// <summary>Tests left to somebody with a licence.</summary>
    public IReadOnlyList<WareOffer> Deferred => [.. open.Value.Where(o => o.Licensed)];

    /// <summary>What comes next.</summary>
    public WareNext Next
    {
        get
        {
            if (Danger() is { } danger)
            {
                return new WareNext(WareNextKind.Stop, Fault: danger);
            }

            if (Trail.OnPiece.Count > 0)
            {
                return new WareNext(WareNextKind.Rinse);
            }

            // Nothing is on the piece, so that every open test may follow.
            return Offers is [var best, ..] && (best.First || (Causes[0].Share < Enough && best.Bits >= LeastWorth))
                ? new WareNext(WareNextKind.Test, Offer: best)
                : new WareNext(WareNextKind.Cure, Fault: Causes[0].Fault);
        }
    }

    /// <summary>An inquiry into one or several pictures.</summary>
    /// <exception cref="ArgumentException">No picture, one that is not known, or a machine type or person that is not known.</exception>
    public static WareInquiry Begin(TradeKnowledge knowledge, IReadOnlyList<string> pictures, WareSetting? setting = null)
    {
        setting ??= new WareSetting();
        if (pictures.Count == 0)
        {
            throw new ArgumentException("Say at least one thing that is seen on the ware.", nameof(pictures));
        }

        var seen = pictures
            .Distinct(StringComparer.Ordinal)
            .Select(p =>
                knowledge.WareResults.FirstOrDefault(r => r.Id == p) ?? throw new ArgumentException($"No picture '{p}'.", nameof(pictures))
            )
            .ToList();
        if (setting.MachineType is { } type && knowledge.Anatomy.MachineTypes.All(m => m.Id != type))
        {
            throw new ArgumentException($"No machine type '{type}'.", nameof(setting));
        }

        return WareOffers.Reach(setting.Who) is null
            ? throw new ArgumentException($"No person '{setting.Who}' who looks at ware.", nameof(setting))
            : new WareInquiry(knowledge, seen, setting, WareTrail.Begin(knowledge), new(StringComparer.Ordinal));
    }

    /// <summary>A test was done.</summary>
    /// <exception cref="ArgumentException">It is none of the tests of these pictures, or it was answered before.</exception>
    /// <exception cref="AgentsMeetException">The piece must be rinsed first.</exception>
    public WareInquiry Answer(string finding, bool found) =>
        open.Value.All(o => o.Finding != finding)
            ? throw new ArgumentException($"'{finding}' is not open here.", nameof(finding))
            : new WareInquiry(Knowledge, Pictures, Setting, Trail.Then(new Tested(finding, found)), skipped);

    /// <summary>The piece, the vessel, the gloves and the sink were rinsed.</summary>
    public WareInquiry Rinse() => new(Knowledge, Pictures, Setting, Trail.Then(new Rinsed()), skipped);

    /// <summary>A test cannot be done here: not asked is not false.</summary>
    public WareInquiry Skip(string finding) => new(Knowledge, Pictures, Setting, Trail, new(skipped, StringComparer.Ordinal) { finding });

    /// <summary>Steps of the cure of a fault: a rinse before it where the piece carries something else, and after it where it leaves something.</summary>
    public IReadOnlyList<WareCureStep> CureOf(TradeFault fault) => WareCure.Of(this, [fault.Cure], fault.Agents, fault.Safety);

    /// <summary>Steps that help with a picture, whatever the cause.</summary>
    public IReadOnlyList<WareCureStep> CureOf(WareResult picture) => WareCure.Of(this, picture.Cure, picture.Agents, picture.Safety);

    internal bool Asked(string finding) =>
        skipped.Contains(finding)
        || Trail.Moves.OfType<Tested>().Any(t => t.Finding == finding || (t.Found && OtherState(t.Finding, finding)));

    /// <summary>Expected gain of a test, bit: how much it narrows the shares on average.</summary>
    internal double BitsOf(string finding)
    {
        // H(shares) - P(found) H(given found) - P(not) H(given not), the sums of x log x of each side taken in one go.
        var (found, now, yes, no) = (0.0, 0.0, 0.0, 0.0);
        void Add(double share, double chance)
        {
            found += share * chance;
            now -= XLogX(share);
            yes += XLogX(share * chance);
            no += XLogX(share * (1 - chance));
        }

        Add(Elsewhere, Knowledge.Likelihoods.Leaks[finding]);
        foreach (var cause in Causes)
        {
            Add(cause.Share, Knowledge.ChanceOf(finding, cause.Fault.Id));
        }

        return now + yes - XLogX(found) + no - XLogX(1 - found);
    }

    private static double XLogX(double x) => x > 0 ? x * Math.Log2(x) : 0;

    private static bool OtherState(string taken, string other)
    {
        var at = taken.IndexOf('/', StringComparison.Ordinal);
        return at >= 0 && taken != other && other.StartsWith(taken[..(at + 1)], StringComparison.Ordinal);
    }

    private bool Fits(TradeFault fault) =>
        (Setting.MachineType is not { } type || Knowledge.Fits(fault.Machines, type))
        && (Setting.Sanitizing is not { } mode || fault.Sanitizing is null || fault.Sanitizing == mode);

    // Chance of all that was seen and found, for one hypothesis.
    private double LogChance(Func<string, double> chanceOf) =>
        Pictures.Sum(p => Math.Log(p.Symptoms.Max(chanceOf)))
        + Evidence().Sum(e => Math.Log(e.Found ? chanceOf(e.Finding) : 1 - chanceOf(e.Finding)));

    // A reading is one draw: where one state is found, its other states are not.
    private IEnumerable<(string Finding, bool Found)> Evidence()
    {
        foreach (var test in Trail.Moves.OfType<Tested>())
        {
            yield return (test.Finding, test.Found);
            if (test.Found && Knowledge.FindState(test.Finding) is { } taken)
            {
                foreach (var other in taken.Kind.States.Where(s => s.Id != test.Finding))
                {
                    yield return (other.Id, false);
                }
            }
        }
    }

    private (IReadOnlyList<WareCause> Causes, double Elsewhere) Ranked()
    {
        var named = Pictures.SelectMany(p => p.Causes.Concat(p.Tests.SelectMany(t => t.Points))).ToHashSet(StringComparer.Ordinal);
        var symptoms = Pictures.SelectMany(p => p.Symptoms).ToList();
        bool Shows(TradeFault fault) => symptoms.Exists(s => Knowledge.LevelOf(fault.Id, s) > Level.Unlisted);
        var weighed = Knowledge
            .Faults.Values.Where(f => Fits(f) && (named.Contains(f.Id) || Shows(f)))
            .Select(f => (Fault: f, Log: Math.Log(f.Prior.Weight) + LogChance(finding => Knowledge.ChanceOf(finding, f.Id))))
            .ToList();

        // That no fault of the list is behind it has the weight at which a fault is certain.
        var elsewhere = -Math.Log(Knowledge.Likelihoods.PriorScale) + LogChance(finding => Knowledge.Likelihoods.Leaks[finding]);
        var most = weighed.Select(w => w.Log).Append(elsewhere).Max();
        var sum = weighed.Sum(w => Math.Exp(w.Log - most)) + Math.Exp(elsewhere - most);
        return (
            [
                .. weighed
                    .Select(w => new WareCause(w.Fault, Math.Exp(w.Log - most) / sum, named.Contains(w.Fault.Id)))
                    .OrderByDescending(c => c.Share)
                    .ThenBy(c => c.Fault.Id, StringComparer.Ordinal),
            ],
            Math.Exp(elsewhere - most) / sum
        );
    }

    private TradeFault? Danger()
    {
        var found = Trail
            .Moves.OfType<Tested>()
            .Where(t => t.Found && Knowledge.FindCheck(t.Finding) is { First: true })
            .Select(t => t.Finding)
            .ToHashSet(StringComparer.Ordinal);
        return found.Count == 0
            ? null
            : Causes.Select(c => c.Fault).FirstOrDefault(f => f.StopUse == "yes" && f.Confirm.By.Any(found.Contains));
    }
}
