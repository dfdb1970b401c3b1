using System.Globalization;
using System.Text;

namespace Rinsewright.Drawing;

/// <summary>How one style name is inked. Colours are names of the browser's colour tokens, so that both themes follow them.</summary>
/// <param name="Name">Style name, the class in the browser.</param>
/// <param name="Stroke">Token of the line; null for none.</param>
/// <param name="Fill">Token of the area or of the letters; null for none.</param>
/// <param name="Width">Line width, px.</param>
/// <param name="Dash">Dash and gap, px; empty for a full line.</param>
/// <param name="Opacity">0 to 1.</param>
/// <param name="Size">Letter size, px; null for what is not text.</param>
/// <param name="Weight">Letter weight, 400 to 700.</param>
/// <param name="Halo">Width of the ground-coloured edge around letters, px.</param>
/// <param name="PaperOpacity">Opacity on paper; <see cref="Opacity"/> where null, not drawn where 0.</param>
/// <param name="RoundCap">Lines end in half circles: dots where a dash is short.</param>
public sealed record SceneStyle(
    string Name,
    string? Stroke = null,
    string? Fill = null,
    double Width = 1,
    IReadOnlyList<double>? Dash = null,
    double Opacity = 1,
    double? Size = null,
    int Weight = 500,
    double Halo = 0,
    double? PaperOpacity = null,
    bool RoundCap = false
);

/// <summary>The one table of styles: the browser's rules and the colours of paper both come from it.</summary>
public static class SceneStyles
{
    private const double Letter = 12;

    /// <summary>Every style.</summary>
    public static IReadOnlyList<SceneStyle> All { get; } =
    [
        new("zoneband", Fill: "sunk", Opacity: 0.6),
        new("passband", Fill: "sunk"),
        new("grid", Stroke: "hair"),
        new("base", Stroke: "edge"),
        new("tick", Stroke: "edge"),
        new("lim", Stroke: "ink", Width: 1.6, Dash: [7, 4]),
        new("limb", Stroke: "ink", Width: 2.6),
        new("read", Stroke: "ink", Width: 2.4),
        new("trace", Stroke: "ink", Width: 1.4),
        new("model", Stroke: "accent-text", Width: 1.4, Dash: [2, 3]),
        new("doseA", Fill: "accent", Opacity: 0.16),
        new("brk", Stroke: "ink", Width: 1.4),
        new("hole", Stroke: "fine", Width: 1, Dash: [3, 3]),
        new("suspect", Stroke: "fine", Width: 0.8),
        new("now", Stroke: "accent", Width: 3),
        new("ax", Fill: "ink-3", Size: Letter, Weight: 500),
        new("axb", Fill: "ink", Size: Letter, Weight: 700),
        new("axt", Fill: "ink-2", Size: Letter, Weight: 600),
        new("tx", Fill: "ink-3", Size: Letter, Weight: 500),
        new("zn", Fill: "ink-2", Size: Letter, Weight: 600),
        new("liml", Fill: "ink", Size: Letter, Weight: 600, Halo: 3),
        new("val", Fill: "ink", Size: Letter, Weight: 700, Halo: 3),
        new("note", Fill: "ink-2", Size: Letter, Weight: 500, Halo: 3),
        new("sh", Stroke: "shape-line", Width: 1.2),
        new("good", Stroke: "shape-line", Fill: "good", Width: 1.2),
        new("near", Stroke: "shape-line", Fill: "near", Width: 1.2),
        new("bad", Stroke: "shape-line", Fill: "bad", Width: 1.2),
        new("none", Stroke: "none", Width: 2),
        new("hollow", Stroke: "shape-line", Fill: "paper", Width: 1.6),
        new("dot", Fill: "ink"),
    ];

    private static readonly Dictionary<string, SceneStyle> ByName = All.Concat(Section.SectionStyles.All)
        .DistinctBy(s => s.Name, StringComparer.Ordinal)
        .ToDictionary(s => s.Name, StringComparer.Ordinal);

