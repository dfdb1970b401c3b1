using System.Text.Json;
using System.Text.Json.Nodes;
using Rinsewright.Client.Records;
using Rinsewright.Contracts.Machines;
using Rinsewright.Contracts.Records;
using Rinsewright.Engine.Machines;

namespace Rinsewright.Client.Machines;

/// <summary>A machine kept on this device.</summary>
/// <param name="Id">Its id.</param>
/// <param name="Machine">Its description.</param>
public sealed record KeptMachine(Guid Id, Machine Machine);

/// <summary>The machines on this device, each a document of fields that is sent to the office: description, set-ups, readings, prices.</summary>
public sealed class MachineShelf(IDeviceStore store, Work work)
{
    // Where machines lay before they were documents. What is carried over stays there, so that an older version of the program still finds it.
    private const string OldIndex = "machines";
    private const string OldMark = "machine-";
    private const string CarriedMark = "machines-carried";
    private Task? carrying;

    /// <summary>Every machine in one line, by name.</summary>
    public async Task<IReadOnlyList<RecordLine>> LinesAsync()
    {
        await CarriedAsync();
        return await work.LinesAsync(Kinds.Machine);
    }

    /// <summary>Every machine that can be read, by name.</summary>
    public async Task<IReadOnlyList<KeptMachine>> ListAsync()
    {
        List<KeptMachine> machines = [];
        foreach (var line in await LinesAsync())
        {
            if (await OpenAsync(line.Id) is { } machine)
            {
                machines.Add(new KeptMachine(line.Id, machine));
            }
        }

        return machines;
    }

    /// <summary>A machine with its kitchen's name; null where it is not here or its text cannot be read.</summary>
    public async Task<Machine?> OpenAsync(Guid id)
    {
        await CarriedAsync();
        if (await work.OpenFieldsAsync(id) is not { Deleted: false } document || Whole(document) is not { } machine)
        {
            return null;
        }

        return
            Guid.TryParse(document[MachinePaths.Kitchen], out var kitchen)
            && await work.OpenFieldsAsync(kitchen) is { Deleted: false } place
            ? machine with
            {
                Kitchen = place[KitchenPaths.Name],
            }
            : machine;
    }

    /// <summary>The kitchen a machine stands in; null for none.</summary>
    public async Task<Guid?> KitchenAsync(Guid id) =>
        Guid.TryParse((await work.OpenFieldsAsync(id))?[MachinePaths.Kitchen], out var kitchen) ? kitchen : null;

    /// <summary>Puts a machine into a kitchen; null takes it out.</summary>
    public Task PutIntoAsync(Guid id, Guid? kitchen) => work.SetAsync(Kinds.Machine, id, MachinePaths.Kitchen, kitchen?.ToString() ?? "");

    /// <summary>Keeps a machine, and brings it back where it was taken away.</summary>
    /// <param name="id">Its id.</param>
    /// <param name="machine">Its description.</param>
    /// <param name="kitchen">Kitchen it is put into; null leaves it where it is.</param>
    public async Task SaveAsync(Guid id, Machine machine, Guid? kitchen = null)
    {
        await CarriedAsync();
        await KeepAsync(id, machine, kitchen, []);
    }

    /// <summary>Takes a machine away; it stays in the history.</summary>
    public Task DeleteAsync(Guid id) => work.SetAsync(Kinds.Machine, id, FieldDocument.DeletedPath, FieldDocument.Yes);

    /// <summary>The day and prices of a machine's site; with a value, keeps it first.</summary>
    public async Task<SitePrices> PricesAsync(Guid id, SitePrices? value = null)
    {
        if (value is not null)
        {
            await work.SetAsync(Kinds.Machine, id, MachinePaths.Prices, JsonSerializer.Serialize(value, ClientJson.Default.SitePrices));
            return value;
        }

        var text = (await work.OpenFieldsAsync(id))?[MachinePaths.Prices];
        return text is { Length: > 0 }
            ? JsonSerializer.Deserialize(text, ClientJson.Default.SitePrices) ?? new SitePrices()
            : new SitePrices();
    }

