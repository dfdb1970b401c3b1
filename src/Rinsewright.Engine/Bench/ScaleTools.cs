using Rinsewright.Engine.Chemistry;
using Rinsewright.Engine.Heat;
using Rinsewright.Engine.Quantities;
using Rinsewright.Engine.Records;
using Rinsewright.Engine.Water;

namespace Rinsewright.Engine.Bench;

/// <summary>Hardness, scale, builders, softener, deliming. The kernels stand in <c>Water</c> and <c>Chemistry</c>.</summary>
internal static class ScaleTools
{
    // Share of the carbonate that can fall out which sticks to hot surfaces at 60 °C: 1.5 to 3 % of the hardness that passes (household heater study, second-hand), and at least threefold unsure.
    private const double StickingLow = 0.01;
    private const double StickingHigh = 0.05;
    private const double ScaleDensity = 2500; // kg/m³

    public static BenchTool Scale { get; } =
        new(
            "scale",
            BenchArea.Scale,
            [
                new("ph", Units.PH, 7.6, 5, 11, 0.1),
                new("calciumHardness", Units.HardnessMilligramPerLitre, null, 1, 1500, 10),
                new("alkalinity", Units.AlkalinityMilligramPerLitre, null, 1, 1000, 10),
                new("dissolved", Units.MilligramPerLitre, 300, 1, 5000, 50),
                FieldsOf.At("sampleTemperature", 60, 32, 150),
                FieldsOf.At("hotTemperature", 180, 32, 194),
                new("waterPerDay", Units.Gallon, null, 1, 20000, 0, Optional: true),
                new("heatedArea", Units.SquareFoot, null, 0.1, 100, 0, Optional: true),
            ],
            [new("heating", ["closed", "open"], "closed")],
            SolveScale,
            "hotTemperature"
        );

    public static BenchTool Builder { get; } =
        new(
            "builder",
            BenchArea.Scale,
            [FieldsOf.Hardness(), new("builderShare", Units.Percent, 30, 0.5, 90, 5), FieldsOf.Strength()],
            [new("builder", ["tripolyphosphate", "edta", "nta", "mgda", "glda", "citrate"], "tripolyphosphate")],
            SolveBuilder,
            "hardness"
        );

    public static BenchTool Softener { get; } =
        new(
            "softener",
            BenchArea.Scale,
            [
                FieldsOf.Hardness(),
                new("iron", Units.MilligramPerLitre, 0, 0, 20, 0.5),
                new("waterPerDay", Units.Gallon, 600, 1, 20000, 50),
                new("resin", Units.Litre, 57, 1, 2000, 10),
                new("saltPerResin", Units.GramPerLitre, 128, 90, 250, 10),
            ],
            [],
            SolveSoftener,
            "waterPerDay"
        );

    public static BenchTool Delime { get; } =
        new(
            "delime",
            BenchArea.Scale,
            [
                new("scaleMass", Units.Gram, 300, 1, 20000, 50),
                new("acidShare", Units.Percent, 75, 1, 100, 5),
                new("density", Units.GramPerLitre, 1580, 900, 2000),
                new("excess", Units.Percent, 40, 0, 200, 10),
                FieldsOf.Tank(),
            ],
            [
                new("acid", ["phosphoric", "citric", "sulfamic", "glycolic", "methanesulfonic", "lactic"], "phosphoric"),
                new("chlorineOff", ["unknown", "no", "yes"], "unknown") { Leads = true },
                new("drained", ["unknown", "no", "yes"], "unknown") { Leads = true },
                new("noChlorine", ["unknown", "no", "yes"], "unknown") { Leads = true },
            ],
            SolveDelime
        );

