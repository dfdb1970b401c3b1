using Rinsewright.Engine.Machines;

namespace Rinsewright.Engine.Tests.Machines;

/// <summary>One table of names; what either side lacks stands in it.</summary>
public sealed class MachineFaultNamesTests
{
    private static readonly string[] Reasons =
    [
        "solids",
        "drips",
        "geometry",
        "stops",
        "chemistry",
        "ware",
        "people",
        "reading",
        "safety",
        "not-yet",
    ];

    [Fact] // the catalogue has 65 faults
    public void Every_fault_of_the_catalogue_has_one_row_and_one_id()
    {
        var rows = MachineFaultNames.All.Where(r => r.Catalogue is not null).ToList();

        Assert.Equal(65, rows.Count);
        Assert.Equal(65, MachineFaults.All.Count);
        Assert.Equal(rows.Select(r => (r.Catalogue!, r.Model!)).Order(), MachineFaults.All.Select(f => (f.Catalogue, f.Id)).Order());
        Assert.All(rows, r => Assert.Same(MachineFaults.Find(r.Catalogue!), MachineFaults.Find(r.Model!)));
    }

    [Fact] // the knowledge of faults has 166
    public void Every_fault_of_the_knowledge_is_played_or_says_why_not()
    {
        var rows = MachineFaultNames.All.Where(r => r.Knowledge is not null && r.Note != "model").ToList();

        Assert.Equal(166, rows.Select(r => r.Knowledge).Distinct(StringComparer.Ordinal).Count());
        Assert.Equal(166, rows.Count);
        Assert.All(
            rows,
            r =>
            {
                Assert.Equal(r.Model is null, Reasons.Contains(r.Note));
                Assert.Equal(r.Model, MachineFaults.Find(r.Knowledge!)?.Id);
                Assert.Equal(r.Note is null, r.Knowledge == r.Model);
            }
        );
    }

    [Fact]
    public void What_only_the_model_has_names_its_nearest_kin()
    {
        var rows = MachineFaultNames.All.Where(r => r.Note == "model").ToList();
        var knowledge = MachineFaultNames.All.Where(r => r.Note != "model").Select(r => r.Knowledge).OfType<string>().ToHashSet();

        Assert.Equal(13, rows.Count);
        Assert.DoesNotContain(rows, r => knowledge.Contains(r.Model!));
        Assert.All(rows, r => Assert.True(r.Knowledge is null || knowledge.Contains(r.Knowledge)));
    }

    [Theory]
    [InlineData("drain-seal-torn", "standpipe-seal-worn")]
    [InlineData("drain-oring-missing", "drain-seal-missing")]
    [InlineData("drain_oring_missing", "drain-seal-missing")]
    [InlineData("arm-packed-inside", "wash-jets-clogged")]
    public void A_fault_is_found_by_every_name(string name, string id) => Assert.Equal(id, MachineFaults.Find(name)!.Id);

    [Fact]
    public void A_name_nobody_uses_finds_nothing() => Assert.Null(MachineFaults.Find("no-such-fault"));

    [Fact]
    public void A_fault_has_a_size_between_sound_and_bad()
    {
        var fault = MachineFaults.Find("rinse-pressure-set-low")!;
        var sized = fault.Sized(new Engine.Quantities.Amount(14, Engine.Quantities.Units.Psi));

        Assert.Equal(0.5, sized.Severity, 1e-12); // 20 sound, 8 in the catalogue
        Assert.Throws<ArgumentOutOfRangeException>(() => fault.At(1.5));
        Assert.Throws<ArgumentOutOfRangeException>(() => fault.Sized(new Engine.Quantities.Amount(1, Engine.Quantities.Units.Psi)));
        Assert.Throws<ArgumentException>(() =>
            MachineFaults.Find("wash-switch-held-on")!.Sized(new Engine.Quantities.Amount(1, Engine.Quantities.Units.One))
        );
    }
}
