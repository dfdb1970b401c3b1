namespace Rinsewright.Drawing.Section;

public sealed partial class SectionDrawing
{
    private PartState StateOf(SectionPart part) => options.States.GetValueOrDefault(part.Id);

    // Each state has its own line, so that it is told apart in grey.
    private ScenePart Draw(SectionPart part)
    {
        var state = StateOf(part);
        List<SceneMark> marks = [];
        var selected = part.Id == options.Selected;
        if (selected)
        {
            marks.AddRange(part.Body.Select(Halo));
        }

        switch (state)
        {
            case PartState.Missing:
                marks.AddRange(part.Body.Select(b => new SceneCurve("ghost-b", Frame.At(b.Outline))));
                break;
            case PartState.Misplaced or PartState.Open:
                marks.AddRange(part.Body.Select(b => new SceneCurve("ghost", Frame.At(b.Outline))));
                var moved = Moved(part, part.Move);
                marks.AddRange(Own(moved, PartState.Sound));
                break;
            default:
                marks.AddRange(Own(part, state));
                break;
        }

        var style = $"part {state.ToString().ToLowerInvariant()}{(selected ? " sel" : "")}";
        return new ScenePart(style, part.Id, SectionWords.Label(part, Plan, options), marks);
    }

    private static SectionPart Moved(SectionPart part, PartMove move)
    {
        var hinge = part.Hinge ?? part.Handle;
        Outline Shift(Outline o) => o.Turned(move.Degrees, hinge).By(move.X, move.Y);
        return part with
        {
            Body = [.. part.Body.Select(b => b with { Outline = Shift(b.Outline) })],
            Detail = [.. part.Detail.Select(d => d is PlanShape s ? s with { Outline = Shift(s.Outline) } : d)],
        };
    }

    private IEnumerable<SceneMark> Own(SectionPart part, PartState state)
    {
        foreach (var b in part.Body)
        {
            if (b.Pipe > 0)
            {
                yield return Stroke("po", Frame.At(b.Outline), b.Pipe);
                yield return Stroke("pi", Frame.At(b.Outline), b.Pipe);
            }
            else
            {
                var style = state == PartState.Worn && b.Style == "b" ? "worn" : b.Style;
                yield return new SceneCurve(Style(style), Frame.At(b.Outline));
            }
        }

        // Letters stand apart: a part's name is what it is called, not what is written on it.
        foreach (var d in part.Detail.Where(d => d is not PlanLetters))
        {
            yield return Mark(d);
        }

        if (state is not (PartState.Dirty or PartState.Worn))
        {
            yield break;
        }

        foreach (var b in part.Body.Where(b => b.Style != "hidden"))
        {
            var area = Frame.At(b.Pipe > 0 ? Fill.Strip(b.Outline, b.Pipe) : b.Outline);
            yield return state == PartState.Dirty ? new SceneCurve("dirt", Fill.Dots(area)) : new SceneCurve("wear", Fill.Lines(area));
        }
    }

    private IEnumerable<SceneMark> Letters() =>
        Plan
            .Parts.Where(p => StateOf(p) is PartState.Sound or PartState.Dirty or PartState.Worn)
            .SelectMany(p => p.Detail.OfType<PlanLetters>())
            .Where(l => !Frame.Small || l.Style != "dial")
            .Select(Mark);

    private SceneCurve Halo(PlanShape b) =>
        b.Pipe > 0
            ? new SceneCurve("halo-p", Frame.At(b.Outline), null, (b.Pipe * Frame.Scale) + 12)
            : new SceneCurve("halo", Frame.At(b.Outline));

    // Badge: the state in one glyph, beside the part.
    private IEnumerable<SceneMark> Badges()
    {
        foreach (var part in Plan.Parts)
        {
            var state = StateOf(part);
            if (state != PartState.Sound)
            {
                yield return Badge(state, Frame.X(part.Handle.X) + 13, Frame.Y(part.Handle.Y) - 13);
            }
        }
    }

    /// <summary>The sign of a state around a middle, px.</summary>
    public static SceneMark Badge(PartState state, double x, double y)
    {
        const double r = 9.5;
        Outline Line(params (double X, double Y)[] points) => Outline.Wire([.. points.Select(p => (x + p.X, y + p.Y))]);
        Outline Dot(double dx, double dy, double size) => Outline.Disc(x + dx, y + dy, size);
        var near = state is PartState.Dirty or PartState.Worn;
        SceneCurve glyph = state switch
        {
            PartState.Dirty => new("badge-dot", Dot(-3, -2, 1.7) + Dot(3, -3, 1.7) + Dot(0, 3, 1.9)),
            PartState.Worn => new("badge-line", Line((-6, 1), (-3, -3), (0, 2), (3, -3), (6, 1))),
            PartState.Missing => new("badge-line-on", Line((-4, -4), (4, 4)) + Line((4, -4), (-4, 4))),
            _ => new("badge-line-on", Line((-4, 4), (4, -4)) + Line((-1, -4), (4, -4), (4, 1))),
        };
        return new SceneLayer("badge", [new SceneCurve(near ? "badge-near" : "badge-bad", Outline.Disc(x, y, r)), glyph]);
    }
}
