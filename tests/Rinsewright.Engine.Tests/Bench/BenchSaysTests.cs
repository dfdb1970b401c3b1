using Rinsewright.Engine.Bench;
using Rinsewright.Engine.Quantities;
using static Rinsewright.Engine.Tests.Bench.Asking;

namespace Rinsewright.Engine.Tests.Bench;

/// <summary>What a sum says beside its figures: no cause that cannot be, no working nobody believes, its cautions, and nudges a hand can turn.</summary>
public sealed class BenchSaysTests
{
    [Fact] // 3.6 kg at 612 g a day should last 5.88 days; it lasted 8: less was used, and no leak, nor racks, are the cause the other way round
    public void A_drum_that_lasts_too_long_is_no_leak()
    {
        var answer = Ask(
            "use-and-cost",
            ("racksPerDay", 150, Units.One),
            ("fillsPerDay", 1, Units.One),
            ("tank", 60, Units.Litre),
            ("rinsePerRack", 3, Units.Litre),
            ("strength", 1.2, Units.GramPerLitre),
            ("drum", 3.6, Units.Kilogram),
            ("drumDays", 8, Units.One)
        );

        Equal(answer, "usedAgainstShould", 73.5, 0.05);
        Equal(answer, "strengthInstead", 0.88, 0.005);
        // 612 g should go a day, 3600 / 8 = 450 did.
        Equal(answer, "lessPerDay", 162, 0.01);
        Assert.DoesNotContain(answer.Results, r => r.Id is "waterInstead" or "racksInstead");
        Assert.Contains(answer.Notes, n => n.Key == "bench.note.too-little-used");
    }

    [Fact] // 24 kW at half a gallon a minute would be 140 + 24 / (0.1442 · 0.5) = 473 °F; the thermostat ends it at 180
    public void The_working_of_a_booster_ends_where_its_thermostat_does()
    {
        var holds = Ask("booster", ("flow", 0.5, Units.GallonPerMinute));
        var fails = Ask("booster", ("flow", 5, Units.GallonPerMinute));

        Assert.Contains(
            holds.Steps,
            s => s.Formula.StartsWith("min(180 °F, ", StringComparison.Ordinal) && s.Formula.EndsWith("= 180 °F", StringComparison.Ordinal)
        );
        Assert.DoesNotContain(holds.Notes, n => n.Key == "bench.note.short-rinse");
        Assert.Contains(fails.Notes, n => n.Key == "bench.note.short-rinse");
    }

    [Fact] // concentrate and hot wash water are handled on the way to these two
    public void Where_a_drum_is_looked_into_its_caution_stands()
    {
        Assert.All((string[])["use-and-cost", "where-it-went"], t => Assert.Contains(Ask(t).Cautions, c => c.Key == "bench.caution.drum"));
        Assert.Contains(Ask("where-it-went").Cautions, c => c.Key == "bench.caution.alkali");
    }

    [Fact] // 1 gal is 3.785 L and 1 °F a step of 0.556 °C: what is turned goes by 5 L and 0.5 °C
    public void Nudges_are_round_in_the_unit_that_was_typed()
    {
        var tank = With("tank-dosing", ("tank", 70, Units.Litre));
        var booster = With("booster", ("flow", 5, Units.GallonPerMinute), ("incoming", 60, Units.Celsius));
        static Amount Step(BenchTool tool, BenchInput input, string field) => tool.Sensitivities(input).First(s => s.Field == field).Step;

        Assert.Equal(new Amount(5, Units.Litre), Step(BenchTools.Find("tank-dosing")!, tank, "tank"));
        Assert.Equal(0.5, Step(BenchTools.Find("booster")!, booster, "incoming").Value, 1e-12);
    }
}
