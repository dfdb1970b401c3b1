using Rinsewright.Client.Records;
using Rinsewright.Client.Sanitization;
using Rinsewright.Client.Shell;
using Rinsewright.Client.Tests.Records;
using Rinsewright.Contracts.Records;
using Rinsewright.Contracts.Sanitization;
using Xunit;

namespace Rinsewright.Client.Tests.Sanitization;

/// <summary>What a person stops, opens or types while a file is still being read.</summary>
public sealed class ProofSessionTurnsTests
{
    private readonly MemoryStore store = new();
    private readonly MemoryComputing computing = new();
    private readonly TaskCompletionSource held = new();
    private readonly Work work;
    private readonly ProofSession session;

    /// <summary>Everything in memory, the engine real.</summary>
    public ProofSessionTurnsTests()
    {
        var preferences = new Preferences(new MemoryDevice());
        work = new Work(store, preferences, TimeProvider.System);
        session = new ProofSession(computing, work, preferences, TimeProvider.System);
    }

    /// <summary>A reading that was stopped is not begun again by a name or a reading typed beside it; only by asking for it.</summary>
    [Fact]
    public async Task What_was_stopped_stays_stopped()
    {
        computing.Held = held.Task;
        var trying = session.TryAsync(Demo.All[0]);
        await RunningAsync();
        session.Write(p => p with { Note = "belt slow" });
        session.Ask(r => Label(r));
        await session.CancelAsync();
        await trying;
        await session.SettledAsync();
        session.Write(p => p with { Note = "belt slow, again" });
        await session.SettledAsync();
        Assert.True(session.Cancelled);
        Assert.Equal(1, computing.Runs);
        var id = session.Proof!.Id;
        Assert.True(await work.IsUnjudgedAsync(id));
        held.SetResult();
        session.Again();
        await session.SettledAsync();
        Assert.Equal(5, session.Proof.Report.Passes.Count);
        Assert.Equal("belt slow, again", (await work.OpenAsync(id))!.Note);
        Assert.False(await work.IsUnjudgedAsync(id));
    }

    /// <summary>Typed beside a second file that turns out to be none: it goes to the proof that stays, and no proof without a file is left over.</summary>
    [Fact]
    public async Task What_is_typed_beside_a_second_bad_file_goes_to_the_proof_that_stays()
    {
        await session.TryAsync(Demo.All[0]);
        var first = session.Proof!.Id;
        computing.Held = held.Task;
        var taking = session.TakeAsync([await computing.KeepAsync("name,price\nsoap,12\nbrush,4\n"u8.ToArray(), "prose.csv")]);
        await RunningAsync();
        session.Write(p => p with { Note = "belt slow" });
        session.Ask(r => Label(r));
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
        Assert.False(await work.IsUnjudgedAsync(first));
    }

    /// <summary>Of two things asked for while a file is read the later one is opened, and the earlier one does not come after it.</summary>
    [Fact]
    public async Task The_last_asked_for_is_opened()
    {
        await session.NewAsync();
        session.Ask(r => Label(r));
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
        Assert.True(await work.IsUnjudgedAsync(id));
    }

    private static ProofRequest Label(ProofRequest request) =>
        ReadingSlot.Label.Put(request, new ReadingDto("wareSurface", new AmountDto(160, "[degF]"), "irreversibleLabel", Reached: true));

    private async Task RunningAsync()
    {
        for (var i = 0; !session.Running; i++)
        {
            Assert.True(i < 500, "It never came about.");
            await Task.Delay(20, TestContext.Current.CancellationToken);
        }
    }
}
