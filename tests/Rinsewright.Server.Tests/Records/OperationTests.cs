using System.Net;
using Microsoft.EntityFrameworkCore;
using Microsoft.Extensions.DependencyInjection;
using Rinsewright.Contracts.Records;
using Rinsewright.Server.Storage;

namespace Rinsewright.Server.Tests.Records;

/// <summary>Operations are applied once, in an order everybody sees alike, and nothing of a conflict is lost. The same on both databases.</summary>
public sealed class OperationTests
{
    [Theory, InlineData(Database.Sqlite), InlineData(Database.Postgres)]
    public async Task Repeated_send_changes_nothing_and_gives_the_stored_answer(Database database)
    {
        await using var server = await TestServer.MakeAsync(database);
        using var client = server.CreateClient();
        var operation = Invented.Put(Guid.CreateVersion7());
        var first = Assert.Single(await client.SendAsync(operation));
        var second = Assert.Single(await client.SendAsync(operation));
        Assert.Equal(("applied", false), (first.Outcome, first.Repeated));
        Assert.Equal(first with { Repeated = true }, second);
        Assert.Single(await client.HistoryAsync(operation.DocumentId));
    }

    // Until its change is answered a device takes over no other version of the proof; by then it may have asked past it.
    [Theory, InlineData(Database.Sqlite), InlineData(Database.Postgres)]
    public async Task Who_sends_again_what_another_has_replaced_is_told_again_what_stands(Database database)
    {
        await using var server = await TestServer.MakeAsync(database);
        using var client = server.CreateClient();
        var mine = Invented.Put(Guid.CreateVersion7());
        using (await client.PostOperationsAsync(mine)) { } // the answer is lost
        await client.SendAsync(Invented.Put(mine.DocumentId) with { At = mine.At.AddMinutes(1), Device = "tablet" });
        var cursor = (await client.ChangesAsync("")).Cursor;
        Assert.Empty((await client.ChangesAsync(cursor)).Items);

        Assert.True(Assert.Single(await client.SendAsync(mine)).Repeated);
        Assert.Equal(mine.DocumentId, Assert.Single((await client.ChangesAsync(cursor)).Items).DocumentId);
        Assert.Equal(2, (await client.HistoryAsync(mine.DocumentId)).Count);
    }

    [Theory, InlineData(Database.Sqlite), InlineData(Database.Postgres)]
    public async Task Of_eight_parallel_sends_of_one_operation_one_wins(Database database)
    {
        await using var server = await TestServer.MakeAsync(database);
        using var client = server.CreateClient();
        var operation = Invented.Put(Guid.CreateVersion7());
        var answers = await Task.WhenAll(Enumerable.Range(0, 8).Select(_ => Task.Run(() => client.SendAsync(operation))));
        var results = answers.Select(Assert.Single).ToList();
        Assert.Single(results, r => !r.Repeated);
        Assert.All(results, r => Assert.Equal(("applied", results[0].Revision), (r.Outcome, r.Revision)));
        Assert.Single(await client.HistoryAsync(operation.DocumentId));
    }

    [Theory, InlineData(Database.Sqlite), InlineData(Database.Postgres)]
    public async Task Parallel_writers_never_show_a_later_change_before_an_earlier_one(Database database)
    {
        await using var server = await TestServer.MakeAsync(database);
        using var client = server.CreateClient();
        var documents = Enumerable.Range(0, 24).Select(_ => Guid.CreateVersion7()).ToList();
        var seen = new List<Guid>();
        var sending = Task.WhenAll(documents.Select(d => Task.Run(() => client.SendAsync(Invented.Put(d)))));
        var cursor = "";
        for (var last = false; ; )
        {
            var changes = await client.ChangesAsync(cursor);
            Assert.False(changes.Restarted);
            seen.AddRange(changes.Items.Select(c => c.DocumentId));
            cursor = changes.Cursor;
            if (last && !changes.More)
            {
                break;
            }

            last = sending.IsCompleted;
        }

        await sending;
        Assert.Equal(documents.Order(), seen.Order()); // each exactly once: a reader that only moves forward missed none
    }

    [Theory, InlineData(Database.Sqlite), InlineData(Database.Postgres)]
    public async Task Lost_answer_then_a_longer_list_applies_only_what_is_new(Database database)
    {
        await using var server = await TestServer.MakeAsync(database);
        using var client = server.CreateClient();
        var (a, b) = (Invented.Put(Guid.CreateVersion7()), Invented.Put(Guid.CreateVersion7()));
        using (await client.PostOperationsAsync(a)) { } // the answer is not read: to the device it never came
        var results = await client.SendAsync(a, b, a);
        Assert.Equal([true, false, true], results.Select(r => r.Repeated));
        Assert.Equal(2, (await client.ProofsAsync()).Count);
    }

