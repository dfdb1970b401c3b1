using System.Collections.Concurrent;
using System.Diagnostics;
using System.Text;
using Rinsewright.Contracts.Records;

namespace Rinsewright.Benchmarks.Records;

/// <summary>Two hundred devices that synchronize with one server, against one alone; in turn, in one run.</summary>
internal static class DeviceBenchmarks
{
    private const int Devices = 200;
    private const int Wanted = 5;

    // How often a person at work lets a pause after a change: each time the device sends it and asks what changed elsewhere.
    private static readonly TimeSpan Between = TimeSpan.FromSeconds(20);
    private static readonly TimeSpan Alone = TimeSpan.FromSeconds(10);
    private static readonly TimeSpan Warming = TimeSpan.FromSeconds(20);
    private static readonly TimeSpan Measured = TimeSpan.FromSeconds(60);

    public static async Task<string> RunAsync()
    {
        var page = new StringBuilder();
        void Line(FormattableString text) => page.Append(FormattableString.Invariant(text)).Append('\n');
        var machine = await Machine.AskAsync();
        Line($"## Devices at once");
        Line($"");
        Line($"- Machine: {machine.Processor}, {machine.Cores} cores, shared by the server and the devices; {machine.Runtime}");
        Line(
            $"- Each device writes the {InventedVisits.Readings} readings of its visit anew and asks what changed elsewhere, {Between.TotalSeconds:0} s apart on the average at times of its own, from an address of its own; it fetches what all the others wrote. {Measured.TotalSeconds:0} s count, after {Warming.TotalSeconds:0} s that do not."
        );
        Line($"- *Alone*: one device, the next change a fifth of a second after the last, {Alone.TotalSeconds:0} s.");
        Line($"");
        Line(
            $"| database | alone, median | {Devices} devices, median | ratio, wanted under {Wanted} | 95 of 100 under | requests | errors | lost or doubled |"
        );
        Line($"| --- | ---: | ---: | ---: | ---: | ---: | ---: | ---: |");
        if (Office.Published() is null)
        {
            throw new InvalidOperationException(
                "No published server: run `dotnet run build.cs -- publish` or name its folder in RINSEWRIGHT_PUBLISHED."
            );
        }

        foreach (var server in OwnDatabase.Server is { } given ? new[] { null, given } : [null])
        {
            var r = await MeasureAsync(server);
            Line(
                $"| {(server is null ? "SQLite" : "PostgreSQL")} | {r.Alone * 1e3:0.0} ms | {r.Median * 1e3:0.0} ms | {r.Median / r.Alone:0.0}: {(r.Median < Wanted * r.Alone ? "met" : "**not met**")} | {r.Most * 1e3:0} ms | {r.Requests:N0} | {r.Errors} | {r.Lost} |"
            );
        }

        return page.ToString();
    }

