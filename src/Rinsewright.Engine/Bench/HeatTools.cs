using Rinsewright.Engine.Heat;
using Rinsewright.Engine.Quantities;
using Rinsewright.Engine.Records;
using Rinsewright.Engine.Water;

namespace Rinsewright.Engine.Bench;

/// <summary>Heaters and the power they take. The kernels stand in <c>Heat</c>. Every measurement of volts and amps is left to licensed people.</summary>
internal static class HeatTools
{
    public static BenchTool Booster { get; } =
        new(
            "booster",
            BenchArea.Heat,
            [
                FieldsOf.Flow("flow", 2.8),
                FieldsOf.At("incoming", 140, 33, 200),
                FieldsOf.At("wanted", 180, 100, 205),
                FieldsOf.Power("ratedPower", 24),
            ],
            [new("condition", ["sound", "line-lost", "element-open", "low-voltage"], "sound"), Connections],
            SolveBooster,
            "incoming"
        );

    public static BenchTool Currents { get; } =
        new(
            "line-currents",
            BenchArea.Heat,
            [
                FieldsOf.Power("ratedPower", 18),
                new("ratedVoltage", Units.Volt, 208, 100, 600),
                new("supplyVoltage", Units.Volt, 208, 50, 650, 5),
                new("lineA", Units.Ampere, null, 0, 1000, 0, Optional: true),
                new("lineB", Units.Ampere, null, 0, 1000, 0, Optional: true),
                new("lineC", Units.Ampere, null, 0, 1000, 0, Optional: true),
            ],
            [Connections],
            SolveCurrents
        );

    public static BenchTool HeatUp { get; } =
        new(
            "heat-up",
            BenchArea.Heat,
            [
                FieldsOf.Tank(),
                FieldsOf.At("from", 140, 33, 205),
                FieldsOf.At("to", 160, 34, 210),
                FieldsOf.Power("ratedPower", 18),
                new("time", Units.Second, null, 5, 36000, 0, Optional: true),
                new("metal", Units.KilojoulePerKelvin, 45, 0, 500),
                new("lossPerKelvin", Units.WattPerKelvin, 25, 0, 500),
                FieldsOf.At("room", 75, 32, 130),
            ],
            [],
            SolveHeatUp,
            "ratedPower"
        );

    public static BenchTool Incoming { get; } =
        new(
            "incoming-water",
            BenchArea.Heat,
            [FieldsOf.Flow("flow", 2.8), FieldsOf.At("wanted", 180, 100, 205), FieldsOf.Power("ratedPower", 18)],
            [],
            SolveIncoming,
            "ratedPower"
        );

    public static BenchTool Coil { get; } =
        new(
            "steam-coil",
            BenchArea.Heat,
            [
                new("coil", Units.WattPerKelvin, 450, 1, 20000, 25),
                FieldsOf.At("steam", 239, 212, 360),
                FieldsOf.At("water", 160, 33, 210),
                new("scaleThickness", Units.Millimetre, 0, 0, 20, 0.5),
                new("coilArea", Units.SquareFoot, 3, 0.1, 200),
            ],
            [],
            SolveCoil,
            "scaleThickness"
        );

    private static BenchChoice Connections => new("connection", ["delta", "wye", "wye-neutral"], "delta");

    private static double PerDegree(VolumeFlow flow) => flow.InCubicMetrePerSecond * LiquidWater.Density * LiquidWater.HeatCapacity;

    private static ElementDraw Draw(string connection, double a, double b, double c, bool line, double voltage) =>
        connection switch
        {
            "wye" => ThreePhase.Wye(a, b, line ? c : 0, voltage),
            "wye-neutral" => ThreePhase.WyeWithNeutral(a, b, line ? c : 0, voltage),
            _ => ThreePhase.Delta(a, b, c, line, voltage),
        };

