using Rinsewright.Contracts;
using Rinsewright.Engine.Quantities;
using Rinsewright.Engine.Sanitization;
using Rinsewright.Engine.Visits;
using Rinsewright.Engine.Visits.History;

namespace Rinsewright.Drawing.History;

/// <summary>Size of a history chart, px.</summary>
/// <param name="Width">Width, from 280 on.</param>
/// <param name="Height">Height, from 140 on.</param>
public sealed record HistoryChartSize(double Width, double Height)
{
    /// <summary>A phone held upright.</summary>
    public static HistoryChartSize Phone { get; } = new(340, 200);

    /// <summary>The width of a sheet of paper, before it is scaled down.</summary>
    public static HistoryChartSize Paper { get; } = new(680, 190);
}

/// <summary>
/// One reading over the visits: own band shaded, what the rule forbids hatched, what was found before a change hollow, what was left solid, a dashed line where something was done, the drift and how far
/// it may reach drawn on to the limit.
/// </summary>
public static class HistoryChart
{
    private const double Radius = 5;
    private const double HollowRadius = 3.6; // paper fills what is in range with white as well: size tells them apart there

    /// <summary>Draws a series.</summary>
    /// <param name="series">The series; it has a point.</param>
    /// <param name="size">Size.</param>
    /// <param name="words">Language and units.</param>
    public static Scene Draw(ReadingSeries series, HistoryChartSize size, HistoryWords words)
    {
        var scale = new HistoryChartScale(series, size, words);
        List<SceneMark> marks = [];
        AddBand(marks, series, scale, words);
        AddAxes(marks, scale, words);
        AddLimits(marks, series, scale, words);
        AddForecast(marks, series, scale, words);
        AddBreaks(marks, series, scale, words, size);
        AddRuns(marks, series, scale, words);
        AddPoints(marks, series, scale, words);
        return new Scene(
            size.Width,
            size.Height,
            words.Name(series),
            words.Describe(series),
            marks,
            [
                new ScenePlot(
                    "history",
                    scale.PlotLeft,
                    scale.Top,
                    scale.PlotRight,
                    scale.Bottom,
                    scale.FromDay,
                    scale.ToDay,
                    scale.Low,
                    scale.High,
                    scale.Unit.Ucum
                ),
            ]
        );
    }

    /// <summary>Where the points of a series lie, px, in their order.</summary>
    public static IReadOnlyList<ScenePoint> Places(ReadingSeries series, HistoryChartSize size, HistoryWords words)
    {
        var scale = new HistoryChartScale(series, size, words);
        return [.. series.Points.Select(p => At(p, scale, words))];
    }

    private static ScenePoint At(HistoryPoint p, HistoryChartScale scale, HistoryWords words) =>
        new(scale.X(p.At), scale.Y(HistoryWords.In(p.Value, scale.Unit)));

    private static void AddAxes(List<SceneMark> marks, HistoryChartScale scale, HistoryWords words)
    {
        foreach (var value in Ticks.Within(scale.Low, scale.High, scale.Step))
        {
            var y = scale.Y(value);
            marks.Add(new SceneLine("grid", [new(scale.PlotLeft, y), new(scale.PlotRight, y)]));
            marks.Add(new SceneText("ax", scale.PlotLeft - 6, y + 4, words.Words.Number(value, 4), TextAnchor.End));
        }

        marks.Add(new SceneText("axt", 2, 12, scale.Unit.Symbol));
        marks.Add(new SceneLine("base", [new(scale.PlotLeft, scale.Bottom), new(scale.PlotRight, scale.Bottom)]));
        foreach (var (x, text) in scale.Dates(words.Words))
        {
            marks.Add(new SceneLine("tick", [new(x, scale.Bottom), new(x, scale.Bottom + 5)]));
            var half = TextWidth.Of(text, 12) / 2;
            marks.Add(new SceneText("tx", Math.Clamp(x, half, scale.PlotRight + 12 - half), scale.Bottom + 18, text, TextAnchor.Middle));
        }
    }