    [Theory, InlineData(Database.Sqlite), InlineData(Database.Postgres)]
    public async Task Later_writer_stands_and_the_other_version_is_kept_whatever_arrives_first(Database database)
    {
        await using var server = await TestServer.MakeAsync(database);
        using var client = server.CreateClient();
        foreach (var laterFirst in new[] { false, true })
        {
            var id = Guid.CreateVersion7();
            var earlier = Invented.Put(id, "booster at 178", Invented.Morning, "Ines Calloway", "phone");
            var later = Invented.Put(id, "booster at 184", Invented.Morning.AddMinutes(5), "Bram Oakes", "tablet");
            var second = laterFirst ? earlier : later;
            await client.SendAsync(laterFirst ? later : earlier);
            var result = Assert.Single(await client.SendAsync(second));
            Assert.Equal(laterFirst ? "superseded" : "applied", result.Outcome);
            Assert.Equal(laterFirst ? later.Id : earlier.Id, result.Replaced);
            var versions = await client.HistoryAsync(id);
            Assert.Equal(["booster at 184", "booster at 178"], versions.Select(v => v.Proof!.Note));
            Assert.Equal([true, false], versions.Select(v => v.Current));
            var change = (await client.ChangesAsync()).Items.Single(c => c.DocumentId == id);
            Assert.Equal(("booster at 184", 2), (change.Proof!.Note, change.Versions));
        }
    }

    [Theory, InlineData(Database.Sqlite), InlineData(Database.Postgres)]
    public async Task At_the_same_time_every_store_picks_the_same_winner(Database database)
    {
        await using var server = await TestServer.MakeAsync(database);
        using var client = server.CreateClient();
        foreach (var lowFirst in new[] { true, false })
        {
            var id = Guid.CreateVersion7();
            var low = Invented.Put(id, "low") with { Id = new Guid($"00000000-0000-7000-8000-00000000000{(lowFirst ? 1 : 2)}") };
            var high = Invented.Put(id, "high") with { Id = new Guid($"ffffffff-0000-7000-8000-00000000000{(lowFirst ? 1 : 2)}") };
            await client.SendAsync(lowFirst ? low : high);
            await client.SendAsync(lowFirst ? high : low);
            Assert.Equal("high", (await client.HistoryAsync(id)).Single(v => v.Current).Proof!.Note);
        }
    }

    [Theory, InlineData(Database.Sqlite), InlineData(Database.Postgres)]
    public async Task A_clock_that_runs_ahead_does_not_win_for_ever(Database database)
    {
        var clock = new SetClock(Invented.Morning.AddHours(1));
        await using var server = await TestServer.MakeAsync(database, clock);
        using var client = server.CreateClient();
        var id = Guid.CreateVersion7();
        await client.SendAsync(Invented.Put(id, "from 2035", new DateTimeOffset(2035, 1, 1, 0, 0, 0, TimeSpan.Zero)));
        clock.Now = Invented.Morning.AddHours(3);
        await client.SendAsync(Invented.Put(id, "two hours later", Invented.Morning.AddHours(2)));
        Assert.Equal("two hours later", (await client.HistoryAsync(id)).Single(v => v.Current).Proof!.Note);
    }

    [Theory, InlineData(Database.Sqlite), InlineData(Database.Postgres)]
    public async Task Deleted_document_leaves_the_list_and_is_told_to_devices_and_its_history_stays(Database database)
    {
        await using var server = await TestServer.MakeAsync(database);
        using var client = server.CreateClient();
        var put = Invented.Put(Guid.CreateVersion7(), "kept");
        await client.SendAsync(put);
        var cursor = (await client.ChangesAsync()).Cursor;
        await client.SendAsync(Invented.Delete(put.DocumentId, Invented.Morning.AddMinutes(1)));
        Assert.Empty(await client.ProofsAsync());
        var change = Assert.Single((await client.ChangesAsync(cursor)).Items);
        Assert.Equal(("delete", null), (change.Action, change.Proof));
        Assert.Equal("kept", (await client.HistoryAsync(put.DocumentId))[1].Proof!.Note);
        using var gone = await client.GetAsync(
            new Uri($"api/proofs/{put.DocumentId}", UriKind.Relative),
            TestContext.Current.CancellationToken
        );
        Assert.Equal(HttpStatusCode.NotFound, gone.StatusCode);
    }

