using Rinsewright.Engine.Machines;

namespace Rinsewright.Drawing.Section;

public sealed partial class SectionPlanner
{
    // Pump under the tank, its intake strainer inside, the manifold behind the chamber up to the arms.
    private void AddPump(Tank tank, string zone, double sx)
    {
        var z = machine.Zones.First(k => k.Tank == tank.Id);
        var feed = rotors ? length * 0.115 : Mm(z.From) + 52;
        List<PlanShape> pipes;
        if (rotors)
        {
            var lower = y.Lower + 34;
            pipes =
            [
                new(
                    "hidden",
                    Tube(
                        26,
                        (sx - 44, y.Pump),
                        (feed, y.Pump),
                        (feed, y.Upper - 40),
                        (length / 2, y.Upper - 40),
                        (length / 2, y.Upper - 16)
                    )
                ),
                new("hidden", Tube(26, (feed + 13, lower), (length / 2, lower), (length / 2, y.Lower + 16))),
            ];
        }
        else
        {
            pipes = [new("hidden", Tube(30, (sx - 48, y.Pump), (feed, y.Pump), (feed, y.Upper + 17)))];
        }

        Add(Part("wash-manifold@" + tank.Id, zone, (feed, -90), FlagSide.None, 9, pipes) with { Behind = true });
        var mesh = y.TankFloor - 68;
        Add(
            Part(
                "pump-intake-strainer@" + tank.Id,
                zone,
                (sx + 10, y.TankFloor - 25),
                FlagSide.Bottom,
                1,
                Body(Outline.Box(sx - 46, mesh, 92, 74, 6))
            ) with
            {
                Detail = [Mesh(sx - 36, mesh + 10, 72, 56)],
                Move = new PartMove(62, -18, 14),
            }
        );
        var (wheel, motor) = low ? (40.0, 110.0) : (50.0, 160.0);
        var tall = low ? 60 : 72;
        Add(
            Part(
                "wash-pump@" + tank.Id,
                zone,
                (sx + (low ? 76 : 92), y.Pump),
                FlagSide.Bottom,
                2,
                Body(Outline.Box(sx - 18, y.TankFloor + 6, 36, y.Pump - y.TankFloor - wheel + 6)),
                Body(Outline.Disc(sx, y.Pump, wheel)),
                Body(Outline.Box(sx + wheel + 4, y.Pump - (tall / 2), motor, tall, 8))
            ) with
            {
                Detail =
                [
                    Line(
                        "fine",
                        [
                            Outline.Disc(sx, y.Pump, 16),
                            .. Enumerable
                                .Range(0, low ? 2 : 4)
                                .Select(i =>
                                    Outline.Wire((sx + wheel + 34 + (i * 26), y.Pump - 24), (sx + wheel + 34 + (i * 26), y.Pump + 24))
                                ),
                        ]
                    ),
                ],
            }
        );
    }

    private void AddInside(Tank tank, string zone, int n, double surface, Func<double, double> at)
    {
        var doses = tank.Duty == TankDuty.Wash && machine.Feeders.Any(f => f.Product == FedProduct.Detergent);
        var probeInside = doses && n > 0;
        if (tank.Heater is { } heater)
        {
            AddHeater(tank.Id, zone, heater.Kind, at(HeaterFrom), at(probeInside ? 0.56 : HeaterTo));
        }

        var x0 = at(0);
        var spills = tank.SpillsTo is not null && n > 0;
        if (tank.Fill is not null)
        {
            AddFloat(tank.Id, zone, x0 + 62 + (spills ? 34 : 0), surface, spills);
        }

        var kx = at(ThermometerAt);
        Add(
            Part(
                "thermometer-wash@" + tank.Id,
                zone,
                (kx, y.Pump + 15),
                FlagSide.Bottom,
                0,
                Pipe(Outline.Wire((kx, y.Pump), (kx, y.TankFloor - 96)), 5),
                Body(Outline.Box(kx - 8, y.TankFloor - 126, 16, 44, 7)),
                Body(Outline.Disc(kx, y.Pump, 36))
            ) with
            {
                Detail = Dial(kx, y.Pump, "°F", 30),
                Pin = new ScenePoint(kx, y.Pump + 36),
            }
        );
        if (doses)
        {
            AddProbe(tank.Id, zone, probeInside ? at(0.63) : x0, probeInside);
        }
    }

