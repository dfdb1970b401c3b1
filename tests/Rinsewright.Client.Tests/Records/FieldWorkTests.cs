using System.Text.Json;
using Rinsewright.Client.Records;
using Rinsewright.Client.Shell;
using Rinsewright.Contracts;
using Rinsewright.Contracts.Records;
using Xunit;

namespace Rinsewright.Client.Tests.Records;

/// <summary>Kitchens and machines on one device: kept with the operation that sends them, what is typed goes out once, a backup brings everything back.</summary>
public sealed class FieldWorkTests
{
    private static readonly Guid Id = new("01993a00-0001-7000-8000-7a6d617261c1");

    [Fact]
    public async Task What_is_typed_goes_out_once_and_what_stood_longer_stays_in_the_history()
    {
        var clock = new SetClock();
        var (work, store) = Made(clock);
        foreach (var text in new[] { "L", "La", "Larkspur" })
        {
            await work.SetAsync(Kinds.Kitchen, Id, KitchenPaths.Name, text);
            clock.Now += TimeSpan.FromMilliseconds(400);
        }

        Assert.Equal("Larkspur", Assert.Single(Sent(await store.TakeAsync(8))).Fields!.Single().Value);
        await work.SetAsync(Kinds.Kitchen, Id, KitchenPaths.Name, "Larkspur L"); // the first is on its way: this one queues behind it
        clock.Now += TimeSpan.FromMinutes(5);
        await work.SetAsync(Kinds.Kitchen, Id, KitchenPaths.Name, "Larkspur Lodge");
        Assert.Equal(["Larkspur", "Larkspur L", "Larkspur Lodge"], Sent(await store.TakeAsync(8)).Select(o => o.Fields!.Single().Value));
        Assert.Equal("Larkspur Lodge", (await work.OpenFieldsAsync(Id))![KitchenPaths.Name]);
        Assert.Equal("Larkspur Lodge", Assert.Single(await work.LinesAsync(Kinds.Kitchen)).Name);
    }

    [Fact]
    public async Task What_the_office_has_is_joined_while_a_change_made_here_still_waits()
    {
        var (work, store) = Made(new SetClock());
        await work.SetAsync(Kinds.Kitchen, Id, KitchenPaths.Note, "ring at the dock");
        var office = FieldDocument.Empty(Id, Kinds.Kitchen);
        office = office.With(
            office.Write(Guid.CreateVersion7(), [new(KitchenPaths.Hours, "2 to 4 pm")], "Bram Oakes", "tablet", SetClock.Start)!
        );
        await work.TakeOneOverAsync(new Change(Id, Kinds.Kitchen, "put", SetClock.Start, "Bram Oakes", false, 1, null, office));
        var here = (await work.OpenFieldsAsync(Id))!;
        Assert.Equal(("ring at the dock", "2 to 4 pm"), (here[KitchenPaths.Note], here[KitchenPaths.Hours]));
        Assert.Equal(1, await store.WaitingAsync());
    }

    [Fact]
    public async Task Day_finds_what_is_due_without_opening_the_kitchen()
    {
        var (work, _) = Made(new SetClock());
        await work.SetAsync(
            Kinds.Kitchen,
            Id,
            [
                new(KitchenPaths.Name, "Larkspur Lodge"),
                new(KitchenPaths.NextVisit, "2026-12-03"),
                new("followUps.a.what", "delime"),
                new("followUps.a.due", "2026-12-09"),
                new("followUps.b.what", "strips"),
                new("followUps.b.due", "2026-12-01"),
                new("followUps.c.what", "done already"),
                new("followUps.c.due", "2026-11-01"),
                new("followUps.c.done", FieldDocument.Yes),
            ]
        );
        var line = Assert.Single(await work.LinesAsync(Kinds.Kitchen));
        Assert.Equal((new DateOnly(2026, 12, 1), new DateOnly(2026, 12, 3), 2), (line.Due, line.NextVisit, line.Open));
        await work.SetAsync(Kinds.Kitchen, Id, FieldDocument.DeletedPath, FieldDocument.Yes);
        Assert.Empty(await work.LinesAsync(Kinds.Kitchen));
    }

