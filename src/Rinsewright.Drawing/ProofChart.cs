using Rinsewright.Contracts.Language;
using Rinsewright.Contracts.Records;
using Rinsewright.Contracts.Sanitization;
using Rinsewright.Engine.Quantities;

namespace Rinsewright.Drawing;

/// <summary>Draws proofs: one pass with its limits and its heat dose, or the whole trace with its passes.</summary>
public static partial class ProofChart
{
    private const double PadLeft = 48;
    private const double PadRight = 26;
    private const double PlotTop = 22;
    private const double ShapeRadius = 5;

    // Zones often follow without a pause: a slit keeps them apart.
    private const double ZoneGap = 1.25;

    /// <summary>
    /// One pass: the temperature of the ware over time with its limits and the zones seen, the heat dose gathered below it with its limit and,
    /// at the line's end, its value and bounds.
    /// </summary>
    /// <param name="report">The proof the pass belongs to.</param>
    /// <param name="pass">The pass.</param>
    /// <param name="size">Size of the drawing.</param>
    /// <param name="words">Words of the reader's language.</param>
    /// <param name="units">Units to show.</param>
    /// <param name="window">Stretch of the pass, s from its start; null: all of it.</param>
    public static Scene Draw(ProofReport report, PassDto pass, ChartSize size, Words words, UnitDisplay units, ChartWindow? window = null)
    {
        var layout = PassLayout.For(report, pass, size, units, window);
        var marks = new List<SceneMark>();
        AddZones(marks, layout, words);
        AddTemperature(marks, layout, words);
        AddDose(marks, layout, words);
        AddTime(marks, layout, words);
        return new Scene(
            size.Width,
            layout.Height,
            words.Say("chart.pass-title", ("number", words.Number(pass.Number, 0)), ("channel", pass.Channel)),
            ChartWords.Describe(report, pass, words, units),
            marks,
            [layout.Temperature, layout.Dose]
        );
    }

    private static void AddZones(List<SceneMark> marks, PassLayout layout, Words words)
    {
        var plot = layout.Temperature;
        var rows = new double[2];
        List<SceneMark> bands = [],
            names = [];
        var y = plot.Bottom + 16;
        for (var i = 0; i < layout.Zones.Count; i++)
        {
            var zone = layout.Zones[i];
            var (left, right) = (plot.X(Math.Max(zone.From, plot.FromSeconds)), plot.X(Math.Min(zone.To, plot.ToSeconds)));
            if (right - left < 1)
            {
                continue;
            }

            bands.Add(
                new SceneBox(
                    "zoneband",
                    left + ZoneGap,
                    plot.Top - 6,
                    Math.Max(1, right - left - (2 * ZoneGap)),
                    layout.Dose.Bottom - plot.Top + 6
                )
            );
            var name = ChartWords.Zone(zone.Name, i + 1, words);
            var half = TextWidth.Of(name, 12, 600) / 2;
            var x = Math.Clamp((left + right) / 2, plot.Left + half, Math.Max(plot.Left + half, layout.Width - 2 - half));
            var row = Array.FindIndex(rows, end => x - half > end + 4);
            if (row >= 0)
            {
                rows[row] = x + half;
                names.Add(new SceneText("zn", x, y + (row * 14), name, TextAnchor.Middle));
            }
        }

        marks.AddRange(bands);
        marks.AddRange(names);
    }

    private static void AddTemperature(List<SceneMark> marks, PassLayout layout, Words words)
    {
        var plot = layout.Temperature;
        AddValueAxis(marks, plot, layout.TemperatureStep, words, null);
        marks.Add(new SceneText("axt", 2, plot.Top - 8, Units.Find(plot.Unit)?.Symbol ?? plot.Unit));

        var labels = new LabelPlacer(plot.Left, 2, layout.Width, plot.Bottom);
        var curve = layout.Lines(plot, layout.Values);
        foreach (var line in curve)
        {
            labels.Avoid(line);
        }

        var peak = layout.Peak;
        var peakX = plot.X(peak.Seconds);
        var peakY = plot.Y(peak.Value);
        var peakSeen = peak.Seconds >= plot.FromSeconds && peak.Seconds <= plot.ToSeconds;
        if (peakSeen)
        {
            labels.Take(peakX - 7, peakY - 7, peakX + 7, peakY + 7);
        }

        foreach (var y in layout.Limits.Select(l => plot.Y(l.Value)))
        {
            SceneLine drawn = new("lim", [new(plot.Left, y), new(plot.Right, y)]);
            marks.Add(drawn);
            labels.Avoid(drawn.Points);
        }

        AddHoles(marks, layout, words);
        marks.AddRange(curve.Select(line => new SceneLine("read", line)));
        // The label with the fewest places chooses first; a limit's may stand anywhere along its line.
        AddFinalRinse(marks, labels, layout, words);
        if (peakSeen)
        {
            AddPeak(marks, labels, layout, words, peakX, peakY);
        }

        foreach (var limit in layout.Limits)
        {
            var says = ChartWords.Limit(limit.Limit, new AmountDto(limit.Value, plot.Unit), words);
            AddIfPlaced(marks, labels.Put("liml", says, Along(plot, plot.Y(limit.Value)), must: true, Farther(plot, plot.Y(limit.Value))));
        }
    }

