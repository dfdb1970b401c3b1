using System.Net;
using System.Security.Cryptography;
using System.Text;
using Rinsewright.Contracts.Accounts;
using Rinsewright.Contracts.Records;
using Rinsewright.Contracts.Visits;
using Rinsewright.Engine.Machines;

namespace Rinsewright.Server.Tests.Accounts;

/// <summary>A kitchen's account sees its kitchens and nothing of another, by any endpoint and any cursor, also when a machine moves.</summary>
public sealed class KitchenScopeTests
{
    private static readonly Guid Mine = new("01993a00-00a1-7000-8000-000000000001");
    private static readonly Guid Theirs = new("01993a00-00a1-7000-8000-000000000002");

    [Theory, InlineData(Database.Sqlite), InlineData(Database.Postgres)]
    public async Task A_kitchens_account_sees_its_own_kitchen_by_every_endpoint_and_no_other(Database database)
    {
        await using var server = await TestServer.MakeAsync(database);
        using var office = await server.SetUpAsync();
        var (mine, theirs) = (await FillAsync(office, Mine, "Larkspur"), await FillAsync(office, Theirs, "Saltbox"));
        using var kitchen = await server.JoinAsync(office, Roles.Kitchen, "Ana Whitlock", Mine);

        Assert.Equal(mine.All, (await kitchen.ChangesAsync()).Items.Select(c => c.DocumentId).Order());
        Assert.Equal(mine.Proof, Assert.Single(await kitchen.ProofsAsync()).Id);
        foreach (var (set, expected) in new[] { (mine, HttpStatusCode.OK), (theirs, HttpStatusCode.NotFound) })
        {
            foreach (
                var path in new[]
                {
                    $"api/proofs/{set.Proof}",
                    $"api/proofs/{set.Proof}/sheet",
                    $"api/files/{set.File}",
                    $"api/files/{set.Photo}",
                    $"api/files/{set.Plate}",
                }
            )
            {
                Assert.Equal(expected, await kitchen.StatusAsync("GET", path));
                Assert.Equal(HttpStatusCode.OK, await office.StatusAsync("GET", path));
            }

            // History holds who wrote what wherever the document was: it is the service's.
            Assert.Equal(HttpStatusCode.Forbidden, await kitchen.StatusAsync("GET", $"api/documents/{set.Machine}/history"));
            Assert.Equal(HttpStatusCode.Forbidden, await kitchen.StatusAsync("GET", $"api/proofs/{set.Proof}/history"));
        }

        // That a note mentions the number of a file does not make it the kitchen's.
        var note = FieldDocument
            .Empty(Mine, Kinds.Kitchen)
            .Write(Guid.CreateVersion7(), [new("note", theirs.File)], "", "phone", Invented.Morning)!;
        await office.SendAsync(note);
        Assert.Equal(HttpStatusCode.NotFound, await kitchen.StatusAsync("GET", $"api/files/{theirs.File}"));

        // Nothing can be written, neither there nor here.
        using var put = await kitchen.PostOperationsAsync(Invented.Put(Guid.CreateVersion7()));
        Assert.Equal(HttpStatusCode.Forbidden, put.StatusCode);
        var before = (await office.ChangesAsync()).Cursor;
        Assert.Equal(HttpStatusCode.Forbidden, await kitchen.StatusAsync("PUT", "api/files/" + theirs.File));
        Assert.Equal(HttpStatusCode.Forbidden, await kitchen.StatusAsync("DELETE", "api/demo"));
        Assert.Equal(before, (await office.ChangesAsync()).Cursor);
    }

