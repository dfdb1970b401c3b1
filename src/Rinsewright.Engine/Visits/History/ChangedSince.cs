using Rinsewright.Engine.Records;
using Rinsewright.Engine.Sanitization;

namespace Rinsewright.Engine.Visits.History;

/// <summary>What is different at the last visit, in one list: how it stands, what opened and closed, what was done, what moved (H8).</summary>
internal static class ChangedSince
{
    public static IReadOnlyList<Statement> Of(MachineHistory history)
    {
        var last = history.Visits.Count - 1;
        if (last < 1)
        {
            return [];
        }

        var (now, before) = (history.Visits[last], history.Visits[last - 1]);
        List<Statement> says = [];
        if (now.Result.Standing != before.Result.Standing)
        {
            says.Add(Statement.Of("history.changed.standing", ("before", before.Result.Standing), ("now", now.Result.Standing)));
        }

        foreach (var f in history.Findings.Where(f => f.Opened == last))
        {
            says.Add(
                f.State is { } state
                    ? Statement.Of("history.changed.part", ("part", f.Name), ("state", state))
                    : Statement.Of("history.changed.opened", ("what", f.Name))
            );
        }

        says.AddRange(history.Findings.Where(f => f.Closed == last).Select(f => Statement.Of("history.changed.closed", ("what", f.Name))));
        says.AddRange(
            now.Visit.Changes.OrderBy(c => c.At)
                .ThenBy(c => c.What, StringComparer.Ordinal)
                .Select(c =>
                    c is { Before: { } b, After: { } a }
                        ? Statement.Of("history.changed.set", ("what", c.What), ("kind", c.Kind), ("before", b), ("after", a))
                        : Statement.Of("history.changed.done", ("what", c.What), ("kind", c.Kind))
                )
        );
        says.AddRange(
            now.Visit.PartsUsed.Where(p => p.Where == PartWhere.Fitted)
                .OrderBy(p => p.What, StringComparer.Ordinal)
                .Select(p => Statement.Of("history.changed.fitted", ("what", p.What), ("count", (long)p.Count)))
        );
        says.AddRange(
            now.Visit.Supplies.Where(s => s.Changed)
                .OrderBy(s => s.Product, StringComparer.Ordinal)
                .Select(s => Statement.Of("history.changed.container", ("what", s.Product)))
        );
        says.AddRange(history.Series.SelectMany(s => Moved(s, last)));
        return says;
    }

    private static IEnumerable<Statement> Moved(ReadingSeries series, int last)
    {
        object name = series.Known is { } known ? known.Name : Statement.Of($"visit.kind.{series.Kind}");
        var points = series.Points;
        foreach (var step in series.Steps.Where(s => points[s.To].Visit == last))
        {
            yield return Statement.Of(
                "history.changed.moved",
                ("reading", name),
                ("state", series.State),
                ("before", points[step.From].Value),
                ("now", points[step.To].Value)
            );
        }

        var now = points.LastOrDefault(p => p.Visit == last);
        var before = points.LastOrDefault(p => p.Visit < last);
        if (now is not null && before is not null && now.Status != before.Status && Tells(now.Status) && Tells(before.Status))
        {
            yield return Statement.Of(
                "history.changed.status",
                ("reading", name),
                ("state", series.State),
                ("before", before.Status),
                ("now", now.Status),
                ("value", now.Value)
            );
        }
    }

    private static bool Tells(ReadingStatus status) => status is not (ReadingStatus.NoLimit or ReadingStatus.NotRead);
}
