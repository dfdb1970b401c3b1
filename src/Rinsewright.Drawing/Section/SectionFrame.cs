namespace Rinsewright.Drawing.Section;

/// <summary>Where mm of the machine lie on the drawing.</summary>
/// <param name="Plan">The machine.</param>
/// <param name="Scale">px per mm.</param>
/// <param name="Pad">Space at the sides, px.</param>
/// <param name="Above">Room above the machine for flags, px.</param>
public sealed record SectionFrame(SectionPlan Plan, double Scale, double Pad, double Above)
{
    /// <summary>Width of the drawing, px.</summary>
    public double Width => ((Plan.Right - Plan.Left) * Scale) + (2 * Pad);

    /// <summary>Lower edge of the machine, px.</summary>
    public double MachineBottom => Y(Plan.Bottom);

    /// <summary>Lines are the thinner ones.</summary>
    public bool Small => Scale < SectionStyles.SmallBelow;

    /// <summary>px from the left of a place along the machine.</summary>
    public double X(double mm) => ((Plan.Mirrored ? Plan.Right - mm : mm - Plan.Left) * Scale) + Pad;

    /// <summary>px from the top of a height.</summary>
    public double Y(double mm) => Above + ((mm - Plan.Top) * Scale);

    /// <summary>A point.</summary>
    public ScenePoint At(ScenePoint mm) => new(X(mm.X), Y(mm.Y));

    /// <summary>An outline.</summary>
    public Outline At(Outline mm) => mm.Map(At);

    /// <summary>mm of the machine under a place of the drawing.</summary>
    public ScenePoint Back(double x, double y)
    {
        var along = (x - Pad) / Scale;
        return new ScenePoint(Plan.Mirrored ? Plan.Right - along : Plan.Left + along, Plan.Top + ((y - Above) / Scale));
    }

    /// <summary>Nearest part within reach of a place of the drawing, px; null where none is.</summary>
    /// <param name="x">px from the left.</param>
    /// <param name="y">px from the top.</param>
    /// <param name="reach">How far, px: half a finger.</param>
    public SectionPart? Nearest(double x, double y, double reach = 22)
    {
        var at = Back(x, y);
        SectionPart? best = null;
        var least = reach;
        foreach (var part in Plan.Parts.Where(p => p.Side != FlagSide.None))
        {
            var distance = double.PositiveInfinity;
            foreach (var b in part.Body)
            {
                var d = Fill.Distance(b.Pipe > 0 ? Fill.Strip(b.Outline, b.Pipe) : b.Outline, at.X, at.Y) * Scale;
                distance = Math.Min(distance, d);
            }

            // Between parts that are hit alike, the handle decides.
            var (dx, dy) = ((part.Handle.X - at.X) * Scale, (part.Handle.Y - at.Y) * Scale);
            distance += Math.Min(4, Math.Sqrt((dx * dx) + (dy * dy)) / 12);
            if (distance < least)
            {
                (best, least) = (part, distance);
            }
        }

        return best;
    }

    /// <summary>The part to go to with an arrow key: the nearest in that direction, straight ahead before aslant.</summary>
    /// <param name="from">Id of the part one is at; null: the first from the left.</param>
    /// <param name="dx">-1, 0 or 1 to the right on the drawing.</param>
    /// <param name="dy">-1, 0 or 1 down.</param>
    public SectionPart? Step(string? from, int dx, int dy)
    {
        var all = Plan.Parts.Where(p => p.Side != FlagSide.None).ToList();
        if (all.Find(p => p.Id == from) is not { } start)
        {
            return all.MinBy(p => X(p.Handle.X));
        }

        var at = At(start.Handle);
        return all.Where(p => p != start)
            .Select(p =>
            {
                var to = At(p.Handle);
                var (ahead, aside) = (((to.X - at.X) * dx) + ((to.Y - at.Y) * dy), Math.Abs(((to.X - at.X) * dy) + ((to.Y - at.Y) * dx)));
                return (Part: p, Ahead: ahead, Cost: ahead + (2 * aside));
            })
            .Where(p => p.Ahead > 2)
            .OrderBy(p => p.Cost)
            .Select(p => p.Part)
            .FirstOrDefault();
    }
}
