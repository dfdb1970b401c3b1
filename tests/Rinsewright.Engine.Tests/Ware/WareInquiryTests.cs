using Rinsewright.Engine.Knowledge;
using Rinsewright.Engine.Ware;
using Rinsewright.Knowledge;

namespace Rinsewright.Engine.Tests.Ware;

/// <summary>From picture to cause. Which cause goes with which finding: common practice, no source, unless a source is named.</summary>
public sealed class WareInquiryTests
{
    private static readonly TradeKnowledge Trade = BuiltInKnowledge.Trade;

    [Theory]
    // Principles of Food Sanitation, table 21-1, as quoted in the knowledge: film that acid clears is hardness.
    [InlineData("wr-white-film", "chk-acid-test-clears", "hard-water")]
    [InlineData("wr-white-film", "chk-permanent-test", "glass-etched")]
    [InlineData("wr-etching", "chk-permanent-test", "glass-etched")]
    [InlineData("wr-starch-protein", "chk-iodine-blue", "starch-buildup")]
    [InlineData("wr-tannin", "chk-bleach-soak-clears", "tannin-stain")]
    [InlineData("wr-grit", "chk-scrap-tray-gap", "scrap-tray-gap")]
    [InlineData("wr-foam", "chk-hand-soap-used", "hand-soap-in-machine")]
    [InlineData("wr-aluminum", "chk-aluminum-in-load", "aluminum-attacked")]
    [InlineData("wr-wet", "chk-no-drain-angle", "no-drain-time")]
    public void A_discriminating_test_brings_its_cause_to_the_top(string picture, string test, string cause)
    {
        var inquiry = WareInquiry.Begin(Trade, [picture]).Answer(test, true);

        Assert.Equal(cause, inquiry.Causes[0].Fault.Id);
        Assert.Equal(1, inquiry.Causes.Sum(c => c.Share) + inquiry.Elsewhere, 1e-9);
    }

    [Fact] // Bayes' rule by hand for two faults, one picture, one finding; weights, levels and leaks read off the files
    public void Shares_are_the_ratio_that_Bayes_gives()
    {
        var inquiry = WareInquiry.Begin(Trade, ["wr-etching"]).Answer("chk-permanent-test", true);
        double Share(string id) => inquiry.Causes.Single(c => c.Fault.Id == id).Share;

        // glass-etched: weight 12, sym-glass-cloud-permanent always (leak 0.015), chk-permanent-test always.
        // detergent-overset: sym-glass-cloud-permanent sometimes, chk-permanent-test not listed (its leak).
        var leak = Trade.Likelihoods.Leaks["chk-permanent-test"];
        var etched = 12 * (1 - (0.03 * 0.985)) * (1 - (0.03 * (1 - leak)));
        var overset = Trade.Faults["detergent-overset"].Prior.Weight * (1 - (0.7 * 0.985)) * leak;

        // Something else: 1/0.001, and both leaks.
        var elsewhere = 1000 * 0.015 * leak;
        Assert.Equal(etched / elsewhere, Share("glass-etched") / inquiry.Elsewhere, 1e-6 * etched / elsewhere);
        Assert.Equal(etched / overset, Share("glass-etched") / Share("detergent-overset"), 1e-6 * etched / overset);
    }

    [Fact]
    public void Gain_is_what_the_shares_narrow_on_average()
    {
        var inquiry = WareInquiry.Begin(Trade, ["wr-white-film"]);
        static double Entropy(WareInquiry i) =>
            -i.Causes.Select(c => c.Share).Append(i.Elsewhere).Where(s => s > 0).Sum(s => s * Math.Log2(s));

        foreach (var offer in inquiry.Offers.Where(o => !o.Finding.Contains('/', StringComparison.Ordinal)))
        {
            var found =
                inquiry.Causes.Sum(c => c.Share * Trade.ChanceOf(offer.Finding, c.Fault.Id))
                + (inquiry.Elsewhere * Trade.Likelihoods.Leaks[offer.Finding]);
            var after =
                (found * Entropy(inquiry.Answer(offer.Finding, true))) + ((1 - found) * Entropy(inquiry.Answer(offer.Finding, false)));
            Assert.Equal(Entropy(inquiry) - after, offer.Bits, 1e-9);
            Assert.True(offer.Bits > -1e-12);
        }
    }

