using Rinsewright.Engine.Quantities;

namespace Rinsewright.Engine.Bench;

/// <summary>
/// Where the product of a drum went: what it should have been, and what each reading explains of the difference. Equation B5: racks, then rinse, then lost water, then strength, each with the
/// ones before it as read, so that the parts add up.
/// </summary>
internal static class DifferenceTool
{
    // Half-widths of the readings, as shares: drum and days, counter, bucket or meter, titration (common practice, no source).
    private const double DrumBand = 0.05;
    private const double CountBand = 0.02;
    private const double WaterBand = 0.05;
    private const double TitrationBand = 0.06;

    public static BenchTool Where { get; } =
        new(
            "where-it-went",
            BenchArea.Cost,
            [
                new("drum", Units.Kilogram, 3.6, 0.1, 2000, 0.1),
                FieldsOf.Number("drumDays", 4, 0.1, 1000, 0.5),
                FieldsOf.Number("racksPerDay", 150, 1, 50000, 10),
                FieldsOf.Number("fillsPerDay", 1, 0, 50, 1),
                FieldsOf.Tank(),
                FieldsOf.RinsePerRack(),
                FieldsOf.Strength(),
                FieldsOf.Number("racksCounted", null, 0, 50000, 0, optional: true),
                new("rinseFound", Units.Gallon, null, 0.01, 20, 0, Optional: true),
                new("waterMetered", Units.Gallon, null, 0, 100000, 0, Optional: true),
                new("strengthFound", Units.GramPerLitre, null, 0, 50, 0, Optional: true),
                FieldsOf.Number("detergentPrice", null, 0, 1000, 0, optional: true),
            ],
            [],
            Solve
        );

    private static BenchAnswer Solve(BenchInput i)
    {
        var (racks, fills) = (i.Number("racksPerDay"), i.Number("fillsPerDay"));
        var (tank, rinse, strength) = (
            i.Get<Volume>("tank").InLitre,
            i.Get<Volume>("rinsePerRack").InLitre,
            i.Get<MassConcentration>("strength").InGramPerLitre
        );
        var should = ((fills * tank) + (racks * rinse)) * strength;
        var did = i.Get<Mass>("drum").InGram / i.Number("drumDays");
        var extra = did - should;
        var working = new Working();
        var parts = new List<(string Id, double Grams)>();

        var counted = i.Find("racksCounted")?.Value;
        if (counted is { } n)
        {
            parts.Add(("byRacks", (n - racks) * rinse * strength));
        }

        var n1 = counted ?? racks;
        var found = i.Maybe<Volume>("rinseFound")?.InLitre;
        if (found is { } r)
        {
            parts.Add(("byRinse", n1 * (r - rinse) * strength));
        }

        var water = (fills * tank) + (n1 * (found ?? rinse));
        var lost = i.Maybe<Volume>("waterMetered")?.InLitre - water;
        if (lost is { } gone)
        {
            parts.Add(("byLostWater", gone * strength));
        }

        var through = water + (lost ?? 0);
        var titrated = i.Maybe<MassConcentration>("strengthFound")?.InGramPerLitre;
        if (titrated is { } c)
        {
            parts.Add(("byStrength", through * (c - strength)));
        }

        var rest = extra - parts.Sum(p => p.Grams);
        var band = Math.Sqrt(
            Square(DrumBand * did)
                + Square((counted is null ? 0 : CountBand) * n1 * (found ?? rinse) * strength)
                + Square((found is null && lost is null ? 0 : WaterBand) * through * strength)
                + Square((titrated is null ? 0 : TitrationBand) * through * (titrated ?? 0))
        );
        Amount Grams(double value) => new(value, Units.Gram);
        working
            .Gives("unexplained", Grams(rest), 0, Grams(rest - band), Grams(rest + band))
            .Gives("shouldUse", Grams(should), 0)
            .Gives("didUse", Grams(did), 0)
            .Gives("extraPerDay", Grams(extra), 0);
        foreach (var (id, grams) in parts)
        {
            Part(working, id, grams);
        }

        if (i.Find("detergentPrice") is { } price)
        {
            working.Gives("extraCostPerMonth", 30.4 * extra / 1000 * price.Value, 2);
        }

        working
            .By("C24", "mixed tank", $"({fills:0.#} · {tank:0.0} L + {racks:0} · {rinse:0.00} L) · {strength:0.00} g/L = {should:0} g")
            .By("B5", "definition", $"{i.Get<Mass>("drum").InGram:0} g / {i.Number("drumDays"):0.0} d = {did:0} g")
            .By(
                "B5",
                "mass balance",
                $"{did:0} g − {should:0} g{string.Concat(parts.Select(p => Signed(p.Grams)))} = {rest:0} ± {band:0} g"
            );
        return Judge(working, extra, rest, band, lost, (counted, found, titrated))
            .Note("bench.note.all-rinse-reaches-tank")
            .Caution("bench.caution.drum")
            .Caution("bench.caution.alkali")
            .Answer();
    }

    // Each by its own name, so that its words are found.
    private static void Part(Working working, string id, double grams)
    {
        var amount = new Amount(grams, Units.Gram);
        _ = id switch
        {
            "byRacks" => working.Gives("byRacks", amount, 0),
            "byRinse" => working.Gives("byRinse", amount, 0),
            "byLostWater" => working.Gives("byLostWater", amount, 0),
            _ => working.Gives("byStrength", amount, 0),
        };
    }

    private static Working Judge(
        Working working,
        double extra,
        double rest,
        double band,
        double? lost,
        (double? Racks, double? Rinse, double? Strength) read
    )
    {
        working.Note(
            Math.Abs(rest) > band ? (rest > 0 ? "bench.note.still-missing" : "bench.note.explained-too-much")
            : Math.Abs(extra) <= band ? "bench.note.use-agrees"
            : "bench.note.all-explained"
        );
        if (lost is < 0)
        {
            working.Note("bench.note.meter-below-racks");
        }

        if (Math.Abs(rest) <= band)
        {
            return working;
        }

        // What is still to be read, the cheapest first.
        if (read.Strength is null)
        {
            working.Note("bench.note.read-titration");
        }

        if (read.Racks is null)
        {
            working.Note("bench.note.read-counter");
        }

        if (lost is null)
        {
            working.Note("bench.note.read-level");
        }

        if (read.Rinse is null)
        {
            working.Note("bench.note.read-bucket");
        }

        return rest > 0 && lost is not null && read is { Racks: not null, Rinse: not null, Strength: not null }
            ? working.Note("bench.note.taken-or-spilt")
            : working;
    }

    private static string Signed(double grams) =>
        (grams < 0 ? " + " : " − ") + Math.Abs(grams).ToString("0", System.Globalization.CultureInfo.InvariantCulture) + " g";

    private static double Square(double x) => x * x;
}
