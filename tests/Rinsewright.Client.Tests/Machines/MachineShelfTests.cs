using Rinsewright.Client.Machines;
using Rinsewright.Client.Records;
using Rinsewright.Client.Shell;
using Rinsewright.Client.Tests.Records;
using Rinsewright.Contracts.Machines;
using Rinsewright.Contracts.Records;
using Rinsewright.Engine.Machines;
using Xunit;

namespace Rinsewright.Client.Tests.Machines;

/// <summary>Machines as documents, and those of an older version carried over.</summary>
public sealed class MachineShelfTests
{
    [Fact]
    public async Task Machines_of_an_older_version_are_carried_over_once_with_everything_that_was_known()
    {
        var store = new MemoryStore();
        var (a, b, broken) = (Guid.CreateVersion7(), Guid.CreateVersion7(), Guid.CreateVersion7());
        var setUp = new SetUp("tank-dosing", new DateOnly(2026, 11, 3), "Ines Calloway", [], [], []);
        var larkspur = TypicalMachines.Of(MachineKind.RackConveyorTwoTank) with
        {
            Name = "Banquet",
            Kitchen = "Larkspur Lodge",
            SetUps = [setUp],
        };
        await store.MarkAsync("machines", $"{a}\n{b}\n{broken}");
        await store.MarkAsync("machine-" + a, MachineFile.Write(larkspur));
        await store.MarkAsync(
            "machine-" + b,
            MachineFile.Write(TypicalMachines.Of(MachineKind.Flight) with { Kitchen = "LARKSPUR lodge" })
        );
        await store.MarkAsync("machine-" + broken, "{ not a machine");
        await store.MarkAsync("prices-" + a, """{"racks":400}""");
        await store.MarkAsync(
            "readings-" + a,
            """[{"kind":"finalRinseTemperature","value":{"value":171,"unit":"[degF]"},"on":"2026-11-03"},{"kind":"finalRinseTemperature","value":{"value":182,"unit":"[degF]"},"on":"2026-11-01"}]"""
        );

        for (var start = 0; start < 2; start++) // and a second start changes nothing
        {
            var (shelf, work) = Made(store);
            Assert.Equal(3, (await shelf.LinesAsync()).Count);
            var machine = (await shelf.OpenAsync(a))!;
            Assert.Equal(MachineFile.Write(larkspur), MachineFile.Write(machine));
            Assert.Equal(400, (await shelf.PricesAsync(a)).Racks);
            Assert.Equal([182, 171], (await shelf.ReadingsAsync(a)).Select(r => r.Value.Value));
            Assert.Equal("{ not a machine", (await work.OpenFieldsAsync(broken))![MachinePaths.Description]);

            // Both stand in one kitchen, made of the name.
            var kitchen = Assert.Single(await work.LinesAsync(Kinds.Kitchen));
            Assert.Equal((kitchen.Id, kitchen.Id), ((await shelf.KitchenAsync(a))!.Value, (await shelf.KitchenAsync(b))!.Value));
            Assert.Equal(4, await store.WaitingAsync()); // three machines and a kitchen go to the office, once
        }
    }

    [Fact]
    public async Task Set_ups_and_readings_added_on_two_devices_both_stay()
    {
        var store = new MemoryStore();
        var (shelf, work) = Made(store);
        var id = Guid.CreateVersion7();
        var machine = TypicalMachines.Of(MachineKind.DoorChemical) with { Name = "Bell" };
        await shelf.SaveAsync(id, machine);
        var before = (await work.OpenFieldsAsync(id))!;
        var one = new SetUp("tank-dosing", new DateOnly(2026, 11, 3), "Ines Calloway", [], [], []);
        await shelf.SaveAsync(id, machine with { SetUps = [one] });

        // A colleague's device, from the same beginning.
        var otherStore = new MemoryStore();
        var (otherShelf, otherWork) = Made(otherStore);
        await otherWork.TakeOneOverAsync(new Change(id, Kinds.Machine, "put", before.Fields["name"].At, "", false, 1, null, before));
        await otherShelf.SaveAsync(id, machine with { SetUps = [one with { By = "Bram Oakes", On = new DateOnly(2026, 11, 4) }] });
        var theirs = (await otherWork.OpenFieldsAsync(id))!;
        await work.TakeOneOverAsync(new Change(id, Kinds.Machine, "put", before.Fields["name"].At, "", false, 2, null, theirs));
        Assert.Equal(["Ines Calloway", "Bram Oakes"], (await shelf.OpenAsync(id))!.SetUps.Select(s => s.By));

        await shelf.DeleteAsync(id);
        Assert.Empty(await shelf.LinesAsync());
        Assert.Null(await shelf.OpenAsync(id));
        await work.SetAsync(Kinds.Machine, id, FieldDocument.DeletedPath, "");
        Assert.Equal(2, (await shelf.OpenAsync(id))!.SetUps.Count);
    }