    [Theory, InlineData(Database.Sqlite), InlineData(Database.Postgres)]
    public async Task Changes_come_in_pages_and_a_foreign_cursor_starts_again(Database database)
    {
        await using var server = await TestServer.MakeAsync(database);
        using var client = server.CreateClient();
        await client.SendAsync([.. Enumerable.Range(0, 60).Select(_ => Invented.Put(Guid.CreateVersion7()))]);
        var first = await client.ChangesAsync();
        var second = await client.ChangesAsync(first.Cursor);
        Assert.Equal((50, true, 10, false), (first.Items.Count, first.More, second.Items.Count, second.More));
        Assert.Empty((await client.ChangesAsync(second.Cursor)).Items);
        // The number is there, but another operation had it: the store was put back to an older copy and written anew.
        var place = string.Join('-', second.Cursor.Split('-')[..2]);
        var rewritten = $"{place}-{Guid.CreateVersion7():n}";
        foreach (var foreign in new[] { $"{Guid.Empty:n}-3", second.Cursor + "0", "3", "a-b-c", rewritten })
        {
            var changes = await client.ChangesAsync(foreign);
            Assert.Equal((true, 50), (changes.Restarted, changes.Items.Count));
            var seen = await client.ChangesAsync($"{second.Cursor}&seen={second.Cursor}%20{foreign}");
            Assert.Equal((true, 50), (seen.Restarted, seen.Items.Count));
        }

        Assert.False((await client.ChangesAsync(place)).Restarted); // as places were written before
        Assert.False((await client.ChangesAsync($"{second.Cursor}&seen={second.Cursor}")).Restarted);
    }

    // Found by the simulation: the last change, sent again after the store was put back, got the number it had before, while one before it was missing.
    [Theory, InlineData(Database.Sqlite), InlineData(Database.Postgres)]
    public async Task A_number_given_again_to_the_same_change_is_not_the_place_it_was(Database database)
    {
        await using var server = await TestServer.MakeAsync(database);
        using var client = server.CreateClient();
        await client.SendAsync(Invented.Put(Guid.CreateVersion7()));
        var kept = (await client.ChangesAsync()).Cursor;
        var lost = Invented.Put(Guid.CreateVersion7());
        var last = Invented.Put(Guid.CreateVersion7());
        await client.SendAsync(lost);
        await client.SendAsync(last);
        var place = (await client.ChangesAsync()).Cursor;
        await using (var scope = server.Services.CreateAsyncScope())
        {
            var db = scope.ServiceProvider.GetRequiredService<AppDb>();
            var ct = TestContext.Current.CancellationToken;
            await db.Operations.Where(o => o.Revision > 1).ExecuteDeleteAsync(ct);
            await db.Documents.Where(d => d.Revision > 1).ExecuteDeleteAsync(ct);
            await db.Turns.Where(t => t.Number > 1).ExecuteDeleteAsync(ct);
            await db.Store.ExecuteUpdateAsync(s => s.SetProperty(r => r.Revision, 1), ct);
        }

        await client.SendAsync(Invented.Put(Guid.CreateVersion7()));
        await client.SendAsync(last);
        Assert.Equal(place.Split('-')[1], (await client.ChangesAsync()).Cursor.Split('-')[1]);
        Assert.True((await client.ChangesAsync(place)).Restarted);
        Assert.True((await client.ChangesAsync($"&seen={place}")).Restarted);
        Assert.False((await client.ChangesAsync(kept)).Restarted);
    }

    [Theory, InlineData(Database.Sqlite), InlineData(Database.Postgres)]
    public async Task What_is_sent_again_in_parts_comes_together_under_its_id(Database database)
    {
        await using var server = await TestServer.MakeAsync(database);
        using var client = server.CreateClient();
        var id = Guid.CreateVersion7();
        var whole = FieldDocument
            .Empty(id, Kinds.Kitchen)
            .Write(
                Guid.CreateVersion7(),
                [new("name", "Larkspur Lodge"), new("note", "ring at the dock")],
                "Ines Calloway",
                "tablet",
                new DateTimeOffset(2026, 11, 24, 9, 0, 0, TimeSpan.Zero)
            )!;
        Operation Part(string path) => whole with { Again = true, Fields = [.. whole.Fields!.Where(f => f.Path == path)] };

        await client.SendAsync(Part("name"));
        var again = Assert.Single(await client.SendAsync(Part("note")));

        Assert.True(again.Repeated);
        var change = Assert.Single((await client.ChangesAsync()).Items);
        Assert.Equal(("Larkspur Lodge", "ring at the dock", 1), (change.Document!["name"], change.Document["note"], change.Versions));
        // The same without the mark changes nothing: an id is used once.
        Assert.True(Assert.Single(await client.SendAsync(whole with { Fields = [new FieldChange("key", "under the mat", 1)] })).Repeated);
        Assert.Equal("", (await client.ChangesAsync()).Items.Single().Document!["key"]);
    }