    private static BenchAnswer SolveScale(BenchInput i)
    {
        var water = new WaterAnalysis(
            i.Get<Temperature>("sampleTemperature"),
            i.Get<Acidity>("ph"),
            i.Get<Hardness>("calciumHardness"),
            i.Get<Alkalinity>("alkalinity"),
            i.Get<MassConcentration>("dissolved")
        );
        var (cold, hot) = (water.At, i.Get<Temperature>("hotTemperature"));
        var heating = i.Choice("heating") == "closed" ? Heating.Closed : Heating.SamePH;
        ScaleIndices there,
            here;
        try
        {
            there = ScaleIndices.Of(water, hot, heating);
            here = ScaleIndices.Of(water, cold);
        }
        catch (Exception e) when (e is InvalidOperationException or ArgumentException)
        {
            throw new BenchException("alkalinity", Statement.Of("bench.problem.alkalinity-for-ph"));
        }

        var working = new Working()
            .Gives("precipitable", there.Precipitable.In(Units.MilligramPerLitre), 0)
            .Gives("saturation", there.Saturation, 2)
            .Gives("ryznar", there.Ryznar, 1)
            .Gives("puckorius", there.Puckorius, 1)
            .Gives("phThere", there.PH.In(Units.PH), 2)
            .Gives("saturationCold", here.Saturation, 2)
            .Gives("precipitableCold", here.Precipitable.In(Units.MilligramPerLitre), 0)
            .By("W25", "plummer-1982", $"{hot.InCelsius:0} °C: pH {there.PH.InPH:0.00}")
            .By("W26", "plummer-1982", $"log₁₀({{Ca}}{{CO₃}}/Kₛ) = {there.Saturation:0.00}")
            .By("W26", "definition", $"2 · {there.PH.InPH - there.Saturation:0.00} − {there.PH.InPH:0.00} = {there.Ryznar:0.0}")
            .Note("bench.note.indices-direction")
            .Note(
                there.Saturation > 0.3 ? "bench.note.scaling"
                : there.Saturation < -0.3 ? "bench.note.dissolving"
                : "bench.note.near-balance"
            );
        if (here.Saturation < 0 && there.Saturation > 0)
        {
            working.Note("bench.note.changes-sign");
        }

        if (i.Maybe<Volume>("waterPerDay") is { } daily && there.Precipitable.InMilligramPerLitre > 0)
        {
            // From 60 °C to the hot surface the amount grows with what can fall out; the share that sticks is the guess.
            var passing = there.Precipitable.InGramPerLitre * daily.InLitre * 365 / 1000;
            Amount Kilograms(double share) => new(passing * share, Units.Kilogram);
            working
                .Gives("scalePerYear", Kilograms(Math.Sqrt(StickingLow * StickingHigh)), 2, Kilograms(StickingLow), Kilograms(StickingHigh))
                .By("B1", "household-heater-study", $"{there.Precipitable.InMilligramPerLitre:0} mg/L · {daily.InLitre:0} L · 365 · 1…5 %")
                .Note("bench.note.scale-guess");
            if (i.Maybe<Area>("heatedArea") is { } area)
            {
                Amount Thickness(double share) => new(passing * share / (area.InSquareMetre * ScaleDensity) * 1000, Units.Millimetre);
                var middle = Thickness(Math.Sqrt(StickingLow * StickingHigh));
                working
                    .Gives("thicknessPerYear", middle, 2, Thickness(StickingLow), Thickness(StickingHigh))
                    .Gives("hotterElement", new Amount(ScaleLayer.SheathRise(77.5e3, middle.SI), Units.CelsiusDifference), 0)
                    .Note("bench.note.element-scale");
                Amount? Lost(double share) =>
                    ScaleLayer.FuelLost(Thickness(share).Value / 1000) is { } lost ? new Amount(lost * 100, Units.Percent) : null;
                if (Lost(Math.Sqrt(StickingLow * StickingHigh)) is { } fuel)
                {
                    working.Gives("fuelLost", fuel, 1, Lost(StickingLow), Lost(StickingHigh)).Note("bench.note.fuel-lost");
                }
            }
        }

        return working.Answer();
    }

    private static BenchAnswer SolveBuilder(BenchInput i)
    {
        var hardness = i.Get<Hardness>("hardness");
        var kind = i.Choice("builder") switch
        {
            "edta" => Chemistry.Builder.Edta,
            "nta" => Chemistry.Builder.Nta,
            "mgda" => Chemistry.Builder.Mgda,
            "glda" => Chemistry.Builder.Glda,
            "citrate" => Chemistry.Builder.Citrate,
            _ => Chemistry.Builder.Tripolyphosphate,
        };
        var share = i.Get<Ratio>("builderShare");
        var needed = Sequestrant.Needed(hardness, kind);
        var product = Sequestrant.Product(hardness, kind, share);
        var strength = i.Get<MassConcentration>("strength");
        var working = new Working()
            .Gives("product", product.In(Units.GramPerLitre), 2)
            .Gives("builderNeeded", needed.In(Units.MilligramPerLitre), 0);
        if (needed.InMilligramPerLitre > 0)
        {
            working.Gives("covered", (strength / product).In(Units.Percent), 0);
        }

        working
            .By(
                "C45",
                "stoichiometry",
                $"{hardness.InMilligramPerLitre:0} mg/L · {Sequestrant.PerGram(kind):0.00} = {needed.InMilligramPerLitre:0} mg/L"
            )
            .By("C45", "stoichiometry", $"{needed.InMilligramPerLitre:0} mg/L / {share.InPercent:0} % = {product.InGramPerLitre:0.00} g/L");
        if (kind == Chemistry.Builder.Tripolyphosphate)
        {
            var worst = Sequestrant.WorstFilm(hardness) / share.InFraction;
            working
                .Gives("worstFilm", worst.In(Units.GramPerLitre), 2)
                .By(
                    "C45",
                    "vance-1969",
                    $"5 Ca : 2 · {needed.InMilligramPerLitre:0} · 0.4 / {share.InPercent:0} % = {worst.InGramPerLitre:0.00} g/L"
                )
                .Note("bench.note.half-detergent");
        }

        return working.Note(hardness.InMilligramPerLitre > 350 ? "bench.note.soften-first" : "bench.note.label-rules").Answer();
    }

