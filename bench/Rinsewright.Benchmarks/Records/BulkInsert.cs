using System.Data.Common;
using System.Diagnostics;
using Microsoft.Data.Sqlite;
using Npgsql;

namespace Rinsewright.Benchmarks.Records;

/// <summary>The same rows straight into an equal database by its own bulk route: PostgreSQL's binary COPY, one transaction with one prepared statement for SQLite.</summary>
internal static class BulkInsert
{
    private static readonly string[] Tables = ["Documents", "Operations", "Turns"];

    /// <summary>Reads the rows a store was given after a number.</summary>
    public static async Task<IReadOnlyList<Table>> ReadAsync(DbConnection store, long after)
    {
        await store.OpenAsync();
        var tables = new List<Table>();
        foreach (var name in Tables)
        {
            await using var command = store.CreateCommand();
            command.CommandText = $"""select * from "{name}" where "{(name == "Turns" ? "Number" : "Revision")}" > {after}""";
            await using var reader = await command.ExecuteReaderAsync();
            var columns = Enumerable.Range(0, reader.FieldCount).Select(i => (reader.GetName(i), reader.GetDataTypeName(i))).ToList();
            var rows = new List<object[]>();
            while (await reader.ReadAsync())
            {
                var row = new object[reader.FieldCount];
                reader.GetValues(row);
                rows.Add(row);
            }

            tables.Add(new Table(name, columns, rows));
        }

        return tables;
    }

    /// <summary>Puts them into another database with the same tables; seconds.</summary>
    public static async Task<double> WriteAsync(DbConnection database, IReadOnlyList<Table> tables)
    {
        await database.OpenAsync();
        var watch = Stopwatch.StartNew();
        if (database is NpgsqlConnection postgres)
        {
            await using var transaction = await postgres.BeginTransactionAsync();
            foreach (var table in tables)
            {
                await CopyAsync(postgres, table);
            }

            await transaction.CommitAsync();
        }
        else
        {
            await using var transaction = await database.BeginTransactionAsync();
            foreach (var table in tables)
            {
                Insert((SqliteConnection)database, (SqliteTransaction)transaction, table);
            }

            await transaction.CommitAsync();
        }

        return watch.Elapsed.TotalSeconds;
    }

    private static async Task CopyAsync(NpgsqlConnection postgres, Table table)
    {
        var columns = string.Join(',', table.Columns.Select(c => $"\"{c.Name}\""));
        await using var copy = await postgres.BeginBinaryImportAsync($"""copy "{table.Name}" ({columns}) from stdin (format binary)""");
        foreach (var row in table.Rows)
        {
            await copy.StartRowAsync();
            foreach (var value in row)
            {
                await (
                    value switch
                    {
                        string text => copy.WriteAsync(text),
                        long number => copy.WriteAsync(number),
                        int number => copy.WriteAsync(number),
                        bool yes => copy.WriteAsync(yes),
                        Guid id => copy.WriteAsync(id),
                        DBNull => copy.WriteNullAsync(),
                        _ => throw new InvalidOperationException($"A column holds {value.GetType()}."),
                    }
                );
            }
        }

        await copy.CompleteAsync();
    }

    private static void Insert(SqliteConnection database, SqliteTransaction transaction, Table table)
    {
        using var command = database.CreateCommand();
        command.Transaction = transaction;
        var names = string.Join(',', table.Columns.Select(c => $"\"{c.Name}\""));
        command.CommandText =
            $"""insert into "{table.Name}" ({names}) values ({string.Join(',', table.Columns.Select((_, i) => $"$p{i}"))})""";
        var parameters = table.Columns.Select((_, i) => command.Parameters.AddWithValue($"$p{i}", DBNull.Value)).ToArray();
        command.Prepare();
        foreach (var row in table.Rows)
        {
            for (var i = 0; i < row.Length; i++)
            {
                parameters[i].Value = row[i];
            }

            command.ExecuteNonQuery();
        }
    }

    /// <summary>Rows of one table.</summary>
    internal sealed record Table(string Name, IReadOnlyList<(string Name, string Type)> Columns, IReadOnlyList<object[]> Rows);
}
