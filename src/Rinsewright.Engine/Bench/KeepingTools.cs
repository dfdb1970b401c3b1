using Rinsewright.Engine.Chemistry;
using Rinsewright.Engine.Heat;
using Rinsewright.Engine.Quantities;
using Rinsewright.Engine.Water;

namespace Rinsewright.Engine.Bench;

/// <summary>Strength to start from, bleach that ages, heat that leaves with the vapour. The kernels stand in <c>Chemistry</c> and <c>Water</c>.</summary>
internal static class KeepingTools
{
    public static BenchTool Recommended { get; } =
        new(
            "recommended-strength",
            BenchArea.Strength,
            [
                FieldsOf.Hardness(),
                FieldsOf.Tank(),
                FieldsOf.RinsePerRack(),
                new("labelLow", Units.GramPerLitre, null, 0.01, 50, 0, Optional: true),
                new("labelHigh", Units.GramPerLitre, null, 0.01, 50, 0, Optional: true),
            ],
            [new("soil", ["light", "normal", "heavy"], "normal")],
            SolveRecommended
        );

    public static BenchTool Bleach { get; } =
        new(
            "bleach-age",
            BenchArea.Dosing,
            [
                new("filledAt", Units.Percent, 12.5, 1, 16, 0.5),
                new("age", Units.Day, 30, 0, 180, 7),
                FieldsOf.At("storeTemperature", 75, 33, 100) with
                {
                    Nudge = 5,
                },
                new("pumpNow", Units.MillilitrePerMinute, null, 0.1, 5000, 0, Optional: true),
            ],
            [],
            SolveBleach,
            "age"
        );

    public static BenchTool Vapour { get; } =
        new(
            "vent-loss",
            BenchArea.Heat,
            [
                new("exhaust", Units.LitrePerMinute, 5000, 1, 200000, 100),
                FieldsOf.At("exhaustTemperature", 113, 40, 200),
                FieldsOf.At("room", 77, 35, 130),
                new("roomHumidity", Units.Percent, 50, 0, 100, 5),
                FieldsOf.At("tankTemperature", 150, 41, 194),
                new("surface", Units.SquareFoot, 3.23, 0.2, 40, 0.1),
                FieldsOf.Number("energyPrice", null, 0, 10, 0, optional: true),
                FieldsOf.Number("hoursPerDay", 6, 0.1, 24, 0),
            ],
            [],
            SolveVapour,
            "exhaust"
        );

    private static BenchAnswer SolveRecommended(BenchInput i)
    {
        var hardness = i.Get<Hardness>("hardness");
        var soil = i.Choice("soil") switch
        {
            "light" => SoilLoad.Light,
            "heavy" => SoilLoad.Heavy,
            _ => SoilLoad.Normal,
        };
        var (low, high) = (i.Maybe<MassConcentration>("labelLow"), i.Maybe<MassConcentration>("labelHigh"));
        if (low > high)
        {
            throw new BenchException("labelHigh", Records.Statement.Of("bench.problem.label-crossed"));
        }

        var usual = DetergentBand.Of(soil, hardness);
        if (usual is null && (low is null || high is null))
        {
            throw new BenchException("hardness", Records.Statement.Of("bench.problem.soften-first"));
        }

        var (from, to) = (low ?? usual!.Low, high ?? usual!.High);
        if (from > to)
        {
            // One end from the label, the other from what is usual: the label's rules.
            (from, to) = low is null ? (to, to) : (from, from);
        }

        var start = MassConcentration.FromGramPerLitre((from.InGramPerLitre + to.InGramPerLitre) / 2);
        var dosing = new TankDosing(i.Get<Volume>("tank"), i.Get<Volume>("rinsePerRack"));
        return new Working()
            .Gives("startAt", start.In(Units.GramPerLitre), 2, from.In(Units.GramPerLitre), to.In(Units.GramPerLitre))
            .Gives("charge", dosing.Charge(start).In(Units.Gram), 0)
            .Gives("holdDose", dosing.HoldDose(start).In(Units.Gram), 2)
            .By(
                "C46",
                low is null && high is null ? "common practice" : "product label",
                $"{hardness.InMilligramPerLitre:0} mg/L: {from.InGramPerLitre:0.00} … {to.InGramPerLitre:0.00} g/L"
            )
            .By("C20", "definition", $"{dosing.Tank.InLitre:0.0} L · {start.InGramPerLitre:0.00} g/L = {dosing.Charge(start).InGram:0} g")
            .Note(low is null && high is null ? "bench.note.band-from-memory" : "bench.note.band-by-label")
            .Note("bench.note.label-rules")
            .Note("bench.note.titrate-and-look")
            .Caution("bench.caution.alkali")
            .Answer();
    }

