using Rinsewright.Engine.Machines;

namespace Rinsewright.Drawing.Section;

/// <summary>
/// Lays a machine out for drawing. Lengths along the machine are those of the description, to scale from the load-end face; heights are a scheme,
/// the same for every machine of a build, so that a technician finds the strainer where it always is.
/// </summary>
public sealed partial class SectionPlanner
{
    private readonly Machine machine;
    private readonly IReadOnlyDictionary<string, double> levels;
    private readonly SectionLevels y;
    private readonly double length;
    private readonly bool conveys;
    private readonly bool belt;
    private readonly bool low;
    private readonly bool rotors;
    private readonly double load;
    private readonly double unload;
    private readonly List<SectionPart> parts = [];
    private readonly List<PlanMark> back = [];
    private readonly List<PlanMark> front = [];
    private readonly List<PlanSpray> sprays = [];
    private readonly List<PlanFlow> flows = [];
    private readonly List<PlanTank> tanks = [];

    private SectionPlanner(Machine machine, IReadOnlyDictionary<string, double>? levels)
    {
        this.machine = machine;
        this.levels = levels ?? new Dictionary<string, double>(StringComparer.Ordinal);
        low = machine.Kind == MachineKind.Undercounter;
        belt = machine.Kind == MachineKind.Flight;
        conveys = machine.Conveyor is not null;
        rotors = machine.Zones.Any(z => z.Spray == SprayKind.Rotors);
        y = low ? SectionLevels.Low : SectionLevels.Tall;
        length = machine.Length.Value.InMillimetre;
        load = machine.LoadTable is { } before ? Mm(before) : 0;
        unload = machine.UnloadTable is { } after ? Mm(after) : 0;
    }

    private double Left => low ? -400 : -load - 40;

    private double Right => ColumnX + (low ? 70 : 65);

    // The supply comes down beside the clean table.
    private double ColumnX => low ? length + 520 : length + unload + 75;

    private double TankLeft => Mm(machine.Tanks[0].From);

    private double TankRight => Mm(machine.Tanks[^1].To);

    /// <summary>Plan of a machine.</summary>
    /// <param name="machine">Its description.</param>
    /// <param name="levels">Water of each tank as share of full, 0 to 1.04; where its float stops the fill if not given.</param>
    public static SectionPlan Of(Machine machine, IReadOnlyDictionary<string, double>? levels = null) =>
        new SectionPlanner(machine, levels).Build();

    private SectionPlan Build()
    {
        AddFloor();
        AddTanks();
        AddCabinet();
        AddZones();
        AddTravel();
        AddRinseLine();
        AddChemicals();
        return new SectionPlan
        {
            Levels = y,
            Left = Left,
            Right = Right,
            Length = length,
            Unload = unload,
            Mirrored = machine.RunsRightToLeft,
            Conveys = conveys,
            Belt = belt,
            Rack = Mm(machine.Ware.RackLength),
            Glasses = machine.Ware.Material == "glass",
            Parts = parts,
            Back = back,
            Front = front,
            Sprays = sprays,
            Flows = flows,
            Tanks = tanks,
            Zones =
            [
                .. machine.Zones.Select(z => new PlanZone(
                    z.Id,
                    Mm(z.From),
                    Mm(z.To),
                    z.Spray == SprayKind.Fresh,
                    z.SwitchFrom is { } from ? Mm(from) : null,
                    z.SwitchTo is { } to ? Mm(to) : null
                )),
            ],
        };
    }

    private static double Mm(Figure<Engine.Quantities.Length> figure) => figure.Value.InMillimetre;

    private static SectionPart Part(
        string id,
        string zone,
        (double X, double Y) handle,
        FlagSide side,
        int rank,
        params IReadOnlyList<PlanShape> body
    )
    {
        var at = new ScenePoint(handle.X, handle.Y);
        return new SectionPart
        {
            Id = id,
            Zone = zone,
            Handle = at,
            Pin = at,
            Side = side,
            Rank = rank,
            Body = body,
        };
    }

    private void Add(SectionPart part) => parts.Add(part);

    private void Fine(params IReadOnlyList<Outline> lines) => back.Add(Line("fine", lines));

    private void Heavy(params IReadOnlyList<Outline> lines) => back.Add(Line("heavy", lines));

    private void Sheet(params IReadOnlyList<Outline> areas) => back.Add(Line("sheet", areas));

    // A pipe in place: edge first, then its face, so that branches join.
    private void Pipes(double width, params IReadOnlyList<Outline> lines)
    {
        back.AddRange(lines.Select(l => new PlanShape("po", l, width)));
        back.AddRange(lines.Select(l => new PlanShape("pi", l, width)));
    }

    private static PlanShape Line(string style, params IReadOnlyList<Outline> lines) => new(style, Outline.Of(lines));

    private static PlanShape Body(Outline outline) => new("b", outline);

    private static PlanShape Pipe(Outline middle, double width) => new("pi", middle, width);
}