    [Fact]
    public async Task A_backup_brings_kitchens_and_machines_to_an_empty_device_and_overwrites_nothing_newer()
    {
        var clock = new SetClock();
        var (work, store) = Made(clock);
        var machine = Guid.CreateVersion7();
        await work.SetAsync(Kinds.Kitchen, Id, [new(KitchenPaths.Name, "Larkspur"), new(KitchenPaths.Note, "dock")]);
        await work.SetAsync(Kinds.Machine, machine, [new(MachinePaths.Name, "Banquet"), new(MachinePaths.Kitchen, Id.ToString())]);
        string[] documents = [.. store.Documents.Values];

        var (empty, emptyStore) = Made(clock);
        var result = await Backup.ImportAsync(new BackupContent(BackupHead.CurrentSchema, documents, 0, 0), empty);
        Assert.Equal((2, 0, 0), (result!.Added, result.Kept, result.Refused));
        foreach (var (id, json) in store.Documents)
        {
            var there = JsonSerializer.Deserialize(emptyStore.Documents[id], ContractsJson.Default.FieldDocument)!;
            var here = JsonSerializer.Deserialize(json, ContractsJson.Default.FieldDocument)!;
            Assert.Equal(
                here.Fields.Select(f => (f.Key, f.Value.Value, f.Value.Order)),
                there.Fields.Select(f => (f.Key, f.Value.Value, f.Value.Order))
            );
        }

        Assert.Equal(2, await emptyStore.WaitingAsync()); // and it reaches the office from there
        Assert.All(Sent(await emptyStore.TakeAsync(8)), o => Assert.Null(FieldCheck.Fault(o)));

        clock.Now += TimeSpan.FromMinutes(10);
        await work.SetAsync(Kinds.Kitchen, Id, KitchenPaths.Name, "Larkspur Lodge");
        result = await Backup.ImportAsync(new BackupContent(BackupHead.CurrentSchema, [.. documents, "{}"], 0, 0), work);
        Assert.Equal((0, 2, 1), (result!.Added, result.Kept, result.Refused));
        Assert.Equal("Larkspur Lodge", (await work.OpenFieldsAsync(Id))![KitchenPaths.Name]);
    }

    [Fact]
    public async Task What_a_full_device_could_not_take_in_from_a_backup_is_not_called_brought_in()
    {
        var (work, store) = Made(new SetClock());
        await work.SetAsync(Kinds.Kitchen, Id, KitchenPaths.Name, "Larkspur");
        string[] documents = [.. store.Documents.Values];
        var (full, fullStore) = Made(new SetClock());
        fullStore.Full = true;
        var result = await Backup.ImportAsync(new BackupContent(BackupHead.CurrentSchema, documents, 0, 0), full);
        Assert.Equal(new BackupResult(0, 0, 1), result);
        Assert.Contains("no room", full.Trouble, StringComparison.Ordinal);
        Assert.Empty(fullStore.Documents);

        fullStore.Full = false;
        result = await Backup.ImportAsync(new BackupContent(BackupHead.CurrentSchema, documents, 0, 0), full);
        Assert.Equal(new BackupResult(1, 0, 0), result);
        Assert.Null(full.Trouble);
    }

    private static (Work, MemoryStore) Made(TimeProvider clock)
    {
        var store = new MemoryStore();
        return (new Work(store, new Preferences(new MemoryDevice()), clock), store);
    }

    private static IReadOnlyList<Operation> Sent(string json) =>
        JsonSerializer.Deserialize(json, ContractsJson.Default.IReadOnlyListOperation)!;

    private sealed class SetClock : TimeProvider
    {
        public static readonly DateTimeOffset Start = new(2026, 11, 20, 9, 30, 0, TimeSpan.Zero);

        public DateTimeOffset Now { get; set; } = Start;

        public override TimeZoneInfo LocalTimeZone => TimeZoneInfo.Utc;

        public override DateTimeOffset GetUtcNow() => Now;
    }
}
