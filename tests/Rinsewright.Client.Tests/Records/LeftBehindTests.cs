using Rinsewright.Client.Kitchens;
using Rinsewright.Client.Machines;
using Rinsewright.Client.Records;
using Rinsewright.Client.Shell;
using Rinsewright.Client.Visits;
using Rinsewright.Contracts.Records;
using Rinsewright.Engine.Machines;
using Xunit;

namespace Rinsewright.Client.Tests.Records;

/// <summary>A page closed while a slow device still writes: what it leaves is all that is not written, and the next page writes that and nothing older than what stands.</summary>
public sealed class LeftBehindTests
{
    private readonly MemoryStore store = new();
    private readonly Preferences preferences = new(new MemoryDevice());
    private readonly Work work;

    /// <summary>Everything in memory.</summary>
    public LeftBehindTests() => work = new Work(store, preferences, TimeProvider.System);

    /// <summary>Of a visit; it is to be judged when it is opened.</summary>
    [Fact]
    public async Task What_a_visit_had_not_written_is_written_by_the_next_page()
    {
        var shelf = new VisitShelf(work, new MachineShelf(store, work), preferences, TimeProvider.System);
        var machine = Guid.CreateVersion7();
        await new MachineShelf(store, work).SaveAsync(machine, TypicalMachines.Of(MachineKind.DoorHotWater));
        var id = (await shelf.BeginAsync(machine))!.Value;
        var visit = new VisitWork(shelf, VisitWork.BuiltIn(), (await shelf.OpenAsync(id))!, () => preferences.Words, TimeProvider.System);
        await visit.ChangeAsync(d => d with { Technician = "Ines Calloway" });
        Assert.Null(work.Leave());

        var (next, there) = Next();
        var held = new TaskCompletionSource();
        store.Held = held.Task;
        _ = visit.ChangeAsync(d => d with { Complaint = "film" });
        var changing = visit.ChangeAsync(d => d with { Complaint = "film on plates" });
        Assert.True(await next.RegainAsync(work.Leave()!));
        var opened = (await new VisitShelf(next, new MachineShelf(there, next), preferences, TimeProvider.System).OpenAsync(id))!;
        Assert.Equal(("Ines Calloway", "film on plates"), (opened.Technician, opened.Complaint));
        Assert.True(await next.IsUnjudgedAsync(id));
        held.SetResult();
        await changing;
        Assert.Null(work.Leave());
    }

    /// <summary>Of a kitchen; what was typed elsewhere after it was left stands.</summary>
    [Fact]
    public async Task What_was_left_is_not_written_over_what_was_typed_since()
    {
        var id = Guid.CreateVersion7();
        await work.SetAsync(Kinds.Kitchen, id, KitchenPaths.Name, "Larkspur Lodge");
        var (next, _) = Next();
        var editor = new FieldEditor(work);
        await editor.OpenAsync(id);
        var held = new TaskCompletionSource();
        store.Held = held.Task;
        var typing = editor.TypeAsync(KitchenPaths.Note, "ring at the dock");
        _ = editor.TypeAsync(KitchenPaths.Hours, "2 to 4 pm");
        var left = work.Leave()!;
        held.SetResult();
        await typing;
        Assert.Null(work.Leave());

        await Task.Delay(5, TestContext.Current.CancellationToken); // a later place in the order of changes
        await next.SetAsync(Kinds.Kitchen, id, KitchenPaths.Note, "ask the steward");
        Assert.True(await next.RegainAsync(left));
        var kitchen = (await next.OpenFieldsAsync(id))!;
        Assert.Equal(("ask the steward", "2 to 4 pm"), (kitchen[KitchenPaths.Note], kitchen[KitchenPaths.Hours]));
    }

    /// <summary>Typed under another account it waits for that one; a device that is full does not take it.</summary>
    [Fact]
    public async Task What_cannot_be_written_now_stays_left()
    {
        var id = Guid.CreateVersion7();
        await work.SetAsync(Kinds.Kitchen, id, KitchenPaths.Name, "Larkspur Lodge");
        var (next, there) = Next();
        var editor = new FieldEditor(work);
        await editor.OpenAsync(id);
        store.Full = true;
        await editor.TypeAsync(KitchenPaths.Note, "ring at the dock");
        var left = work.Leave()!;

        there.Full = true;
        Assert.False(await next.RegainAsync(left));
        there.Full = false;
        await preferences.ChangeAsync(s => s with { Account = Guid.CreateVersion7() });
        Assert.False(await next.RegainAsync(left));
        Assert.Equal("", (await next.OpenFieldsAsync(id))![KitchenPaths.Note]);
        await preferences.ChangeAsync(s => s with { Account = null });
        Assert.True(await next.RegainAsync(left));
        Assert.Equal("ring at the dock", (await next.OpenFieldsAsync(id))![KitchenPaths.Note]);
    }

    // Another page over what is written by now.
    private (Work Work, MemoryStore Store) Next()
    {
        var there = new MemoryStore();
        foreach (var (id, document) in store.Documents)
        {
            (there.Documents[id], there.Lines[id]) = (document, store.Lines[id]);
        }

        return (new Work(there, preferences, TimeProvider.System), there);
    }
}