    private static BenchAnswer SolveSoftener(BenchInput i)
    {
        var softener = new Water.Softener(i.Get<Volume>("resin"), i.Get<MassConcentration>("saltPerResin"));
        var hardness = i.Get<Hardness>("hardness");
        if (softener.Capacity() is not { } capacity)
        {
            throw new BenchException("saltPerResin", Statement.Of("bench.problem.salt"));
        }

        var plan =
            softener.Plan(hardness, i.Get<MassConcentration>("iron"), i.Get<Volume>("waterPerDay"))
            ?? throw new BenchException("hardness", Statement.Of("bench.problem.nothing-to-soften"));
        var days = plan.Interval.InSecond / 86400;
        return new Working()
            .Gives("interval", plan.Interval.In(Units.Day), 1)
            .Gives("dailyHardness", plan.Daily.In(Units.Gram), 0)
            .Gives("capacity", capacity.In(Units.Kilogram), 2)
            .Gives("saltEach", plan.SaltEach.In(Units.Kilogram), 1)
            .Gives("saltPerYear", (plan.SaltEach * (365 / days)).In(Units.Kilogram), 0)
            .Gives("sodium", plan.SodiumAdded.In(Units.MilligramPerLitre), 0)
            .By(
                "W60",
                "softener-sizing",
                $"({hardness.InGrainPerGallon:0.0} + 2 · Fe) gpg · {i.Get<Volume>("waterPerDay").InGallon:0} gal = {plan.Daily.InGram:0} g"
            )
            .By("W61", "softener-capacity", $"{capacity.InGram:0} g / {plan.Daily.InGram:0} g = {days:0.0} d")
            .Note("bench.note.reserve-day")
            .Note("bench.note.test-softened")
            .Answer();
    }

    private static BenchAnswer SolveDelime(BenchInput i)
    {
        bool? Known(string id) =>
            i.Choice(id) switch
            {
                "yes" => true,
                "no" => false,
                _ => null,
            };
        var gate = new DelimeGate(Known("chlorineOff"), Known("drained"), Known("noChlorine"));
        if (!gate.Open)
        {
            var field =
                gate.ChlorineFeedOff != true ? "chlorineOff"
                : gate.Drained != true ? "drained"
                : "noChlorine";
            throw new BenchException(field, Statement.Of("bench.problem.chlorine-first"));
        }

        var acid = i.Choice("acid") switch
        {
            "citric" => LimeAcid.Citric,
            "sulfamic" => LimeAcid.Sulfamic,
            "glycolic" => LimeAcid.Glycolic,
            "methanesulfonic" => LimeAcid.Methanesulfonic,
            "lactic" => LimeAcid.Lactic,
            _ => LimeAcid.Phosphoric,
        };
        var lime = i.Get<Mass>("scaleMass");
        var dose = Chemistry.Delime.Dose(
            lime,
            acid,
            i.Get<Ratio>("acidShare"),
            i.Get<MassConcentration>("density"),
            i.Get<Ratio>("excess")
        );
        var inTank = dose.Product / i.Get<Volume>("tank");
        var working = new Working()
            .Gives("delimeProduct", dose.Product.In(Units.Millilitre), 0)
            .Gives("pureAcid", dose.Acid.In(Units.Gram), 0)
            .Gives("gas", dose.Gas.In(Units.Litre), 0)
            .Gives("productInTank", inTank.In(Units.Percent), 1)
            .By("C40", "stoichiometry", $"{lime.InGram:0} g · {Chemistry.Delime.PerGram(acid):0.00} = {dose.Acid.InGram:0} g")
            .By(
                "C41",
                "stoichiometry",
                $"{dose.Acid.InGram:0} g · (1 + {i.Get<Ratio>("excess").InPercent:0} %) / ({i.Get<Ratio>("acidShare").InPercent:0} % · {i.Get<MassConcentration>("density").InGramPerLitre / 1000:0.00} kg/L) = {dose.Product.InMillilitre:0} mL"
            )
            .Note("bench.note.delime-label")
            .Note("bench.note.delime-finish")
            .Caution("bench.caution.acid")
            .Caution("bench.caution.chlorine-acid")
            .Caution("bench.caution.gas");
        if (acid == LimeAcid.Citric)
        {
            // A fresh bath, before it meets lime; a probe then tells whether the product went in.
            var bath = (dose.Acid * (1 + i.Get<Ratio>("excess").InFraction)) / i.Get<Volume>("tank");
            working
                .Gives("bathConductivity", SolutionConductivity.Citric(bath).In(Units.MillisiemensPerCentimetre), 1)
                .Note("bench.note.citric-bath");
        }

        if (inTank.InPercent > 5)
        {
            working.Note("bench.note.delime-in-steps");
        }

        return working.Answer();
    }
}
