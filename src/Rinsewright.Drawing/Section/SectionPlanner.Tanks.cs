using Rinsewright.Engine.Machines;

namespace Rinsewright.Drawing.Section;

public sealed partial class SectionPlanner
{
    // Where things stand in a tank, as shares of its length from the load side.
    private const double StrainerAt = 0.23;
    private const double HeaterFrom = 0.36;
    private const double HeaterTo = 0.64;
    private const double ThermometerAt = 0.7;
    private const double StandpipeAt = 0.905;
    private const double BasketFrom = 0.5;
    private const double BasketTo = 0.66;

    // mm
    private const double TrayThickness = 15;
    private const double FloorFall = 26;
    private const double Step = 14;

    private void AddTanks()
    {
        back.Add(
            Line(
                "chamber",
                Outline.Polygon(
                    (0, y.Hood),
                    (length, y.Hood),
                    (length, y.TrayHigh - 8),
                    (TankRight, y.TrayHigh + 14),
                    (TankRight, y.TankFloor),
                    (TankLeft, y.TankFloor),
                    (TankLeft, y.TrayHigh + 14),
                    (0, y.TrayHigh - 8)
                )
            )
        );
        if (load > 0)
        {
            AddTable(-load, -6, -load + 8);
            AddTable(length + 6, length + unload, length + unload - 22);
        }

        for (var n = 0; n < machine.Tanks.Count; n++)
        {
            AddTank(machine.Tanks[n], n);
        }

        AddDrains();
    }

    private void AddTable(double from, double to, double leg)
    {
        Sheet(Outline.Box(from, 14, to - from, 20));
        Sheet(Outline.Box(leg, 34, 14, y.Floor - 34));
    }

    private void AddTank(Tank tank, int n)
    {
        var (x0, x1) = (Mm(tank.From), Mm(tank.To));
        var width = x1 - x0;
        double At(double share) => x0 + (share * width);
        double Floor(double x) => y.TankFloor + (FloorFall * (x - x0) / width);

        // A tank that spills into the one before stands a step higher than it.
        var rise = Rise(tank);
        var level = levels.TryGetValue(tank.Id, out var given) ? given : tank.Fill?.Closes.Value.InFraction ?? 1;
        var surface = y.TankFloor - ((y.TankFloor - y.Water) * Math.Clamp(level, 0, 1.04)) - (level > 0.5 ? rise : 0);
        tanks.Add(new PlanTank(tank.Id, x0, x1, surface, y.TankFloor));
        if (level > 0.02)
        {
            AddWater(tank.Id, x0, x1, surface, Floor);
        }

        var spillsBack = n > 0 && tank.SpillsTo is not null;
        var leftTop =
            n == 0 ? y.TrayHigh - 22
            : spillsBack ? y.Water - rise - 2
            : y.Water - 8;
        Heavy(Outline.Wire((x0, leftTop), (x0, Floor(x0)), (x1, Floor(x1))));
        if (n == machine.Tanks.Count - 1)
        {
            Heavy(Outline.Wire((x1, y.TrayHigh - 22), (x1, Floor(x1))));
        }

        if (spillsBack)
        {
            flows.Add(
                new PlanFlow(
                    "spill@" + tank.Id,
                    new OutlinePen()
                        .Move(x0 + 22, y.Water - rise - 10)
                        .Bend(x0 - 8, y.Water - rise - 24, x0 - 24, y.Water - rise + 20)
                        .Done(),
                    new ScenePoint(x0 + 8, y.Water - rise - 16),
                    FlagSide.Bottom
                )
            );
        }

        var zone = ZoneOf(tank);
        AddTrays(tank.Id, zone, x0, x1, At);
        AddPump(tank, zone, At(StrainerAt));
        AddInside(tank, zone, n, surface, At);
        AddStandpipe(tank.Id, zone, At(StandpipeAt), spillsBack ? y.Water - rise - 6 : y.Water - 4);
    }

    private string ZoneOf(Tank tank) => machine.Zones.First(z => z.Tank == tank.Id).Id;

    private double Rise(Tank tank)
    {
        var rise = 0.0;
        for (var t = tank; t?.SpillsTo is { } next; t = machine.Tanks.FirstOrDefault(k => k.Id == next))
        {
            rise += Step;
        }

        return rise;
    }

    private void AddWater(string id, double x0, double x1, double surface, Func<double, double> floor)
    {
        var w = x1 - x0;
        back.Add(new PlanShape("water", Outline.Polygon((x0, surface), (x1, surface), (x1, floor(x1)), (x0, floor(x0))), 0, id));
        var depth = Math.Min(90, floor(x0) - surface);
        foreach (var share in (ReadOnlySpan<double>)[0.25, 0.5, 0.75, 1])
        {
            back.Add(Line("sheen", Outline.Box(x0, surface, w, depth * share)));
        }

        if (depth > 40)
        {
            back.Add(
                Line(
                    "ripple",
                    Outline.Wire((x0 + 6, surface + 17), (x0 + (w * 0.22), surface + 17)),
                    Outline.Wire((x0 + (w * 0.36), surface + 17), (x0 + (w * 0.5), surface + 17)),
                    Outline.Wire((x0 + (w * 0.3), surface + 34), (x0 + (w * 0.38), surface + 34))
                )
            );
        }

        back.Add(Line("surface", Outline.Wire((x0, surface), (x1, surface))));
    }