    /// <summary>Readings of a machine, the earliest first.</summary>
    public async Task<IReadOnlyList<KeptReading>> ReadingsAsync(Guid id)
    {
        if (await work.OpenFieldsAsync(id) is not { } document)
        {
            return [];
        }

        var items = ItemsOf(document, MachinePaths.Readings).Select(f => f.Value).ToList();
        var texts = items.Select(f => f.Value).ToHashSet(StringComparer.Ordinal);
        return
        [
            .. items
                // What an earlier program wrote of the same reading, with more in it, counts once.
                .Where(f => AsWritten(f.Value) is var now && (now == f.Value || !texts.Contains(now)))
                .Select(f => (f.Order, Reading: JsonSerializer.Deserialize(f.Value, ClientJson.Default.KeptReading)!))
                .OrderBy(r => r.Reading.On)
                .ThenBy(r => r.Order)
                .Select(r => r.Reading),
        ];
    }

    /// <summary>Keeps the readings of a machine.</summary>
    /// <param name="id">The machine.</param>
    /// <param name="readings">Readings as they are to be.</param>
    /// <param name="before">Readings as they were seen: what was taken out of these is taken out; what came from elsewhere meanwhile stays.</param>
    public async Task KeepReadingsAsync(Guid id, IReadOnlyList<KeptReading> readings, IReadOnlyList<KeptReading>? before = null)
    {
        List<string> wanted = Texts(readings),
            seen = Texts(before ?? []);
        var changes = Items(MachinePaths.Readings, wanted, seen);
        if (await work.OpenFieldsAsync(id) is { } document)
        {
            // What an earlier program wrote lies under a key of its own: it gives way to what is written now, and is taken out with it.
            changes.AddRange(
                ItemsOf(document, MachinePaths.Readings)
                    .Where(f => AsWritten(f.Value.Value) is var now && now != f.Value.Value && (wanted.Contains(now) || seen.Contains(now)))
                    .Select(f => new KeyValuePair<string, string>(f.Key, ""))
            );
        }

        await work.SetAsync(Kinds.Machine, id, changes);
    }

    /// <summary>Photograph of a machine's plate: SHA-256 of the kept file; empty where it was removed, null where there never was one.</summary>
    public async Task<string?> PhotographAsync(Guid id) =>
        (await work.OpenFieldsAsync(id))?.Fields.TryGetValue(MachinePaths.Photograph, out var field) is true ? field.Value : null;

    /// <summary>Names the kept file that is the photograph; empty takes it away.</summary>
    public Task KeepPhotographAsync(Guid id, string sha256) => work.SetAsync(Kinds.Machine, id, MachinePaths.Photograph, sha256);

    /// <summary>A photograph an earlier program kept for itself, as the address of an image; null for none.</summary>
    /// <param name="id">The machine.</param>
    /// <param name="value">Empty takes it away.</param>
    public async Task<string?> OldPhotographAsync(Guid id, string? value = null) =>
        await store.MarkAsync("photograph-" + id, value) is { Length: > 0 } address ? address : null;

    private async Task KeepAsync(Guid id, Machine machine, Guid? kitchen, IReadOnlyList<KeyValuePair<string, string>> more)
    {
        List<KeyValuePair<string, string>> changes =
        [
            new(MachinePaths.Description, MachineFile.Write(machine with { SetUps = [] }, whole: false)),
            new(MachinePaths.Name, machine.Name ?? ""),
            new(MachinePaths.Type, MachineFile.KindId(machine.Kind)),
            new(FieldDocument.DeletedPath, ""),
            .. Items(MachinePaths.SetUps, SetUpTexts(machine), []),
            .. more,
        ];
        if (kitchen is { } place)
        {
            changes.Add(new(MachinePaths.Kitchen, place.ToString()));
        }

        await work.SetAsync(Kinds.Machine, id, changes);
    }

    // A reading's text as this program writes it.
    private static string AsWritten(string text) =>
        JsonSerializer.Serialize(JsonSerializer.Deserialize(text, ClientJson.Default.KeptReading)!, ClientJson.Default.KeptReading);

    private static List<string> Texts(IReadOnlyList<KeptReading> readings) =>
        [.. readings.Select(r => JsonSerializer.Serialize(r, ClientJson.Default.KeptReading))];

    // Each item under a key made of its text: two devices that add different ones both keep theirs; one that was taken out is written empty.
    private static List<KeyValuePair<string, string>> Items(string list, IReadOnlyList<string> texts, IReadOnlyList<string> before)
    {
        var wanted = Keyed(list, texts);
        List<KeyValuePair<string, string>> changes = [.. wanted];
        foreach (var path in Keyed(list, before).Keys)
        {
            if (!wanted.ContainsKey(path))
            {
                changes.Add(new(path, ""));
            }
        }

        return changes;
    }

