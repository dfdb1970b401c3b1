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
}