    // Trays slope to the basket; the large one on the load side.
    private void AddTrays(string id, string zone, double x0, double x1, Func<double, double> at)
    {
        var (b0, b1) = (at(BasketFrom), at(BasketTo));
        var (high, bottom) = (y.TrayHigh, y.TrayLow);
        Outline Tray(double wall, double basket) =>
            Outline.Polygon((wall, high), (basket, bottom), (basket, bottom + TrayThickness), (wall, high + TrayThickness));
        PlanShape Holes(double xa, double ya, double xb, double yb) => Line("holes", Outline.Wire((xa, ya), (xb, yb)));
        var middle = TrayThickness / 2;
        Add(
            Part(
                "scrap-tray-large@" + id,
                zone,
                (at(conveys ? 0.26 : 0.31) + 30, high + 34),
                FlagSide.Bottom,
                3,
                Body(Tray(x0 + 8, b0))
            ) with
            {
                Detail = [Holes(x0 + 30, high + middle + 2, b0 - 12, bottom + middle - 1)],
                Move = new PartMove(0, -34, -6),
            }
        );
        Add(
            Part("scrap-tray-small@" + id, zone, (at(0.8), bottom - 2), FlagSide.Bottom, 8, Body(Tray(x1 - 8, b1))) with
            {
                Detail = [Holes(b1 + 12, bottom + middle - 1, x1 - 26, high + middle + 2)],
                Move = new PartMove(0, -30, 6),
            }
        );
        Add(
            Part(
                "scrap-basket@" + id,
                zone,
                ((b0 + b1) / 2, bottom + 44),
                FlagSide.Bottom,
                6,
                Body(Outline.Polygon((b0 - 6, bottom - 4), (b1 + 6, bottom - 4), (b1 - 10, bottom + 78), (b0 + 10, bottom + 78)))
            ) with
            {
                Detail = [Mesh(b0 + 12, bottom + 8, b1 - b0 - 24, 60)],
                Move = new PartMove(0, -46, 0),
            }
        );
    }

    private void AddStandpipe(string id, string zone, double x, double top)
    {
        var half = low ? 15 : 19;
        Add(
            Part(
                "standpipe@" + id,
                zone,
                (x, y.Water + (low ? 70 : 96)),
                FlagSide.Bottom,
                2,
                Body(Outline.Box(x - half, top, 2 * half, y.TankFloor - top + 8, 3))
            ) with
            {
                Detail =
                [
                    Line(
                        "fine",
                        Outline.Wire((x - half, top + 18), (x + half, top + 18)),
                        Outline.Wire((x - half, top + 26), (x + half, top + 26))
                    ),
                ],
                Move = new PartMove(34, -52, 10),
            }
        );
        Add(
            Part(
                "standpipe-seal@" + id,
                zone,
                (x, y.TankFloor + (low ? 43 : 60)),
                FlagSide.Bottom,
                1,
                new PlanShape("rubber", Outline.Box(x - half - 13, y.TankFloor + 7, (2 * half) + 26, 17, 8))
            ) with
            {
                Pin = new ScenePoint(x + half + 6, y.TankFloor + 15),
                Move = new PartMove(22, -14, 16),
            }
        );
    }

    // Every tank drains into one funnel, with air between pipe and funnel.
    private void AddDrains()
    {
        double DrainOf(Tank t) => Mm(t.From) + (StandpipeAt * (Mm(t.To) - Mm(t.From)));
        var sink = DrainOf(machine.Tanks[0]);
        var top = y.TankFloor + 24;
        var end = y.Floor - 32;
        List<Outline> lines = [Outline.Wire((sink, top), (sink, end))];
        for (var n = machine.Tanks.Count - 1; n > 0; n--)
        {
            var x = DrainOf(machine.Tanks[n]);
            lines.Add(
                n == machine.Tanks.Count - 1
                    ? Outline.Wire((x, top), (x, y.Drain), (sink + 44, y.Drain), (sink + 44, end))
                    : Outline.Wire((x, top), (x, y.Drain))
            );
        }

        Pipes(16, lines);
        var wide = machine.Tanks.Count > 1 ? 84 : 40;
        Sheet(
            Outline.Polygon(
                (sink - 40, y.Floor - 12),
                (sink + wide, y.Floor - 12),
                (sink + wide - (wide > 40 ? 18 : 14), y.Floor + 26),
                (sink - 26, y.Floor + 26)
            )
        );
        flows.Add(
            new PlanFlow(
                "drain",
                Outline.Wire((sink + 22, end - 34), (sink + 22, end + 16)),
                new ScenePoint(sink + 22, end),
                FlagSide.Bottom,
                Always: false
            )
        );
        if (machine.Cycle?.DumpOpening is not null)
        {
            Add(
                Part(
                    "drain-valve",
                    "drain",
                    (sink + 66, y.Drain + 10),
                    FlagSide.Bottom,
                    2,
                    Body(
                        Outline.Polygon(
                            (sink - 22, y.Drain - 16),
                            (sink + 22, y.Drain + 16),
                            (sink - 22, y.Drain + 16),
                            (sink + 22, y.Drain - 16)
                        )
                    ),
                    Body(Outline.Box(sink + 26, y.Drain - 18, 46, 36, 5))
                ) with
                {
                    Detail = [Line("fine", Outline.Wire((sink, y.Drain), (sink + 26, y.Drain)))],
                    Pin = new ScenePoint(sink + 50, y.Drain + 14),
                }
            );
        }
    }
}
