using Rinsewright.Client.Records;
using Rinsewright.Client.Sanitization;
using Rinsewright.Client.Shell;
using Rinsewright.Client.Tests.Records;
using Rinsewright.Contracts.Records;
using Rinsewright.Contracts.Sanitization;
using Xunit;

namespace Rinsewright.Client.Tests.Sanitization;

/// <summary>The proof on the screen: judged, saved and sent.</summary>
public sealed class ProofSessionTests : ProofSessionBase
{
    private readonly MemoryOffice office = new();
    private readonly Synchronizer synchronizer;

    /// <summary>With an office.</summary>
    public ProofSessionTests() => synchronizer = new Synchronizer(store, office, work, preferences, TimeProvider.System);

    /// <summary>The very first change after a file is judged again and saved with its report.</summary>
    [Fact]
    public async Task The_first_change_after_a_file_is_judged_and_saved()
    {
        await session.TryAsync(Demo.All[0]);
        Assert.Equal(5, session.Proof!.Report.Passes.Count);
        Assert.Equal("proven", session.Proof.Report.Verdict);
        var rinse = ReadingSlot.Machine.First(s => s.Id == "final-rinse");
        session.Ask(r => rinse.Put(r, new ReadingDto("finalRinseManifold", new AmountDto(177.2, "[degF]"), "probe")));
        await session.SettledAsync();
        Assert.Equal("notProven", session.Proof.Report.Verdict);
        Assert.Equal("notProven", (await work.OpenAsync(session.Proof.Id))!.Report.Verdict);
        Assert.False((await work.OpenAsync(session.Proof.Id))!.Unjudged is true);
    }

    /// <summary>While a file is being read there is no verdict to show, and whoever wants a sheet waits for it.</summary>
    [Fact]
    public async Task A_sheet_waits_for_the_file_that_is_being_read()
    {
        computing.Held = held.Task;
        var trying = session.TryAsync(Demo.All[0]);
        var settled = session.SettledAsync();
        Assert.True(session.Reading);
        Assert.False(settled.IsCompleted);
        held.SetResult();
        await settled;
        Assert.False(session.Reading);
        Assert.Equal(5, session.Proof!.Report.Passes.Count);
        await trying;
    }

    /// <summary>What is typed while a long file is judged is on the device before the judgement is through.</summary>
    [Fact]
    public async Task What_is_typed_during_a_judgement_is_kept_at_once()
    {
        await session.TryAsync(Demo.All[0]);
        computing.Held = held.Task;
        var (wash, rinse) = (ReadingSlot.Machine.First(s => s.Id == "wash"), ReadingSlot.Machine.First(s => s.Id == "final-rinse"));
        session.Ask(r => wash.Put(r, new ReadingDto("washTank", new AmountDto(158.6, "[degF]"), "probe")));
        await Soon.UntilAsync(() => session.Running);
        session.Ask(r => rinse.Put(r, new ReadingDto("finalRinseManifold", new AmountDto(177.2, "[degF]"), "probe")));
        var id = session.Proof!.Id;
        await Soon.UntilAsync(async () => (await work.OpenAsync(id))!.Request.Readings?.Count == 2);
        Assert.True(session.Running);
        Assert.True((await work.OpenAsync(id))!.Unjudged is true);
        held.SetResult();
        await session.SettledAsync();
        Assert.Equal("notProven", (await work.OpenAsync(id))!.Report.Verdict);
        Assert.False((await work.OpenAsync(id))!.Unjudged is true);
    }

    /// <summary>What is typed while a slow device still writes the last of what was judged is judged too.</summary>
    [Fact]
    public async Task What_is_typed_while_a_judgement_is_written_is_judged()
    {
        await session.NewAsync();
        session.Changed += () => store.Held = session.Proof!.Report.Verdict == "proven" ? held.Task : store.Held;
        session.Ask(Labels.Reached);
        await Soon.UntilAsync(() => session.Proof!.Report.Verdict == "proven" && work.Writing > 0);
        var rinse = ReadingSlot.Machine.First(s => s.Id == "final-rinse");
        session.Ask(r => rinse.Put(r, new ReadingDto("finalRinseManifold", new AmountDto(177.2, "[degF]"), "probe")));
        held.SetResult();
        await session.SettledAsync();
        Assert.Equal("notProven", session.Proof!.Report.Verdict);
        Assert.False((await work.OpenAsync(session.Proof.Id))!.Unjudged is true);
    }

    /// <summary>A name needs no judgement, only a write; what is read while a slow device is still at that write is judged all the same.</summary>
    [Fact]
    public async Task What_is_typed_while_a_name_is_written_is_judged()
    {
        await session.NewAsync();
        store.Held = held.Task;
        session.Write(p => p with { Kitchen = "Tin Bell Diner" });
        await Task.Delay(600, TestContext.Current.CancellationToken); // past the pause: all that is left is the write
        session.Ask(Labels.Reached);
        held.SetResult();
        await session.SettledAsync();
        Assert.Equal("proven", session.Proof!.Report.Verdict);
        Assert.False((await work.OpenAsync(session.Proof.Id))!.Unjudged is true);
    }

