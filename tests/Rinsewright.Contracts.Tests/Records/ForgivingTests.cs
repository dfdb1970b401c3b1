using CsCheck;
using Rinsewright.Contracts.Records;

namespace Rinsewright.Contracts.Tests.Records;

/// <summary>Search as people type. The pairs are invented; one slip for a middling word and two for a long one is common practice, no source.</summary>
public sealed class ForgivingTests
{
    private static readonly string Text = Forgiving.Fold("Saltbox Oyster Bar, 3 Niño Street · Undercounter · Café O'Dell");

    [Theory]
    [InlineData("saltbox", true)]
    [InlineData("SALT", true)]
    [InlineData("nino", true)]
    [InlineData("cafe odell", true)]
    [InlineData("oyter", true)] // one too few
    [InlineData("oystter", true)] // one too many
    [InlineData("oyxter", true)] // one wrong
    [InlineData("osyter", true)] // two swapped
    [InlineData("undrecountr", true)] // two slips in a long word
    [InlineData("undercou", true)]
    [InlineData("bay", false)] // a short word leaves no room
    [InlineData("lobster", false)]
    [InlineData("saltbox diner", false)] // every word must be found
    [InlineData("", true)]
    public void Finds_what_is_meant(string search, bool found) =>
        Assert.Equal(found, Forgiving.Distance(Forgiving.Fold(search), Text) is not null);

    [Fact]
    public void What_stands_there_as_typed_comes_before_what_nearly_does() =>
        Assert.True(Forgiving.Distance("oyster", Text) < Forgiving.Distance("oystre", Text));

    [Fact]
    public void A_name_gives_one_id_whatever_its_accents_and_case()
    {
        Assert.Equal(Forgiving.IdOf("Café Olé"), Forgiving.IdOf("CAFE  ole"));
        Assert.NotEqual(Forgiving.IdOf("Tin Bell Diner"), Forgiving.IdOf("Tin Bell Dinner"));
        Assert.Equal('8', Forgiving.IdOf("Larkspur Lodge").ToString()[14]);
    }

    /// <summary>Many texts searched at once are found as each by itself, the nearest first.</summary>
    [Fact]
    public void Many_texts_are_found_as_each_by_itself()
    {
        var word = Gen.Char["abcdn"].Array[1, 10].Select(c => new string(c));
        var texts = word.Array[1, 5].Select(w => string.Join(' ', w)).Array[0, 30];
        Gen.Select(texts, word.Array[0, 3].Select(w => string.Join(' ', w)))
            .Sample(
                (all, search) =>
                {
                    var each = all.Select((t, at) => (at, Far: Forgiving.Distance(search, t)));
                    Assert.Equal(
                        each.Where(e => e.Far is not null).OrderBy(e => e.Far).Select(e => e.at),
                        new ForgivingTexts(all).Find(search)
                    );
                },
                iter: 20_000
            );
    }
}
