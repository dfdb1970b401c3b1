using Rinsewright.Engine.Bench;
using Rinsewright.Engine.Quantities;
using Rinsewright.Engine.Sanitization;

namespace Rinsewright.Engine.Tests.Bench;

/// <summary>Washing by hand. Limits: rows of the adopted code [wi-atcp-75], [wac-246-215] and [ca-hsc-114099]; amounts worked by hand.</summary>
public sealed class ByHandVerification
{
    [Theory]
    // 4-501.114(A): 100 mg/L from 55 °F; 50 from 100 °F at any pH to 10, from 75 °F only to pH 8; 25 from 120 °F.
    [InlineData("fda-food-code", "chlorine", 75, null, 100, 10)]
    [InlineData("fda-food-code", "chlorine", 75, 8.0, 50, 7)]
    [InlineData("fda-food-code", "chlorine", 75, 8.5, 100, 10)]
    [InlineData("fda-food-code", "chlorine", 100, null, 50, 10)] // the 7 s need a pH that is known
    [InlineData("fda-food-code", "chlorine", 100, 9.0, 50, 7)]
    [InlineData("fda-food-code", "chlorine", 120, null, 25, 10)]
    [InlineData("fda-food-code", "iodine", 68, null, 12.5, 30)]
    [InlineData("in-410-iac-7-24", "iodine", 75, null, 12.5, 30)]
    // California's rule for sinks stands in front of the table.
    [InlineData("ca-17-ccr-30856", "chlorine", 120, null, 100, 30)]
    [InlineData("ca-17-ccr-30856", "iodine", 75, null, 25, 60)]
    [InlineData("ca-17-ccr-30856", "quat", 75, null, 200, 60)]
    // Australia's rows name no temperature: the strongest counts.
    [InlineData("au-fsanz", "chlorine", 75, null, 100, 10)]
    public void Strength_and_time(string rules, string sanitizer, double fahrenheit, double? ph, double milligrams, double seconds)
    {
        var input = Input(("label", 5.25, Units.Percent), ("solutionTemperature", fahrenheit, Units.Fahrenheit))
            .And("rules", rules)
            .And("sanitizer", sanitizer);
        var plan = ByHandPlan.Of(ph is { } p ? input.And("ph", new Amount(p, Units.PH)) : input)!;

        Assert.Equal(milligrams, plan.Required.Minimum!.Value.In(Units.MilligramPerLitre).Value, 1e-9);
        Assert.Equal(seconds, plan.Required.Contact!.Value.In(Units.Second).Value, 1e-9);
    }

    [Theory]
    [InlineData("fda-food-code", "iodine", 67, "solutionTemperature")]
    [InlineData("in-410-iac-7-24", "iodine", 74, "solutionTemperature")]
    [InlineData("fda-food-code", "chlorine", 54, "solutionTemperature")]
    [InlineData("de-din-10510", "chlorine", 75, "rules")]
    [InlineData("uk-rsph-practice", "hot-water", 75, "rules")]
    [InlineData("fda-food-code", "quat", 75, "labelLeast")]
    public void What_the_rules_do_not_cover_is_refused(string rules, string sanitizer, double fahrenheit, string field)
    {
        var outcome = Solve(
            Input(("label", 5.25, Units.Percent), ("solutionTemperature", fahrenheit, Units.Fahrenheit))
                .And("rules", rules)
                .And("sanitizer", sanitizer)
        );

        Assert.Equal(field, Assert.Single(outcome.Problems).Field);
    }

    [Fact]
    public void Too_alkaline_and_too_hard_are_refused()
    {
        var quat = Input(("label", 10, Units.Percent), ("labelLeast", 200, Units.MilligramPerLitre)).And("sanitizer", "quat");

        // 4-501.114(C): 500 mg/L; 30 gpg are 514.
        Assert.Equal("hardness", Assert.Single(Solve(quat.And("hardness", new Amount(30, Units.GrainPerGallon))).Problems).Field);
        Assert.NotNull(Solve(quat.And("hardness", new Amount(29, Units.GrainPerGallon))).Answer);
        var alkaline = Input(("label", 5.25, Units.Percent), ("ph", 10.5, Units.PH));
        Assert.Equal("ph", Assert.Single(Solve(alkaline).Problems).Field);
    }

