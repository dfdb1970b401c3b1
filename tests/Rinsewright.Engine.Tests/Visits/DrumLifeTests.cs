using CsCheck;
using Rinsewright.Engine.Machines;
using Rinsewright.Engine.Visits;
using Xunit;

namespace Rinsewright.Engine.Tests.Visits;

/// <summary>How long a drum lasts, from those before it. Dates and days counted on a calendar by hand.</summary>
public sealed class DrumLifeTests
{
    private static DateOnly November(int day) => new(2026, 11, day);

    private static Drum Drum(int? since, int? until = null, string product = "Detergent", string size = "5 gal") =>
        new(product, FedProduct.Detergent, size, since is { } s ? November(s) : null, until is { } u ? November(u) : null);

    [Fact]
    public void The_shortest_and_the_longest_before_it_say_when_it_may_be_empty()
    {
        // 2nd to 11th: nine days; 11th to 23rd: twelve. Put on on the 23rd: from 2 December to 5 December.
        var on = Drum(23);

        var life = DrumLife.Of(on, [Drum(2, 11), Drum(11, 23), on]);

        Assert.Equal(new DrumLife(2, 9, 12, new DateOnly(2026, 12, 2), new DateOnly(2026, 12, 5)), life);
        Assert.Equal(4, life!.LeftOn(November(28)));
        Assert.Equal(0, life.LeftOn(new DateOnly(2026, 12, 24)));
    }

    /// <summary>Nothing that was not seen from full to empty says how long one lasts: undetermined, not 0.</summary>
    [Fact]
    public void Without_one_seen_from_full_to_empty_it_is_undetermined()
    {
        var on = Drum(23);

        Assert.Null(DrumLife.Of(on, [on, Drum(null, 11), Drum(2), Drum(5, 5), Drum(9, 4)]));
        Assert.Null(DrumLife.Of(on, [on, Drum(2, 11, product: "Rinse additive"), Drum(2, 11, size: "15 gal")]));
    }

    [Fact]
    public void Without_the_day_it_was_put_on_only_the_days_are_said()
    {
        var life = DrumLife.Of(Drum(null, product: " detergent "), [Drum(2, 11)]);

        Assert.Equal(new DrumLife(1, 9, 9, null, null), life);
        Assert.Null(life!.LeftOn(November(20)));
    }

    [Fact]
    public void Every_drum_before_it_lasted_between_the_shortest_and_the_longest()
    {
        Gen.Int[1, 300]
            .Array[1, 12]
            .Sample(days =>
            {
                var since = new DateOnly(2026, 1, 1);
                List<Drum> before = [.. days.Select(d => new Drum("Detergent", null, "", since, since.AddDays(d)))];

                var life = DrumLife.Of(new Drum("Detergent", null, "", since), before)!;

                Assert.Equal(days.Length, life.Emptied);
                Assert.All(before, b => Assert.InRange(b.Until!.Value, life.EmptyFrom!.Value, life.EmptyBy!.Value));
            });
    }
}
