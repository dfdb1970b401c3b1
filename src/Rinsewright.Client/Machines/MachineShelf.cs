using Rinsewright.Client.Records;
using Rinsewright.Contracts.Machines;
using Rinsewright.Engine.Machines;

namespace Rinsewright.Client.Machines;

/// <summary>A machine kept on this device.</summary>
/// <param name="Id">Its id.</param>
/// <param name="Machine">Its description.</param>
public sealed record KeptMachine(Guid Id, Machine Machine);

/// <summary>The machines on this device, each as the text of its machine file. They stay here: nothing sends them to the office yet.</summary>
public sealed class MachineShelf(IDeviceStore store)
{
    private const string Index = "machines";
    private const string Mark = "machine-";

    /// <summary>Every machine, the latest first.</summary>
    public async Task<IReadOnlyList<KeptMachine>> ListAsync()
    {
        List<KeptMachine> machines = [];
        foreach (var id in await IdsAsync())
        {
            if (await OpenAsync(id) is { } machine)
            {
                machines.Add(new KeptMachine(id, machine));
            }
        }

        return machines;
    }

    /// <summary>A machine; null where it is not here or its text cannot be read.</summary>
    public async Task<Machine?> OpenAsync(Guid id) =>
        await store.MarkAsync(Mark + id) is { Length: > 0 } text ? MachineFile.Read(text).Machine : null;

    /// <summary>Keeps a machine.</summary>
    public async Task SaveAsync(Guid id, Machine machine)
    {
        // The text first: an index that names what is not there would be worse than a text nobody names.
        await store.MarkAsync(Mark + id, MachineFile.Write(machine));
        var ids = await IdsAsync();
        if (!ids.Contains(id))
        {
            await store.MarkAsync(Index, string.Join('\n', [id, .. ids]));
        }
    }

    /// <summary>Takes a machine away.</summary>
    public async Task DeleteAsync(Guid id)
    {
        await store.MarkAsync(Index, string.Join('\n', (await IdsAsync()).Where(k => k != id)));
        await store.MarkAsync(Mark + id, "");
    }

    private async Task<IReadOnlyList<Guid>> IdsAsync() =>
        [
            .. (await store.MarkAsync(Index) ?? "")
                .Split('\n')
                .Select(t => Guid.TryParse(t, out var id) ? id : Guid.Empty)
                .Where(id => id != Guid.Empty),
        ];
}
