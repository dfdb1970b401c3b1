using Rinsewright.Engine.Machines;

namespace Rinsewright.Drawing.Section;

public sealed partial class SectionPlanner
{
    private const int Jets = 6;

    // Share of the half length of a turning arm at which its jets stand.
    private static readonly double[] RotorJets = [-0.8, -0.55, -0.3, 0.3, 0.55, 0.8];

    private string RinseWater => machine.Booster is null ? "supply" : "booster";

    private void AddZones()
    {
        foreach (var z in machine.Zones)
        {
            switch (z.Spray)
            {
                case SprayKind.Arms:
                    AddArms(z.Id, z.Tank!, Mm(z.From), Mm(z.To));
                    break;
                case SprayKind.Rotors:
                    AddRotors(z.Id, z.Tank!, Mm(z.From), Mm(z.To));
                    break;
                default:
                    AddRinseArms(z.Id, Mm(z.From), Mm(z.To));
                    break;
            }
        }
    }

    private static FlagSide SideOf(bool upper) => upper ? FlagSide.Top : FlagSide.Bottom;

    private void AddArms(string zone, string tank, double from, double to)
    {
        var w = to - from;
        double[] xs = [.. Enumerable.Range(0, Jets).Select(i => from + 54 + (i * (w - 100) / (Jets - 1)))];
        foreach (var upper in (ReadOnlySpan<bool>)[true, false])
        {
            var (name, ym, d) = upper ? ("upper", y.Upper, 1) : ("lower", y.Lower, -1);
            Add(
                Part(
                    $"{zone}-arm-{name}@{zone}",
                    zone,
                    (from + (w * (upper ? 0.4 : 0.66)), ym),
                    SideOf(upper),
                    1,
                    [Body(Outline.Box(from, ym - 17, w - 8, 34, 12)), .. xs.Select(x => Jet(x, ym + (d * 16), d, 9, 5, 12))]
                ) with
                {
                    Move = new PartMove(0, d * 22, d * 4),
                }
            );
            Add(
                Part(
                    $"cap-{name}@{zone}",
                    zone,
                    upper ? (to - 2, ym) : (to - 15, ym - 8),
                    SideOf(upper),
                    0,
                    Body(Outline.Box(to - 14, ym - 23, 30, 46, 6))
                ) with
                {
                    Pin = new ScenePoint(to - 2, upper ? ym : ym + 10),
                    Detail = [Line("fine", [.. ((double[])[-6, 1, 8]).Select(i => Outline.Wire((to + i, ym - 14), (to + i, ym + 14)))])],
                    Move = new PartMove(26, 30, 30),
                }
            );
            foreach (var x in xs)
            {
                sprays.Add(new PlanSpray(zone, new PlanFan(x, ym + (d * 28), d, upper ? 132 : 72, 8, 34), tank));
            }
        }
    }

    private void AddRotors(string zone, string tank, double from, double to)
    {
        var c = (from + to) / 2;
        var half = (to - from) * 0.44;
        foreach (var upper in (ReadOnlySpan<bool>)[true, false])
        {
            var (name, ym, d) = upper ? ("upper", y.Upper, 1) : ("lower", y.Lower, -1);
            Add(
                Part($"{zone}-arm-{name}@{zone}", zone, (c - (half * 0.9), ym), SideOf(upper), 1, Body(Taper(c, half, ym))) with
                {
                    Detail =
                    [
                        Line(
                            "fine",
                            [
                                .. RotorJets.Select(k =>
                                    Outline.Wire((c + (k * half) - 7, ym + (d * 12)), (c + (k * half) + 7, ym + (d * 12)))
                                ),
                            ]
                        ),
                    ],
                    Move = new PartMove(0, d * 18, d * 7),
                }
            );
            Add(
                Part(
                    $"cap-{name}@{zone}",
                    zone,
                    (c + half + 14, ym - (low ? 20 : 26)),
                    SideOf(upper),
                    0,
                    Body(Outline.Box(c + half - 8, ym - 18, 22, 36, 5))
                ) with
                {
                    Pin = new ScenePoint(c + half + 3, ym - (upper ? 10 : -10)),
                    Move = new PartMove(16, 30, 30),
                }
            );
            foreach (var k in RotorJets)
            {
                var reach = upper ? (low ? 110 : 140) : 70;
                sprays.Add(new PlanSpray(zone, new PlanFan(c + (k * half), ym + (d * 12), d, reach, 6, 26), tank));
            }
        }
    }

