using Rinsewright.Engine.Numerics;
using Rinsewright.Engine.Quantities;
using Rinsewright.Engine.Sanitization;

namespace Rinsewright.Engine.Visits.History;

/// <summary>Whether a run of readings drifts, and when it reaches its limit (H3 to H5).</summary>
internal static class SeriesTrends
{
    /// <summary>Chance that a run which stands still is said to drift; never more.</summary>
    public const double Risk = 0.05;

    // A line is drawn on for at most as long again as it was watched, twice over: an estimate, from memory.
    private const double Ahead = 2;

    /// <summary>Fewest readings that can show a trend.</summary>
    public static int Needs { get; } = KendallTrend.Least(Risk);

    public static SeriesTrend Of(IReadOnlyList<HistoryPoint> run)
    {
        if (run.Count < Needs)
        {
            return new SeriesTrend(TrendKind.TooFew, run.Count, Needs, Days: run.Count > 1 ? Days(run[0], run[^1]) : 0);
        }

        var (times, values) = Figures(run);
        var found = KendallTrend.Of(times, values, Risk)!;
        var moved = Math.Abs(found.Slope) * times[^1];
        var kind =
            !found.Moves ? TrendKind.None
            : moved <= run.Max(p => p.Off ?? 0) ? TrendKind.Small
            : found.Slope > 0 ? TrendKind.Rising
            : TrendKind.Falling;
        var rises = found.Slope >= 0;
        return new SeriesTrend(
            kind,
            run.Count,
            Needs,
            found.Slope,
            rises ? found.Low : found.High,
            rises ? found.High : found.Low,
            found.Chance,
            times[^1]
        );
    }

    /// <summary>When the line of a run reaches what stands in its way; null where nothing does or it does not drift.</summary>
    public static LimitForecast? Forecast(IReadOnlyList<HistoryPoint> run, SeriesTrend trend)
    {
        if (!trend.Drifts || InTheWay(run[^1], trend.PerDay!.Value > 0) is not { } end)
        {
            return null;
        }

        var (times, values) = Figures(run);
        var (last, way) = (times[^1], Math.Sign(trend.PerDay!.Value));
        var horizon = last * Ahead;
        // The instrument may have shown everything too high or too low.
        var off = run.Max(p => p.Off ?? 0);
        double Days(double slope, double nearer)
        {
            var level = KendallTrend.LevelAt(times, values, slope, last) + (way * nearer);
            return Math.Max(0, (end.Figure.Value - level) / slope);
        }

        var day = DateOnly.FromDateTime(run[^1].At.DateTime);
        DateOnly On(double days) => day.AddDays((int)Math.Round(days));
        var there = way * (KendallTrend.LevelAt(times, values, trend.PerDay.Value, last) - end.Figure.Value) >= 0;
        var (earliest, latest) = (Days(trend.Fastest!.Value, off), Days(trend.Slowest!.Value, -off));
        var kind =
            there ? ForecastKind.There
            : earliest > horizon ? ForecastKind.FarOff
            : latest > horizon ? ForecastKind.NotBefore
            : ForecastKind.Between;
        return new LimitForecast(
            kind,
            end.Figure,
            end.Limit,
            there || kind == ForecastKind.FarOff ? null : On(earliest),
            kind == ForecastKind.Between ? On(latest) : null,
            On(horizon)
        );
    }

    // The limit in force in the way of the drift, else the end of the machine's own band.
    private static (Amount Figure, Limit? Limit)? InTheWay(HistoryPoint now, bool rises)
    {
        var limit = rises ? now.MostLimit : now.LeastLimit;
        return limit is { } l ? (l.Figure, l.Limit)
            : now.Own is { } own ? (rises ? own.High : own.Low, null)
            : null;
    }

    private static (double[] Times, double[] Values) Figures(IReadOnlyList<HistoryPoint> run)
    {
        var (times, values) = (new double[run.Count], new double[run.Count]);
        for (var i = 0; i < run.Count; i++)
        {
            (times[i], values[i]) = (Days(run[0], run[i]), run[i].Value.Value);
        }

        return (times, values);
    }

    private static double Days(HistoryPoint from, HistoryPoint to) => (to.At - from.At).TotalDays;
}
