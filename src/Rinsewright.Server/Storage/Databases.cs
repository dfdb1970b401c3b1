using Microsoft.Data.Sqlite;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Design;

namespace Rinsewright.Server.Storage;

/// <summary>The store in one SQLite file with a write-ahead log: the default.</summary>
public sealed class SqliteDb(DbContextOptions<SqliteDb> options) : AppDb(options)
{
    /// <summary>Connection string for a file. One writer at a time: another waits up to 30 s.</summary>
    public static string ConnectionTo(string path) =>
        new SqliteConnectionStringBuilder
        {
            DataSource = path,
            DefaultTimeout = 30,
            ForeignKeys = true,
        }.ToString();
}

/// <summary>The store in PostgreSQL: for a team with several server processes.</summary>
public sealed class PostgresDb(DbContextOptions<PostgresDb> options) : AppDb(options);

/// <summary>Used by the migration tool only.</summary>
public sealed class SqliteDesign : IDesignTimeDbContextFactory<SqliteDb>
{
    /// <inheritdoc/>
    public SqliteDb CreateDbContext(string[] args) =>
        new(new DbContextOptionsBuilder<SqliteDb>().UseSqlite("Data Source=:memory:").Options);
}

/// <summary>Used by the migration tool only.</summary>
public sealed class PostgresDesign : IDesignTimeDbContextFactory<PostgresDb>
{
    /// <inheritdoc/>
    public PostgresDb CreateDbContext(string[] args) => new(new DbContextOptionsBuilder<PostgresDb>().UseNpgsql("Host=localhost").Options);
}
