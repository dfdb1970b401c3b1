using Rinsewright.Engine.Chemistry;
using Rinsewright.Engine.Quantities;
using Rinsewright.Engine.Records;

namespace Rinsewright.Engine.Bench;

/// <summary>Titration and strength. The kernels stand in <c>Chemistry</c>.</summary>
internal static class StrengthTools
{
    private static readonly BenchChoice EndPoints = new("endPoint", ["p", "m"], "p");

    public static BenchTool Titration { get; } =
        new(
            "titration",
            BenchArea.Strength,
            [
                FieldsOf.Number("drops", 8, 0, 500, 1),
                new("drop", Units.Millilitre, 0.05, 0.01, 0.2),
                new("normality", Units.EquivalentPerLitre, 0.5, 0.001, 10),
                new("sample", Units.Millilitre, 25, 1, 1000),
                FieldsOf.Active(),
                new("tapAlkalinity", Units.AlkalinityMilligramPerLitre, null, 0, 1000, 0, Optional: true),
            ],
            [EndPoints],
            SolveTitration,
            "drops"
        );

    public static BenchTool Split { get; } =
        new(
            "alkalinity-split",
            BenchArea.Strength,
            [
                new("pAlkalinity", Units.AlkalinityMilliequivalentPerLitre, null, 0, 200),
                new("mAlkalinity", Units.AlkalinityMilliequivalentPerLitre, null, 0, 200),
            ],
            [],
            SolveSplit
        );

    public static BenchTool Conductivity { get; } =
        new(
            "conductivity",
            BenchArea.Strength,
            [
                new("reading", Units.MicrosiemensPerCentimetre, null, 1, 200000, 100),
                FieldsOf.At("tankTemperature", 150, 41, 194),
                new("tapConductivity", Units.MicrosiemensPerCentimetre, 500, 0, 5000),
                new("caustic", Units.Percent, 25, 0, 100),
                new("sodaAsh", Units.Percent, 15, 0, 100),
                new("titrated", Units.GramPerLitre, null, 0.05, 50, 0, Optional: true),
            ],
            [],
            SolveConductivity,
            "reading"
        );

    private static BenchAnswer SolveTitration(BenchInput i)
    {
        var drop = i.Get<Volume>("drop");
        var titration = new Chemistry.Titration(
            i.Number("drops") * drop,
            drop,
            i.Get<Normality>("normality").InEquivalentPerLitre,
            i.Get<Volume>("sample")
        );
        var point = i.Choice("endPoint") == "p" ? EndPoint.P : EndPoint.M;
        var tap = i.Maybe<Alkalinity>("tapAlkalinity") ?? default;
        if (point == EndPoint.M && tap >= titration.Found)
        {
            throw new BenchException("tapAlkalinity", Statement.Of("bench.problem.tap-above-found"));
        }

        var active = i.Get<Ratio>("active");
        Amount Product(Alkalinity a) => Alkali.Product(Alkali.LessTap(a, tap, point), active).In(Units.GramPerLitre);
        var (meq, litres) = (titration.Found.InMilliequivalentPerLitre, titration.Sample.InMillilitre);
        var own = Alkali.LessTap(titration.Found, tap, point);
        var working = new Working()
            .Gives("product", Product(titration.Found), 2, Product(titration.Low), Product(titration.High))
            .Gives("productShare", new Amount(Alkali.Product(own, active).InGramPerLitre / 10, Units.Percent), 3)
            .Gives("alkalinity", titration.Found.In(Units.AlkalinityMilligramPerLitre), 0)
            .Gives("activeAlkali", Alkali.AsSodiumOxide(own).In(Units.MilligramPerLitre), 0)
            .Gives("asCaustic", Alkali.AsSodiumHydroxide(own).In(Units.MilligramPerLitre), 0)
            .By(
                "C1",
                "definition",
                $"1000 · {i.Number("drops"):0.##} · {titration.Step.InMillilitre:0.###} mL · {titration.Normality:0.###} eq/L / {litres:0.#} mL = {meq:0.00} meq/L"
            )
            .By(
                "C2",
                "molar masses",
                $"{own.InMilliequivalentPerLitre:0.00} meq/L · 30.99 mg Na₂O = {Alkali.AsSodiumOxide(own).InMilligramPerLitre:0} mg/L"
            )
            .By(
                "C4",
                "definition",
                $"{Alkali.AsSodiumOxide(own).InMilligramPerLitre:0} mg/L / {active.InPercent:0.#} % = {Alkali.Product(own, active).InGramPerLitre:0.00} g/L"
            )
            .Note("bench.note.drop-band")
            .Note(
                point == EndPoint.P ? "bench.note.tap-at-p"
                : i.Maybe<Alkalinity>("tapAlkalinity") is null ? "bench.note.tap-missing"
                : "bench.note.tap-at-m"
            )
            .Note("bench.note.label-rules")
            .Caution("bench.caution.alkali");
        return working.Answer();
    }

