using Rinsewright.Client.Sanitization;
using Rinsewright.Client.Tests.Records;
using Rinsewright.Contracts.Records;
using Rinsewright.Contracts.Sanitization;
using Rinsewright.Files.Demo;
using Xunit;

namespace Rinsewright.Client.Tests.Sanitization;

/// <summary>No verdict stands on what the device does not hold, on a slow one, a full one, or one that could not keep a file.</summary>
public sealed class ProofSessionKeptTests : ProofSessionBase
{
    /// <summary>On a slow device a verdict comes when what it stands on is written: the page may be left as soon as it is seen.</summary>
    [Fact]
    public async Task A_reading_is_written_before_its_verdict_shows()
    {
        await session.NewAsync();
        store.Held = held.Task;
        session.Ask(Labels.Reached);
        Assert.True(work.Writing > 0); // from the first moment: nobody is told that it is saved
        await Task.Delay(600, TestContext.Current.CancellationToken); // past the pause
        Assert.Equal("undetermined", session.Proof!.Report.Verdict);
        Assert.Equal("proven", session.Spot!.Verdict); // the field says at once how it stands
        session.Changed += () => Assert.True(session.Proof.Report.Verdict != "proven" || store.Documents.Count > 0);
        held.SetResult();
        await session.SettledAsync();
        Assert.Equal("proven", session.Proof.Report.Verdict);
    }

    /// <summary>The same of a file: what was read of it shows, its verdict waits for the write.</summary>
    [Fact]
    public async Task A_file_is_written_before_its_verdict_shows()
    {
        await session.NewAsync();
        store.Held = held.Task;
        var taking = session.TakeAsync([await LoggerAsync()]);
        await Soon.UntilAsync(() => session.Proof!.Report.Passes.Count == 5);
        Assert.True(session.HasNoVerdict);
        Assert.Empty(store.Documents);
        held.SetResult();
        await taking;
        Assert.False(session.HasNoVerdict);
        Assert.Single(store.Documents);
    }

    /// <summary>Of two files given together the first is still being written when a reading is typed: it is of the first.</summary>
    [Fact]
    public async Task A_reading_typed_while_the_first_of_two_files_is_written_is_judged_with_it()
    {
        await session.NewAsync();
        store.Held = held.Task;
        var taking = session.TakeAsync([await LoggerAsync(), await LoggerAsync(DemoLoggers.MillraceDoor)]);
        await Soon.UntilAsync(() => session.Proof!.Report.Passes.Count == 5);
        var first = session.Proof!.Id;
        session.Ask(ColdRinse);
        await Task.Delay(600, TestContext.Current.CancellationToken); // past the pause
        held.SetResult();
        await taking;
        await session.SettledAsync();
        Assert.NotEqual(first, session.Proof.Id);
        Assert.Equal("notProven", (await work.OpenAsync(first))!.Report.Verdict);
        Assert.False((await work.OpenAsync(first))!.Unjudged is true);
    }

    /// <summary>The device has room for the reading, and none for what was judged of it: opened again it is judged again, and until then nothing is shown.</summary>
    [Fact]
    public async Task A_judgement_that_was_refused_is_made_again()
    {
        await session.TryAsync(Demo.All[0]);
        var id = session.Proof!.Id;
        session.Changed += () => store.Full = session.Proof.Report.Verdict == "notProven";
        session.Ask(ColdRinse);
        await session.SettledAsync();
        Assert.NotNull(work.Trouble);
        Assert.Equal("proven", (await work.OpenAsync(id))!.Report.Verdict);
        Assert.True((await work.OpenAsync(id))!.Unjudged is true);

        store.Full = false;
        var next = NewSession();
        Assert.True(await next.OpenAsync(id));
        Assert.True(next.HasNoVerdict);
        await next.SettledAsync();
        Assert.False(next.HasNoVerdict);
        Assert.Equal("notProven", next.Proof!.Report.Verdict);
    }

    /// <summary>A file over the limit is gone with the page that had it. What was read of it is not thrown away for a reading typed later; given again it is judged with that.</summary>
    [Fact]
    public async Task Passes_of_a_file_that_was_not_kept_stay()
    {
        var file = await ReopenedAsync();
        var id = session.Proof!.Id;
        Assert.False(session.HasNoVerdict);
        session.Ask(ColdRinse);
        await session.SettledAsync();
        Assert.Equal("client.file.not-here", session.Failure!.Key);
        Assert.Equal(5, session.Proof.Report.Passes.Count);
        Assert.True(session.HasNoVerdict);
        Assert.True((await work.OpenAsync(id))!.Unjudged is true);

        await session.TakeAsync([file]);
        Assert.Equal(id, session.Proof.Id);
        Assert.Equal(5, session.Proof.Report.Passes.Count);
        Assert.Equal("notProven", session.Proof.Report.Verdict);
        Assert.False(session.HasNoVerdict);
        Assert.False((await work.OpenAsync(id))!.Unjudged is true);
    }

