namespace Rinsewright.Drawing.Section;

public sealed partial class SectionDrawing
{
    // Shares of a fan's reach at which its spray thins.
    private static readonly double[] Thins = [0, 0.34, 0.68, 1];

    private IEnumerable<SceneMark> Sprays(IReadOnlyList<double> racks)
    {
        var wet = Plan.Zones.Where(z => IsWet(z, racks)).Select(z => z.Id).ToHashSet(StringComparer.Ordinal);
        foreach (var group in Plan.Sprays.Where(s => wet.Contains(s.Zone)).GroupBy(s => (s.Zone, s.Water)))
        {
            var weak = Plan.Parts.Any(p => p.Zone == group.Key.Zone && IsCap(p) && StateOf(p) == PartState.Missing) ? 0.62 : 1;
            for (var n = 1; n < Thins.Length; n++)
            {
                var slices = group.Select(s => Slice(s.Outline, Thins[n - 1] * weak, Thins[n] * weak));
                yield return new SceneCurve($"spray spray{n}", Frame.At(Outline.Of(slices)), Tint(group.Key.Water));
            }
        }
    }

    // Pumps run while ware is in the tunnel, or while the rack stands in the chamber; the fresh rinse while its switch is made.
    private bool IsWet(PlanZone zone, IReadOnlyList<double> racks)
    {
        if (!Plan.Conveys)
        {
            // The pump's phase; the fresh rinse follows it.
            return !zone.Fresh && racks.Any(IsInside);
        }

        return zone is { SwitchFrom: { } from, SwitchTo: { } to }
            ? racks.Any(x => x + Plan.Rack > from && x < to)
            : racks.Any(x => x + Plan.Rack > 60 && x < Plan.Length);
    }

    private bool IsInside(double rack) => Math.Abs(rack - ((Plan.Length - Plan.Rack) / 2)) < 30;

    private static bool IsCap(SectionPart part) => part.Name.StartsWith("cap-", StringComparison.Ordinal);

    private static Outline Slice(PlanFan f, double from, double to)
    {
        double Half(double share) => (f.Narrow + ((f.Wide - f.Narrow) * share)) / 2;
        double At(double share) => f.Y + (f.Direction * f.Reach * share);
        return Outline.Polygon(
            (f.X - Half(from), At(from)),
            (f.X + Half(from), At(from)),
            (f.X + Half(to), At(to)),
            (f.X - Half(to), At(to))
        );
    }

    // An arm without its cap throws water out of its end.
    private IEnumerable<SceneMark> Gushes()
    {
        foreach (var cap in options.Running ? Plan.Parts.Where(p => IsCap(p) && StateOf(p) == PartState.Missing) : [])
        {
            var (x, y) = (cap.Handle.X - 12, cap.Handle.Y - 13);
            var jet = new OutlinePen().Move(x, y).Bend(x + 60, y - 14, x + 96, y + 40).Bend(x + 112, y + 70, x + 108, y + 102);
            jet.Bend(x + 84, y + 56, x + 56, y + 40).Bend(x + 30, y + 26, x, y + 26).Close();
            yield return new SceneCurve("gush", Frame.At(jet.Done()), Tint(WaterOf(cap.Zone)));
        }
    }

    private string WaterOf(string zone) => machine.Zones.FirstOrDefault(z => z.Id == zone)?.Tank ?? "booster";

