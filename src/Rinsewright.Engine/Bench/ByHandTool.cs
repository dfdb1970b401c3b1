using Rinsewright.Engine.Chemistry;
using Rinsewright.Engine.Quantities;
using Rinsewright.Engine.Records;
using Rinsewright.Engine.Sanitization;

namespace Rinsewright.Engine.Bench;

/// <summary>The three-sink set-up while the machine is down. The rules stand in <c>Sanitization</c>.</summary>
internal static class ByHandTool
{
    private static readonly BenchWhen Measured = new("sinks", ["measured"]);
    private static readonly BenchWhen Known = new("sinks", ["volumes"]);
    private static readonly BenchWhen Chemical = new("sanitizer", ["chlorine", "iodine", "quat"]);
    private static readonly BenchWhen ByLabel = new("sanitizer", ["quat"]);

    public static BenchTool Plan { get; } =
        new(
            "by-hand",
            BenchArea.Down,
            [
                new("sinkLength", Units.Inch, 18, 4, 120, 1) { When = Measured },
                new("sinkWidth", Units.Inch, 18, 4, 120, 1) { When = Measured },
                new("waterDepth", Units.Inch, 10, 2, 60, 1) { When = Measured },
                new("washSink", Units.Gallon, null, 0.5, 500, 1) { When = Known },
                new("rinseSink", Units.Gallon, null, 0.5, 500) { When = Known },
                new("sanitizingSink", Units.Gallon, null, 0.5, 500, 1) { When = Known },
                new("handDetergent", Units.Percent, 0.4, 0.01, 10),
                new("label", Units.Percent, null, 0.5, 30, 0.5) { When = Chemical },
                new("density", Units.GramPerLitre, 1080, 900, 1300) { When = Chemical },
                FieldsOf.At("solutionTemperature", 75, 33, 140) with
                {
                    When = Chemical,
                },
                new("ph", Units.PH, null, 3, 12, 0, Optional: true) { When = Chemical },
                FieldsOf.Hardness(optional: true) with
                {
                    When = ByLabel,
                },
                new("labelLeast", Units.MilligramPerLitre, null, 1, 1000, 0, Optional: true) { When = Chemical },
                new("labelMost", Units.MilligramPerLitre, null, 1, 1000, 0, Optional: true) { When = Chemical },
                new("labelContact", Units.Second, null, 1, 1800, 0, Optional: true) { When = Chemical },
            ],
            [
                new("sanitizer", ["chlorine", "iodine", "quat", "hot-water"], "chlorine"),
                DosingTools.LabelBasis with
                {
                    When = new("sanitizer", ["chlorine"]),
                },
                new("sinks", ["measured", "volumes"], "measured"),
                new("rules", [.. RuleSets.BuiltIn.Select(r => r.Id)], RuleSets.DefaultId) { Leads = true },
            ],
            Solve
        );

    /// <summary>The plan; throws where figures are missing that hang on each other, or where the rule set has none.</summary>
    public static ByHandPlan PlanOf(BenchInput i)
    {
        var rules = RuleSets.Find(i.Choice("rules"))!;
        var method = i.Choice("sanitizer") switch
        {
            "iodine" => SanitizingMethod.Iodine,
            "quat" => SanitizingMethod.QuaternaryAmmonium,
            "hot-water" => SanitizingMethod.HotWater,
            _ => SanitizingMethod.Chlorine,
        };
        var (wash, rinse, sanitizing) =
            i.Choice("sinks") == "volumes"
                ? (i.Get<Volume>("washSink"), i.Get<Volume>("rinseSink"), i.Get<Volume>("sanitizingSink"))
                : (Sink(i), Sink(i), Sink(i));
        var hot = method == SanitizingMethod.HotWater;
        var required = Required(i, rules, method, hot);
        return new ByHandPlan(
            rules,
            method,
            wash,
            rinse,
            sanitizing,
            i.Get<Ratio>("handDetergent"),
            HandSanitizing.Wash(rules),
            required,
            required.Minimum is { } least ? ByHandPlan.AimAt(least, required.Maximum) : null,
            hot ? null : StockOf(i, method)
        );
    }