    /// <summary>Given again and stopped, with a note typed meanwhile: what was read of it before still stands.</summary>
    [Fact]
    public async Task Passes_of_a_file_that_was_not_kept_stay_when_it_is_stopped_the_second_time()
    {
        var file = await ReopenedAsync();
        var id = session.Proof!.Id;
        computing.Held = held.Task;
        var taking = session.TakeAsync([file]);
        await RunningAsync();
        session.Write(p => p with { Note = "belt slow" });
        await Soon.UntilAsync(async () => (await work.OpenAsync(id))!.Note == "belt slow");
        Assert.Equal(5, (await work.OpenAsync(id))!.Report.Passes.Count);
        await session.CancelAsync();
        await taking;
        session.Write(p => p with { Note = "belt slow, again" });
        await session.SettledAsync();
        Assert.Equal(5, (await work.OpenAsync(id))!.Report.Passes.Count);
        Assert.True(session.HasNoVerdict);
    }

    /// <summary>Stopped, there is nothing of such a file to be found again.</summary>
    [Fact]
    public async Task A_file_that_was_not_kept_leaves_no_proof_when_it_is_stopped()
    {
        await session.NewAsync();
        computing.Held = held.Task;
        var taking = session.TakeAsync([await LoggerAsync() with { Kept = false }]);
        await RunningAsync();
        await session.CancelAsync();
        await taking;
        Assert.True(session.Cancelled);
        Assert.Empty(store.Documents);
    }

    /// <summary>A file that is none, given to a proof whose own was stopped: that one is still stopped, and can be read again.</summary>
    [Fact]
    public async Task A_bad_file_does_not_make_a_stopped_proof_a_judged_one()
    {
        computing.Held = held.Task;
        var trying = session.TryAsync(Demo.All[0]);
        await RunningAsync();
        await session.CancelAsync();
        await trying;
        var id = session.Proof!.Id;
        held.SetResult();
        await session.TakeAsync([await computing.KeepAsync("name,price\nsoap,12\n"u8.ToArray(), "prose.csv")]);
        Assert.Single(session.Refused);
        Assert.True(session.Cancelled);
        Assert.True(session.HasNoVerdict);
        session.Write(p => p with { Note = "belt slow" });
        await session.SettledAsync();
        Assert.True((await work.OpenAsync(id))!.Unjudged is true);
        session.Again();
        await session.SettledAsync();
        Assert.Equal(5, session.Proof.Report.Passes.Count);
        Assert.False(session.HasNoVerdict);
    }

    /// <summary>An invented file that cannot be fetched leaves nothing of its kitchen and machine to the next file, and keeps no sheet waiting.</summary>
    [Fact]
    public async Task A_demo_that_cannot_be_fetched_leaves_nothing_behind()
    {
        await session.NewAsync();
        var request = session.Proof!.Request;
        computing.NoDemos = true;
        await Assert.ThrowsAsync<HttpRequestException>(() => session.TryAsync(Demo.All[1]));
        await session.SettledAsync();
        await session.TakeAsync([await LoggerAsync()]);
        Assert.Equal("", session.Proof.Kitchen);
        Assert.Equal(request.Machine, session.Proof.Request.Machine);
        Assert.Equal(request.Instrument, session.Proof.Request.Instrument);
    }

    private static ProofRequest ColdRinse(ProofRequest request) =>
        ReadingSlot
            .Machine.First(s => s.Id == "final-rinse")
            .Put(request, new ReadingDto("finalRinseManifold", new AmountDto(177.2, "[degF]"), "probe"));

    // A proof of a file that was not kept, judged, left and opened again.
    private async Task<TakenFile> ReopenedAsync()
    {
        await session.NewAsync();
        var file = await LoggerAsync() with { Kept = false };
        await session.TakeAsync([file]);
        var id = session.Proof!.Id;
        await session.NewAsync();
        Assert.True(await session.OpenAsync(id));
        return file;
    }

    private Task<TakenFile> LoggerAsync(string name = DemoLoggers.LarkspurTwoTank) => computing.KeepAsync(DemoLoggers.Bytes(name), name);
}
