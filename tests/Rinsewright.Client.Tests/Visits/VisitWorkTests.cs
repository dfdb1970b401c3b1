using Rinsewright.Client.Kitchens;
using Rinsewright.Client.Machines;
using Rinsewright.Client.Records;
using Rinsewright.Client.Shell;
using Rinsewright.Client.Tests.Records;
using Rinsewright.Client.Visits;
using Rinsewright.Contracts.Records;
using Rinsewright.Contracts.Sanitization;
using Rinsewright.Contracts.Visits;
using Rinsewright.Engine.Machines;
using Xunit;

namespace Rinsewright.Client.Tests.Visits;

/// <summary>The visit and the kitchen on the screen over a device that refuses a write, or is pocketed before what was typed is judged.</summary>
public sealed class VisitWorkTests
{
    private readonly MemoryStore store = new();
    private readonly Preferences preferences = new(new MemoryDevice());
    private readonly Work work;
    private readonly VisitShelf shelf;

    /// <summary>Everything in memory.</summary>
    public VisitWorkTests()
    {
        work = new Work(store, preferences, TimeProvider.System);
        shelf = new VisitShelf(work, new MachineShelf(store, work), preferences, TimeProvider.System);
    }

    /// <summary>What the device did not take is in the next write, though that is of something else.</summary>
    [Fact]
    public async Task A_refused_write_is_in_the_next_one()
    {
        var visit = await BeginAsync();
        store.Full = true;
        await visit.ChangeAsync(d => d with { Technician = "Ines Calloway" });
        Assert.NotNull(work.Trouble);
        store.Full = false;
        await visit.ChangeAsync(d => d with { Complaint = "spots on glasses" });
        var kept = (await shelf.OpenAsync(visit.Document.Id))!;
        Assert.Equal(("Ines Calloway", "spots on glasses"), (kept.Technician, kept.Complaint));
        Assert.Null(work.Trouble);
    }

    /// <summary>The same of a kitchen's fields; what was refused stays on the screen.</summary>
    [Fact]
    public async Task A_refused_field_is_written_with_the_next_one()
    {
        var id = Guid.CreateVersion7();
        await work.SetAsync(Kinds.Kitchen, id, KitchenPaths.Name, "Larkspur Lodge");
        var editor = new FieldEditor(work);
        await editor.OpenAsync(id);
        store.Full = true;
        await editor.TypeAsync(KitchenPaths.Note, "ring at the dock");
        Assert.Equal("ring at the dock", editor[KitchenPaths.Note]);
        store.Full = false;
        await editor.TypeAsync(KitchenPaths.Hours, "2 to 4 pm");
        var kept = (await work.OpenFieldsAsync(id))!;
        Assert.Equal(("ring at the dock", "2 to 4 pm"), (kept[KitchenPaths.Note], kept[KitchenPaths.Hours]));
    }

    /// <summary>A phone pocketed between the last key and its judgement: the visit knows, and keeps what it amounts to when it is opened.</summary>
    [Fact]
    public async Task A_visit_left_before_it_was_judged_is_judged_when_opened()
    {
        var visit = await BeginAsync();
        await visit.ChangeAsync(d => d with { Complaint = "none" });
        var id = visit.Document.Id;
        Assert.False(await shelf.IsUnjudgedAsync(id));
        var before = (await work.OpenFieldsAsync(id))![VisitPaths.Standing];
        Assert.NotEmpty(before);

        // The first write is through, the pause never over: as if the page ended here.
        visit = new VisitWork(shelf, VisitWork.BuiltIn(), (await shelf.OpenAsync(id))!, () => preferences.Words, new StoppedClock());
        _ = visit.ChangeAsync(d =>
            d with
            {
                Readings = [new VisitReadingDto("rd-final-rinse-temp", new AmountDto(150, "[degF]"), "asFound")],
            }
        );
        await Soon.UntilAsync(async () => (await shelf.OpenAsync(id))!.Readings is { Count: 1 });
        Assert.True(await shelf.IsUnjudgedAsync(id));
        var opened = new VisitWork(shelf, VisitWork.BuiltIn(), (await shelf.OpenAsync(id))!, () => preferences.Words, TimeProvider.System);
        opened.Judge();
        await opened.MendAsync();
        Assert.False(await shelf.IsUnjudgedAsync(id));
        Assert.NotEqual(before, (await work.OpenFieldsAsync(id))![VisitPaths.Standing]);
    }

    /// <summary>On a slow device what a visit amounts to comes when what it stands on is written.</summary>
    [Fact]
    public async Task Nothing_is_judged_before_it_is_kept()
    {
        var visit = await BeginAsync();
        visit.Judge();
        var before = visit.Result;
        var held = new TaskCompletionSource();
        store.Held = held.Task;
        var changing = visit.ChangeAsync(d => d with { Complaint = "film on plates" });
        await Task.Delay(600, TestContext.Current.CancellationToken); // past the pause
        Assert.Same(before, visit.Result);
        Assert.True(visit.Judging);
        held.SetResult();
        await changing;
        Assert.NotSame(before, visit.Result);
        Assert.Equal("film on plates", (await shelf.OpenAsync(visit.Document.Id))!.Complaint);
    }

    /// <summary>A page left while a slow device still writes, and come back to: it has all of it.</summary>
    [Fact]
    public async Task A_visit_opened_again_waits_for_its_last_write()
    {
        var visit = await BeginAsync();
        var held = new TaskCompletionSource();
        store.Held = held.Task;
        _ = visit.ChangeAsync(d => d with { Complaint = "film" });
        var changing = visit.ChangeAsync(d => d with { Complaint = "film on plates" });
        var opening = shelf.OpenAsync(visit.Document.Id);
        await Task.Delay(100, TestContext.Current.CancellationToken);
        Assert.False(opening.IsCompleted);
        held.SetResult();
        Assert.Equal("film on plates", (await opening)!.Complaint);
        await changing;
    }

    /// <summary>An impatient second tap begins no second visit; a later one does.</summary>
    [Fact]
    public async Task A_second_tap_begins_no_second_visit()
    {
        var machine = Guid.CreateVersion7();
        await new MachineShelf(store, work).SaveAsync(machine, TypicalMachines.Of(MachineKind.DoorHotWater));
        var held = new TaskCompletionSource();
        store.Held = held.Task;
        var first = shelf.BeginAsync(machine);
        var second = shelf.BeginAsync(machine);
        held.SetResult();
        Assert.NotNull(await first);
        Assert.Null(await second);
        Assert.Single(await shelf.LinesAsync());
        Assert.NotNull(await shelf.BeginAsync(machine));
    }

    private async Task<VisitWork> BeginAsync()
    {
        var machine = Guid.CreateVersion7();
        await new MachineShelf(store, work).SaveAsync(machine, TypicalMachines.Of(MachineKind.DoorHotWater));
        var id = (await shelf.BeginAsync(machine))!.Value;
        return new VisitWork(shelf, VisitWork.BuiltIn(), (await shelf.OpenAsync(id))!, () => preferences.Words, TimeProvider.System);
    }

    // Nothing that waits for it ever goes on.
    private sealed class StoppedClock : TimeProvider
    {
        public override ITimer CreateTimer(TimerCallback callback, object? state, TimeSpan dueTime, TimeSpan period) =>
            System.CreateTimer(callback, state, Timeout.InfiniteTimeSpan, Timeout.InfiniteTimeSpan);
    }
}
