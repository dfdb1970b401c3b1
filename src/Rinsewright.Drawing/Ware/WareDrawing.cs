namespace Rinsewright.Drawing.Ware;

/// <summary>
/// Small drawings of what is seen on ware, one for each picture of the knowledge: the piece in line, what is on it in its own tone. They stand beside their name and
/// are not read out. Colours are classes (<c>ware.css</c>), so that both themes and paper follow; form alone tells them apart in grey.
/// </summary>
public static class WareDrawing
{
    /// <summary>Width of every drawing, px.</summary>
    public const int Width = 96;

    /// <summary>Height of every drawing, px.</summary>
    public const int Height = 72;

    private const string Glass =
        "<path class=\"w-b\" d=\"M31 9h34l-4.5 50q-.4 5-5 5h-15q-4.6 0-5-5z\"/><path class=\"w-l\" d=\"M36.5 57h23\"/>";
    private const string Plate = "<circle class=\"w-b\" cx=\"48\" cy=\"36\" r=\"30\"/><circle class=\"w-l\" cx=\"48\" cy=\"36\" r=\"19\"/>";
    private const string Cup =
        "<path class=\"w-b\" d=\"M66 24h5q10 0 10 10t-12 11\"/><path class=\"w-b\" d=\"M22 14h46v24q0 20-18 20h-10q-18 0-18-20z\"/>";
    private const string Tub = "<path class=\"w-b\" d=\"M14 18h68l-7 38q-1 5-6 5h-42q-5 0-6-5z\"/><path class=\"w-l\" d=\"M11 18h74\"/>";
    private const string Fork = "<path class=\"w-b\" d=\"M45 66V39q-9-2-9-11V8h4v17h4V8h8v17h4V8h4v20q0 9-9 11v27q-3 3-6 0z\"/>";