    // Paper: white ground, black ink, greys that stay apart on a photocopy. Shapes are told by form, so that their fill may be grey or black.
    private static readonly Dictionary<string, uint> Paper = new(StringComparer.Ordinal)
    {
        ["ink"] = 0x000000,
        ["ink-2"] = 0x000000,
        ["ink-3"] = 0x222222,
        ["hair"] = 0xC4C4C4,
        ["edge"] = 0x555555,
        ["fine"] = 0x444444,
        ["sunk"] = 0xE6E6E6,
        ["paper"] = 0xFFFFFF,
        ["accent"] = 0x666666,
        ["accent-text"] = 0x000000,
        ["shape-line"] = 0x000000,
        ["good"] = 0xFFFFFF,
        ["near"] = 0xBBBBBB,
        ["bad"] = 0x000000,
        ["none"] = 0x555555,
        ["white"] = 0xFFFFFF,
        ["on-accent"] = 0xFFFFFF,
        ["cut"] = 0x000000,
        ["line"] = 0x000000,
        ["chamber"] = 0xFFFFFF,
        ["sheet"] = 0xEEEEEE,
        ["part"] = 0xFFFFFF,
        ["part-2"] = 0xD0D0D0,
        ["ware"] = 0xFFFFFF,
        ["ware-line"] = 0x333333,
        ["rack"] = 0xCCCCCC,
        ["soil"] = 0x444444,
        ["badge-ink"] = 0x000000,
    };

    private static readonly (string Token, string Light, string Dark)[] Screen =
    [
        ("ink", "#1d2730", "#eff0ec"),
        ("ink-2", "#46525b", "#b7c0c5"),
        ("ink-3", "#5a646b", "#98a3a9"),
        ("hair", "#d5cfc2", "#323b42"),
        ("edge", "#7b8387", "#75818a"),
        ("fine", "#5e6971", "#7d8992"),
        ("sunk", "#ebe7de", "#0e1215"),
        ("paper", "#fdfcf9", "#1c2227"),
        ("accent", "#2e7d6b", "#74c7b2"),
        ("accent-text", "#2a7464", "#74c7b2"),
        ("shape-line", "#1d2730", "#eff0ec"),
        ("good", "#009E73", "#009E73"),
        ("near", "#E69F00", "#E69F00"),
        ("bad", "#D55E00", "#D55E00"),
        ("none", "#7b8387", "#98a3a9"),
    ];

    private static readonly (string Token, string Light, string Dark)[] SectionScreen =
    [
        ("on-accent", "#ffffff", "#0e1b18"),
        ("cut", "#2b3640", "#d6dce0"),
        ("line", "#37434d", "#a9b4bb"),
        ("chamber", "#efece5", "#191f24"),
        ("sheet", "#e1dfd9", "#283037"),
        ("part", "#fbfaf7", "#333d45"),
        ("part-2", "#d3d3cf", "#4a565f"),
        ("ware", "#fff8ec", "#f3e3d3"),
        ("ware-line", "#96584a", "#d79a86"),
        ("rack", "#b9a99a", "#8a7a6c"),
    ];

    // The same in both themes.
    private static readonly Dictionary<string, string> Fixed = new(StringComparer.Ordinal)
    {
        ["white"] = "#fff",
        ["soil"] = "#6b4a2f",
        ["badge-ink"] = "#14181c",
    };

    /// <summary>Stands for a fill that the mark itself gives.</summary>
    public const string Given = "given";

    /// <summary>Styles of a kind of drawing.</summary>
    public static IReadOnlyList<SceneStyle> Of(string kind) => kind == "chart" ? All : Section.SectionStyles.All;

