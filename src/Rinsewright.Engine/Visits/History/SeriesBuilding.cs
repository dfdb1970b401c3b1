using Rinsewright.Engine.Knowledge;
using Rinsewright.Engine.Quantities;
using Rinsewright.Engine.Records;

namespace Rinsewright.Engine.Visits.History;

/// <summary>Points of many visits as series, parted where something was done that touches them (H1, H2).</summary>
internal static class SeriesBuilding
{
    public static IReadOnlyList<ReadingSeries> Of(IReadOnlyList<HistoryVisit> visits, TradeKnowledge knowledge)
    {
        var known = knowledge.Observables.Readings.ToDictionary(r => r.Id, StringComparer.Ordinal);
        var order = visits.Count > 0 ? VisitReadingKinds.Usual(knowledge, visits[^1].Visit.Machine).ToList() : [];
        return
        [
            .. visits
                .SelectMany(SeriesPoints.Of)
                .GroupBy(p => p.Key, p => p.Point)
                .OrderBy(g => order.IndexOf(g.Key.Kind) is >= 0 and var place ? place : order.Count)
                .ThenBy(g => g.Key.Kind, StringComparer.Ordinal)
                .ThenBy(g => g.Key.State == OperatingState.Load ? -1 : (int)g.Key.State)
                .ThenBy(g => g.Key.Place)
                .Select(g => Series(g.Key, known.GetValueOrDefault(g.Key.Kind), [.. g], visits)),
        ];
    }

    /// <summary>Readings of the water of a kitchen: one run each, for nothing here says what was done to it.</summary>
    public static IReadOnlyList<ReadingSeries> Of(IReadOnlyList<HistoryWater> water, TradeKnowledge knowledge)
    {
        var known = knowledge.Observables.Readings.ToDictionary(r => r.Id, StringComparer.Ordinal);
        List<ReadingSeries> all = [];
        foreach (
            var group in water
                .Where(w => double.IsFinite(w.Value.Value))
                .GroupBy(w => (w.Kind, w.Value.Unit.Dimension))
                .OrderBy(g => g.Key.Kind, StringComparer.Ordinal)
        )
        {
            var unit =
                VisitReadingKinds.Find(group.Key.Kind)?.Unit is { } u && u.Dimension == group.Key.Dimension
                    ? u
                    : group.Select(w => w.Value.Unit).OrderBy(x => x.Ucum, StringComparer.Ordinal).First();
            // Of several on a day their median: a day has one place in time.
            var points = group
                .GroupBy(w => w.On)
                .OrderBy(g => g.Key)
                .Select(g => Point([.. g.Select(w => SeriesPoints.In(w.Value, unit)).Order()], g.Key, unit))
                .ToList();
            all.Add(
                Finished(
                    new SeriesKey(group.Key.Kind, OperatingState.Unknown, MeasuringPoint.WaterSupply),
                    known.GetValueOrDefault(group.Key.Kind),
                    points,
                    [
                        [.. Enumerable.Range(0, points.Count)],
                    ],
                    [],
                    []
                )
            );
        }

        return all;
    }

    private static HistoryPoint Point(List<double> sorted, DateOnly on, Unit unit)
    {
        var middle = (sorted[(sorted.Count - 1) / 2] + sorted[sorted.Count / 2]) / 2;
        return new HistoryPoint(
            null,
            new DateTimeOffset(on.ToDateTime(TimeOnly.MinValue), TimeSpan.Zero),
            VisitMoment.AsFound,
            new Amount(middle, unit),
            sorted.Count,
            new Amount(sorted[0], unit),
            new Amount(sorted[^1], unit),
            ReadingMethod.TestKit,
            null,
            null,
            null,
            null,
            null,
            Sanitization.ReadingStatus.NoLimit,
            BandStanding.NoBand
        );
    }

    private static ReadingSeries Series(SeriesKey key, KnownReading? known, List<HistoryPoint> points, IReadOnlyList<HistoryVisit> visits)
    {
        points = [.. points.OrderBy(p => p.Visit).ThenBy(p => p.Moment)];
        var breaks = SeriesBreaks.Of(key, visits);
        var broken = breaks.Select(b => b.Visit).ToHashSet();
        List<List<int>> runs =
        [
            [],
        ];
        for (var v = 0; v < visits.Count; v++)
        {
            int Place(VisitMoment moment) => points.FindIndex(p => p.Visit == v && p.Moment == moment && !p.ByGauge);
            var (found, left) = (Place(VisitMoment.AsFound), Place(VisitMoment.AsLeft));
            // One reading of a visit to a run: two within an hour are no two looks at a drift.
            if (found >= 0 || (left >= 0 && !broken.Contains(v)))
            {
                runs[^1].Add(found >= 0 ? found : left);
            }

            if (broken.Contains(v))
            {
                runs.Add(left >= 0 ? [left] : []);
            }
        }

        return Finished(key, known, points, runs, breaks, Steps(key, points, runs, visits));
    }

    internal static ReadingSeries Finished(
        SeriesKey key,
        KnownReading? known,
        List<HistoryPoint> points,
        List<List<int>> runs,
        IReadOnlyList<SeriesBreak> breaks,
        IReadOnlyList<SeriesStep> steps
    )
    {
        // Runs without readings between two changes are nothing to show; the last one stays, for it is how it goes now.
        var segments = runs.Where((r, i) => r.Count > 0 || i == runs.Count - 1)
            .Select(r => new SeriesSegment(r, SeriesTrends.Of([.. r.Select(i => points[i])])))
            .ToList();
        var last = segments[^1];
        return new ReadingSeries(
            key.Kind,
            known,
            key.State,
            key.Place,
            points[0].Value.Unit,
            points,
            segments,
            breaks,
            steps,
            SeriesTrends.Forecast([.. last.Points.Select(i => points[i])], last.Trend)
        );
    }

    // What was left against what is found next, with nothing on record between them. A cause that was found explains what it moved.
    private static List<SeriesStep> Steps(
        SeriesKey key,
        List<HistoryPoint> points,
        List<List<int>> runs,
        IReadOnlyList<HistoryVisit> visits
    )
    {
        List<SeriesStep> steps = [];
        foreach (var run in runs)
        {
            for (var i = 1; i < run.Count; i++)
            {
                var (before, now) = (points[run[i - 1]], points[run[i]]);
                var visit = visits[now.Visit!.Value];
                if (
                    visit.Visit.Cause is not { Known: CauseKnown.Confirmed }
                    && UnexplainedChanges.Moved(key.Kind, now.Value, before.Value, now.Off ?? 0)
                )
                {
                    steps.Add(new SeriesStep(run[i - 1], run[i]));
                }
            }
        }

        return steps;
    }
}
