using System.Reflection;
using Npgsql;
using Xunit.Sdk;
using Xunit.v3;

namespace Rinsewright.Server.Tests;

/// <summary>Which database a test runs on.</summary>
public enum Database
{
    /// <summary>A SQLite file of its own.</summary>
    Sqlite,

    /// <summary>A PostgreSQL database of its own.</summary>
    Postgres,
}

/// <summary>One row of a theory, once with each database before it.</summary>
[AttributeUsage(AttributeTargets.Method, AllowMultiple = true)]
public sealed class OnBothAttribute(params object?[] row) : DataAttribute
{
    /// <inheritdoc/>
    public override ValueTask<IReadOnlyCollection<ITheoryDataRow>> GetData(MethodInfo testMethod, DisposalTracker disposalTracker) =>
        new([.. Enum.GetValues<Database>().Select(d => new TheoryDataRow([d, .. row]))]);

    /// <inheritdoc/>
    public override bool SupportsDiscoveryEnumeration() => true;
}

/// <summary>A PostgreSQL database for one test, dropped afterwards.</summary>
public sealed class OwnPostgres : IAsyncDisposable
{
    private const string Variable = "RINSEWRIGHT_TEST_POSTGRES";
    private readonly string server;
    private readonly string name = $"rinsewright_{Guid.CreateVersion7():n}";

    private OwnPostgres(string server) => this.server = server;

    /// <summary>Connection string of this database.</summary>
    public string Connection =>
        new NpgsqlConnectionStringBuilder(server)
        {
            Database = name,
            Pooling = true,
            MaxPoolSize = 20,
        }.ToString();

    /// <summary>Makes the database; the test is skipped, and says so, where no server is given.</summary>
    public static async Task<OwnPostgres> MakeAsync()
    {
        var given = Environment.GetEnvironmentVariable(Variable);
        Assert.SkipWhen(string.IsNullOrEmpty(given), $"{Variable} holds no connection string, so nothing was tried on PostgreSQL.");
        var database = new OwnPostgres(given!);
        await database.RunAsync($"create database {database.name}");
        return database;
    }

    /// <inheritdoc/>
    public async ValueTask DisposeAsync()
    {
        NpgsqlConnection.ClearAllPools();
        await RunAsync($"drop database if exists {name} with (force)");
    }

    private async Task RunAsync(string sql)
    {
        var connection = new NpgsqlConnectionStringBuilder(server) { Database = "postgres", Pooling = false }.ToString();
        await using var source = NpgsqlDataSource.Create(connection);
        await using var command = source.CreateCommand(sql);
        await command.ExecuteNonQueryAsync();
    }
}
