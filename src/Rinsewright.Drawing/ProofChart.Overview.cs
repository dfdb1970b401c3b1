using System.Globalization;
using Rinsewright.Contracts.Language;
using Rinsewright.Contracts.Records;
using Rinsewright.Contracts.Sanitization;
using Rinsewright.Engine.Quantities;

namespace Rinsewright.Drawing;

public static partial class ProofChart
{
    private const double PassRow = 20;

    /// <summary>The whole trace of a channel with its passes numbered, its holes left open and its suspect stretches hatched.</summary>
    /// <param name="report">The proof.</param>
    /// <param name="channel">The channel.</param>
    /// <param name="size">Width and temperature height are used.</param>
    /// <param name="words">Words of the reader's language.</param>
    /// <param name="units">Units to show.</param>
    /// <param name="window">Stretch of the trace, s; null: all of it.</param>
    /// <param name="selected">Number of the pass shown elsewhere; null for none.</param>
    public static Scene Overview(
        ProofReport report,
        ChannelDto channel,
        ChartSize size,
        Words words,
        UnitDisplay units,
        ChartWindow? window = null,
        int? selected = null
    )
    {
        var read = Units.Find(channel.Unit) ?? Units.Celsius;
        var shown = Shown.UnitFor(read, units);
        var values = Array.ConvertAll(channel.Values, v => new Amount(v, read).In(shown).Value);
        var passes = report.Passes.Where(p => p.Channel == channel.Name).ToArray();
        var limit = passes.SelectMany(p => p.Checks).FirstOrDefault(c => c.Id == "peak")?.Limit;
        var limitValue = limit is null ? (double?)null : Shown.LimitFor(limit, read.Ucum, units).Value;
        var plot = OverviewPlot(channel, values, limitValue, size, shown, window);

        var marks = new List<SceneMark>();
        AddPassBands(marks, plot, passes, words, selected);
        var step = Ticks.Step(plot.High - plot.Low, 7);
        AddValueAxis(marks, plot, step, words, limitValue);
        marks.Add(new SceneText("axt", 2, plot.Top - 6, shown.Symbol));
        AddMarks(marks, plot, channel, words);

        var key = plot.Bottom + 34;
        var axis = AddOverviewTime(marks, plot, channel, size, words);
        if (limit is not null && limitValue is { } lv)
        {
            // Between crowded passes no label has room on the line: it stands below, with a piece of the line.
            var label = ChartWords.Limit(limit, new AmountDto(lv, shown.Ucum), words);
            key += plot.Left + 30 + TextWidth.Of(label, 12, 600) + 12 > axis ? 17 : 0;
            marks.Add(new SceneLine("lim", [new(plot.Left, plot.Y(lv)), new(plot.Right, plot.Y(lv))]));
            marks.Add(new SceneLine("lim", [new(plot.Left, key - 4), new(plot.Left + 25, key - 4)]));
            marks.Add(new SceneText("liml", plot.Left + 31, key, label));
        }

        marks.AddRange(OverviewLines(plot, channel, values).Select(l => new SceneLine("trace", l)));
        return new Scene(
            size.Width,
            key + 8,
            words.Say("chart.overview-title", ("channel", channel.Name)),
            DescribeOverview(channel, passes, words, units),
            marks,
            [plot]
        );
    }

    private static ScenePlot OverviewPlot(
        ChannelDto channel,
        double[] values,
        double? limit,
        ChartSize size,
        Unit shown,
        ChartWindow? window
    )
    {
        var all = limit is { } l ? values.Append(l).ToArray() : values;
        var (low, high) = all.Length > 0 ? (all.Min(), all.Max()) : (0, 1);
        var step = Ticks.Step(Math.Max(high - low, 4), 5);
        var to = Math.Max(1, channel.Seconds.Length > 0 ? channel.Seconds[^1] : 1);
        var span = window is { } w && w.ToSeconds > w.FromSeconds ? w : new ChartWindow(0, to);
        var top = PlotTop + PassRow;
        return new ScenePlot(
            "overview",
            PadLeft,
            top,
            size.Width - PadRight,
            top + size.TemperatureHeight,
            span.FromSeconds,
            span.ToSeconds,
            low - (step * 0.3),
            high + (step * 0.3),
            shown.Ucum
        );
    }

    private static void AddPassBands(List<SceneMark> marks, ScenePlot plot, PassDto[] passes, Words words, int? selected)
    {
        var seen = passes.Where(p => p.EndSeconds > plot.FromSeconds && p.StartSeconds < plot.ToSeconds).ToArray();
        var closest = seen.Skip(1)
            .Select((p, i) => plot.X(p.StartSeconds) - plot.X(seen[i].StartSeconds))
            .DefaultIfEmpty(double.MaxValue)
            .Min();
        var width = TextWidth.Of(words.Number(passes.Length, 0), 12, 700) + 16;
        foreach (var pass in seen)
        {
            var left = plot.X(Math.Max(pass.StartSeconds, plot.FromSeconds));
            var right = Math.Max(left + 2, plot.X(Math.Min(pass.EndSeconds, plot.ToSeconds)));
            var middle = (left + right) / 2;
            List<SceneMark> inside = [new SceneBox("passband", left, plot.Top - 4, right - left, plot.Bottom - plot.Top + 4)];
            if (pass.Number == selected)
            {
                inside.Add(new SceneLine("now", [new(left, plot.Bottom + 1.5), new(right, plot.Bottom + 1.5)]));
            }

            // Shape and number side by side where all have room; else shapes alone; in a crowd only what is not proven.
            var number = words.Number(pass.Number, 0);
            var shape = ChartWords.ShapeOfOutcome(pass.Verdict);
            if (closest > width + 3)
            {
                inside.Add(new SceneStatus(shape, middle - (width / 2) + 5, plot.Top - 14, 4.5));
                inside.Add(new SceneText("val", middle - (width / 2) + 14, plot.Top - 10, number));
            }
            else if (closest > 12 || shape != StatusShape.Circle)
            {
                inside.Add(new SceneStatus(shape, middle, plot.Top - 14, 4.5));
            }

            var title = words.Say("chart.pass-hint", ("number", number), ("verdict", words["chart.outcome." + pass.Verdict]));
            marks.Add(new SceneGroup("pass", title, inside));
        }
    }

