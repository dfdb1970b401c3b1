using System.Text.Json;
using Rinsewright.Client.Records;
using Rinsewright.Client.Shell;
using Rinsewright.Contracts;
using Rinsewright.Contracts.Records;

namespace Rinsewright.Client.Tests.Records.Simulation;

/// <summary>A device with what it keeps, and its tabs. A tab that is closed or crashes leaves what is kept and nothing else.</summary>
internal sealed class Device
{
    private readonly World world;
    private readonly SimulatedOffice office;
    private readonly string author;
    private readonly DeviceClock clock;

    public Device(World world, SimulatedOffice office, string author, TimeSpan ahead)
    {
        (this.world, this.office, this.author) = (world, office, author);
        clock = new DeviceClock(world, ahead);
        Kept = new KeptStore(world);
        Tabs.Add(Open());
    }

    public KeptStore Kept { get; }

    public List<Tab> Tabs { get; } = [];

    /// <summary>Whether there is no signal.</summary>
    public bool Away { get; set; }

    public Tab Open()
    {
        var tab = new Tab(author);
        var store = new SteppedStore(world, Kept, () => tab.Alive);
        tab.Start(store, new SimulatedNetwork(world, office, this, () => tab.Alive), clock, world.NewId);
        return tab;
    }

    /// <summary>One tab dies in the middle of whatever it does; another is opened.</summary>
    public void Crash()
    {
        var at = world.Random.Next(Tabs.Count);
        Tabs[at].Alive = false;
        Tabs[at] = Open();
    }
}

/// <summary>The program itself in one tab: the real work and the real synchronizer.</summary>
internal sealed class Tab(string author)
{
    public bool Alive { get; set; } = true;

    public Work Work { get; private set; } = null!;

    public Synchronizer Synchronizer { get; private set; } = null!;

    public List<Task> Doing { get; } = [];

    public void Start(IDeviceStore store, IOffice way, TimeProvider clock, Func<Guid> newId)
    {
        var preferences = new Preferences(new MemoryDevice());
        preferences.ChangeAsync(s => s with { Technician = author, Device = author }).GetAwaiter().GetResult();
        Work = new Work(store, preferences, clock, newId);
        Synchronizer = new Synchronizer(store, way, Work, preferences, clock);
    }
}

/// <summary>What a device keeps, with the rules of the browser's store (js/store.js): each call is one transaction.</summary>
internal sealed class KeptStore(World world)
{
    private readonly List<(Operation Operation, bool Sending)> outbox = [];
    private readonly Dictionary<string, string> marks = [];

    public Dictionary<Guid, string> Documents { get; } = [];

    public int Waiting => outbox.Count;

    public string[] ReadForChange(Guid id)
    {
        var last = outbox.LastOrDefault(o => o.Operation.DocumentId == id);
        var free = last.Operation is not null && (!last.Sending || world.Bug == Planted.ReplacesWhatIsOnItsWay);
        return
        [
            Documents.GetValueOrDefault(id) ?? "",
            free ? JsonSerializer.Serialize(last.Operation, ContractsJson.Default.Operation) : "",
        ];
    }

    public bool Change(Guid id, string expected, string documentJson, string? operationJson, string? replaces)
    {
        var draft = replaces is null
            ? -1
            : outbox.FindIndex(o => o.Operation.Id.ToString() == replaces && (!o.Sending || world.Bug == Planted.ReplacesWhatIsOnItsWay));
        var same = (Documents.GetValueOrDefault(id) ?? "") == expected;
        if ((!same && world.Bug != Planted.WritesOverAnotherTab) || (replaces is not null && draft < 0))
        {
            return false;
        }

        Documents[id] = documentJson;
        if (draft >= 0)
        {
            world.Saved.Remove(outbox[draft].Operation.Id);
            outbox.RemoveAt(draft);
        }

        if (operationJson is not null)
        {
            var operation = JsonSerializer.Deserialize(operationJson, ContractsJson.Default.Operation)!;
            outbox.Add((operation, false));
            world.Saved[operation.Id] = operation;
        }

        ShowsWhatWaits(id);
        return true;
    }

    public string Take(int most)
    {
        var taken = outbox.Take(most).Select(o => o.Operation).ToList();
        for (var i = 0; i < taken.Count; i++)
        {
            outbox[i] = (outbox[i].Operation, true);
        }

        if (world.Bug == Planted.ForgetsBeforeTheAnswer)
        {
            outbox.RemoveRange(0, taken.Count);
        }

        return JsonSerializer.Serialize<IReadOnlyList<Operation>>(taken, ContractsJson.Default.IReadOnlyListOperation);
    }