    private static void AddPeak(List<SceneMark> marks, LabelPlacer labels, PassLayout layout, Words words, double x, double y)
    {
        var plot = layout.Temperature;
        var check = layout.Pass.Checks.FirstOrDefault(c => c.Id == "peak");
        var text = words.Say("chart.peak", ("value", words.Show(new AmountDto(Math.Round(layout.Peak.Value, 1), plot.Unit))));
        var below = Enumerable.Range(0, 5).Select(n => y + 34 + (n * 14)).ToArray();
        (double, double, TextAnchor)[] places =
        [
            (x, y - 11, TextAnchor.Middle),
            (x + 10, y - 9, TextAnchor.Start),
            (x - 10, y - 9, TextAnchor.End),
            .. below.Select(b => (x, b, TextAnchor.Middle)),
            .. below.Select(b => (x - 6, b, TextAnchor.End)),
            .. below.Select(b => (plot.Right, b, TextAnchor.End)),
        ];
        var label = labels.Put("val", text, places, must: true);
        if (label is not null && label.Y > y + 20)
        {
            SceneLine leader = new("tick", [new(x, y + 7), new(x, label.Y - 11)]);
            marks.Add(leader);
            labels.Avoid(leader.Points);
        }

        marks.Add(new SceneStatus(ChartWords.ShapeOf(check?.Status), x, y, ShapeRadius));
        AddIfPlaced(marks, label);
    }

    // The fresh rinse is water, not ware: its limit is a bar over the final zone only, its reading a shape without a line.
    private static void AddFinalRinse(List<SceneMark> marks, LabelPlacer labels, PassLayout layout, Words words)
    {
        var plot = layout.Temperature;
        if (layout.FinalRinse is not { } rinse || rinse.To <= plot.FromSeconds || rinse.From >= plot.ToSeconds)
        {
            return;
        }

        var (left, right) = (plot.X(Math.Max(rinse.From, plot.FromSeconds)), plot.X(Math.Min(rinse.To, plot.ToSeconds)));
        var limitY = plot.Y(rinse.Limit);
        SceneLine bar = new("limb", [new(left - 3, limitY), new(right + 3, limitY)]);
        marks.Add(bar);
        labels.Take(left - 3, limitY - 2, right + 3, limitY + 2);
        var limitText = ChartWords.Limit(rinse.Check.Limit!, new AmountDto(rinse.Limit, plot.Unit), words);
        AddIfPlaced(
            marks,
            labels.Put(
                "liml",
                limitText,
                [
                    (left - 8, limitY + 4, TextAnchor.End),
                    (right + 8, limitY + 4, TextAnchor.Start),
                    (left - 8, limitY - 6, TextAnchor.End),
                    (right + 3, limitY - 6, TextAnchor.End),
                ],
                must: true
            )
        );
        var valueY = plot.Y(rinse.Value);
        var middle = (left + right) / 2;
        marks.Add(new SceneStatus(ChartWords.ShapeOf(rinse.Check.Status), middle, valueY, ShapeRadius + 0.5));
        labels.Take(middle - 7, valueY - 7, middle + 7, valueY + 7);
        AddIfPlaced(
            marks,
            labels.Put(
                "val",
                words.Number(Math.Round(rinse.Value, 1), 1),
                [
                    (right + 8, valueY + 4, TextAnchor.Start),
                    (middle + 10, valueY + 4, TextAnchor.Start),
                    (middle - 10, valueY + 4, TextAnchor.End),
                    (right + 8, valueY - 6, TextAnchor.Start),
                    (right + 8, valueY + 14, TextAnchor.Start),
                    (middle - 10, valueY + 16, TextAnchor.End),
                    (middle + 10, valueY + 18, TextAnchor.Start),
                    (middle, valueY + 22, TextAnchor.Middle),
                    (middle, valueY - 12, TextAnchor.Middle),
                    (middle, valueY + 36, TextAnchor.Middle),
                ]
            )
        );
    }

    private static void AddHoles(List<SceneMark> marks, PassLayout layout, Words words)
    {
        var plot = layout.Temperature;
        foreach (var mark in layout.Marks.Where(m => m.To > plot.FromSeconds && m.From < plot.ToSeconds))
        {
            var left = plot.X(Math.Max(mark.From, plot.FromSeconds));
            var width = Math.Max(2, plot.X(Math.Min(mark.To, plot.ToSeconds)) - left);
            marks.Add(
                new SceneGroup(
                    "marked",
                    ChartWords.Mark(mark.Mark, words),
                    [new SceneHatch("suspect", left, plot.Top, width, plot.Bottom - plot.Top)]
                )
            );
        }
    }

    // Where the line is crowded: a row away from it.
    private static IEnumerable<(double X, double Y, TextAnchor Anchor)> Farther(ScenePlot plot, double y)
    {
        for (var x = plot.Left + 4; x < plot.Right; x += 20)
        {
            yield return (x, y - 19, TextAnchor.Start);
            yield return (x, y + 29, TextAnchor.Start);
        }
    }

    private static IEnumerable<(double X, double Y, TextAnchor Anchor)> Along(ScenePlot plot, double y)
    {
        yield return (plot.Left + 4, y - 5, TextAnchor.Start);
        yield return (plot.Left + 4, y + 15, TextAnchor.Start);
        yield return (plot.Right - 4, y - 5, TextAnchor.End);
        yield return (plot.Right - 4, y + 15, TextAnchor.End);
        for (var x = plot.Left + 24; x < plot.Right; x += 20)
        {
            yield return (x, y - 5, TextAnchor.Start);
            yield return (x, y + 15, TextAnchor.Start);
        }
    }

    private static void AddIfPlaced(List<SceneMark> marks, SceneText? label)
    {
        if (label is not null)
        {
            marks.Add(label);
        }
    }
}
