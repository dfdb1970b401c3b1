using System.Globalization;
using System.Text;

namespace Rinsewright.Drawing;

/// <summary>A scene as SVG text. Numbers are written without regard to the culture; nothing needs an id, so several drawings share a page.</summary>
public static class SvgWriter
{
    /// <summary>Writes a scene.</summary>
    /// <param name="scene">The drawing.</param>
    /// <param name="standalone">With its own colours, for a file; else with style names only, for a page that has <see cref="SceneStyles.Css"/>.</param>
    public static string Write(Scene scene, bool standalone = false)
    {
        var svg = new StringBuilder();
        var space = standalone ? " xmlns=\"http://www.w3.org/2000/svg\"" : "";
        svg.Append(
            CultureInfo.InvariantCulture,
            $"<svg{space} class=\"{scene.Kind}\" role=\"{(scene.Kind == "chart" ? "img" : "group")}\" width=\"{Number(scene.Width)}\" height=\"{Number(scene.Height)}\" viewBox=\"0 0 {Number(scene.Width)} {Number(scene.Height)}\">"
        );
        svg.Append(CultureInfo.InvariantCulture, $"<title>{Escape(scene.Title)}</title><desc>{Escape(scene.Description)}</desc>\n");
        if (standalone)
        {
            svg.Append(
                CultureInfo.InvariantCulture,
                $"<style>\n{SceneStyles.Tokens($"svg.{scene.Kind}", scene.Kind)}{SceneStyles.Css($".{scene.Kind}", SceneStyles.Of(scene.Kind))}</style>\n"
            );
        }

        return svg.Append(Write(scene.Marks)).Append("</svg>\n").ToString();
    }

    /// <summary>Marks alone, for a page that holds the rest.</summary>
    public static string Write(IReadOnlyList<SceneMark> marks)
    {
        var svg = new StringBuilder();
        foreach (var mark in marks)
        {
            Append(svg, mark);
        }

        return svg.ToString();
    }

    /// <summary>A number with at most two decimals (or one) and a point, whatever the culture.</summary>
    public static string Number(double value, int digits = 2)
    {
        var text = value.ToString(digits == 1 ? "0.#" : "0.##", CultureInfo.InvariantCulture);
        return text == "-0" ? "0" : text;
    }

    private static void Append(StringBuilder svg, SceneMark mark)
    {
        switch (mark)
        {
            case SceneLine line:
                svg.Append(CultureInfo.InvariantCulture, $"<path class=\"{line.Style}\" d=\"{Path(line)}\"/>\n");
                break;
            case SceneHatch hatch:
                svg.Append(
                    CultureInfo.InvariantCulture,
                    $"<path class=\"{hatch.Style}\" d=\"{string.Concat(hatch.Lines().Select(Path))}\"/>\n"
                );
                break;
            case SceneBox b:
                svg.Append(
                    CultureInfo.InvariantCulture,
                    $"<rect class=\"{b.Style}\" x=\"{Number(b.X)}\" y=\"{Number(b.Y)}\" width=\"{Number(b.Width)}\" height=\"{Number(b.Height)}\"/>\n"
                );
                break;
            case SceneText t:
                var anchor = t.Anchor switch
                {
                    TextAnchor.Middle => " text-anchor=\"middle\"",
                    TextAnchor.End => " text-anchor=\"end\"",
                    _ => "",
                };
                var letters = t.Size is { } size ? $" font-size=\"{Number(size)}\"" : "";
                var silent = t.Silent ? " aria-hidden=\"true\"" : "";
                svg.Append(
                    CultureInfo.InvariantCulture,
                    $"<text class=\"{t.Style}\" x=\"{Number(t.X)}\" y=\"{Number(t.Y)}\"{anchor}{letters}{silent}>{Escape(t.Text)}</text>\n"
                );
                break;
            case SceneCurve c:
                var fill = c.Tint is { } tint ? $" g{tint.Grade}\" fill=\"#{tint.Screen:x6}" : "";
                var wide = c.Width is { } width ? $" stroke-width=\"{Number(width)}\"" : "";
                svg.Append(CultureInfo.InvariantCulture, $"<path class=\"{c.Style}{fill}\"{wide} d=\"{c.Outline.Path()}\"/>\n");
                break;
            case ScenePart p:
                svg.Append(
                    CultureInfo.InvariantCulture,
                    $"<g class=\"{p.Style}\" data-id=\"{p.Id}\" role=\"button\" tabindex=\"-1\" aria-label=\"{Escape(p.Label)}\">\n"
                );
                svg.Append(Write(p.Marks)).Append("</g>\n");
                break;
            case SceneLayer l:
                svg.Append(CultureInfo.InvariantCulture, $"<g class=\"{l.Style}\">\n").Append(Write(l.Marks)).Append("</g>\n");
                break;
            case SceneStatus s:
                svg.Append(Shape(s)).Append('\n');
                break;
            case SceneGroup g:
                svg.Append(CultureInfo.InvariantCulture, $"<g class=\"{g.Style}\"><title>{Escape(g.Title)}</title>\n");
                foreach (var inner in g.Marks)
                {
                    Append(svg, inner);
                }

                svg.Append("</g>\n");
                break;
        }
    }

    private static string Path(SceneLine line) =>
        line.Points.Count == 0
            ? ""
            : "M" + string.Join('L', line.Points.Select(p => $"{Number(p.X)} {Number(p.Y)}")) + (line.Closed ? "z" : "");

    private static string Shape(SceneStatus s) =>
        s.Shape switch
        {
            StatusShape.Circle or StatusShape.Ring =>
                $"<circle class=\"{s.Style}\" cx=\"{Number(s.X)}\" cy=\"{Number(s.Y)}\" r=\"{Number(StatusOutline.RadiusOf(s))}\"/>",
            _ => $"<path class=\"{s.Style}\" d=\"{Path(new SceneLine(s.Style, StatusOutline.Corners(s), true))}\"/>",
        };

    private static string Escape(string text) =>
        text.Replace("&", "&amp;", StringComparison.Ordinal)
            .Replace("<", "&lt;", StringComparison.Ordinal)
            .Replace(">", "&gt;", StringComparison.Ordinal);
}

/// <summary>Geometry of the status shapes, the same on screen and paper: equal in weight to the eye.</summary>
public static class StatusOutline
{
    public static double RadiusOf(SceneStatus s) => s.Shape == StatusShape.Ring ? s.Radius - 0.8 : s.Radius;

    public static IReadOnlyList<ScenePoint> Corners(SceneStatus s)
    {
        var r = s.Radius;
        var side = r * 0.92;
        return s.Shape == StatusShape.Triangle
            ? [new(s.X, s.Y - r - 0.6), new(s.X + r + 0.8, s.Y + (r * 0.8)), new(s.X - r - 0.8, s.Y + (r * 0.8))]
            : [new(s.X - side, s.Y - side), new(s.X + side, s.Y - side), new(s.X + side, s.Y + side), new(s.X - side, s.Y + side)];
    }
}