    private static Dictionary<string, string> Keyed(string list, IReadOnlyList<string> texts)
    {
        var keyed = new Dictionary<string, string>();
        foreach (var text in texts)
        {
            var key = $"{list}.{Forgiving.KeyOf(text)}";
            for (var again = 2; keyed.ContainsKey(key); again++)
            {
                key = $"{list}.{Forgiving.KeyOf(text)}-{again}";
            }

            keyed[key] = text;
        }

        return keyed;
    }

    private static IEnumerable<KeyValuePair<string, FieldValue>> ItemsOf(FieldDocument document, string list) =>
        document.Fields.Where(f => f.Key.StartsWith(list + ".", StringComparison.Ordinal) && f.Value.Value.Length > 0);

    private static List<string> SetUpTexts(Machine machine)
    {
        using var document = JsonDocument.Parse(MachineFile.Write(machine, whole: false));
        return document.RootElement.TryGetProperty(MachinePaths.SetUps, out var setUps)
            ? [.. setUps.EnumerateArray().Select(s => s.GetRawText())]
            : [];
    }

    private static Machine? Whole(FieldDocument document)
    {
        if (document[MachinePaths.Description] is not { Length: > 0 } text || MachineFile.Read(text).Machine is not { } machine)
        {
            return null;
        }

        var setUps = ItemsOf(document, MachinePaths.SetUps).Select(f => f.Value).OrderBy(f => f.Order).Select(f => f.Value).ToList();
        if (setUps.Count == 0)
        {
            return machine;
        }

        var file = JsonNode.Parse(text)!;
        file[MachinePaths.SetUps] = JsonNode.Parse("[" + string.Join(',', setUps) + "]");
        var read = MachineFile.Read(file.ToJsonString()).Machine;
        return read is null ? machine : read with { SetUps = [.. read.SetUps.OrderBy(s => s.On)] };
    }

    private Task CarriedAsync() => carrying ??= CarryAsync();

    // Machines of a version that did not send them: each becomes a document once. Whoever is interrupted begins again; nothing is written twice.
    private async Task CarryAsync()
    {
        if (!work.MayWrite || await store.MarkAsync(CarriedMark) == FieldDocument.Yes)
        {
            return;
        }

        foreach (var line in (await store.MarkAsync(OldIndex) ?? "").Split('\n'))
        {
            if (
                !Guid.TryParse(line, out var id)
                || await work.OpenFieldsAsync(id) is not null
                || await store.MarkAsync(OldMark + id) is not { Length: > 0 } text
            )
            {
                continue;
            }

            List<KeyValuePair<string, string>> more = [];
            if (await store.MarkAsync("prices-" + id) is { Length: > 0 } prices)
            {
                more.Add(new(MachinePaths.Prices, prices));
            }

            if (await store.MarkAsync("readings-" + id) is { Length: > 0 } readings)
            {
                var known = JsonSerializer.Deserialize(readings, ClientJson.Default.IReadOnlyListKeptReading) ?? [];
                more.AddRange(Items(MachinePaths.Readings, Texts(known), []));
            }

            if (MachineFile.Read(text).Machine is { } machine)
            {
                await KeepAsync(id, machine, machine.Kitchen is { Length: > 0 } name ? await KitchenOfAsync(name) : null, more);
            }
            else
            {
                // This version cannot read it; another may. Kept as it is.
                await work.SetAsync(Kinds.Machine, id, [new(MachinePaths.Description, text), .. more]);
            }
        }

        if (work.Trouble is null)
        {
            await store.MarkAsync(CarriedMark, FieldDocument.Yes);
        }
    }

    private async Task<Guid> KitchenOfAsync(string name)
    {
        var folded = Forgiving.Fold(name);
        var known = (await work.LinesAsync(Kinds.Kitchen)).FirstOrDefault(k => Forgiving.Fold(k.Name) == folded);
        if (known is not null)
        {
            return known.Id;
        }

        var id = Forgiving.IdOf(name);
        await work.SetAsync(Kinds.Kitchen, id, [new(KitchenPaths.Name, name), new(FieldDocument.DeletedPath, "")]);
        return id;
    }
}
