using CsCheck;
using Rinsewright.Engine.Bench;
using Rinsewright.Engine.Machines;
using Rinsewright.Engine.Quantities;
using static Rinsewright.Engine.Tests.Bench.Asking;

namespace Rinsewright.Engine.Tests.Bench;

/// <summary>When to delime again, and a block that washes out: sums worked by hand, and laws.</summary>
public sealed class RecordToolsTests
{
    [Fact] // By hand: 300 g in 120 days is 2.5 g a day; 0.4 m² · 0.5 mm · 2.5 g/cm³ = 500 g, 200 days; one record: half as much more or less, 133 to 300
    public void One_record()
    {
        var answer = Ask("delime-interval", ("days1", 120, Units.Day), ("lime1", 300, Units.Gram), ("heatedArea", 0.4, Units.SquareMetre));

        Equal(answer, "limePerDay", 2.5, 1e-9);
        Equal(answer, "limeAllowed", 500, 1e-9);
        Equal(answer, "limeInterval", 200, 1e-9);
        Assert.Equal(133.3, Of(answer, "limeInterval").Low!.Value.Value, 0.05);
        Assert.Equal(300, Of(answer, "limeInterval").High!.Value.Value, 1e-9);
        Assert.Contains(answer.Notes, n => n.Key == "bench.note.one-record");
    }

    [Fact] // By hand: 300 g in 100 days and 300 g in 200: 2 g a day over all; least 1.5 / 1.2 = 1.25, most 3 · 1.2 = 3.6
    public void Two_records_and_what_is_there_now()
    {
        var answer = Ask(
            "delime-interval",
            ("days1", 100, Units.Day),
            ("lime1", 300, Units.Gram),
            ("days2", 200, Units.Day),
            ("lime2", 300, Units.Gram),
            ("heatedArea", 0.4, Units.SquareMetre),
            ("daysSince", 150, Units.Day)
        );

        Equal(answer, "limePerDay", 2, 1e-9);
        Assert.Equal(1.25, Of(answer, "limePerDay").Low!.Value.Value, 1e-9);
        Assert.Equal(3.6, Of(answer, "limePerDay").High!.Value.Value, 1e-9);
        Equal(answer, "limeNow", 300, 1e-9);
        // 150 days at the most is 540 g, over the 500: it may be due.
        Assert.Contains(answer.Notes, n => n.Key == "bench.note.delime-due");
    }

    [Fact]
    public void Half_a_record_is_asked_for()
    {
        var outcome = BenchTools
            .Find("delime-interval")!
            .Solve(With("delime-interval", ("days1", 120, Units.Day), ("lime1", 300, Units.Gram), ("days2", 90, Units.Day)));

        Assert.Null(outcome.Answer);
        Assert.Equal("lime2", Assert.Single(outcome.Problems).Field);
    }

    [Fact]
    public void The_order_of_records_changes_nothing() =>
        Gen.Select(Gen.Double[10, 500], Gen.Double[10, 3000], Gen.Double[10, 500], Gen.Double[10, 3000])
            .Sample(
                (d1, l1, d2, l2) =>
                {
                    var one = Ask(
                        "delime-interval",
                        ("days1", d1, Units.Day),
                        ("lime1", l1, Units.Gram),
                        ("days2", d2, Units.Day),
                        ("lime2", l2, Units.Gram)
                    );
                    var other = Ask(
                        "delime-interval",
                        ("days1", d2, Units.Day),
                        ("lime1", l2, Units.Gram),
                        ("days2", d1, Units.Day),
                        ("lime2", l1, Units.Gram)
                    );
                    foreach (var (a, b) in one.Results.Zip(other.Results))
                    {
                        Relative.Equal(a.Value!.Value.Value, b.Value!.Value.Value, 1e-12);
                    }

                    // The middle never lies outside its range.
                    Assert.All(
                        one.Results.Where(r => r.Low is not null),
                        r => Assert.InRange(r.Value!.Value.Value, r.Low!.Value.Value, r.High!.Value.Value)
                    );
                },
                iter: 300
            );

    [Fact]
    public void A_machine_knows_its_delimings()
    {
        SetUp Delimed(int year, int month, int day, double grams) =>
            new(
                "delime",
                new DateOnly(year, month, day),
                "J. Doe",
                [],
                [KeyValuePair.Create("scaleMass", new Amount(grams, Units.Gram))],
                []
            );
        // Kept out of order, as imported papers come.
        var machine = TypicalMachines.Of(MachineKind.DoorHotWater) with
        {
            SetUps = [Delimed(2026, 6, 29, 300), Delimed(2025, 9, 2, 400), Delimed(2026, 3, 1, 350)],
        };

        var known = MachineFigures
            .For(BenchTools.Find("delime-interval")!, machine)
            .ToDictionary(k => k.Field, k => k.Value.Value, StringComparer.Ordinal);

        Assert.Equal(120, known["days1"]);
        Assert.Equal(300, known["lime1"]);
        Assert.Equal(180, known["days2"]);
        Assert.Equal(350, known["lime2"]);
        Assert.DoesNotContain("days3", known.Keys);
    }

    [Fact] // CHV079: 3.6 kg block, 1.2 g/L, 60 L, 3 L a rack, 150 racks, one fill: 5.88 days. By hand: 3.6 g a rack, 1000 racks; 24 g in a minute is 0.4 g/s: 9 s a rack, 180 s a fill
    public void A_block()
    {
        var answer = Ask(
            "solid-product",
            ("tank", 60, Units.Litre),
            ("rinsePerRack", 3, Units.Litre),
            ("strength", 1.2, Units.GramPerLitre),
            ("washedOut", 24, Units.Gram),
            ("sprayed", 60, Units.Second)
        );

        Equal(answer, "solidDays", 5.88, 0.005);
        Equal(answer, "solidRacks", 1000, 1e-9);
        Equal(answer, "sprayPerRack", 9, 1e-9);
        Equal(answer, "sprayPerFill", 180, 1e-9);
    }
}
