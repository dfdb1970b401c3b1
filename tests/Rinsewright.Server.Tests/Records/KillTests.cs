using System.Collections.Concurrent;
using System.Diagnostics;
using System.Globalization;
using Rinsewright.Contracts.Records;

namespace Rinsewright.Server.Tests.Records;

/// <summary>
/// The server's process is killed without warning, at random, while devices send: what it had acknowledged is there once when it is back, what it had not is sent again and is there once as well.
/// </summary>
public sealed class KillTests : IDisposable
{
    private const int Devices = 4;
    private readonly string folder = Path.Combine(Path.GetTempPath(), $"rinsewright-{Guid.CreateVersion7():n}");

    // More by hand: RINSEWRIGHT_KILLS=200.
    private static int Kills =>
        int.TryParse(Environment.GetEnvironmentVariable("RINSEWRIGHT_KILLS"), NumberStyles.None, CultureInfo.InvariantCulture, out var n)
            ? n
            : 25;

    [Theory, InlineData(Database.Sqlite), InlineData(Database.Postgres)]
    public async Task Nothing_acknowledged_is_lost_or_doubled(Database database)
    {
        await using var postgres = database == Database.Postgres ? await OwnPostgres.MakeAsync() : null;
        var random = new Random(20261126);
        var waiting = Enumerable.Range(0, Devices).Select(_ => new Queue<Operation>()).ToArray();
        var acknowledged = new ConcurrentDictionary<Guid, Guid>();
        var sent = new ConcurrentDictionary<Guid, Guid>();
        var cut = 0;
        for (var round = 0; round < Kills; round++)
        {
            using var server = Start(postgres?.Connection);
            using var over = new CancellationTokenSource();
            var address = AddressAsync(server);
            var sending = waiting.Select(queue => Task.Run(() => SendAsync(address, queue, over.Token))).ToArray();
            // Every third dies while it still opens its database; the others while devices send, however long this machine takes to start one.
            if (round % 3 > 0)
            {
                await address;
            }

            await Task.Delay(random.Next(50, round % 3 > 0 ? 700 : 2000), TestContext.Current.CancellationToken);
            server.Kill(entireProcessTree: true);
            await over.CancelAsync();
            cut += (await Task.WhenAll(sending)).Sum();
            await server.WaitForExitAsync(TestContext.Current.CancellationToken);
        }

        using var last = Start(postgres?.Connection);
        try
        {
            using var client = new HttpClient
            {
                BaseAddress = new Uri(await AddressAsync(last) ?? throw new InvalidOperationException("It did not come back.")),
            };
            foreach (var operation in waiting.SelectMany(q => q).Distinct())
            {
                Assert.Equal("applied", Assert.Single(await client.SendAsync(operation)).Outcome);
                acknowledged[operation.Id] = operation.DocumentId;
            }

            // The same list is only worth something where servers died in the middle of it.
            Assert.True(cut > 0, "No server died while a device was waiting for its answer.");
            Assert.Equal(sent.Keys.Order(), acknowledged.Keys.Order());
            Assert.Equal(sent.Values.Order(), (await EveryChangeAsync(client)).Order());
            foreach (var document in sent.Values.Take(40))
            {
                Assert.Single(await client.HistoryAsync(document));
            }
        }
        finally
        {
            last.Kill(entireProcessTree: true);
            await last.WaitForExitAsync(TestContext.Current.CancellationToken);
        }

        // One device: sends what it has, again and again, until the server is gone. Gives how often it was cut off in the middle.
        async Task<int> SendAsync(Task<string?> address, Queue<Operation> queue, CancellationToken over)
        {
            if (await address is not { } at)
            {
                return 0;
            }

            using var client = new HttpClient { BaseAddress = new Uri(at) };
            while (!over.IsCancellationRequested)
            {
                if (queue.Count == 0)
                {
                    var fresh = Invented.Put(Guid.CreateVersion7());
                    sent[fresh.Id] = fresh.DocumentId;
                    queue.Enqueue(fresh);
                }

                try
                {
                    using var answer = await client.PostOperationsAsync(queue.Peek());
                    if (answer.IsSuccessStatusCode)
                    {
                        var done = queue.Dequeue();
                        acknowledged[done.Id] = done.DocumentId;
                    }
                }
                catch (HttpRequestException)
                {
                    return 1;
                }
            }

            return 0;
        }
    }

    /// <inheritdoc/>
    public void Dispose()
    {
        if (Directory.Exists(folder))
        {
            Directory.Delete(folder, recursive: true);
        }
    }

    private static async Task<List<Guid>> EveryChangeAsync(HttpClient client)
    {
        var seen = new List<Guid>();
        for (var cursor = ""; ; )
        {
            var changes = await client.ChangesAsync(cursor);
            seen.AddRange(changes.Items.Select(c => c.DocumentId));
            cursor = changes.Cursor;
            if (!changes.More)
            {
                return seen;
            }
        }
    }

    // Null where it died before it said where it listens.
    private static async Task<string?> AddressAsync(Process server)
    {
        var line = await server.StandardOutput.ReadLineAsync(TestContext.Current.CancellationToken);
        // What it logs is taken off it: a full pipe would hold it up.
        _ = server.StandardOutput.ReadToEndAsync(CancellationToken.None);
        return line?.Split(' ') is [.., var address] && address.StartsWith("http", StringComparison.Ordinal) ? address + "/" : null;
    }

    private Process Start(string? database)
    {
        var start = new ProcessStartInfo(
            "dotnet",
            [typeof(Program).Assembly.Location, "--urls", "http://127.0.0.1:0", "--Rinsewright:Data=" + folder, "--Rinsewright:Demo=false"]
        )
        {
            RedirectStandardOutput = true,
            UseShellExecute = false,
        };
        if (database is not null)
        {
            start.ArgumentList.Add("--Rinsewright:Database=" + database);
        }

        start.Environment["LANG"] = "en";
        return Process.Start(start)!;
    }
}
