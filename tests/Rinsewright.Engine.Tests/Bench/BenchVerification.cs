using Rinsewright.Engine.Bench;
using Rinsewright.Engine.Quantities;
using static Rinsewright.Engine.Tests.Bench.Asking;

namespace Rinsewright.Engine.Tests.Bench;

/// <summary>Each tool against a sum worked outside the program; the row of the check list or the reference is named.</summary>
public sealed class BenchVerification
{
    [Fact] // CHV070, CHV071: 10 drops of 0.05 mL normal acid in 50 mL, 20 % Na₂O
    public void Titration()
    {
        var answer = Ask(
            "titration",
            ("drops", 10, Units.One),
            ("normality", 1, Units.EquivalentPerLitre),
            ("sample", 50, Units.Millilitre)
        );

        Equal(answer, "alkalinity", 500.4, 0.1);
        Equal(answer, "activeAlkali", 309.9, 0.1);
        Equal(answer, "asCaustic", 400.0, 0.1);
        Equal(answer, "product", 1.55, 0.005);
        // One drop in ten is the resolution: 9.5 to 10.5 drops.
        Assert.Equal(0.95 * 1.5495, Of(answer, "product").Low!.Value.Value, 0.001);
        Assert.Equal(1.05 * 1.5495, Of(answer, "product").High!.Value.Value, 0.001);
    }

    [Fact] // the tank's water came from the tap: it cannot hold less than that
    public void A_tap_more_alkaline_than_the_tank_is_refused()
    {
        var typed = With(
            "titration",
            ("drops", 10, Units.One),
            ("normality", 1, Units.EquivalentPerLitre),
            ("sample", 50, Units.Millilitre),
            ("tapAlkalinity", 900, Units.AlkalinityMilligramPerLitre)
        );
        var problem = Assert.Single(BenchTools.Find("titration")!.Solve(typed.And("endPoint", "m")).Problems);

        Assert.Equal(("tapAlkalinity", "bench.problem.tap-above-found"), (problem.Field, problem.Says.Key));
        Assert.Empty(BenchTools.Find("titration")!.Solve(typed.And("endPoint", "p")).Problems);
    }

    [Fact] // half drops are how it is done
    public void The_working_shows_what_was_typed() =>
        Assert.Contains(
            Ask(
                "titration",
                ("drops", 10.5, Units.One),
                ("normality", 1, Units.EquivalentPerLitre),
                ("sample", 50, Units.Millilitre)
            ).Steps,
            s => s.Formula.Contains("10.5 · ", StringComparison.Ordinal)
        );

    [Fact] // CHV075
    public void Split()
    {
        var meq = Units.AlkalinityMilliequivalentPerLitre;
        var answer = Ask("alkalinity-split", ("pAlkalinity", 7, meq), ("mAlkalinity", 10, meq));

        Equal(answer, "hydroxide", 4, 1e-9);
        Equal(answer, "carbonate", 6, 1e-9);
        Equal(answer, "bicarbonate", 0, 1e-9);
    }

    [Fact] // Worked example of the reference: 1.2 g/L, 25 % caustic, 15 % soda ash, tap 500, 60 degC reads 4610 µS/cm; 0.1 g/L adds 305
    public void Conductivity()
    {
        var answer = Ask("conductivity", ("reading", 4610, Units.MicrosiemensPerCentimetre), ("tankTemperature", 60, Units.Celsius));

        Equal(answer, "product", 1.20, 0.005);
        Equal(answer, "perTenthGram", 305, 2);
        Equal(answer, "fieldFactor", 1, 1e-12);
    }

    [Fact] // CHV076 to CHV078: 60 L, 3 L a rack, 2 g/L
    public void Tank()
    {
        var answer = Ask(
            "tank-dosing",
            ("tank", 60, Units.Litre),
            ("rinsePerRack", 3, Units.Litre),
            ("strength", 2, Units.GramPerLitre),
            ("racks", 10, Units.One)
        );

        Equal(answer, "left", 1.213, 0.0005);
        Equal(answer, "charge", 120, 1e-9);
        Equal(answer, "holdDose", 6.00, 1e-9);
        Equal(answer, "holdPulse", 5.85, 0.005);
        Equal(answer, "racksToHalf", 13.86, 0.005);
    }

