using Rinsewright.Engine.Knowledge;
using Rinsewright.Engine.Quantities;
using Rinsewright.Engine.Records;
using Rinsewright.Engine.Sanitization;

namespace Rinsewright.Engine.Visits;

/// <summary>Three plain lines for the kitchen: what it was, what was done, what you do.</summary>
internal static class PlainLines
{
    public static PlainLine Was(Visit visit, TradeKnowledge knowledge, VisitStanding standing, IReadOnlyList<StopReason> stops)
    {
        List<Statement> says = [];
        if (visit.Cause is { } cause && knowledge.Faults.TryGetValue(cause.Fault, out var fault))
        {
            says.Add(
                Statement.Of(
                    cause.Known == CauseKnown.Confirmed ? "visit.was.confirmed" : "visit.was.likely",
                    ("cause", fault.Name),
                    ("owner", cause.Owner)
                )
            );
        }
        else if (visit.Complaint is not null)
        {
            says.Add(Statement.Of("visit.was.unknown"));
        }

        says.AddRange(
            stops
                .Where(s => s.Open || s.Id != visit.Cause?.Fault) // that the machine must not be used is said whatever else is
                .Select(s => Statement.Of(s.Open ? "visit.was.stop" : "visit.was.stopped", ("what", s.Name)))
        );
        if (says.Count == 0)
        {
            says.Add(
                Statement.Of(
                    standing switch
                    {
                        VisitStanding.Sanitary => "visit.was.routine-fine",
                        VisitStanding.Watch => "visit.was.routine-watch",
                        VisitStanding.NotProved => "visit.was.routine-not-proved",
                        _ => "visit.was.routine-not-sanitary",
                    }
                )
            );
        }

        return new PlainLine(says);
    }

    public static PlainLine Done(Visit visit, TradeKnowledge knowledge, VisitStanding standing, Outcome before, Outcome after)
    {
        List<Statement> says = [];
        foreach (var c in visit.Changes.OrderBy(c => c.At ?? DateTimeOffset.MaxValue).ThenBy(c => c.What, StringComparer.Ordinal))
        {
            says.Add(
                c switch
                {
                    { Before: { } from, After: { } to } => Statement.Of(
                        "visit.done.set",
                        ("what", c.What),
                        ("before", from),
                        ("after", to)
                    ),
                    { After: { } to } => Statement.Of("visit.done.set-to", ("what", c.What), ("after", to)),
                    { Kind: ChangeKind.Cleaned } => Statement.Of("visit.done.cleaned", ("what", c.What)),
                    { Kind: ChangeKind.Replaced } => Statement.Of("visit.done.replaced", ("what", c.What)),
                    { Kind: ChangeKind.Set } => Statement.Of("visit.done.adjusted", ("what", c.What)),
                    _ => Statement.Of("visit.done.repaired", ("what", c.What)),
                }
            );
        }

        says.AddRange(
            visit
                .PartsUsed.Where(p => p.Where == PartWhere.Fitted)
                .OrderBy(p => p.What, StringComparer.Ordinal)
                .Select(p => Statement.Of("visit.done.fitted", ("count", (long)p.Count), ("part", p.What)))
        );
        says.AddRange(
            visit
                .Supplies.Where(s => s.Changed)
                .OrderBy(s => s.Product, StringComparer.Ordinal)
                .Select(s => Statement.Of(s.Primed ? "visit.done.container-primed" : "visit.done.container", ("product", s.Product)))
        );
        foreach (var lesson in visit.Training.OrderBy(t => t.Topic, StringComparer.Ordinal))
        {
            if (knowledge.Visit.TrainingTopics.FirstOrDefault(t => t.Id == lesson.Topic) is { } topic)
            {
                says.Add(
                    Statement.Of(
                        lesson.Shown ? "visit.done.taught-shown" : "visit.done.taught",
                        ("topic", topic.Title),
                        ("names", string.Join(", ", lesson.Names))
                    )
                );
            }
        }

        if (!visit.Touched)
        {
            says.Insert(0, Statement.Of("visit.done.nothing-changed"));
        }

        if (after == Outcome.Proven)
        {
            // A rack that passes is not a machine that is proved: an open test, a danger, a stop stand above it.
            says.Add(
                Statement.Of(
                    standing is not (VisitStanding.Sanitary or VisitStanding.Watch) ? "visit.done.reached"
                    : before == Outcome.Proven ? "visit.done.proved"
                    : "visit.done.proved-again"
                )
            );
        }

        return new PlainLine(says);
    }

    public static PlainLine YouDo(Visit visit, VisitStanding standing, Proof after)
    {
        List<Statement> says = [];
        var hot = visit.Machine.Sanitizing == SanitizingMethod.HotWater;
        switch (standing)
        {
            case VisitStanding.StopUse:
                says.Add(Statement.Of("visit.do.stop"));
                says.Add(Statement.Of("visit.do.by-hand"));
                break;
            case VisitStanding.NotSanitary:
                says.Add(Statement.Of("visit.do.not-sanitary"));
                says.Add(Statement.Of("visit.do.by-hand"));
                break;
            default:
                var limit = after.Limits.FirstOrDefault(l =>
                    l.Sense == LimitSense.Minimum
                    && (
                        hot
                            ? l is { Point: MeasuringPoint.WareSurface, Dimension: Dimension.Temperature }
                            : l is { Point: MeasuringPoint.SanitizingSolution, Dimension: Dimension.MassConcentration }
                    )
                );
                says.Add(
                    limit is null
                        ? Statement.Of(hot ? "visit.do.daily-label" : "visit.do.daily-strip")
                        : Statement.Of(hot ? "visit.do.daily-label-limit" : "visit.do.daily-strip-limit", ("limit", limit.Printed[0]))
                );
                break;
        }

        says.AddRange(
            visit
                .PartsUsed.Where(p => p.Where == PartWhere.Ordered)
                .OrderBy(p => p.What, StringComparer.Ordinal)
                .Select(p =>
                    p.Expected is { } day
                        ? Statement.Of("visit.do.wait-until", ("part", p.What), ("date", day))
                        : Statement.Of("visit.do.wait", ("part", p.What))
                )
        );
        says.AddRange(
            visit
                .Supplies.Where(s => s.DaysLeft is { } days && days < 14)
                .OrderBy(s => s.Product, StringComparer.Ordinal)
                .Select(s => Statement.Of("visit.do.order", ("product", s.Product), ("days", s.DaysLeft!.Value)))
        );
        return new PlainLine(says);
    }
}
