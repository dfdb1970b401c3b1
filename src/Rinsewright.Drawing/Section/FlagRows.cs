namespace Rinsewright.Drawing.Section;

/// <summary>The flags of a drawing: which have room, and how they are drawn.</summary>
internal sealed class FlagRows
{
    private const double RowHeight = 19;
    private const double KeyRow = 16;
    private readonly SectionOptions options;
    private readonly double width;
    private readonly Dictionary<string, Entry> entries;
    private readonly List<FlagPlace> top;
    private readonly List<FlagPlace> bottom;

    // A flag's words and where its pole ends.
    private sealed record Entry(string Name, string Value, StatusShape? Shape, ScenePoint Pin, bool Selected, FlagSide Side, bool IsFlow);

    private FlagRows(SectionPlan plan, SectionOptions options)
    {
        this.options = options;
        var frame = new SectionFrame(plan, options.Scale, options.Pad, 0);
        width = frame.Width;
        entries = options.Flags == FlagText.None ? [] : Entries(plan).ToDictionary(e => e.Key, e => e.Entry, StringComparer.Ordinal);
        var ranks = plan.Parts.ToDictionary(p => p.Id, p => p.Rank, StringComparer.Ordinal);
        List<FlagPlace> Set(FlagSide side) =>
            FlagLayout.Set(
                [
                    .. entries
                        .Where(e => e.Value.Side == side)
                        .Select(e => new FlagWish(
                            e.Key,
                            frame.X(e.Value.Pin.X),
                            WidthOf(e.Value),
                            RankOf(e.Value, ranks.GetValueOrDefault(e.Key))
                        ))
                        .Where(w => w.X > 4 && w.X < width - 4),
                ],
                width,
                options.Rows
            );
        top = Set(FlagSide.Top);
        bottom = Set(FlagSide.Bottom);
        var shown = top.Concat(bottom).Select(p => p.Wish.Key).ToHashSet(StringComparer.Ordinal);
        Waiting = [.. entries.Keys.Where(k => !shown.Contains(k) && !entries[k].IsFlow)];
    }

    /// <summary>Room above the machine, px.</summary>
    public double Above => RoomFor(top);

    /// <summary>Room below it, px.</summary>
    public double Below => RoomFor(bottom);

    /// <summary>Parts whose flag found no room.</summary>
    public IReadOnlyList<string> Waiting { get; }

    /// <summary>Height of the key to numbers, px; 0 on screen.</summary>
    public double KeyHeight => options.Print && Waiting.Count > 0 ? (Math.Ceiling(Waiting.Count / (double)KeyColumns) * KeyRow) + 12 : 0;

    private int KeyColumns => Math.Max(1, (int)(width / 210));

    public static FlagRows For(SectionPlan plan, SectionOptions options) => new(plan, options);

    public IEnumerable<SceneMark> Draw(SectionFrame frame, double height)
    {
        var foot = height - KeyHeight;
        foreach (var p in top)
        {
            var y = Above - 6 - (p.Row * RowHeight);
            yield return Flag(frame, p, y, y - 12);
        }

        foreach (var p in bottom)
        {
            var y = foot - Below + 16 + (p.Row * RowHeight);
            yield return Flag(frame, p, y, y + 2);
        }

        if (!options.Print)
        {
            yield break;
        }

        // On paper no flag waits: a number at the part and its name below.
        for (var n = 0; n < Waiting.Count; n++)
        {
            var e = entries[Waiting[n]];
            var (number, x, y) = ($"{n + 1}", frame.X(e.Pin.X), frame.Y(e.Pin.Y));
            yield return new SceneCurve("number", Outline.Disc(x, y, 7));
            yield return new SceneText("fvalue", x, y + 4, number, TextAnchor.Middle);
            var (column, row) = (n % KeyColumns, n / KeyColumns);
            yield return new SceneText(
                "ftext",
                options.Pad + (column * (width - options.Pad) / KeyColumns),
                foot + 12 + (row * KeyRow),
                $"{number}\u00a0 {e.Name} {e.Value}".TrimEnd()
            );
        }
    }

    private SceneLayer Flag(SectionFrame frame, FlagPlace p, double y, double poleEnd)
    {
        var e = entries[p.Wish.Key];
        var on = e.Selected ? "-on" : "";
        var pin = frame.At(e.Pin);
        List<SceneMark> marks = [];
        if (e.Selected)
        {
            marks.Add(new SceneBox("flagbg", p.From, y - 14, p.To - p.From, 19));
        }

        marks.Add(new SceneCurve("pole" + on, Outline.Wire((p.Wish.X, poleEnd), (p.Wish.X, pin.Y))));
        marks.Add(new SceneCurve("pin" + on, Outline.Disc(pin.X, pin.Y, e.Selected ? 4 : 2.4)));
        var x = p.From + (p.From >= p.Wish.X - 0.1 ? 5 : 3);
        if (e.Shape is { } shape)
        {
            marks.Add(new SceneStatus(shape, x + 5.5, y - 4.5, 5));
            x += 16;
        }

        if (e.Name.Length > 0)
        {
            marks.Add(new SceneText(e.Selected ? "ftext-on" : "ftext", x, y, e.Name));
            x += TextWidth.Of(e.Name, 12, e.Selected ? 650 : 500) + 4;
        }

        if (e.Value.Length > 0)
        {
            marks.Add(new SceneText(e.Selected ? "ftext-on" : "fvalue", x, y, e.Value));
        }

        return new SceneLayer(e.Selected ? "flag sel" : "flag", marks);
    }

    private IEnumerable<(string Key, Entry Entry)> Entries(SectionPlan plan)
    {
        var words = options.Words;
        var isShort = options.Flags == FlagText.Short;
        foreach (var part in plan.Parts.Where(p => p.Side != FlagSide.None))
        {
            var state = options.States.GetValueOrDefault(part.Id);
            var reading = options.Readings.GetValueOrDefault(part.Id);
            var selected = part.Id == options.Selected;
            if (!selected && state == PartState.Sound && reading is null && options.Zone is { } zone && part.Zone != zone)
            {
                continue;
            }

            var value = state == PartState.Sound ? reading?.Text ?? "" : SectionWords.State(state, words);
            StatusShape? shape = state switch
            {
                PartState.Sound => reading?.Shape,
                PartState.Dirty or PartState.Worn => StatusShape.Triangle,
                _ => StatusShape.Square,
            };
            yield return (part.Id, new Entry(SectionWords.Flag(part, words, isShort), value, shape, part.Pin, selected, part.Side, false));
        }

        foreach (var flow in plan.Flows)
        {
            if (options.Figures.TryGetValue(flow.Id, out var figure))
            {
                var name = words["section.flow." + flow.Id.Split('@')[0]];
                yield return ("flow:" + flow.Id, new Entry(name, figure, null, flow.Pin, false, flow.Side, true));
            }
        }
    }

    private static double RankOf(Entry e, double rank) =>
        e.Selected ? -9
        : e.IsFlow ? -3
        : e.Shape is StatusShape.Square or StatusShape.Triangle ? -5
        : e.Value.Length > 0 ? -4
        : rank;

    private static double WidthOf(Entry e) =>
        TextWidth.Of(e.Name, 12, e.Selected ? 650 : 500)
        + (e.Value.Length > 0 ? TextWidth.Of(e.Value, 12, 700) + 6 : 0)
        + (e.Shape is null ? 0 : 17)
        + 9;

    private static double RoomFor(List<FlagPlace> places) => places.Count > 0 ? ((places.Max(p => p.Row) + 1) * RowHeight) + 8 : 0;
}
