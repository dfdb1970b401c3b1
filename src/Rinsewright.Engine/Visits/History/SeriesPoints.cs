using Rinsewright.Engine.Machines;
using Rinsewright.Engine.Quantities;
using Rinsewright.Engine.Records;
using Rinsewright.Engine.Sanitization;

namespace Rinsewright.Engine.Visits.History;

/// <summary>What a series is of.</summary>
internal readonly record struct SeriesKey(string Kind, OperatingState State, MeasuringPoint Place);

/// <summary>Readings of a visit as points: racks of one moment together (H1).</summary>
internal static class SeriesPoints
{
    public static IEnumerable<(SeriesKey Key, HistoryPoint Point)> Of(HistoryVisit of, int place)
    {
        var (visit, result) = (of.Visit, of.Result);
        var read = result.Readings.Where(l =>
            l.Reading is { Value: not null, Reached: null, Moment: not VisitMoment.Between }
            && VisitReadingKinds.Find(l.Reading.Kind) is not null
            && VisitProofs.Refused(visit, l.Reading) is null
        );
        foreach (
            var group in read.GroupBy(l =>
                (
                    Key: new SeriesKey(
                        l.Reading.Kind,
                        l.Reading.State,
                        VisitReadingKinds.PointOn(VisitReadingKinds.Find(l.Reading.Kind)!, visit.Machine)
                    ),
                    l.Reading.Moment
                )
            )
        )
        {
            // The machine's own gauge is asked only where nothing better was: it is one of the things that go wrong.
            var better = group.Where(l => l.Reading.Method != ReadingMethod.MachineGauge).ToList();
            yield return (group.Key.Key, Point(visit, result, better.Count > 0 ? better : [.. group], group.Key.Key, place));
        }
    }

    private static HistoryPoint Point(Visit visit, VisitResult result, List<JudgedReading> lines, SeriesKey key, int place)
    {
        var unit = VisitReadingKinds.Find(key.Kind)!.Unit;
        var sorted = lines
            .OrderBy(l => l.Reading.Value!.Value.SI)
            .ThenBy(l => l.Reading.At ?? DateTimeOffset.MaxValue)
            .ThenBy(l => l.Reading.Instrument, StringComparer.Ordinal)
            .ToList();
        var values = sorted.Select(l => In(l.Reading.Value!.Value, unit)).ToList();
        var worst = sorted.OrderByDescending(l => Weight(l.Status)).ThenByDescending(l => Weight(l.Band)).First();
        var offs = sorted.Select(l => ReadingLines.HalfWidth(visit, l.Reading, unit)).ToList();
        var own = sorted.Select(l => l.Own).OfType<OwnBand>().FirstOrDefault();
        return new HistoryPoint(
            place,
            sorted.Min(l => l.Reading.At) ?? visit.Began,
            sorted[0].Reading.Moment,
            new Amount(Median(values), unit),
            values.Count,
            new Amount(values[0], unit),
            new Amount(values[^1], unit),
            sorted[0].Reading.Method,
            VisitProofs.InstrumentOf(visit, sorted[0].Reading),
            offs.Max() is > 0 and var off ? off : null,
            own is null ? null : own with { Low = new Amount(In(own.Low, unit), unit), High = new Amount(In(own.High, unit), unit) },
            Limit(result, lines, key.Place, unit, LimitSense.Minimum),
            Limit(result, lines, key.Place, unit, LimitSense.Maximum),
            worst.Status,
            worst.Band,
            visit.Touched && sorted[0].Reading.Moment == VisitMoment.AsFound
        );
    }

    /// <summary>In another unit, without the last digits that turning adds: what was read alike stays alike.</summary>
    internal static double In(Amount amount, Unit unit) => amount.Unit == unit ? amount.Value : Math.Round(amount.In(unit).Value, 9);

    // The limit the reading was judged by stands first; for the other sense the strictest that is law or plate and asks for nothing beside it.
    private static SeriesLimit? Limit(VisitResult result, List<JudgedReading> lines, MeasuringPoint place, Unit unit, LimitSense sense)
    {
        if (place == MeasuringPoint.Unknown)
        {
            return null;
        }

        var judged = lines.Select(l => l.Rule?.Limit).OfType<Limit>().Where(l => l.Sense == sense);
        var inForce = result.After.Limits.Where(l =>
            l.Point == place
            && l.Dimension == unit.Dimension
            && l.Sense == sense
            && l.While is not { Count: > 0 }
            && l.Force <= LimitForce.Rule
        );
        return judged
            .Concat(inForce)
            .Where(l => l.Force != LimitForce.CommonPractice)
            .Select(l => new SeriesLimit(l, l.PrintedIn(unit)))
            .OrderBy(l => sense == LimitSense.Minimum ? -l.Figure.Value : l.Figure.Value)
            .ThenBy(l => l.Limit.Force)
            .ThenBy(l => l.Limit.Id, StringComparer.Ordinal)
            .FirstOrDefault();
    }

    private static double Median(List<double> sorted) =>
        sorted.Count % 2 == 1 ? sorted[sorted.Count / 2] : (sorted[(sorted.Count / 2) - 1] + sorted[sorted.Count / 2]) / 2;

    private static int Weight(ReadingStatus status) =>
        status switch
        {
            ReadingStatus.OutOfRange => 5,
            ReadingStatus.Open => 4,
            ReadingStatus.NearLimit => 3,
            ReadingStatus.InRange => 2,
            ReadingStatus.NoLimit => 1,
            _ => 0,
        };

    private static int Weight(BandStanding band) =>
        band switch
        {
            BandStanding.Below or BandStanding.Above => 3,
            BandStanding.Edge => 2,
            BandStanding.Inside => 1,
            _ => 0,
        };
}
