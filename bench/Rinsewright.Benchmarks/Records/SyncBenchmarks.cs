using System.Data.Common;
using System.Diagnostics;
using System.Globalization;
using System.Text;
using Microsoft.Data.Sqlite;
using Npgsql;
using Rinsewright.Contracts.Records;

namespace Rinsewright.Benchmarks.Records;

/// <summary>1,000 visits of 40 readings to the office and from it, over its own interface, against the same rows straight into an equal database; in turn, in one run.</summary>
internal static class SyncBenchmarks
{
    private const int Visits = 1_000;
    private const int Wanted = 3;

    // The server compiles again what runs often; until then a round takes several times as long.
    private const int Warming = 10;

    public static async Task<string> RunAsync(int repeats)
    {
        var page = new StringBuilder();
        void Line(FormattableString text) => page.Append(FormattableString.Invariant(text)).Append('\n');
        var machine = await Machine.AskAsync();
        Line($"## Visits to the office and back");
        Line($"");
        Line($"- Machine: {machine.Processor}, {machine.Cores} cores; {machine.Runtime}");
        Line(
            $"- {Visits:N0} visits of {InventedVisits.Readings} readings, {repeats} times in turn after {Warming} that do not count; medians. The server is a process of its own, published; the device is this program."
        );
        Line(
            $"- *To the office*: each visit one operation, {SyncLists.OperationsFirst} in the first list, four times as many in each after it, up to {SyncLists.OperationsMost} or {SyncLists.LongestList:N0} characters, as the client sends them, one list after another. *To an empty device*: what changed, page after page, until there is no more."
        );
        Line(
            $"- *Straight in*: the rows the office then holds (documents, operations, turns) into an equal database by its own bulk route: PostgreSQL binary COPY; SQLite one transaction, one prepared statement for each table."
        );
        Line($"");
        Line(
            $"| database | straight in | to the office | to an empty device | to the office : straight in | to a device : straight in | wanted {Wanted} |"
        );
        Line($"| --- | ---: | ---: | ---: | ---: | ---: | --- |");
        if (Office.Published() is null)
        {
            throw new InvalidOperationException(
                "No published server: run `dotnet run build.cs -- publish` or name its folder in RINSEWRIGHT_PUBLISHED."
            );
        }

        var fresh = new List<string>();
        foreach (var server in OwnDatabase.Server is { } given ? new[] { null, given } : [null])
        {
            var (into, sent, fetched, first) = await MeasureAsync(server, repeats);
            fresh.Add(FormattableString.Invariant($"{first:0.0} ({(server is null ? "SQLite" : "PostgreSQL")})"));
            var met = sent <= Wanted * into && fetched <= Wanted * into;
            Line(
                $"| {(server is null ? "SQLite" : "PostgreSQL")} | {into:0.000} s | {sent:0.000} s | {fetched:0.000} s | {sent / into:0.0} | {fetched / into:0.0} | {(met ? "met" : "**not met**")} |"
            );
        }

        Line($"");
        Line($"A server just started, in its first round, to the office : straight in: {string.Join(", ", fresh)}.");
        if (OwnDatabase.Server is null)
        {
            Line($"");
            Line($"PostgreSQL was not there: RINSEWRIGHT_TEST_POSTGRES holds no connection string.");
        }

        return page.ToString();
    }

