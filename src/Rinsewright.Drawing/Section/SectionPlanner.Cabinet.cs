using Rinsewright.Engine.Machines;

namespace Rinsewright.Drawing.Section;

public sealed partial class SectionPlanner
{
    private void AddFloor()
    {
        Fine(Outline.Wire((Left, y.Floor), (Right, y.Floor)));
        List<Outline> ground = [];
        for (var x = Left + 10; x < Right; x += 34)
        {
            ground.Add(Outline.Wire((x, y.Floor + 16), (x + 12, y.Floor)));
        }

        back.Add(Line("faint", ground));
        List<double> legs = conveys ? [14, .. machine.Tanks.Skip(1).Select(t => Mm(t.From)), length - 14] : [20, length - 20];
        foreach (var x in legs)
        {
            Sheet(Outline.Box(x - 8, y.TankFloor - 30, 16, y.Floor - y.TankFloor + 22), Outline.Box(x - 16, y.Floor - 10, 32, 10));
        }

        if (low)
        {
            Sheet(Outline.Box(0, y.Hood, length, y.Floor - y.Hood - 26));
            Sheet(Outline.Box(-46, y.Hood - 34, length + 92, 24));
        }
    }

    // Metal cut through; open at the ends of a conveyor.
    private void AddCabinet()
    {
        var top = y.Hood;
        if (conveys)
        {
            Heavy(Outline.Wire((0, y.Ware - 30), (0, top), (length, top), (length, y.Ware - 30)));
            Heavy(
                Outline.Wire((0, 22), (0, y.TrayHigh - 8), (TankLeft, y.TrayHigh + 14)),
                Outline.Wire((length, 22), (length, y.TrayHigh - 8), (TankRight, y.TrayHigh + 14))
            );
        }
        else if (low)
        {
            Heavy(Outline.Wire((0, top), (length, top), (length, y.TrayHigh)), Outline.Wire((0, 26), (0, y.TrayHigh)));
        }
        else
        {
            Heavy(Outline.Wire((-14, top), (length + 14, top)));
            Heavy(
                Outline.Wire((0, 22), (0, y.TrayHigh), (TankLeft, y.TrayHigh + 14)),
                Outline.Wire((length, 22), (length, y.TrayHigh), (TankRight, y.TrayHigh + 14))
            );
        }

        back.Add(Line("track", Outline.Box(low ? 0 : -load, 3, low ? length : length + load + unload, 9)));
        AddDoors();
        foreach (var c in machine.Curtains)
        {
            AddCurtain(c);
        }

        foreach (var t in machine.Tanks.Skip(1))
        {
            AddFlaps(t.Id, Mm(t.From));
        }

        for (var i = 0; i < machine.Vents.Count; i++)
        {
            AddVent(i, Mm(machine.Vents[i]));
        }

        if (!low)
        {
            var x = length / 2;
            Add(
                Part("control-panel", "electrical", (x, top - 40), FlagSide.Top, 8, Body(Outline.Box(x - 95, top - 74, 190, 74, 8))) with
                {
                    Detail =
                    [
                        Line(
                            "fine",
                            Outline.Disc(x - 56, top - 37, 9),
                            Outline.Disc(x - 28, top - 37, 9),
                            Outline.Disc(x, top - 37, 9),
                            Outline.Box(x + 26, top - 52, 50, 30, 4)
                        ),
                    ],
                }
            );
        }
    }

    private void AddDoors()
    {
        if (conveys)
        {
            foreach (var t in machine.Tanks)
            {
                var z = machine.Zones.First(k => k.Tank == t.Id);
                var (from, width) = (Mm(z.From) + 24, Mm(z.To) - Mm(z.From) - 48);
                front.Add(Line("phantom", Outline.Box(from, y.Hood + 46, width, 520, 8)));
                var x = Mm(z.From) + ((Mm(z.To) - Mm(z.From)) * 0.72);
                Add(
                    Part("door@" + t.Id, "cabinet", (x, -58), FlagSide.Top, 7, Body(Outline.Box(x - 44, -64, 88, 12, 5))) with
                    {
                        Move = new PartMove(0, -170, 0),
                    }
                );
            }
        }
        else if (low)
        {
            Add(
                Part(
                    "door@front",
                    "cabinet",
                    (-8, -150),
                    FlagSide.Top,
                    4,
                    new PlanShape("cutfill", Outline.Box(-18, y.Hood + 6, 18, 344, 4))
                ) with
                {
                    Motion = PartMotion.Door,
                    Hinge = new ScenePoint(-9, 18),
                    Move = new PartMove(0, 0, -90),
                    Detail = [Line("mid", Outline.Box(-32, y.Hood + 34, 14, 60, 6))],
                }
            );
        }
        else
        {
            foreach (var (x, side) in (ReadOnlySpan<(double, string)>)[(-2, "load"), (length + 2, "unload")])
            {
                Add(
                    Part(
                        "door@" + side,
                        "cabinet",
                        (x, -190),
                        FlagSide.Top,
                        4,
                        new PlanShape("cutfill", Outline.Box(x - 8, y.Hood + 8, 16, 500, 3))
                    ) with
                    {
                        Motion = PartMotion.Door,
                        Move = new PartMove(0, -270, 0),
                    }
                );
            }
        }
    }

