using System.Text.Json;
using Rinsewright.Client.Records;
using Rinsewright.Client.Sanitization;
using Rinsewright.Client.Shell;
using Rinsewright.Contracts;
using Rinsewright.Contracts.Records;
using Rinsewright.Contracts.Sanitization;

namespace Rinsewright.Client.Tests.Records;

/// <summary>A device in memory with the same rules as the browser's store.</summary>
internal sealed class MemoryStore : IDeviceStore
{
    private readonly List<(Operation Operation, bool Sending)> outbox = [];
    private readonly List<string> unsent = [];
    private readonly Dictionary<Guid, string> refused = [];
    private readonly Dictionary<string, string> marks = new(StringComparer.Ordinal);

    public Dictionary<Guid, string> Documents { get; } = [];

    public Dictionary<Guid, string> Lines { get; } = [];

    /// <summary>Whether nothing more is written: the device is full, or the browser refuses.</summary>
    public bool Full { get; set; }

    /// <summary>What every write waits for: a slow device.</summary>
    public Task Held { get; set; } = Task.CompletedTask;

    public async Task SaveAsync(Guid id, string lineJson, string documentJson, string? operationJson)
    {
        await Held;
        Room();
        (Documents[id], Lines[id]) = (documentJson, lineJson);
        await Queue(operationJson);
    }

    public Task DeleteAsync(Guid id, string? operationJson)
    {
        Room();
        Documents.Remove(id);
        Lines.Remove(id);
        return Queue(operationJson);
    }

    public Task<string?> ReadAsync(Guid id) => Task.FromResult(Documents.GetValueOrDefault(id));

    public Task<string> ListAsync(string kind) => Task.FromResult("[" + string.Join(',', Lines.Values.Where(l => KindOf(l) == kind)) + "]");

    public Task<string> LastVisitsAsync() => ListAsync(Kinds.Visit);

    public async Task<string[]> DayLinesAsync(string until, IReadOnlyList<string> standings, IReadOnlyList<Guid> named) =>
        [await ListAsync(Kinds.Kitchen), await ListAsync(Kinds.Visit), await ListAsync(Kinds.Visit)];

    public Task<string[]> ReadForChangeAsync(Guid id)
    {
        var last = outbox.LastOrDefault(o => o.Operation.DocumentId == id);
        var free = last.Operation is not null && !last.Sending && !refused.ContainsKey(last.Operation.Id);
        return Task.FromResult<string[]>([
            Documents.GetValueOrDefault(id) ?? "",
            free ? JsonSerializer.Serialize(last.Operation, ContractsJson.Default.Operation) : "",
        ]);
    }

    public async Task<bool> ChangeAsync(
        Guid id,
        string expected,
        string lineJson,
        string documentJson,
        string? operationJson,
        string? replaces
    )
    {
        await Held;
        var draft = replaces is null
            ? -1
            : outbox.FindIndex(o => o.Operation.Id.ToString() == replaces && !o.Sending && !refused.ContainsKey(o.Operation.Id));
        if ((Documents.GetValueOrDefault(id) ?? "") != expected || (replaces is not null && draft < 0))
        {
            return false;
        }

        Room();
        (Documents[id], Lines[id]) = (documentJson, lineJson);
        if (draft >= 0)
        {
            outbox.RemoveAt(draft);
        }

        if (operationJson is not null)
        {
            outbox.Add((JsonSerializer.Deserialize(operationJson, ContractsJson.Default.Operation)!, false));
        }

        return true;
    }

    public Task<int> WaitingAsync() => Task.FromResult(outbox.Count);

    public Task<string> TakeAsync(int most)
    {
        IReadOnlyList<Operation> taken = [.. outbox.Select(o => o.Operation).Where(o => !refused.ContainsKey(o.Id)).Take(most)];
        for (var i = 0; i < outbox.Count; i++)
        {
            outbox[i] = (outbox[i].Operation, outbox[i].Sending || taken.Contains(outbox[i].Operation));
        }

        return Task.FromResult(JsonSerializer.Serialize(taken, ContractsJson.Default.IReadOnlyListOperation));
    }