    private IEnumerable<SceneMark> Rack(double x, bool lead)
    {
        if (x + Plan.Rack < Plan.Left || x > Plan.Right - 120)
        {
            yield break;
        }

        var clean = lead ? CleanedBy(x) : 1;
        var count = Plan.Glasses ? 5 : 9;
        List<Outline> ware = [],
            soil = [];
        for (var i = 0; i < count; i++)
        {
            if (Plan.Glasses)
            {
                var left = 26 + (i * 94);
                ware.Add(Glass(left));
                soil.Add(Outline.Disc(left + 30, -60, 4) + Outline.Disc(left + 46, -92, 3.4));
            }
            else
            {
                // A plate on edge, leaning back.
                Outline Lean(Outline o) => o.Turned(11, default).By(30 + (i * 49), -14);
                ware.Add(Lean(Plate.Value));
                soil.Add(
                    Lean(
                        Outline.Disc(15, -128 - (i % 3 * 18), 5)
                            + Outline.Disc(17, -96 - (i % 2 * 10), 4)
                            + Outline.Disc(9, -52 - (i % 4 * 6), 4)
                    )
                );
            }
        }

        List<SceneMark> marks = [new SceneCurve(Style("plate"), Put(Outline.Of(ware)))];
        if (clean < 0.98)
        {
            // Specks go one after the other as the rack crosses the wash.
            marks.Add(new SceneCurve("soil", Put(Outline.Of(soil.Take((int)Math.Ceiling(soil.Count * (1 - clean)))))));
        }

        if (!Plan.Belt)
        {
            marks.Add(new SceneCurve("rack-bar", Put(Outline.Box(0, -14, Plan.Rack, 14, 3) + Outline.Box(0, -82, Plan.Rack, 12, 3))));
            var step = (Plan.Rack - 16) / 10;
            marks.Add(
                new SceneCurve(
                    "rack-l",
                    Put(Outline.Of(Enumerable.Range(0, 11).Select(i => Outline.Wire((8 + (i * step), -70), (8 + (i * step), -14)))))
                )
            );
        }

        yield return new SceneLayer(lead ? "rack lead" : "rack", marks);

        Outline Put(Outline o) => Frame.At(o.By(x, 0));
    }

    private double CleanedBy(double x) =>
        Plan.Conveys ? Math.Clamp((x + (Plan.Rack / 2) - Plan.Zones[0].From) / (Plan.Zones[0].To - Plan.Zones[0].From), 0, 1)
        : IsInside(x) ? 0.7
        : x > (Plan.Length - Plan.Rack) / 2 ? 1
        : 0;

    private static readonly Lazy<Outline> Plate = new(() =>
        new OutlinePen()
            .Move(0, 0)
            .Curve(9, -26, 20, -62, 20, -113)
            .Curve(20, -164, 9, -200, 0, -226)
            .Line(8, -228)
            .Curve(18, -203, 29, -164, 29, -113)
            .Curve(29, -62, 17, -27, 8, -1)
            .Close()
            .Done() + Outline.Polygon((28, -146), (36, -144), (36, -82), (28, -80))
    );

    private static Outline Glass(double x) =>
        new OutlinePen()
            .Move(x + 8, -16)
            .Line(x + 66, -16)
            .Line(x + 57, -128)
            .Bend(x + 56, -136, x + 49, -136)
            .Line(x + 25, -136)
            .Bend(x + 18, -136, x + 17, -128)
            .Close()
            .Done() + Outline.Wire((x + 18, -112), (x + 56, -112));

    // Curtains bend, levers tip over, doors open unless the rack stands inside.
    private SectionPart Given(SectionPart part, IReadOnlyList<double> racks)
    {
        var x = part.Handle.X;
        switch (part.Motion)
        {
            case PartMotion.Curtain when part.Long && racks.Any(r => r + Plan.Rack > x && r < x + 10):
                var rack = racks.First(r => r + Plan.Rack > x && r < x + 10);
                var push = Math.Min(SectionCurtain.Give, rack + Plan.Rack - x);
                return part with { Body = [part.Body[0] with { Outline = SectionCurtain.Of(x, true, Plan.Levels, push) }] };
            case PartMotion.Lever when racks.Any(r => r + Plan.Rack > x && r < x):
                return Moved(part, new PartMove(0, 0, 38));
            case PartMotion.Door when StateOf(part) == PartState.Sound && !racks.Any(IsInside):
                return Moved(part, part.Move);
            default:
                return part;
        }
    }
}