    private static async Task<Result> MeasureAsync(string? server)
    {
        var folder = Directory.CreateTempSubdirectory("rinsewright-bench-");
        var database = server is null ? null : await OwnDatabase.MakeAsync(server);
        try
        {
            await using var office = await Office.StartAsync(folder.FullName, database?.Connection);
            var devices = Enumerable.Range(0, Devices).Select(i => new SyncingDevice(office.Client(i), i)).ToList();
            foreach (var device in devices)
            {
                await device.BeginAsync();
            }

            // The first requests compile the server.
            await devices[0].WorkAsync(TimeSpan.FromMilliseconds(200), Alone, [], spread: false);
            ConcurrentBag<double> alone = [],
                warm = [],
                together = [];
            await devices[0].WorkAsync(TimeSpan.FromMilliseconds(200), Alone, alone, spread: false);
            await Task.WhenAll(devices.Select(d => d.WorkAsync(Between, Warming, warm, spread: true)));
            await Task.WhenAll(devices.Select(d => d.WorkAsync(Between, Measured, together, spread: true)));
            var errors = devices.Sum(d => d.Errors);

            // Everything that was taken in is at the office once, as it was written last.
            var (_, _, found) = await SyncLists.FetchAsync(devices[0].Client, "");
            var lost = devices.Count(d => !found.Contains(d.Visit)) + Math.Abs(found.Count - Devices);
            foreach (var device in devices)
            {
                lost += await device.WrongAtOfficeAsync();
                device.Client.Dispose();
            }

            var sorted = together.Order().ToList();
            Console.Error.WriteLine(
                FormattableString.Invariant(
                    $"  alone {SyncLists.Median(alone) * 1e3:0.0} ms, {Devices} devices {SyncLists.Median(together) * 1e3:0.0} ms, {errors} errors"
                )
            );
            return new Result(
                SyncLists.Median(alone),
                SyncLists.Median(together),
                sorted[(int)(sorted.Count * 0.95)],
                sorted.Count,
                errors,
                lost
            );
        }
        finally
        {
            if (database is not null)
            {
                await database.DisposeAsync();
            }

            folder.Delete(recursive: true);
        }
    }

    private sealed record Result(double Alone, double Median, double Most, int Requests, int Errors, int Lost);
}

/// <summary>One device with one visit of its own.</summary>
internal sealed class SyncingDevice(HttpClient client, int seed)
{
    private readonly InventedVisits visits = new(seed);
    private readonly Random random = new(seed);
    private string cursor = "";
    private string seen = "";
    private int written;

    /// <summary>Its way to the office.</summary>
    public HttpClient Client => client;

    /// <summary>Its visit.</summary>
    public Guid Visit { get; private set; }

    /// <summary>Requests that did not go well.</summary>
    public int Errors { get; private set; }

    /// <summary>Sends its visit.</summary>
    public async Task BeginAsync()
    {
        var first = visits.Next();
        Visit = first.DocumentId;
        seen = await Office.SendAsync(client, $"[{Office.Text(first)}]") ?? "";
        written++;
    }

    /// <summary>Writes and asks again and again.</summary>
    /// <param name="between">From one change to the next; on the average, where spread.</param>
    /// <param name="time">How long.</param>
    /// <param name="seconds">Takes the time of each request.</param>
    /// <param name="spread">Whether the times between changes are spread.</param>
    public async Task WorkAsync(TimeSpan between, TimeSpan time, ConcurrentBag<double> seconds, bool spread)
    {
        var watch = Stopwatch.StartNew();
        while (true)
        {
            await Task.Delay(spread ? between * (2 * random.NextDouble()) : between);
            if (watch.Elapsed > time)
            {
                return;
            }

            try
            {
                var change = $"[{Office.Text(visits.Change(Visit))}]";
                var from = Stopwatch.GetTimestamp();
                seen = await Office.SendAsync(client, change) ?? seen;
                seconds.Add(Stopwatch.GetElapsedTime(from).TotalSeconds);
                written++;
                for (var more = true; more; )
                {
                    from = Stopwatch.GetTimestamp();
                    var changes = await Office.ChangesAsync(client, cursor, seen);
                    seconds.Add(Stopwatch.GetElapsedTime(from).TotalSeconds);
                    (cursor, more) = (changes.Cursor, changes.More);
                    Errors += changes.Restarted ? 1 : 0;
                }
            }
            catch (Exception e)
                when (e is HttpRequestException or TaskCanceledException or InvalidOperationException or System.Text.Json.JsonException)
            {
                Errors++;
            }
        }
    }

    /// <summary>How many changes the office has more or fewer of its visit than were written.</summary>
    public async Task<int> WrongAtOfficeAsync()
    {
        var text = await client.GetStringAsync(new Uri($"api/documents/{Visit}/history", UriKind.Relative));
        using var history = System.Text.Json.JsonDocument.Parse(text);
        return Math.Abs(history.RootElement.GetArrayLength() - written);
    }
}
