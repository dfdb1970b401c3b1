using System.Runtime.InteropServices;

namespace Rinsewright.Drawing;

/// <summary>Puts labels where they cover neither another label nor a line, trying places in order of liking.</summary>
internal sealed class LabelPlacer(double left, double top, double right, double bottom)
{
    private const double Ascent = 10;
    private const double Descent = 3;

    // A label covered weighs more than all lines that could be crossed.
    private const int OfLabel = 1000;
    private readonly List<Area> taken = [];
    private readonly List<IReadOnlyList<ScenePoint>> lines = [];

    /// <summary>A rectangle in px.</summary>
    [StructLayout(LayoutKind.Auto)]
    internal readonly record struct Area(double Left, double Top, double Right, double Bottom)
    {
        public bool Meets(Area o) => Left < o.Right && o.Left < Right && Top < o.Bottom && o.Top < Bottom;
    }

    public void Take(double l, double t, double r, double b) => taken.Add(new Area(l, t, r, b));

    public void Avoid(IReadOnlyList<ScenePoint> line) => lines.Add(line);

    /// <summary>Place that covers nothing; null where there is none.</summary>
    /// <param name="style">Style of the label.</param>
    /// <param name="text">The text.</param>
    /// <param name="places">Baselines with their anchors, best first.</param>
    /// <param name="must">True: the place that covers least rather than none.</param>
    /// <param name="farther">Places taken only where every other would cover a label; a line is rather crossed.</param>
    public SceneText? Put(
        string style,
        string text,
        IEnumerable<(double X, double Y, TextAnchor Anchor)> places,
        bool must = false,
        IEnumerable<(double X, double Y, TextAnchor Anchor)>? farther = null
    )
    {
        SceneText? best = null;
        Area bestArea = default;
        var least = int.MaxValue;
        Try(places);
        if (least >= OfLabel && farther is not null)
        {
            Try(farther);
        }

        if (best is null || (least > 0 && !must))
        {
            return null;
        }

        taken.Add(bestArea);
        return best;

        void Try(IEnumerable<(double X, double Y, TextAnchor Anchor)> candidates)
        {
            foreach (var (x, y, anchor) in candidates)
            {
                var area = AreaOf(style, text, x, y, anchor);
                if (area.Left < left - 2 || area.Right > right + 2 || area.Top < top || area.Bottom > bottom)
                {
                    continue;
                }

                var labels = taken.Count(a => a.Meets(area));
                var cost = (labels * OfLabel) + lines.Sum(l => Crossings(l, area));
                if (cost < least)
                {
                    least = cost;
                    best = new SceneText(style, x, y, text, anchor);
                    bestArea = area;
                }

                if (cost == 0)
                {
                    return;
                }
            }
        }
    }

    internal static Area AreaOf(string style, string text, double x, double y, TextAnchor anchor)
    {
        var s = SceneStyles.Find(style);
        var width = TextWidth.Of(text, s.Size ?? 12, s.Weight);
        var from = anchor switch
        {
            TextAnchor.End => x - width,
            TextAnchor.Middle => x - (width / 2),
            _ => x,
        };
        return new Area(from - 2, y - Ascent, from + width + 2, y + Descent);
    }

    private static int Crossings(IReadOnlyList<ScenePoint> line, Area a)
    {
        var n = 0;
        for (var i = 1; i < line.Count; i++)
        {
            if (Crosses(line[i - 1], line[i], a))
            {
                n++;
            }
        }

        return n;
    }

    // Liang and Barsky's test: the part of the segment inside the rectangle is not empty.
    private static bool Crosses(ScenePoint p, ScenePoint q, Area a)
    {
        double from = 0,
            to = 1;
        var dx = q.X - p.X;
        var dy = q.Y - p.Y;
        return Clip(-dx, p.X - a.Left, ref from, ref to)
            && Clip(dx, a.Right - p.X, ref from, ref to)
            && Clip(-dy, p.Y - a.Top, ref from, ref to)
            && Clip(dy, a.Bottom - p.Y, ref from, ref to);
    }

    private static bool Clip(double direction, double distance, ref double from, ref double to)
    {
        if (direction == 0)
        {
            return distance >= 0;
        }

        var t = distance / direction;
        if (direction < 0)
        {
            from = Math.Max(from, t);
        }
        else
        {
            to = Math.Min(to, t);
        }

        return from <= to;
    }
}
