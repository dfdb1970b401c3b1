using CsCheck;
using Rinsewright.Engine.Knowledge;
using Rinsewright.Engine.Ware;
using Rinsewright.Knowledge;

namespace Rinsewright.Engine.Tests.Ware;

/// <summary>
/// Acid and chlorine never follow each other without a rinse, in whatever order tests are done. The list of tests that carry each stands here by hand, so that a
/// mistake in the knowledge shows too. Why: acid on hypochlorite sets chlorine gas free [chlorine-and-acid].
/// </summary>
public sealed class WareLawTests
{
    private static readonly TradeKnowledge Trade = BuiltInKnowledge.Trade;
    private static readonly string[] AllPictures = [.. Trade.WareResults.Select(r => r.Id)];

    // What reaches the piece first and last, from the words of each test. A strong detergent may carry chlorine.
    private static readonly Dictionary<string, (char First, char Last)> Carries = new(StringComparer.Ordinal)
    {
        ["chk-acid-test-clears"] = ('A', 'A'),
        ["chk-permanent-test"] = ('A', 'C'),
        ["chk-alkaline-soak-clears"] = ('C', 'C'),
        ["chk-bleach-soak-clears"] = ('C', 'C'),
    };

    [Fact] // pictures with no agent cannot break it; two steps and a rinse between are what it takes
    public void Every_way_through_a_picture_three_steps_deep()
    {
        long ways = 0;
        foreach (var picture in Trade.WareResults.Where(r => r.Tests.Any(t => Carries.ContainsKey(t.Do))))
        {
            ways += Walk(WareInquiry.Begin(Trade, [picture.Id]), 3);
        }

        ways += Walk(WareInquiry.Begin(Trade, ["wr-white-film", "wr-tannin"]), 2);
        Assert.True(ways > 2_000, $"Only {ways} ways were walked.");
    }

    [Fact]
    public void Any_pictures_any_answers_any_order_to_the_end()
    {
        var both = 0;
        Gen.Select(Gen.Int[0, AllPictures.Length - 1].Select(i => AllPictures[i]).Array[1, 4], Gen.Int[0, 1_000_000].Array[24])
            .Sample(
                (pictures, choices) =>
                {
                    var inquiry = WareInquiry.Begin(Trade, pictures);
                    foreach (var choice in choices)
                    {
                        Hold(inquiry);
                        inquiry = Step(inquiry, choice);
                    }

                    var kinds = inquiry
                        .Trail.Moves.OfType<Tested>()
                        .Where(t => Carries.ContainsKey(t.Finding))
                        .Select(t => Carries[t.Finding]);
                    if (kinds.Any(k => k.First == 'A') && kinds.Any(k => k.Last == 'C'))
                    {
                        Interlocked.Increment(ref both);
                    }
                },
                iter: 300
            );

        // Guards the guard: acid and chlorine were both used in many of them.
        Assert.True(both > 20, $"Only {both} ways used both.");
    }

    [Theory]
    [InlineData("chk-acid-test-clears", "chk-bleach-soak-clears")]
    [InlineData("chk-bleach-soak-clears", "chk-acid-test-clears")]
    [InlineData("chk-acid-test-clears", "chk-alkaline-soak-clears")]
    [InlineData("chk-alkaline-soak-clears", "chk-permanent-test")]
    public void A_trail_that_breaks_the_law_cannot_be_made(string before, string after)
    {
        var trail = WareTrail.Begin(Trade).Then(new Tested(before, false));

        Assert.Throws<AgentsMeetException>(() => trail.Then(new Tested(after, true)));

        // A look between them is no rinse.
        Assert.Throws<AgentsMeetException>(() => trail.Then(new Tested("chk-worn-ware", true)).Then(new Tested(after, true)));
        Assert.NotEmpty(trail.Then(new Rinsed()).Then(new Tested(after, true)).OnPiece);
    }

    [Fact]
    public void A_waiting_test_cannot_be_answered()
    {
        var inquiry = WareInquiry.Begin(Trade, ["wr-white-film", "wr-tannin"]).Answer("chk-acid-test-clears", false);

        Assert.Equal(WareNextKind.Rinse, inquiry.Next.Kind);
        Assert.Contains(inquiry.Waiting, o => o.Finding == "chk-bleach-soak-clears");
        Assert.DoesNotContain(inquiry.Offers, o => o.Finding == "chk-bleach-soak-clears");
        Assert.Throws<AgentsMeetException>(() => inquiry.Answer("chk-bleach-soak-clears", true));
        Assert.Contains(inquiry.Rinse().Offers, o => o.Finding == "chk-bleach-soak-clears");
    }

