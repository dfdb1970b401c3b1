using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Infrastructure;
using Microsoft.Extensions.DependencyInjection;
using Rinsewright.Server.Storage;

namespace Rinsewright.Server.Tests.Storage;

/// <summary>The store itself, on both databases.</summary>
public sealed class StoreTests
{
    [Fact]
    public void Migrations_of_SQLite_are_up_to_date()
    {
        using var db = new SqliteDesign().CreateDbContext([]);
        Assert.False(db.Database.HasPendingModelChanges());
    }

    [Fact]
    public void Migrations_of_PostgreSQL_are_up_to_date()
    {
        using var db = new PostgresDesign().CreateDbContext([]);
        Assert.False(db.Database.HasPendingModelChanges());
    }

    [Theory, InlineData(Database.Sqlite), InlineData(Database.Postgres)]
    public async Task Restart_keeps_what_was_saved(Database database)
    {
        await using var server = await TestServer.MakeAsync(database);
        var operation = Invented.Put(Guid.CreateVersion7(), "after the flood");
        using (var client = server.CreateClient())
        {
            await client.SendAsync(operation);
        }

        await using var restarted = server.Again();
        using var again = restarted.CreateClient();
        Assert.Equal("after the flood", Assert.Single(await again.HistoryAsync(operation.DocumentId)).Proof!.Note);
        Assert.True(Assert.Single(await again.SendAsync(operation)).Repeated);
    }

    [Theory, InlineData(Database.Sqlite), InlineData(Database.Postgres)]
    public async Task Two_servers_on_one_database_apply_an_operation_once(Database database)
    {
        await using var one = await TestServer.MakeAsync(database);
        await using var two = one.Again();
        using var a = one.CreateClient();
        using var b = two.CreateClient();
        var operations = Enumerable.Range(0, 6).Select(_ => Invented.Put(Guid.CreateVersion7())).ToArray();
        var answers = await Task.WhenAll(operations.SelectMany(o => new[] { a, b }.Select(client => Task.Run(() => client.SendAsync(o)))));
        Assert.Equal(operations.Length, answers.Count(r => !r[0].Repeated));
        Assert.Equal(operations.Length, (await b.ProofsAsync()).Count);
    }

    [Theory, InlineData(Database.Sqlite), InlineData(Database.Postgres)]
    public async Task Database_of_the_first_version_opens_with_its_proof_and_its_history(Database database)
    {
        await using var server = await TestServer.MakeAsync(database);
        Directory.CreateDirectory(server.Folder);
        var file = Path.Combine(server.Folder, "rinsewright.db");
        var proof = Invented.Proof(Guid.CreateVersion7(), "from the first version");
        var json = System.Text.Json.JsonSerializer.Serialize(proof, Contracts.ContractsJson.Default.ProofDocument);
        var (operation, at) = (Guid.CreateVersion7(), Invented.Morning.ToUnixTimeMilliseconds());
        await using (
            AppDb old = server.PostgresConnection is { } connection
                ? new PostgresDb(new DbContextOptionsBuilder<PostgresDb>().UseNpgsql(connection).Options)
                : new SqliteDb(new DbContextOptionsBuilder<SqliteDb>().UseSqlite(SqliteDb.ConnectionTo(file)).Options)
        )
        {
            await old.GetService<Microsoft.EntityFrameworkCore.Migrations.IMigrator>()
                .MigrateAsync("Start", TestContext.Current.CancellationToken);

            // The columns there were then.
            await old.Database.ExecuteSqlAsync(
                $"""
                insert into "Documents" ("Id", "Kind", "Json", "OperationId", "WrittenAt", "Revision", "Versions", "Demo", "Author", "StatedAt", "MadeAt", "OffsetMinutes", "Kitchen", "Machine", "Technician", "Verdict", "Passes")
                values ({proof.Id}, 'proof', {json}, {operation}, {at}, 1, 1, false, 'Ines Calloway', {at}, {at}, -420, 'Larkspur Lodge', 'Two-tank rack conveyor', 'Ines Calloway', 'undetermined', 0)
                """,
                TestContext.Current.CancellationToken
            );
            await old.Database.ExecuteSqlAsync(
                $"""
                insert into "Operations" ("Id", "DocumentId", "Action", "Author", "Device", "StatedAt", "ReceivedAt", "Outcome", "Revision", "Json")
                values ({operation}, {proof.Id}, 'put', 'Ines Calloway', 'phone', {at}, {at}, 'applied', 1, {json})
                """,
                TestContext.Current.CancellationToken
            );
            await old.Database.ExecuteSqlAsync(
                $"""insert into "Store" ("Id", "StoreId", "Revision") values (1, {Guid.CreateVersion7()}, 1)""",
                TestContext.Current.CancellationToken
            );
        }

        using var client = server.CreateClient();
        Assert.Equal((proof.Id, "Larkspur Lodge"), Assert.Single(await client.ProofsAsync()) is var p ? (p.Id, p.Kitchen) : default);
        Assert.Equal("from the first version", Assert.Single(await client.HistoryAsync(proof.Id)).Proof!.Note);
        Assert.Equivalent(proof, Assert.Single((await client.ChangesAsync()).Items).Proof, strict: true);
    }

    [Fact]
    public async Task SQLite_file_keeps_a_write_ahead_log()
    {
        await using var server = await TestServer.OnSqliteAloneAsync("PostgreSQL keeps a log without being asked.");
        using var client = server.CreateClient();
        await using var scope = server.Services.CreateAsyncScope();
        var db = scope.ServiceProvider.GetRequiredService<AppDb>();
        var mode = await db
            .Database.SqlQueryRaw<string>("select journal_mode as Value from pragma_journal_mode")
            .SingleAsync(TestContext.Current.CancellationToken);
        Assert.Equal("wal", mode);
    }

    [Theory, InlineData(Database.Sqlite), InlineData(Database.Postgres)]
    public async Task Proof_comes_back_as_it_was_sent_with_its_offset(Database database)
    {
        await using var server = await TestServer.MakeAsync(database);
        using var client = server.CreateClient();
        var operation = Invented.Put(Guid.CreateVersion7(), "71,4 °C · ✓");
        await client.SendAsync(operation);
        var summary = Assert.Single(await client.ProofsAsync());
        Assert.Equal((Invented.Morning, Invented.Morning.Offset), (summary.At, summary.At.Offset));
        var change = Assert.Single((await client.ChangesAsync()).Items);
        Assert.Equivalent(operation.Proof, change.Proof, strict: true);
    }

    /// <summary>What was judged of it says nothing of what is asked now: no list of the office shows it as proven.</summary>
    [Theory, InlineData(Database.Sqlite), InlineData(Database.Postgres)]
    public async Task A_proof_that_is_not_judged_yet_is_undetermined_in_the_list(Database database)
    {
        await using var server = await TestServer.MakeAsync(database);
        using var client = server.CreateClient();
        var put = Invented.Put(Guid.CreateVersion7());
        var proven = put.Proof! with { Report = put.Proof.Report with { Verdict = "proven" } };
        await client.SendAsync(put with { Proof = proven });
        Assert.Equal("proven", Assert.Single(await client.ProofsAsync()).Verdict);

        var later = Invented.Put(proven.Id, at: Invented.Morning.AddMinutes(1));
        await client.SendAsync(later with { Proof = proven with { Unjudged = true } });
        Assert.Equal("undetermined", Assert.Single(await client.ProofsAsync()).Verdict);
        Assert.True(Assert.Single((await client.ChangesAsync()).Items).Proof!.Unjudged);
    }
}
