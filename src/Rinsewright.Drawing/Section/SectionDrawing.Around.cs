using Rinsewright.Contracts.Records;
using Rinsewright.Engine.Quantities;

namespace Rinsewright.Drawing.Section;

public sealed partial class SectionDrawing
{
    private const double Inch = 25.4;

    private IEnumerable<SceneMark> Flows()
    {
        foreach (var flow in Plan.Flows)
        {
            var shown = options.Figures.ContainsKey(flow.Id);
            if (!shown && (!flow.Always || Frame.Small))
            {
                continue;
            }

            var path = Frame.At(flow.Path);
            yield return new SceneCurve(shown ? "flow-on" : "flow", path + Tip(path, shown ? 8 : 6));
        }

        // Direction of travel, on the load table.
        if (Plan.Conveys && Frame.Scale >= 0.26)
        {
            var (from, to) = (Frame.X(Plan.Left + 50), Frame.X(Plan.Left + 50) + (Plan.Mirrored ? -92 : 92));
            var line = Outline.Wire((from, Frame.Y(-300)), (to, Frame.Y(-300)));
            yield return new SceneCurve("travel", line + Tip(line, 9));
            yield return new SceneText(
                "ftext",
                from,
                Frame.Y(-300) - 8,
                options.Words["section.travel"],
                Plan.Mirrored ? TextAnchor.End : TextAnchor.Start
            );
        }
    }

    // Head of an arrow at the end of a line.
    private static Outline Tip(Outline line, double size)
    {
        var p = line.Flat()[^1].Points;
        var (end, before) = (p[^1], p[^2]);
        var angle = Math.Atan2(end.Y - before.Y, end.X - before.X);
        (double, double) Side(double turn) => (end.X - (size * Math.Cos(angle + turn)), end.Y - (size * Math.Sin(angle + turn)));
        return Outline.Wire(Side(0.5), (end.X, end.Y), Side(-0.5));
    }

    private IEnumerable<SceneMark> TankFigures()
    {
        foreach (var tank in Plan.Tanks)
        {
            var t = TemperatureOf(tank.Id);
            var unit = options.Units == UnitDisplay.Si ? Units.Celsius : Units.Fahrenheit;
            var text = options.Words.Show(new Contracts.Records.AmountDto(Math.Round(t.In(unit).Value), unit.Ucum));
            yield return new SceneText(
                "wtemp",
                Frame.X(tank.From + ((tank.To - tank.From) * 0.8)),
                Frame.Y((tank.Surface + tank.Floor) / 2) + 4,
                text,
                TextAnchor.Middle
            );
        }
    }

    // Dimension lines, which are also the zones' names, and the scale.
    private IEnumerable<SceneMark> ZoneStrip()
    {
        if (!options.ZoneStrip)
        {
            yield break;
        }

        var y = Frame.MachineBottom + 16;
        foreach (var z in Plan.Conveys ? Plan.Zones : [])
        {
            yield return new SceneLayer("zone", [.. Zone(z, y)]);
        }

        var si = options.Units == UnitDisplay.Si;
        var x = options.Pad + 2;
        var length = (si ? 300 : 12 * Inch) * Frame.Scale;
        yield return new SceneCurve(
            "travel",
            Outline.Wire((x, y - 5), (x, y + 5))
                + Outline.Wire((x, y), (x + length, y))
                + Outline.Wire((x + length, y - 5), (x + length, y + 5))
        );
        yield return new SceneText("zlen", x + length + 6, y + 4, options.Words[si ? "section.scale-si" : "section.scale-us"]);
    }

    private IEnumerable<SceneMark> Zone(PlanZone z, double y)
    {
        var (a, b) = (Math.Min(Frame.X(z.From), Frame.X(z.To)), Math.Max(Frame.X(z.From), Frame.X(z.To)));
        var middle = (a + b) / 2;
        yield return new SceneCurve(
            "dim",
            Outline.Wire((a, y - 7), (a, y + 7))
                + Outline.Wire((b, y - 7), (b, y + 7))
                + Outline.Wire((a, y), (b, y))
                + Outline.Wire((a + 6, y - 3), (a, y), (a + 6, y + 3))
                + Outline.Wire((b - 6, y - 3), (b, y), (b - 6, y + 3))
        );
        var name = options.Words[(b - a < 96 ? "section.zone-short." : "section.zone.") + z.Id];
        StatusShape? status = options.ZoneStatus.TryGetValue(z.Id, out var shape) ? shape : null;
        var width = TextWidth.Of(name, 12, 650) + (status is null ? 0 : 18);
        var inside = width + 26 <= b - a;
        var row = inside ? y : y + 18;
        yield return new SceneBox("ko", middle - (width / 2) - 5, row - 9, width + 10, 18);
        if (status is { } s)
        {
            yield return new SceneStatus(s, middle - (width / 2) + 5, row, 5);
        }

        yield return new SceneText("zname", middle + (status is null ? 0 : 9), row + 4, name, TextAnchor.Middle);
        if (inside)
        {
            var mm = z.To - z.From;
            var text = options.Units == UnitDisplay.Si ? $"{Math.Round(mm / 10):0}\u00a0cm" : $"{Math.Round(mm / Inch):0}\u00a0in";
            yield return new SceneText("zlen", middle, y + 20, text, TextAnchor.Middle);
        }
    }
}