    [Theory, InlineData(Database.Sqlite), InlineData(Database.Postgres)]
    public async Task No_cursor_shows_another_kitchen(Database database)
    {
        await using var server = await TestServer.MakeAsync(database);
        using var office = await server.SetUpAsync();
        var start = (await office.ChangesAsync()).Cursor;
        var (mine, theirs) = (await FillAsync(office, Mine, "Larkspur"), await FillAsync(office, Theirs, "Saltbox"));
        using var kitchen = await server.JoinAsync(office, Roles.Kitchen, "Ana Whitlock", Mine);
        using var other = await server.JoinAsync(office, Roles.Kitchen, "Odile Reyes", Theirs);
        using var both = await server.JoinAsync(office, Roles.Kitchen, "Cook Manager", Mine, Theirs);
        var own = (await kitchen.ChangesAsync()).Cursor;
        var foreign = (await other.ChangesAsync()).Cursor;
        var wide = (await both.ChangesAsync()).Cursor;
        Assert.Equal(mine.All.Concat(theirs.All).Order(), (await both.ChangesAsync()).Items.Select(c => c.DocumentId).Order());
        foreach (var cursor in new[] { start, foreign, wide, "", "x", start.Split('-')[0] + "-0-" + own.Split('-')[^1] })
        {
            var changes = await kitchen.ChangesAsync(cursor);
            Assert.Equal(mine.All, changes.Items.Select(c => c.DocumentId).Order());
            Assert.Equal(cursor is not "" && !cursor.EndsWith(own.Split('-')[^1], StringComparison.Ordinal), changes.Restarted);
        }

        Assert.Empty((await kitchen.ChangesAsync(own)).Items);
        Assert.Equal(mine.All.Length + theirs.All.Length, (await office.ChangesAsync(own)).Items.Count); // and a kitchen's cursor skips nothing for the service

        // Other kitchens: the feed starts again, so that the device learns what it has to drop.
        var ana = (await kitchen.MeAsync()).Account!.Id;
        await office.StatusAsync("PUT", $"api/accounts/{ana}", new AccountChange(Roles.Kitchen, [Theirs], false));
        var moved = await kitchen.ChangesAsync(own);
        Assert.True(moved.Restarted);
        Assert.Equal(theirs.All, moved.Items.Select(c => c.DocumentId).Order());
    }

    [Theory, InlineData(Database.Sqlite), InlineData(Database.Postgres)]
    public async Task A_machine_that_moves_is_gone_for_the_one_kitchen_and_there_for_the_other(Database database)
    {
        await using var server = await TestServer.MakeAsync(database);
        using var office = await server.SetUpAsync();
        var (mine, theirs) = (await FillAsync(office, Mine, "Larkspur"), await FillAsync(office, Theirs, "Saltbox"));
        using var kitchen = await server.JoinAsync(office, Roles.Kitchen, "Ana Whitlock", Mine);
        using var other = await server.JoinAsync(office, Roles.Kitchen, "Odile Reyes", Theirs);
        var (here, there) = ((await kitchen.ChangesAsync()).Cursor, (await other.ChangesAsync()).Cursor);
        await SetAsync(office, mine.Machine, Kinds.Machine, 20, (MachinePaths.Kitchen, Theirs.ToString()), (MachinePaths.Name, "Moved"));

        var gone = await kitchen.ChangesAsync(here);
        var told = Assert.Single(gone.Items);
        Assert.Equal((mine.Machine, "delete", ""), (told.DocumentId, told.Action, told.Author));
        Assert.Null(told.Document);
        var came = Assert.Single((await other.ChangesAsync(there)).Items);
        Assert.Equal((mine.Machine, "put", "Moved"), (came.DocumentId, came.Action, came.Document![MachinePaths.Name]));

        // What is written after the move is none of the old kitchen's business; the visit that was there stays with it.
        await SetAsync(office, mine.Machine, Kinds.Machine, 30, (MachinePaths.Name, "Secret of Saltbox"));
        Assert.Empty((await kitchen.ChangesAsync(gone.Cursor)).Items);
        var all = await kitchen.ChangesAsync();
        Assert.DoesNotContain(all.Items, c => c.DocumentId == mine.Machine && c.Action == "put");
        Assert.Contains(all.Items, c => c.DocumentId == mine.Visit && c.Action == "put");
        Assert.DoesNotContain((await other.ChangesAsync()).Items, c => c.DocumentId == mine.Visit);

        // And back again.
        await SetAsync(office, mine.Machine, Kinds.Machine, 40, (MachinePaths.Kitchen, Mine.ToString()));
        Assert.Equal("put", Assert.Single((await kitchen.ChangesAsync(gone.Cursor)).Items).Action);
        Assert.Equal("delete", Assert.Single((await other.ChangesAsync(there)).Items).Action);

        // A proof that is deleted is gone on the kitchen's devices too.
        var now = (await kitchen.ChangesAsync()).Cursor;
        await office.SendAsync(Invented.Delete(mine.Proof, Invented.Morning.AddHours(1)));
        Assert.Equal(
            (mine.Proof, "delete"),
            Assert.Single((await kitchen.ChangesAsync(now)).Items) is var c ? (c.DocumentId, c.Action) : default
        );
        Assert.Empty(await kitchen.ProofsAsync());
        Assert.Equal(theirs.Proof, Assert.Single(await other.ProofsAsync()).Id);
    }