    public Task TrimAsync(string mark, string seen, string keep)
    {
        if (seen.Length > 0 && (marks.GetValueOrDefault(mark) + " ").StartsWith(seen + " ", StringComparison.Ordinal))
        {
            marks[mark] = keep + marks[mark][seen.Length..];
        }

        return Task.CompletedTask;
    }

    public Task SettleAsync(IReadOnlyList<string> operationIds, string mark, string word)
    {
        Calls.Add("settled");
        outbox.RemoveAll(o => operationIds.Contains(o.Operation.Id.ToString()));
        if (word.Length > 0)
        {
            marks[mark] = marks.GetValueOrDefault(mark) is { Length: > 0 } words ? $"{words} {word}" : word;
        }

        return Task.CompletedTask;
    }

    public Task RefuseAsync(IReadOnlyDictionary<string, string> reasons)
    {
        foreach (var (operation, _) in outbox.Where(o => reasons.ContainsKey(o.Operation.Id.ToString())).ToList())
        {
            outbox.RemoveAll(o => o.Operation.Id == operation.Id);
            if (operation.Fields is not null || !outbox.Exists(o => o.Operation.DocumentId == operation.DocumentId))
            {
                outbox.Add((operation, false));
                refused[operation.Id] = reasons[operation.Id.ToString()];
            }
        }

        return Task.CompletedTask;
    }

    public Task<string[]> RefusedAsync(bool again)
    {
        string[] reasons = [.. refused.Where(r => outbox.Exists(o => o.Operation.Id == r.Key)).Select(r => r.Value)];
        if (again)
        {
            refused.Clear();
        }

        return Task.FromResult(reasons);
    }

    public async Task<bool> TakeOverAsync(IReadOnlyList<string?[]> documents, string from, string to)
    {
        if ((await MarkAsync("cursor") ?? "") != from)
        {
            return false;
        }

        foreach (var document in documents)
        {
            var id = Guid.Parse(document[0]!);
            if (!outbox.Exists(o => o.Operation.DocumentId == id))
            {
                await (document[2] is { } json ? SaveAsync(id, document[1]!, json, null) : DeleteAsync(id, null));
            }
        }

        await MarkAsync("cursor", to);
        return true;
    }

    public Task<string?> MarkAsync(string id, string? value = null)
    {
        if (value is not null)
        {
            Room();
            marks[id] = value;
        }

        return Task.FromResult(marks.GetValueOrDefault(id));
    }

    public Task ForgetAsync()
    {
        Documents.Clear();
        Lines.Clear();
        marks.Remove("cursor");
        return Task.CompletedTask;
    }

    /// <summary>What was called, in order, of what has to be in order.</summary>
    public List<string> Calls { get; } = [];

    public Task<string[]> UnsentFilesAsync()
    {
        string[] now = [.. unsent];
        unsent.Clear();
        return Task.FromResult(now);
    }

    /// <summary>Files that were named as not at the office.</summary>
    public IReadOnlyList<string> Wanted { get; private set; } = [];

    /// <summary>How often files were taken for ones the office does not have.</summary>
    public int FilesForgotten { get; private set; }

    public Task<bool?> QueueAsync(Guid documentId, string operationJson, string expected)
    {
        if (Documents.GetValueOrDefault(documentId) != expected)
        {
            return Task.FromResult<bool?>(null);
        }

        var operation = JsonSerializer.Deserialize(operationJson, ContractsJson.Default.Operation)!;
        var wanted = operation.Fields is null
            ? !outbox.Exists(o => o.Operation.DocumentId == documentId)
            : !outbox.Exists(o => o.Operation.Id == operation.Id);
        if (wanted)
        {
            outbox.Add((operation, true));
        }

        return Task.FromResult<bool?>(wanted);
    }

    public Task<bool> ForgetSentFilesAsync(IReadOnlyList<string>? only = null)
    {
        FilesForgotten++;
        Wanted = only ?? Wanted;
        unsent.AddRange(only ?? []);
        Calls.Add("wanted");
        return Task.FromResult(only?.Count > 0);
    }

    private void Room()
    {
        if (Full)
        {
            throw new Microsoft.JSInterop.JSException("QuotaExceededError: no room");
        }
    }