    [Fact]
    public void A_cure_with_acid_after_a_chlorine_soak_begins_and_ends_with_a_rinse()
    {
        var inquiry = WareInquiry.Begin(Trade, ["wr-tannin", "wr-white-film"]).Answer("chk-bleach-soak-clears", true);
        var cure = inquiry.CureOf(Trade.Faults["delime-overdue"]);

        Assert.True(cure[0].IsRinse);
        Assert.True(cure[^1].IsRinse);
        Assert.Contains(cure, s => s.Agents.Contains("acid"));
    }

    [Fact]
    public void The_walk_itself_sees_a_broken_law()
    {
        string[] broken = ["chk-acid-test-clears", "chk-worn-ware", "chk-bleach-soak-clears"];
        string[] sound = ["chk-acid-test-clears", "rinse", "chk-bleach-soak-clears", "rinse", "chk-permanent-test"];

        Assert.False(Lawful(broken));
        Assert.True(Lawful(sound));
    }

    private static long Walk(WareInquiry inquiry, int depth)
    {
        Hold(inquiry);
        if (depth == 0)
        {
            return 1;
        }

        long ways = 0;
        foreach (var offer in inquiry.Offers)
        {
            ways += Walk(inquiry.Answer(offer.Finding, true), depth - 1) + Walk(inquiry.Answer(offer.Finding, false), depth - 1);
        }

        return inquiry.Trail.OnPiece.Count > 0 ? ways + Walk(inquiry.Rinse(), depth - 1) : ways + 1;
    }

    private static WareInquiry Step(WareInquiry inquiry, int choice)
    {
        var offers = inquiry.Offers;
        var at = choice % (offers.Count + 2);
        return at < offers.Count
                ? (choice % 7 == 0 ? inquiry.Skip(offers[at].Finding) : inquiry.Answer(offers[at].Finding, choice % 2 == 0))
            : inquiry.Next.Kind == WareNextKind.Rinse || choice % 3 == 0 ? inquiry.Rinse()
            : inquiry;
    }

    // Whatever is suggested next, offered, or said as a cure keeps the law after what was done.
    private static void Hold(WareInquiry inquiry)
    {
        var done = inquiry.Trail.Moves.Select(m => m is Tested t ? t.Finding : "rinse").ToList();
        Assert.True(Lawful(done));
        foreach (var offer in inquiry.Offers)
        {
            Assert.True(Lawful([.. done, offer.Finding]), $"{string.Join(" > ", done)} > {offer.Finding}");
        }

        var next = inquiry.Next;
        if (next is { Kind: WareNextKind.Test, Offer: { } suggested })
        {
            Assert.True(Lawful([.. done, suggested.Finding]));
        }

        foreach (var cure in inquiry.Causes.Take(5).Select(c => inquiry.CureOf(c.Fault)).Concat(inquiry.Pictures.Select(inquiry.CureOf)))
        {
            var agents = cure.SelectMany(s => s.Agents).ToList();
            var on = Last(done);
            foreach (var agent in agents)
            {
                var kind = agent switch
                {
                    "acid" => 'A',
                    "hypochlorite" or "alkali" => 'C',
                    "rinse" => 'R',
                    _ => ' ',
                };
                Assert.False(on is 'A' && kind is 'C', "acid, then chlorine, in a cure");
                Assert.False(on is 'C' && kind is 'A', "chlorine, then acid, in a cure");
                on = kind == ' ' ? on : kind;
            }
        }
    }

    private static bool Lawful(IReadOnlyList<string> done)
    {
        var on = 'R';
        foreach (var step in done)
        {
            if (Carries.TryGetValue(step, out var kind))
            {
                if (on != 'R' && on != kind.First)
                {
                    return false;
                }

                on = kind.Last;
            }
            else if (step == "rinse")
            {
                on = 'R';
            }
        }

        return true;
    }

    private static char Last(IReadOnlyList<string> done) =>
        done.Aggregate(
            'R',
            (on, step) =>
                step == "rinse" ? 'R'
                : Carries.TryGetValue(step, out var kind) ? kind.Last
                : on
        );
}
