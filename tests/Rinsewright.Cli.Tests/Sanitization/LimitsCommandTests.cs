using System.Text.Json;
using Rinsewright.Engine.Sanitization;

namespace Rinsewright.Cli.Tests.Sanitization;

/// <summary>Rule sets printed with their citations.</summary>
public sealed class LimitsCommandTests
{
    public static TheoryData<string> Sets() => new(RuleSets.BuiltIn.Select(r => r.Id));

    [Theory]
    [MemberData(nameof(Sets))]
    public async Task Every_built_in_set_prints_in_both_languages_within_80_columns(string id)
    {
        foreach (var language in (string[])["en", "es"])
        {
            var answer = await Run.Async("limits", "--rules", id, "--language", language);
            Assert.Equal((0, ""), (answer.Status, answer.Error));
            Assert.Contains(id, answer.Output, StringComparison.Ordinal);
            Assert.DoesNotContain('[' + "cli.", answer.Output, StringComparison.Ordinal);
            Assert.All(answer.Output.Split('\n'), l => Assert.InRange(l.Length, 0, 80));
        }
    }

    [Fact]
    public async Task Machine_and_method_leave_only_what_applies()
    {
        // FDA Food Code 4-501.110(A)(3): single-tank conveyor, 160 °F.
        var answer = await Run.Async("limits", "--machine", "conveyor-1", "--method", "hot-water");
        Assert.Contains("at least 160\u00a0°F (71\u00a0°C); rule in force, FDA Food", answer.Output, StringComparison.Ordinal);
        Assert.DoesNotContain("165", answer.Output, StringComparison.Ordinal);
        Assert.DoesNotContain("4-501.114", answer.Output, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Json_carries_every_limit_with_its_citation_and_what_it_applies_to()
    {
        var answer = await Run.Async("limits", "--json");
        using var json = JsonDocument.Parse(answer.Output);
        Assert.Equal("rinsewright.limits/1", json.RootElement.GetProperty("schema").GetString());
        var limits = json.RootElement.GetProperty("limits").EnumerateArray().ToList();
        Assert.Equal(RuleSets.Find(RuleSets.DefaultId)!.Limits.Count, limits.Count);
        Assert.All(limits, l => Assert.NotEmpty(l.GetProperty("limit").GetProperty("citation").GetProperty("source").GetString()!));
        Assert.Contains(limits, l => l.GetProperty("machines").EnumerateArray().Any(m => m.GetString() == "multitankConveyor"));
    }

    [Fact]
    public async Task The_list_names_every_set()
    {
        var answer = await Run.Async("limits", "--list");
        Assert.All(RuleSets.BuiltIn, s => Assert.Contains(s.Id, answer.Output, StringComparison.Ordinal));
    }
}
