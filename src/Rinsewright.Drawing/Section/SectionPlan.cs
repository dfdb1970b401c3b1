namespace Rinsewright.Drawing.Section;

/// <summary>Side on which a part's flag stands.</summary>
public enum FlagSide
{
    /// <summary>Above the machine.</summary>
    Top,

    /// <summary>Below it.</summary>
    Bottom,

    /// <summary>No flag: what is only scenery to a reader.</summary>
    None,
}

/// <summary>State of a part as it was found.</summary>
public enum PartState
{
    /// <summary>As it should be.</summary>
    Sound,

    /// <summary>Dirty, limed, plugged.</summary>
    Dirty,

    /// <summary>Worn, torn, bent.</summary>
    Worn,

    /// <summary>Not there.</summary>
    Missing,

    /// <summary>There, but not where it belongs.</summary>
    Misplaced,

    /// <summary>Open that should be shut.</summary>
    Open,
}

/// <summary>Something drawn in mm of the machine: x from the load-end face, y down from the track.</summary>
/// <param name="Style">Style name of <see cref="SectionStyles"/>.</param>
public abstract record PlanMark(string Style);

/// <summary>Lines or an area.</summary>
/// <param name="Style">Style name.</param>
/// <param name="Outline">Geometry, mm.</param>
/// <param name="Pipe">Where it is the middle line of a pipe: width of the pipe, mm; else 0.</param>
/// <param name="Water">Whose temperature tints it: a tank's id, <c>booster</c> or <c>supply</c>; null for none.</param>
public sealed record PlanShape(string Style, Outline Outline, double Pipe = 0, string? Water = null) : PlanMark(Style);

/// <summary>Letters that grow with the drawing: a dial's unit, a container's letter.</summary>
public sealed record PlanLetters(string Style, double X, double Y, string Text, double Height) : PlanMark(Style);

/// <summary>Spray of a zone from one jet.</summary>
/// <param name="Zone">Zone.</param>
/// <param name="Outline">Where it goes, mm, narrow end first.</param>
/// <param name="Water">Whose temperature tints it.</param>
public sealed record PlanSpray(string Zone, PlanFan Outline, string Water);

/// <summary>A fan of spray: narrow at the jet.</summary>
public readonly record struct PlanFan(double X, double Y, double Direction, double Reach, double Narrow, double Wide);

/// <summary>Water or steam on its way, as an arrow; its figure is shown on demand.</summary>
/// <param name="Id">What flows: <c>supply</c>, <c>fill</c>, <c>final-rinse</c>, <c>spill@…</c>, <c>drain</c>, <c>vent@…</c>, <c>floor</c>.</param>
/// <param name="Path">Middle line, mm, in its direction.</param>
/// <param name="Pin">Where its flag stands.</param>
/// <param name="Side">Side of the flag.</param>
/// <param name="Always">Drawn without a figure too.</param>
public sealed record PlanFlow(string Id, Outline Path, ScenePoint Pin, FlagSide Side, bool Always = true);

/// <summary>How a part gives way to a rack.</summary>
public enum PartMotion
{
    /// <summary>Stands still.</summary>
    None,

    /// <summary>Curtain: its foot bends along the travel.</summary>
    Curtain,

    /// <summary>Lever of a rack switch: tips over.</summary>
    Lever,

    /// <summary>Door of a chamber: open until the rack stands inside.</summary>
    Door,
}

/// <summary>How a part lies when misplaced or open: moved, then turned about its hinge.</summary>
/// <param name="X">Moved along the machine, mm.</param>
/// <param name="Y">Moved down, mm.</param>
/// <param name="Degrees">Turned clockwise.</param>
public readonly record struct PartMove(double X, double Y, double Degrees);

/// <summary>One part of the machine. Everything is drawn from its outlines, so that every state comes by itself.</summary>
public sealed record SectionPart
{
    /// <summary>Name and place, for example <c>cap-lower@wash</c>.</summary>
    public required string Id { get; init; }

    /// <summary>Name, key of its words: <c>section.part.</c> and <c>section.short.</c>.</summary>
    public string Name => Id.Split('@')[0];

    /// <summary>Place; empty where the machine has one of its kind.</summary>
    public string Place => Id.Contains('@', StringComparison.Ordinal) ? Id.Split('@')[1] : "";

    /// <summary>Id of the part in what the trade knows of machines (knowledge/parts.yaml): the drawing has two of some, and draws what a part hangs on.</summary>
    public string KnownAs =>
        Name switch
        {
            "cap-upper" or "cap-lower" => "arm-end-cap",
            "prewash-arm-upper" or "prewash-arm-lower" => "prewash-arms",
            "power-rinse-arm-upper" or "power-rinse-arm-lower" => "power-rinse-arms",
            "detergent" => "detergent-hopper",
            "rinse-additive" => "rinse-additive-pickup",
            "sanitizer" => "sanitizer-squeeze-tube",
            var name => name,
        };

    /// <summary>Zone it belongs to.</summary>
    public required string Zone { get; init; }

    /// <summary>Where a finger aims, mm.</summary>
    public required ScenePoint Handle { get; init; }

    /// <summary>Where its flag's pole ends, mm.</summary>
    public required ScenePoint Pin { get; init; }

    /// <summary>Side of its flag.</summary>
    public required FlagSide Side { get; init; }

    /// <summary>Order of its flag: the lower, the sooner it finds room.</summary>
    public int Rank { get; init; } = 5;