    [Fact]
    public async Task A_plates_photograph_is_a_field_of_the_machine_and_an_earlier_one_stays_until_it_is_carried_over()
    {
        var store = new MemoryStore();
        var (shelf, work) = Made(store);
        var id = Guid.CreateVersion7();
        await shelf.SaveAsync(id, TypicalMachines.Of(MachineKind.DoorChemical));
        await store.MarkAsync("photograph-" + id, "data:image/jpeg;base64,AAAA");
        Assert.Null(await shelf.PhotographAsync(id));
        Assert.Equal("data:image/jpeg;base64,AAAA", await shelf.OldPhotographAsync(id));

        await shelf.KeepPhotographAsync(id, "ab");
        await shelf.OldPhotographAsync(id, "");
        Assert.Equal(("ab", null), (await shelf.PhotographAsync(id), await shelf.OldPhotographAsync(id)));
        Assert.Equal("ab", (await work.OpenFieldsAsync(id))![MachinePaths.Photograph]); // and so it is sent
        await shelf.KeepPhotographAsync(id, "");
        Assert.Equal("", await shelf.PhotographAsync(id)); // removed, not never there
    }

    [Fact]
    public async Task A_reading_taken_out_goes_and_one_that_came_meanwhile_stays()
    {
        var (shelf, work) = Made(new MemoryStore());
        var id = Guid.CreateVersion7();
        KeptReading Read(double value) => new("finalRinseTemperature", new AmountDto(value, "[degF]"), new DateOnly(2026, 11, 3));
        await shelf.KeepReadingsAsync(id, [Read(171), Read(180)]);
        var seen = await shelf.ReadingsAsync(id);
        await shelf.KeepReadingsAsync(id, [.. seen, Read(182)]); // from elsewhere
        await shelf.KeepReadingsAsync(id, [Read(180), Read(184)], seen);
        Assert.Equal([180, 182, 184], (await shelf.ReadingsAsync(id)).Select(r => r.Value.Value).Order());
        Assert.Contains((await work.OpenFieldsAsync(id))!.Fields.Values, f => f.Value.Length == 0); // taken out, with a trace
    }

    // An earlier program wrote a reading with what it means for the engine beside it, under a key of that text.
    [Fact]
    public async Task A_reading_an_earlier_program_wrote_is_there_once_and_can_be_taken_out()
    {
        var (shelf, work) = Made(new MemoryStore());
        var id = Guid.CreateVersion7();
        static string Older(int value) =>
            $$$"""{"kind":"finalRinseTemperature","value":{"value":{{{value}}},"unit":"[degF]"},"on":"2026-11-03","plain":{"kind":"finalRinseTemperature"}}""";
        await work.SetAsync(Kinds.Machine, id, "readings.one", Older(171));
        await work.SetAsync(Kinds.Machine, id, "readings.two", Older(180));
        var seen = await shelf.ReadingsAsync(id);
        await shelf.KeepReadingsAsync(
            id,
            [.. seen, new("finalRinseTemperature", new AmountDto(182, "[degF]"), new DateOnly(2026, 11, 4))],
            seen
        );
        Assert.Equal([171, 180, 182], (await shelf.ReadingsAsync(id)).Select(r => r.Value.Value).Order());

        // A colleague's older program sends one of them again.
        await work.SetAsync(Kinds.Machine, id, "readings.three", Older(180));
        seen = await shelf.ReadingsAsync(id);
        Assert.Equal([171, 180, 182], seen.Select(r => r.Value.Value).Order());

        await shelf.KeepReadingsAsync(id, [.. seen.Where(r => r.Value.Value != 180)], seen);
        Assert.Equal([171, 182], (await shelf.ReadingsAsync(id)).Select(r => r.Value.Value).Order());
    }

    private static (MachineShelf, Work) Made(MemoryStore store)
    {
        var work = new Work(store, new Preferences(new MemoryDevice()), TimeProvider.System);
        return (new MachineShelf(store, work), work);
    }
}
