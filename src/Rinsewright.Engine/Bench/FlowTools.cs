using Rinsewright.Engine.Quantities;
using Rinsewright.Engine.Records;
using Rinsewright.Engine.Water;

namespace Rinsewright.Engine.Bench;

/// <summary>Flow and pressure. The kernels stand in <c>Water</c>.</summary>
internal static class FlowTools
{
    public static BenchTool Nozzle { get; } =
        new(
            "rinse-flow",
            BenchArea.Flow,
            [
                FieldsOf.Flow("ratedFlow", 2.8),
                FieldsOf.Pressure("ratedPressure", 20),
                FieldsOf.Pressure("flowPressure", 20),
                new("staticPressure", Units.Psi, null, 1, 200, 0, Optional: true),
                new("rinseTime", Units.Second, 15.4, 1, 300, 1),
            ],
            [],
            SolveNozzle,
            "flowPressure"
        );

    public static BenchTool Bucket { get; } =
        new(
            "rinse-bucket",
            BenchArea.Flow,
            [
                new("caught", Units.Gallon, 0.89, 0.01, 50, 0.02),
                FieldsOf.Number("racks", 1, 1, 1000, 1),
                FieldsOf.Pressure("flowPressure", 20),
                new("rinseTime", Units.Second, 19, 1, 300, 1),
                FieldsOf.Flow("ratedFlow", 2.8, 0),
                FieldsOf.Pressure("ratedPressure", 20),
                FieldsOf.Number("nozzles", 16, 1, 400),
            ],
            [],
            SolveBucket,
            "caught"
        );

    public static BenchTool Leak { get; } =
        new(
            "leak",
            BenchArea.Flow,
            [
                new("surface", Units.SquareFoot, 3.23, 0.2, 40, 0.1),
                new("depth", Units.Inch, 9, 0.5, 40, 0.5),
                new("fall", Units.Inch, 1, 0.01, 30, 0.1),
                new("time", Units.Second, 60, 1, 36000, 5),
            ],
            [],
            SolveLeak,
            "fall"
        );

    public static BenchTool Drain { get; } =
        new(
            "drain-time",
            BenchArea.Flow,
            [
                new("surface", Units.SquareFoot, 3.23, 0.2, 40, 0.1),
                new("depth", Units.Inch, 9, 0.5, 40, 0.5),
                new("drainDiameter", Units.Inch, 1.5, 0.2, 6, 0.1),
                new("time", Units.Second, null, 1, 36000, 0, Optional: true),
            ],
            [],
            SolveDrain,
            "depth"
        );

    public static BenchTool Line { get; } =
        new(
            "line-loss",
            BenchArea.Flow,
            [
                FieldsOf.Flow("flow", 4),
                new("pipeDiameter", Units.Inch, 0.545, 0.1, 6, 0.05),
                new("pipeLength", Units.Foot, 30, 0.1, 2000, 5),
                FieldsOf.At("waterTemperature", 140, 33, 205),
                FieldsOf.Number("fittings", 6, 0, 200, 1),
            ],
            [new("pipe", ["copper", "steel", "plastic"], "copper")],
            SolveLine,
            "flow"
        );

    public static BenchTool Fill { get; } =
        new(
            "fill-time",
            BenchArea.Flow,
            [FieldsOf.Tank(), new("time", Units.Second, 180, 1, 36000, 5), FieldsOf.Flow("ratedFlow", 6)],
            [],
            SolveFill,
            "time"
        );