    private static readonly Dictionary<string, string> Pieces = new(StringComparer.Ordinal)
    {
        ["wr-spots"] =
            Glass
            + Rings((39, 20, 3.2), (50, 17, 2.4), (57, 26, 3), (44, 31, 2.6), (53, 38, 3.4), (41, 43, 2.4), (47, 51, 2.8), (57, 50, 2)),
        ["wr-white-film"] = Glass + "<path class=\"w-h\" d=\"M32 14h32l-4 43q-.4 5-5 5h-14q-4.6 0-5-5z\"/>",
        ["wr-streaks"] =
            Glass
            + "<path class=\"w-k\" d=\"M39 11v22M45 11v36M50 11v15M56 11v30M60 11v17\"/>"
            + Dots("w-m", (39, 35, 1.8), (45, 49, 2), (50, 28, 1.6), (56, 43, 2), (60, 30, 1.6)),
        ["wr-etching"] =
            Glass
            + "<path class=\"w-i1\" d=\"M36 50q12-22 26-20\"/><path class=\"w-i2\" d=\"M37 43q11-18 26-18\"/><path class=\"w-i3\" d=\"M36 36q12-15 27-15\"/>"
            + "<path class=\"w-h\" d=\"M36 41l24-8-2 24q-.4 5-5 5h-10q-4.6 0-5-5z\"/>",
        ["wr-foam"] =
            "<path class=\"w-b\" d=\"M12 30v30q0 4 4 4h64q4 0 4-4V30\"/><path class=\"w-wet\" d=\"M14 42h68v18q0 2-2 2H16q-2 0-2-2z\"/>"
            + Bubbles(
                (20, 36, 7),
                (32, 32, 9),
                (46, 35, 8),
                (59, 30, 10),
                (73, 35, 8),
                (26, 22, 5),
                (41, 20, 6),
                (53, 17, 4),
                (67, 19, 6),
                (36, 12, 3)
            ),
        ["wr-grease"] =
            Plate
            + "<path class=\"w-s\" d=\"M24 40q10-14 22-6t24-8q2 12-8 18t-22 4-16-8z\"/>"
            + Rings((36, 28, 3), (58, 47, 3.6), (50, 24, 2.4), (43, 46, 2.6), (62, 36, 2.2)),
        ["wr-food-soil"] =
            Plate
            + "<path class=\"w-soil\" d=\"M38 24q6-4 11 0t4 8-9 6-10-5 4-9zM54 42q6-3 9 1t-2 8-9 1-2-7 4-3zM31 45q4-2 6 1t-2 5-6-2 2-4z\"/>",
        ["wr-grit"] =
            "<ellipse class=\"w-b\" cx=\"44\" cy=\"36\" rx=\"30\" ry=\"27\"/><path class=\"w-b\" d=\"M73 28q15-2 15 8t-15 8\"/><ellipse class=\"w-l\" cx=\"44\" cy=\"36\" rx=\"21\" ry=\"18\"/>"
            + Dots(
                "w-m",
                (36, 32, 1.8),
                (42, 41, 2.2),
                (50, 34, 1.6),
                (46, 27, 1.4),
                (53, 43, 1.8),
                (38, 45, 1.5),
                (33, 39, 1.3),
                (48, 48, 1.6),
                (57, 36, 1.4)
            ),
        ["wr-lipstick"] =
            Glass
            + "<path class=\"w-lip\" d=\"M36 10q6-3 11 1 5-4 13-1-2 10-12 11-10-1-12-11z\"/><path class=\"w-l\" d=\"M37 13q11 5 22 0\"/>",
        ["wr-tannin"] = Cup + "<path class=\"w-soil\" d=\"M24 26q21 6 42 0v4q-21 6-42 0zM24 36q21 6 42 0l-.5 4q-20 6-41 0z\"/>",
        ["wr-metal-marks"] = Plate + "<path class=\"w-k\" d=\"M33 28l13 7M37 45l20-10M45 22l-5 9M56 46l7-9M50 29l10 3M42 51l8-3\"/>",
        ["wr-aluminum"] =
            "<path class=\"w-dark\" d=\"M10 24h58v22q0 8-8 8H18q-8 0-8-8z\"/><path class=\"w-b\" d=\"M68 27h20v6H68z\"/><path class=\"w-l\" d=\"M7 24h64\"/><path class=\"w-sheen\" d=\"M18 31v13M26 30v8\"/>",
        ["wr-rust"] =
            Fork + Dots("w-warm", (39, 14, 1.8), (57, 19, 2), (46, 31, 2.4), (53, 29, 1.6), (48, 45, 2.2), (47, 54, 1.8), (49, 61, 1.6)),
        ["wr-residue"] =
            Plate
            + "<path class=\"w-k\" d=\"M28 30q7-6 13 0t13 0 13 0M30 38q7-6 12 0t12 0 12 0M33 46q6-5 10 0t10 0 10 0\"/>"
            + Rings((40, 22, 3), (60, 25, 2.4)),
        ["wr-starch-protein"] =
            Plate
            + "<path class=\"w-h\" d=\"M25 33q4-15 20-16t24 12-2 22-24 9-18-27z\"/><path class=\"w-l\" d=\"M32 35q4-10 14-10t16 9-2 14-16 5-12-18zM39 37q3-5 8-5t8 5-2 7-8 2-6-9z\"/>",
        ["wr-wet"] =
            "<path class=\"w-b\" d=\"M24 62q-2-34 10-40h28q12 6 10 40z\"/><path class=\"w-b\" d=\"M34 22v-6h28v6\"/><path class=\"w-wet\" d=\"M36 16q12-6 24 0v3H36z\"/>"
            + Drops((34, 34), (61, 38), (46, 46), (55, 53), (39, 55)),
        ["wr-chips"] =
            "<path class=\"w-b\" d=\"M48 6a30 30 0 0 1 25 14l-9 3 4 6 9-1a30 30 0 1 1-29-22z\"/><circle class=\"w-l\" cx=\"48\" cy=\"36\" r=\"19\"/>"
            + "<path class=\"w-k\" d=\"M67 27l-9 5-2 7-8 3-3 8\"/><path class=\"w-b\" d=\"M79 20l7-4 1 7z\"/>",
        ["wr-odor"] =
            "<ellipse class=\"w-b\" cx=\"48\" cy=\"56\" rx=\"34\" ry=\"9\"/><ellipse class=\"w-l\" cx=\"48\" cy=\"55\" rx=\"21\" ry=\"5\"/>"
            + "<path class=\"w-k\" d=\"M32 42c-7-7 7-11 0-18s4-9 2-14M48 42c-7-7 7-11 0-18s4-9 2-14M64 42c-7-7 7-11 0-18s4-9 2-14\"/>",
        ["wr-tint"] =
            Glass
            + "<path class=\"w-tint\" d=\"M33.5 21h29l-1.6 16H35z\"/><path class=\"w-b\" d=\"M40 37l12-17 14 8-12 17z\"/><path class=\"w-l\" d=\"M45 36l9-13M50 39l9-13\"/>",
        ["wr-plastic"] =
            Tub
            + "<path class=\"w-warm2\" d=\"M16 30h64l-5 26q-1 4-6 4H27q-5 0-6-4z\"/><path class=\"w-k\" d=\"M30 38l14 6M52 36l-7 15M58 48l12-8M36 54l8-5\"/>",
    };

    /// <summary>Pictures there is a drawing for.</summary>
    public static IReadOnlyCollection<string> Ids => Pieces.Keys;

    /// <summary>The drawing as SVG text; an empty one where there is none.</summary>
    public static string Svg(string picture) =>
        $"<svg class=\"ware-picture\" viewBox=\"0 0 {Width} {Height}\" aria-hidden=\"true\" focusable=\"false\">{Pieces.GetValueOrDefault(picture, "")}</svg>";

    private static string Rings(params (double X, double Y, double R)[] rings) => Circles("w-r", rings);

    private static string Bubbles(params (double X, double Y, double R)[] bubbles) => Circles("w-bub", bubbles);

    private static string Dots(string style, params (double X, double Y, double R)[] dots) => Circles(style, dots);

    private static string Circles(string style, (double X, double Y, double R)[] circles) =>
        string.Concat(
            circles.Select(c =>
                $"<circle class=\"{style}\" cx=\"{SvgWriter.Number(c.X)}\" cy=\"{SvgWriter.Number(c.Y)}\" r=\"{SvgWriter.Number(c.R)}\"/>"
            )
        );

    private static string Drops(params (double X, double Y)[] drops) =>
        string.Concat(
            drops.Select(d => $"<path class=\"w-wet\" d=\"M{SvgWriter.Number(d.X)} {SvgWriter.Number(d.Y - 4)}q4 5 0 7-4-2 0-7z\"/>")
        );
}
