using System.Globalization;
using Rinsewright.Contracts.Language;
using Rinsewright.Engine.Quantities;
using Rinsewright.Engine.Visits.History;

namespace Rinsewright.Drawing.History;

/// <summary>Where days and values lie on a history chart.</summary>
internal sealed class HistoryChartScale
{
    private const double Left = 46;
    private const double PadRight = 14;
    private const double TopRoom = 36;
    private const double BottomRoom = 24;

    // A limit farther from the readings than they spread, this many times over, would flatten them: it is said, not drawn.
    private const double Farthest = 4;

    public HistoryChartScale(ReadingSeries series, HistoryChartSize size, HistoryWords words)
    {
        Unit = words.UnitOf(series);
        var points = series.Points;
        First = points.Min(p => p.At);
        var last = points.Max(p => p.At);
        var span = Math.Max(1, (last - First).TotalDays);
        var ahead = series.Forecast is { Kind: not ForecastKind.There } f
            ? Math.Min(span * 0.5, DateOnly.FromDateTime(last.DateTime) is var end ? (f.Latest ?? f.Until).DayNumber - end.DayNumber : 0)
            : 0;
        (FromDay, ToDay) = (-span * 0.03, span + Math.Max(ahead * 1.05, span * 0.05));
        (PlotLeft, PlotRight, Top, Bottom) = (Left, size.Width - PadRight, TopRoom, size.Height - BottomRoom);

        List<double> values = [];
        foreach (var p in points)
        {
            var (value, off) = (HistoryWords.In(p.Value, Unit), HistoryWords.Span(p.Off ?? 0, series.Unit, Unit));
            values.AddRange([value - off, value + off]);
        }

        var (low, high) = (values.Min(), values.Max());
        var spread = Math.Max(high - low, Math.Max(Math.Abs(high), 1) * 0.02);
        foreach (var figure in points.SelectMany(p => (Amount?[])[p.LeastLimit?.Figure, p.MostLimit?.Figure, p.Own?.Low, p.Own?.High]))
        {
            if (figure is { } f2 && HistoryWords.In(f2, Unit) is var v && v > low - (spread * Farthest) && v < high + (spread * Farthest))
            {
                values.Add(v);
            }
        }

        (low, high) = (values.Min(), values.Max());
        var pad = Math.Max((high - low) * 0.1, spread * 0.1);
        (Low, High) = (low >= 0 ? Math.Max(0, low - pad) : low - pad, high + pad);
        Step = Ticks.Step(High - Low, (int)Math.Max(2, (Bottom - Top) / 30));
    }

    public Unit Unit { get; }

    public DateTimeOffset First { get; }

    public double FromDay { get; }

    public double ToDay { get; }

    public double Low { get; }

    public double High { get; }

    public double Step { get; }

    public double PlotLeft { get; }

    public double PlotRight { get; }

    public double Top { get; }

    public double Bottom { get; }

    public double Day(DateTimeOffset at) => (at - First).TotalDays;

    public double X(DateTimeOffset at) => XOf(Day(at));

    public double XOf(double day) => PlotLeft + ((Math.Clamp(day, FromDay, ToDay) - FromDay) / (ToDay - FromDay) * (PlotRight - PlotLeft));

    public double Y(double value) => Bottom - ((Math.Clamp(value, Low, High) - Low) / (High - Low) * (Bottom - Top));

    /// <summary>Days with their labels along the axis: whole months where the span has room for them, else days.</summary>
    public IEnumerable<(double X, string Text)> Dates(Words words)
    {
        const double Room = 62;
        var most = Math.Max(1, (int)((PlotRight - PlotLeft) / Room));
        var (from, to) = (First.AddDays(FromDay), First.AddDays(ToDay));
        var months = (to - from).TotalDays / 30.4;
        if (months < 2.5)
        {
            var step = Math.Max(1, (int)Math.Ceiling((to - from).TotalDays / most));
            for (
                var day = DateOnly.FromDateTime(from.DateTime).AddDays(1);
                day <= DateOnly.FromDateTime(to.DateTime);
                day = day.AddDays(step)
            )
            {
                yield return (XOfDay(day), words.DayOfYear(day));
            }

            yield break;
        }

        var every = ((int[])[1, 2, 3, 6, 12, 24, 60, 120]).FirstOrDefault(m => months / m <= most, 240);
        var start = from.Year * 12 + from.Month; // the month after the first
        for (var m = (start + every - 1) / every * every; ; m += every)
        {
            var day = new DateOnly(m / 12, (m % 12) + 1, 1);
            if (day > DateOnly.FromDateTime(to.DateTime))
            {
                yield break;
            }

            yield return (XOfDay(day), every >= 12 ? day.ToString("yyyy", CultureInfo.InvariantCulture) : words.MonthOfYear(day));
        }
    }

    private double XOfDay(DateOnly day) => XOf((day.ToDateTime(TimeOnly.MinValue) - First.DateTime).TotalDays);
}