    private static BenchAnswer SolveNozzle(BenchInput i)
    {
        var (rated, ratedAt, now) = (
            i.Get<VolumeFlow>("ratedFlow"),
            i.Get<GaugePressure>("ratedPressure"),
            i.Get<GaugePressure>("flowPressure")
        );
        var flow = VolumeFlow.FromGallonPerMinute(Openings.AtPressure(rated.InGallonPerMinute, ratedAt.InPsi, now.InPsi));
        var perRack = flow * i.Get<Duration>("rinseTime");
        var working = new Working()
            .Gives("flow", flow.In(Units.GallonPerMinute), 2)
            .Gives("perRack", perRack.In(Units.Gallon), 2)
            .Gives("coefficient", rated.InGallonPerMinute / Math.Sqrt(ratedAt.InPsi), 3)
            .By(
                "W41",
                "Bernoulli",
                $"{rated.InGallonPerMinute:0.00} gpm · √({now.InPsi:0.0}/{ratedAt.InPsi:0.0}) = {flow.InGallonPerMinute:0.00} gpm"
            )
            .By(
                "W41",
                "definition",
                $"{flow.InGallonPerMinute:0.00} gpm · {i.Get<Duration>("rinseTime").InSecond:0.0} s / 60 = {perRack.InGallon:0.00} gal"
            );
        working.Note(
            now.InPsi < 15 ? "bench.note.pressure-low"
            : now.InPsi > 25 ? "bench.note.pressure-high"
            : "bench.note.pressure-usual"
        );
        if (i.Maybe<GaugePressure>("staticPressure") is { } still)
        {
            if (still.InPsi < now.InPsi)
            {
                throw new BenchException("staticPressure", Statement.Of("bench.problem.static-below-flow"));
            }

            working.Gives("lineTakes", new Amount(still.InPsi - now.InPsi, Units.Psi), 1).Note("bench.note.static-and-flow");
        }

        return working.Note("bench.note.set-while-flowing").Caution("bench.caution.scald").Answer();
    }

    private static BenchAnswer SolveBucket(BenchInput i)
    {
        var perRack = i.Get<Volume>("caught") / i.Number("racks");
        var flow = perRack / i.Get<Duration>("rinseTime");
        var (now, ratedAt, rated) = (
            i.Get<GaugePressure>("flowPressure"),
            i.Get<GaugePressure>("ratedPressure"),
            i.Get<VolumeFlow>("ratedFlow")
        );
        var at20 = Openings.AtPressure(flow.InGallonPerMinute, now.InPsi, ratedAt.InPsi);
        var plugged = Openings.PluggedAt(
            (int)Math.Round(i.Number("nozzles")),
            flow.InGallonPerMinute,
            now.InPsi,
            rated.InGallonPerMinute,
            ratedAt.InPsi
        );
        var share = at20 / rated.InGallonPerMinute;
        return new Working()
            .Gives("perRack", perRack.In(Units.Gallon), 2)
            .Gives("flow", flow.In(Units.GallonPerMinute), 2)
            .Gives("flowAtRated", new Amount(at20, Units.GallonPerMinute), 2)
            .Gives("pluggedNozzles", Math.Max(0, plugged), 1)
            .By("W41", "definition", $"{i.Get<Volume>("caught").InGallon:0.00} gal / {i.Number("racks"):0} = {perRack.InGallon:0.00} gal")
            .By(
                "W41",
                "definition",
                $"{perRack.InGallon:0.00} gal · 60 / {i.Get<Duration>("rinseTime").InSecond:0.0} s = {flow.InGallonPerMinute:0.00} gpm"
            )
            .By("W41", "Bernoulli", $"{flow.InGallonPerMinute:0.00} gpm · √({ratedAt.InPsi:0.0}/{now.InPsi:0.0}) = {at20:0.00} gpm")
            .By("W46", "Bernoulli", $"{i.Number("nozzles"):0} · (1 − {at20:0.00}/{rated.InGallonPerMinute:0.00}) = {plugged:0.0}")
            .Note(
                share < 0.9 ? "bench.note.nozzles-closed"
                : share > 1.15 ? "bench.note.nozzles-worn"
                : "bench.note.nozzles-fine"
            )
            .Caution("bench.caution.scald")
            .Answer();
    }

    private static BenchAnswer SolveLeak(BenchInput i)
    {
        var (surface, depth, fall, time) = (i.Get<Area>("surface"), i.Get<Length>("depth"), i.Get<Length>("fall"), i.Get<Duration>("time"));
        if (fall > depth)
        {
            throw new BenchException("fall", Statement.Of("bench.problem.fall-below-floor"));
        }

        var (h0, h1) = (depth.InMetre, depth.InMetre - fall.InMetre);
        var opening = 2 * surface.InSquareMetre * (Math.Sqrt(h0) - Math.Sqrt(h1)) / (time.InSecond * Math.Sqrt(2 * 9.80665));
        var flow = VolumeFlow.FromCubicMetrePerSecond(opening * Math.Sqrt(2 * 9.80665 * h0));
        var kilowatt = flow.InCubicMetrePerSecond * 983 * 4186 * (71 - 60) / 1000;
        return new Working()
            .Gives("leakFlow", flow.In(Units.LitrePerHour), 0)
            .Gives("opening", new Amount(opening * 1e4, Units.SquareCentimetre), 2)
            .Gives("leakHeat", new Amount(kilowatt, Units.Kilowatt), 1)
            .By(
                "W45",
                "Torricelli",
                $"2 · {surface.InSquareMetre:0.000} m² · (√{h0:0.000} − √{h1:0.000}) / ({time.InSecond:0} s · √(2g)) = {opening * 1e4:0.00} cm²"
            )
            .By("W10", "Torricelli", $"{opening * 1e4:0.00} cm² · √(2g · {h0:0.000} m) = {flow.InLitrePerHour:0} L/h")
            .Note("bench.note.fill-shut")
            .Note("bench.note.leak-hides")
            .Caution("bench.caution.scald")
            .Answer();
    }