    private static BenchAnswer SolveBooster(BenchInput i)
    {
        var (flow, incoming, wanted) = (i.Get<VolumeFlow>("flow"), i.Get<Temperature>("incoming"), i.Get<Temperature>("wanted"));
        if (wanted <= incoming)
        {
            throw new BenchException("wanted", Statement.Of("bench.problem.not-warmer"));
        }

        var share = i.Choice("condition") switch
        {
            "line-lost" => Draw(i.Choice("connection"), 1, 1, 1, line: false, 1).Power,
            "element-open" => Draw(i.Choice("connection"), 1, 1, 0, line: true, 1).Power,
            "low-voltage" => Draw(i.Choice("connection"), 1, 1, 1, line: true, 208.0 / 240).Power,
            _ => 1,
        };
        var per = PerDegree(flow);
        var power = i.Get<Power>("ratedPower") * share;
        var needed = Power.FromKilowatt(per * (wanted.InCelsius - incoming.InCelsius) / 1000);
        var unheld = incoming.InCelsius + (power.InWatt / per);
        var reaches = Temperature.FromCelsius(Math.Min(wanted.InCelsius, unheld));
        var can = VolumeFlow.FromCubicMetrePerSecond(
            power.InWatt / (LiquidWater.Density * LiquidWater.HeatCapacity * (wanted.InCelsius - incoming.InCelsius))
        );
        var rise = wanted.InFahrenheit - incoming.InFahrenheit;
        var working = new Working()
            .Gives("reaches", reaches.In(Units.Fahrenheit), 0)
            .Gives("powerNeeded", needed.In(Units.Kilowatt), 1)
            .Gives("powerGiven", power.In(Units.Kilowatt), 1)
            .Gives("flowHeld", can.In(Units.GallonPerMinute), 2)
            .By("B2", "heat balance", $"0.1442 kW · {flow.InGallonPerMinute:0.00} gpm · {rise:0} °F = {needed.InKilowatt:0.0} kW");
        // Above what is wanted the thermostat switches off: the sum alone would read as steam.
        _ =
            unheld > wanted.InCelsius
                ? working.By(
                    "B2",
                    "heat balance",
                    $"min({wanted.InFahrenheit:0} °F, {incoming.InFahrenheit:0} °F + {power.InKilowatt:0.0} kW / (0.1442 · {flow.InGallonPerMinute:0.00} gpm)) = {wanted.InFahrenheit:0} °F"
                )
                : working.By(
                    "B2",
                    "heat balance",
                    $"{incoming.InFahrenheit:0} °F + {power.InKilowatt:0.0} kW / (0.1442 · {flow.InGallonPerMinute:0.00} gpm) = {(unheld * 1.8) + 32:0} °F"
                );
        if (share < 1)
        {
            working.By("H9", "circuit laws", $"{i.Get<Power>("ratedPower").InKilowatt:0.0} kW · {share:0.000} = {power.InKilowatt:0.0} kW");
        }

        working =
            power >= needed
                ? working.Note("bench.note.booster-holds")
                : working.Note("bench.note.booster-short").Note("bench.note.short-rinse");
        return working.Note("bench.note.idle-and-full").Caution("bench.caution.electric").Caution("bench.caution.scald").Answer();
    }

