using Rinsewright.Client.Sanitization;
using Rinsewright.Client.Tests.Records;
using Rinsewright.Contracts.Records;
using Rinsewright.Contracts.Sanitization;
using Xunit;

namespace Rinsewright.Client.Tests.Sanitization;

/// <summary>What a person stops, opens or types while a file is still being read.</summary>
public sealed class ProofSessionTurnsTests : ProofSessionBase
{
    /// <summary>A reading that was stopped is not begun again by a name or a reading typed beside it; only by asking for it.</summary>
    [Fact]
    public async Task What_was_stopped_stays_stopped()
    {
        computing.Held = held.Task;
        var trying = session.TryAsync(Demo.All[0]);
        await RunningAsync();
        session.Write(p => p with { Note = "belt slow" });
        session.Ask(Labels.Reached);
        await session.CancelAsync();
        await trying;
        await session.SettledAsync();
        session.Write(p => p with { Note = "belt slow, again" });
        await session.SettledAsync();
        Assert.True(session.Cancelled);
        Assert.True(session.HasNoVerdict);
        Assert.Equal(1, computing.Runs);
        var id = session.Proof!.Id;
        Assert.True((await work.OpenAsync(id))!.Unjudged is true);
        held.SetResult();
        session.Again();
        await session.SettledAsync();
        Assert.Equal(5, session.Proof.Report.Passes.Count);
        Assert.False(session.HasNoVerdict);
        Assert.Equal("belt slow, again", (await work.OpenAsync(id))!.Note);
        Assert.False((await work.OpenAsync(id))!.Unjudged is true);
    }

    /// <summary>The file is kept, and so is its proof: it stands in the list and is read when it is opened.</summary>
    [Fact]
    public async Task What_was_stopped_is_read_when_it_is_opened_again()
    {
        computing.Held = held.Task;
        var trying = session.TryAsync(Demo.All[0]);
        await RunningAsync();
        await session.CancelAsync();
        await trying;
        var id = Assert.Single(await work.ListAsync()).Id;
        await session.NewAsync();
        held.SetResult();
        Assert.True(await session.OpenAsync(id));
        await session.SettledAsync();
        Assert.Equal(5, session.Proof!.Report.Passes.Count);
        Assert.False((await work.OpenAsync(id))!.Unjudged is true);
    }

    /// <summary>Typed beside a second file that turns out to be none: it goes to the proof that stays, and no proof without a file is left over.</summary>
    [Fact]
    public async Task What_is_typed_beside_a_second_bad_file_goes_to_the_proof_that_stays()
    {
        await session.TryAsync(Demo.All[0]);
        var first = session.Proof!.Id;
        computing.Held = held.Task;
        var taking = session.TakeAsync([await ProseAsync()]);
        await RunningAsync();
        session.Write(p => p with { Note = "belt slow" });
        session.Ask(Labels.Reached);
        Assert.NotEqual(first, session.Proof.Id);
        held.SetResult();
        await taking;
        await session.SettledAsync();
        Assert.Equal(first, session.Proof.Id);
        Assert.Equal(first, Assert.Single(await work.ListAsync()).Id);
        var kept = (await work.OpenAsync(first))!;
        Assert.Equal("belt slow", kept.Note);
        Assert.Equal("wareSurface", Assert.Single(kept.Request.Readings!).Point);
        Assert.Equal(5, kept.Report.Passes.Count);
        Assert.Null(session.Failure);
        Assert.False((await work.OpenAsync(first))!.Unjudged is true);
    }

    /// <summary>Of two things asked for while a file is read the later one is opened, and the earlier one does not come after it.</summary>
    [Fact]
    public async Task The_last_asked_for_is_opened()
    {
        await session.NewAsync();
        session.Ask(Labels.Reached);
        await session.SettledAsync();
        var typed = session.Proof!.Id;
        computing.Held = held.Task;
        var trying = session.TryAsync(Demo.All[0]);
        await RunningAsync();
        var fresh = session.NewAsync();
        var opening = session.OpenAsync(typed);
        held.SetResult();
        await trying;
        Assert.False(await fresh);
        Assert.True(await opening);
        Assert.Equal(typed, session.Proof.Id);
    }

