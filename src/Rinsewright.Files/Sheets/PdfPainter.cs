using PdfSharp.Drawing;
using Rinsewright.Drawing;

namespace Rinsewright.Files.Sheets;

/// <summary>Paints a scene on paper: black ink and greys from the style table, scaled to fit.</summary>
public static class PdfPainter
{
    /// <summary>Paints a scene into a rectangle, keeping its proportions, from the upper left corner.</summary>
    /// <param name="scene">The drawing.</param>
    /// <param name="graphics">Page to paint on.</param>
    /// <param name="place">Where, pt.</param>
    public static void Paint(Scene scene, XGraphics graphics, XRect place)
    {
        var scale = Math.Min(place.Width / scene.Width, place.Height / scene.Height);
        var painter = new Painter(graphics, place.X, place.Y, scale);
        foreach (var mark in scene.Marks)
        {
            painter.Paint(mark);
        }
    }

    private sealed class Painter(XGraphics g, double left, double top, double scale)
    {
        private readonly Dictionary<(double Size, bool Bold), XFont> fonts = [];

        public void Paint(SceneMark mark)
        {
            switch (mark)
            {
                case SceneLine line:
                    Line(line, SceneStyles.Find(line.Style));
                    break;
                case SceneHatch hatch:
                    foreach (var l in hatch.Lines())
                    {
                        Line(l, SceneStyles.Find(hatch.Style));
                    }

                    break;
                case SceneBox b:
                    var style = SceneStyles.Find(b.Style);
                    var (pen, brush) = (Pen(style), Brush(style));
                    var at = At(b.X, b.Y);
                    if (pen is not null || brush is not null)
                    {
                        g.DrawRectangle(pen, brush, at.X, at.Y, b.Width * scale, b.Height * scale);
                    }

                    break;
                case SceneText t:
                    Text(t);
                    break;
                case SceneStatus s:
                    Status(s);
                    break;
                case SceneCurve curve:
                    Curve(curve, SceneStyles.Find(curve.Style));
                    break;
                case SceneGroup group:
                    PaintAll(group.Marks);
                    break;
                case ScenePart part:
                    PaintAll(part.Marks);
                    break;
                case SceneLayer layer:
                    PaintAll(layer.Marks);
                    break;
            }
        }

        private void PaintAll(IReadOnlyList<SceneMark> marks)
        {
            foreach (var mark in marks)
            {
                Paint(mark);
            }
        }

        private void Curve(SceneCurve curve, SceneStyle style)
        {
            if (style.PaperOpacity == 0)
            {
                return;
            }

            var pen = Pen(style, curve.Width);
            var brush = curve.Tint is { } tint ? new XSolidBrush(XColor.FromArgb(unchecked((int)(0xFF000000 | tint.Paper)))) : Brush(style);
            if (brush is null && pen is null)
            {
                return;
            }

            var path = new XGraphicsPath { FillMode = XFillMode.Winding };
            ScenePoint at = default;
            foreach (var s in curve.Outline.Steps)
            {
                switch (s.Kind)
                {
                    case StepKind.Move:
                        path.StartFigure();
                        break;
                    case StepKind.Line:
                        path.AddLine(At(at.X, at.Y), At(s.To.X, s.To.Y));
                        break;
                    case StepKind.Curve:
                        path.AddBezier(At(at.X, at.Y), At(s.First.X, s.First.Y), At(s.Second.X, s.Second.Y), At(s.To.X, s.To.Y));
                        break;
                    default:
                        path.CloseFigure();
                        break;
                }

                at = s.To;
            }

            g.DrawPath(pen, brush, path);
        }

        private void Line(SceneLine line, SceneStyle style)
        {
            var points = line.Points.Select(p => At(p.X, p.Y)).ToArray();
            if (points.Length < 2)
            {
                return;
            }

            if (line.Closed)
            {
                g.DrawPolygon(Pen(style), Brush(style) ?? XBrushes.Transparent, points, XFillMode.Winding);
            }
            else if (Pen(style) is { } pen)
            {
                g.DrawLines(pen, points);
            }
        }

        private void Text(SceneText t)
        {
            var style = SceneStyles.Find(t.Style);
            var key = ((t.Size ?? style.Size ?? 12) * scale, style.Weight >= 600);
            if (!fonts.TryGetValue(key, out var font))
            {
                fonts[key] = font = SheetFonts.Of(key.Item1, key.Item2);
            }

            var text = SheetFonts.Drawable(t.Text);
            var width = t.Anchor == TextAnchor.Start ? 0 : g.MeasureString(text, font).Width;
            var at = At(t.X, t.Y);
            g.DrawString(
                text,
                font,
                Brush(style) ?? XBrushes.Black,
                at.X
                    - (
                        t.Anchor == TextAnchor.End ? width
                        : t.Anchor == TextAnchor.Middle ? width / 2
                        : 0
                    ),
                at.Y
            );
        }

        private void Status(SceneStatus s)
        {
            var style = SceneStyles.Find(s.Style);
            if (s.Shape is StatusShape.Circle or StatusShape.Ring)
            {
                var r = StatusOutline.RadiusOf(s) * scale;
                var at = At(s.X, s.Y);
                g.DrawEllipse(
                    Pen(style),
                    s.Shape == StatusShape.Ring ? XBrushes.White : Brush(style) ?? XBrushes.White,
                    at.X - r,
                    at.Y - r,
                    2 * r,
                    2 * r
                );
            }
            else
            {
                g.DrawPolygon(
                    Pen(style),
                    Brush(style) ?? XBrushes.White,
                    [.. StatusOutline.Corners(s).Select(p => At(p.X, p.Y))],
                    XFillMode.Winding
                );
            }
        }

        private XPoint At(double x, double y) => new(left + (x * scale), top + (y * scale));

        private XPen? Pen(SceneStyle style, double? width = null)
        {
            if (style.Stroke is null || style.Halo > 0)
            {
                return null;
            }

            var pen = new XPen(Colour(style.Stroke, 1), Math.Max(0.4, (width ?? style.Width) * scale)) { LineJoin = XLineJoin.Round };
            if (style.RoundCap)
            {
                pen.LineCap = XLineCap.Round;
            }

            if (style.Dash is { Count: > 0 } dash)
            {
                pen.DashPattern = [.. dash.Select(d => d / style.Width)];
            }

            return pen;
        }

        private static XBrush? Brush(SceneStyle style) =>
            style.Fill is null or SceneStyles.Given ? null : new XSolidBrush(Colour(style.Fill, style.PaperOpacity ?? style.Opacity));

        // Mixed with the white of the paper rather than transparent: old printers and copiers stay faithful.
        private static XColor Colour(string token, double opacity)
        {
            var rgb = SceneStyles.OnPaper(token);
            int Mix(int shift) => (int)Math.Round(255 - ((255 - (int)((rgb >> shift) & 0xFF)) * opacity));
            return XColor.FromArgb(255, Mix(16), Mix(8), Mix(0));
        }
    }
}
