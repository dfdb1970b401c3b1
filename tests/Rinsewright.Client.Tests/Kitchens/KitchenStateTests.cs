using Rinsewright.Client.Kitchens;
using Rinsewright.Client.Records;
using Rinsewright.Contracts.Records;
using Xunit;

namespace Rinsewright.Client.Tests.Kitchens;

/// <summary>How a kitchen stands, from what was done last at each of its machines.</summary>
public sealed class KitchenStateTests
{
    private static readonly DateTimeOffset Monday = new(2026, 11, 23, 9, 0, 0, TimeSpan.Zero);
    private static readonly Guid Door = Guid.Parse("01a20000-0000-7000-8000-000000000001");
    private static readonly Guid Conveyor = Guid.Parse("01a20000-0000-7000-8000-000000000002");

    private static ProofLine Proof(Guid machine, int day, string verdict) =>
        new(Guid.CreateVersion7(), "Larkspur Lodge", "", "", Monday.AddDays(day), verdict, 3, null, null, machine);

    private static RecordLine Visit(Guid machine, int day, string standing) =>
        new()
        {
            Id = Guid.CreateVersion7(),
            Kind = Kinds.Visit,
            About = standing,
            Machine = machine,
            At = Monday.AddDays(day),
        };

    [Fact]
    public void A_later_visit_takes_the_place_of_an_earlier_proof()
    {
        var state = KitchenState.Of([Proof(Door, 0, "proven")], [Visit(Door, 1, "stopUse")]);

        Assert.Equal("bad", state.Kind);
        Assert.Equal("visit-standing.stop-use", state.Worst!.WordKey);
        Assert.Single(state.Bad);
    }

    [Fact]
    public void A_later_proof_takes_the_place_of_an_earlier_visit()
    {
        var state = KitchenState.Of([Proof(Door, 2, "proven")], [Visit(Door, 1, "notSanitary")]);

        Assert.Equal("good", state.Kind);
        Assert.Empty(state.Bad);
    }

    [Fact]
    public void The_worst_machine_is_the_kitchen()
    {
        var state = KitchenState.Of([Proof(Conveyor, 3, "proven")], [Visit(Door, 0, "watch"), Visit(Conveyor, 1, "sanitary")]);

        Assert.Equal("near", state.Kind);
        Assert.Equal("visit-standing.watch", state.Worst!.WordKey);
        // What was done last was done at the other one.
        Assert.Equal(Monday.AddDays(3), state.Last!.At);
    }

    [Theory]
    [InlineData("notProven", "bad")]
    [InlineData("proven", "good")]
    public void A_visit_on_which_nothing_was_proved_clears_and_spoils_nothing(string before, string kind)
    {
        Assert.Equal(kind, KitchenState.Of([Proof(Door, 0, before)], [Visit(Door, 1, "notProved"), Visit(Door, 2, "notProved")]).Kind);
        Assert.Equal("near", KitchenState.Of([], [Visit(Door, 1, "notProved")]).Kind);
    }

    [Fact]
    public void A_visit_that_was_never_judged_says_nothing()
    {
        Assert.Equal("none", KitchenState.Of([], [Visit(Door, 0, "")]).Kind);
        Assert.Equal("good", KitchenState.Of([Proof(Door, 0, "proven")], [Visit(Door, 5, "")]).Kind);
    }
}
