using Rinsewright.Contracts.Machines;
using Rinsewright.Engine.Machines;
using Rinsewright.Engine.Quantities;

namespace Rinsewright.Drawing.Section;

/// <summary>The layers of a section, from back to front. Only <see cref="Moving"/> and <see cref="GivingWay"/> change while a rack moves.</summary>
/// <param name="Back">Machine, water, what stands behind.</param>
/// <param name="Moving">Sprays and racks.</param>
/// <param name="Front">Doors in front of the cut, and the parts.</param>
/// <param name="GivingWay">Curtains, levers and doors.</param>
/// <param name="Over">Flows, badges, flags, zones.</param>
public sealed record SectionLayers(
    IReadOnlyList<SceneMark> Back,
    IReadOnlyList<SceneMark> Moving,
    IReadOnlyList<SceneMark> Front,
    IReadOnlyList<SceneMark> GivingWay,
    IReadOnlyList<SceneMark> Over
);

/// <summary>
/// A machine cut lengthwise, drawn from its description: the same drawing for screen, paper and command line. Length is to scale, height is a scheme.
/// </summary>
public sealed partial class SectionDrawing
{
    private const double RowHeight = 19;
    private const double StripHeight = 44;

    private readonly Machine machine;
    private readonly SectionOptions options;
    private readonly FlagRows flags;

    private SectionDrawing(Machine machine, SectionOptions options)
    {
        this.machine = machine;
        this.options = options;
        Plan = SectionPlanner.Of(machine, options.Levels);
        flags = FlagRows.For(Plan, options);
        Frame = new SectionFrame(Plan, options.Scale, options.Pad, flags.Above + 4);
        Height = Frame.MachineBottom + (options.ZoneStrip ? StripHeight : 0) + flags.Below + 8 + flags.KeyHeight;
    }

    /// <summary>Where things are.</summary>
    public SectionPlan Plan { get; }

    /// <summary>mm to px and back.</summary>
    public SectionFrame Frame { get; }

    /// <summary>Width, px.</summary>
    public double Width => Frame.Width;

    /// <summary>Height, px.</summary>
    public double Height { get; }

    /// <summary>What it shows.</summary>
    public string Title => options.Words.Say("section.title", ("machine", machine.Name ?? MachineWords.Kind(machine.Kind, options.Words)));

    /// <summary>Flags that found no room, by part id: the list of parts has them all.</summary>
    public IReadOnlyList<string> Waiting => flags.Waiting;

    /// <summary>Draws a machine.</summary>
    public static SectionDrawing Of(Machine machine, SectionOptions options) => new(machine, options);

    /// <summary>The finished drawing.</summary>
    public Scene Scene()
    {
        var layers = Layers();
        return new Scene(
            Width,
            Height,
            Title,
            SectionWords.Describe(Plan, options),
            [.. layers.Back, .. layers.Moving, .. layers.Front, .. layers.GivingWay, .. layers.Over],
            [],
            "section"
        );
    }

    /// <summary>The drawing by layers.</summary>
    public SectionLayers Layers()
    {
        List<double> racks = [options.RackAt ?? Plan.RackHome];
        racks.AddRange(options.Ahead.Select(a => racks[0] + a));
        return new SectionLayers(
            [.. Plan.Back.Select(Mark), .. Plan.Parts.Where(p => p.Behind).Select(p => Draw(p))],
            Moving(racks),
            [.. Plan.Front.Select(Mark), .. Plan.Parts.Where(p => !p.Behind && p.Motion == PartMotion.None).Select(p => Draw(p))],
            GivingWay(racks),
            Over()
        );
    }

    /// <summary>Sprays and racks at a place.</summary>
    public IReadOnlyList<SceneMark> Moving(IReadOnlyList<double> racks) =>
        [.. options.Running && !options.Print ? Sprays(racks) : [], .. Gushes(), .. racks.SelectMany((x, n) => Rack(x, n == 0))];

    /// <summary>Curtains, levers and doors with racks at a place.</summary>
    public IReadOnlyList<SceneMark> GivingWay(IReadOnlyList<double> racks) =>
        [.. Plan.Parts.Where(p => p.Motion != PartMotion.None).Select(p => Draw(Given(p, racks)))];

    private IReadOnlyList<SceneMark> Over() =>
        [
            new SceneLayer("letters", [.. Letters()]),
            .. Flows(),
            .. options.Print ? TankFigures() : [],
            .. flags.Draw(Frame, Height),
            .. ZoneStrip(),
            .. Badges(),
        ];

    private string Style(string name) => Frame.Small && SectionStyles.HasSmall(name) ? name + "-s" : name;

    private SceneTint Tint(string water) => WaterTint.At(TemperatureOf(water));

    // Set points stand in where no temperature was computed or read.
    private Temperature TemperatureOf(string water)
    {
        if (options.Water.TryGetValue(water, out var given))
        {
            return given;
        }

        var set = water == "booster" ? machine.Booster?.Thermostat : machine.Tanks.FirstOrDefault(t => t.Id == water)?.Thermostat;
        return set?.SetPoint.Value ?? machine.Supply.Water.Value;
    }

    private SceneMark Mark(PlanMark mark) =>
        mark switch
        {
            PlanShape { Pipe: > 0 } pipe => Stroke(pipe.Style, Frame.At(pipe.Outline), pipe.Pipe),
            PlanShape { Water: { } water } shape => new SceneCurve(shape.Style, Frame.At(shape.Outline), Tint(water)),
            PlanShape shape => new SceneCurve(Style(shape.Style), Frame.At(shape.Outline)),
            PlanLetters l => new SceneText(
                l.Style,
                Frame.X(l.X),
                Frame.Y(l.Y),
                l.Text,
                TextAnchor.Middle,
                Math.Round(l.Height * Frame.Scale, 1),
                Silent: true
            ),
            _ => throw new InvalidOperationException($"no way to draw a {mark.GetType().Name}"),
        };

    private SceneCurve Stroke(string style, Outline middle, double width)
    {
        var inner = Math.Max(width * Frame.Scale, 1.2);
        return new SceneCurve(style, middle, null, style == "po" ? inner + (Frame.Small ? 1.6 : 2.4) : inner);
    }
}
