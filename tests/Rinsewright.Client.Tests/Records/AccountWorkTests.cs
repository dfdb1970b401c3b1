using System.Text.Json;
using Rinsewright.Client.Records;
using Rinsewright.Client.Shell;
using Rinsewright.Contracts;
using Rinsewright.Contracts.Accounts;
using Rinsewright.Contracts.Records;
using Xunit;

namespace Rinsewright.Client.Tests.Records;

/// <summary>A device whose person has an account: what is kept names it, waits where nobody is signed in, and is not written over by another person's.</summary>
public sealed class AccountWorkTests
{
    private static readonly Guid Kitchen = new("01993a00-0001-7000-8000-7a6d617261c1");
    private static readonly Guid Ines = new("01993a00-0001-7000-8000-0000000000a1");
    private static readonly Guid Bram = new("01993a00-0001-7000-8000-0000000000a2");

    [Fact]
    public async Task Nothing_is_lost_where_the_office_wants_a_sign_in_and_it_goes_on_afterwards()
    {
        var (work, store, preferences) = await MadeAsync(Ines, Roles.Technician);
        var office = new MemoryOffice { Status = 401 };
        var synchronizer = new Synchronizer(store, office, work, preferences, TimeProvider.System);
        await work.SetAsync(Kinds.Kitchen, Kitchen, KitchenPaths.Name, "Larkspur Lodge");
        await synchronizer.RunAsync();
        Assert.Equal((true, false, 1), (synchronizer.NeedsSignIn, synchronizer.Reached, work.Waiting));
        Assert.Empty(synchronizer.Refused);
        office.Status = 200;
        await synchronizer.RunAgainAsync();
        Assert.Equal((false, true, 0), (synchronizer.NeedsSignIn, synchronizer.Reached, work.Waiting));
        Assert.Equal(Ines, Assert.Single(office.Kept).Account);
    }

    [Fact]
    public async Task What_one_person_typed_is_not_replaced_by_what_the_next_types()
    {
        var (work, store, preferences) = await MadeAsync(Ines, Roles.Technician);
        await work.SetAsync(Kinds.Kitchen, Kitchen, KitchenPaths.Name, "Larkspur");
        await preferences.ChangeAsync(s => s with { Account = Bram });
        await work.SetAsync(Kinds.Kitchen, Kitchen, KitchenPaths.Name, "Larkspur Lodge");
        Assert.Equal([Ines, Bram], (await WaitingAsync(store)).Select(o => o.Account!.Value));
    }

    [Fact]
    public async Task An_account_that_only_looks_writes_nothing_and_still_takes_in()
    {
        var (work, store, _) = await MadeAsync(Ines, Roles.Kitchen);
        await work.SetAsync(Kinds.Kitchen, Kitchen, KitchenPaths.Name, "Not mine");
        await work.DeleteAsync(Guid.CreateVersion7());
        Assert.Empty(store.Documents);
        Assert.Equal(0, work.Waiting);
        var document = FieldDocument.Empty(Kitchen, Kinds.Kitchen);
        document = document.With(
            document.Write(Guid.CreateVersion7(), [new(KitchenPaths.Name, "Larkspur")], "Bram Oakes", "tablet", DateTimeOffset.UtcNow)!
        );
        await work.TakeOneOverAsync(
            new Change(Kitchen, Kinds.Kitchen, "put", DateTimeOffset.UtcNow, "Bram Oakes", false, 1, null, document)
        );
        Assert.Equal("Larkspur", (await work.SetAsync(Kinds.Kitchen, Kitchen, KitchenPaths.Name, "Mine"))[KitchenPaths.Name]);
        Assert.Equal("Larkspur", (await work.OpenFieldsAsync(Kitchen))![KitchenPaths.Name]);
    }

    [Fact]
    public async Task An_account_that_may_not_send_keeps_what_waits_and_fetches()
    {
        var (work, store, preferences) = await MadeAsync(Ines, Roles.Technician);
        await work.SetAsync(Kinds.Kitchen, Kitchen, KitchenPaths.Name, "Larkspur");
        var office = new MemoryOffice { Status = 403 };
        var synchronizer = new Synchronizer(store, office, work, preferences, TimeProvider.System);
        await synchronizer.RunAsync();
        Assert.Equal((false, true, 1), (synchronizer.NeedsSignIn, synchronizer.Reached, work.Waiting));
    }

    private static async Task<(Work Work, MemoryStore Store, Preferences Preferences)> MadeAsync(Guid account, string role)
    {
        var preferences = new Preferences(new MemoryDevice());
        await preferences.LoadAsync();
        await preferences.ChangeAsync(s => s with { Account = account, Role = role, Technician = "Ines Calloway" });
        var store = new MemoryStore();
        return (new Work(store, preferences, TimeProvider.System), store, preferences);
    }

    private static async Task<IReadOnlyList<Operation>> WaitingAsync(MemoryStore store) =>
        JsonSerializer.Deserialize(await store.TakeAsync(9), ContractsJson.Default.IReadOnlyListOperation)!;
}