    /// <summary>Style that decides for a mark: the last of its names.</summary>
    /// <exception cref="ArgumentException">The table has no such style.</exception>
    public static SceneStyle Find(string names)
    {
        var name = names[(names.LastIndexOf(' ') + 1)..];
        return ByName.TryGetValue(name, out var style) ? style : throw new ArgumentException($"No drawing style '{name}'.", nameof(names));
    }

    /// <summary>Colour of a token on paper, 0xRRGGBB.</summary>
    public static uint OnPaper(string token) => Paper[token];

    /// <summary>Style name of a status shape.</summary>
    public static string NameOf(StatusShape shape) =>
        shape switch
        {
            StatusShape.Circle => "good",
            StatusShape.Triangle => "near",
            StatusShape.Square => "bad",
            _ => "none",
        };

    /// <summary>The rules for the browser, by the colour tokens (<c>--ink</c> and so on) of the page.</summary>
    /// <param name="scope">Selector they are kept inside.</param>
    /// <param name="styles">Styles to write; null: those of charts.</param>
    public static string Css(string scope = ".chart", IReadOnlyList<SceneStyle>? styles = null)
    {
        var css = new StringBuilder();
        css.Append(
            CultureInfo.InvariantCulture,
            $"{scope} text {{ font-family: var(--face, system-ui, sans-serif); font-variant-numeric: tabular-nums; }}\n"
        );
        foreach (var s in styles ?? All)
        {
            css.Append(
                CultureInfo.InvariantCulture,
                $"{scope} .{s.Name} {{{(s.Fill == Given ? "" : $" fill: {Token(s.Fill)};")} stroke: {(s.Halo > 0 ? "var(--paper)" : Token(s.Stroke))};"
            );
            css.Append(
                s.Halo > 0 ? $" stroke-width: {Px(s.Halo)}; paint-order: stroke; stroke-linejoin: round;"
                : s.Stroke is null ? ""
                : $"{(s.Width > 0 ? $" stroke-width: {Px(s.Width)};" : "")} stroke-linejoin: round;"
            );
            css.Append(s.RoundCap ? " stroke-linecap: round;" : "");
            css.Append(s.Dash is { Count: > 0 } d ? $" stroke-dasharray: {string.Join(' ', d.Select(n => SvgWriter.Number(n)))};" : "");
            css.Append(s.Opacity < 1 ? $" opacity: {SvgWriter.Number(s.Opacity)};" : "");
            css.Append(
                s.Size is { } size ? $" font-size: {Px(size)}; font-weight: {s.Weight};"
                : s.Weight != 500 ? $" font-weight: {s.Weight};"
                : ""
            );
            css.Append(" }\n");
        }

        return css.ToString();
    }

    /// <summary>Both themes' colours as rules, for a drawing that stands alone.</summary>
    /// <param name="scope">Selector they are kept inside.</param>
    /// <param name="kind">Kind of the drawing.</param>
    public static string Tokens(string scope, string kind = "chart")
    {
        var tokens = kind == "chart" ? Screen : [.. Screen, .. SectionScreen];
        var light = string.Join(' ', tokens.Select(t => $"--{t.Token}: {t.Light};"));
        var dark = string.Join(' ', tokens.Select(t => $"--{t.Token}: {t.Dark};"));
        return $"{scope} {{ {light} --face: {Face}; background: var(--paper); }}\n@media (prefers-color-scheme: dark) {{ {scope} {{ {dark} }} }}\n"
            + "@media print { "
            + scope
            + " { --ink: #000; --ink-2: #000; --ink-3: #222; --paper: #fff; --sunk: #eee; } }\n";
    }

    private const string Face =
        "ui-sans-serif, -apple-system, 'Segoe UI', Roboto, 'Noto Sans', 'Liberation Sans', Arial, system-ui, sans-serif";

    private static string Px(double value) => SvgWriter.Number(value) + "px";

    private static string Token(string? token) =>
        token is null ? "none"
        : Fixed.TryGetValue(token, out var colour) ? colour
        : $"var(--{token})";
}
