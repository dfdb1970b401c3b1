using Rinsewright.Engine.Quantities;
using Rinsewright.Engine.Records;
using Rinsewright.Engine.Sanitization;
using Rinsewright.Engine.Visits;
using Rinsewright.Engine.Visits.History;

namespace Rinsewright.Drawing.Tests.History;

/// <summary>Invented series, put together by hand: nothing of the engine is asked.</summary>
internal static class InventedSeries
{
    private static readonly DateTimeOffset First = new(2026, 1, 12, 9, 0, 0, TimeSpan.FromHours(-7));

    private static readonly Limit Least = new(
        "final-rinse",
        MeasuringPoint.FinalRinseManifold,
        LimitSense.Minimum,
        [F(180)],
        LimitForce.Rule,
        new Citation("fda-food-code-2022", "4-501.112", "FDA Food Code"),
        [],
        []
    );

    /// <summary>A final rinse that cools, is mended, and cools again towards 180 °F.</summary>
    public static ReadingSeries Rinse() =>
        new(
            "rd-final-rinse-temp",
            null,
            OperatingState.Load,
            MeasuringPoint.FinalRinseManifold,
            Units.Fahrenheit,
            [
                P(0, 0, 189.2),
                P(1, 35, 187.5),
                P(2, 64, 185.1),
                P(3, 95, 181.0, ReadingStatus.NearLimit),
                P(4, 121, 178.4, ReadingStatus.OutOfRange, before: true),
                P(4, 121.1, 190.1, moment: VisitMoment.AsLeft),
                P(5, 150, 189.0),
                P(6, 182, 188.2),
                P(7, 210, 186.9),
                P(8, 243, 186.1),
            ],
            [
                new SeriesSegment([0, 1, 2, 3, 4], new SeriesTrend(TrendKind.Falling, 5, 5, -0.09, -0.05, -0.13, 0.017, 121)),
                new SeriesSegment([5, 6, 7, 8, 9], new SeriesTrend(TrendKind.Falling, 5, 5, -0.033, -0.024, -0.046, 0.017, 122)),
            ],
            [new SeriesBreak(4, First.AddDays(121), "booster delimed", ChangeKind.Cleaned, null, null)],
            [new SeriesStep(2, 3)],
            new LimitForecast(
                ForecastKind.Between,
                F(180),
                Least,
                new DateOnly(2026, 12, 28),
                new DateOnly(2027, 7, 5),
                new DateOnly(2027, 5, 14)
            )
        );

    /// <summary>Points at will, in one run.</summary>
    public static ReadingSeries Of(IReadOnlyList<(double Day, double Value, ReadingStatus Status)> points, IReadOnlyList<double> breaks) =>
        Rinse() with
        {
            Points = [.. points.Select((p, i) => P(i, p.Day, p.Value, p.Status))],
            Segments = [new SeriesSegment([.. Enumerable.Range(0, points.Count)], new SeriesTrend(TrendKind.None, points.Count, 5))],
            Breaks =
            [
                .. breaks.Select(
                    (d, i) =>
                        new SeriesBreak(
                            i,
                            First.AddDays(d),
                            $"thermostat number {i} set a good deal higher",
                            ChangeKind.Set,
                            F(170),
                            F(180)
                        )
                ),
            ],
            Steps = [],
            Forecast = null,
        };

    private static HistoryPoint P(
        int visit,
        double day,
        double value,
        ReadingStatus status = ReadingStatus.InRange,
        bool before = false,
        VisitMoment moment = VisitMoment.AsFound
    ) =>
        new(
            visit,
            First.AddDays(day),
            moment,
            F(value),
            1,
            F(value),
            F(value),
            ReadingMethod.Probe,
            new Instrument("Probe no. 4", new Amount(1, Units.FahrenheitDifference)),
            1,
            new OwnBand(F(183), F(193), 40),
            new SeriesLimit(Least, F(180)),
            null,
            status,
            BandStanding.Inside,
            before
        );

    private static Amount F(double value) => new(value, Units.Fahrenheit);
}