    [Fact] // the knowledge marks it: asked before anything else
    public void Danger_is_asked_for_first_and_stops_everything()
    {
        var inquiry = WareInquiry.Begin(Trade, ["wr-odor"]);
        Assert.Equal("chk-acid-chlorine", inquiry.Next.Offer!.Finding);

        var stopped = inquiry.Answer("chk-acid-chlorine", true).Next;
        Assert.Equal(WareNextKind.Stop, stopped.Kind);
        Assert.Equal("toxic-gas-mix", stopped.Fault!.Id);

        Assert.NotEqual(WareNextKind.Stop, inquiry.Answer("chk-acid-chlorine", false).Next.Kind);
        Assert.Equal("chk-lines-swapped", WareInquiry.Begin(Trade, ["wr-residue"]).Next.Offer!.Finding);
    }

    [Fact]
    public void An_inquiry_ends_with_a_cure_within_its_tests()
    {
        foreach (var picture in Trade.WareResults)
        {
            foreach (var answer in new[] { true, false })
            {
                var inquiry = WareInquiry.Begin(Trade, [picture.Id]);
                var steps = 0;
                while (inquiry.Next is { Kind: WareNextKind.Rinse or WareNextKind.Test } next)
                {
                    inquiry = next.Kind == WareNextKind.Rinse ? inquiry.Rinse() : inquiry.Answer(next.Offer!.Finding, answer);
                    Assert.True(++steps < 60, picture.Id);
                }

                Assert.NotNull(inquiry.Next.Fault);
                Assert.Empty(inquiry.Trail.OnPiece);
            }
        }
    }

    [Fact]
    public void Machine_and_person_narrow_what_is_asked()
    {
        var door = WareInquiry.Begin(Trade, ["wr-food-soil"], new WareSetting("door-hot", "hot", "crew"));

        Assert.DoesNotContain(door.Causes, c => c.Fault.Id == "conveyor-too-fast");
        Assert.DoesNotContain(door.Offers, o => o.Finding is "rd-conveyor-speed/fast" or "rd-prewash-temp/high");
        Assert.All(door.Offers, o => Assert.Equal("crew", o.Who));
        Assert.Contains(
            WareInquiry.Begin(Trade, ["wr-food-soil"], new WareSetting("flight")).Causes,
            c => c.Fault.Id == "conveyor-too-fast"
        );
        Assert.DoesNotContain(door.Causes, c => c.Fault.Sanitizing == "chemical");
    }

    [Fact]
    public void What_needs_a_licence_is_named_and_never_suggested()
    {
        foreach (var picture in Trade.WareResults)
        {
            var inquiry = WareInquiry.Begin(Trade, [picture.Id]);
            Assert.All(inquiry.Offers, o => Assert.DoesNotContain(o.Who, (string[])["electrician", "gas-fitter", "plumber"]));
            Assert.All(inquiry.Deferred, o => Assert.True(o.Licensed));
        }
    }

    [Fact]
    public void What_was_left_out_is_not_taken_as_not_found()
    {
        var inquiry = WareInquiry.Begin(Trade, ["wr-spots"]);
        var skipped = inquiry.Skip("chk-acid-test-clears");

        Assert.DoesNotContain(skipped.Offers, o => o.Finding == "chk-acid-test-clears");
        Assert.Equal(inquiry.Causes.Select(c => c.Share), skipped.Causes.Select(c => c.Share));
    }

    [Fact]
    public void A_reading_is_one_draw()
    {
        var inquiry = WareInquiry.Begin(Trade, ["wr-spots", "wr-streaks"]).Answer("rd-rinse-additive/low", true);

        Assert.DoesNotContain(inquiry.Offers.Concat(inquiry.Waiting), o => o.Finding == "rd-rinse-additive/high");
    }

    [Fact]
    public void What_cannot_be_is_refused()
    {
        Assert.Throws<ArgumentException>(() => WareInquiry.Begin(Trade, []));
        Assert.Throws<ArgumentException>(() => WareInquiry.Begin(Trade, ["wr-nothing"]));
        Assert.Throws<ArgumentException>(() => WareInquiry.Begin(Trade, ["wr-spots"], new WareSetting("submarine")));
        Assert.Throws<ArgumentException>(() => WareInquiry.Begin(Trade, ["wr-spots"], new WareSetting(Who: "electrician")));
        var once = WareInquiry.Begin(Trade, ["wr-spots"]).Answer("rd-tds/high", true);
        Assert.Throws<ArgumentException>(() => once.Answer("rd-tds/high", false));
        Assert.Throws<ArgumentException>(() => once.Answer("chk-worn-ware", false));
    }
}
