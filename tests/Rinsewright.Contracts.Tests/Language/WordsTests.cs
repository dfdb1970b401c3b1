using System.Text.Json;
using Rinsewright.Contracts.Language;
using Rinsewright.Tests.Shared;
using Xunit;

namespace Rinsewright.Contracts.Tests.Language;

/// <summary>Words in two libraries, one of which comes late in the browser.</summary>
public sealed class WordsTests
{
    private static readonly string[] Folders = ["src/Rinsewright.Contracts/Language", "src/Rinsewright.LateWords/Language"];

    [Theory]
    [InlineData("en")]
    [InlineData("es")]
    public void Every_word_of_the_files_is_there_once(string language)
    {
        var written = Folders
            .SelectMany(folder => Tree.Files($"{folder}/{language}", ".json"))
            .SelectMany(file => JsonDocument.Parse(Tree.Read(file)).RootElement.EnumerateObject().Select(p => p.Name))
            .ToList();

        Assert.Empty(written.GroupBy(k => k).Where(g => g.Count() > 1).Select(g => g.Key));
        Assert.Equal(written.Order(StringComparer.Ordinal), Words.For(language).Keys.Order(StringComparer.Ordinal));
    }

    [Fact]
    public void Taking_the_late_words_in_again_changes_nothing()
    {
        var before = Words.For("es").Keys.Count();

        Words.LateAreHere();

        Assert.Equal(before, Words.For("es").Keys.Count());
    }
}
