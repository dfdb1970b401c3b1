using System.Net;
using System.Net.Http.Json;
using Rinsewright.Contracts;
using Rinsewright.Contracts.Records;
using Rinsewright.Contracts.Visits;
using Rinsewright.Files.Sanitization;

namespace Rinsewright.Server.Tests.Demo;

/// <summary>The demo service comes once, is marked, is computed, and goes for good.</summary>
public sealed class DemoTests
{
    [Theory, InlineData(Database.Sqlite), InlineData(Database.Postgres)]
    public async Task Demo_is_seeded_once_and_removed_for_good(Database database)
    {
        await using var server = await TestServer.MakeAsync(database, null, ("Rinsewright:Demo", "true"));
        using var client = server.CreateClient();
        var own = Invented.Put(Guid.CreateVersion7());
        await client.SendAsync(own);
        var before = await client.ProofsAsync();
        Assert.Equal(4, before.Count(p => p.Demo));
        Assert.Equal(own.DocumentId, Assert.Single(before, p => !p.Demo).Id);
        var seeded = await client.ChangesAsync();
        var cursor = seeded.Cursor;
        var kitchens = seeded.Items.Where(c => c.Kind == Kinds.Kitchen).Select(c => c.Document!).ToList();
        Assert.Equal(6, kitchens.Count);
        foreach (var machine in seeded.Items.Where(c => c.Kind == Kinds.Machine).Select(c => c.Document!))
        {
            Assert.NotNull(Contracts.Machines.MachineFile.Read(machine[MachinePaths.Description]).Machine);
            Assert.Contains(kitchens, k => k.Id.ToString() == machine[MachinePaths.Kitchen]);
        }

        foreach (var proof in seeded.Items.Where(c => c is { Kind: Kinds.Proof, Demo: true }).Select(c => c.Proof!))
        {
            Assert.Equal(proof.Kitchen, kitchens.Single(k => k.Id == proof.KitchenId)[KitchenPaths.Name]);
        }

        foreach (var visit in seeded.Items.Where(c => c.Kind == Kinds.Visit).Select(c => c.Document!))
        {
            Assert.Contains(kitchens, k => k.Id.ToString() == visit[VisitPaths.Kitchen]);
            Assert.Contains(seeded.Items, c => c.Kind == Kinds.Machine && c.Document!.Id.ToString() == visit[VisitPaths.Machine]);
            Assert.True(VisitFields.Read(visit).Began > DateTimeOffset.MinValue);
            Assert.NotEqual("", visit[VisitPaths.Standing]);
        }

        Assert.Equal(17, seeded.Items.Count(c => c.Kind == Kinds.Visit));
        await using var restarted = server.Again();
        using var again = restarted.CreateClient();
        Assert.Equal(5, (await again.ProofsAsync()).Count);

        var removed = await again.DeleteFromJsonAsync<Removed>("api/demo", TestContext.Current.CancellationToken);
        Assert.Equal(33, removed!.Documents); // four proofs, six kitchens, six machines, seventeen visits
        Assert.Equal(own.DocumentId, Assert.Single(await again.ProofsAsync()).Id);
        var changes = await again.ChangesAsync(cursor);
        Assert.Equal(33, changes.Items.Count(c => c is { Action: "delete", Demo: true })); // devices that hold copies are told
        Assert.Empty(Directory.EnumerateFiles(Path.Combine(server.Folder, "files"), "*", SearchOption.AllDirectories));

        await using var third = server.Again();
        using var after = third.CreateClient();
        Assert.Single(await after.ProofsAsync());
        Assert.Equal(0, (await after.DeleteFromJsonAsync<Removed>("api/demo", TestContext.Current.CancellationToken))!.Documents);
    }

    [Theory, InlineData(Database.Sqlite), InlineData(Database.Postgres)]
    public async Task Demo_verdicts_are_those_of_the_run_and_their_files_are_kept(Database database)
    {
        await using var server = await TestServer.MakeAsync(database, null, ("Rinsewright:Demo", "true"));
        using var client = server.CreateClient();
        foreach (var summary in await client.ProofsAsync())
        {
            var proof = await client.GetFromJsonAsync(
                $"api/proofs/{summary.Id}",
                ContractsJson.Default.ProofDocument,
                TestContext.Current.CancellationToken
            );
            var name = proof!.Files.SingleOrDefault();
            var content = name is null
                ? null
                : await client.GetByteArrayAsync("api/files/" + name.Sha256, TestContext.Current.CancellationToken);
            using var stream = content is null ? null : new MemoryStream(content);
            var report = await ProofRun.RunAsync(proof.Request, stream, name?.Name, null, TestContext.Current.CancellationToken);
            Assert.Equivalent(report, proof.Report, strict: true);
            foreach (var form in new[] { "", "?paper=letter&language=es" })
            {
                var sheet = await client.GetByteArrayAsync($"api/proofs/{summary.Id}/sheet{form}", TestContext.Current.CancellationToken);
                Assert.Equal("%PDF-"u8, sheet.AsSpan(0, 5));
            }
        }
    }

    [Theory, InlineData(Database.Sqlite), InlineData(Database.Postgres)]
    public async Task Without_the_setting_nothing_is_seeded(Database database)
    {
        await using var server = await TestServer.MakeAsync(database);
        using var client = server.CreateClient();
        Assert.Empty(await client.ProofsAsync());
        using var sheet = await client.GetAsync(
            new Uri("api/proofs/01993a00-0001-7000-8000-7a6d617261c1/sheet", UriKind.Relative),
            TestContext.Current.CancellationToken
        );
        Assert.Equal(HttpStatusCode.NotFound, sheet.StatusCode);
    }

    /// <summary>Answer to a removal.</summary>
    public sealed record Removed(int Documents);
}
