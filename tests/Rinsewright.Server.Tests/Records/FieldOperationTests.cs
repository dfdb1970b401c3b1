using System.Net;
using System.Net.Http.Json;
using System.Text;
using System.Text.Json;
using Rinsewright.Contracts;
using Rinsewright.Contracts.Records;
using Rinsewright.Contracts.Visits;

namespace Rinsewright.Server.Tests.Records;

/// <summary>Kitchens and machines: changed field by field, each change once, nothing lost. The same on both databases.</summary>
public sealed class FieldOperationTests
{
    [Theory, InlineData(Database.Sqlite), InlineData(Database.Postgres)]
    public async Task Fields_of_two_people_come_together_whatever_arrives_first(Database database)
    {
        await using var server = await TestServer.MakeAsync(database);
        using var client = server.CreateClient();
        var texts = new List<string>();
        foreach (var laterFirst in new[] { false, true })
        {
            var id = new Guid($"01993a00-0001-7000-8000-0000000000{(laterFirst ? 1 : 2):00}");
            var start = Set(FieldDocument.Empty(id, Kinds.Kitchen), 1, "Ines Calloway", ("name", "Larkspur"));
            await client.SendAsync(start);
            var seen = FieldDocument.Empty(id, Kinds.Kitchen).With(start);
            var ines = Set(seen, 5, "Ines Calloway", ("note", "ring at the dock"), ("hours", "2 to 4 pm"));
            var bram = Set(seen, 6, "Bram Oakes", ("note", "dock is closed"));
            await client.SendAsync(laterFirst ? bram : ines);
            var result = Assert.Single(await client.SendAsync(laterFirst ? ines : bram));
            Assert.Equal(("applied", laterFirst ? bram.Id : ines.Id), (result.Outcome, result.Replaced)); // hours stands either way
            var change = Assert.Single((await client.ChangesAsync()).Items, c => c.DocumentId == id);
            var document = change.Document!;
            Assert.Equal(("put", 3, null), (change.Action, change.Versions, change.Proof));
            Assert.Equal(("Larkspur", "2 to 4 pm", "dock is closed"), (document["name"], document["hours"], document["note"]));
            Assert.Equal("ring at the dock", document.Fields["note"].Other!.Value);
            var history = await HistoryAsync(client, id);
            Assert.Equal([bram.Id, ines.Id, start.Id], history.Select(h => h.OperationId));
            Assert.Contains(history, h => h.Fields!.Any(f => f.Value == "ring at the dock"));
            texts.Add(string.Join('|', document.Fields.Select(f => f.Key + "=" + f.Value.Value)));
        }

        Assert.Equal(texts[0], texts[1]);
        Assert.Empty(await client.ProofsAsync());
    }

    [Theory, InlineData(Database.Sqlite), InlineData(Database.Postgres)]
    public async Task Repeated_send_is_applied_once_and_a_change_that_gave_way_is_kept(Database database)
    {
        await using var server = await TestServer.MakeAsync(database);
        using var client = server.CreateClient();
        var id = Guid.CreateVersion7();
        var empty = FieldDocument.Empty(id, Kinds.Machine);
        var later = Set(empty, 9, "Bram Oakes", ("name", "Door machine"));
        var earlier = Set(empty, 2, "Ines Calloway", ("name", "Hood machine"));
        await client.SendAsync(later);
        Assert.Equal(
            ("superseded", later.Id),
            Assert.Single(await client.SendAsync(earlier)) is var r ? (r.Outcome, r.Replaced!.Value) : default
        );
        Assert.True(Assert.Single(await client.SendAsync(earlier)).Repeated);
        Assert.Equal(2, (await HistoryAsync(client, id)).Count);
        Assert.Equal([true, false], (await HistoryAsync(client, id)).Select(h => h.Current));
    }

    [Theory, InlineData(Database.Sqlite), InlineData(Database.Postgres)]
    public async Task What_cannot_be_kept_is_refused_alone_with_its_reason(Database database)
    {
        await using var server = await TestServer.MakeAsync(database);
        using var client = server.CreateClient();
        var id = Guid.CreateVersion7();
        var good = Set(FieldDocument.Empty(id, Kinds.Kitchen), 1, "Ines Calloway", ("name", "Larkspur"));
        await client.SendAsync(good);
        Operation[] bad =
        [
            With(good, action: "put"),
            With(good, new FieldChange("a b", "x", 1)),
            With(good, new FieldChange("name", "a\0b", 1)),
            With(good, new FieldChange("name", "x", 0)),
            With(good, new FieldChange("name", "x", 5, 5)),
            With(good) with
            {
                Fields = [],
            },
            With(good) with
            {
                Fields = null,
            },
            With(good) with
            {
                Proof = Invented.Proof(id),
            },
            With(good) with
            {
                Kind = Kinds.Machine,
            },
            Invented.Put(Guid.CreateVersion7()) with
            {
                Fields = good.Fields,
            },
        ];
        var results = await client.SendAsync(bad);
        Assert.All(results, r => Assert.Equal("refused", r.Outcome));
        Assert.All(results, r => Assert.False(r.Reason!.StartsWith('['), r.Reason));
        Assert.Single(await HistoryAsync(client, id));
        using var nobody = await client.GetAsync(
            new Uri($"api/documents/{Guid.CreateVersion7()}/history", UriKind.Relative),
            TestContext.Current.CancellationToken
        );
        Assert.Equal(HttpStatusCode.NotFound, nobody.StatusCode);
    }

