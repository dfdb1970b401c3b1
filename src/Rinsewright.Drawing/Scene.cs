namespace Rinsewright.Drawing;

/// <summary>A point of a drawing, px from the left and from the top.</summary>
public readonly record struct ScenePoint(double X, double Y);

/// <summary>Where a text hangs on its point.</summary>
public enum TextAnchor
{
    /// <summary>Begins at the point.</summary>
    Start,

    /// <summary>Has its middle there.</summary>
    Middle,

    /// <summary>Ends there.</summary>
    End,
}

/// <summary>The four status shapes: never without their word.</summary>
public enum StatusShape
{
    /// <summary>In range, proven.</summary>
    Circle,

    /// <summary>Near limit, undetermined.</summary>
    Triangle,

    /// <summary>Out of range, not proven.</summary>
    Square,

    /// <summary>Not read.</summary>
    Ring,
}

/// <summary>One thing drawn. Its style is a name in <see cref="SceneStyles"/>: the browser colours by it, paper has plain colours for it.</summary>
/// <param name="Style">Style name, for example <c>lim</c>; several separated by spaces.</param>
public abstract record SceneMark(string Style);

/// <summary>A line through points; closed where it bounds an area.</summary>
public sealed record SceneLine(string Style, IReadOnlyList<ScenePoint> Points, bool Closed = false) : SceneMark(Style);

/// <summary>A rectangle.</summary>
public sealed record SceneBox(string Style, double X, double Y, double Width, double Height) : SceneMark(Style);

/// <summary>A text on its baseline; <paramref name="Size"/> only where the style leaves the letter size to the mark, px.</summary>
/// <param name="Silent">Part of the picture, as the unit on a dial: not read out.</param>
public sealed record SceneText(
    string Style,
    double X,
    double Y,
    string Text,
    TextAnchor Anchor = TextAnchor.Start,
    double? Size = null,
    bool Silent = false
) : SceneMark(Style);

/// <summary>A fill that follows a value instead of the style, as water does its temperature.</summary>
/// <param name="Screen">On screen, 0xRRGGBB.</param>
/// <param name="Paper">On paper, 0xRRGGBB.</param>
/// <param name="Grade">Step of the grey it prints with, from 1; the browser's print rules know it as <c>g1</c> and so on.</param>
public sealed record SceneTint(uint Screen, uint Paper, int Grade);

/// <summary>Lines and curves. Width, px, only where the style leaves it to the mark.</summary>
public sealed record SceneCurve(string Style, Outline Outline, SceneTint? Tint = null, double? Width = null) : SceneMark(Style);

/// <summary>Something that can be pointed at: a button to assistive techniques.</summary>
/// <param name="Style">Style names of the group.</param>
/// <param name="Id">Its id.</param>
/// <param name="Label">Its name and state in words.</param>
/// <param name="Marks">How it is drawn.</param>
public sealed record ScenePart(string Style, string Id, string Label, IReadOnlyList<SceneMark> Marks) : SceneMark(Style);

/// <summary>Marks that belong together without being a thing of their own.</summary>
public sealed record SceneLayer(string Style, IReadOnlyList<SceneMark> Marks) : SceneMark(Style);

/// <summary>A status shape around its middle; hollow where it tells of something that is past.</summary>
public sealed record SceneStatus(StatusShape Shape, double X, double Y, double Radius, bool Hollow = false)
    : SceneMark("sh " + (Hollow ? "hollow" : SceneStyles.NameOf(Shape)));

/// <summary>A rectangle filled with lines at 45°, <paramref name="Step"/> px apart along the edge.</summary>
public sealed record SceneHatch(string Style, double X, double Y, double Width, double Height, double Step = 6) : SceneMark(Style)
{
    /// <summary>The lines, cut to the rectangle.</summary>
    public IEnumerable<SceneLine> Lines()
    {
        // Lines x + y = c, from c = Step on; each is cut where it leaves the rectangle.
        for (var c = Step; c < Width + Height; c += Step)
        {
            var from = new ScenePoint(X + Math.Min(c, Width), Y + Math.Max(0, c - Width));
            var to = new ScenePoint(X + Math.Max(0, c - Height), Y + Math.Min(c, Height));
            yield return new SceneLine(Style, [from, to]);
        }
    }
}

/// <summary>Marks that belong together, with a title for assistive techniques and as a hint under the pointer.</summary>
public sealed record SceneGroup(string Style, string Title, IReadOnlyList<SceneMark> Marks) : SceneMark(Style);

/// <summary>A plot inside a scene: lets a host turn a touch into seconds and back.</summary>
/// <param name="Id"><c>temperature</c>, <c>dose</c> or <c>overview</c>.</param>
/// <param name="Left">Left edge, px.</param>
/// <param name="Top">Upper edge, px.</param>
/// <param name="Right">Right edge, px.</param>
/// <param name="Bottom">Lower edge, px.</param>
/// <param name="FromSeconds">Time at the left edge, s.</param>
/// <param name="ToSeconds">Time at the right edge, s.</param>
/// <param name="Low">Value at the lower edge, in <paramref name="Unit"/>.</param>
/// <param name="High">Value at the upper edge, in <paramref name="Unit"/>.</param>
/// <param name="Unit">UCUM code of the values shown.</param>
public sealed record ScenePlot(
    string Id,
    double Left,
    double Top,
    double Right,
    double Bottom,
    double FromSeconds,
    double ToSeconds,
    double Low,
    double High,
    string Unit
)
{
    /// <summary>Seconds under a place, kept inside the plot.</summary>
    public double SecondsAt(double x) => FromSeconds + ((Math.Clamp(x, Left, Right) - Left) / (Right - Left) * (ToSeconds - FromSeconds));

    /// <summary>Place of a time, px.</summary>
    public double X(double seconds) => Left + ((seconds - FromSeconds) / (ToSeconds - FromSeconds) * (Right - Left));

    /// <summary>Place of a value, px.</summary>
    public double Y(double value) => Bottom - ((value - Low) / (High - Low) * (Bottom - Top));
}

/// <summary>A finished drawing: plain data, the same for browser, paper and command line.</summary>
/// <param name="Width">Width, px.</param>
/// <param name="Height">Height, px.</param>
/// <param name="Title">What it shows, in a few words.</param>
/// <param name="Description">The values it shows, in sentences: whoever cannot see it loses nothing.</param>
/// <param name="Marks">What is drawn, from back to front.</param>
/// <param name="Plots">Its plots.</param>
/// <param name="Kind">Its class in the browser: <c>chart</c>, an image; or <c>section</c>, a group of parts.</param>
public sealed record Scene(
    double Width,
    double Height,
    string Title,
    string Description,
    IReadOnlyList<SceneMark> Marks,
    IReadOnlyList<ScenePlot> Plots,
    string Kind = "chart"
);