    private static HandRequirement Required(BenchInput i, RuleSet rules, SanitizingMethod method, bool hot)
    {
        var at = hot ? new Amount(75, Units.Fahrenheit) : i.Find("solutionTemperature")!.Value;
        double? ph = hot ? null : i.Maybe<Acidity>("ph")?.InPH;
        var label = hot
            ? new SanitizerLabel()
            : new SanitizerLabel(i.Find("labelLeast"), i.Find("labelMost"), null, null, i.Find("labelContact"));
        if (HandSanitizing.Required(rules, method, at, ph, label) is not { } required)
        {
            // Which of the two it is: the set has nothing of this sanitizer, or nothing for so cold or so alkaline a solution.
            var warm = new Amount(140, Units.Fahrenheit);
            throw HandSanitizing.Required(rules, method, warm, null, label with { Minimum = new Amount(1, Units.MilligramPerLitre) })
                is null
                ? new BenchException("rules", Statement.Of("bench.problem.rule-says-nothing"))
            : HandSanitizing.Required(rules, method, warm, ph, label with { Minimum = new Amount(1, Units.MilligramPerLitre) }) is null
                ? new BenchException("ph", Statement.Of("bench.problem.ph-not-covered"))
            : label.Minimum is null && HandSanitizing.Required(rules, method, warm, ph, label) is null
                ? new BenchException("labelLeast", Statement.Of("bench.problem.label-says-strength"))
            : new BenchException("solutionTemperature", Statement.Of("bench.problem.solution-too-cold"));
        }

        if (required is { Minimum: { } least, Maximum: { } most } && least.SI > most.SI)
        {
            throw new BenchException("labelMost", Statement.Of("bench.problem.label-crossed"));
        }

        if (
            method == SanitizingMethod.QuaternaryAmmonium
            && i.Maybe<Hardness>("hardness") is { } hardness
            && HandSanitizing.HardnessMaximum(rules, method) is [var hardest, ..]
            && hardness.InMilligramPerLitre > hardest.In(Units.HardnessMilligramPerLitre).Value
        )
        {
            throw new BenchException("hardness", Statement.Of("bench.problem.too-hard-for-quat", ("hardest", hardest)));
        }

        return required;
    }

    private static Volume Sink(BenchInput i) =>
        Volume.FromCubicMetre(
            i.Get<Length>("sinkLength").InMetre * i.Get<Length>("sinkWidth").InMetre * i.Get<Length>("waterDepth").InMetre
        );

    private static MassConcentration StockOf(BenchInput i, SanitizingMethod method)
    {
        var (share, density) = (i.Get<Ratio>("label"), i.Get<MassConcentration>("density"));
        return (method, i.Choice("labelBasis")) switch
        {
            (not SanitizingMethod.Chlorine, _) => density * share.InFraction,
            (_, "available") => Bleach.FromAvailable(share, density).Available,
            (_, "trade") => Bleach.FromTrade(share, density).Available,
            _ => Bleach.FromHypochlorite(share, density).Available,
        };
    }

    private static BenchAnswer Solve(BenchInput i)
    {
        var plan = PlanOf(i);
        var required = plan.Required;
        var working = new Working();
        if (plan is { Sanitizer: { } dose, Aim: { } aim, Stock: { } stock })
        {
            working
                .Gives("sanitizerDose", dose.In(Units.Millilitre), 0)
                .Gives("sanitizerOunces", dose.In(Units.FluidOunce), 1)
                .Gives("stripLeast", required.Minimum, required.Minimum is { } m && m.Value % 1 != 0 ? 1 : 0)
                .Gives("stripMost", required.Maximum, 0)
                .Gives("mixedFor", aim.In(Units.MilligramPerLitre), 0);
            Bounds(working, required);
            working.By(
                "C26",
                "definition",
                $"{aim.InMilligramPerLitre:0} mg/L · {plan.SanitizingSink.InLitre:0.0} L / {stock.InGramPerLitre:0.0} g/L = {dose.InMillilitre:0} mL"
            );
        }
        else
        {
            Bounds(working, required);
        }

        working
            .Gives("detergentDose", plan.Detergent.In(Units.Millilitre), 0)
            .Gives("detergentOunces", plan.Detergent.In(Units.FluidOunce), 1);
        if (plan.Wash is { TemperatureMinimum: [var warm, ..] })
        {
            working.Gives("washTemperature", warm, 0);
        }

        working
            .Gives("sanitizingVolume", plan.SanitizingSink.In(Units.Gallon), 1)
            .By(
                "B4",
                "definition",
                $"{plan.DetergentShare.InPercent:0.##} % · {plan.WashSink.InLitre:0.0} L = {plan.Detergent.InMillilitre:0} mL"
            );
        foreach (var citation in required.Citations)
        {
            working.Note("bench.note.rule-cited", ("source", citation));
        }

        if (plan.Wash is { } wash)
        {
            working.Note("bench.note.wash-cited", ("source", wash.Citation));
        }

        return Said(working, plan);
    }

    private static void Bounds(Working working, HandRequirement required)
    {
        if (required.Temperature is [var least, ..])
        {
            working.Gives("sanitizingTemperature", least, 0);
        }

        if (required.Contact is { } contact)
        {
            working.Gives("contactTime", contact, 0);
        }
    }

    private static BenchAnswer Said(Working working, ByHandPlan plan)
    {
        if (plan.Method == SanitizingMethod.HotWater)
        {
            working.Note("bench.note.hand-thermometer").Caution("bench.caution.hand-hot").Caution("bench.caution.scald");
        }
        else
        {
            working.Note("bench.note.hand-strip").Caution("bench.caution.chlorine-acid");
            if (plan.Required.AcidityMaximum is { } most)
            {
                working.Note("bench.note.hand-ph", ("ph", new Amount(most, Units.PH)));
            }
        }

        return working
            .Note("bench.note.hand-change")
            .Note("bench.note.hand-dry")
            .Note("bench.note.hand-label")
            .Caution("bench.caution.hand-detergent")
            .Caution("bench.caution.hand-glass")
            .Answer();
    }
}
