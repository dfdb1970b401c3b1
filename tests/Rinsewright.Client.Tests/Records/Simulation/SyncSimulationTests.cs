using System.Collections.Concurrent;
using System.Text.Json;
using Rinsewright.Contracts;
using Rinsewright.Contracts.Records;
using Xunit;

namespace Rinsewright.Client.Tests.Records.Simulation;

/// <summary>
/// Ten thousand invented histories, or as many as one likes: up to four devices with up to two tabs each and one office, clocks that are minutes to years off, requests and answers that are lost,
/// late, doubled and out of order, no signal for a while, tabs that die between any two steps, an office put back to an older copy. Whatever happens: what was saved reaches the office once, nothing
/// arrives that nobody saved, every device ends with the same, and what stands is the latest with every other value in the history. Each history follows from its
/// seed; a failure names it. Where the office was put back, what was lost there comes back from the devices: the latest of every field stands again. Seven bugs are planted
/// one at a time below (<see cref="Planted"/>), in the office and in what a device keeps, and each is caught; without them nothing is.
/// </summary>
[Collection("Browser")] // it takes every core: beside it a page would wait for minutes
public sealed class SyncSimulationTests
{
    // More at night: the variable says how many.
    private static readonly int Histories = int.TryParse(Environment.GetEnvironmentVariable("RINSEWRIGHT_HISTORIES"), out var asked)
        ? asked
        : 10_000;

    // A planted bug shows in far fewer.
    private static readonly int Hunts = Math.Min(Histories, 1000);
    private const int Actions = 45;
    private static readonly Guid[] Ids = [new("00000000-0000-7000-8000-00000000000a"), new("00000000-0000-7000-8000-00000000000b")];
    private static readonly string[] Paths = ["name", "note", "water.a.hardness"];
    private static readonly string[] Authors = ["Ines Calloway", "Bram Oakes", "Noor Vance", "office"];

    [Fact]
    public void Nothing_saved_is_lost_or_doubled_and_all_come_to_the_same()
    {
        var broken = new ConcurrentDictionary<int, string>();
        Parallel.For(
            1,
            Histories + 1,
            (seed, loop) =>
            {
                if (Live(seed, Planted.None) is { } how)
                {
                    broken[seed] = how;
                    loop.Break();
                }
            }
        );
        Assert.True(broken.IsEmpty, broken.IsEmpty ? "" : $"history {broken.Keys.Min()}: {broken[broken.Keys.Min()]}");
    }

    [Theory]
    [InlineData(Planted.AppliesTwice)]
    [InlineData(Planted.ForgetsBeforeTheAnswer)]
    [InlineData(Planted.LastArrivalStands)]
    [InlineData(Planted.WritesOverAnotherTab)]
    [InlineData(Planted.ReplacesWhatIsOnItsWay)]
    [InlineData(Planted.SkipsChanges)]
    [InlineData(Planted.HidesThatItWasRestored)]
    public void A_planted_bug_is_caught(Planted bug) => Assert.Contains(Enumerable.Range(1, Hunts), seed => Live(seed, bug) is not null);

    [Fact]
    public void A_history_follows_from_its_seed() => Assert.Equal(Trace(17), Trace(17));

    private static string Trace(int seed)
    {
        using var world = new World(seed, Planted.None);
        var office = new SimulatedOffice(world);
        Happen(world, office);
        return string.Join('\n', office.Documents.Values.Select(d => SimulatedOffice.Text(d.Document)));
    }

    // What is broken; null where nothing is.
    private static string? Live(int seed, Planted bug)
    {
        using var world = new World(seed, bug);
        var office = new SimulatedOffice(world);
        try
        {
            var devices = Happen(world, office);
            return Broken(world, office, devices);
        }
        catch (BrokenException e)
        {
            return e.Message;
        }
    }

    private static List<Device> Happen(World world, SimulatedOffice office)
    {
        World.Begin();
        var random = world.Random;
        var devices = new List<Device>();
        var tabs = new List<Tab>();
        for (var i = 0; i < 2 + random.Next(3); i++)
        {
            devices.Add(new Device(world, office, Authors[i], Skew(random)));
            if (random.Next(2) == 0)
            {
                devices[^1].Tabs.Add(devices[^1].Open());
            }
        }

        // In every third history somebody puts an old copy of the office in place.
        var (copied, restored) = random.Next(3) == 0 ? (random.Next(Actions / 2), random.Next(Actions / 2, Actions)) : (-1, -1);
        for (var i = 0; i < Actions; i++)
        {
            if (i == copied)
            {
                office.Copy();
            }
            else if (i == restored)
            {
                office.Restore();
            }

            var device = devices[random.Next(devices.Count)];
            var tab = device.Tabs[random.Next(device.Tabs.Count)];
            tabs.Add(tab);
            switch (random.Next(10))
            {
                case < 4:
                    var changes = Paths.Where(_ => random.Next(3) == 0).Append(Paths[random.Next(Paths.Length)]).Distinct();
                    List<KeyValuePair<string, string>> texts =
                    [
                        .. changes.Select(p => KeyValuePair.Create(p, $"{i} {p} {random.Next(3)}")),
                    ];
                    tab.Doing.Add(tab.Work.SetAsync(Kinds.Kitchen, Ids[random.Next(Ids.Length)], texts));
                    break;
                case < 7:
                    tab.Doing.Add(tab.Synchronizer.RunAsync());
                    break;
                case 7:
                    device.Crash();
                    break;
                case 8:
                    device.Away = !device.Away;
                    break;
                default:
                    world.Pass(random.Next(600_000));
                    break;
            }

            for (var steps = random.Next(12); steps > 0 && world.Pick(); steps--) { }
        }

        // Calm: everybody has a signal, one tab each, and synchronizes until nothing moves any more.
        while (world.Pick()) { }
        world.Troubled = false;
        for (var round = 0; round < 2; round++)
        {
            foreach (var device in devices)
            {
                device.Away = false;
                var last = device.Open();
                tabs.Add(last);
                last.Doing.Add(last.Synchronizer.RunAsync());
                while (world.Pick()) { }
            }
        }

        foreach (var failed in tabs.SelectMany(t => t.Doing).Where(t => t.IsFaulted))
        {
            failed.GetAwaiter().GetResult();
        }

        return devices;
    }