    private static BenchAnswer SolveCurrents(BenchInput i)
    {
        var rated = i.Get<Power>("ratedPower").InWatt;
        var (v, now) = (i.Get<ElectricPotential>("ratedVoltage").InVolt, i.Get<ElectricPotential>("supplyVoltage").InVolt);
        var full = rated / (Math.Sqrt(3) * v);
        var ratio = now / v;
        var connection = i.Choice("connection");
        var working = new Working();
        Amount Amps(double share) => new(full * share, Units.Ampere);
        var sound = Draw(connection, 1, 1, 1, line: true, ratio);
        var (draw, note) = Drawn(i, connection, sound, full, ratio);
        working.Gives("lineSound", Amps(sound.LineA), 1).By("H9", "circuit laws", $"{rated / 1000:0.0} kW / (√3 · {v:0} V) = {full:0.0} A");
        // What currents of no known fault give is not known.
        if (draw is { } given)
        {
            working
                .Gives("powerGiven", new Amount(rated * given.Power / 1000, Units.Kilowatt), 1)
                .By(
                    "H9",
                    "circuit laws",
                    $"({now:0} V / {v:0} V)² · {rated / 1000:0.0} kW{(note is null or "bench.note.currents-sound" ? "" : $" · {given.Power / sound.Power:0.##}")} = {rated * given.Power / 1000:0.0} kW"
                );
        }

        if (note is not null)
        {
            working.Note(note);
        }

        return working.Note("bench.note.currents-part").Caution("bench.caution.electric").Answer();
    }

    // What the three currents are nearest to, and how to say it; sound and nothing where they were not measured.
    private static (ElementDraw? Draw, string? Note) Drawn(BenchInput i, string connection, ElementDraw sound, double full, double ratio)
    {
        if (
            i.Maybe<ElectricCurrent>("lineA") is not { } a
            || i.Maybe<ElectricCurrent>("lineB") is not { } b
            || i.Maybe<ElectricCurrent>("lineC") is not { } c
        )
        {
            return (sound, null);
        }

        double[] measured = [.. new[] { a.InAmpere, b.InAmpere, c.InAmpere }.Order()];
        double Off(ElementDraw draw) =>
            new[] { draw.LineA, draw.LineB, draw.LineC }
                .Order()
                .Zip(measured, (share, amps) => Math.Abs((full * share) - amps) / full)
                .Max();
        var (best, note) = new (ElementDraw, string)[]
        {
            (sound, "bench.note.currents-sound"),
            (Draw(connection, 1, 1, 1, line: false, ratio), "bench.note.currents-line"),
            (Draw(connection, 1, 1, 0, line: true, ratio), "bench.note.currents-element"),
            (Draw(connection, 1, 0, 0, line: true, ratio), "bench.note.currents-two-elements"),
        }.MinBy(g => Off(g.Item1));
        // Clamp meters and tolerances of elements: a tenth of full current either way (estimate).
        return Off(best) <= 0.1 ? (best, note) : (null, "bench.note.currents-none");
    }

    private static BenchAnswer SolveHeatUp(BenchInput i)
    {
        var tank = i.Get<Volume>("tank");
        var (from, to, room) = (i.Get<Temperature>("from"), i.Get<Temperature>("to"), i.Get<Temperature>("room"));
        if (to <= from)
        {
            throw new BenchException("to", Statement.Of("bench.problem.not-warmer"));
        }

        var capacity = (tank.InCubicMetre * LiquidWater.Density * LiquidWater.HeatCapacity) + i.Get<HeatCapacity>("metal").InJoulePerKelvin;
        var loss = i.Get<HeatConductance>("lossPerKelvin").InWattPerKelvin;
        var body = new LumpedHeat(capacity, loss, room.InCelsius);
        var rated = i.Get<Power>("ratedPower").InWatt;
        var seconds = body.SecondsBetween(from.InCelsius, to.InCelsius, rated);
        var working = new Working()
            .Gives("heatUpTime", seconds is { } s ? Duration.FromSecond(s).In(Units.Second) : null, 0)
            .By(
                "H11",
                "heat balance",
                $"C = {tank.InLitre:0.0} L · 4.115 kJ/(L K) + {i.Get<HeatCapacity>("metal").InJoulePerKelvin / 1000:0} kJ/K = {capacity / 1000:0} kJ/K"
            );
        if (seconds is { } expected)
        {
            working.By("H11", "heat balance", $"C/UA · ln((P/UA − ΔT₀)/(P/UA − ΔT₁)) = {expected:0} s");
        }

        if (i.Maybe<Duration>("time") is { } took)
        {
            var middle = ((from.InCelsius + to.InCelsius) / 2) - room.InCelsius;
            var stored = capacity * (to.InCelsius - from.InCelsius) / took.InSecond;
            var power = stored + (loss * middle);
            if (power <= 0)
            {
                throw new BenchException("room", Statement.Of("bench.problem.room-heats-it"));
            }

            // A degree Fahrenheit of the gauge at either end, and 4 % of the volume: of the heat that the water took up, not of what the room took or gave.
            var doubt = stored / power * Math.Sqrt(Math.Pow(1.4 / (to.InFahrenheit - from.InFahrenheit), 2) + (0.04 * 0.04));
            Amount Kilowatt(double watt) => new(watt / 1000, Units.Kilowatt);
            working
                .Gives("powerGiven", Kilowatt(power), 1, Kilowatt(power * (1 - doubt)), Kilowatt(power * (1 + doubt)))
                .Gives("againstRated", Ratio.FromFraction(power / rated).In(Units.Percent), 0)
                .By(
                    "H11",
                    "heat balance",
                    $"{capacity / 1000:0} kJ/K · {to.InCelsius - from.InCelsius:0.0} K / {took.InSecond:0} s + {loss:0} W/K · {middle:0} K = {power / 1000:0.0} kW"
                );
            Judge(working, power / rated, doubt);
        }

        return working.Note("bench.note.no-water-moving").Caution("bench.caution.electric").Answer();
    }

    // Shares that speak of one fault each; what the band spans stays open.
    private static void Judge(Working working, double share, double doubt)
    {
        (double Share, string Key)[] marks =
        [
            (1, "bench.note.power-sound"),
            (0.751, "bench.note.power-low-voltage"),
            (2.0 / 3, "bench.note.power-element"),
            (0.5, "bench.note.power-line"),
        ];
        var any = false;
        foreach (var (mark, key) in marks)
        {
            if (Math.Abs(share - mark) <= (share * doubt) + 0.03)
            {
                working.Note(key);
                any = true;
            }
        }

        if (!any)
        {
            working.Note(share > 1 ? "bench.note.power-too-much" : "bench.note.power-other");
        }
    }

    private static BenchAnswer SolveIncoming(BenchInput i)
    {
        var (flow, wanted, power) = (i.Get<VolumeFlow>("flow"), i.Get<Temperature>("wanted"), i.Get<Power>("ratedPower"));
        var least = wanted.InCelsius - (power.InWatt / PerDegree(flow));
        var rise = power.InWatt / PerDegree(flow) * 1.8;
        return new Working()
            .Gives("incomingNeeded", least > 0 ? Temperature.FromCelsius(least).In(Units.Fahrenheit) : null, 0)
            .Gives("riseGiven", new Amount(rise, Units.FahrenheitDifference), 0)
            .By("B2", "heat balance", $"{power.InKilowatt:0.0} kW / (0.1442 · {flow.InGallonPerMinute:0.00} gpm) = {rise:0} °F")
            .By("B2", "heat balance", $"{wanted.InFahrenheit:0} °F − {rise:0} °F = {wanted.InFahrenheit - rise:0} °F")
            .Note(least > 0 ? "bench.note.incoming-at-full-rate" : "bench.note.any-water-does")
            .Caution("bench.caution.scald")
            .Answer();
    }

    private static BenchAnswer SolveCoil(BenchInput i)
    {
        var clean = i.Get<HeatConductance>("coil").InWattPerKelvin;
        var (steam, water) = (i.Get<Temperature>("steam").InCelsius, i.Get<Temperature>("water").InCelsius);
        var scaled = ScaleLayer.ScaledCoil(clean, i.Get<Length>("scaleThickness").InMetre, i.Get<Area>("coilArea").InSquareMetre);
        var power = ScaleLayer.CoilPower(scaled, steam, water);
        return new Working()
            .Gives("powerGiven", new Amount(power / 1000, Units.Kilowatt), 1)
            .Gives("coilLeft", Ratio.FromFraction(scaled / clean).In(Units.Percent), 0)
            .By("H13", "limescale-conductivity", $"1 / (1/{clean:0} + s/(k A)) = {scaled:0} W/K")
            .By("H13", "heat balance", $"{scaled:0} W/K · ({steam:0} − {water:0}) K = {power / 1000:0.0} kW")
            .Note("bench.note.steam-trap")
            .Caution("bench.caution.steam")
            .Answer();
    }
}
