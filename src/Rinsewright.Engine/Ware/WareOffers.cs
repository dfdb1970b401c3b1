using Rinsewright.Engine.Knowledge;

namespace Rinsewright.Engine.Ware;

/// <summary>A test that can be done.</summary>
/// <param name="Finding">Id of the check, or of the state of a reading.</param>
/// <param name="Name">What it is called.</param>
/// <param name="FoundMeans">What counts as found.</param>
/// <param name="How">How it is done.</param>
/// <param name="With">What is needed; null for nothing.</param>
/// <param name="Minutes">How long it takes.</param>
/// <param name="Machine">Id of the state the machine is in.</param>
/// <param name="Hazard">Id of the hazard.</param>
/// <param name="Who">Id of who may do it.</param>
/// <param name="Agents">What it puts on the piece, in order.</param>
/// <param name="First">Whether it is asked before any ranking, because somebody can get hurt.</param>
/// <param name="Licensed">Whether it is left to somebody with a licence.</param>
/// <param name="Bits">How much it tells on average.</param>
/// <param name="Points">Ids of faults it points to when found.</param>
/// <param name="Src">Where it comes from.</param>
public sealed record WareOffer(
    string Finding,
    Phrase Name,
    Phrase FoundMeans,
    Phrase How,
    Phrase? With,
    double Minutes,
    string Machine,
    string Hazard,
    string Who,
    IReadOnlyList<string> Agents,
    bool First,
    bool Licensed,
    double Bits,
    IReadOnlyList<string> Points,
    IReadOnlyList<string> Src
)
{
    /// <summary>What it tells per minute, bit/min.</summary>
    public double Worth => Bits / Minutes;
}

/// <summary>Which tests are open.</summary>
internal static class WareOffers
{
    // Causes likelier than this bring their confirming check with them.
    private const double Likely = 0.05;
    private const int MostConfirmed = 3;

    private static readonly string[] Ladder = ["crew", "supervisor", "technician"];

    /// <summary>Who a person may stand in for; null for somebody who does not look at ware.</summary>
    public static IReadOnlyList<string>? Reach(string who) => Array.IndexOf(Ladder, who) is >= 0 and var at ? Ladder[..(at + 1)] : null;

    public static IReadOnlyList<WareOffer> Of(WareInquiry inquiry)
    {
        var reach = Reach(inquiry.Setting.Who)!;
        return
        [
            .. Tests(inquiry)
                .Where(t => !inquiry.Asked(t.Do))
                .Select(t => Offer(inquiry, t))
                .OfType<WareOffer>()
                .Where(o => o.Licensed || reach.Contains(o.Who, StringComparer.Ordinal))
                .OrderByDescending(o => o.First)
                .ThenByDescending(o => o.Worth)
                .ThenBy(o => o.Finding, StringComparer.Ordinal),
        ];
    }

    // Those of the pictures, and what confirms the likeliest causes; a test that stands in two pictures points to what both say.
    private static IEnumerable<(string Do, Phrase? Means, IReadOnlyList<string> Points)> Tests(WareInquiry inquiry)
    {
        var tests = inquiry
            .Pictures.SelectMany(p => p.Tests)
            .GroupBy(t => t.Do, StringComparer.Ordinal)
            .Select(g =>
                (
                    g.Key,
                    (Phrase?)g.First().IfFound,
                    Points: (IReadOnlyList<string>)[.. g.SelectMany(t => t.Points).Distinct(StringComparer.Ordinal)]
                )
            )
            .ToList();
        var confirming = inquiry
            .Causes.Where(c => c.Share >= Likely)
            .Take(MostConfirmed)
            .SelectMany(c => c.Fault.Confirm.By.Select(b => (Do: b, Fault: c.Fault.Id)))
            .GroupBy(c => c.Do, StringComparer.Ordinal)
            .Where(g => !tests.Exists(t => t.Key == g.Key))
            .Select(g => (g.Key, (Phrase?)null, Points: (IReadOnlyList<string>)[.. g.Select(c => c.Fault)]));
        return tests.Concat(confirming);
    }

    private static WareOffer? Offer(WareInquiry inquiry, (string Do, Phrase? Means, IReadOnlyList<string> Points) test)
    {
        var knowledge = inquiry.Knowledge;
        bool Licensed(string who) => knowledge.Common.People.Any(p => p.Id == who && p.Licensed);
        bool Fits(IReadOnlyList<string> machines) => inquiry.Setting.MachineType is not { } type || knowledge.Fits(machines, type);
        if (knowledge.FindCheck(test.Do) is { } check)
        {
            return !Fits(check.Machines)
                ? null
                : new WareOffer(
                    check.Id,
                    check.Name,
                    test.Means ?? check.FoundWhen,
                    check.How,
                    check.Tool,
                    check.Minutes,
                    check.Machine,
                    check.Risk,
                    check.Who,
                    check.Agents,
                    check.First,
                    Licensed(check.Who),
                    inquiry.BitsOf(check.Id),
                    test.Points,
                    check.Src
                );
        }

        // A confirming finding may be a symptom: it is seen, not tested.
        return
            knowledge.FindState(test.Do) is not var (kind, state)
            || !Fits(kind.Machines)
            || (inquiry.Setting.Sanitizing is { } mode && kind.Sanitizing is { } only && only != mode)
            ? null
            : new WareOffer(
                state.Id,
                kind.Name,
                test.Means ?? state.When,
                kind.Method,
                kind.Instrument,
                kind.Minutes,
                kind.Machine,
                kind.Risk,
                kind.Who,
                [],
                false,
                Licensed(kind.Who),
                inquiry.BitsOf(state.Id),
                test.Points,
                kind.Src
            );
    }
}