    // Each point's band holds half way to its neighbours.
    private static void AddBand(List<SceneMark> marks, ReadingSeries series, HistoryChartScale scale, HistoryWords words)
    {
        foreach (
            var (from, to, own) in Stretches(
                series,
                scale,
                p => p.Own is { } o ? (HistoryWords.In(o.Low, scale.Unit), HistoryWords.In(o.High, scale.Unit)) : ((double, double)?)null
            )
        )
        {
            var (top, bottom) = (scale.Y(own.Item2), scale.Y(own.Item1));
            marks.Add(new SceneBox("passband", from, top, to - from, Math.Max(1, bottom - top)));
        }
    }

    private static void AddLimits(List<SceneMark> marks, ReadingSeries series, HistoryChartScale scale, HistoryWords words)
    {
        var labelled = (Least: false, Most: false);
        foreach (var least in (bool[])[true, false])
        {
            var stretches = Stretches(
                    series,
                    scale,
                    p => (least ? p.LeastLimit : p.MostLimit) is { } l ? HistoryWords.In(l.Figure, scale.Unit) : (double?)null
                )
                .ToList();
            foreach (var (from, to, value) in stretches.Where(s => s.Value >= scale.Low && s.Value <= scale.High))
            {
                var y = scale.Y(value);
                var (top, height) = least ? (y, scale.Bottom - y) : (scale.Top, y - scale.Top);
                if (height > 3)
                {
                    marks.Add(new SceneHatch("suspect", from, top, to - from, height, 8));
                }

                marks.Add(new SceneLine("lim", [new(from, y), new(to, y)]));
                if (least ? !labelled.Least : !labelled.Most)
                {
                    labelled = least ? (true, labelled.Most) : (labelled.Least, true);
                    var last = stretches[^1];
                    var text = words.Words.Say(
                        least ? "sheet.at-least" : "sheet.at-most",
                        ("limit", words.Words.Number(last.Value, scale.Unit.Digits))
                    );
                    marks.Add(new SceneText("liml", scale.PlotRight - 2, scale.Y(last.Value) + (least ? -5 : 14), text, TextAnchor.End));
                }
            }
        }
    }

    // The cone from the slow to the fast end of the slope, drawn on to the edge of the chart or to the limit.
    private static void AddForecast(List<SceneMark> marks, ReadingSeries series, HistoryChartScale scale, HistoryWords words)
    {
        if (
            series.Forecast is not { Kind: not ForecastKind.There } forecast
            || series.Trend is not { Drifts: true, Slowest: { } slow, Fastest: { } fast }
        )
        {
            return;
        }

        var last = series.Points[series.Segments[^1].Points[^1]];
        var (start, end) = (scale.Day(last.At), scale.ToDay);
        var level = last.Value.Value;
        var limit = forecast.Figure.Value;
        ScenePoint Reach(double slope)
        {
            var days = slope == 0 ? end - start : Math.Min(end - start, Math.Max(0, (limit - level) / slope));
            return new ScenePoint(
                scale.XOf(start + days),
                scale.Y(HistoryWords.In(new Amount(level + (slope * days), series.Unit), scale.Unit))
            );
        }

        var (near, far) = (Reach(fast), Reach(slow));
        var from = At(last, scale, words);
        marks.Add(new SceneLine("doseA", [from, near, far], Closed: true));
        marks.Add(new SceneLine("model", [from, near]));
        marks.Add(new SceneLine("model", [from, far]));
    }