    private void AddRinseArms(string zone, double from, double to)
    {
        var c = (from + to) / 2;
        foreach (var upper in (ReadOnlySpan<bool>)[true, false])
        {
            var (name, ym, yw, d) = upper ? ("upper", y.UpperRinse, y.Upper, 1) : ("lower", y.LowerRinse, y.Lower, -1);
            var half = rotors ? (to - from) * 0.378 : (to - from) / 2;
            double[] xs = rotors ? [.. RotorJets.Select(k => c + ((k + 0.06) * half * 1.05))] : [from + 26, c, to - 26];
            List<PlanShape> body =
            [
                Body(Outline.Box(c - half, ym - (rotors ? 8 : 10), 2 * half, rotors ? 16 : 20, 8)),
                .. xs.Select(x => Jet(x, ym + (d * (rotors ? 7 : 9)), d, rotors ? 5 : 7, rotors ? 3 : 4, rotors ? 6 : 9)),
            ];
            if (rotors)
            {
                body.Add(Body(Outline.Box(c - 17, Math.Min(yw, ym) - 6, 34, Math.Abs(yw - ym) + 12, 4)));
            }

            var handle = rotors ? (c + (half * (low ? 0.41 : 0.3)), ym) : (c, ym);
            Add(
                Part($"rinse-arm-{name}@{zone}", zone, handle, SideOf(upper), rotors ? 2 : 1, body) with
                {
                    Move = new PartMove(0, d * 15, d * (rotors ? 8 : 6)),
                }
            );
            var reach = rotors ? (upper ? 100 : 46) : (upper ? 92 : 44);
            foreach (var x in xs)
            {
                sprays.Add(new PlanSpray(zone, new PlanFan(x, ym + (d * (rotors ? 13 : 18)), d, reach, 3, upper ? 58 : 34), RinseWater));
            }
        }
    }

    private static PlanShape Jet(double x, double top, int d, double wide, double narrow, double reach) =>
        Body(Outline.Polygon((x - wide, top), (x + wide, top), (x + narrow, top + (d * reach)), (x - narrow, top + (d * reach))));

    private static Outline Taper(double c, double half, double ym)
    {
        const double hub = 18;
        const double tip = 11;
        return Outline.Polygon(
            (c - half, ym - tip),
            (c - 26, ym - hub),
            (c + 26, ym - hub),
            (c + half, ym - tip),
            (c + half, ym + tip),
            (c + 26, ym + hub),
            (c - 26, ym + hub),
            (c - half, ym + tip)
        );
    }

    // Rack switches, drive, belt.
    private void AddTravel()
    {
        if (!conveys)
        {
            return;
        }

        if (!belt)
        {
            AddSwitch("wash-switch", machine.Zones[0].Id, Math.Max(102, Math.Min(116, Mm(machine.Zones[0].From) - 14)));
            Fine(Outline.Wire((-20, 26), (length + 20, 26)));
            Fine([.. Chevrons(50, length - 20, 26)]);
        }
        else
        {
            AddBelt();
        }

        if (machine.Zones.FirstOrDefault(z => z.SwitchFrom is not null) is { SwitchFrom: { } at } rinse)
        {
            AddSwitch("rinse-switch", rinse.Id, Mm(at));
        }

        var limit = length + unload - 36;
        Add(
            Part(
                "table-limit-switch",
                "unload-table",
                (limit, 22),
                FlagSide.Bottom,
                8,
                Body(Outline.Box(limit - 14, 14, 30, 26, 4)),
                Pipe(Outline.Wire((limit, 16), (limit, -44)), 6)
            )
        );
        Add(
            Part(
                "conveyor-drive",
                "drive",
                (length + 62, 82),
                FlagSide.Bottom,
                8,
                Body(Outline.Box(length + 26, 48, 74, 72, 8)),
                Body(Outline.Disc(length + 30, 84, 22))
            ) with
            {
                Detail = [Line("fine", Outline.Wire((length + 30, 84), (length + 6, 26)), Outline.Disc(length + 30, 84, 7))],
            }
        );
    }

    private void AddSwitch(string id, string zone, double x) =>
        Add(
            Part(
                id,
                zone,
                (x, -42),
                FlagSide.Bottom,
                4,
                Body(Outline.Box(x - 17, 34, 34, 30, 4)),
                Pipe(Outline.Wire((x, 38), (x, -42)), 7)
            ) with
            {
                Motion = PartMotion.Lever,
                Hinge = new ScenePoint(x, 40),
                Move = new PartMove(-34, 6, -34),
            }
        );

    // Pegged links above, the way back below, a wheel at either end.
    private void AddBelt()
    {
        var (from, to) = (-load + 40, length + unload - 60);
        List<Outline> pegs = [];
        for (var x = from + 10; x < to; x += 25)
        {
            pegs.Add(Outline.Wire((x, 2), (x - 6, -22)));
        }

        back.Add(Line("mid", pegs));
        back.Add(Line("hidden", Outline.Wire((from, 46), (to, 46))));
        foreach (var x in (ReadOnlySpan<double>)[from, to])
        {
            Sheet(Outline.Disc(x, 25, 21));
            Fine(Outline.Disc(x, 25, 6));
        }

        Fine([.. Chevrons(50, length - 20, 24)]);
    }

    private static IEnumerable<Outline> Chevrons(double from, double to, double ym)
    {
        for (var x = from; x < to; x += 90)
        {
            yield return Outline.Wire((x - 7, ym - 7), (x, ym), (x - 7, ym + 7));
        }
    }
}
