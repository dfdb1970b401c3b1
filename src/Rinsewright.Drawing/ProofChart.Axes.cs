using Rinsewright.Contracts.Language;
using Rinsewright.Contracts.Records;

namespace Rinsewright.Drawing;

public static partial class ProofChart
{
    private static void AddValueAxis(List<SceneMark> marks, ScenePlot plot, double step, Words words, double? bold)
    {
        foreach (var value in Ticks.Within(plot.Low, plot.High, step))
        {
            var y = plot.Y(value);
            marks.Add(new SceneLine("grid", [new(plot.Left, y), new(plot.Right, y)]));
            if (bold is not { } b || Math.Abs(plot.Y(b) - y) >= 13)
            {
                marks.Add(new SceneText("ax", plot.Left - 6, y + 4, words.Number(value, 2), TextAnchor.End));
            }
        }

        if (bold is { } limit)
        {
            marks.Add(new SceneText("axb", plot.Left - 6, plot.Y(limit) + 4, words.Number(limit, 1), TextAnchor.End));
        }
    }

    private static void AddDose(List<SceneMark> marks, PassLayout layout, Words words)
    {
        var plot = layout.Dose;
        AddValueAxis(marks, plot, layout.DoseStep, words, layout.DoseLimit);
        marks.Add(new SceneText("axt", 2, plot.Top - 8, "HUE"));
        var lines = layout.Lines(plot, layout.HeatUnits);
        foreach (var line in lines.Where(l => l.Count > 1))
        {
            marks.Add(new SceneLine("doseA", [.. line, new(line[^1].X, plot.Bottom), new(line[0].X, plot.Bottom)], Closed: true));
        }

        var labels = new LabelPlacer(plot.Left, plot.Top - 14, layout.Width, plot.Bottom);
        foreach (var line in lines)
        {
            labels.Avoid(line);
        }

        if (layout.DoseLimit is { } limit)
        {
            SceneLine drawn = new("lim", [new(plot.Left, plot.Y(limit)), new(plot.Right, plot.Y(limit))]);
            marks.Add(drawn);
            labels.Avoid(drawn.Points);
            AddIfPlaced(
                marks,
                labels.Put(
                    "liml",
                    words.Say("chart.limit-dose", ("limit", words.Show(new AmountDto(limit, "{HUE}")))),
                    Along(plot, plot.Y(limit)),
                    must: true
                )
            );
        }

        marks.AddRange(lines.Select(line => new SceneLine("read", line)));
        AddReached(marks, labels, layout, words);
        var last = layout.Seconds.Length - 1;
        if (last >= 0 && layout.Seconds[last] <= plot.ToSeconds)
        {
            AddDoseEnd(marks, labels, layout, words, plot.X(layout.Seconds[last]));
        }
    }

    // When the dose passed its limit: the moment the ware had what it needs.
    private static void AddReached(List<SceneMark> marks, LabelPlacer labels, PassLayout layout, Words words)
    {
        var plot = layout.Dose;
        var i = layout.DoseLimit is { } l ? Array.FindIndex(layout.HeatUnits, h => h >= l) : -1;
        if (i <= 0 || layout.Seconds[i] < plot.FromSeconds || layout.Seconds[i] > plot.ToSeconds)
        {
            return;
        }

        var (before, after) = (layout.HeatUnits[i - 1], layout.HeatUnits[i]);
        var at =
            layout.Seconds[i - 1] + ((layout.Seconds[i] - layout.Seconds[i - 1]) * (layout.DoseLimit!.Value - before) / (after - before));
        var (x, y) = (plot.X(at), plot.Y(layout.DoseLimit.Value));
        var label = labels.Put(
            "note",
            words.Say("chart.reached", ("at", ChartWords.Seconds(Math.Round(at), words))),
            [(x + 5, y + 17, TextAnchor.Start), (x + 5, y + 30, TextAnchor.Start)]
        );
        if (label is not null)
        {
            marks.Add(new SceneLine("tick", [new(x, y), new(x, plot.Bottom)]));
            marks.Add(label);
        }
    }

    // Value at the line's end; beside it a bracket from the lower to the upper bound, open at the top where the bound lies off the plot.
    private static void AddDoseEnd(List<SceneMark> marks, LabelPlacer labels, PassLayout layout, Words words, double x)
    {
        var plot = layout.Dose;
        var dose = layout.Pass.HeatUnits;
        var y = plot.Y(Math.Min(dose.Value, plot.High));
        var low = plot.Y(Math.Clamp(dose.Low, plot.Low, plot.High));
        var high = plot.Y(Math.Clamp(dose.High, plot.Low, plot.High));
        var b = x + 11;
        if (low - high >= 2)
        {
            var open = dose.High > plot.High;
            marks.Add(
                new SceneLine(
                    "brk",
                    open ? [new(b - 4, low), new(b, low), new(b, high)] : [new(b - 4, low), new(b, low), new(b, high), new(b - 4, high)]
                )
            );
            if (open)
            {
                marks.Add(new SceneLine("brk", [new(b - 3.5, high + 5), new(b, high), new(b + 3.5, high + 5)]));
            }
        }

        var check = layout.Pass.Checks.FirstOrDefault(c => c.Id == "heat-dose");
        marks.Add(new SceneStatus(ChartWords.ShapeOf(check?.Status), x, y, ShapeRadius));
        labels.Take(x - 7, y - 7, x + 7, y + 7);
        labels.Take(b - 5, high, b + 4, low);
        var value = words.Show(new AmountDto(Math.Round(dose.Value), "{HUE}"));
        var text = words.Say(
            "chart.dose-value",
            ("value", value),
            ("low", words.Number(Math.Round(dose.Low), 0)),
            ("high", words.Number(Math.Round(dose.High), 0))
        );
        var places = new List<(double, double, TextAnchor)>();
        for (var up = 0; up < 8; up++)
        {
            places.Add((x - 9, y - 8 - (up * 7), TextAnchor.End));
            places.Add((x - 9, y + 18 + (up * 7), TextAnchor.End));
        }

        AddIfPlaced(marks, labels.Put("val", text, places) ?? labels.Put("val", value, places, must: true));
    }

    private static void AddTime(List<SceneMark> marks, PassLayout layout, Words words)
    {
        var plot = layout.Dose;
        var span = plot.ToSeconds - plot.FromSeconds;
        var inMinutes = span > 300;
        var step = Ticks.TimeStep(span, (int)((plot.Right - plot.Left) / 44));
        foreach (var t in Ticks.Within(plot.FromSeconds, plot.ToSeconds, step))
        {
            var x = plot.X(t);
            marks.Add(new SceneLine("tick", [new(x, plot.Bottom), new(x, plot.Bottom + 5)]));
            marks.Add(
                new SceneText("tx", x, plot.Bottom + 18, inMinutes ? words.Number(t / 60, 2) : words.Number(t, 3), TextAnchor.Middle)
            );
        }

        var says = words[inMinutes ? "chart.minutes-from-start" : "chart.seconds-from-start"];
        marks.Add(new SceneText("tx", layout.Width - PadRight, plot.Bottom + 34, says, TextAnchor.End));
    }
}
