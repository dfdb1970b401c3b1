using Rinsewright.Engine.Quantities;
using Rinsewright.Engine.Visits;
using Rinsewright.Knowledge;
using Xunit;
using static Rinsewright.Engine.Tests.Visits.InventedVisit;

namespace Rinsewright.Engine.Tests.Visits;

/// <summary>What a cause may explain: what a check has shown, and never that a machine must not be used.</summary>
public sealed class VisitCauseTests
{
    private const string Fault = "booster-element-failed";

    /// <summary>A figure that moved since the last visit is explained by a cause that was shown, not by one that is only likely.</summary>
    [Theory]
    [InlineData(null, true)]
    [InlineData(CauseKnown.Likely, true)]
    [InlineData(CauseKnown.Confirmed, false)]
    public void Only_a_cause_that_was_shown_explains_what_moved(CauseKnown? known, bool said)
    {
        var result = Judge(
            Conveyor() with
            {
                Earlier = [new EarlierReading("rd-rinse-pressure", new(30, Units.Psi), OperatingState.Load, new DateOnly(2026, 8, 1))],
                Readings = [Read("rd-rinse-pressure", new(15, Units.Psi), VisitMoment.AsFound, 5) with { Instrument = "gauge" }],
                Cause = known is { } k ? new VisitCause(Fault, k, CauseOwner.Machine) : null,
            }
        );
        Assert.Equal(said, result.Unexplained.Any(b => b.Key == "visit.unexplained.since"));
    }

    /// <summary>A danger that is still there stands in the kitchen's first line, whether it is what the complaint proved to be or not; one that is gone is told once.</summary>
    [Fact]
    public void A_machine_that_must_not_be_used_is_told_whatever_the_cause()
    {
        var trade = BuiltInKnowledge.Trade;
        var danger = trade.Faults.Values.First(f =>
            f is { Impact: "safety", StopUse: "yes", Sanitizing: not "chemical" } && trade.Fits(f.Machines, "conveyor-2")
        );
        var seen = danger.Confirm.By[0];
        var visit = Conveyor() with
        {
            Complaint = "It smells.",
            Findings = [new VisitFinding(seen, true, VisitMoment.AsFound)],
            Cause = new VisitCause(danger.Id, CauseKnown.Confirmed, CauseOwner.Machine),
        };
        Assert.Contains("visit.was.stop", Said(visit));
        var mended = visit with { Findings = [.. visit.Findings, new VisitFinding(seen, false, VisitMoment.AsLeft)] };
        Assert.DoesNotContain("visit.was.stop", Said(mended));
        Assert.DoesNotContain("visit.was.stopped", Said(mended));

        List<string> Said(Visit of) =>
            [
                .. Judge(of)
                    .Was.Parts.Where(p => p.Key == "visit.was.confirmed" || p.Values.Any(v => Equals(v.Value, danger.Name)))
                    .Select(p => p.Key),
            ];
    }
}
