using Rinsewright.Engine.Machines;

namespace Rinsewright.Drawing.Section;

public sealed partial class SectionPlanner
{
    // Booster, mm: load-side edge, width, top, bottom; where there is none, the room it would take.
    private (double X, double Width, double Top, double Bottom) BoosterAt =>
        (
            length
                + (
                    machine.Booster is { } b ? Mm(b.At)
                    : low ? 120
                    : 170
                ),
            machine.Booster is { } k ? Mm(k.Width)
            : low ? 210
            : 250,
            low ? 60 : 165,
            low ? 300 : 430
        );

    // The riser to the rinse arms, over the booster's outlet.
    private double RiserX => BoosterAt.X + 46;

    private void AddRinseLine()
    {
        AddSupply();
        if (machine.Tanks.Any(t => t.Fill is not null))
        {
            AddFill();
        }

        if (machine.FinalRinse is null)
        {
            return;
        }

        var (bx, bw, top, bottom) = BoosterAt;
        if (machine.Booster is { } booster)
        {
            Pipes(
                14,
                Outline.Wire((ColumnX, SupplyTop - 50), (ColumnX, bottom + 34), (bx + bw - 44, bottom + 34), (bx + bw - 44, bottom - 10))
            );
            AddBooster(booster.Heater.Kind, bx, bw, top, bottom);
        }
        else
        {
            Pipes(14, Outline.Wire((ColumnX, SupplyTop - 50), (ColumnX, top + 60), (RiserX, top + 60), (RiserX, top - 20)));
        }

        var riserFoot = top + 10;
        var pipe = y.Pipe;
        if (conveys)
        {
            var fresh = machine.Zones.First(z => z.Spray == SprayKind.Fresh);
            var x = (Mm(fresh.From) + Mm(fresh.To)) / 2;
            Pipes(14, Outline.Wire((RiserX, riserFoot), (RiserX, pipe), (x, pipe), (x, y.LowerRinse)));
            AddBreaker(((x + RiserX) / 2) + 42, pipe);
        }
        else
        {
            Pipes(
                14,
                Outline.Wire(
                    (RiserX, riserFoot),
                    (RiserX, pipe),
                    ((length / 2) + 70, pipe),
                    ((length / 2) + 70, y.UpperRinse),
                    (length / 2, y.UpperRinse)
                )
            );
            Pipes(10, Outline.Wire((length - 26, pipe), (length - 26, y.LowerRinse), (length / 2, y.LowerRinse)));
            AddBreaker(RiserX - 60, pipe);
        }

        AddRinseInstruments();
        flows.Add(
            new PlanFlow(
                "final-rinse",
                Outline.Wire((RiserX - 22, 40), (RiserX - 22, -30)),
                new ScenePoint(RiserX - 22, 4),
                FlagSide.Top,
                Always: false
            )
        );
    }

    private double SupplyTop => low ? -300 : -440;

    // Valve, strainer and regulator down the supply.
    private void AddSupply()
    {
        var x = ColumnX;
        var top = SupplyTop;
        var gap = low ? 130 : 165;
        if (machine.FinalRinse is null)
        {
            Pipes(14, Outline.Wire((x, top - 50), (x, FillY)));
        }

        flows.Add(
            new PlanFlow("supply", Outline.Wire((x + 24, top - 50), (x + 24, top - 6)), new ScenePoint(x + 24, top - 46), FlagSide.Top)
        );
        Add(
            Part(
                "water-supply-valve",
                "utilities",
                (x, top + 20),
                FlagSide.Top,
                6,
                Body(Outline.Polygon((x - 26, top), (x + 26, top + 40), (x - 26, top + 40), (x + 26, top)))
            ) with
            {
                Pin = new ScenePoint(x - 16, top + 12),
                Detail =
                [
                    Line("mid", Outline.Wire((x, top + 20), (x + 34, top + 20)), Outline.Wire((x + 34, top + 2), (x + 34, top + 38))),
                ],
            }
        );
        var s = top + gap;
        Add(
            Part(
                "rinse-strainer",
                "utilities",
                (x, s + 20),
                FlagSide.Top,
                3,
                Body(Outline.Box(x - 15, s - 8, 30, 56, 6)),
                Body(Outline.Polygon((x + 6, s + 20), (x + 52, s + 58), (x + 36, s + 76), (x - 8, s + 40)))
            ) with
            {
                Pin = new ScenePoint(x + 34, s + 48),
            }
        );
        var r = top + (2 * gap);
        Add(
            Part(
                "pressure-regulator",
                "utilities",
                (x, r + 20),
                FlagSide.Top,
                3,
                Body(Outline.Disc(x, r + 26, 30)),
                Body(Outline.Polygon((x + 22, r + 8), (x + 58, r + 18), (x + 58, r + 34), (x + 22, r + 44)))
            ) with
            {
                Pin = new ScenePoint(x + 52, r + 26),
                Detail = [Line("fine", Outline.Wire((x - 14, r + 26), (x + 14, r + 26)))],
            }
        );
    }

    private double FillY => low ? 46 : 142;