    [Fact] // Reference 1.5: c = d/R, so 6 g a rack and 3 g/L found is 2 L a rack
    public void Feeder()
    {
        var answer = Ask("feeder", ("dose", 6, Units.Gram), ("rinsePerRack", 3, Units.Litre), ("strength", 3, Units.GramPerLitre));

        Equal(answer, "settles", 2, 1e-9);
        Assert.Equal(2, Of(answer, "rinseSpoken").Value!.Value.In(Units.Litre).Value, 1e-9);
        Assert.Contains(answer.Notes, n => n.Key == "bench.note.rinse-short");
    }

    [Fact] // Reference 2.1: 150 ppm of 3.5 L is 0.525 mL
    public void Additive() =>
        Equal(Ask("rinse-additive", ("rinsePerRack", 3.5, Units.Litre), ("partsPerMillion", 150, Units.One)), "additive", 0.525, 1e-9);

    [Fact] // CHV065 to CHV067
    public void Chlorine()
    {
        var answer = Ask(
            "chlorine-dose",
            ("target", 50, Units.MilligramPerLitre),
            ("cycleWater", 4.5, Units.Litre),
            ("demand", 0, Units.MilligramPerLitre)
        );

        Equal(answer, "available", 86.4, 0.1);
        Equal(answer, "dosePerCycle", 2.60, 0.01);
        Equal(answer, "pumpSetting", 12.0, 0.1);
    }

    [Fact] // CHV062
    public void Hypochlorous() =>
        Equal(Ask("hypochlorous", ("ph", 8, Units.PH), ("solutionTemperature", 24, Units.Celsius)), "hypochlorous", 26.0, 0.1);

    [Fact] // CHV059: water H at 85 degC
    public void Scale()
    {
        var answer = Ask(
            "scale",
            ("ph", 7.6, Units.PH),
            ("calciumHardness", 249.7, Units.HardnessMilligramPerLitre),
            ("alkalinity", 220, Units.AlkalinityMilligramPerLitre),
            ("dissolved", 400, Units.MilligramPerLitre),
            ("sampleTemperature", 15, Units.Celsius),
            ("hotTemperature", 85, Units.Celsius)
        );

        Equal(answer, "precipitable", 85.6, 0.5);
        Equal(answer, "saturation", 1.21, 0.02);
        Equal(answer, "phThere", 7.50, 0.01);
        Equal(answer, "saturationCold", 0.42, 0.02);
    }

    [Fact] // CHV092: 150 mg/L, product with 30 %: 1.84 g/L, worst film at 0.74
    public void Builder()
    {
        var answer = Ask("builder", ("hardness", 150, Units.HardnessMilligramPerLitre));

        Equal(answer, "product", 1.84, 0.01);
        Equal(answer, "worstFilm", 0.74, 0.01);
    }

    [Fact] // Reference 3.7: 600 gpd of 20 gpg, 2 ft³ at 8 lb: 4 days, 16 lb of salt, 1460 lb a year
    public void Softener()
    {
        var answer = Ask(
            "softener",
            ("hardness", 20, Units.GrainPerGallon),
            ("waterPerDay", 600, Units.Gallon),
            ("resin", 2 * 28.3168466, Units.Litre),
            ("saltPerResin", 8 * 453.59237 / 28.3168466, Units.GramPerLitre)
        );

        Equal(answer, "interval", 4, 0.01);
        Equal(answer, "saltEach", 16 * 0.45359237, 0.001);
        Equal(answer, "saltPerYear", 1460 * 0.45359237, 1);
    }

    [Fact] // Reference 4: 500 g, phosphoric 75 % at 1.58, no excess: 827 mL, 122 L of gas
    public void Delime()
    {
        var input = With("delime", ("scaleMass", 500, Units.Gram), ("excess", 0, Units.Percent))
            .And("chlorineOff", "yes")
            .And("drained", "yes")
            .And("noChlorine", "yes");
        var answer = BenchTools.Find("delime")!.Solve(input).Answer!;

        Equal(answer, "delimeProduct", 827, 1);
        Equal(answer, "gas", 122, 0.5);
    }

    [Theory]
    [InlineData("yes", "yes", "unknown", "noChlorine")]
    [InlineData("yes", "unknown", "yes", "drained")]
    [InlineData("no", "yes", "yes", "chlorineOff")]
    public void Delime_refuses_while_chlorine_may_be_there(string off, string drained, string none, string field)
    {
        var outcome = BenchTools
            .Find("delime")!
            .Solve(With("delime").And("chlorineOff", off).And("drained", drained).And("noChlorine", none));

        Assert.Null(outcome.Answer);
        var problem = Assert.Single(outcome.Problems);
        Assert.Equal((field, "bench.problem.chlorine-first"), (problem.Field, problem.Says.Key));
    }