    private static async Task<(double Into, double Sent, double Fetched, double First)> MeasureAsync(string? server, int repeats)
    {
        var folder = Directory.CreateTempSubdirectory("rinsewright-bench-");
        var (mine, other) = server is null ? (null, null) : (await OwnDatabase.MakeAsync(server), await OwnDatabase.MakeAsync(server));
        try
        {
            string FolderOf(string name) => Path.Combine(folder.FullName, name);
            DbConnection Open(string name, OwnDatabase? database) =>
                database is null
                    ? new SqliteConnection($"Data Source={Path.Combine(FolderOf(name), "rinsewright.db")};Pooling=false")
                    : new NpgsqlConnection(database.Connection);

            // An equal database: the server itself makes its tables.
            await (await Office.StartAsync(FolderOf("other"), other?.Connection)).DisposeAsync();
            await using var office = await Office.StartAsync(FolderOf("office"), mine?.Connection);
            List<double> into = [],
                sent = [],
                fetched = [];
            var (cursor, first) = ("", double.NaN);
            for (var repeat = -Warming; repeat < repeats; repeat++)
            {
                var operations = Operations(repeat);
                using var device = office.Client(2 * (repeat + Warming));
                var sending = await SyncLists.SendAsync(device, operations);
                using var empty = office.Client((2 * (repeat + Warming)) + 1);
                var before = Revision(cursor);
                (var fetching, cursor, var documents) = await SyncLists.FetchAsync(empty, cursor);
                if (!documents.SetEquals(operations.Select(o => o.DocumentId)))
                {
                    throw new InvalidOperationException("Other visits came back than were sent.");
                }

                await using var store = Open("office", mine);
                await using var equal = Open("other", other);
                var writing = await BulkInsert.WriteAsync(equal, await BulkInsert.ReadAsync(store, before));
                Console.Error.WriteLine(
                    FormattableString.Invariant(
                        $"  {(server is null ? "SQLite" : "PostgreSQL")}: straight in {writing:0.000} s, to the office {sending:0.000} s, to a device {fetching:0.000} s"
                    )
                );
                if (repeat == -Warming)
                {
                    first = sending / writing;
                }

                if (repeat >= 0)
                {
                    into.Add(writing);
                    sent.Add(sending);
                    fetched.Add(fetching);
                }
            }

            return (SyncLists.Median(into), SyncLists.Median(sent), SyncLists.Median(fetched), first);
        }
        finally
        {
            if (server is not null)
            {
                await mine!.DisposeAsync();
                await other!.DisposeAsync();
            }

            folder.Delete(recursive: true);
        }
    }

    private static List<Operation> Operations(int seed)
    {
        var visits = new InventedVisits(seed);
        return [.. Enumerable.Range(0, Visits).Select(_ => visits.Next())];
    }

    // A cursor is store, number and tag.
    private static long Revision(string cursor) =>
        cursor.Split('-') is [_, var number, ..] ? long.Parse(number, CultureInfo.InvariantCulture) : 0;
}

/// <summary>What a device does with the office, as the client's synchronizer does it.</summary>
internal static class SyncLists
{
    /// <summary>Operations in the first list, and the most in any (Rinsewright.Screens/Records/Synchronizer.cs).</summary>
    public const int OperationsFirst = 8,
        OperationsMost = 500;

    /// <summary>Most characters of a list (js/store.js).</summary>
    public const int LongestList = 2_000_000;

    /// <summary>Sends everything, list after list; seconds.</summary>
    public static async Task<double> SendAsync(HttpClient device, IReadOnlyList<Operation> operations)
    {
        // The device keeps each operation as text; each list is four times as long as the last, while the answers come soon.
        var lists = new List<string>();
        var texts = new List<string>();
        var (length, most) = (0, OperationsFirst);
        foreach (var text in operations.Select(Office.Text))
        {
            if (texts.Count == most || length + text.Length > LongestList)
            {
                lists.Add($"[{string.Join(',', texts)}]");
                texts.Clear();
                (length, most) = (0, Math.Min(4 * most, OperationsMost));
            }

            texts.Add(text);
            length += text.Length;
        }

        lists.Add($"[{string.Join(',', texts)}]");
        var watch = Stopwatch.StartNew();
        foreach (var list in lists)
        {
            await Office.SendAsync(device, list);
        }

        return watch.Elapsed.TotalSeconds;
    }

    /// <summary>Fetches everything after a cursor; seconds, the next cursor, and which documents came.</summary>
    public static async Task<(double Seconds, string Cursor, HashSet<Guid> Documents)> FetchAsync(HttpClient device, string cursor)
    {
        var watch = Stopwatch.StartNew();
        var documents = new HashSet<Guid>();
        for (var more = true; more; )
        {
            var changes = await Office.ChangesAsync(device, cursor, "");
            documents.UnionWith(changes.Items.Select(i => i.DocumentId));
            (cursor, more) = (changes.Cursor, changes.More);
        }

        return (watch.Elapsed.TotalSeconds, cursor, documents);
    }

    /// <summary>The middle one.</summary>
    public static double Median(IEnumerable<double> values)
    {
        var sorted = values.Order().ToList();
        return (sorted[(sorted.Count - 1) / 2] + sorted[sorted.Count / 2]) / 2;
    }
}
