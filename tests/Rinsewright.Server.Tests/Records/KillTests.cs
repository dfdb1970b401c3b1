using System.Diagnostics;
using System.Globalization;
using Rinsewright.Contracts.Records;

namespace Rinsewright.Server.Tests.Records;

/// <summary>
/// The server's process is killed without warning, at random, while devices send proofs, changes of kitchens, machines and visits, and files: what it had acknowledged is there once when it is
/// back, what it had not is sent again and is there once as well, fields hold what the operations say, and files are the same to the last byte.
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

    // Few enough that devices write to the same ones at once.
    private static readonly (Guid Id, string Kind)[] Shared =
    [
        .. Enumerable.Range(0, 30).Select(i => (new Guid($"01993a00-0002-7000-8000-0000000000{i:00}"), Kinds.OfFields[i % 3])),
    ];

    [Theory, InlineData(Database.Sqlite), InlineData(Database.Postgres)]
    public async Task Nothing_acknowledged_is_lost_or_doubled(Database database)
    {
        await using var postgres = database == Database.Postgres ? await OwnPostgres.MakeAsync() : null;
        var random = new Random(20261126);
        var devices = Enumerable.Range(1, Devices).Select(n => new SendingDevice(n, Shared)).ToArray();
        for (var round = 0; round < Kills; round++)
        {
            using var server = Start(postgres?.Connection);
            using var over = new CancellationTokenSource();
            var address = AddressAsync(server);
            var working = devices.Select(device => Task.Run(() => WorkAsync(device, address, over.Token))).ToArray();
            // Every third dies while it still opens its database; the others while devices send and are answered, however long this machine takes to start one.
            if (round % 3 > 0)
            {
                await address;
                var before = devices.Sum(d => d.Answers);
                while (devices.Sum(d => d.Answers) < before + (2 * Devices) && !working.Any(w => w.IsCompleted))
                {
                    await Task.Delay(5, TestContext.Current.CancellationToken);
                }
            }

            await Task.Delay(random.Next(50, round % 3 > 0 ? 700 : 2000), TestContext.Current.CancellationToken);
            server.Kill(entireProcessTree: true);
            await over.CancelAsync();
            await Task.WhenAll(working);
            await server.WaitForExitAsync(TestContext.Current.CancellationToken);
        }

        // What follows is only worth something where servers died in the middle of both.
        Assert.True(devices.Sum(d => d.CutOperations) > 0, "No server died while a device was waiting for the answer to its operations.");
        Assert.True(
            Directory.EnumerateFiles(Path.Combine(folder, "files"), "arriving-*").Any(),
            "No server died while a part of a file was there."
        );
        using var last = Start(postgres?.Connection);
        try
        {
            using var client = new HttpClient
            {
                BaseAddress = new Uri(await AddressAsync(last) ?? throw new InvalidOperationException("It did not come back.")),
            };
            foreach (var device in devices)
            {
                List<string> kept = [.. device.AcknowledgedFiles];
                await IsThereAsync(client, kept, device.Files); // before anything is sent again
                await device.FinishAsync(client);
                Assert.Equal(device.Saved.Select(o => o.Id), device.Acknowledged);
                await IsThereAsync(client, device.Files.Keys.Except(kept), device.Files);
            }

            await IsThereOnceAsync(client, [.. devices.SelectMany(d => d.Saved)]);
            var stored = Directory.EnumerateFiles(Path.Combine(folder, "files"), "*", SearchOption.AllDirectories);
            Assert.Equal(
                devices.SelectMany(d => d.Files.Keys).Order(StringComparer.Ordinal),
                stored.Select(f => Path.GetFileName(f)).Where(f => f.Length == 64).Order(StringComparer.Ordinal)
            );
        }
        finally
        {
            last.Kill(entireProcessTree: true);
            await last.WaitForExitAsync(TestContext.Current.CancellationToken);
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

    private static async Task WorkAsync(SendingDevice device, Task<string?> address, CancellationToken over)
    {
        if (await address is { } at)
        {
            using var client = new HttpClient { BaseAddress = new Uri(at) };
            await device.WorkAsync(client, over);
        }
    }

    // Every document and every change of it once, and in each field what the operations say by themselves: the latest, of two at one time the one with the later id.
    private static async Task IsThereOnceAsync(HttpClient client, List<Operation> saved)
    {
        var changes = await EveryChangeAsync(client);
        var written = saved.GroupBy(o => o.DocumentId).ToDictionary(g => g.Key, g => g.ToList());
        Assert.Equal(written.Keys.Order(), changes.Select(c => c.DocumentId).Order());
        Assert.Equal(
            [.. Kinds.OfFields.Append(Kinds.Proof).Order(StringComparer.Ordinal)],
            changes.Select(c => c.Kind).Distinct().Order(StringComparer.Ordinal)
        );
        foreach (var change in changes)
        {
            var operations = written[change.DocumentId];
            Assert.Equal(operations.Count, change.Versions);
            if (change.Kind == Kinds.Proof)
            {
                Assert.Equivalent(operations[0].Proof, change.Proof, strict: true);
                continue;
            }

            var expected = operations
                .SelectMany(o => o.Fields!.Select(f => (f.Path, f.Value, f.Order, o.Id)))
                .GroupBy(f => f.Path)
                .Select(g => (g.Key, g.OrderBy(f => f.Order).ThenBy(f => f.Id).Last().Value));
            Assert.Equal(expected.Order(), change.Document!.Fields.Select(f => (f.Key, f.Value.Value)).Order());
            var history = await FieldOperationTests.HistoryAsync(client, change.DocumentId);
            Assert.Equal(operations.Select(o => o.Id).Order(), history.Select(h => h.OperationId).Order());
        }

        foreach (var proof in changes.Where(c => c.Kind == Kinds.Proof).Take(40))
        {
            Assert.Single(await client.HistoryAsync(proof.DocumentId));
        }
    }

    private static async Task IsThereAsync(HttpClient client, IEnumerable<string> files, Dictionary<string, byte[]> bytes)
    {
        foreach (var file in files)
        {
            var stored = await client.GetByteArrayAsync(
                new Uri("api/files/" + file, UriKind.Relative),
                TestContext.Current.CancellationToken
            );
            Assert.True(
                stored.AsSpan().SequenceEqual(bytes[file]),
                $"{file} came back otherwise: {stored.Length} bytes, {bytes[file].Length} sent."
            );
        }
    }

    private static async Task<List<Change>> EveryChangeAsync(HttpClient client)
    {
        var seen = new List<Change>();
        for (var cursor = ""; ; )
        {
            var changes = await client.ChangesAsync(cursor);
            seen.AddRange(changes.Items);
            cursor = changes.Cursor;
            if (!changes.More)
            {
                Assert.Null(changes.WantedFiles);
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
