using System.Text.RegularExpressions;
using Rinsewright.Contracts.Language;
using Rinsewright.Contracts.Records;
using Rinsewright.Drawing.Bench;
using Rinsewright.Engine.Bench;
using Rinsewright.Engine.Quantities;
using Rinsewright.Tests.Shared;
using Xunit;

namespace Rinsewright.Drawing.Tests.Bench;

/// <summary>Everything a tool can say has its words, in both languages.</summary>
public sealed class BenchWordsTests
{
    [Theory]
    [InlineData("en")]
    [InlineData("es")]
    public void Every_tool_field_choice_result_and_note_is_named(string language)
    {
        var words = Words.For(language);
        List<string> keys = [];
        foreach (var tool in BenchTools.All)
        {
            keys.AddRange([$"bench.{tool.Id}.name", $"bench.{tool.Id}.about"]);
            keys.AddRange(tool.Fields.Select(f => $"bench.field.{f.Id}"));
            foreach (var choice in tool.Choices)
            {
                keys.Add($"bench.choice.{choice.Id}");
                keys.AddRange(choice.Options.Select(o => $"bench.choice.{choice.Id}.{o}"));
            }
        }

        // Results, notes, cautions and problems stand in the code of the tools as they are written.
        foreach (var file in Tree.Files("src/Rinsewright.Engine/Bench", ".cs"))
        {
            var text = Tree.Read(file);
            keys.AddRange(Matches(text, """Gives\(\s*"(\w+)""").Select(id => $"bench.result.{id}"));
            keys.AddRange(Matches(text, @"\b(bench\.(?:note|caution|problem)\.[\w-]+)"));
        }

        Assert.True(keys.Count > 300, $"only {keys.Count} keys found");
        Findings.None(keys.Distinct(StringComparer.Ordinal).Where(k => words[k] == $"[{k}]"));
    }

    private static IEnumerable<string> Matches(string text, string pattern) =>
        Regex.Matches(text, pattern, RegexOptions.None, TimeSpan.FromSeconds(5)).Select(m => m.Groups[1].Value);

    [Theory] // what was typed is what the record says
    [InlineData(0.05, "mL", "0.05\u00a0mL")]
    [InlineData(0.5, "mL", "0.5\u00a0mL")]
    [InlineData(12345.6, "mL", "12,346\u00a0mL")]
    [InlineData(0.0001234, "mL", "0.0001234\u00a0mL")]
    [InlineData(-2.25, "mL", "-2.25\u00a0mL")]
    [InlineData(0, "mL", "0\u00a0mL")]
    public void A_figure_of_a_sum_keeps_what_was_typed(double value, string unit, string said) =>
        Assert.Equal(said, BenchWords.Figure(Words.For("en"), new Amount(value, Units.Find(unit)!), UnitDisplay.AsRead));
}