    /// <summary>Whoever signs in after is shown nothing of it; what was kept stays.</summary>
    [Fact]
    public async Task A_proof_that_is_put_away_is_kept()
    {
        computing.Held = held.Task;
        var trying = session.TryAsync(Demo.All[0]);
        await RunningAsync();
        session.Write(p => p with { Note = "belt slow" });
        var id = session.Proof!.Id;
        await session.CloseAsync();
        await trying;
        Assert.Null(session.Proof);
        Assert.Equal("belt slow", (await work.OpenAsync(id))!.Note);
        Assert.True((await work.OpenAsync(id))!.Unjudged is true);
    }

    /// <summary>What is typed while a file is being taken is of that file: judged with it, one run after the other, and until then kept as not judged.</summary>
    [Fact]
    public async Task What_is_typed_while_a_file_is_taken_is_judged_with_it()
    {
        computing.Held = held.Task;
        var trying = session.TryAsync(Demo.All[0]);
        await RunningAsync();
        var rinse = ReadingSlot.Machine.First(s => s.Id == "final-rinse");
        session.Ask(r => rinse.Put(r, new ReadingDto("finalRinseManifold", new AmountDto(177.2, "[degF]"), "probe")));
        await Task.Delay(600, TestContext.Current.CancellationToken); // past the pause
        Assert.True((await work.OpenAsync(session.Proof!.Id))!.Unjudged is true);
        held.SetResult();
        await trying;
        await session.SettledAsync();
        Assert.Equal(5, session.Proof.Report.Passes.Count);
        Assert.Equal("notProven", (await work.OpenAsync(session.Proof.Id))!.Report.Verdict);
        Assert.False((await work.OpenAsync(session.Proof.Id))!.Unjudged is true);
    }

    /// <summary>A name needs no judgement of its own, but the file it is typed beside does: a page left then is judged when it is opened.</summary>
    [Fact]
    public async Task A_name_typed_while_a_file_is_taken_does_not_pass_for_a_judgement()
    {
        computing.Held = held.Task;
        var trying = session.TryAsync(Demo.All[0]);
        await RunningAsync();
        session.Write(p => p with { Kitchen = "Tin Bell Diner" });
        var id = session.Proof!.Id;
        await Soon.UntilAsync(async () => await work.OpenAsync(id) is { Kitchen: "Tin Bell Diner" });
        Assert.True((await work.OpenAsync(id))!.Unjudged is true);
        held.SetResult();
        await trying;
        await session.SettledAsync();
        Assert.False((await work.OpenAsync(id))!.Unjudged is true);
        Assert.Equal(5, (await work.OpenAsync(id))!.Report.Passes.Count);
    }

    /// <summary>A file that turns out to be none takes nothing with it that was typed while it was read.</summary>
    [Fact]
    public async Task What_is_typed_while_a_bad_file_is_read_stays()
    {
        await session.NewAsync();
        computing.Held = held.Task;
        var taking = session.TakeAsync([await ProseAsync()]);
        await RunningAsync();
        session.Ask(Labels.Reached);
        held.SetResult();
        await taking;
        await session.SettledAsync();
        Assert.Equal("prose.csv", Assert.Single(session.Refused).Name);
        Assert.Null(session.File);
        Assert.Equal("proven", session.Proof!.Report.Verdict);
        Assert.Equal("proven", (await work.OpenAsync(session.Proof.Id))!.Report.Verdict);
        Assert.False((await work.OpenAsync(session.Proof.Id))!.Unjudged is true);
    }

    /// <summary>Another proof opened while a file is still read: each keeps what is its own.</summary>
    [Fact]
    public async Task Another_proof_opened_while_a_file_is_read_keeps_its_own()
    {
        await session.NewAsync();
        session.Ask(Labels.Reached);
        await session.SettledAsync();
        var typed = session.Proof!.Id;
        computing.Held = held.Task;
        var trying = session.TryAsync(Demo.All[0]);
        await RunningAsync();
        var opening = session.OpenAsync(typed);
        held.SetResult();
        Assert.True(await opening);
        await trying;
        Assert.Equal(typed, session.Proof.Id);
        Assert.Null(session.Proof.Report.File);
        var lines = await work.ListAsync();
        Assert.Equal(2, lines.Count);
        Assert.Equal(5, (await work.OpenAsync(lines.Single(l => l.Id != typed).Id))!.Report.Passes.Count);
    }

    private Task<TakenFile> ProseAsync() => computing.KeepAsync("name,price\nsoap,12\nbrush,4\n"u8.ToArray(), "prose.csv");
}
