using Rinsewright.Engine.Chemistry;
using Rinsewright.Engine.Quantities;

namespace Rinsewright.Engine.Bench;

/// <summary>Dosing of detergent, rinse additive and sanitizer. The kernels stand in <c>Chemistry</c>.</summary>
internal static class DosingTools
{
    /// <summary>What the percent on a bleach label counts.</summary>
    public static BenchChoice LabelBasis { get; } = new("labelBasis", ["hypochlorite", "available", "trade"], "hypochlorite");

    public static BenchTool Tank { get; } =
        new(
            "tank-dosing",
            BenchArea.Dosing,
            [FieldsOf.Tank(), FieldsOf.RinsePerRack(), FieldsOf.Strength(), FieldsOf.Number("racks", 20, 0, 5000, 1)],
            [],
            SolveTank,
            "racks"
        );

    public static BenchTool Feeder { get; } =
        new(
            "feeder",
            BenchArea.Dosing,
            [
                new("dose", Units.Gram, 5, 0.01, 500, 0.5),
                FieldsOf.RinsePerRack(),
                FieldsOf.Strength(null, optional: true),
                new("output", Units.MillilitrePerMinute, null, 0.1, 5000, 0, Optional: true),
                new("liquidDensity", Units.GramPerLitre, 1200, 800, 2000),
            ],
            [],
            SolveFeeder,
            "rinsePerRack"
        );

    public static BenchTool Additive { get; } =
        new(
            "rinse-additive",
            BenchArea.Dosing,
            [
                FieldsOf.RinsePerRack(),
                FieldsOf.Number("partsPerMillion", 150, 1, 5000, 10),
                new("collected", Units.Millilitre, null, 0, 100, 0, Optional: true),
            ],
            [],
            SolveAdditive,
            "partsPerMillion"
        );

    public static BenchTool ChlorineDose { get; } =
        new(
            "chlorine-dose",
            BenchArea.Dosing,
            [
                new("target", Units.MilligramPerLitre, 75, 1, 400, 5),
                new("cycleWater", Units.Gallon, 1.2, 0.1, 50, 0.1),
                new("label", Units.Percent, 8.25, 0.5, 20, 0.5),
                new("density", Units.GramPerLitre, 1100, 1000, 1300),
                new("demand", Units.MilligramPerLitre, 10, 0, 100, 5),
                new("injected", Units.Second, 13, 1, 300),
            ],
            [LabelBasis],
            SolveChlorine,
            "target"
        );

    public static BenchTool HypochlorousShare { get; } =
        new(
            "hypochlorous",
            BenchArea.Dosing,
            [new("ph", Units.PH, 8, 4, 11, 0.5), FieldsOf.At("solutionTemperature", 75, 32, 140)],
            [],
            SolveHypochlorous,
            "ph"
        );

    private static BenchAnswer SolveTank(BenchInput i)
    {
        var dosing = new TankDosing(i.Get<Volume>("tank"), i.Get<Volume>("rinsePerRack"));
        var strength = i.Get<MassConcentration>("strength");
        var racks = i.Number("racks");
        var (v, r, c) = (dosing.Tank.InLitre, dosing.Rinse.InLitre, strength.InGramPerLitre);
        return new Working()
            .Gives("left", (dosing.Left(racks).InFraction * strength).In(Units.GramPerLitre), 2)
            .Gives("charge", dosing.Charge(strength).In(Units.Gram), 0)
            .Gives("holdDose", dosing.HoldDose(strength).In(Units.Gram), 2)
            .Gives("holdPulse", dosing.HoldPulse(strength).In(Units.Gram), 2)
            .Gives("racksToHalf", dosing.RacksToHalf, 1)
            .By(
                "C20",
                "mixed tank",
                $"{c:0.00} g/L · exp(−{racks:0} · {r:0.00} L / {v:0.0} L) = {c * dosing.Left(racks).InFraction:0.00} g/L"
            )
            .By("C20", "definition", $"{v:0.0} L · {c:0.00} g/L = {v * c:0} g")
            .By("C22", "mixed tank", $"{r:0.00} L · {c:0.00} g/L = {r * c:0.00} g")
            .By("C21", "mixed tank", $"{v:0.0} L · ln 2 / {r:0.00} L = {dosing.RacksToHalf:0.0}")
            .Note("bench.note.all-rinse-reaches-tank")
            .Note("bench.note.hot-and-vapour")
            .Note("bench.note.label-rules")
            .Caution("bench.caution.alkali")
            .Answer();
    }

