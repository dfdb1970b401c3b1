using Rinsewright.Engine.Knowledge;
using Rinsewright.Engine.Quantities;
using Rinsewright.Engine.Records;

namespace Rinsewright.Engine.Visits;

/// <summary>The next visit: the earliest of what was found, what is overdue, what is on order and what runs out (V10). Days that the knowledge does not give are from memory.</summary>
internal static class NextVisits
{
    private const int Stopped = 1;
    private const int Unproved = 7;
    private const int Watched = 14;
    private const int Waiting = 7;
    private const int Spare = 7;
    private const int RoutineIfUnknown = 30;

    public static NextVisit Of(Visit visit, TradeKnowledge knowledge, VisitStanding standing, IReadOnlyList<PartLine> parts)
    {
        List<(DateOnly On, Statement Because)> due = [];
        void In(int days, Statement because) => due.Add((visit.On.AddDays(Math.Max(1, days)), because));

        var routine = knowledge.Visit.Intervals.FirstOrDefault(i => i.Id == "iv-routine")?.Days ?? RoutineIfUnknown;
        switch (standing)
        {
            case VisitStanding.StopUse:
                In(Stopped, Statement.Of("visit.next.stop"));
                break;
            case VisitStanding.NotSanitary:
                In(Stopped, Statement.Of("visit.next.not-sanitary"));
                break;
            case VisitStanding.NotProved:
                In(Unproved, Statement.Of("visit.next.not-proved"));
                break;
            case VisitStanding.Watch:
                In(Watched, Statement.Of("visit.next.watch"));
                break;
        }

        foreach (var part in visit.PartsUsed.Where(p => p.Where == PartWhere.Ordered))
        {
            var expected = part.Expected is { } day && day > visit.On ? day.DayNumber - visit.On.DayNumber : Waiting;
            In(expected, Statement.Of("visit.next.ordered", ("part", part.What)));
        }

        foreach (var part in visit.PartsUsed.Where(p => p.Where == PartWhere.OnSite))
        {
            In(Waiting, Statement.Of("visit.next.on-site", ("part", part.What)));
        }

        foreach (var part in parts.Where(p => p.State is PartState.Broken or PartState.Missing))
        {
            In(Waiting, Statement.Of("visit.next.broken", ("part", part.Part.Name)));
        }

        foreach (var supply in visit.Supplies.Where(s => s.DaysLeft is { } days && double.IsFinite(days) && days < routine + Spare))
        {
            In(
                (int)Math.Floor(supply.DaysLeft!.Value) - Spare,
                Statement.Of("visit.next.supply", ("product", supply.Product), ("days", supply.DaysLeft.Value))
            );
        }

        foreach (var upkeep in visit.Upkeep)
        {
            if (upkeep.Last is not { } last || IntervalOf(visit, knowledge, upkeep.Interval) is not { } interval)
            {
                continue;
            }

            var on = last.AddDays(interval.Days);
            due.Add(
                on <= visit.On
                    ? (visit.On.AddDays(Waiting), Statement.Of("visit.next.overdue", ("what", interval.What), ("date", last)))
                    : (on, Statement.Of("visit.next.due", ("what", interval.What), ("days", (long)interval.Days)))
            );
        }

        In(routine, Statement.Of("visit.next.routine", ("days", (long)routine)));
        // What was put first weighs most on the same day.
        var order = due.Select((d, place) => (d.On, d.Because, Place: place))
            .OrderBy(d => d.On)
            .ThenBy(d => Weight(d.Because.Key))
            .ThenBy(d => Text(d.Because), StringComparer.Ordinal)
            .Select(d => (d.On, d.Because))
            .ToList();
        return new NextVisit(order[0].On, order[0].Because, [.. order.Skip(1)]);
    }

    // How often to delime hangs on the hardness that was read today.
    private static DueInterval? IntervalOf(Visit visit, TradeKnowledge knowledge, string id)
    {
        var grains = visit
            .Readings.Where(r => r is { Kind: "rd-hardness", Value.Unit.Dimension: Dimension.Hardness })
            .Select(r => (double?)r.Value!.Value.In(Units.GrainPerGallon).Value)
            .Max();
        // Classes of hardness: 3.5, 7 and 10.5 gpg, as the knowledge's intervals name them.
        var wanted =
            id.StartsWith("iv-delime", StringComparison.Ordinal) && grains is { } gpg
                ? gpg < 3.5
                    ? "iv-delime-soft"
                    : gpg < 7
                        ? "iv-delime-moderate"
                        : gpg < 10.5
                            ? "iv-delime-hard"
                            : "iv-delime-very-hard"
                : id;
        return knowledge.Visit.Intervals.FirstOrDefault(i => i.Id == wanted);
    }

    private static int Weight(string key) =>
        key switch
        {
            "visit.next.stop" => 0,
            "visit.next.not-sanitary" => 1,
            "visit.next.not-proved" => 2,
            "visit.next.ordered" => 3,
            "visit.next.on-site" => 4,
            "visit.next.broken" => 5,
            "visit.next.supply" => 6,
            "visit.next.overdue" => 7,
            "visit.next.watch" => 8,
            "visit.next.due" => 9,
            _ => 10,
        };

    private static string Text(Statement says) =>
        string.Join('|', says.Values.Select(v => v.Value is Phrase p ? p.English : v.Value.ToString()));
}