    private static string KindOf(string line)
    {
        using var document = JsonDocument.Parse(line);
        return document.RootElement.TryGetProperty("kind", out var kind) ? kind.GetString()! : Kinds.Proof;
    }

    private Task Queue(string? json)
    {
        if (json is not null)
        {
            var operation = JsonSerializer.Deserialize(json, ContractsJson.Default.Operation)!;
            outbox.RemoveAll(o => o.Operation.DocumentId == operation.DocumentId && o.Operation.Account == operation.Account && !o.Sending);
            outbox.Add((operation, false));
        }

        return Task.CompletedTask;
    }
}

/// <summary>An office that keeps each operation once; its answers can be lost on the way.</summary>
internal sealed class MemoryOffice : IOffice
{
    public List<Operation> Kept { get; } = [];

    public bool LoseAnswers { get; set; }

    public bool Away { get; set; }

    /// <summary>Status of every answer, where it is another than good.</summary>
    public int Status { get; set; } = 200;

    /// <summary>Files it asks for; null for none.</summary>
    public IReadOnlyList<string>? Wants { get; set; }

    /// <summary>Why it refuses everything; null where it does not.</summary>
    public string? Refuses { get; set; }

    public Task<OfficeAnswer> SendAsync(string operationsJson, string language)
    {
        if (Away)
        {
            return Task.FromResult(new OfficeAnswer(0, ""));
        }

        if (Status != 200)
        {
            return Task.FromResult(new OfficeAnswer(Status, ""));
        }

        var operations = JsonSerializer.Deserialize(operationsJson, ContractsJson.Default.IReadOnlyListOperation)!;
        if (Refuses is null)
        {
            Kept.AddRange(operations.Where(o => !Kept.Exists(k => k.Id == o.Id)));
        }

        var outcome = Refuses is null ? "applied" : "refused";
        var results = new OperationResults(
            [.. operations.Select(o => new OperationResult(o.Id, outcome, 1, false, Refuses))],
            WantedFiles: Wants
        );
        return Task.FromResult(
            LoseAnswers
                ? new OfficeAnswer(0, "")
                : new OfficeAnswer(200, JsonSerializer.Serialize(results, ContractsJson.Default.OperationResults))
        );
    }

    /// <summary>Files it was sent.</summary>
    public List<string> Files { get; } = [];

    public Task<int> SendFileAsync(string sha256)
    {
        if (!Away)
        {
            Files.Add(sha256);
        }

        return Task.FromResult(Away ? 0 : 201);
    }

    public Task<OfficeAnswer> ChangesAsync(string cursor, string seen) =>
        Task.FromResult(
            Away
                ? new OfficeAnswer(0, "")
                : new OfficeAnswer(200, JsonSerializer.Serialize(new Changes([], "c", false, false), ContractsJson.Default.Changes))
        );

    public Task<OfficeAnswer> HistoryAsync(Guid id) => Task.FromResult(new OfficeAnswer(404, ""));
}

/// <summary>A device that remembers its settings.</summary>
internal sealed class MemoryDevice : IDevice
{
    private string? settings;

    public event Func<string, Task>? Happened;

    public Task TellAsync(string what) => Happened?.Invoke(what) ?? Task.CompletedTask;

    public Func<string?>? Leaving { get; set; }

    public Task ListenAsync() => Task.CompletedTask;

    public Task<string?> ReadSettingsAsync() => Task.FromResult(settings);

    public Task KeepSettingsAsync(string json)
    {
        settings = json;
        return Task.CompletedTask;
    }

    public Task<string> PreferredLanguageAsync() => Task.FromResult("en");

    public Task ApplyUpdateAsync() => Task.CompletedTask;

    public Task OfferAsync(byte[] bytes, string type, string name, bool view) => Task.CompletedTask;

    public Task<bool> CanShareAsync(string name) => Task.FromResult(false);

    public Task ShareAsync(string name) => Task.CompletedTask;

    public Task<StorageState> StorageAsync() => Task.FromResult(new StorageState(false, 0, 0));

    public Task<bool> AskToKeepAsync() => Task.FromResult(false);

    public Task FocusAsync(string id) => Task.CompletedTask;
}