    // 18 in by 18 in by 10 in are 3240 in³: of 231 to the gallon 14.03 gal, 53.09 L. At 75 °F and an unknown pH 100 mg/L are asked and 125 mixed. Bleach of 5.25 % and 1.08 kg/L holds
    // 54.0 g/L (worked example of the text beside CHV066): 125 · 53.09 / 54.0 = 122.9 mL. Detergent at 0.4 %: 212.4 mL.
    [Fact]
    public void Doses_by_hand()
    {
        var plan = ByHandPlan.Of(Input(("label", 5.25, Units.Percent)))!;

        Assert.Equal(14.03, plan.SanitizingSink.InGallon, 0.005);
        Assert.Equal(122.9, plan.Sanitizer!.Value.InMillilitre, 0.2);
        Assert.Equal(212.4, plan.Detergent.InMillilitre, 0.1);
        Assert.Equal([110, 43], plan.Wash!.TemperatureMinimum.Select(t => t.Value));
        Assert.Equal(200, plan.Required.Maximum!.Value.Value, 1e-9);
    }

    // FSANZ dilutions [fsanz-cleaning]: 100 mg/L in 10 L from 25 mL of household bleach (4 % available) or 10 mL of commercial (10 %). Ours mixes a quarter more.
    [Theory]
    [InlineData(4, 25)]
    [InlineData(10, 10)]
    public void Published_dilutions(double percent, double millilitres)
    {
        var input = Input(
                ("label", percent, Units.Percent),
                ("density", 1000, Units.GramPerLitre),
                ("washSink", 10, Units.Litre),
                ("rinseSink", 10, Units.Litre),
                ("sanitizingSink", 10, Units.Litre)
            )
            .And("labelBasis", "available")
            .And("sinks", "volumes")
            .And("rules", "au-fsanz");

        Relative.Equal(1.25 * millilitres, ByHandPlan.Of(input)!.Sanitizer!.Value.InMillilitre, 0.001);
    }

    [Theory] // 4-501.111 and 4-703.11(A): 171 °F (77 °C), 30 s; FSANZ 77 °C, 30 s
    [InlineData("fda-food-code", 171)]
    [InlineData("au-fsanz", 77)]
    public void Hot_water_instead(string rules, double printed)
    {
        var answer = Solve(Input().And("sanitizer", "hot-water").And("rules", rules)).Answer!;

        Assert.Equal(printed, answer.Results[0].Value!.Value.Value, 1e-9);
        Assert.Equal(30, answer.Results.Single(r => r.Id == "contactTime").Value!.Value.In(Units.Second).Value, 1e-9);
        Assert.Contains(answer.Cautions, c => c.Key == "bench.caution.hand-hot");
        Assert.DoesNotContain(answer.Results, r => r.Id == "sanitizerDose");
    }

    [Fact]
    public void The_label_asks_for_more_but_never_for_less()
    {
        var stricter = ByHandPlan.Of(
            Input(
                ("label", 5.25, Units.Percent),
                ("labelLeast", 150, Units.MilligramPerLitre),
                ("labelMost", 180, Units.MilligramPerLitre),
                ("labelContact", 60, Units.Second)
            )
        )!;
        Assert.Equal(
            (150, 180, 60),
            (stricter.Required.Minimum!.Value.Value, stricter.Required.Maximum!.Value.Value, stricter.Required.Contact!.Value.Value)
        );
        Assert.Equal(165, stricter.Aim!.Value.InMilligramPerLitre, 1e-9); // half way; a quarter over would be 187

        var laxer = ByHandPlan.Of(
            Input(("label", 5.25, Units.Percent), ("labelLeast", 40, Units.MilligramPerLitre), ("labelMost", 400, Units.MilligramPerLitre))
        )!;
        Assert.Equal((100, 200), (laxer.Required.Minimum!.Value.Value, laxer.Required.Maximum!.Value.Value));
    }

    [Fact]
    public void Every_built_in_set_gives_a_plan_or_a_reason()
    {
        foreach (var rules in RuleSets.BuiltIn)
        {
            foreach (var sanitizer in new[] { "chlorine", "iodine", "quat", "hot-water" })
            {
                var outcome = Solve(
                    Input(
                            ("label", 5.25, Units.Percent),
                            ("labelLeast", 200, Units.MilligramPerLitre),
                            ("labelMost", 200, Units.MilligramPerLitre)
                        )
                        .And("rules", rules.Id)
                        .And("sanitizer", sanitizer)
                );
                Assert.Equal(outcome.Answer is null, outcome.Problems.Count > 0);
            }
        }
    }

    private static BenchOutcome Solve(BenchInput input) => BenchTools.Find("by-hand")!.Solve(input);

    private static BenchInput Input(params (string Id, double Value, Unit Unit)[] figures) =>
        figures.Aggregate(BenchInput.UsualOf(BenchTools.Find("by-hand")!), (i, f) => i.And(f.Id, new Amount(f.Value, f.Unit)));
}