    [Theory, InlineData(Database.Sqlite), InlineData(Database.Postgres)]
    public async Task Pages_of_a_kitchens_feed_leave_nothing_out(Database database)
    {
        await using var server = await TestServer.MakeAsync(database);
        using var office = await server.SetUpAsync();
        var ids = new List<Guid>();
        for (var i = 0; i < 120; i++)
        {
            ids.Add(Guid.CreateVersion7());
            await SetAsync(office, ids[i], Kinds.Machine, 1, (MachinePaths.Kitchen, (i % 3 == 0 ? Theirs : Mine).ToString()));
        }

        foreach (var id in ids.Where((_, i) => i % 4 == 1))
        {
            await SetAsync(office, id, Kinds.Machine, 5, (MachinePaths.Kitchen, Theirs.ToString()));
        }

        using var kitchen = await server.JoinAsync(office, Roles.Kitchen, "Ana Whitlock", Mine);
        var put = new HashSet<Guid>();
        var deleted = new HashSet<Guid>();
        var cursor = "";
        for (var more = true; more; )
        {
            var page = await kitchen.ChangesAsync(cursor);
            (cursor, more) = (page.Cursor, page.More);
            foreach (var change in page.Items)
            {
                Assert.True((change.Action == "put" ? put : deleted).Add(change.DocumentId));
            }
        }

        Assert.Equal(ids.Where((_, i) => i % 3 != 0 && i % 4 != 1).Order(), put.Order());
        Assert.Equal(ids.Where((_, i) => i % 3 != 0 && i % 4 == 1).Order(), deleted.Order());
    }

    private sealed record Filled(Guid Kitchen, Guid Machine, Guid Visit, Guid Proof, string File, string Photo, string Plate)
    {
        public Guid[] All => [.. new[] { Kitchen, Machine, Visit, Proof }.Order()];
    }

    private static async Task<Filled> FillAsync(HttpClient office, Guid kitchen, string name)
    {
        var filled = new Filled(
            kitchen,
            Guid.CreateVersion7(),
            Guid.CreateVersion7(),
            Guid.CreateVersion7(),
            await FileAsync(office, name + " logger"),
            await FileAsync(office, name + " photo"),
            await FileAsync(office, name + " plate")
        );
        await SetAsync(office, kitchen, Kinds.Kitchen, 1, (KitchenPaths.Name, name));
        await SetAsync(
            office,
            filled.Machine,
            Kinds.Machine,
            1,
            (MachinePaths.Kitchen, kitchen.ToString()),
            (MachinePaths.Name, name + " machine"),
            (MachinePaths.Photograph, filled.Plate)
        );
        var visit = new VisitDocument(
            filled.Visit,
            VisitDocument.CurrentVersion,
            name,
            VisitFile.MachineOf(TypicalMachines.Of(MachineKind.DoorHotWater)),
            Invented.Morning
        )
        {
            Photos = [new VisitPhotoDto(filled.Photo, "asFound")],
        };
        (string, string)[] fields = [(VisitPaths.Kitchen, kitchen.ToString()), .. VisitFields.Of(visit).Select(f => (f.Key, f.Value))];
        await SetAsync(office, filled.Visit, Kinds.Visit, 1, fields);
        var proof = Invented.Proof(filled.Proof, kitchen: name) with
        {
            KitchenId = kitchen,
            Files = [new FileReference(filled.File, "plate.csv", 3)],
        };
        await office.SendAsync(
            new Operation(Guid.CreateVersion7(), Kinds.Proof, filled.Proof, "", "phone", Invented.Morning, "put", proof)
        );
        return filled;
    }

    private static async Task<string> FileAsync(HttpClient office, string text)
    {
        var bytes = Encoding.UTF8.GetBytes(text);
        var hash = Convert.ToHexStringLower(SHA256.HashData(bytes));
        using var content = new ByteArrayContent(bytes);
        using var answer = await office.PutAsync(
            new Uri("api/files/" + hash, UriKind.Relative),
            content,
            TestContext.Current.CancellationToken
        );
        Assert.Equal(HttpStatusCode.Created, answer.StatusCode);
        return hash;
    }

    private static async Task SetAsync(HttpClient office, Guid id, string kind, long order, params (string Path, string Value)[] fields)
    {
        var operation = new Operation(
            Guid.CreateVersion7(),
            kind,
            id,
            "",
            "phone",
            Invented.Morning,
            "set",
            null,
            [.. fields.Select(f => new FieldChange(f.Path, f.Value, order))]
        );
        Assert.Equal("applied", Assert.Single(await office.SendAsync(operation)).Outcome);
    }
}
