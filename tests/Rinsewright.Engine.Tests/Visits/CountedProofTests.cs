using CsCheck;
using Rinsewright.Engine.Machines;
using Rinsewright.Engine.Records;
using Rinsewright.Engine.Sanitization;
using Rinsewright.Engine.Visits;
using Rinsewright.Knowledge;
using static Rinsewright.Engine.Tests.Visits.InventedVisit;

namespace Rinsewright.Engine.Tests.Visits;

/// <summary>A logger that rode through the machine, counted with a visit (V12), and what is on the ware (V13).</summary>
public sealed class CountedProofTests
{
    private static readonly DateTimeOffset AfterChange = Morning.AddMinutes(75);

    private static CountedProof Rode(Outcome outcome, VisitMoment moment = VisitMoment.AsLeft, int passes = 3) =>
        new("plate.csv", moment, outcome, passes, MachineType.MultitankConveyor, SanitizingMethod.HotWater, Rules.Id)
        {
            At = moment == VisitMoment.AsLeft ? AfterChange : Morning.AddMinutes(4),
            LowestPeak = Fahrenheit(166),
        };

    // The ware was read by the logger alone, before and after.
    private static Visit WithoutProbeOnWare(params CountedProof[] proofs)
    {
        var visit = ConveyorSet();
        return visit with { Readings = [.. visit.Readings.Where(r => r.Kind != "rd-ware-surface-temp")], Proofs = proofs };
    }

    [Fact]
    public void A_logger_shows_the_ware_as_well_as_a_probe_on_it()
    {
        var without = Judge(WithoutProbeOnWare());
        Assert.Equal(Outcome.Undetermined, without.After.Verdict.Outcome);
        Assert.Equal(AcceptanceStanding.NotRun, without.Acceptance.Single(a => a.Area == AcceptanceArea.Heat).Standing);

        var with = Judge(WithoutProbeOnWare(Rode(Outcome.Proven)));
        Assert.Equal(Outcome.Proven, with.After.Verdict.Outcome);
        Assert.Equal(AcceptanceStanding.Passed, with.Acceptance.Single(a => a.Area == AcceptanceArea.Heat).Standing);
        Assert.Equal(VisitStanding.Sanitary, with.Standing);
        Assert.DoesNotContain(with.After.Checks, c => c.Limit?.Point == MeasuringPoint.WareSurface);
    }

    [Fact]
    public void Fewer_than_three_passes_are_said()
    {
        var two = Judge(WithoutProbeOnWare(Rode(Outcome.Proven, passes: 2)));

        Assert.Equal(VisitStanding.Watch, two.Standing);
        Assert.Contains(two.Because, b => b.Key == "visit.because.few-racks");
    }

    [Fact]
    public void A_logger_that_is_not_proven_is_not_outweighed_by_readings()
    {
        var result = Judge(ConveyorSet() with { Proofs = [Rode(Outcome.NotProven)] });

        Assert.Equal(VisitStanding.NotSanitary, result.Standing);
        Assert.Equal(AcceptanceStanding.Failed, result.Acceptance.Single(a => a.Area == AcceptanceArea.Heat).Standing);
        Assert.Contains(result.Because, b => b.Key == "visit.proof.not-proven");
    }

    [Fact]
    public void What_speaks_of_before_says_nothing_of_after()
    {
        var result = Judge(WithoutProbeOnWare(Rode(Outcome.Proven, VisitMoment.AsFound)));

        Assert.Equal(Outcome.Proven, result.Before.Verdict.Outcome);
        Assert.Equal(Outcome.Undetermined, result.After.Verdict.Outcome);
    }

