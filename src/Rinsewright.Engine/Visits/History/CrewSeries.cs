using Rinsewright.Engine.Knowledge;
using Rinsewright.Engine.Quantities;
using Rinsewright.Engine.Records;
using Rinsewright.Engine.Sanitization;

namespace Rinsewright.Engine.Visits.History;

/// <summary>The crew's logs of many visits as series: of each day the median of its shifts, against limits and own band of the visit that copied it (H9).</summary>
internal static class CrewSeries
{
    // More days than this since a change are taken by the week: pairs grow with their square, and a phone draws them.
    private const int MostDays = 90;
    private const int Week = 7;

    public static IReadOnlyList<ReadingSeries> Of(IReadOnlyList<HistoryVisit> visits, TradeKnowledge knowledge)
    {
        // Two visits may copy the same day: the later has the last word.
        Dictionary<SeriesKey, SortedDictionary<(DateOnly On, int Shift), (CrewEntry Entry, JudgedCrewLog Log)>> all = [];
        foreach (var visit in visits)
        {
            foreach (var log in visit.Result.CrewLogs)
            {
                if (VisitReadingKinds.Find(log.Log.Kind) is not { } kind || kind.Unit.Dimension != log.Log.Unit.Dimension)
                {
                    continue;
                }

                var key = new SeriesKey(kind.Id, log.Log.State, VisitReadingKinds.PointOn(kind, visit.Visit.Machine));
                if (!all.TryGetValue(key, out var entries))
                {
                    all[key] = entries = [];
                }

                foreach (var entry in log.Log.Looked)
                {
                    entries[(entry.On, entry.Shift)] = (entry, log);
                }
            }
        }

        return
        [
            .. all.Where(s => s.Value.Count > 0)
                .OrderBy(s => s.Key.Kind, StringComparer.Ordinal)
                .ThenBy(s => s.Key.State)
                .ThenBy(s => s.Key.Place)
                .Select(s => Series(s.Key, [.. s.Value.Values], visits, knowledge)),
        ];
    }

    private static ReadingSeries Series(
        SeriesKey key,
        List<(CrewEntry Entry, JudgedCrewLog Log)> copied,
        IReadOnlyList<HistoryVisit> visits,
        TradeKnowledge knowledge
    )
    {
        var unit = VisitReadingKinds.Find(key.Kind)!.Unit;
        var breaks = SeriesBreaks.Of(key, visits);
        var changed = breaks.Select(b => DateOnly.FromDateTime(b.At.DateTime)).Distinct().Order().ToList();
        List<List<HistoryPoint>> runs = [];
        List<HistoryPoint> points = [];
        for (var run = 0; run <= changed.Count; run++)
        {
            // Nobody knows whether what stands there of the day itself was written before the change or after it: it is shown, and belongs to no run.
            var of = copied
                .Where(c => (run == 0 || c.Entry.On > changed[run - 1]) && (run == changed.Count || c.Entry.On < changed[run]))
                .ToList();
            var span = of.Select(c => c.Entry.On).Distinct().Count() > MostDays ? Week : 1;
            List<HistoryPoint> made =
            [
                .. of.GroupBy(c => c.Entry.On.DayNumber / span).OrderBy(g => g.Key).Select(g => Point([.. g], unit)),
            ];
            runs.Add(made);
            points.AddRange(made);
            if (run < changed.Count && copied.Where(c => c.Entry.On == changed[run]).ToList() is { Count: > 0 } day)
            {
                points.Add(Point(day, unit));
            }
        }

        return SeriesBuilding.Finished(
            key,
            knowledge.Observables.Readings.FirstOrDefault(r => r.Id == key.Kind),
            points,
            [.. runs.Select(r => r.Select(p => points.IndexOf(p)).ToList())],
            breaks,
            []
        );
    }

    // In order of the days, so the last is the latest copied.
    private static HistoryPoint Point(List<(CrewEntry Entry, JudgedCrewLog Log)> copied, Unit unit)
    {
        var (first, log) = (copied[0].Entry.On, copied[^1].Log);
        var sorted = copied.Select(c => SeriesPoints.In(new Amount(c.Entry.Value, c.Log.Log.Unit), unit)).Order().ToList();
        var middle = (sorted[(sorted.Count - 1) / 2] + sorted[sorted.Count / 2]) / 2;
        var own = log.Own is { } band
            ? band with
            {
                Low = new Amount(SeriesPoints.In(band.Low, unit), unit),
                High = new Amount(SeriesPoints.In(band.High, unit), unit),
            }
            : null;
        var missed = copied.Exists(c => c.Log.Outside?.Any(o => o.Entry == c.Entry) == true);
        return new HistoryPoint(
            null,
            new DateTimeOffset(first.ToDateTime(TimeOnly.MinValue), TimeSpan.Zero),
            VisitMoment.AsFound,
            new Amount(middle, unit),
            sorted.Count,
            new Amount(sorted[0], unit),
            new Amount(sorted[^1], unit),
            log.GaugeOff is null ? ReadingMethod.Strip : ReadingMethod.MachineGauge,
            null,
            log.GaugeOff is { } off ? InDifference(off, unit) : null,
            own,
            Strictest(log.Limits, unit, LimitSense.Minimum),
            Strictest(log.Limits, unit, LimitSense.Maximum),
            missed ? ReadingStatus.OutOfRange
                : log.Limits.Count > 0 ? ReadingStatus.InRange
                : ReadingStatus.NoLimit,
            own is null ? BandStanding.NoBand
                : middle < own.Low.Value ? BandStanding.Below
                : middle > own.High.Value ? BandStanding.Above
                : BandStanding.Inside
        )
        {
            ByCrew = true,
        };
    }

    // A difference in the unit of the log, in the unit of the series.
    private static double InDifference(Amount off, Unit unit) =>
        unit.Dimension == Dimension.Temperature
            ? off.In(unit == Units.Fahrenheit ? Units.FahrenheitDifference : Units.CelsiusDifference).Value
            : off.In(unit).Value;

    private static SeriesLimit? Strictest(IReadOnlyList<Limit> limits, Unit unit, LimitSense sense) =>
        limits
            .Where(l => l.Sense == sense && l.While is not { Count: > 0 })
            .Select(l => new SeriesLimit(l, l.PrintedIn(unit)))
            .OrderBy(l => sense == LimitSense.Minimum ? -l.Figure.Value : l.Figure.Value)
            .ThenBy(l => l.Limit.Force)
            .ThenBy(l => l.Limit.Id, StringComparer.Ordinal)
            .FirstOrDefault();
}