    private void AddHeater(string id, string zone, HeaterKind kind, double h0, double h1)
    {
        var top = y.TankFloor - 58;
        var handle = (h0 + ((h1 - h0) * 0.42), top + 25);
        switch (kind)
        {
            case HeaterKind.SteamCoil:
                var coil = new OutlinePen()
                    .Move(h0, top + 84)
                    .Line(h0, top + 2)
                    .Line(h1 - 8, top + 2)
                    .Round(h1 + 4, top + 2, h1 + 4, top + 12);
                coil.Round(h1 + 4, top + 22, h1 - 8, top + 22).Line(h0 + 34, top + 22).Round(h0 + 22, top + 22, h0 + 22, top + 32);
                coil.Round(h0 + 22, top + 42, h0 + 34, top + 42).Line(h1 - 20, top + 42).Line(h1 - 20, top + 84);
                Add(
                    Part(
                        "steam-coil@" + id,
                        zone,
                        handle,
                        FlagSide.Bottom,
                        3,
                        Pipe(coil.Done(), 11),
                        Body(Outline.Disc(h1 - 20, top + 98, 16))
                    ) with
                    {
                        Detail = [Line("fine", Outline.Wire((h1 - 28, top + 98), (h1 - 12, top + 98)))],
                    }
                );
                break;
            case HeaterKind.Gas:
                var tube = new OutlinePen().Move(h0 - 10, top + 30).Line(h1 - 12, top + 30).Round(h1 + 6, top + 30, h1 + 6, top + 16);
                tube.Round(h1 + 6, top + 2, h1 - 12, top + 2).Line(h0 + 10, top + 2);
                Add(
                    Part(
                        "gas-burner@" + id,
                        zone,
                        handle,
                        FlagSide.Bottom,
                        3,
                        Pipe(tube.Done(), 20),
                        Body(Outline.Box(h0 - 40, top + 18, 40, 26, 4))
                    ) with
                    {
                        Detail =
                        [
                            Line(
                                "fine",
                                new OutlinePen()
                                    .Move(h0 + 6, top + 36)
                                    .Bend(h0 + 12, top + 22, h0 + 26, top + 30)
                                    .Bend(h0 + 14, top + 32, h0 + 6, top + 36)
                                    .Done()
                            ),
                        ],
                    }
                );
                break;
            default:
                var loop = new OutlinePen().Move(h0, top + 44).Line(h0, top).Line(h1 - 14, top).Round(h1, top, h1, top + 14);
                loop.Round(h1, top + 28, h1 - 14, top + 28).Line(h0 + 30, top + 28).Line(h0 + 30, top + 46);
                Add(
                    Part(
                        "tank-heater@" + id,
                        zone,
                        handle,
                        FlagSide.Bottom,
                        3,
                        Pipe(loop.Done(), 11),
                        Body(Outline.Box(h0 - 14, top + 46, 58, 20, 4))
                    )
                );
                break;
        }
    }

    private void AddFloat(string id, string zone, double fx, double surface, bool spills) =>
        Add(
            Part(
                "float@" + id,
                zone,
                (fx + (spills ? 30 : 18), surface + (spills ? 38 : 0)),
                FlagSide.Bottom,
                6,
                Body(Outline.Box(fx - 60, surface - 26, 16, 40, 3)),
                Pipe(Outline.Wire((fx - 46, surface - 14), (fx, surface)), 5),
                Body(Outline.Disc(fx + 8, surface, 21))
            ) with
            {
                Pin = new ScenePoint(fx + 8, surface),
                Move = new PartMove(0, 60, 0),
            }
        );

    // Through the outer wall; where the tank has none, hung in from behind.
    private void AddProbe(string id, string zone, double x, bool inside) =>
        Add(
            inside
                ? Part(
                    "detergent-probe@" + id,
                    zone,
                    (x, y.TankFloor - 35),
                    FlagSide.Bottom,
                    7,
                    Body(Outline.Box(x - 10, y.TankFloor - 70, 20, 52, 4)),
                    Body(Outline.Disc(x, y.TankFloor - 72, 13))
                )
                : Part(
                    "detergent-probe@" + id,
                    zone,
                    (x + 16, y.TankFloor - 42),
                    FlagSide.Bottom,
                    7,
                    Body(Outline.Box(x - 20, y.TankFloor - 76, 62, 20, 4)),
                    Body(Outline.Disc(x - 20, y.TankFloor - 66, 13))
                ) with
                {
                    Pin = new ScenePoint(x + 16, y.TankFloor - 64),
                }
        );

    private static PlanMark[] Dial(double x, double yMiddle, string unit, double height) =>
        [
            Line(
                "fine",
                new OutlinePen()
                    .Move(x - 20, yMiddle + 12)
                    .Curve(x - 34, yMiddle - 8, x - 18, yMiddle - 24, x, yMiddle - 24)
                    .Curve(x + 18, yMiddle - 24, x + 34, yMiddle - 8, x + 20, yMiddle + 12)
                    .Done()
            ),
            new PlanLetters("dial", x, yMiddle + (height / 3), unit, height),
        ];

    private static PlanShape Mesh(double x, double top, double width, double height)
    {
        List<Outline> lines = [];
        for (var i = 0.0; i <= width; i += 16)
        {
            lines.Add(Outline.Wire((x + i, top), (x + i, top + height)));
        }

        for (var j = 0.0; j <= height; j += 15)
        {
            lines.Add(Outline.Wire((x, top + j), (x + width, top + j)));
        }

        return Line("fine", lines);
    }

    // Both edges of a pipe along upright and level stretches.
    private static Outline Tube(double width, params ReadOnlySpan<(double X, double Y)> points)
    {
        var (one, other) = (new (double X, double Y)[points.Length], new (double X, double Y)[points.Length]);
        for (var i = 0; i < points.Length; i++)
        {
            var before = i > 0 ? Normal(points[i - 1], points[i]) : Normal(points[0], points[1]);
            var after = i < points.Length - 1 ? Normal(points[i], points[i + 1]) : before;
            var (nx, ny) = before == after ? before : (before.X + after.X, before.Y + after.Y);
            one[i] = (points[i].X + (width / 2 * nx), points[i].Y + (width / 2 * ny));
            other[i] = (points[i].X - (width / 2 * nx), points[i].Y - (width / 2 * ny));
        }

        return Outline.Wire(one) + Outline.Wire(other);
    }

    private static (double X, double Y) Normal((double X, double Y) from, (double X, double Y) to) =>
        (-Math.Sign(to.Y - from.Y), Math.Sign(to.X - from.X));
}
