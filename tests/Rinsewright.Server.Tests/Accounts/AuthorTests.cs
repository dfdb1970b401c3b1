using System.Net;
using System.Net.Http.Json;
using Rinsewright.Contracts;
using Rinsewright.Contracts.Accounts;
using Rinsewright.Contracts.Records;

namespace Rinsewright.Server.Tests.Accounts;

/// <summary>Who wrote what is who was signed in; nobody sends in the name of another.</summary>
public sealed class AuthorTests
{
    [Theory, InlineData(Database.Sqlite), InlineData(Database.Postgres)]
    public async Task The_author_is_who_is_signed_in_whatever_the_device_says(Database database)
    {
        await using var server = await TestServer.MakeAsync(database);
        using var open = server.CreateClient();
        var early = Invented.Put(Guid.CreateVersion7(), author: "Somebody");
        await open.SendAsync(early);
        using var office = await server.SetUpAsync();
        using var ines = await server.JoinAsync(office, Roles.Technician, "Ines Calloway");
        var id = (await ines.MeAsync()).Account!.Id;
        var late = Invented.Put(Guid.CreateVersion7(), author: "Bram Oakes") with { Account = id };
        var unsaid = Invented.Put(Guid.CreateVersion7(), author: "Bram Oakes"); // kept before there was an account
        var kitchen = Guid.CreateVersion7();
        var field = new Operation(
            Guid.CreateVersion7(),
            Kinds.Kitchen,
            kitchen,
            "Bram Oakes",
            "phone",
            Invented.Morning,
            "set",
            null,
            [new FieldChange("name", "Larkspur", 1)],
            id
        );
        Assert.All(await ines.SendAsync(late, unsaid, field), r => Assert.Equal("applied", r.Outcome));
        var authors = (await office.ChangesAsync()).Items.ToDictionary(c => c.DocumentId);
        Assert.Equal("Somebody", authors[early.DocumentId].Author);
        Assert.Equal("Ines Calloway", authors[late.DocumentId].Author);
        Assert.Equal("Ines Calloway", authors[unsaid.DocumentId].Author);
        Assert.Equal("Ines Calloway", authors[kitchen].Document!.Fields["name"].Author);
        var history = await office.GetFromJsonAsync(
            $"api/documents/{kitchen}/history",
            ContractsJson.Default.IReadOnlyListDocumentVersion,
            TestContext.Current.CancellationToken
        );
        Assert.Equal("Ines Calloway", Assert.Single(history!).Author);
        Assert.True(Assert.Single(await ines.SendAsync(late)).Repeated);
    }

    [Theory, InlineData(Database.Sqlite), InlineData(Database.Postgres)]
    public async Task What_one_kept_another_cannot_send_and_the_one_can(Database database)
    {
        await using var server = await TestServer.MakeAsync(database);
        using var office = await server.SetUpAsync();
        using var ines = await server.JoinAsync(office, Roles.Technician, "Ines Calloway");
        using var bram = await server.JoinAsync(office, Roles.Technician, "Bram Oakes");
        var id = (await ines.MeAsync()).Account!.Id;
        var kept = Invented.Put(Guid.CreateVersion7()) with { Account = id };
        var own = Invented.Put(Guid.CreateVersion7()) with { Account = (await bram.MeAsync()).Account!.Id };
        var results = await bram.SendAsync(kept, own);
        Assert.Equal(["refused", "applied"], results.Select(r => r.Outcome));
        Assert.Contains("kept by Ines Calloway", results[0].Reason, StringComparison.Ordinal);
        Assert.Contains("now it is Bram Oakes", results[0].Reason, StringComparison.Ordinal);
        Assert.Equal(own.DocumentId, Assert.Single((await office.ChangesAsync()).Items).DocumentId);
        var sent = Assert.Single(await ines.SendAsync(kept));
        Assert.Equal(("applied", false), (sent.Outcome, sent.Repeated));

        // An id that no account has: nobody's to send.
        var nobodys = Invented.Put(Guid.CreateVersion7()) with
        {
            Account = Guid.CreateVersion7(),
        };
        Assert.Equal("refused", Assert.Single(await ines.SendAsync(nobodys)).Outcome);
    }

    [Theory, InlineData(Database.Sqlite), InlineData(Database.Postgres)]
    public async Task The_demo_stays_the_demos_and_only_the_office_removes_it(Database database)
    {
        await using var server = await TestServer.MakeAsync(database, null, ("Rinsewright:Demo", "true"));
        using var office = await server.SetUpAsync();
        using var ines = await server.JoinAsync(office, Roles.Technician, "Ines Calloway");
        var larkspur = (await office.ChangesAsync()).Items.First(c => c.Kind == Kinds.Kitchen).DocumentId;
        using var kitchen = await server.JoinAsync(office, Roles.Kitchen, "Ana Whitlock", larkspur);
        Assert.Equal(11, (await kitchen.ChangesAsync()).Items.Count); // the kitchen, its machine, its proof, eight visits
        Assert.Equal("Larkspur Lodge", Assert.Single(await kitchen.ProofsAsync()).Kitchen);
        Assert.Equal(HttpStatusCode.Forbidden, await ines.StatusAsync("DELETE", "api/demo"));
        var cursor = (await kitchen.ChangesAsync()).Cursor;
        Assert.Equal(HttpStatusCode.OK, await office.StatusAsync("DELETE", "api/demo"));
        Assert.Empty(await office.ProofsAsync());
        Assert.Equal(11, (await kitchen.ChangesAsync(cursor)).Items.Count(c => c.Action == "delete"));
    }
}