    private static BenchAnswer SolveFeeder(BenchInput i)
    {
        var (dose, rinse) = (i.Get<Mass>("dose"), i.Get<Volume>("rinsePerRack"));
        var settles = dose / rinse;
        var working = new Working()
            .Gives("settles", settles.In(Units.GramPerLitre), 2)
            .By("C23", "mixed tank", $"{dose.InGram:0.00} g / {rinse.InLitre:0.00} L = {settles.InGramPerLitre:0.00} g/L");
        if (i.Maybe<MassConcentration>("strength") is { InGramPerLitre: > 0 } found)
        {
            var spoken = TankDosing.RinseFrom(dose, found);
            working
                .Gives("rinseSpoken", spoken.In(Units.Gallon), 2)
                .By("C23", "mixed tank", $"{dose.InGram:0.00} g / {found.InGramPerLitre:0.00} g/L = {spoken.InLitre:0.00} L")
                .Note(
                    spoken < rinse * 0.9 ? "bench.note.rinse-short"
                    : spoken > rinse * 1.1 ? "bench.note.rinse-long"
                    : "bench.note.rinse-agrees"
                );
        }

        if (i.Maybe<VolumeFlow>("output") is { } output)
        {
            var liquid = dose / i.Get<MassConcentration>("liquidDensity");
            var run = Feeding.RunTime(liquid, output);
            working
                .Gives("runTime", run.In(Units.Second), 1)
                .By(
                    "C27",
                    "definition",
                    $"{liquid.InMillilitre:0.00} mL / {output.InLitrePerMinute * 1000:0.0} mL/min = {run.InSecond:0.0} s"
                );
        }

        return working.Note("bench.note.whatever-the-start").Caution("bench.caution.alkali").Answer();
    }

    private static BenchAnswer SolveAdditive(BenchInput i)
    {
        var rinse = i.Get<Volume>("rinsePerRack");
        var ppm = i.Number("partsPerMillion");
        var dose = Feeding.Additive(Ratio.FromFraction(ppm / 1e6), rinse);
        var working = new Working()
            .Gives("additive", dose.In(Units.Millilitre), 2)
            .By("C26", "definition", $"{ppm:0} / 10⁶ · {rinse.InLitre:0.00} L = {dose.InMillilitre:0.00} mL");
        if (i.Maybe<Volume>("collected") is { } collected)
        {
            var share = 1e6 * (collected / rinse).InFraction;
            working
                .Gives("additiveFound", share, 0)
                .By("C26", "definition", $"10⁶ · {collected.InMillilitre:0.00} mL / {rinse.InLitre:0.00} L = {share:0}")
                .Note(
                    collected.InMillilitre <= 0 ? "bench.note.air-in-line"
                    : share < 100 ? "bench.note.additive-low"
                    : share > 500 ? "bench.note.additive-high"
                    : "bench.note.additive-usual"
                );
        }

        return working.Note("bench.note.label-rules").Answer();
    }

    private static BenchAnswer SolveChlorine(BenchInput i)
    {
        var (share, density) = (i.Get<Ratio>("label"), i.Get<MassConcentration>("density"));
        var stock = i.Choice("labelBasis") switch
        {
            "available" => Bleach.FromAvailable(share, density),
            "trade" => Bleach.FromTrade(share, density),
            _ => Bleach.FromHypochlorite(share, density),
        };
        var (target, demand, water) = (i.Get<MassConcentration>("target"), i.Get<MassConcentration>("demand"), i.Get<Volume>("cycleWater"));
        var fed = MassConcentration.FromMilligramPerLitre(target.InMilligramPerLitre + demand.InMilligramPerLitre);
        var dose = Feeding.Dose(fed, water, stock.Available);
        var setting = Feeding.Setting(dose, i.Get<Duration>("injected"));
        return new Working()
            .Gives("dosePerCycle", dose.In(Units.Millilitre), 2)
            .Gives("pumpSetting", setting.In(Units.MillilitrePerMinute), 1)
            .Gives("available", stock.Available.In(Units.GramPerLitre), 1)
            .Gives("availableByWeight", stock.ByWeight.In(Units.Percent), 2)
            .Gives("trade", stock.Trade.In(Units.Percent), 2)
            .By(
                "C30",
                "molar masses",
                $"{stock.HypochloriteByWeight.InPercent:0.00} % NaOCl / 1.0499 · {density.InGramPerLitre / 1000:0.000} kg/L = {stock.Available.InGramPerLitre:0.0} g/L Cl₂"
            )
            .By(
                "C26",
                "definition",
                $"{fed.InMilligramPerLitre:0} mg/L · {water.InLitre:0.00} L / {stock.Available.InGramPerLitre:0.0} g/L = {dose.InMillilitre:0.00} mL"
            )
            .By(
                "C27",
                "definition",
                $"{dose.InMillilitre:0.00} mL / {i.Get<Duration>("injected").InSecond:0} s = {setting.InLitrePerMinute * 1000:0.0} mL/min"
            )
            .Note("bench.note.strip-rules")
            .Note("bench.note.old-bleach")
            .Caution("bench.caution.chlorine-acid")
            .Answer();
    }

    private static BenchAnswer SolveHypochlorous(BenchInput i)
    {
        var (ph, at) = (i.Get<Acidity>("ph"), i.Get<Temperature>("solutionTemperature"));
        var share = Chlorine.HypochlorousShare(ph, at);
        return new Working()
            .Gives("hypochlorous", share.In(Units.Percent), 1)
            .Gives("pKa", Chlorine.PKa(at), 2)
            .By(
                "C31",
                "morris-1966",
                $"pKa = 3000/{at.InCelsius + 273.15:0.0} − 10.0686 + 0.0253 · {at.InCelsius + 273.15:0.0} = {Chlorine.PKa(at):0.00}"
            )
            .By("C32", "definition", $"1 / (1 + 10^({ph.InPH:0.0} − {Chlorine.PKa(at):0.00})) = {share.InPercent:0.0} %")
            .Note("bench.note.table-is-law")
            .Caution("bench.caution.chlorine-acid")
            .Answer();
    }
}