    private static string? Broken(World world, SimulatedOffice office, List<Device> devices)
    {
        if (devices.Exists(d => d.Kept.Waiting > 0))
        {
            return "something waits although everybody has a signal";
        }

        if (office.Restored)
        {
            return BrokenAfterRestoring(world, office, devices);
        }

        if (world.Acknowledged.FirstOrDefault(id => !office.Operations.ContainsKey(id)) is var lost && lost != Guid.Empty)
        {
            return $"acknowledged and not there: {lost}";
        }

        foreach (var (id, saved) in world.Saved)
        {
            if (!office.Operations.TryGetValue(id, out var kept) || Text(kept) != Text(saved))
            {
                return $"saved and not there as it was saved: {id}";
            }
        }

        if (office.Operations.Keys.FirstOrDefault(id => !world.Saved.ContainsKey(id)) is var strange && strange != Guid.Empty)
        {
            return $"there although nobody saved it, or it was replaced before it left: {strange}";
        }

        foreach (var (id, (document, _, versions)) in office.Documents)
        {
            var operations = office.Operations.Values.Where(o => o.DocumentId == id).ToList();
            if (versions != operations.Count)
            {
                return $"{operations.Count} changes, applied {versions} times";
            }

            if (Stands(operations) is var expected && expected != string.Join('|', document.Fields.Select(f => $"{f.Key}={f.Value.Value}")))
            {
                return $"what stands is not the latest: {expected}";
            }

            if (devices.Exists(d => d.Kept.Documents.GetValueOrDefault(id) != SimulatedOffice.Text(document)))
            {
                return $"a device has not come to the same: {id}";
            }
        }

        return null;
    }

    // What was overwritten before the office lost it is nowhere any more; what stood stands again, and everybody sees the same values. Which other value is shown beside one may differ: a device
    // that had it from a fetch that was cut off before the restoration is told of nothing.
    private static string? BrokenAfterRestoring(World world, SimulatedOffice office, List<Device> devices)
    {
        foreach (var group in world.Saved.Values.GroupBy(o => o.DocumentId))
        {
            var stands = office.Documents.TryGetValue(group.Key, out var kept) ? Standing(SimulatedOffice.Text(kept.Document)) : "nothing";
            if (Stands([.. group]) is var expected && expected != stands)
            {
                return $"after the office was put back {stands} stands, not {expected}";
            }

            if (devices.Find(d => Standing(d.Kept.Documents.GetValueOrDefault(group.Key)) != stands) is { } apart)
            {
                return $"a device has not come to the same: {apart.Kept.Documents.GetValueOrDefault(group.Key)} there, {stands} at the office";
            }
        }

        return null;
    }

    private static string Standing(string? document) =>
        document is null
            ? "nothing"
            : string.Join(
                '|',
                JsonSerializer.Deserialize(document, ContractsJson.Default.FieldDocument)!.Fields.Select(f => $"{f.Key}={f.Value.Value}")
            );

    // Worked out from all operations at once, not joined one by one.
    private static string Stands(List<Operation> operations) =>
        string.Join(
            '|',
            operations
                .SelectMany(o => o.Fields!.Select(f => (f.Path, f.Order, o.Id, f.Value)))
                .GroupBy(f => f.Path, StringComparer.Ordinal)
                .OrderBy(g => g.Key, StringComparer.Ordinal)
                .Select(g => $"{g.Key}={g.OrderBy(f => f.Order).ThenBy(f => f.Id).Last().Value}")
        );

    private static string Text(Operation operation) => JsonSerializer.Serialize(operation, ContractsJson.Default.Operation);

    // Right, minutes off, or years off.
    private static TimeSpan Skew(Random random) =>
        random.Next(4) switch
        {
            0 => TimeSpan.Zero,
            1 => TimeSpan.FromDays(random.Next(-2000, 2000)),
            _ => TimeSpan.FromSeconds(random.Next(-900, 900)),
        };
}
