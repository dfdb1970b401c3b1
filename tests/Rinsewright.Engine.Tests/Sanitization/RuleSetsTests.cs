using Rinsewright.Engine.Records;
using Rinsewright.Engine.Sanitization;
using Xunit;

namespace Rinsewright.Engine.Tests.Sanitization;

public class RuleSetsTests
{
    [Fact]
    public void Every_built_in_set_loads_with_unique_ids_and_sources()
    {
        Assert.All(
            RuleSets.BuiltIn,
            set =>
            {
                Assert.Equal(set.Limits.Count, set.Limits.Select(l => l.Id).Distinct().Count());
                Assert.All(set.Limits, l => Assert.NotEmpty(l.Citation.Source));
                Assert.NotEmpty(set.Title);
            }
        );
    }

    [Theory] // state differences: in-410-iac-7-24, nac-446-355, ca-17-ccr-30856, army-qm3510b
    [InlineData("fda-food-code-15-25-psi", "flow-pressure-minimum", 15)]
    [InlineData("fda-food-code-15-25-psi", "flow-pressure-maximum", 25)]
    [InlineData("nv-nac-446", "pumped-rinse", 160)]
    [InlineData("ca-17-ccr-30856", "final-rinse", 180)]
    [InlineData("la-lac-51", "ware-surface-peak", 160)]
    public void Sets_built_on_another_one_replace_and_keep_rows(string set, string limit, double leading) =>
        Assert.Equal(leading, RuleSets.Find(set)!.Limits.Single(l => l.Id == limit).Printed[0].Value);

    [Fact] // in-410-iac-7-24: 75 °F, not 68
    public void Indiana_needs_a_warmer_iodine_rinse() =>
        Assert.Equal(
            75,
            RuleSets.Find("in-410-iac-7-24")!.Sanitizers.Single(s => s.Method == SanitizingMethod.Iodine).TemperatureMinimum[0].Value
        );

    [Fact]
    public void A_service_can_add_its_own_set_on_top()
    {
        const string Json = """
            {
              "format": "rinsewright.rules/1", "id": "tamarack", "title": "Tamarack Valley house rule", "jurisdiction": "our customers", "edition": "2031",
              "basedOn": "fda-food-code",
              "sources": [{ "id": "us", "key": "service", "title": "House rule", "basis": "service" }],
              "limits": [{ "id": "final-rinse", "point": "finalRinseManifold", "sense": "minimum", "printed": ["183 [degF]", "84 Cel"], "force": "service", "cite": "us" }]
            }
            """;
        var set = RuleSets.Parse(Json);
        Assert.Equal(183, set.Limits.Single(l => l.Id == "final-rinse").Printed[0].Value);
        Assert.Equal(Basis.Service, set.Limits.Single(l => l.Id == "final-rinse").Citation.Basis);
        Assert.Contains(set.Limits, l => l.Id == "ware-surface-peak");
    }

    [Theory]
    [InlineData("{", "line")]
    [InlineData("""{"format":"x"}""", "format")]
    [InlineData("""{"format":"rinsewright.rules/1","basedOn":"nowhere"}""", "basedOn")]
    [InlineData(
        """{"format":"rinsewright.rules/1","sources":[],"limits":[{"printed":["180 F"]}],"id":"a","title":"t","jurisdiction":"j","edition":"e"}""",
        "limits[0].printed[0]"
    )]
    [InlineData(
        """{"format":"rinsewright.rules/1","sources":[],"limits":[{"printed":["180 [degF]"],"id":"x","point":"attic"}],"id":"a","title":"t","jurisdiction":"j","edition":"e"}""",
        "limits[0].point"
    )]
    public void A_bad_file_is_refused_with_its_place(string json, string path) =>
        Assert.StartsWith(path, Assert.Throws<RuleSetException>(() => RuleSets.Parse(json)).Path, StringComparison.Ordinal);
}