    [Theory, InlineData(Database.Sqlite), InlineData(Database.Postgres)]
    public async Task What_cannot_be_kept_is_refused_alone_with_its_reason(Database database)
    {
        await using var server = await TestServer.MakeAsync(database);
        using var client = server.CreateClient();
        client.DefaultRequestHeaders.Add("Accept-Language", "es-MX, en;q=0.5");
        var good = Invented.Put(Guid.CreateVersion7());
        Operation[] bad =
        [
            good with
            {
                Id = Guid.Empty,
            },
            good with
            {
                Id = Guid.CreateVersion7(),
                Kind = "parcel",
            },
            good with
            {
                Id = Guid.CreateVersion7(),
                Action = "merge",
            },
            good with
            {
                Id = Guid.CreateVersion7(),
                Proof = null,
            },
            good with
            {
                Id = Guid.CreateVersion7(),
                Action = "delete",
            },
            good with
            {
                Id = Guid.CreateVersion7(),
                DocumentId = Guid.CreateVersion7(),
            },
            good with
            {
                Id = Guid.CreateVersion7(),
                Proof = good.Proof! with { Version = 99 },
            },
            good with
            {
                Id = Guid.CreateVersion7(),
                Author = new string('x', 201),
            },
            good with
            {
                Id = Guid.CreateVersion7(),
                Proof = good.Proof! with { Kitchen = "a\0b" },
            },
            good with
            {
                Id = Guid.CreateVersion7(),
                Proof = good.Proof! with { Files = [new FileReference("abc", "a.csv", 3)] },
            },
            good with
            {
                Id = Guid.CreateVersion7(),
                Proof = good.Proof! with { Report = good.Proof.Report with { Verdict = "fine" } },
            },
        ];
        var results = await client.SendAsync([.. bad, good]);
        Assert.All(results.SkipLast(1), r => Assert.Equal("refused", r.Outcome));
        Assert.All(results.SkipLast(1), r => Assert.False(r.Reason!.StartsWith('['), r.Reason));
        Assert.Equal(bad.Length - 1, results.SkipLast(1).Select(r => r.Reason).Distinct(StringComparer.Ordinal).Count()); // the two names share one
        Assert.Contains("tipo de documento", results[1].Reason!, StringComparison.Ordinal);
        Assert.Equal("applied", results[^1].Outcome);
        Assert.Single(await client.ProofsAsync());
    }

    [Theory]
    [OnBoth("paper=a3", "letter")]
    [OnBoth("language=fr", "es")]
    public async Task Sheet_on_unknown_paper_or_in_an_unknown_language_says_what_there_is(Database database, string query, string allowed)
    {
        await using var server = await TestServer.MakeAsync(database);
        using var client = server.CreateClient();
        var address = new Uri($"api/proofs/{Guid.CreateVersion7()}/sheet?{query}", UriKind.Relative);
        using var response = await client.GetAsync(address, TestContext.Current.CancellationToken);
        Assert.Equal(HttpStatusCode.BadRequest, response.StatusCode);
        Assert.Contains(allowed, await response.Content.ReadAsStringAsync(TestContext.Current.CancellationToken), StringComparison.Ordinal);
    }

    [Theory, InlineData(Database.Sqlite), InlineData(Database.Postgres)]
    public async Task Another_change_under_a_used_id_is_refused(Database database)
    {
        await using var server = await TestServer.MakeAsync(database);
        using var client = server.CreateClient();
        var first = Invented.Put(Guid.CreateVersion7());
        await client.SendAsync(first);
        var other = Invented.Put(Guid.CreateVersion7()) with { Id = first.Id };
        Assert.Equal("refused", Assert.Single(await client.SendAsync(other)).Outcome);
        Assert.Single(await client.ProofsAsync());
    }

    private sealed class SetClock(DateTimeOffset now) : TimeProvider
    {
        public DateTimeOffset Now { get; set; } = now;

        public override DateTimeOffset GetUtcNow() => Now;
    }
}
