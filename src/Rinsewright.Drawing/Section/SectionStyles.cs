namespace Rinsewright.Drawing.Section;

/// <summary>
/// How the section is inked. Three weights: heavy for metal cut through, mid for parts seen, fine for what is hidden, flows and leaders. A style
/// that ends in <c>-s</c> is its twin for drawings smaller than <see cref="SmallBelow"/>.
/// </summary>
public static class SectionStyles
{
    /// <summary>Scale below which lines are thinner, px/mm.</summary>
    public const double SmallBelow = 0.22;

    private const double Letter = 12;

    private static readonly SceneStyle[] Both =
    [
        new("heavy", Stroke: "cut", Width: 2.6, RoundCap: true),
        new("mid", Stroke: "line", Width: 1.4, RoundCap: true),
        new("fine", Stroke: "fine", Width: 0.8, RoundCap: true),
        new("sheet", Stroke: "line", Fill: "sheet", Width: 1.4),
        new("track", Stroke: "line", Fill: "part-2", Width: 1.4),
        new("surface", Stroke: "cut", Width: 0.8),
        new("b", Stroke: "line", Fill: "part", Width: 1.4),
        new("rubber", Stroke: "line", Fill: "part-2", Width: 1.4),
        new("cutfill", Stroke: "cut", Fill: "cut", Width: 1.4),
        new("worn", Stroke: "line", Fill: "part", Width: 1.4, Dash: [5, 2, 1.5, 2]),
        new("plate", Stroke: "ware-line", Fill: "ware", Width: 1.2),
        new("coil-o", Stroke: "line", Width: 4.4, RoundCap: true),
        new("coil-i", Stroke: "part", Width: 2, RoundCap: true),
    ];

    private static readonly SceneStyle[] One =
    [
        new("faint", Stroke: "fine", Width: 0.8, Opacity: 0.55),
        new("chamber", Fill: "chamber"),
        new("water", Fill: SceneStyles.Given, Opacity: 0.86),
        new("sheen", Fill: "white", Opacity: 0.1, PaperOpacity: 0),
        new("ripple", Stroke: "white", Width: 1.2, Opacity: 0.5, PaperOpacity: 0, RoundCap: true),
        new("spray1", Fill: SceneStyles.Given, Opacity: 0.9, PaperOpacity: 0),
        new("spray2", Fill: SceneStyles.Given, Opacity: 0.62, PaperOpacity: 0),
        new("spray3", Fill: SceneStyles.Given, Opacity: 0.38, PaperOpacity: 0),
        new("gush", Fill: SceneStyles.Given, Opacity: 0.85),
        new("flow", Stroke: "ink-2", Width: 1.2, RoundCap: true),
        new("flow-on", Stroke: "accent-text", Width: 2.2, RoundCap: true),
        new("phantom", Stroke: "fine", Width: 0.8, Dash: [9, 3, 2, 3]),
        new("hidden", Stroke: "fine", Width: 0.8, Dash: [5, 3]),
        new("tube", Stroke: "line", Width: 1.4, Dash: [1, 3.2], RoundCap: true),
        new("product", Fill: "part-2"),
        new("letter", Fill: "ink", Weight: 700),
        new("dial", Fill: "ink", Weight: 650),
        new("holes", Stroke: "fine", Width: 1.6, Dash: [0.1, 4.6], RoundCap: true),
        new("po", Stroke: "line", Width: 0),
        new("pi", Stroke: "part", Width: 0),
        new("soil", Fill: "soil"),
        new("rack-bar", Stroke: "line", Fill: "rack", Width: 1),
        new("rack-l", Stroke: "line", Width: 0.8, Opacity: 0.7),
        new("ghost", Stroke: "edge", Width: 1.4, Dash: [4, 3.4]),
        new("ghost-b", Stroke: "ink", Width: 1.6, Dash: [4, 3.4]),
        new("dirt", Fill: "ink", Opacity: 0.82),
        new("wear", Stroke: "ink", Width: 1.3, Opacity: 0.8),
        new("halo", Stroke: "accent", Width: 10, Opacity: 0.4, RoundCap: true),
        new("halo-p", Stroke: "accent", Width: 0, Opacity: 0.4),
        new("pole", Stroke: "fine", Width: 0.7, Opacity: 0.8),
        new("pole-on", Stroke: "accent-text", Width: 1.6),
        new("pin", Stroke: "fine", Fill: "paper", Width: 1.1),
        new("pin-on", Stroke: "paper", Fill: "accent", Width: 1.1),
        new("flagbg", Fill: "accent", PaperOpacity: 0),
        new("ftext", Fill: "ink-2", Size: Letter),
        new("fvalue", Fill: "ink", Size: Letter, Weight: 700),
        new("ftext-on", Fill: "on-accent", Size: Letter, Weight: 650),
        new("dim", Stroke: "fine", Width: 0.8),
        new("ko", Fill: "paper"),
        new("zname", Fill: "ink", Size: Letter, Weight: 650),
        new("zlen", Fill: "ink-3", Size: Letter, Weight: 500, Halo: 4),
        new("travel", Stroke: "ink-2", Width: 1.4, RoundCap: true),
        new("wtemp", Fill: "ink", Size: Letter, Weight: 700, Halo: 3),
        new("badge-bad", Stroke: "ink", Fill: "bad", Width: 1.4),
        new("badge-near", Stroke: "ink", Fill: "near", Width: 1.4),
        new("badge-line", Stroke: "badge-ink", Width: 2, RoundCap: true),
        new("badge-line-on", Stroke: "white", Width: 2, RoundCap: true),
        new("badge-dot", Fill: "badge-ink"),
        new("number", Stroke: "ink", Fill: "paper", Width: 1),
        new("good", Stroke: "shape-line", Fill: "good", Width: 1.2),
        new("near", Stroke: "shape-line", Fill: "near", Width: 1.2),
        new("bad", Stroke: "shape-line", Fill: "bad", Width: 1.2),
        new("none", Stroke: "none", Width: 2),
    ];

    private static readonly HashSet<string> WithSmall = [.. Both.Select(s => s.Name)];

    /// <summary>A style has a twin for small drawings.</summary>
    public static bool HasSmall(string name) => WithSmall.Contains(name);

    /// <summary>Every style.</summary>
    public static IReadOnlyList<SceneStyle> All { get; } =
    [.. Both, .. Both.Select(s => s with { Name = s.Name + "-s", Width = Math.Round(s.Width * 0.73, 2) }), .. One];
}