    [Fact] // R52: 2.8 gpm at 20 psi is 1.771 gpm at 8 psi
    public void Rinse_flow() => Equal(Ask("rinse-flow", ("flowPressure", 8, Units.Psi)), "flow", 1.77088, 1e-4);

    [Fact] // Machine model, formula 6: 0.533 gal of a lone rack in 19.03 s at 20 psi: K 0.376, 0.60 of new
    public void Bucket()
    {
        var answer = Ask("rinse-bucket", ("caught", 0.533, Units.Gallon), ("rinseTime", 19.03, Units.Second));

        Equal(answer, "flow", 0.376 * Math.Sqrt(20), 0.005);
        Equal(answer, "pluggedNozzles", 16 * 0.40, 0.05);
    }

    [Fact] // Machine model, formula 3: 0.30 m², 233.4 mm, 24.99 mm in 60 s: 0.60 cm² and 462 L/h
    public void Leak()
    {
        var answer = Ask(
            "leak",
            ("surface", 0.30, Units.SquareMetre),
            ("depth", 233.4, Units.Millimetre),
            ("fall", 24.99, Units.Millimetre),
            ("time", 60, Units.Second)
        );

        Equal(answer, "opening", 0.600, 0.001);
        Equal(answer, "leakFlow", 462, 1);
        // 462 L/h of make-up from 60 to 71 degC: 5.8 kW by 983 kg/m³ and 4186 J/(kg K).
        Equal(answer, "leakHeat", 5.8, 0.05);
    }

    [Fact] // CHV110
    public void Drain() =>
        Equal(
            Ask("drain-time", ("surface", 0.25, Units.SquareMetre), ("depth", 0.25, Units.Metre), ("drainDiameter", 38, Units.Millimetre)),
            "drainTime",
            83.0,
            0.1
        );

    [Fact] // CHV118: 13.84 mm copper, 10 m, 15 L/min, 60 degC: 3.05 psi
    public void Line() =>
        Equal(
            Ask(
                "line-loss",
                ("flow", 15, Units.LitrePerMinute),
                ("pipeDiameter", 13.84, Units.Millimetre),
                ("pipeLength", 10, Units.Metre),
                ("waterTemperature", 60, Units.Celsius),
                ("fittings", 0, Units.One)
            ),
            "loss",
            3.05,
            0.02
        );

    [Fact] // Machine model, formula 5: 17.95 gal in 180 s is 5.98 gpm
    public void Fill() => Equal(Ask("fill-time", ("tank", 17.95, Units.Gallon), ("time", 180, Units.Second)), "flow", 5.98, 0.005);

    [Theory] // R43, R44, and formula 7 of the machine model: one line lost at 120 degF, 149.5 degF out
    [InlineData("sound", 140, 180, 18, 180, 16.15)]
    [InlineData("sound", 140, 190, 18, 184.57, 20.19)]
    [InlineData("line-lost", 120, 180, 24, 149.7, 24.23)]
    public void Booster(string condition, double incoming, double wanted, double kilowatt, double reaches, double needed)
    {
        var tool = BenchTools.Find("booster")!;
        var answer = tool.Solve(
            With(
                    "booster",
                    ("incoming", incoming, Units.Fahrenheit),
                    ("wanted", wanted, Units.Fahrenheit),
                    ("ratedPower", kilowatt, Units.Kilowatt)
                )
                .And("condition", condition)
        ).Answer!;

        Equal(answer, "reaches", reaches, 0.05);
        Equal(answer, "powerNeeded", needed, 0.01);
    }

    // R54a: line currents of a delta against healthy; 18 kW at 208 V is 49.96 A by P/(√3 U). Power by hand, elements of 6 kW: with a line lost one alone and two in series, 6 + 3; with one open the other two.
    [Theory]
    [InlineData(49.96, 49.96, 49.96, "bench.note.currents-sound", 18.0)]
    [InlineData(43.27, 43.27, 0, "bench.note.currents-line", 9.0)]
    [InlineData(49.96, 28.85, 28.85, "bench.note.currents-element", 12.0)]
    [InlineData(10, 20, 30, "bench.note.currents-none", null)]
    public void Currents(double a, double b, double c, string says, double? kilowatt)
    {
        var answer = Ask("line-currents", ("lineA", a, Units.Ampere), ("lineB", b, Units.Ampere), ("lineC", c, Units.Ampere));

        Equal(answer, "lineSound", 49.96, 0.01);
        Assert.Contains(answer.Notes, n => n.Key == says);
        if (kilowatt is { } power)
        {
            Equal(answer, "powerGiven", power, 1e-9);
        }
        else
        {
            Assert.DoesNotContain(answer.Results, r => r.Id == "powerGiven");
        }
    }

