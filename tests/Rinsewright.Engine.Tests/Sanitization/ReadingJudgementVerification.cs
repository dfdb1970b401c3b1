using Rinsewright.Engine.Quantities;
using Rinsewright.Engine.Records;
using Rinsewright.Engine.Sanitization;
using Xunit;

namespace Rinsewright.Engine.Tests.Sanitization;

/// <summary>Readings against the code's printed limits (wac-246-215, wi-atcp-75, cdc-vsp-2018): the rows of Published/.</summary>
public class ReadingJudgementVerification
{
    private static readonly RuleSet Code = RuleSets.Find(RuleSets.DefaultId)!;

    public static TheoryData<string> FoodCode() => [.. Published.Rows("Sanitization", "food-code.csv").Select(r => r["id"])];

    public static TheoryData<string> Sanitizers() => [.. Published.Rows("Sanitization", "sanitizers.csv").Select(r => r["id"])];

    [Theory]
    [MemberData(nameof(FoodCode))]
    public void Reading_is_judged_as_the_code_prints(string id)
    {
        var row = Published.Rows("Sanitization", "food-code.csv").Single(r => r["id"] == id);
        var terms = new ProofTerms(Enum.Parse<MachineType>(row["machine"], true), Enum.Parse<SanitizingMethod>(row["method"], true), Code);
        var unit = Units.Find(row["unit"])!;
        var instrument = new Instrument(
            "probe",
            row.OptionalNumber("uncertainty") is { } u ? new Amount(u, Units.FahrenheitDifference) : null,
            Division: row.OptionalNumber("division") is { } d ? new Amount(d, unit) : null
        );
        var reading = new Reading(
            Enum.Parse<MeasuringPoint>(row["point"], true),
            new Amount(row.Number("value"), unit),
            ReadingMethod.Probe,
            instrument
        );
        var check = ReadingJudgement.Judge(reading, LimitsInForce.For(terms), Code.Instruments);
        Assert.Equal(
            row["expected"] switch
            {
                "pass" => Outcome.Proven,
                "fail" => Outcome.NotProven,
                _ => Outcome.Undetermined,
            },
            check.Outcome
        );
        Assert.Equal(row["expected"] == "fail", check.Status == ReadingStatus.OutOfRange);
        if (row["expected"] == "fail")
        {
            Assert.Equal(row.Number("limit"), check.Limit!.PrintedIn(unit).Value);
        }

        Assert.NotEmpty(check.Derivation);
    }

    [Theory]
    [MemberData(nameof(Sanitizers))]
    public void Chemical_rinse_is_judged_as_the_table_prints(string id)
    {
        var row = Published.Rows("Sanitization", "sanitizers.csv").Single(r => r["id"] == id);
        var method = Enum.Parse<SanitizingMethod>(row["method"], true);
        var label =
            method == SanitizingMethod.QuaternaryAmmonium
                ? new SanitizerLabel(new Amount(150, Units.MilligramPerLitre), new Amount(400, Units.MilligramPerLitre))
                : null;
        var terms = new ProofTerms(MachineType.StationaryRackDualTemperature, method, Code, Label: label);
        var readings = new List<Reading>
        {
            At(row.Number("strength"), Units.MilligramPerLitre),
            At(row.Number("ph"), Units.PH),
            At(row.Number("temperature"), Units.Fahrenheit),
        };
        if (row.OptionalNumber("hardness") is { } hardness)
        {
            readings.Add(At(hardness, Units.HardnessMilligramPerLitre));
        }

        if (row.OptionalNumber("contact") is { } contact)
        {
            readings.Add(At(contact, Units.Second));
        }

        var proof = SanitizationProof.Prove(terms, [], readings, []);
        var failed = proof.Checks.Where(c => c.Outcome == Outcome.NotProven).Select(c => c.Id).ToList();
        if (row["expected"] == "pass")
        {
            Assert.Equal(Outcome.Proven, proof.Verdict.Outcome);
            Assert.Equal(row.Number("contact"), proof.Checks.Single(c => c.Id == "contact-time").Limit!.Printed[0].Value);
        }
        else
        {
            Assert.Equal(Outcome.NotProven, proof.Verdict.Outcome);
            Assert.Equal([row["failing"]], failed);
        }

        static Reading At(double value, Unit unit) => new(MeasuringPoint.SanitizingSolution, new Amount(value, unit), ReadingMethod.Strip);
    }

    [Fact] // 40 CFR 180.940(a): 200 ppm ceiling, from memory
    public void Too_strong_is_out_of_range_too()
    {
        var terms = new ProofTerms(MachineType.StationaryRackDualTemperature, SanitizingMethod.Chlorine, Code);
        var proof = SanitizationProof.Prove(
            terms,
            [],
            [new Reading(MeasuringPoint.SanitizingSolution, new Amount(201, Units.MilligramPerLitre), ReadingMethod.Strip)],
            []
        );
        Assert.Equal(ReadingStatus.OutOfRange, proof.Checks.Single(c => c.Id == "sanitizer-strength").Status);
        Assert.Equal(Outcome.NotProven, proof.Verdict.Outcome);
    }

    [Fact]
    public void A_chlorine_strength_alone_proves_nothing()
    {
        var terms = new ProofTerms(MachineType.StationaryRackDualTemperature, SanitizingMethod.Chlorine, Code);
        var proof = SanitizationProof.Prove(
            terms,
            [],
            [new Reading(MeasuringPoint.SanitizingSolution, new Amount(60, Units.MilligramPerLitre), ReadingMethod.Strip)],
            []
        );
        Assert.Equal(Outcome.Undetermined, proof.Verdict.Outcome);
        Assert.Equal(ReadingStatus.NotRead, proof.Checks.Single(c => c.Id == "sanitizer-acidity").Status);
    }
}