    [Theory]
    [InlineData("machine", "visit.proof.other-machine")]
    [InlineData("method", "visit.proof.other-machine")]
    [InlineData("rules", "visit.proof.other-rules")]
    [InlineData("early", "visit.proof.before-change")]
    public void Judged_otherwise_or_ridden_too_early_it_proves_nothing_and_is_said(string how, string key)
    {
        var proof = how switch
        {
            "machine" => Rode(Outcome.Proven) with { Type = MachineType.SingleTankConveyor },
            "method" => Rode(Outcome.Proven) with { Method = SanitizingMethod.Chlorine },
            "rules" => Rode(Outcome.Proven) with { RuleSet = "another" },
            _ => Rode(Outcome.Proven) with { At = Morning.AddMinutes(39) },
        };
        var result = Judge(WithoutProbeOnWare(proof));

        Assert.Equal(Outcome.Undetermined, result.After.Verdict.Outcome);
        Assert.Contains(result.Because, b => b.Key == key);
        Assert.Equal(AcceptanceStanding.NotRun, result.Acceptance.Single(a => a.Area == AcceptanceArea.Heat).Standing);
    }

    [Fact]
    public void A_clock_that_is_off_decides_nothing()
    {
        var early = Rode(Outcome.Proven) with { At = Morning.AddMinutes(39), ClockOff = true };

        Assert.Equal(Outcome.Proven, Judge(WithoutProbeOnWare(early)).After.Verdict.Outcome);
    }

    [Fact]
    public void A_logger_of_heat_never_proves_a_chemical_rinse()
    {
        var door = Door() with { Readings = [.. Door().Readings.Where(r => r.Kind != "rd-sanitizer")] };
        var rode = Rode(Outcome.Proven, VisitMoment.AsFound) with
        {
            Type = LimitCheck.TypeOf(MachineKind.DoorChemical),
            Method = SanitizingMethod.Chlorine,
        };

        Assert.Equal(Outcome.Undetermined, Judge(door with { Proofs = [rode] }).After.Verdict.Outcome);
    }

    [Fact]
    public void Another_counted_proof_that_is_not_proven_never_improves_the_verdict()
    {
        var outcomes = Gen.Bool.Select(b => b ? Outcome.NotProven : Outcome.Undetermined);
        Gen.Select(Gen.Int[0, 3], outcomes, Gen.Bool)
            .Sample(
                (proven, worse, first) =>
                {
                    List<CountedProof> before =
                    [
                        .. Enumerable.Range(0, proven).Select(i => Rode(Outcome.Proven) with { Name = $"{i}.csv" }),
                    ];
                    var bad = Rode(worse) with { Name = "worse.csv" };
                    var alone = Judge(WithoutProbeOnWare([.. before]));
                    var together = Judge(WithoutProbeOnWare(first ? [bad, .. before] : [.. before, bad]));
                    Assert.NotEqual(Outcome.Proven, together.After.Verdict.Outcome);
                    Assert.True(together.Standing <= alone.Standing);
                    // Order of entry decides nothing.
                    var turned = Judge(WithoutProbeOnWare(first ? [.. before, bad] : [bad, .. before]));
                    Assert.Equal(together.Because.Select(b => b.Key), turned.Because.Select(b => b.Key));
                },
                iter: 20,
                threads: 1
            );
    }

    [Fact]
    public void What_is_on_the_ware_stands_until_it_was_looked_for_again_and_was_gone()
    {
        var picture = BuiltInKnowledge.Trade.WareResults[0].Id;
        var proved = Conveyor() with
        {
            Readings = [.. Conveyor().Readings.Where(r => r.Kind != "rd-ware-surface-temp")],
            Proofs = [Rode(Outcome.Proven, VisitMoment.AsFound)],
        };
        Assert.Equal(VisitStanding.Sanitary, Judge(proved).Standing);
        var seen = proved with { Ware = [new WareSeen(picture, true, VisitMoment.AsFound)] };

        Assert.Equal(VisitStanding.Watch, Judge(seen).Standing);
        Assert.Contains(Judge(seen).Because, b => b.Key == "visit.because.ware");
        var gone = seen with { Ware = [.. seen.Ware, new WareSeen(picture, false, VisitMoment.AsLeft)] };
        Assert.Equal(VisitStanding.Sanitary, Judge(gone).Standing);
        var still = seen with { Ware = [.. seen.Ware, new WareSeen(picture, true, VisitMoment.AsLeft)] };
        Assert.Equal(VisitStanding.Watch, Judge(still).Standing);
    }
}
