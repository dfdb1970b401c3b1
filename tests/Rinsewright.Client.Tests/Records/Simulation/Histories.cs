using Rinsewright.Contracts.Records;
using Rinsewright.Contracts.Sanitization;
using Rinsewright.Contracts.Visits;

namespace Rinsewright.Client.Tests.Records.Simulation;

/// <summary>One invented history: what people do on their devices, what happens to devices, network and office, and the calm after it.</summary>
internal static class Histories
{
    private const int Actions = 45;
    private static readonly string[] Authors = ["Ines Calloway", "Bram Oakes", "Noor Vance", "office"];

    // Two kitchens, a machine, a visit: each with some of its own fields. The last of each is one that only the later program writes.
    private static readonly (Guid Id, string Kind, string[] Paths)[] OfFields =
    [
        (Id('a'), Kinds.Kitchen, [KitchenPaths.Name, KitchenPaths.Note, "water.a.hardness", "water.a.silica"]),
        (Id('b'), Kinds.Kitchen, [KitchenPaths.Name, KitchenPaths.Note, "water.a.hardness", "water.a.silica"]),
        (Id('c'), Kinds.Machine, [MachinePaths.Name, "readings.x", MachinePaths.Photograph, "drums.a.lot"]),
        (
            Id('d'),
            Kinds.Visit,
            [VisitPaths.Standing, VisitPaths.Record + "readings", VisitPaths.Record + "three", VisitPaths.Record + "sound"]
        ),
    ];

    private static readonly Guid[] Proofs = [Id('e'), Id('f')];

    /// <summary>Whether a document is a proof.</summary>
    public static bool IsProof(Guid id) => Proofs.Contains(id);

    /// <summary>Lets it happen; the devices as they are in the end.</summary>
    public static List<Device> Happen(World world, SimulatedOffice office)
    {
        World.Begin();
        var random = world.Random;
        var devices = new List<Device>();
        var tabs = new List<Tab>();
        for (var i = 0; i < 2 + random.Next(3); i++)
        {
            devices.Add(new Device(world, office, Authors[i], Skew(random), old: random.Next(3) == 0));
            if (random.Next(2) == 0)
            {
                devices[^1].Tabs.Add(devices[^1].Open());
            }
        }

        // In every third history somebody puts an old copy of the office in place.
        var (copied, restored) = random.Next(3) == 0 ? (random.Next(Actions / 2), random.Next(Actions / 2, Actions)) : (-1, -1);
        var lost = random.Next(4) == 0 ? random.Next(Actions) : -1;
        for (var i = 0; i < Actions; i++)
        {
            if (i == lost)
            {
                office.LoseFiles();
            }

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
            Act(world, device, tab, i);
            for (var steps = random.Next(12); steps > 0 && world.Pick(); steps--) { }
        }

        Calm(world, devices, tabs);
        foreach (var failed in tabs.SelectMany(t => t.Doing).Where(t => t.IsFaulted))
        {
            failed.GetAwaiter().GetResult();
        }

        return devices;
    }

    private static void Act(World world, Device device, Tab tab, int i)
    {
        var random = world.Random;
        switch (random.Next(12))
        {
            case < 4:
                var (id, kind, all) = OfFields[random.Next(OfFields.Length)];
                var paths = all[..^(tab.Program.Newest > 1 ? 0 : 1)];
                var changes = paths.Where(_ => random.Next(3) == 0).Append(paths[random.Next(paths.Length)]).Distinct();
                List<KeyValuePair<string, string>> texts = [.. changes.Select(p => KeyValuePair.Create(p, $"{i} {p} {random.Next(3)}"))];
                tab.Doing.Add(tab.Work.SetAsync(kind, id, texts));
                break;
            case < 6:
                var proof = Proofs[random.Next(Proofs.Length)];
                tab.Doing.Add(
                    random.Next(8) == 0 ? tab.Work.DeleteAsync(proof) : ProveAsync(tab, proof, i, $"{world.NewId():n}{world.NewId():n}")
                );
                break;
            case < 9:
                tab.Doing.Add(tab.Synchronizer.RunAsync());
                break;
            case 9:
                device.Crash();
                break;
            case 10:
                device.Away = !device.Away;
                break;
            default:
                world.Pass(random.Next(600_000));
                if (device.Old && random.Next(2) == 0)
                {
                    device.Upgrade();
                }

                break;
        }
    }

    // A logger's file is kept first; then the proof that names it is saved: a new one, or the one that is there judged again.
    private static async Task ProveAsync(Tab tab, Guid id, int i, string sha256)
    {
        await ((SteppedStore)tab.Store).KeepFileAsync(sha256);
        var now = await tab.Work.OpenAsync(id) ?? Proof(id);
        var (version, note) = tab.Program.Newest > 1 ? (2, $"limescale, {i}") : (now.Version, now.Note);
        await tab.Work.SaveAsync(
            now with
            {
                Kitchen = $"Larkspur {i}",
                Version = version,
                Note = note,
                Files = [.. now.Files.TakeLast(1), new FileReference(sha256, $"plate-{i}.csv", 3)],
            }
        );
    }

    // Everybody has a signal, one tab each, and synchronizes until nothing moves any more.
    private static void Calm(World world, List<Device> devices, List<Tab> tabs)
    {
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
    }

    /// <summary>An invented proof with everything a document must have.</summary>
    public static ProofDocument Proof(Guid id) =>
        new(
            id,
            1,
            "Larkspur",
            "Two-tank rack conveyor",
            "Ines Calloway",
            new DateTimeOffset(2026, 11, 20, 9, 0, 0, TimeSpan.Zero),
            new ProofRequest(),
            new ProofReport(
                ProofReport.CurrentSchema,
                null,
                0,
                0,
                [],
                [],
                [],
                [],
                [],
                [],
                "undetermined",
                [],
                [],
                [],
                [],
                new TermsDto(
                    "multitankConveyor",
                    "hotWater",
                    "fda-food-code",
                    "FDA Food Code",
                    "2022",
                    null,
                    new AmountDto(3, "[degF]"),
                    false,
                    null,
                    null
                )
            ),
            []
        );

    private static Guid Id(char last) => new($"00000000-0000-7000-8000-00000000000{last}");

    // Right, minutes off, or years off.
    private static TimeSpan Skew(Random random) =>
        random.Next(4) switch
        {
            0 => TimeSpan.Zero,
            1 => TimeSpan.FromDays(random.Next(-2000, 2000)),
            _ => TimeSpan.FromSeconds(random.Next(-900, 900)),
        };
}
