using System.Text.Json;
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

    /// <summary>The day and prices of a machine's site; with a value, keeps it first.</summary>
    public async Task<SitePrices> PricesAsync(Guid id, SitePrices? value = null)
    {
        if (value is not null)
        {
            await store.MarkAsync("prices-" + id, JsonSerializer.Serialize(value, ClientJson.Default.SitePrices));
            return value;
        }

        var text = await store.MarkAsync("prices-" + id);
        return text is { Length: > 0 }
            ? JsonSerializer.Deserialize(text, ClientJson.Default.SitePrices) ?? new SitePrices()
            : new SitePrices();
    }

    /// <summary>Readings of a machine, the earliest first.</summary>
    public async Task<IReadOnlyList<KeptReading>> ReadingsAsync(Guid id) =>
        await store.MarkAsync("readings-" + id) is { Length: > 0 } text
            ? JsonSerializer.Deserialize(text, ClientJson.Default.IReadOnlyListKeptReading) ?? []
            : [];

    /// <summary>Keeps the readings of a machine.</summary>
    public Task KeepReadingsAsync(Guid id, IReadOnlyList<KeptReading> readings) =>
        store.MarkAsync("readings-" + id, JsonSerializer.Serialize(readings, ClientJson.Default.IReadOnlyListKeptReading));

    /// <summary>Photograph of a machine's plate, as the address of an image; null where there is none.</summary>
    public async Task<string?> PhotographAsync(Guid id) =>
        await store.MarkAsync("photograph-" + id) is { Length: > 0 } address ? address : null;

    /// <summary>Keeps a photograph; empty takes it away.</summary>
    public Task KeepPhotographAsync(Guid id, string address) => store.MarkAsync("photograph-" + id, address);

    private async Task<IReadOnlyList<Guid>> IdsAsync() =>
        [
            .. (await store.MarkAsync(Index) ?? "")
                .Split('\n')
                .Select(t => Guid.TryParse(t, out var id) ? id : Guid.Empty)
                .Where(id => id != Guid.Empty),
        ];
}