    private static void AddMarks(List<SceneMark> marks, ScenePlot plot, ChannelDto channel, Words words)
    {
        foreach (
            var mark in channel.Marks.Where(m =>
                m.Kind is not ("duplicate" or "intervalChange") && m.ToSeconds >= plot.FromSeconds && m.FromSeconds <= plot.ToSeconds
            )
        )
        {
            var left = plot.X(Math.Max(mark.FromSeconds, plot.FromSeconds));
            var right = Math.Max(left + 2, plot.X(Math.Min(mark.ToSeconds, plot.ToSeconds)));
            SceneMark[] inside = IsHole(mark)
                ?
                [
                    new SceneLine("hole", [new(left, plot.Top), new(left, plot.Bottom)]),
                    new SceneLine("hole", [new(right, plot.Top), new(right, plot.Bottom)]),
                ]
                : [new SceneHatch("suspect", left, plot.Top, right - left, plot.Bottom - plot.Top)];
            marks.Add(new SceneGroup("marked", ChartWords.Mark(mark, words), inside));
        }
    }

    private static List<IReadOnlyList<ScenePoint>> OverviewLines(ScenePlot plot, ChannelDto channel, double[] values)
    {
        var holes = channel.Marks.Where(IsHole).ToArray();
        var lines = new List<IReadOnlyList<ScenePoint>>();
        var line = new List<ScenePoint>();
        for (var i = 0; i < values.Length; i++)
        {
            var t = channel.Seconds[i];
            if (i > 0 && line.Count > 0 && holes.Any(h => h.FromSeconds >= channel.Seconds[i - 1] - 1e-6 && h.ToSeconds <= t + 1e-6))
            {
                lines.Add(line);
                line = [];
            }

            // One point beyond each edge would leave the plot: the trace is cut at samples, which lie close together.
            if (t >= plot.FromSeconds && t <= plot.ToSeconds)
            {
                line.Add(new ScenePoint(plot.X(t), plot.Y(Math.Clamp(values[i], plot.Low, plot.High))));
            }
        }

        if (line.Count > 0)
        {
            lines.Add(line);
        }

        return lines;
    }

    private static double AddOverviewTime(List<SceneMark> marks, ScenePlot plot, ChannelDto channel, ChartSize size, Words words)
    {
        var span = plot.ToSeconds - plot.FromSeconds;
        var withSeconds = span < 300;
        var step = Ticks.TimeStep(span, (int)((plot.Right - plot.Left) / 62));
        var origin = channel.Start is { } s ? s.TimeOfDay.TotalSeconds : 0;
        foreach (var t in Ticks.Within(plot.FromSeconds + origin, plot.ToSeconds + origin, step))
        {
            var x = plot.X(t - origin);
            var text =
                channel.Start is { } start
                    ? start.AddSeconds(t - origin).ToString(withSeconds ? "HH:mm:ss" : "HH:mm", CultureInfo.InvariantCulture)
                : withSeconds ? words.Number(t, 1)
                : words.Number(t / 60, 1);
            marks.Add(new SceneLine("tick", [new(x, plot.Bottom), new(x, plot.Bottom + 5)]));
            marks.Add(new SceneText("tx", x, plot.Bottom + 18, text, TextAnchor.Middle));
        }

        var says = channel.Start is { } day
            ? words.Say("chart.clock-axis", ("date", words.Day(DateOnly.FromDateTime(day.AddSeconds(plot.FromSeconds)))))
            : words[withSeconds ? "chart.seconds-axis" : "chart.minutes-axis"];
        marks.Add(new SceneText("tx", size.Width - PadRight, plot.Bottom + 34, says, TextAnchor.End));
        return size.Width - PadRight - TextWidth.Of(says, 12);
    }

    private static string DescribeOverview(ChannelDto channel, PassDto[] passes, Words words, UnitDisplay units)
    {
        List<string> says =
        [
            words.Say("chart.says-samples", ("samples", words.Number(channel.Samples, 0)), ("passes", words.Number(passes.Length, 0))),
        ];
        foreach (var p in passes)
        {
            says.Add(
                words.Say(
                    "chart.says-pass",
                    ("number", words.Number(p.Number, 0)),
                    ("peak", words.Show(ChartWords.Rounded(Shown.In(p.Peak, units)))),
                    ("dose", words.Show(new AmountDto(Math.Round(p.HeatUnits.Value), "{HUE}"))),
                    ("verdict", words["chart.outcome." + p.Verdict])
                )
            );
        }

        says.AddRange(channel.Marks.Take(20).Select(m => ChartWords.Mark(m, words)));
        return string.Join(' ', says);
    }

    private static bool IsHole(MarkDto mark) => mark.Kind is "gap" or "fault" or "clockBack";
}