    private static BenchAnswer SolveDrain(BenchInput i)
    {
        var (surface, depth, diameter) = (i.Get<Area>("surface"), i.Get<Length>("depth"), i.Get<Length>("drainDiameter"));
        var seconds = Openings.DrainTime(surface.InSquareMetre, diameter.InMetre, depth.InMetre);
        var working = new Working()
            .Gives("drainTime", Duration.FromSecond(seconds).In(Units.Second), 0)
            .By(
                "W45",
                "Torricelli",
                $"2 · {surface.InSquareMetre:0.000} m² / (0.6 · π/4 · ({diameter.InMetre * 1000:0.0} mm)² · √(2g)) · √{depth.InMetre:0.000} m = {seconds:0} s"
            );
        if (i.Maybe<Duration>("time") is { } took)
        {
            working
                .Gives("drainOpen", Ratio.FromFraction(seconds / took.InSecond).In(Units.Percent), 0)
                .By("W45", "Torricelli", $"{seconds:0} s / {took.InSecond:0} s = {100 * seconds / took.InSecond:0} %")
                .Note(seconds / took.InSecond < 0.7 ? "bench.note.drain-slow" : "bench.note.drain-fine");
        }

        return working.Caution("bench.caution.scald").Answer();
    }

    private static BenchAnswer SolveLine(BenchInput i)
    {
        var roughness = i.Choice("pipe") switch
        {
            "steel" => 4.6e-5,
            _ => 1.5e-6,
        };
        // About 0.9 for each elbow or valve of the small sizes (from memory).
        var pipe = new Pipe(
            i.Get<Length>("pipeDiameter").InMetre,
            i.Get<Length>("pipeLength").InMetre,
            roughness,
            0.9 * i.Number("fittings")
        );
        var flow = i.Get<VolumeFlow>("flow");
        var at = i.Get<Temperature>("waterTemperature").InCelsius;
        var run = pipe.At(flow.InCubicMetrePerSecond, at);
        var working = new Working()
            .Gives("loss", GaugePressure.FromKilopascal(run.Loss / 1000).In(Units.Psi), 1)
            .Gives("speed", Speed.FromMetrePerSecond(run.Speed).In(Units.MetrePerSecond), 2)
            .By("W50", "Darcy", $"v = {run.Speed:0.00} m/s, Re = {run.Reynolds:0}, f = {run.Friction:0.0000}")
            .By(
                "W50",
                "Darcy",
                $"({run.Friction:0.0000} · {pipe.Length:0.0}/{pipe.Diameter * 1000:0.0e0} mm + {pipe.Fittings:0.0}) · ρv²/2 = {run.Loss / 1000:0.0} kPa"
            );
        if (run.Speed > 1.5 && i.Choice("pipe") == "copper")
        {
            working.Note("bench.note.copper-speed");
        }

        return working.Note("bench.note.fittings-guess").Answer();
    }

    private static BenchAnswer SolveFill(BenchInput i)
    {
        var (tank, time, rated) = (i.Get<Volume>("tank"), i.Get<Duration>("time"), i.Get<VolumeFlow>("ratedFlow"));
        var flow = tank / time;
        var share = flow.InGallonPerMinute / rated.InGallonPerMinute;
        return new Working()
            .Gives("flow", flow.In(Units.GallonPerMinute), 2)
            .Gives("againstRated", Ratio.FromFraction(share).In(Units.Percent), 0)
            .By("W41", "definition", $"{tank.InGallon:0.0} gal · 60 / {time.InSecond:0} s = {flow.InGallonPerMinute:0.00} gpm")
            .Note(share < 0.8 ? "bench.note.fill-slow" : "bench.note.fill-fine")
            .Answer();
    }
}
