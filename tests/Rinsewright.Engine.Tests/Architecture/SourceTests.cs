using System.Text.RegularExpressions;
using Rinsewright.Tests.Shared;
using Xunit;

namespace Rinsewright.Engine.Tests.Architecture;

/// <summary>Every number has a source, every source stands once in docs/references.bib, and no source stands there unused.</summary>
public sealed partial class SourceTests
{
    private const string Bibliography = "docs/references.bib";

    // Not keys of a text, but said in their place where there is none.
    private static readonly string[] NotAText = ["common-practice", "data-plate", "product-label", "service"];

    [Fact]
    public void Keys_are_listed_once_and_say_how_well_they_are_known()
    {
        var entries = Entry().Matches(Tree.Read(Bibliography)).Select(m => (Key: m.Groups["key"].Value, Text: m.Value)).ToList();

        Assert.NotEmpty(entries);
        Findings.None(entries.GroupBy(e => e.Key, StringComparer.Ordinal).Where(g => g.Count() > 1).Select(g => g.Key));
        Findings.None(
            entries.Where(e => !Note().IsMatch(e.Text)).Select(e => $"{e.Key}: note must begin with opened, second-hand or from memory")
        );
        Findings.None(
            entries
                .Where(e => !e.Text.Contains("annote", StringComparison.Ordinal))
                .Select(e => $"{e.Key}: say in annote what is taken from it")
        );
    }

    [Fact]
    public void Every_source_that_is_cited_is_listed()
    {
        var known = Keys().Concat(NotAText).ToHashSet(StringComparer.Ordinal);
        var cited = Citing().SelectMany(f => Cited(Tree.Read(f)).Select(k => (Key: k, File: f))).ToList();

        Assert.NotEmpty(cited);
        Findings.None(
            cited.Where(c => !known.Contains(c.Key)).Select(c => $"{c.File} cites {c.Key}, which is not in {Bibliography}").Distinct()
        );
    }

    [Fact]
    public void Every_source_that_is_listed_is_used()
    {
        var text = string.Join('\n', Citing().Select(Tree.Read));
        var unused = Keys()
            .Where(k =>
                !Regex.IsMatch(
                    text,
                    $@"(?<![\w-]){Regex.Escape(k)}(?![\w-])",
                    RegexOptions.ExplicitCapture | RegexOptions.CultureInvariant,
                    TimeSpan.FromSeconds(5)
                )
            );

        Findings.None(unused.Select(k => $"{k} is in {Bibliography} and used nowhere"));
    }

    private static IEnumerable<string> Keys() => Entry().Matches(Tree.Read(Bibliography)).Select(m => m.Groups["key"].Value);

    private static IEnumerable<string> Citing() =>
        Tree.Files("src", ".cs", ".json", ".csv", ".md", ".razor")
            .Concat(Tree.Files("tests", ".cs", ".csv"))
            .Concat(Tree.Files("docs", ".md"))
            .Where(f => !f.Contains("/Architecture/", StringComparison.Ordinal))
            // Plants pieces of YAML, whose lists look like keys; the sources of the knowledge have rules of their own.
            .Where(f => !f.EndsWith("/KnowledgeRulesTests.cs", StringComparison.Ordinal));

    private static IEnumerable<string> Cited(string text) =>
        Citation()
            .Matches(text)
            .Concat(JsonSource().Matches(text))
            .Concat(Bracketed().Matches(text))
            .Concat(TableSource().Matches(text))
            .SelectMany(m =>
                m.Groups["key"].Value.Split([';', ',', ' '], StringSplitOptions.RemoveEmptyEntries | StringSplitOptions.TrimEntries)
            )
            .Where(k => k.Length > 0);

    [GeneratedRegex(
        @"^@misc\{(?<key>[^,\s]+),.*?^\}",
        RegexOptions.ExplicitCapture | RegexOptions.CultureInvariant | RegexOptions.Multiline | RegexOptions.Singleline,
        2000
    )]
    private static partial Regex Entry();

    [GeneratedRegex(@"note\s+= \{(opened|second-hand|from memory)", RegexOptions.ExplicitCapture | RegexOptions.CultureInvariant, 1000)]
    private static partial Regex Note();

    // new Citation("key", …) and Citation("key", …)
    [GeneratedRegex(@"\bCitation\(\s*(Source:\s*)?""(?<key>[^""{]+)""", RegexOptions.ExplicitCapture | RegexOptions.CultureInvariant, 1000)]
    private static partial Regex Citation();

    // "key": "…" of a source in data files
    [GeneratedRegex(@"""(source|key)""\s*:\s*""(?<key>[^""]+)""", RegexOptions.ExplicitCapture | RegexOptions.CultureInvariant, 1000)]
    private static partial Regex JsonSource();

    // [key] or [key, locator] in doc comments and pages; a link has its address in round brackets behind it
    [GeneratedRegex(
        @"(?<![\w\]])\[(?<key>[a-z0-9]{2,}(-[a-z0-9]+)+)(,[^\]\n]*)?\](?![\(\w])",
        RegexOptions.ExplicitCapture | RegexOptions.CultureInvariant,
        1000
    )]
    private static partial Regex Bracketed();

    // "# source key" at the head of a table
    [GeneratedRegex(
        @"^#\s*source\s+(?<key>[a-z0-9][a-z0-9; ,-]*[a-z0-9])\s*$",
        RegexOptions.ExplicitCapture | RegexOptions.CultureInvariant | RegexOptions.Multiline,
        1000
    )]
    private static partial Regex TableSource();
}