    private static BenchAnswer SolveSplit(BenchInput i)
    {
        var (p, m) = (i.Get<Alkalinity>("pAlkalinity"), i.Get<Alkalinity>("mAlkalinity"));
        var split = AlkalinitySplit.Of(p, m) ?? throw new BenchException("pAlkalinity", Statement.Of("bench.problem.p-above-m"));
        var unit = Units.AlkalinityMilliequivalentPerLitre;
        var (a, b) = (p.InMilliequivalentPerLitre, m.InMilliequivalentPerLitre);
        var working = new Working()
            .Gives("hydroxide", split.Hydroxide.In(unit), 2)
            .Gives("carbonate", split.Carbonate.In(unit), 2)
            .Gives("bicarbonate", split.Bicarbonate.In(unit), 2);
        _ =
            2 * a > b
                ? working
                    .By("C6", "sm-2320", $"OH⁻ = 2 · {a:0.00} − {b:0.00} = {(2 * a) - b:0.00} meq/L")
                    .By("C6", "sm-2320", $"CO₃²⁻ = 2 · ({b:0.00} − {a:0.00}) = {2 * (b - a):0.00} meq/L")
                : working
                    .By("C6", "sm-2320", $"CO₃²⁻ = 2 · {a:0.00} = {2 * a:0.00} meq/L")
                    .By("C6", "sm-2320", $"HCO₃⁻ = {b:0.00} − 2 · {a:0.00} = {b - (2 * a):0.00} meq/L");
        return working.Note("bench.note.carbon-dioxide").Caution("bench.caution.alkali").Answer();
    }

    private static BenchAnswer SolveConductivity(BenchInput i)
    {
        var (reading, tap) = (i.Get<Conductivity>("reading"), i.Get<Conductivity>("tapConductivity"));
        var at = i.Get<Temperature>("tankTemperature");
        var (caustic, ash) = (i.Get<Ratio>("caustic"), i.Get<Ratio>("sodaAsh"));
        if (caustic.InFraction + ash.InFraction <= 0)
        {
            throw new BenchException("caustic", Statement.Of("bench.problem.nothing-conducts"));
        }

        var product = new ProductConductivity([
            new Ingredient(Electrolyte.SodiumHydroxide, caustic),
            new Ingredient(Electrolyte.SodiumCarbonate, ash),
        ]);
        if (product.Of(default, tap, at) >= reading)
        {
            throw new BenchException("reading", Statement.Of("bench.problem.below-tap"));
        }

        if (i.Maybe<MassConcentration>("titrated") is { } titrated)
        {
            var tapAlone = product.Of(default, tap, at).InMicrosiemensPerCentimetre;
            var factor =
                (reading.InMicrosiemensPerCentimetre - tapAlone) / (product.Of(titrated, tap, at).InMicrosiemensPerCentimetre - tapAlone);
            if (!(factor is > 0.05 and < 20))
            {
                throw new BenchException("titrated", Statement.Of("bench.problem.field-factor"));
            }

            product = product.FittedTo(titrated, reading, tap, at);
        }

        var strength = product.Strength(reading, tap, at) ?? throw new BenchException("reading", Statement.Of("bench.problem.too-strong"));
        var slope = product.Of(strength * 1.01, tap, at).InMicrosiemensPerCentimetre - reading.InMicrosiemensPerCentimetre;
        var perTenth = slope / (0.01 * strength.InGramPerLitre) * 0.1;
        var right = SolutionConductivity.At25(reading, at, 0.018);
        var custom = SolutionConductivity.At25(reading, at, 0.02);
        var working = new Working()
            .Gives("product", strength.In(Units.GramPerLitre), 2)
            .Gives("fieldFactor", product.FieldFactor, 2)
            .Gives("at25", right.In(Units.MicrosiemensPerCentimetre), 0)
            .Gives("customaryAt25", custom.In(Units.MicrosiemensPerCentimetre), 0)
            .Gives("perTenthGram", new Amount(perTenth, Units.MicrosiemensPerCentimetre), 0)
            .By(
                "C10",
                "mccleskey-2011",
                $"κ = Σ κᵢ(cᵢ, {at.InCelsius:0} °C) · {product.FieldFactor:0.00} + tap · (1 + 0.02 · ({at.InCelsius:0} − 25))"
            )
            .By(
                "C11",
                "mccleskey-2011",
                $"κ₂₅ = {reading.InMicrosiemensPerCentimetre:0} / (1 + 0.018 · ({at.InCelsius:0} − 25)) = {right.InMicrosiemensPerCentimetre:0} µS/cm"
            )
            .By(
                "C11",
                "custom",
                $"2 %: {reading.InMicrosiemensPerCentimetre:0} / (1 + 0.020 · ({at.InCelsius:0} − 25)) = {custom.InMicrosiemensPerCentimetre:0} µS/cm"
            )
            .Note(i.Maybe<MassConcentration>("titrated") is null ? "bench.note.no-field-factor" : "bench.note.field-factor")
            .Note("bench.note.uncompensated");
        if (at.InCelsius < 40)
        {
            working.Note("bench.note.cold-tank");
        }

        if (product.FieldFactor < 0.8)
        {
            working.Note("bench.note.probe-fouled");
        }

        return working.Answer();
    }
}
