using Rinsewright.Engine.Visits;
using Rinsewright.Engine.Visits.History;
using Xunit;

namespace Rinsewright.Engine.Tests.Visits.History;

/// <summary>What a visit has to bring along for a machine.</summary>
public sealed class PartsOwedTests
{
    private static readonly DateOnly First = new(2026, 9, 1);
    private static readonly DateOnly Today = new(2026, 11, 28);

    private static PartUse Curtain(PartWhere where, int count = 1) => new("Long curtain", count, where);

    private static PartsTold Told(int day, params PartUse[] used) => new(First.AddDays(day), used);

    [Fact]
    public void What_was_ordered_stands_with_the_visit_that_ordered_it()
    {
        var part = Assert.Single(
            PartsOwed.ToTake([Told(0), Told(10, new PartUse("Rinse arm", 2, PartWhere.Ordered, First.AddDays(20)))], Today)
        );

        Assert.Equal(("Rinse arm", 2, First.AddDays(20), 1, true), (part.What, part.Count, part.Expected!.Value, part.Since, part.Late));
    }

    [Fact]
    public void What_was_fitted_later_is_gone() =>
        Assert.Empty(
            PartsOwed.ToTake([Told(0, Curtain(PartWhere.Ordered)), Told(9, new PartUse(" long  CURTAIN", 1, PartWhere.Fitted))], Today)
        );

    [Fact]
    public void Another_part_fitted_takes_nothing_away() =>
        Assert.Single(
            PartsOwed.ToTake([Told(0, Curtain(PartWhere.Ordered)), Told(9, new PartUse("Short curtain", 1, PartWhere.Fitted))], Today)
        );

    [Fact]
    public void Fitted_before_it_was_ordered_it_is_owed() =>
        Assert.Single(PartsOwed.ToTake([Told(0, Curtain(PartWhere.Fitted)), Told(9, Curtain(PartWhere.Ordered))], Today));

    [Fact] // two taps on the screen are two entries of one
    public void Ordered_twice_at_a_visit_it_stands_once_with_its_count() =>
        Assert.Equal(2, Assert.Single(PartsOwed.ToTake([Told(0, Curtain(PartWhere.Ordered), Curtain(PartWhere.Ordered))], Today)).Count);

    [Fact] // the later visit says how it stands now: the order is repeated, not a second one
    public void Said_again_at_the_next_visit_it_stands_once_since_the_first()
    {
        var part = Assert.Single(PartsOwed.ToTake([Told(0, Curtain(PartWhere.Ordered, 3)), Told(9, Curtain(PartWhere.Ordered, 2))], Today));

        Assert.Equal((2, 0, 88), (part.Count, part.Since, part.Days)); // 1 September to 28 November
    }

    [Fact]
    public void What_lies_at_the_kitchen_is_owed_and_not_taken_along()
    {
        PartsTold[] visits = [Told(0, Curtain(PartWhere.Ordered)), Told(9, Curtain(PartWhere.OnSite))];

        Assert.Equal(PartWhere.OnSite, Assert.Single(PartsOwed.Of(visits, Today)).Where);
        Assert.Empty(PartsOwed.ToTake(visits, Today));
    }
}