    /// <summary>Outlines.</summary>
    public required IReadOnlyList<PlanShape> Body { get; init; }

    /// <summary>What is drawn on it: nothing of it tells a state.</summary>
    public IReadOnlyList<PlanMark> Detail { get; init; } = [];

    /// <summary>How it lies when misplaced or open.</summary>
    public PartMove Move { get; init; } = new(0, 24, 10);

    /// <summary>Point it turns about; its handle where null.</summary>
    public ScenePoint? Hinge { get; init; }

    /// <summary>Drawn behind the water.</summary>
    public bool Behind { get; init; }

    /// <summary>How it gives way to a rack.</summary>
    public PartMotion Motion { get; init; }

    /// <summary>Curtain: long; else false.</summary>
    public bool Long { get; init; }
}

/// <summary>A stretch named under the drawing.</summary>
/// <param name="Id">Zone.</param>
/// <param name="From">Start, mm.</param>
/// <param name="To">End, mm.</param>
/// <param name="Fresh">Fed with fresh water.</param>
/// <param name="SwitchFrom">Stretch of its rack switch, mm; null where none.</param>
/// <param name="SwitchTo">Its end.</param>
public sealed record PlanZone(string Id, double From, double To, bool Fresh, double? SwitchFrom, double? SwitchTo);

/// <summary>A tank's water surface and where its figure is written.</summary>
public sealed record PlanTank(string Id, double From, double To, double Surface, double Floor);

/// <summary>A machine as it is to be drawn: all geometry, no words, no colours, no scale.</summary>
public sealed record SectionPlan
{
    /// <summary>Levels it is drawn on.</summary>
    public required SectionLevels Levels { get; init; }

    /// <summary>Left edge, mm.</summary>
    public required double Left { get; init; }

    /// <summary>Right edge, mm.</summary>
    public required double Right { get; init; }

    /// <summary>Length of the machine, mm.</summary>
    public required double Length { get; init; }

    /// <summary>Length of the table at the unload end, mm.</summary>
    public required double Unload { get; init; }

    /// <summary>Ware travels from right to left on the drawing.</summary>
    public required bool Mirrored { get; init; }

    /// <summary>Ware rides through on a conveyor.</summary>
    public required bool Conveys { get; init; }

    /// <summary>Ware rides on a belt without racks.</summary>
    public required bool Belt { get; init; }

    /// <summary>Length of a rack, mm.</summary>
    public required double Rack { get; init; }

    /// <summary>Glasses rather than plates.</summary>
    public required bool Glasses { get; init; }

    /// <summary>Parts, from back to front.</summary>
    public required IReadOnlyList<SectionPart> Parts { get; init; }

    /// <summary>Scenery behind the parts.</summary>
    public required IReadOnlyList<PlanMark> Back { get; init; }

    /// <summary>Scenery in front of the rack.</summary>
    public required IReadOnlyList<PlanMark> Front { get; init; }

    /// <summary>Sprays.</summary>
    public required IReadOnlyList<PlanSpray> Sprays { get; init; }

    /// <summary>Flows.</summary>
    public required IReadOnlyList<PlanFlow> Flows { get; init; }

    /// <summary>Spray zones with their stretches.</summary>
    public required IReadOnlyList<PlanZone> Zones { get; init; }

    /// <summary>Tanks.</summary>
    public required IReadOnlyList<PlanTank> Tanks { get; init; }

    /// <summary>Upper edge, mm.</summary>
    public double Top => Levels.Top;

    /// <summary>Lower edge, mm.</summary>
    public double Bottom => Levels.Floor + 34;

    /// <summary>Least distance between two handles, mm.</summary>
    public double LeastDistance()
    {
        var least = double.PositiveInfinity;
        var handles = Parts.Where(p => p.Side != FlagSide.None).Select(p => p.Handle).ToList();
        for (var i = 0; i < handles.Count; i++)
        {
            for (var k = i + 1; k < handles.Count; k++)
            {
                least = Math.Min(least, Math.Sqrt(Square(handles[i].X - handles[k].X) + Square(handles[i].Y - handles[k].Y)));
            }
        }

        return least;
    }

    /// <summary>Place of the rack's load-side edge with the rack in the middle of the first zone, or of the chamber, mm.</summary>
    public double RackHome => ((Zones[0].From + Zones[0].To) / 2) - (Rack / 2);

    /// <summary>Scale at which a finger tells every part from its neighbour: no two handles nearer than 44 px, never below 0.325 px per mm.</summary>
    public double ReadingScale => Math.Max(0.325, Math.Ceiling(1000 * 44 / LeastDistance()) / 1000);

    private static double Square(double value) => value * value;
}

/// <summary>Heights of the scheme, mm below (+) and above (-) the track on which a rack rides.</summary>
public sealed record SectionLevels(
    double Top,
    double Vent,
    double Pipe,
    double Hood,
    double Upper,
    double UpperRinse,
    double Ware,
    double Lower,
    double LowerRinse,
    double TrayHigh,
    double TrayLow,
    double Water,
    double TankFloor,
    double Pump,
    double Drain,
    double Floor
)
{
    /// <summary>Machines one stands at.</summary>
    public static SectionLevels Tall { get; } = new(-720, -660, -570, -500, -400, -345, -245, 92, 60, 148, 196, 232, 405, 490, 575, 640);

    /// <summary>Machines under a counter.</summary>
    public static SectionLevels Low { get; } = new(-480, -400, -395, -330, -282, -238, -150, 92, 54, 128, 150, 178, 292, 372, 425, 470);
}