    public bool Queue(Guid documentId, string operationJson)
    {
        var operation = JsonSerializer.Deserialize(operationJson, ContractsJson.Default.Operation)!;
        if (outbox.Exists(o => o.Operation.Id == operation.Id))
        {
            return false;
        }

        outbox.Add((operation, true));
        ShowsWhatWaits(documentId);
        return true;
    }

    public string List(string kind) =>
        JsonSerializer.Serialize(
            [
                .. Documents
                    .Values.Select(d => JsonSerializer.Deserialize(d, ContractsJson.Default.FieldDocument)!)
                    .Where(d => d.Kind == kind)
                    .Select(RecordLine.Of),
            ],
            ClientJson.Default.RecordLineArray
        );

    public void Settle(IReadOnlyList<string> ids, string mark, string word)
    {
        outbox.RemoveAll(o => ids.Contains(o.Operation.Id.ToString()));
        if (word.Length > 0)
        {
            marks[mark] = marks.GetValueOrDefault(mark) is { Length: > 0 } words ? $"{words} {word}" : word;
        }
    }

    public void Trim(string mark, string seen, string keep)
    {
        if (seen.Length > 0 && (marks.GetValueOrDefault(mark) + " ").StartsWith(seen + " ", StringComparison.Ordinal))
        {
            marks[mark] = keep + marks[mark][seen.Length..];
        }
    }

    public string? Mark(string id, string? value)
    {
        if (value is not null)
        {
            marks[id] = value;
        }

        return marks.GetValueOrDefault(id);
    }

    // A person sees what they saved, whatever came from elsewhere meanwhile: each waiting change is in the document already.
    private void ShowsWhatWaits(Guid id)
    {
        var document = JsonSerializer.Deserialize(Documents[id], ContractsJson.Default.FieldDocument)!;
        foreach (var (operation, _) in outbox.Where(o => o.Operation.DocumentId == id))
        {
            if (SimulatedOffice.Text(document.With(operation)) != Documents[id])
            {
                throw new BrokenException($"operation {operation.Id} waits and is not in its document");
            }
        }
    }
}

/// <summary>The store as one tab calls it: the call stops before it is done and before it is answered, and the tab may die at either.</summary>
internal sealed class SteppedStore(World world, KeptStore kept, Func<bool> alive) : IDeviceStore
{
    public Task<string[]> ReadForChangeAsync(Guid id) => StepAsync(() => kept.ReadForChange(id));

    public Task<bool> ChangeAsync(
        Guid id,
        string expected,
        string lineJson,
        string documentJson,
        string? operationJson,
        string? replaces
    ) => StepAsync(() => kept.Change(id, expected, documentJson, operationJson, replaces));

    public Task<int> WaitingAsync() => Task.FromResult(kept.Waiting);

    public Task<string> TakeAsync(int most) => StepAsync(() => kept.Take(most));

    public Task TrimAsync(string mark, string seen, string keep) =>
        StepAsync(() =>
        {
            kept.Trim(mark, seen, keep);
            return true;
        });

    public Task SettleAsync(IReadOnlyList<string> operationIds, string mark, string word) =>
        StepAsync(() =>
        {
            kept.Settle(operationIds, mark, word);
            return true;
        });

    public Task<string?> MarkAsync(string id, string? value = null) => StepAsync(() => kept.Mark(id, value));

    public Task<bool> QueueAsync(Guid documentId, string operationJson) => StepAsync(() => kept.Queue(documentId, operationJson));

    public Task ForgetSentFilesAsync() => Task.CompletedTask;

    // Nobody changes the account in these histories.
    public Task ForgetAsync() => throw new NotSupportedException();

    public Task<string[]> UnsentFilesAsync() => Task.FromResult(Array.Empty<string>());

    public Task<string[]> RefusedAsync(bool again) => Task.FromResult(Array.Empty<string>());

    public Task RefuseAsync(IReadOnlyDictionary<string, string> reasons) =>
        throw new BrokenException("refused: " + string.Join(", ", reasons.Values));

    public Task SaveAsync(Guid id, string lineJson, string documentJson, string? operationJson) => throw new NotSupportedException();

    public Task DeleteAsync(Guid id, string? operationJson) => throw new NotSupportedException();

    public Task<string?> ReadAsync(Guid id) => throw new NotSupportedException();

    public Task<string> ListAsync(string kind) => StepAsync(() => kept.List(kind));

    public Task<string> LastVisitsAsync() => ListAsync(Kinds.Visit);

    public Task TakeOverAsync(Guid documentId, string? lineJson, string? documentJson) => throw new NotSupportedException();

    private async Task<T> StepAsync<T>(Func<T> call)
    {
        await world.StopAsync(alive);
        var answer = call();
        await world.StopAsync(alive);
        return answer;
    }
}

/// <summary>A promise was broken.</summary>
internal sealed class BrokenException(string what) : Exception(what);
