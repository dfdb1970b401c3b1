using System.Text.Json;
using Rinsewright.Client.Records;
using Rinsewright.Contracts;
using Rinsewright.Contracts.Records;

namespace Rinsewright.Client.Tests.Records.Simulation;

/// <summary>What a device keeps, with the rules of the browser's store (js/store.js): each call is one transaction.</summary>
internal sealed class KeptStore(World world)
{
    private readonly List<Waits> outbox = [];
    private readonly Dictionary<string, string> marks = [];
    private readonly Dictionary<string, bool> files = []; // whether the office has it

    public Dictionary<Guid, string> Documents { get; } = [];

    public int Waiting => outbox.Count;

    public bool FilesWait => files.ContainsValue(false);

    public string[] ReadForChange(Guid id)
    {
        var last = outbox.LastOrDefault(o => o.Operation.DocumentId == id);
        var free = last is not null && (!last.Sending || world.Bug == Planted.ReplacesWhatIsOnItsWay);
        return [Documents.GetValueOrDefault(id) ?? "", free ? last!.Json : ""];
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
            Drop(draft);
        }

        if (operationJson is not null)
        {
            Add(operationJson);
        }

        ShowsWhatWaits(id);
        return true;
    }

    /// <summary>Writes a whole document, or takes it away, and queues that in the place of what has not left.</summary>
    public void Save(Guid id, string? documentJson, string operationJson)
    {
        Put(id, documentJson);
        for (var i = outbox.Count - 1; i >= 0; i--)
        {
            if (outbox[i].Operation.DocumentId == id && !outbox[i].Sending)
            {
                Drop(i);
            }
        }

        Add(operationJson);
    }

    public bool TakeOver(IReadOnlyList<(Guid Id, string? Json)> page, string from, string to)
    {
        if ((Mark("cursor", null) ?? "") != from)
        {
            return false;
        }

        world.Told?.Invoke($"takes over {string.Join(',', page.Select(p => p.Id.ToString()[^1]))} to {to}");
        foreach (var (id, json) in page.Where(p => !outbox.Exists(o => o.Operation.DocumentId == p.Id)))
        {
            Put(id, json);
        }

        Mark("cursor", to);
        return true;
    }

    public string Take(int most)
    {
        var taken = outbox.Take(most).ToList();
        for (var i = 0; i < taken.Count; i++)
        {
            outbox[i] = taken[i] with { Sending = true };
        }

        if (world.Bug == Planted.ForgetsBeforeTheAnswer)
        {
            outbox.RemoveRange(0, taken.Count);
        }

        return "[" + string.Join(',', taken.Select(t => t.Json)) + "]";
    }

    public bool? Queue(Guid documentId, string operationJson, string expected)
    {
        if (Documents.GetValueOrDefault(documentId) != expected)
        {
            return null;
        }

        var operation = Read(operationJson);
        if (outbox.Exists(o => operation.Fields is null ? o.Operation.DocumentId == documentId : o.Operation.Id == operation.Id))
        {
            return false;
        }

        outbox.Add(new Waits(operation, operationJson, true));
        ShowsWhatWaits(documentId);
        return true;
    }

    public string List(string kind) =>
        kind == Kinds.Proof
            ? JsonSerializer.Serialize(
                [
                    .. Documents
                        .Where(d => Histories.IsProof(d.Key))
                        .Select(d => ProofLine.Of(JsonSerializer.Deserialize(d.Value, ContractsJson.Default.ProofDocument)!)),
                ],
                ClientJson.Default.ProofLineArray
            )
            : JsonSerializer.Serialize(
                [
                    .. Documents
                        .Where(d => !Histories.IsProof(d.Key))
                        .Select(d => JsonSerializer.Deserialize(d.Value, ContractsJson.Default.FieldDocument)!)
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
            world.Told?.Invoke($"mark {id} = {(value.Length > 12 ? value[..12] : value)}");
            marks[id] = value;
        }

        return marks.GetValueOrDefault(id);
    }

    /// <summary>Keeps a logger's file.</summary>
    public void KeepFile(string sha256)
    {
        world.Told?.Invoke($"kept file {sha256[..4]}");
        files.TryAdd(sha256, false);
    }

    public string[] UnsentFiles() => [.. files.Where(f => !f.Value).Select(f => f.Key).Order(StringComparer.Ordinal)];

    public void FileSent(string sha256) => files[sha256] = true;

    public bool ForgetSentFiles(IReadOnlyList<string>? only)
    {
        world.Told?.Invoke(
            $"forgets that {(only is null ? "all" : string.Join(',', only.Select(o => o[..4])))} of {string.Join(',', files.Keys.Select(k => k[..4]))} is sent"
        );
        var sent = files.Where(f => f.Value && (only?.Contains(f.Key) ?? true)).Select(f => f.Key).ToList();
        sent.ForEach(f => files[f] = false);
        return sent.Count > 0;
    }

    private static Operation Read(string json) => JsonSerializer.Deserialize(json, ContractsJson.Default.Operation)!;

    private void Put(Guid id, string? documentJson)
    {
        if (documentJson is null)
        {
            Documents.Remove(id);
        }
        else
        {
            Documents[id] = documentJson;
        }
    }

    private void Add(string operationJson)
    {
        var operation = Read(operationJson);
        outbox.Add(new Waits(operation, operationJson, false));
        world.Saved[operation.Id] = operation;
    }

    private void Drop(int place)
    {
        world.Saved.Remove(outbox[place].Operation.Id);
        outbox.RemoveAt(place);
    }

    // A person sees what they saved, whatever came from elsewhere meanwhile: each waiting change is in the document already.
    private void ShowsWhatWaits(Guid id)
    {
        if (Histories.IsProof(id))
        {
            return;
        }

        var document = JsonSerializer.Deserialize(Documents[id], ContractsJson.Default.FieldDocument)!;
        foreach (var waits in outbox.Where(o => o.Operation.DocumentId == id))
        {
            if (SimulatedOffice.Text(document.With(waits.Operation)) != Documents[id])
            {
                throw new BrokenException($"operation {waits.Operation.Id} waits and is not in its document");
            }
        }
    }

    private sealed record Waits(Operation Operation, string Json, bool Sending);
}
