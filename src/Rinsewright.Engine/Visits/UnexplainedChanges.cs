using Rinsewright.Engine.Quantities;
using Rinsewright.Engine.Records;

namespace Rinsewright.Engine.Visits;

/// <summary>Readings that moved by more than instruments may be off and gauges tell, and nothing recorded says why (V9).</summary>
internal static class UnexplainedChanges
{
    public static IReadOnlyList<Statement> Of(Visit visit, IReadOnlyList<JudgedReading> lines)
    {
        var read = lines
            .Where(l => l.Reading is { Value: not null, Reached: null } && VisitProofs.Refused(visit, l.Reading) is null)
            .ToList();
        List<Statement> says = [];
        foreach (var earlier in visit.Earlier.OrderBy(e => e.Kind, StringComparer.Ordinal).ThenByDescending(e => e.On))
        {
            var now = read.LastOrDefault(l =>
                l.Reading.Kind == earlier.Kind && l.Reading.Moment == VisitMoment.AsFound && l.Reading.State == earlier.State
            );
            // A cause that was shown explains what it moved; one that is only likely does not.
            if (now is not null && visit.Cause is not { Known: CauseKnown.Confirmed } && Moved(visit, now.Reading, earlier.Value))
            {
                says.Add(
                    Statement.Of(
                        "visit.unexplained.since",
                        ("reading", Name(now)),
                        ("before", earlier.Value),
                        ("date", earlier.On),
                        ("now", now.Reading.Value!.Value)
                    )
                );
            }
        }

        var explained = visit.Changes.SelectMany(c => c.Areas).ToHashSet();
        if (visit.Supplies.Any(s => s.Changed))
        {
            explained.Add(AcceptanceArea.Chemistry);
        }

        foreach (var group in read.GroupBy(l => (l.Reading.Kind, l.Reading.State)))
        {
            var found = group.LastOrDefault(l => l.Reading.Moment == VisitMoment.AsFound);
            var left = group.LastOrDefault(l => l.Reading.Moment == VisitMoment.AsLeft);
            if (
                found is not null
                && left is not null
                && VisitReadingKinds.Find(group.Key.Kind)?.Area is { } area
                && !explained.Contains(area)
                && Moved(visit, left.Reading, found.Reading.Value!.Value)
            )
            {
                says.Add(
                    Statement.Of(
                        "visit.unexplained.today",
                        ("reading", Name(left)),
                        ("before", found.Reading.Value!.Value),
                        ("now", left.Reading.Value!.Value)
                    )
                );
            }
        }

        return says;
    }

    /// <summary>A reading's name: the knowledge's phrase, or the place's own word.</summary>
    internal static object Name(JudgedReading line) =>
        line.Known is { } known ? known.Name : Statement.Of($"visit.kind.{line.Reading.Kind}");

    private static bool Moved(Visit visit, VisitReading now, Amount before) =>
        now.Value is { } value && Moved(now.Kind, value, before, ReadingLines.HalfWidth(visit, now, value.Unit));

    /// <summary>Whether a reading moved by more than its instrument may be off and gauges tell (V9).</summary>
    /// <param name="id">Kind of reading.</param>
    /// <param name="value">Now.</param>
    /// <param name="before">Before.</param>
    /// <param name="off">What the instrument may be off by, in the unit of <paramref name="value"/>; 0 where nobody knows.</param>
    internal static bool Moved(string id, Amount value, Amount before, double off)
    {
        var kind = VisitReadingKinds.Find(id);
        if (kind is null || before.Unit.Dimension != value.Unit.Dimension)
        {
            return false;
        }

        var shows =
            kind.UnderLoad is { } o && o.Dimension == value.Unit.Dimension
                ? o.Threshold * o.Unit.Numerator / o.Unit.Denominator * value.Unit.Denominator / value.Unit.Numerator
                : 0;
        // Both readings may be off; a twentieth is what a bucket, a strip or a titration repeats to at best (from memory).
        return Math.Abs(value.Value - before.In(value.Unit).Value) > Math.Max((2 * off) + shows, off > 0 ? 0 : 0.2 * Math.Abs(value.Value));
    }
}
