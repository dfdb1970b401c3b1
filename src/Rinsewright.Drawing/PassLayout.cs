using System.Runtime.InteropServices;
using Rinsewright.Contracts.Records;
using Rinsewright.Contracts.Sanitization;
using Rinsewright.Engine.Quantities;

namespace Rinsewright.Drawing;

/// <summary>What a pass chart shows and where: values in the shown unit, times from the start of the pass, two plots.</summary>
internal sealed record PassLayout(
    PassDto Pass,
    double Width,
    double Height,
    ScenePlot Temperature,
    double TemperatureStep,
    ScenePlot Dose,
    double DoseStep,
    double[] Seconds,
    double[] Values,
    double[] HeatUnits,
    PassLayout.PeakPoint Peak,
    IReadOnlyList<PassLayout.LimitLine> Limits,
    double? DoseLimit,
    IReadOnlyList<PassLayout.ZoneSpan> Zones,
    PassLayout.FinalRinseBar? FinalRinse,
    IReadOnlyList<PassLayout.MarkSpan> Marks
)
{
    [StructLayout(LayoutKind.Auto)]
    internal readonly record struct PeakPoint(double Seconds, double Value);

    [StructLayout(LayoutKind.Auto)]
    internal readonly record struct LimitLine(LimitDto Limit, double Value);

    [StructLayout(LayoutKind.Auto)]
    internal readonly record struct ZoneSpan(string? Name, double From, double To);

    [StructLayout(LayoutKind.Auto)]
    internal readonly record struct MarkSpan(MarkDto Mark, double From, double To);

    internal sealed record FinalRinseBar(CheckDto Check, double From, double To, double Limit, double Value);

    public static PassLayout For(ProofReport report, PassDto pass, ChartSize size, UnitDisplay units, ChartWindow? window)
    {
        var read = Units.Find(pass.Peak.Unit) ?? Units.Fahrenheit;
        var shown = Shown.UnitFor(read, units);
        double Convert(double v) => new Amount(v, read).In(shown).Value;

        var seconds = pass.Curve.Seconds;
        var values = Array.ConvertAll(pass.Curve.Values, Convert);
        var duration = Math.Max(1, Math.Max(pass.EndSeconds - pass.StartSeconds, seconds.Length > 0 ? seconds[^1] : 0));
        var span = window is { } w && w.ToSeconds > w.FromSeconds ? w : new ChartWindow(0, duration);

        var zones = pass
            .Zones.Select(z => new ZoneSpan(z.Name, z.StartSeconds - pass.StartSeconds, z.PeakSeconds - pass.StartSeconds))
            .ToArray();
        var limits = pass
            .Checks.Where(c => c.Limit is { } l && IsTemperature(l))
            .Select(c => new LimitLine(c.Limit!, Shown.LimitFor(c.Limit!, read.Ucum, units).Value))
            .ToArray();
        var rinse = FinalRinseOf(report, zones, units, shown);
        var marks = report
            .Channels.Where(c => c.Name == pass.Channel)
            .SelectMany(c => c.Marks)
            .Where(m =>
                m.Kind is not ("duplicate" or "intervalChange") && m.ToSeconds > pass.StartSeconds && m.FromSeconds < pass.EndSeconds
            )
            .Select(m => new MarkSpan(m, m.FromSeconds - pass.StartSeconds, m.ToSeconds - pass.StartSeconds))
            .ToArray();

        var peak = new PeakPoint(pass.PeakSeconds - pass.StartSeconds, Convert(pass.Peak.Value));
        var inSight = values.Where((_, i) => seconds[i] >= span.FromSeconds && seconds[i] <= span.ToSeconds);
        var all = inSight.Concat(limits.Select(l => l.Value)).Concat(rinse is null ? [] : [rinse.Limit, rinse.Value]).ToArray();
        var (low, high) = all.Length > 0 ? (all.Min(), all.Max()) : (0, 1);
        var step = Ticks.Step(Math.Max(high - low, 4), 6);
        low -= step * 0.3;
        high += step * 0.5;

        var temperatureBottom = PlotTop + size.TemperatureHeight;
        var doseTop = temperatureBottom + ZoneRows(zones, size, span) + 26;
        var temperature = new ScenePlot(
            "temperature",
            PadLeft,
            PlotTop,
            size.Width - PadRight,
            temperatureBottom,
            span.FromSeconds,
            span.ToSeconds,
            low,
            high,
            shown.Ucum
        );

        var doseLimit = pass.Checks.FirstOrDefault(c => c.Limit?.Printed[0].Unit == "{HUE}")?.Limit?.Printed[0].Value;
        var most = Math.Max(pass.HeatUnits.Value, doseLimit ?? 0);
        // A wide bound may lie far above: it is cut off and drawn open rather than flattening the curve.
        var top = Math.Max(Math.Max(most * 1.2, Math.Min(pass.HeatUnits.High, most * 1.8)), 1);
        var doseStep = Ticks.Step(top, 5);
        var dose = temperature with { Id = "dose", Top = doseTop, Bottom = doseTop + size.DoseHeight, Low = 0, High = top, Unit = "{HUE}" };
        return new PassLayout(
            pass,
            size.Width,
            dose.Bottom + 42,
            temperature,
            step,
            dose,
            doseStep,
            seconds,
            values,
            pass.Curve.HeatUnits,
            peak,
            limits,
            doseLimit,
            zones,
            rinse,
            marks
        );
    }

    private const double PadLeft = 48;
    private const double PadRight = 26;
    private const double PlotTop = 22;

    /// <summary>The curve as lines in px, parted at holes, cut to the plot's stretch of time.</summary>
    public IReadOnlyList<IReadOnlyList<ScenePoint>> Lines(ScenePlot plot, double[] values)
    {
        var lines = new List<IReadOnlyList<ScenePoint>>();
        var line = new List<ScenePoint>();
        for (var i = 0; i < Seconds.Length; i++)
        {
            if (i > 0 && HoleBetween(Seconds[i - 1], Seconds[i]))
            {
                Close();
            }

            if (i > 0 && line.Count == 0 && Enters(i, plot.FromSeconds) && !HoleBetween(Seconds[i - 1], Seconds[i]))
            {
                line.Add(At(plot, plot.FromSeconds, Between(values, i, plot.FromSeconds)));
            }

            if (Seconds[i] >= plot.FromSeconds && Seconds[i] <= plot.ToSeconds)
            {
                line.Add(At(plot, Seconds[i], values[i]));
            }
            else if (Seconds[i] > plot.ToSeconds)
            {
                if (i > 0 && Seconds[i - 1] < plot.ToSeconds && line.Count > 0)
                {
                    line.Add(At(plot, plot.ToSeconds, Between(values, i, plot.ToSeconds)));
                }

                break;
            }
        }

        Close();
        return lines;

        void Close()
        {
            if (line.Count > 0)
            {
                lines.Add(line);
                line = [];
            }
        }
    }

    private static ScenePoint At(ScenePlot plot, double seconds, double value) =>
        new(plot.X(seconds), plot.Y(Math.Clamp(value, plot.Low, plot.High)));

    private bool Enters(int i, double from) => Seconds[i - 1] < from && Seconds[i] > from;

    private double Between(double[] values, int i, double seconds) =>
        values[i - 1] + ((values[i] - values[i - 1]) * (seconds - Seconds[i - 1]) / (Seconds[i] - Seconds[i - 1]));

    private bool HoleBetween(double from, double to) =>
        Marks.Any(m => m.Mark.Kind is "gap" or "fault" or "clockBack" && m.From < to - 1e-6 && m.To > from + 1e-6 && m.From >= from - 1e-6);

    private static FinalRinseBar? FinalRinseOf(ProofReport report, ZoneSpan[] zones, UnitDisplay units, Unit shown)
    {
        var check = report.Checks.FirstOrDefault(c =>
            c.Value is not null && c.Limit is { Point: "finalRinseManifold" } l && IsTemperature(l)
        );
        if (check is null || zones.Length == 0 || zones[^1].Name?.EndsWith("final-rinse", StringComparison.Ordinal) != true)
        {
            return null;
        }

        var limit = Shown.LimitFor(check.Limit!, check.Value!.Unit, units);
        var value = Shown.In(check.Value, units);
        // Read in another system than the trace and shown as read: converted, so that one figure has one unit.
        return Units.Find(value.Unit) is { } u && Units.Find(limit.Unit) is { } lu
            ? new FinalRinseBar(
                check,
                zones[^1].From,
                zones[^1].To,
                new Amount(limit.Value, lu).In(shown).Value,
                new Amount(value.Value, u).In(shown).Value
            )
            : null;
    }

    private static bool IsTemperature(LimitDto limit) => Units.Find(limit.Printed[0].Unit)?.Dimension == Dimension.Temperature;

    private static double ZoneRows(ZoneSpan[] zones, ChartSize size, ChartWindow span)
    {
        var named = zones.Count(z => z.To > span.FromSeconds && z.From < span.ToSeconds);
        return named == 0 ? 4
            : named * 120 > size.Width ? 36
            : 22;
    }
}
