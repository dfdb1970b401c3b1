using System.Text.Json;
using System.Text.RegularExpressions;
using Rinsewright.Contracts.Language;
using Rinsewright.Tests.Shared;
using Xunit;

namespace Rinsewright.Files.Tests.Language;

/// <summary>Both languages say the same things, and every sentence that code asks for is there with the values it needs.</summary>
public sealed partial class LanguageTests
{
    private static readonly string[] Folders = ["src/Rinsewright.Contracts/Language", "src/Rinsewright.LateWords/Language"];

    [Fact]
    public void Both_languages_have_the_same_files_and_keys()
    {
        var english = Read("en");
        var spanish = Read("es");

        Assert.NotEmpty(english);
        Assert.Equal(english.Keys.Order(StringComparer.Ordinal), spanish.Keys.Order(StringComparer.Ordinal));
    }

    [Fact]
    public void Both_languages_use_the_same_names()
    {
        var spanish = Read("es");
        var different = Read("en").Where(e => spanish.TryGetValue(e.Key, out var es) && !Names(e.Value).SetEquals(Names(es)));

        Findings.None(
            different.Select(e => $"{e.Key}: en {{{string.Join(", ", Names(e.Value))}}}, es {{{string.Join(", ", Names(spanish[e.Key]))}}}")
        );
    }

    [Fact]
    public void No_text_is_empty() =>
        Findings.None(Words.Languages.SelectMany(l => Read(l).Where(t => string.IsNullOrWhiteSpace(t.Value)).Select(t => $"{l} {t.Key}")));

    [Fact]
    public void Every_key_that_code_names_has_its_words()
    {
        var known = Read("en").Keys.Select(k => k[(k.IndexOf(' ', StringComparison.Ordinal) + 1)..]).ToHashSet(StringComparer.Ordinal);
        var named = Sources()
            .SelectMany(f => KeyInCode().Matches(Tree.Read(f)).Select(m => (File: f, Key: m.Groups["key"].Value)))
            .ToList();

        Assert.NotEmpty(named);
        Findings.None(named.Where(n => !known.Contains(n.Key)).Select(n => $"{n.File}: {n.Key} has no words"));
    }

    [Fact] // what is named there is shown before the late words are at hand
    public void The_first_page_names_no_late_word()
    {
        var late = Tree.Files("src/Rinsewright.LateWords/Language/en", ".json")
            .SelectMany(f => JsonDocument.Parse(Tree.Read(f)).RootElement.EnumerateObject().Select(p => p.Name))
            .ToHashSet(StringComparer.Ordinal);
        var named = Tree.Files("src/Rinsewright.Screens", ".cs", ".razor")
            .SelectMany(f => KeyInCode().Matches(Tree.Read(f)).Select(m => (File: f, Key: m.Groups["key"].Value)))
            .ToList();

        Assert.NotEmpty(named);
        Findings.None(named.Where(n => late.Contains(n.Key)).Select(n => $"{n.File}: {n.Key} comes late"));
    }

    [Fact]
    public void Every_statement_gives_the_values_its_sentence_needs()
    {
        var texts = Read("en")
            .ToDictionary(t => t.Key[(t.Key.IndexOf(' ', StringComparison.Ordinal) + 1)..], t => t.Value, StringComparer.Ordinal);
        var lacking = Sources()
            .SelectMany(f =>
                StatementInCode()
                    .Matches(Tree.Read(f))
                    .Select(m => (File: f, Key: m.Groups["key"].Value, Given: m.Groups["name"].Captures.Select(c => c.Value)))
            )
            .Where(s => texts.ContainsKey(s.Key))
            .SelectMany(s => Names(texts[s.Key]).Except(s.Given).Select(n => $"{s.File}: {s.Key} gives no {{{n}}}"));

        Findings.None(lacking);
    }

    private static IEnumerable<string> Sources() => Tree.Files("src", ".cs", ".razor");

    private static HashSet<string> Names(string text) => [.. Name().Matches(text).Select(m => m.Groups["name"].Value)];

    // "file key" → text; a key may stand in one file only, which the loader of the words insists on.
    private static Dictionary<string, string> Read(string language)
    {
        var found = new Dictionary<string, string>(StringComparer.Ordinal);
        foreach (var file in Folders.SelectMany(f => Tree.Files($"{f}/{language}", ".json")))
        {
            using var json = JsonDocument.Parse(Tree.Read(file));
            foreach (var property in json.RootElement.EnumerateObject())
            {
                found.Add($"{Path.GetFileName(file)} {property.Name}", property.Value.GetString()!);
            }
        }

        return found;
    }

    [GeneratedRegex(@"\{(?<name>\w+)\}", RegexOptions.ExplicitCapture | RegexOptions.CultureInvariant, 1000)]
    private static partial Regex Name();

    // Statement.Of("a.key", …), words["a.key"], words.Say("a.key", …): a literal with a dot, whole, not a piece of a longer one
    [GeneratedRegex(
        @"(Statement\.Of\(|\b[Ww]ords\[|\bW\[|\bSay\(|\bT\()\s*""(?<key>[a-z0-9-]+(\.[a-zA-Z0-9-]+)+)""(?!\s*\+)",
        RegexOptions.ExplicitCapture | RegexOptions.CultureInvariant,
        2000
    )]
    private static partial Regex KeyInCode();

    // Statement.Of("a.key", ("Name", value), …) with values whose brackets are balanced
    [GeneratedRegex(
        @"Statement\.Of\(\s*""(?<key>[a-z0-9-]+(\.[a-zA-Z0-9-]+)+)""(\s*,\s*\(\s*""(?<name>\w+)""\s*,(?>[^()]+|\((?<open>)|\)(?<-open>))*?(?(open)(?!))\))*\s*\)",
        RegexOptions.ExplicitCapture | RegexOptions.CultureInvariant,
        5000
    )]
    private static partial Regex StatementInCode();
}