    // The fill line runs behind the machine to a spout over the water of each tank that has a valve.
    private void AddFill()
    {
        List<Outline> lines = [];
        var first = ColumnX;
        foreach (var t in machine.Tanks.Where(t => t.Fill is not null))
        {
            var x = Mm(t.To) - 30 - (t.SpillsTo is null ? 0 : 14);
            first = Math.Min(first, x);
            lines.Add(Outline.Wire((x, FillY), (x, y.Water - 34)));
        }

        lines.Add(Outline.Wire((length + 30, FillY), (first, FillY)));
        back.Add(Line("hidden", Tube(12, (length + 30, FillY), (first, FillY), (first, y.Water - 34))));
        foreach (var t in machine.Tanks.Where(t => t.Fill is not null).Skip(1))
        {
            var x = Mm(t.To) - 44;
            back.Add(Line("hidden", Tube(12, (x, FillY + 6), (x, y.Water - 34))));
        }

        Pipes(10, Outline.Wire((ColumnX, FillY), (length + 30, FillY)));
        var v = ColumnX - (low ? 62 : 44);
        Add(
            Part(
                "fill-valve",
                "utilities",
                (v, FillY),
                FlagSide.Bottom,
                4,
                Body(Outline.Polygon((v - 20, FillY - 15), (v + 20, FillY + 15), (v + 20, FillY - 15), (v - 20, FillY + 15))),
                Body(Outline.Box(v - 13, FillY - 44, 26, 26, 4))
            ) with
            {
                Detail = [Line("fine", Outline.Wire((v, FillY), (v, FillY - 18)))],
            }
        );
        flows.Add(
            new PlanFlow(
                "fill",
                Outline.Wire((first + 10, FillY + 24), (first + 10, y.Water - 16)),
                new ScenePoint(first + 10, FillY + 34),
                FlagSide.Bottom,
                Always: false
            )
        );
    }

    private void AddBooster(HeaterKind kind, double bx, double bw, double top, double bottom) =>
        Add(
            Part(
                "booster",
                "booster",
                (bx + (bw / 2) + 16, (top + bottom) / 2),
                FlagSide.Bottom,
                0,
                Body(Outline.Box(bx, top, bw, bottom - top, 12))
            ) with
            {
                Pin = new ScenePoint(bx + (bw / 2) + 30, bottom - 12),
                Detail =
                [
                    new PlanShape("water", Outline.Box(bx + 16, top + 22, bw - 32, bottom - top - 38, 8), 0, "booster"),
                    .. kind == HeaterKind.Gas ? Flame(bx + (bw / 2), bottom - 34) : Coil(bx + 56, top + 60, bw - 112, bottom - top - 118),
                ],
            }
        );

    private void AddBreaker(double x, double pipe) =>
        Add(
            Part(
                "vacuum-breaker",
                "utilities",
                (x, pipe - 34),
                FlagSide.Top,
                4,
                Body(
                    Outline.Polygon(
                        (x - 14, pipe),
                        (x + 14, pipe),
                        (x + 14, pipe - 30),
                        (x + 28, pipe - 30),
                        (x + 20, pipe - 58),
                        (x - 20, pipe - 58),
                        (x - 28, pipe - 30),
                        (x - 14, pipe - 30)
                    )
                )
            )
        );

    private void AddRinseInstruments()
    {
        var rx = RiserX;
        var sol = low ? 0 : 84;
        Add(
            Part(
                "rinse-solenoid",
                "final-rinse",
                (rx, sol),
                FlagSide.Bottom,
                4,
                Body(Outline.Box(rx - 18, sol - 18, 36, 36, 4)),
                Body(Outline.Box(rx - 46, sol - 14, 28, 28, 4))
            ) with
            {
                Detail = [Line("fine", [.. ((double[])[-7, 0, 7]).Select(d => Outline.Wire((rx - 40, sol + d), (rx - 24, sol + d)))])],
            }
        );
        var (gauge, thermometer) = low ? (-135, -265) : (-205, -350);
        Add(Instrument("pressure-gauge", gauge, "psi", 24, -14));
        Add(Instrument("thermometer-rinse", thermometer, "°F", 30, 10));

        SectionPart Instrument(string id, double at, string unit, double height, double pin) =>
            Part(
                id,
                "final-rinse",
                (rx + 62, at),
                FlagSide.Top,
                0,
                Pipe(Outline.Wire((rx, at), (rx + 40, at)), 8),
                Body(Outline.Disc(rx + 62, at, 33))
            ) with
            {
                Detail = Dial(rx + 62, at, unit, height),
                Pin = new ScenePoint(rx + 62 + pin, at - 30),
            };
    }

    private static PlanMark[] Coil(double x, double top, double width, double height)
    {
        const int turns = 3;
        var pitch = height / (turns * 2);
        var (left, right) = (x + (pitch / 2), x + width - (pitch / 2));
        var pen = new OutlinePen().Move(x - 14, top).Line(right, top);
        for (var i = 0; i < (turns * 2) - 1; i++)
        {
            var (from, to) = (top + (i * pitch), top + ((i + 1) * pitch));
            var (near, far) = i % 2 == 0 ? (right, right + (pitch / 2)) : (left, left - (pitch / 2));
            pen.Round(far, from, far, (from + to) / 2).Round(far, to, near, to).Line(i % 2 == 0 ? left : right, to);
        }

        var line = pen.Done();
        return [new PlanShape("coil-o", line), new PlanShape("coil-i", line)];
    }

    private static PlanMark[] Flame(double x, double foot) =>
        [
            .. ((double[])[-44, 0, 44]).Select(d => new PlanShape(
                "b",
                new OutlinePen()
                    .Move(x + d - 14, foot)
                    .Bend(x + d - 18, foot - 22, x + d, foot - 46)
                    .Bend(x + d + 18, foot - 22, x + d + 14, foot)
                    .Close()
                    .Done()
            )),
        ];
}
