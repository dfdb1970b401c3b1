namespace Rinsewright.Drawing.Section;

/// <summary>Fills an outline with dots or with lines, cut to it: states that are told apart without colour, on paper as on screen.</summary>
internal static class Fill
{
    // px
    private const double DotStep = 6.4;
    private const double LineStep = 5.6;

    /// <summary>Dots inside; px.</summary>
    public static Outline Dots(Outline area)
    {
        var contours = Contours(area);
        var (left, top, right, bottom) = Bounds(contours);
        var (cx, cy) = ((left + right) / 2, (top + bottom) / 2);
        List<Outline> dots = [];
        var (across, down) = ((int)((right - left) / 2 / DotStep) + 1, (int)((bottom - top) / DotStep) + 1);
        for (var row = -down; row <= down; row++)
        {
            for (var column = -across; column <= across; column++)
            {
                var x = cx + ((column + (row % 2 == 0 ? 0 : 0.5)) * DotStep);
                var ym = cy + (row * DotStep / 2);
                if (Inside(contours, x, ym))
                {
                    dots.Add(Dot(x, ym, (row + column) % 3 == 0 ? 1 : 1.4));
                }
            }
        }

        return Outline.Of(dots);
    }

    /// <summary>Lines at 45° inside; px.</summary>
    public static Outline Lines(Outline area)
    {
        List<Outline> lines = [];
        foreach (var contour in Contours(area))
        {
            var sums = contour.Select(p => p.X + p.Y).ToList();
            for (var c = Math.Ceiling(sums.Min() / LineStep) * LineStep; c < sums.Max(); c += LineStep)
            {
                var xs = Crossings(contour, c);
                for (var i = 0; i + 1 < xs.Count; i += 2)
                {
                    lines.Add(Outline.Wire((xs[i], c - xs[i]), (xs[i + 1], c - xs[i + 1])));
                }
            }
        }

        return Outline.Of(lines);
    }

    /// <summary>Edges of a pipe along its middle line.</summary>
    public static Outline Strip(Outline middle, double width)
    {
        List<Outline> strips = [];
        foreach (var line in middle.Flat())
        {
            var p = line.Points;
            var one = new (double X, double Y)[p.Count];
            var other = new (double X, double Y)[p.Count];
            for (var i = 0; i < p.Count; i++)
            {
                var (a, b) = (p[Math.Max(0, i - 1)], p[Math.Min(p.Count - 1, i + 1)]);
                var (dx, dy) = (b.X - a.X, b.Y - a.Y);
                var size = Math.Max(1e-9, Math.Sqrt((dx * dx) + (dy * dy)));
                var (nx, ny) = (-dy / size * width / 2, dx / size * width / 2);
                one[i] = (p[i].X + nx, p[i].Y + ny);
                other[p.Count - 1 - i] = (p[i].X - nx, p[i].Y - ny);
            }

            strips.Add(Outline.Polygon([.. one, .. other]));
        }

        return Outline.Of(strips);
    }

    /// <summary>Distance from a point to an outline, 0 inside.</summary>
    public static double Distance(Outline area, double x, double y)
    {
        if (Inside(Contours(area), x, y))
        {
            return 0;
        }

        var least = double.PositiveInfinity;
        foreach (var line in area.Flat())
        {
            for (var i = 1; i < line.Points.Count; i++)
            {
                least = Math.Min(least, ToSegment(line.Points[i - 1], line.Points[i], x, y));
            }
        }

        return least;
    }

    private static Outline Dot(double x, double y, double r) =>
        Outline.Polygon([
            .. Enumerable.Range(0, 6).Select(i => (x + (r * Math.Cos(i * Math.PI / 3)), y + (r * Math.Sin(i * Math.PI / 3)))),
        ]);

    private static List<IReadOnlyList<ScenePoint>> Contours(Outline area) => [.. area.Flat().Where(l => l.Closed).Select(l => l.Points)];

    private static (double Left, double Top, double Right, double Bottom) Bounds(List<IReadOnlyList<ScenePoint>> contours)
    {
        var all = contours.SelectMany(c => c).ToList();
        return all.Count == 0 ? (0, 0, 0, 0) : (all.Min(p => p.X), all.Min(p => p.Y), all.Max(p => p.X), all.Max(p => p.Y));
    }

    private static bool Inside(List<IReadOnlyList<ScenePoint>> contours, double x, double y)
    {
        foreach (var c in contours)
        {
            var inside = false;
            for (int i = 0, j = c.Count - 1; i < c.Count; j = i++)
            {
                if (c[i].Y > y != c[j].Y > y && x < ((c[j].X - c[i].X) * (y - c[i].Y) / (c[j].Y - c[i].Y)) + c[i].X)
                {
                    inside = !inside;
                }
            }

            if (inside)
            {
                return true;
            }
        }

        return false;
    }

    // Where the line x + y = c meets the contour.
    private static List<double> Crossings(IReadOnlyList<ScenePoint> contour, double c)
    {
        List<double> xs = [];
        for (int i = 0, j = contour.Count - 1; i < contour.Count; j = i++)
        {
            var (a, b) = (contour[j].X + contour[j].Y - c, contour[i].X + contour[i].Y - c);
            if (a > 0 != b > 0)
            {
                var t = a / (a - b);
                xs.Add(contour[j].X + (t * (contour[i].X - contour[j].X)));
            }
        }

        xs.Sort();
        return xs;
    }

    private static double ToSegment(ScenePoint a, ScenePoint b, double x, double y)
    {
        var (dx, dy) = (b.X - a.X, b.Y - a.Y);
        var size = (dx * dx) + (dy * dy);
        var t = size <= 0 ? 0 : Math.Clamp((((x - a.X) * dx) + ((y - a.Y) * dy)) / size, 0, 1);
        var (px, py) = (a.X + (t * dx) - x, a.Y + (t * dy) - y);
        return Math.Sqrt((px * px) + (py * py));
    }
}