    private void AddCurtain(Curtain c)
    {
        var x = Mm(c.At);
        Add(
            Part(
                (c.Long ? "curtain-long@" : "curtain-short@") + c.Slot,
                "cabinet",
                (x, c.Long ? -200 : -270),
                FlagSide.Top,
                3,
                new PlanShape("rubber", SectionCurtain.Of(x, c.Long, y, 0))
            ) with
            {
                Detail = [Line("mid", Outline.Disc(x, y.Hood + 14, 7))],
                Move = new PartMove(70, 0, 0),
                Motion = PartMotion.Curtain,
                Long = c.Long,
            }
        );
    }

    private void AddFlaps(string tank, double x) =>
        Add(
            Part(
                "deflector-flap@" + tank,
                "cabinet",
                (x + 62, y.TrayHigh - 14),
                FlagSide.Bottom,
                5,
                Body(Outline.Polygon((x - 3, y.Lower + 12), (x + 3, y.Lower + 12), (x + 60, y.TrayHigh), (x + 50, y.TrayHigh + 4))),
                Body(Outline.Polygon((x - 3, y.Lower + 12), (x + 3, y.Lower + 12), (x - 50, y.TrayHigh + 4), (x - 60, y.TrayHigh))),
                Body(Outline.Disc(x, y.Lower + 10, 9))
            ) with
            {
                Pin = new ScenePoint(x + 30, y.TrayHigh - 20),
                Hinge = new ScenePoint(x, y.Lower + 10),
                Move = new PartMove(0, 0, 24),
            }
        );

    private void AddVent(int number, double x)
    {
        var top = y.Hood;
        Add(
            Part(
                $"vent@{(number == 0 ? "load" : "unload")}",
                "vent",
                (x, y.Vent + 40),
                FlagSide.Top,
                7,
                Body(
                    Outline.Polygon(
                        (x - 46, top - 3),
                        (x - 34, y.Vent + 36),
                        (x - 34, y.Vent),
                        (x + 34, y.Vent),
                        (x + 34, y.Vent + 36),
                        (x + 46, top - 3)
                    )
                )
            ) with
            {
                Detail = [Line("fine", Outline.Wire((x - 34, y.Vent + 50), (x + 34, y.Vent + 26)))],
                Move = new PartMove(0, 0, 12),
            }
        );
        flows.Add(
            new PlanFlow(
                $"vent@{(number == 0 ? "load" : "unload")}",
                Outline.Wire((x, y.Vent + 20), (x, y.Vent - 44)),
                new ScenePoint(x, y.Vent + 4),
                FlagSide.Top
            )
        );
    }
}

/// <summary>A curtain's strips.</summary>
internal static class SectionCurtain
{
    // mm: how far a rack bends its foot before it lets go
    public const double Give = 58;

    /// <summary>Outline of a curtain, its foot pushed along the travel.</summary>
    public static Outline Of(double x, bool isLong, SectionLevels y, double push)
    {
        var top = y.Hood + 20;
        var foot = isLong ? -26 : y.Ware + 2;
        var k = push;
        return new OutlinePen()
            .Move(x - 9, top)
            .Curve(x - 9, top + 160, x - 9 + (k * 0.25), foot - 130, x - 9 + k, foot - (Math.Abs(k) * 0.35))
            .Line(x + 9 + k, foot - (Math.Abs(k) * 0.35) + (k == 0 ? 0 : 4))
            .Curve(x + 9 + (k * 0.25), foot - 130, x + 9, top + 160, x + 9, top)
            .Close()
            .Done();
    }
}