    [Theory] // R39, R41: 68.84 kg, 45 kJ/K, 15 W/K, room 24 degC, 60 to 71.11 degC
    [InlineData(18, 213.035)]
    [InlineData(12, 325.392)]
    [InlineData(9, 441.933)]
    public void Heat_up(double kilowatt, double seconds) =>
        Equal(
            Ask(
                "heat-up",
                ("tank", 68.8396 / 0.983, Units.Litre),
                ("to", 71.1111, Units.Celsius),
                ("from", 60, Units.Celsius),
                ("lossPerKelvin", 15, Units.WattPerKelvin),
                ("room", 24, Units.Celsius),
                ("ratedPower", kilowatt, Units.Kilowatt)
            ),
            "heatUpTime",
            seconds,
            0.02
        );

    [Theory] // Machine model, formula 1: 62 to 69 degC in 136, 209, 286 s is 18.0, 12.0, 9.0 kW with shell 15 W/K and idle vapour 350 W at 45 K, together 22.8 W/K
    [InlineData(136, 18.0, "bench.note.power-sound")]
    [InlineData(209, 12.0, "bench.note.power-element")]
    [InlineData(286, 9.0, "bench.note.power-line")]
    public void Power_from_heat_up(double seconds, double kilowatt, string says)
    {
        var answer = Ask(
            "heat-up",
            ("tank", 68.8396 / 0.983, Units.Litre),
            ("from", 62, Units.Celsius),
            ("to", 69, Units.Celsius),
            ("time", seconds, Units.Second),
            ("lossPerKelvin", 22.8, Units.WattPerKelvin),
            ("room", 24, Units.Celsius)
        );

        Equal(answer, "powerGiven", kilowatt, 0.25);
        Assert.Contains(answer.Notes, n => n.Key == says);
    }

    [Fact] // R42: 18 kW over 2.8 gpm lifts by 44.57 degF, so 180 needs 135.4
    public void Incoming() => Equal(Ask("incoming-water"), "incomingNeeded", 180 - (18 / (0.1442255 * 2.8)), 0.01);

    [Fact] // R72: 450 W/K, 115 degC, 71 degC: 19.8 kW
    public void Coil() => Equal(Ask("steam-coil", ("steam", 115, Units.Celsius), ("water", 71, Units.Celsius)), "powerGiven", 19.8, 1e-9);

    [Fact] // CHV079: 3.6 kg block, 1.2 g/L, 60 L, 3 L a rack, 150 racks, one fill: 612 g a day, 5.88 days, 0.0245 a rack at 6.00
    public void Use()
    {
        var answer = Ask(
            "use-and-cost",
            ("racksPerDay", 150, Units.One),
            ("fillsPerDay", 1, Units.One),
            ("tank", 60, Units.Litre),
            ("rinsePerRack", 3, Units.Litre),
            ("strength", 1.2, Units.GramPerLitre),
            ("detergentPrice", 6, Units.One),
            ("drum", 3.6, Units.Kilogram),
            ("drumDays", 4, Units.One)
        );

        Equal(answer, "detergentPerDay", 612, 0.01);
        Equal(answer, "detergentPerRack", 4.08, 0.001);
        Equal(answer, "drumShould", 5.88, 0.005);
        Equal(answer, "costPerRack", 0.0245, 0.0001);
        // By hand: 900 g a day used, 288 more; that is 240 L of water at 1.2 g/L, or 80 racks of 3.6 g.
        Equal(answer, "extraPerDay", 288, 0.01);
        Equal(answer, "waterInstead", 240, 0.01);
        Equal(answer, "racksInstead", 230, 0.01);
        Assert.Contains(answer.Notes, n => n.Key == "bench.note.too-much-used");
    }

    [Fact] // By hand: 20 % at 6.00 and 30 % at 8.00, 1.5 g/L and 2 L: 3 g at 6.00 = 0.018; 2 g at 8.00 = 0.016
    public void Compare()
    {
        var answer = Ask("compare-products", ("rinsePerRack", 2, Units.Litre));

        Equal(answer, "costPerRack", 0.018, 1e-9);
        Equal(answer, "otherCostPerRack", 0.016, 1e-9);
        Equal(answer, "evenPrice", 9, 1e-9);
    }
}
