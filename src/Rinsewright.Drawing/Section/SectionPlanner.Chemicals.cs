using Rinsewright.Engine.Machines;

namespace Rinsewright.Drawing.Section;

public sealed partial class SectionPlanner
{
    // Containers stand on the floor, the feeder above each, a tube to where it goes.
    private void AddChemicals()
    {
        foreach (var f in machine.Feeders)
        {
            switch (f.Product)
            {
                case FedProduct.Detergent:
                    AddDetergent();
                    break;
                case FedProduct.RinseAdditive:
                    AddFed("rinse-additive", "rinse-additive-feeder", "R", 0);
                    break;
                default:
                    AddFed("sanitizer", "sanitizer-feeder", "S", machine.Feeders.Any(k => k.Product == FedProduct.RinseAdditive) ? 1 : 0);
                    break;
            }
        }
    }

    private void AddDetergent()
    {
        var (x, w) = low ? (length + 370, 84.0) : (-330, 150.0);
        var top = y.Floor - (low ? 150 : 235);
        var feeder = low ? (X: x + (w / 2) - 34, Y: 110.0, W: 68.0, H: 62.0) : (X: -250.0, Y: 110.0, W: 120.0, H: 96.0);
        var tank = machine.Tanks.FirstOrDefault(t => t.Duty == TankDuty.Wash) ?? machine.Tanks[0];
        Outline line;
        if (low)
        {
            line = Outline.Wire((feeder.X, 134), (length + 60, 134), (length + 60, y.Water - 14), (length - 26, y.Water - 14));
        }
        else if (tank == machine.Tanks[0])
        {
            line = Outline.Wire(
                (feeder.X + feeder.W, feeder.Y + 58),
                (-70, feeder.Y + 58),
                (-70, y.Water - 22),
                (TankLeft - 2, y.Water - 22)
            );
        }
        else
        {
            // Over the tanks before it, above their trays.
            var over = y.TrayHigh - 12;
            var to = Mm(tank.From) + 26;
            line = Outline.Wire((feeder.X + feeder.W, feeder.Y + 26), (to, over), (to, y.Water - 30));
        }

        AddContainer("detergent", "detergent-dispenser", "D", (x, top, w), feeder, line);
    }

    // Additive and sanitizer stand at the unload end; the second beside the first.
    private void AddFed(string product, string feeder, string letter, int place)
    {
        var into = machine.FinalRinse is null ? (X: length + 12, Y: FillY) : (X: RiserX, Y: low ? -60.0 : -62.0);
        var w = low ? 84.0 : 92.0;
        (double X, double Y, double W, double H) box;
        double x;
        if (low)
        {
            x = place == 0 ? length + 36 : length + 210;
            box = (place == 0 ? length + 44 : length + 218, place == 0 ? 190 : 330, 68, 62);
        }
        else
        {
            x = length + (place == 0 ? 24 : 190);
            box = (length + 34, place == 0 ? 218 : 356, 74, 84);
            if (place > 0 && machine.Booster is null)
            {
                box = (length + 200, 218, 74, 84);
            }
        }

        var top = y.Floor - (low ? (place == 0 ? 150 : 130) : 190);
        var lift = box.X + (box.W / 2) + (place * 22);
        Outline line = machine.FinalRinse is null
            ? Outline.Wire((lift, box.Y), (lift, FillY + 22), (into.X, FillY + 22), (into.X, FillY + 6))
            : Outline.Wire((lift, box.Y), (lift, into.Y - (place * 26)), (into.X, into.Y - (place * 26)));
        AddContainer(product, feeder, letter, (x, top, w), box, line);
    }

    private void AddContainer(
        string product,
        string feederId,
        string letter,
        (double X, double Top, double Width) box,
        (double X, double Y, double W, double H) feeder,
        Outline line
    )
    {
        // Half full: how much is left is not part of the description.
        const double left = 0.5;
        var (x, top, w) = box;
        var height = y.Floor - top;
        var pick = x + (w * 0.27);
        var lead = feeder.X + Math.Min(feeder.W - 8, Math.Max(8, pick - feeder.X));
        back.Add(
            Line(
                "tube",
                Outline.Wire(
                    (pick, top),
                    (pick, (top + feeder.Y + feeder.H) / 2),
                    (lead, (top + feeder.Y + feeder.H) / 2),
                    (lead, feeder.Y + feeder.H)
                )
            )
        );
        back.Add(Line("tube", line));
        Add(
            Part(
                product,
                "chem-station",
                (x + (w / 2), y.Floor - (low ? 70 : 90)),
                FlagSide.Bottom,
                5,
                Body(Outline.Box(x, top, w, height, 12))
            ) with
            {
                Detail =
                [
                    Line("product", Outline.Box(x + 7, top + 12 + ((height - 20) * (1 - left)), w - 14, (height - 20) * left, 5)),
                    Line("tube", Outline.Wire((pick, top + 4), (pick, y.Floor - 26))),
                    new PlanLetters("letter", x + (w * 0.65), y.Floor - 20, letter, 46),
                ],
            }
        );
        var (cx, cy) = (feeder.X + (feeder.W / 2), feeder.Y + (feeder.H / 2));
        Add(
            Part(feederId, "chem-station", (cx, cy), FlagSide.Bottom, 7, Body(Outline.Box(feeder.X, feeder.Y, feeder.W, feeder.H, 8))) with
            {
                Detail =
                [
                    Line(
                        "fine",
                        [
                            Outline.Disc(cx, cy, low ? 16 : 24),
                            .. Enumerable
                                .Range(0, 3)
                                .Select(i => (i * 2.094) - 1.57)
                                .Select(a =>
                                    Outline.Disc(cx + ((low ? 9 : 13) * Math.Cos(a)), cy + ((low ? 9 : 13) * Math.Sin(a)), low ? 4 : 5)
                                ),
                        ]
                    ),
                ],
            }
        );
    }
}
