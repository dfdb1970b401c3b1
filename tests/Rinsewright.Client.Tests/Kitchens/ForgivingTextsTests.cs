using CsCheck;
using Rinsewright.Client.Kitchens;
using Rinsewright.Contracts.Records;
using Xunit;

namespace Rinsewright.Client.Tests.Kitchens;

/// <summary>The search of a list against the search of each text by itself.</summary>
public sealed class ForgivingTextsTests
{
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