    private static BenchAnswer SolveBleach(BenchInput i)
    {
        var (filled, age, at) = (i.Get<Ratio>("filledAt"), i.Get<Duration>("age"), i.Get<Temperature>("storeTemperature"));
        var left = BleachAge.StrengthLeft(filled, age, at);
        var share = left.InFraction / filled.InFraction;
        var days = age.InSecond / 86400;

        // Another published equation is 1.3 to 1.5 times off at 25 °C: the same loss by so much more or less time.
        var (least, most) = (
            BleachAge.StrengthLeft(filled, Duration.FromSecond(Math.Min(180, 1.4 * days) * 86400), at),
            BleachAge.StrengthLeft(filled, age / 1.4, at)
        );
        var working = new Working()
            .Gives("strengthLeft", left.In(Units.Percent), 1, least.In(Units.Percent), most.In(Units.Percent))
            .Gives("shareLeft", Ratio.FromFraction(share).In(Units.Percent), 0)
            .Gives("moreByHand", 1 / share, 2);
        if (BleachAge.Until(Ratio.FromFraction(0.7), filled, at) is { } until)
        {
            working.Gives("daysToSeventy", until.In(Units.Day), 0);
        }

        if (i.Maybe<VolumeFlow>("pumpNow") is { } pump)
        {
            working.Gives("pumpSetting", (pump / share).In(Units.MillilitrePerMinute), 1);
        }

        var rise = (1 / left.InPercent) - (1 / filled.InPercent);
        working
            .By("C34", "bleach-decay-table", $"1 / (1/{filled.InPercent:0.0#} + {rise:0.0000}) = {left.InPercent:0.0#} %")
            .By("C34", "definition", $"{filled.InPercent:0.0#} / {left.InPercent:0.0#} = {1 / share:0.00}");
        if (at.InFahrenheit < 70)
        {
            working.Note("bench.note.colder-than-table");
        }

        return working
            .Note(share < 0.7 ? "bench.note.bleach-discard" : "bench.note.bleach-date")
            .Note("bench.note.bleach-model")
            .Note("bench.note.strip-rules")
            .Caution("bench.caution.chlorine-acid")
            .Answer();
    }

    private static BenchAnswer SolveVapour(BenchInput i)
    {
        var room = new RoomAir(i.Get<Temperature>("room").InCelsius, i.Get<Ratio>("roomHumidity").InFraction);
        var (flow, leaving) = (i.Get<VolumeFlow>("exhaust"), i.Get<Temperature>("exhaustTemperature").InCelsius);
        if (leaving < room.Celsius)
        {
            throw new BenchException("exhaustTemperature", Records.Statement.Of("bench.problem.exhaust-colder"));
        }

        var exhaust = Evaporation.Exhaust(flow.InCubicMetrePerSecond, leaving, room);
        var water = i.Get<Temperature>("tankTemperature").InCelsius;
        var latent = Evaporation.LatentAt(water);
        var surface = Math.Max(0, Evaporation.OpenSurface(water, room, 0.1, latent));
        var area = i.Get<Area>("surface").InSquareMetre;
        var kilowatt = exhaust.Heat / 1000;
        var open = surface * area * latent;
        var working = new Working()
            .Gives("exhaustHeat", new Amount(kilowatt, Units.Kilowatt), 1)
            .Gives("exhaustVapour", new Amount(3600 * exhaust.Vapour, Units.KilogramPerHour), 1)
            .Gives(
                "openSurface",
                new Amount(open, Units.Kilowatt),
                1,
                new Amount(0.74 * open, Units.Kilowatt),
                new Amount(1.7 * open, Units.Kilowatt)
            )
            .By(
                "W15",
                "ideal gases",
                $"{flow.InCubicMetrePerSecond:0.000} m³/s: {Evaporation.DryAir(flow.InCubicMetrePerSecond, leaving):0.000} kg/s · ({MoistAir.SaturatedHumidity(leaving):0.0000} − {room.Humidity:0.0000}) = {3600 * exhaust.Vapour:0.0} kg/h"
            )
            .By("W15", "heat balance", $"{kilowatt:0.0} kW")
            .By("W14", "ashrae-pool-1998", $"{1000 * surface:0.00} g/(s m²) · {area:0.00} m² · {latent:0} kJ/kg = {open:0.0} kW");
        if (i.Find("energyPrice") is { } price)
        {
            working.Gives("costPerDay", price.Value * kilowatt * i.Number("hoursPerDay"), 2);
        }

        return working.Note("bench.note.exhaust-saturated").Note("bench.note.spray-not-surface").Caution("bench.caution.scald").Answer();
    }
}