    [Theory, InlineData(Database.Sqlite), InlineData(Database.Postgres)]
    public async Task Operations_as_the_first_version_sent_them_still_read(Database database)
    {
        // Written by the version before there were fields; kept as it was sent.
        await using var server = await TestServer.MakeAsync(database);
        using var client = server.CreateClient();
        var results = await PostStoredAsync(client, "proof-operations.1.json");
        Assert.Equal(["applied", "applied"], results.Select(r => r.Outcome));
        var proof = Assert.Single(await client.ProofsAsync());
        Assert.Equal(("Larkspur Lodge", 1), (proof.Kitchen, proof.Versions));
    }

    [Theory, InlineData(Database.Sqlite), InlineData(Database.Postgres)]
    public async Task Fields_as_the_first_version_sent_them_still_read(Database database)
    {
        // A kitchen that two changed at once, a machine, a visit until it was signed. Never changed: what a device kept then may come any day.
        await using var server = await TestServer.MakeAsync(database);
        using var client = server.CreateClient();
        var results = await PostStoredAsync(client, "field-operations.1.json");
        Assert.Equal(["applied", "applied", "superseded", "applied", "applied", "applied", "applied"], results.Select(r => r.Outcome));
        var changes = (await client.ChangesAsync()).Items.ToDictionary(c => c.Kind);
        Assert.Equal((3, 2, 2), (changes[Kinds.Kitchen].Versions, changes[Kinds.Machine].Versions, changes[Kinds.Visit].Versions));

        var kitchen = changes[Kinds.Kitchen].Document!;
        Assert.Equal(("Larkspur Lodge", "3 to 5 pm", ""), (kitchen["name"], kitchen["hours"], kitchen["nextVisit"]));
        Assert.Equal("after 9 pm", kitchen.Fields["hours"].Other!.Value);
        Assert.Empty(kitchen.Items(KitchenPaths.Sinks));
        var followUp = Assert.Single(kitchen.Items(KitchenPaths.FollowUps));
        Assert.Equal(("2026-12-04", "yes"), (kitchen[$"followUps.{followUp}.due"], kitchen[$"followUps.{followUp}.done"]));
        Assert.Equal(
            ["rd-hardness", "rd-tds", "water-ph", "rd-incoming-temp"],
            KitchenWater.Of(kitchen).Where(w => w.On == new DateOnly(2026, 3, 10)).Select(w => w.Kind)
        );

        var machine = changes[Kinds.Machine].Document!;
        Assert.Equal(("Door machine, bar", ""), (machine["name"], machine["photograph"]));
        Assert.Equal("Door machine, chlorine", Contracts.Machines.MachineFile.Read(machine["description"]).Machine!.Name);
        Assert.Equal("5 gal", machine[$"drums.{Assert.Single(machine.Items(MachinePaths.Drums))}.size"]);
        Assert.Equal(kitchen.Id.ToString(), machine["kitchen"]);

        var visit = changes[Kinds.Visit].Document!;
        var record = VisitFields.Read(visit);
        Assert.Equal(("sanitary", "Larkspur Lodge", 2), (visit["standing"], record.Kitchen, record.Readings!.Count));
        Assert.Equal(
            [("technician", "R. Okafor", null), ("kitchen", "Ana Whitlock", "10,80 14,60 20,75;40,40 41,90 60,88")],
            record.Signatures!.Select(s => (s.For, s.Name, s.Strokes))
        );
    }

    private static async Task<IReadOnlyList<OperationResult>> PostStoredAsync(HttpClient client, string name)
    {
        var path = Path.Combine(AppContext.BaseDirectory, "Records", "Stored", name);
        using var content = new StringContent(
            await File.ReadAllTextAsync(path, TestContext.Current.CancellationToken),
            Encoding.UTF8,
            "application/json"
        );
        using var response = await client.PostAsync(
            new Uri("api/operations", UriKind.Relative),
            content,
            TestContext.Current.CancellationToken
        );
        var results = await response.Content.ReadFromJsonAsync(
            ContractsJson.Default.OperationResults,
            TestContext.Current.CancellationToken
        );
        return results!.Results;
    }

    internal static Operation Set(FieldDocument seen, int minute, string author, params (string Path, string Value)[] changes) =>
        seen.Write(
            Guid.CreateVersion7(),
            changes.Select(c => KeyValuePair.Create(c.Path, c.Value)),
            author,
            "phone",
            Invented.Morning.AddMinutes(minute)
        )!;

    private static Operation With(Operation operation, FieldChange? field = null, string action = "set") =>
        operation with
        {
            Id = Guid.CreateVersion7(),
            Action = action,
            Fields = field is null ? operation.Fields : [field],
        };

    internal static async Task<IReadOnlyList<DocumentVersion>> HistoryAsync(HttpClient client, Guid id) =>
        (
            await client.GetFromJsonAsync(
                $"api/documents/{id}/history",
                ContractsJson.Default.IReadOnlyListDocumentVersion,
                TestContext.Current.CancellationToken
            )
        )!;
}
