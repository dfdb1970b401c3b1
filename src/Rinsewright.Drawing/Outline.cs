using System.Text;

namespace Rinsewright.Drawing;

/// <summary>What a step of an outline does.</summary>
public enum StepKind
{
    /// <summary>Lifts the pen and sets it down at the point.</summary>
    Move,

    /// <summary>Straight to the point.</summary>
    Line,

    /// <summary>Curve to the point by two control points (cubic Bézier).</summary>
    Curve,

    /// <summary>Straight back to where the pen was set down.</summary>
    Close,
}

/// <summary>One step of an outline.</summary>
/// <param name="Kind">What it does.</param>
/// <param name="To">Point it ends at.</param>
/// <param name="First">First control point of a curve.</param>
/// <param name="Second">Second control point of a curve.</param>
public readonly record struct OutlineStep(StepKind Kind, ScenePoint To, ScenePoint First = default, ScenePoint Second = default);

/// <summary>Lines and curves in any unit of length, y downwards. Immutable.</summary>
public sealed class Outline
{
    // A quarter of a circle by one curve: control points at this share of the radius.
    private const double Quarter = 0.5523;

    /// <summary>From its steps.</summary>
    public Outline(IReadOnlyList<OutlineStep> steps) => Steps = steps;

    /// <summary>Steps, in order.</summary>
    public IReadOnlyList<OutlineStep> Steps { get; }

    /// <summary>Rectangle, its corners rounded by <paramref name="r"/>.</summary>
    public static Outline Box(double x, double y, double width, double height, double r = 0)
    {
        if (r <= 0)
        {
            return Polygon((x, y), (x + width, y), (x + width, y + height), (x, y + height));
        }

        r = Math.Min(r, Math.Min(width, height) / 2);
        var (right, bottom) = (x + width, y + height);
        return new OutlinePen()
            .Move(x + r, y)
            .Line(right - r, y)
            .Round(right, y, right, y + r)
            .Line(right, bottom - r)
            .Round(right, bottom, right - r, bottom)
            .Line(x + r, bottom)
            .Round(x, bottom, x, bottom - r)
            .Line(x, y + r)
            .Round(x, y, x + r, y)
            .Close()
            .Done();
    }

    /// <summary>Circle.</summary>
    public static Outline Disc(double x, double y, double r) => Box(x - r, y - r, 2 * r, 2 * r, r);

    /// <summary>Closed polygon.</summary>
    public static Outline Polygon(params (double X, double Y)[] corners)
    {
        var steps = corners.Select((c, i) => new OutlineStep(i == 0 ? StepKind.Move : StepKind.Line, new(c.X, c.Y))).ToList();
        steps.Add(new OutlineStep(StepKind.Close, steps[0].To));
        return new Outline(steps);
    }

    /// <summary>Open line through points.</summary>
    public static Outline Wire(params (double X, double Y)[] points) =>
        new([.. points.Select((c, i) => new OutlineStep(i == 0 ? StepKind.Move : StepKind.Line, new ScenePoint(c.X, c.Y)))]);

    /// <summary>Several outlines as one.</summary>
    public static Outline Of(params IEnumerable<Outline> parts) => new([.. parts.SelectMany(p => p.Steps)]);

    /// <summary>Both together.</summary>
    public static Outline operator +(Outline left, Outline right) => Of(left, right);

    /// <summary>Every point carried over.</summary>
    public Outline Map(Func<ScenePoint, ScenePoint> place) =>
        new([.. Steps.Select(s => new OutlineStep(s.Kind, place(s.To), place(s.First), place(s.Second)))]);

    /// <summary>Moved.</summary>
    public Outline By(double dx, double dy) => Map(p => new ScenePoint(p.X + dx, p.Y + dy));

    /// <summary>Turned about a point, clockwise where y points down.</summary>
    public Outline Turned(double degrees, ScenePoint about)
    {
        var (sin, cos) = Math.SinCos(degrees * Math.PI / 180);
        return Map(p =>
        {
            var (x, y) = (p.X - about.X, p.Y - about.Y);
            return new ScenePoint(about.X + (x * cos) - (y * sin), about.Y + (x * sin) + (y * cos));
        });
    }

