using CsCheck;
using Rinsewright.Engine.Bench;
using Rinsewright.Engine.Quantities;

namespace Rinsewright.Engine.Tests.Bench;

/// <summary>What holds for every tool, whatever is typed.</summary>
public sealed class BenchLaws
{
    public static TheoryData<string> Tools => [.. BenchTools.All.Select(t => t.Id)];

    [Theory]
    [MemberData(nameof(Tools))]
    public void Whatever_is_typed_there_is_an_answer_or_a_reason(string id)
    {
        var tool = BenchTools.Find(id)!;
        Typed(tool, outside: 0.2)
            .Sample(
                input =>
                {
                    var outcome = tool.Solve(input);
                    Assert.Equal(outcome.Answer is null, outcome.Problems.Count > 0);
                    if (outcome.Answer is not { } answer)
                    {
                        return;
                    }

                    Assert.NotEmpty(answer.Results);
                    Assert.NotEmpty(answer.Steps);
                    Assert.All(
                        answer.Results,
                        r =>
                        {
                            Assert.True(r.Value is not { } v || double.IsFinite(v.Value), r.Id);
                            Assert.True(r.Low is not { } l || l.SI <= r.Value!.Value.SI, r.Id);
                            Assert.True(r.High is not { } h || h.SI >= r.Value!.Value.SI, r.Id);
                        }
                    );
                },
                iter: 300
            );
    }

    [Theory]
    [MemberData(nameof(Tools))]
    public void The_unit_a_figure_is_typed_in_makes_no_difference(string id)
    {
        var tool = BenchTools.Find(id)!;
        Typed(tool, outside: 0)
            .Sample(
                input =>
                {
                    if (tool.Solve(input).Answer is not { } answer)
                    {
                        return;
                    }

                    var si = input;
                    foreach (var field in tool.Fields)
                    {
                        if (
                            input.Find(field.Id) is { } amount
                            && Units.All.FirstOrDefault(u => u.Dimension == amount.Unit.Dimension) is { } other
                        )
                        {
                            si = si.And(field.Id, amount.In(other));
                        }
                    }

                    var again = tool.Solve(si).Answer!;
                    foreach (var (a, b) in answer.Results.Zip(again.Results))
                    {
                        Assert.Equal(a.Id, b.Id);
                        if (a.Value is { } was)
                        {
                            Assert.Equal(was.SI, b.Value!.Value.SI, 1e-6 * Math.Max(1, Math.Abs(was.SI)));
                        }
                    }
                },
                iter: 100
            );
    }

    [Theory]
    [MemberData(nameof(Tools))]
    public void Nothing_typed_asks_for_what_is_needed(string id)
    {
        var tool = BenchTools.Find(id)!;
        var outcome = tool.Solve(BenchInput.Empty);

        Assert.Null(outcome.Answer);
        Assert.Equal(
            tool.Fields.Where(f => !f.Optional && tool.Asks(f, BenchInput.Empty)).Select(f => f.Id),
            outcome.Problems.Select(p => p.Field)
        );
        Assert.All(outcome.Problems, p => Assert.Equal("bench.problem.missing", p.Says.Key));
    }

    [Fact] // 40 L in an hour from 20 to 21 °C in a room of 54 °C that gives 500 W/K: the room alone gives thousands of watts, the water took 46 W
    public void A_room_that_would_have_warmed_the_tank_faster_is_a_reason_not_a_negative_power()
    {
        var outcome = BenchTools
            .Find("heat-up")!
            .Solve(
                BenchInput
                    .UsualOf(BenchTools.Find("heat-up")!)
                    .And("from", new Amount(20, Units.Celsius))
                    .And("to", new Amount(21, Units.Celsius))
                    .And("room", new Amount(54, Units.Celsius))
                    .And("lossPerKelvin", new Amount(500, Units.WattPerKelvin))
                    .And("time", new Amount(3600, Units.Second))
            );

        Assert.Null(outcome.Answer);
        var problem = Assert.Single(outcome.Problems);
        Assert.Equal(("room", "bench.problem.room-heats-it"), (problem.Field, problem.Says.Key));
    }

    [Fact]
    public void One_drop_more_is_what_the_sensitivity_says()
    {
        var tool = BenchTools.Find("titration")!;
        var input = BenchInput.UsualOf(tool);

        // By hand: 0.05 mL of half normal in 25 mL is 1 meq/L, 31 mg Na₂O; of a 20 % product 0.155 g/L.
        var drop = Assert.Single(tool.Sensitivities(input), s => s.Field == "drops");
        Assert.Equal(0.155, drop.Change.Value, 0.001);
    }

    [Fact]
    public void The_curve_passes_through_the_answer()
    {
        foreach (var tool in BenchTools.All.Where(t => t.CurveOver is not null))
        {
            var input = BenchInput.UsualOf(tool).And("hardness", new Amount(10, Units.GrainPerGallon));
            if (tool.Solve(input).Answer is not { } answer || input.Find(tool.CurveOver!) is not { } here)
            {
                continue;
            }

            var curve = tool.Curve(input);
            Assert.InRange(curve.Count, 10, 49);
            var nearest = curve.MinBy(p => Math.Abs(p.At.SI - here.SI));
            var reach = curve.Max(p => p.Result.SI) - curve.Min(p => p.Result.SI);
            Assert.Equal(answer.Results[0].Value!.Value.SI, nearest.Result.SI, (0.2 * reach) + 1e-12);
        }
    }

    // Every field in its range, now and then outside; optional ones left out half the time.
    private static Gen<BenchInput> Typed(BenchTool tool, double outside)
    {
        var input = Gen.Const(BenchInput.Empty);
        foreach (var field in tool.Fields)
        {
            var span = field.High - field.Low;
            var value = Gen.Double[field.Low - (outside * span), field.High + (outside * span)]
                .Where(v => field.Unit.Dimension is not (Dimension.Temperature) || field.Unit.ToSI(v) > 0);
            input = Gen.Select(
                input,
                value,
                Gen.Bool,
                (i, v, keep) => keep || !field.Optional ? i.And(field.Id, new Amount(v, field.Unit)) : i
            );
        }

        foreach (var choice in tool.Choices)
        {
            input = Gen.Select(input, Gen.Int[0, choice.Options.Count - 1].Select(k => choice.Options[k]), (i, o) => i.And(choice.Id, o));
        }

        return input;
    }
}