    /// <summary>Looking at an empty screen saves nothing.</summary>
    [Fact]
    public async Task Nothing_is_saved_before_something_is_given()
    {
        await session.NewAsync();
        Assert.Equal("undetermined", session.Proof!.Report.Verdict);
        Assert.Empty(store.Documents);
    }

    /// <summary>A proof left between a change and its judgement is judged when it is opened.</summary>
    [Fact]
    public async Task What_was_not_judged_is_judged_when_opened()
    {
        await session.NewAsync();
        var left = session.Proof! with { Id = Guid.CreateVersion7(), Request = Labels.Reached(new ProofRequest()) };
        await work.SaveAsync(left with { Unjudged = true });
        Assert.True(await session.OpenAsync(left.Id));
        await session.SettledAsync();
        Assert.Equal("proven", session.Proof!.Report.Verdict);
    }

    /// <summary>Sent between a change and its judgement, it is not taken for judged on another device; judged there, it is judged for all.</summary>
    [Fact]
    public async Task What_was_not_judged_is_not_judged_elsewhere_either()
    {
        await session.NewAsync();
        var left = session.Proof! with { Id = Guid.CreateVersion7(), Request = Labels.Reached(new ProofRequest()), Unjudged = true };
        await work.SaveAsync(left);
        Assert.Equal(ProofLine.NotJudged, (await work.ListAsync()).Single().Verdict);

        var (elsewhere, third) = (Device(), Device());
        await SentAsync(work, third);
        await SentAsync(work, elsewhere);
        Assert.Equal(ProofLine.NotJudged, (await elsewhere.ListAsync()).Single().Verdict);

        var page = new ProofSession(new MemoryComputing(), elsewhere, preferences, TimeProvider.System);
        Assert.True(await page.OpenAsync(left.Id));
        await page.SettledAsync();
        await SentAsync(elsewhere, third);
        Assert.Equal("proven", (await third.ListAsync()).Single().Verdict);
        Assert.Null((await third.OpenAsync(left.Id))!.Unjudged);

        Work Device() => new(new MemoryStore(), preferences, TimeProvider.System);

        async Task SentAsync(Work from, Work to)
        {
            var sent = (await from.OpenAsync(left.Id))!;
            await to.TakeOneOverAsync(new Change(sent.Id, Kinds.Proof, "put", sent.At, "", false, 1, sent));
        }
    }

    /// <summary>The answer is lost after the office has kept the operation; the second try changes nothing there.</summary>
    [Fact]
    public async Task A_lost_answer_does_not_send_twice()
    {
        await session.TryAsync(Demo.All[1]);
        office.LoseAnswers = true;
        await synchronizer.RunAsync();
        Assert.False(synchronizer.Reached);
        Assert.Equal(1, work.Waiting);
        office.LoseAnswers = false;
        await synchronizer.RunAsync();
        Assert.True(synchronizer.Reached);
        Assert.Equal(0, work.Waiting);
        Assert.Single(office.Kept);
    }

    /// <summary>What the office refuses stays here with the reason, is not sent over and over, and goes when asked for again.</summary>
    [Fact]
    public async Task What_the_office_refuses_is_kept_with_its_reason()
    {
        await session.TryAsync(Demo.All[1]);
        office.Refuses = "The clock of this device runs a year ahead.";
        await synchronizer.RunAsync();
        await synchronizer.RunAsync();
        Assert.Equal([office.Refuses], synchronizer.Refused);
        Assert.Equal(1, work.Waiting);
        office.Refuses = null;
        await synchronizer.RunAsync();
        Assert.Empty(office.Kept);
        await synchronizer.RunAgainAsync();
        Assert.Single(office.Kept);
        Assert.Empty(synchronizer.Refused);
        Assert.Equal(0, work.Waiting);
    }

    /// <summary>Saved anew, a refused document goes out as it is now, once.</summary>
    [Fact]
    public async Task A_refused_document_saved_anew_is_sent_as_it_is_now()
    {
        await session.TryAsync(Demo.All[1]);
        office.Refuses = "No.";
        await synchronizer.RunAsync();
        office.Refuses = null;
        await work.SaveAsync(session.Proof! with { Kitchen = "anew" });
        await synchronizer.RunAsync();
        Assert.Equal("anew", Assert.Single(office.Kept).Proof!.Kitchen);
        Assert.Equal(0, work.Waiting);
    }

    /// <summary>What the office has never overwrites a change that still waits here.</summary>
    [Fact]
    public async Task A_waiting_change_is_not_overwritten()
    {
        await session.TryAsync(Demo.All[0]);
        var mine = session.Proof! with { Kitchen = "mine" };
        await work.SaveAsync(mine);
        await work.TakeOneOverAsync(new Change(mine.Id, "proof", "put", mine.At, "", false, 1, mine with { Kitchen = "theirs" }));
        Assert.Equal("mine", (await work.OpenAsync(mine.Id))!.Kitchen);
    }