    private static void AddBreaks(
        List<SceneMark> marks,
        ReadingSeries series,
        HistoryChartScale scale,
        HistoryWords words,
        HistoryChartSize size
    )
    {
        var groups = series
            .Breaks.GroupBy(b => b.Visit)
            .Select(g => (X: scale.X(g.Min(b => b.At)), What: string.Join("; ", g.Select(words.Break))))
            .ToList();
        for (var i = 0; i < groups.Count; i++)
        {
            var (x, what) = groups[i];
            marks.Add(new SceneLine("hole", [new(x, scale.Top - 6), new(x, scale.Bottom)]));
            marks.Add(new SceneLine("brk", [new(x - 4, scale.Top - 6), new(x + 4, scale.Top - 6)]));
            // Its words stand above it where there is room to the next; all of them stand in the list below the chart.
            var right = i + 1 < groups.Count ? groups[i + 1].X - 6 : size.Width - 2;
            var number = words.Words.Number(i + 1, 0);
            var wide = right - x + 4;
            var text = groups.Count > 1 ? $"{number}  {what}" : what;
            var fits = Cut(text, wide) ?? (groups.Count > 1 && TextWidth.Of(number, 12) <= wide ? number : null);
            if (
                groups.Count == 1
                && (fits is null || fits != what)
                && Cut(what, x + 4 - scale.PlotLeft + 40) is { } before
                && before.Length > (fits?.Length ?? 0)
            )
            {
                marks.Add(new SceneText("note", x + 4, scale.Top - 10, before, TextAnchor.End));
            }
            else if (fits is not null)
            {
                marks.Add(new SceneText("note", x - 4, scale.Top - 10, fits));
            }
        }
    }

    private static string? Cut(string text, double width)
    {
        const double Size = 12;
        if (TextWidth.Of(text, Size) <= width)
        {
            return text;
        }

        for (var n = text.Length - 1; n >= 6; n--)
        {
            if (TextWidth.Of(text[..n] + "…", Size) <= width)
            {
                return text[..n].TrimEnd() + "…";
            }
        }

        return null;
    }

    private static void AddRuns(List<SceneMark> marks, ReadingSeries series, HistoryChartScale scale, HistoryWords words)
    {
        foreach (var segment in series.Segments.Where(s => s.Points.Count > 1))
        {
            marks.Add(new SceneLine("trace", [.. segment.Points.Select(i => At(series.Points[i], scale, words))]));
        }
    }

    private static void AddPoints(List<SceneMark> marks, ReadingSeries series, HistoryChartScale scale, HistoryWords words)
    {
        foreach (var p in series.Points)
        {
            var at = At(p, scale, words);
            if (p.Off is { } off)
            {
                var (value, half) = (HistoryWords.In(p.Value, scale.Unit), HistoryWords.Span(off, series.Unit, scale.Unit));
                marks.Add(new SceneLine("tick", [new(at.X, scale.Y(value - half)), new(at.X, scale.Y(value + half))]));
            }

            var hollow = p.BeforeChange || p.ByGauge || p.ByCrew;
            var plain = p.Status is ReadingStatus.NoLimit or ReadingStatus.NotRead;
            // No rule and no band speaks of it: a dot that judges nothing.
            SceneMark mark = plain
                ? new SceneCurve(hollow ? "sh hollow" : "dot", Outline.Disc(at.X, at.Y, hollow ? 3 : 3.6))
                : new SceneStatus(ChartWords.ShapeOf(Wire.Name(p.Status)), at.X, at.Y, hollow ? HollowRadius : Radius, Hollow: hollow);
            marks.Add(new SceneGroup("hp", words.Point(p), [mark]));
        }
    }

    private static IEnumerable<(double From, double To, T Value)> Stretches<T>(
        ReadingSeries series,
        HistoryChartScale scale,
        Func<HistoryPoint, T?> of
    )
        where T : struct
    {
        var points = series.Points.OrderBy(p => p.At).ToList();
        (double From, double To, T Value)? open = null;
        for (var i = 0; i < points.Count; i++)
        {
            var from = i == 0 ? scale.PlotLeft : (scale.X(points[i - 1].At) + scale.X(points[i].At)) / 2;
            var to = i == points.Count - 1 ? scale.PlotRight : (scale.X(points[i].At) + scale.X(points[i + 1].At)) / 2;
            var value = of(points[i]);
            if (open is { } o && value is { } v && EqualityComparer<T>.Default.Equals(o.Value, v))
            {
                open = (o.From, to, v);
                continue;
            }

            if (open is { } done)
            {
                yield return done;
            }

            open = value is { } begun ? (from, to, begun) : null;
        }

        if (open is { } end)
        {
            yield return end;
        }
    }
}
