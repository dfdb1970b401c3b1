using Rinsewright.Engine.Quantities;
using Rinsewright.Engine.Records;

namespace Rinsewright.Engine.Bench;

/// <summary>What this site's own records say: when to delime again, how a solid detergent washes out.</summary>
internal static class RecordTools
{
    // How far one weighing or one acid count tells the scale of a machine, and how far a single interval tells the next: our estimate, no source.
    private const double Measured = 1.2;
    private const double SingleRecord = 1.5;
    private const double ScaleDensity = 2500; // kg/m³, as in the scale tool

    public static BenchTool Interval { get; } =
        new(
            "delime-interval",
            BenchArea.Scale,
            [
                new("days1", Units.Day, null, 1, 1500),
                new("lime1", Units.Gram, null, 1, 20000),
                new("days2", Units.Day, null, 1, 1500, 0, Optional: true),
                new("lime2", Units.Gram, null, 1, 20000, 0, Optional: true),
                new("days3", Units.Day, null, 1, 1500, 0, Optional: true),
                new("lime3", Units.Gram, null, 1, 20000, 0, Optional: true),
                new("heatedArea", Units.SquareFoot, 4, 0.1, 100),
                new("mostThickness", Units.Millimetre, 0.5, 0.05, 5, 0.1),
                new("daysSince", Units.Day, null, 0, 1500, 0, Optional: true),
            ],
            [],
            SolveInterval,
            "mostThickness"
        );

    public static BenchTool Solid { get; } =
        new(
            "solid-product",
            BenchArea.Dosing,
            [
                FieldsOf.Tank(),
                FieldsOf.RinsePerRack(),
                FieldsOf.Strength(),
                new("solidMass", Units.Kilogram, 3.6, 0.1, 50, 0.1),
                FieldsOf.Number("racksPerDay", 150, 1, 10000, 10),
                FieldsOf.Number("fillsPerDay", 1, 0, 20, 1),
                new("washedOut", Units.Gram, null, 0.1, 5000, 0, Optional: true),
                new("sprayed", Units.Second, null, 1, 3600, 0, Optional: true),
            ],
            [],
            SolveSolid,
            "strength"
        );

    private static BenchAnswer SolveInterval(BenchInput i)
    {
        var records = new List<(double Days, double Grams)> { (Days(i, "days1"), i.Get<Mass>("lime1").InGram) };
        foreach (var n in (int[])[2, 3])
        {
            var (days, lime) = (i.Maybe<Duration>($"days{n}"), i.Maybe<Mass>($"lime{n}"));
            if (days is null != lime is null)
            {
                throw new BenchException(days is null ? $"days{n}" : $"lime{n}", Statement.Of("bench.problem.half-a-record"));
            }

            if (days is { } d && lime is { } m)
            {
                records.Add((d.InSecond / 86400, m.InGram));
            }
        }

        var middle = records.Sum(r => r.Grams) / records.Sum(r => r.Days);
        var unsure = records.Count == 1 ? SingleRecord : Measured;
        var (low, high) = (records.Min(r => r.Grams / r.Days) / unsure, records.Max(r => r.Grams / r.Days) * unsure);
        var most = i.Get<Area>("heatedArea").InSquareMetre * i.Get<Length>("mostThickness").InMetre * ScaleDensity * 1000;
        Amount Apart(double rate) => new(most / rate, Units.Day);
        var working = new Working()
            .Gives("limeInterval", Apart(middle), 0, Apart(high), Apart(low))
            .Gives("limePerDay", PerDay(middle), 1, PerDay(low), PerDay(high))
            .Gives("limeAllowed", new Amount(most, Units.Gram), 0);
        if (i.Maybe<Duration>("daysSince") is { } since)
        {
            var days = since.InSecond / 86400;
            working.Gives(
                "limeNow",
                new Amount(middle * days, Units.Gram),
                0,
                new Amount(low * days, Units.Gram),
                new Amount(high * days, Units.Gram)
            );
            working.Note(
                low * days > most ? "bench.note.delime-overdue"
                : high * days > most ? "bench.note.delime-due"
                : "bench.note.delime-later"
            );
        }

        return working
            .By("B9", "definition", $"{records.Sum(r => r.Grams):0} g / {records.Sum(r => r.Days):0} d = {middle:0.0} g/d")
            .By(
                "B10",
                "definition",
                $"{i.Get<Area>("heatedArea").InSquareMetre:0.00} m² · {i.Get<Length>("mostThickness").InMillimetre:0.00} mm · 2.5 g/cm³ = {most:0} g"
            )
            .By("B10", "definition", $"{most:0} g / {middle:0.0} g/d = {most / middle:0} d")
            .Note(records.Count == 1 ? "bench.note.one-record" : "bench.note.own-records")
            .Note("bench.note.delime-gate")
            .Answer();
    }

    private static Amount PerDay(double grams) => new(grams, Units.Gram);

    private static double Days(BenchInput i, string field) => i.Get<Duration>(field).InSecond / 86400;

    private static BenchAnswer SolveSolid(BenchInput i)
    {
        var strength = i.Get<MassConcentration>("strength").InGramPerLitre;
        if (strength <= 0)
        {
            throw new BenchException("strength", Statement.Of("bench.problem.no-strength"));
        }

        var charge = strength * i.Get<Volume>("tank").InLitre;
        var hold = strength * i.Get<Volume>("rinsePerRack").InLitre;
        var (racks, fills) = (i.Number("racksPerDay"), i.Number("fillsPerDay"));
        var daily = (charge * fills) + (hold * racks);
        var solid = i.Get<Mass>("solidMass").InGram;
        var working = new Working()
            .Gives("solidDays", new Amount(solid / daily, Units.Day), 1)
            .Gives("solidRacks", solid / hold, 0)
            .Gives("holdDose", new Amount(hold, Units.Gram), 1)
            .Gives("charge", new Amount(charge, Units.Gram), 0)
            .By("C22", "mixed tank", $"{strength:0.00} g/L · {i.Get<Volume>("rinsePerRack").InLitre:0.00} L = {hold:0.0} g")
            .By("B7", "definition", $"{charge:0} g · {fills:0} + {hold:0.0} g · {racks:0} = {daily:0} g/d");
        var (weighed, sprayed) = (i.Maybe<Mass>("washedOut"), i.Maybe<Duration>("sprayed"));
        if (weighed is null != sprayed is null)
        {
            throw new BenchException(weighed is null ? "washedOut" : "sprayed", Statement.Of("bench.problem.half-a-weighing"));
        }

        if (weighed is { } grams && sprayed is { } seconds)
        {
            var rate = grams.InGram / seconds.InSecond;
            working
                .Gives("sprayPerRack", new Amount(hold / rate, Units.Second), 1)
                .Gives("sprayPerFill", new Amount(charge / rate, Units.Second), 0)
                .By("B8", "definition", $"{grams.InGram:0} g / {seconds.InSecond:0} s = {rate:0.00} g/s")
                .Note("bench.note.solid-small");
        }
        else
        {
            working.Note("bench.note.solid-weigh");
        }

        return working.Note("bench.note.label-rules").Caution("bench.caution.solid").Answer();
    }
}