    /// <summary>A deleted proof is brought back whole.</summary>
    [Fact]
    public async Task A_deleted_proof_can_be_brought_back()
    {
        await session.TryAsync(Demo.All[0]);
        var id = session.Proof!.Id;
        var deleted = await work.DeleteAsync(id);
        Assert.Empty(await work.ListAsync());
        await work.SaveAsync(deleted!);
        Assert.Equal(5, (await work.OpenAsync(id))!.Report.Passes.Count);
    }

    /// <summary>Where the device does not delete it, nothing says that it is gone, and there is nothing to bring back.</summary>
    [Fact]
    public async Task A_proof_that_stands_is_not_said_to_be_deleted()
    {
        await session.TryAsync(Demo.All[0]);
        store.Full = true;
        Assert.Null(await work.DeleteAsync(session.Proof!.Id));
        Assert.NotNull(work.Trouble);
        Assert.Single(await work.ListAsync());
    }

    /// <summary>A backup brings back what is missing and leaves what is here.</summary>
    [Fact]
    public async Task A_backup_is_brought_in()
    {
        await session.TryAsync(Demo.All[0]);
        var text = store.Documents[session.Proof!.Id];
        await work.DeleteAsync(session.Proof.Id);
        var content = new BackupContent(BackupHead.CurrentSchema, [text, "{\"id\":1}"], 0, 0);
        Assert.Equal(new BackupResult(1, 0, 1), await Backup.ImportAsync(content, work));
        Assert.Equal(new BackupResult(0, 1, 1), await Backup.ImportAsync(content, work));
        Assert.Null(await Backup.ImportAsync(content with { Schema = "other" }, work));
    }

    /// <summary>Of several files the bad ones are named with their reason, and make no proof and touch none, wherever they stand in the row.</summary>
    [Theory]
    [InlineData("good", "picture", "prose")]
    [InlineData("picture", "good", "prose")]
    [InlineData("picture", "prose", "good")]
    public async Task Bad_files_among_several_are_named_and_leave_the_good_proof(params string[] order)
    {
        await session.NewAsync();
        await session.TakeAsync([.. await Task.WhenAll(order.Select(GiveAsync))]);
        Assert.Equal(5, session.Proof!.Report.Passes.Count);
        Assert.Equal("good.csv", session.File!.Name);
        Assert.Equal("good.csv", Assert.Single(session.Proof.Files).Name);
        Assert.Equal(order.Where(n => n != "good").Select(n => n + ".csv"), session.Refused.Select(r => r.Name));
        Assert.All(session.Refused, r => Assert.NotNull(r.Failure));
        Assert.Null(session.Failure);
        Assert.Single(store.Documents);
        Assert.Empty(session.Together);
    }

    /// <summary>A bad file given alone leaves the screen as it was: no proof without a name.</summary>
    [Fact]
    public async Task A_bad_file_alone_makes_no_proof()
    {
        await session.NewAsync();
        await session.TakeAsync([await GiveAsync("picture")]);
        Assert.Equal("picture.csv", Assert.Single(session.Refused).Name);
        Assert.False(session.Begun);
        Assert.Null(session.File);
        Assert.Empty(store.Documents);
    }

    /// <summary>On an open proof a bad file changes nothing, and a good one makes a proof of its own.</summary>
    [Fact]
    public async Task A_file_given_to_an_open_proof()
    {
        await session.TryAsync(Demo.All[0]);
        var first = session.Proof!.Id;
        await session.TakeAsync([await GiveAsync("prose")]);
        Assert.Equal(first, session.Proof.Id);
        Assert.Equal(5, session.Proof.Report.Passes.Count);
        Assert.Equal("prose.csv", Assert.Single(session.Refused).Name);
        await session.TakeAsync([await GiveAsync("good")]);
        Assert.NotEqual(first, session.Proof.Id);
        Assert.Empty(session.Refused);
        Assert.Equal(2, store.Documents.Count);
    }

    /// <summary>A value that cannot be is refused by the engine's door as well, in the language asked for.</summary>
    [Fact]
    public async Task An_impossible_reading_is_refused()
    {
        var label = new ReadingDto("wareSurface", new AmountDto(100000, "[degF]"), "irreversibleLabel", Reached: true);
        var answer = await computing.RunAsync(new ProofRequest(Readings: [label], Language: "es"), null);
        Assert.Null(answer.Report);
        Assert.Contains("no es posible", answer.Problem, StringComparison.Ordinal);
    }

    private Task<TakenFile> GiveAsync(string name) =>
        computing.KeepAsync(
            name switch
            {
                "good" => Rinsewright.Files.Demo.DemoLoggers.Bytes(Rinsewright.Files.Demo.DemoLoggers.LarkspurTwoTank),
                "picture" => [0x89, 0x50, 0x4e, 0x47, 13, 10, 0x1a, 10, 0, 0, 0, 13],
                _ => "name,price\nsoap,12\nbrush,4\n"u8.ToArray(),
            },
            name + ".csv"
        );
}