    /// <summary>Straight lines close to it: curves in eight pieces.</summary>
    public IReadOnlyList<SceneLine> Flat(string style = "")
    {
        const int pieces = 8;
        List<SceneLine> lines = [];
        List<ScenePoint> run = [];
        void End(bool closed)
        {
            if (run.Count > 1)
            {
                lines.Add(new SceneLine(style, [.. run], closed));
            }

            run.Clear();
        }

        foreach (var s in Steps)
        {
            switch (s.Kind)
            {
                case StepKind.Move:
                    End(false);
                    run.Add(s.To);
                    break;
                case StepKind.Line:
                    run.Add(s.To);
                    break;
                case StepKind.Curve:
                    var from = run[^1];
                    for (var i = 1; i <= pieces; i++)
                    {
                        run.Add(OnCurve(from, s, i / (double)pieces));
                    }

                    break;
                default:
                    var start = run[0];
                    End(true);
                    run.Add(start);
                    break;
            }
        }

        End(false);
        return lines;
    }

    /// <summary>The path as SVG writes it.</summary>
    /// <param name="digits">Decimals.</param>
    public string Path(int digits = 1)
    {
        var text = new StringBuilder();
        void Add(char letter, params ReadOnlySpan<ScenePoint> points)
        {
            text.Append(letter);
            for (var i = 0; i < points.Length; i++)
            {
                text.Append(i > 0 ? " " : "").Append(SvgWriter.Number(points[i].X, digits)).Append(' ');
                text.Append(SvgWriter.Number(points[i].Y, digits));
            }
        }

        foreach (var s in Steps)
        {
            switch (s.Kind)
            {
                case StepKind.Move:
                    Add('M', s.To);
                    break;
                case StepKind.Line:
                    Add('L', s.To);
                    break;
                case StepKind.Curve:
                    Add('C', s.First, s.Second, s.To);
                    break;
                default:
                    text.Append('Z');
                    break;
            }
        }

        return text.ToString();
    }

    internal static ScenePoint Toward(ScenePoint from, ScenePoint corner) =>
        new(from.X + (Quarter * (corner.X - from.X)), from.Y + (Quarter * (corner.Y - from.Y)));

    private static ScenePoint OnCurve(ScenePoint from, OutlineStep s, double t)
    {
        var u = 1 - t;
        var (a, b, c, d) = (u * u * u, 3 * u * u * t, 3 * u * t * t, t * t * t);
        return new ScenePoint(
            (a * from.X) + (b * s.First.X) + (c * s.Second.X) + (d * s.To.X),
            (a * from.Y) + (b * s.First.Y) + (c * s.Second.Y) + (d * s.To.Y)
        );
    }
}

/// <summary>Draws an outline step by step.</summary>
public sealed class OutlinePen
{
    private readonly List<OutlineStep> steps = [];
    private ScenePoint at;
    private ScenePoint start;

    /// <summary>Lifts the pen and sets it down.</summary>
    public OutlinePen Move(double x, double y)
    {
        start = at = new ScenePoint(x, y);
        steps.Add(new OutlineStep(StepKind.Move, at));
        return this;
    }

    /// <summary>Straight line.</summary>
    public OutlinePen Line(double x, double y)
    {
        at = new ScenePoint(x, y);
        steps.Add(new OutlineStep(StepKind.Line, at));
        return this;
    }

    /// <summary>Curve by two control points.</summary>
    public OutlinePen Curve(double x1, double y1, double x2, double y2, double x, double y)
    {
        at = new ScenePoint(x, y);
        steps.Add(new OutlineStep(StepKind.Curve, at, new ScenePoint(x1, y1), new ScenePoint(x2, y2)));
        return this;
    }

    /// <summary>Curve by one control point.</summary>
    public OutlinePen Bend(double cx, double cy, double x, double y) =>
        Curve(at.X + (2 / 3.0 * (cx - at.X)), at.Y + (2 / 3.0 * (cy - at.Y)), x + (2 / 3.0 * (cx - x)), y + (2 / 3.0 * (cy - y)), x, y);

    /// <summary>Quarter of an ellipse around the inside of a corner.</summary>
    public OutlinePen Round(double cornerX, double cornerY, double x, double y)
    {
        var corner = new ScenePoint(cornerX, cornerY);
        var to = new ScenePoint(x, y);
        var (first, second) = (Outline.Toward(at, corner), Outline.Toward(to, corner));
        return Curve(first.X, first.Y, second.X, second.Y, x, y);
    }

    /// <summary>Back to where the pen was set down.</summary>
    public OutlinePen Close()
    {
        steps.Add(new OutlineStep(StepKind.Close, start));
        at = start;
        return this;
    }

    /// <summary>The outline.</summary>
    public Outline Done() => new([.. steps]);
}
