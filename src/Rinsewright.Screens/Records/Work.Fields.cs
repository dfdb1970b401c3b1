using System.Text.Json;
using Rinsewright.Contracts;
using Rinsewright.Contracts.Records;

namespace Rinsewright.Client.Records;

// Kitchens and machines: documents of fields that several people fill in.
public sealed partial class Work
{
    // What is still being typed replaces itself; what stood longer than this stays in the history.
    private static readonly TimeSpan Typing = TimeSpan.FromMinutes(2);

    /// <summary>Every document of a kind in one line, by name; deleted ones left out.</summary>
    public async Task<IReadOnlyList<RecordLine>> LinesAsync(string kind)
    {
        var lines = JsonSerializer.Deserialize(await store.ListAsync(kind), ClientJson.Default.RecordLineArray) ?? [];
        return [.. lines.Where(l => !l.Deleted).OrderBy(l => l.Name, StringComparer.CurrentCultureIgnoreCase)];
    }

    /// <summary>The lines of the visits that say how machines stand (<see cref="IDeviceStore.LastVisitsAsync"/>).</summary>
    public Task<string> LastVisitsAsync() => store.LastVisitsAsync();

    /// <summary>The lines a day is made of (<see cref="IDeviceStore.DayLinesAsync"/>).</summary>
    public Task<string[]> DayLinesAsync(string until, IReadOnlyList<string> standings, IReadOnlyList<Guid> named) =>
        store.DayLinesAsync(until, standings, named);

    /// <summary>A document of fields; null where it is not on this device.</summary>
    public async Task<FieldDocument?> OpenFieldsAsync(Guid id) =>
        (await store.ReadForChangeAsync(id))[0] is { Length: > 0 } json ? Read(json) : null;

    /// <summary>Writes fields, makes the document where there is none, and queues the change.</summary>
    /// <param name="kind">Kind of document.</param>
    /// <param name="id">Document.</param>
    /// <param name="changes">Path and text; what already stands is left out.</param>
    /// <returns>The document as it now stands here.</returns>
    public async Task<FieldDocument> SetAsync(string kind, Guid id, IReadOnlyList<KeyValuePair<string, string>> changes) =>
        (await TrySetAsync(kind, id, changes)).Document;

    /// <summary>The same, and whether the device took it; where it did not, the reason is in <see cref="Trouble"/> and it is to be written again.</summary>
    public async Task<(FieldDocument Document, bool Kept)> TrySetAsync(
        string kind,
        Guid id,
        IReadOnlyList<KeyValuePair<string, string>> changes
    )
    {
        var settings = preferences.Settings;
        return await WriteAsync(
            kind,
            id,
            d => d.Write(NewId(), changes, settings.Technician, settings.Device, clock.GetLocalNow()),
            typing: true
        );
    }

    /// <summary>Writes one field.</summary>
    public Task<FieldDocument> SetAsync(string kind, Guid id, string path, string value) =>
        SetAsync(kind, id, [KeyValuePair.Create(path, value)]);

    /// <summary>Brings a document of a backup in: what is newer there than here, at its own place in the order of changes.</summary>
    /// <returns>Whether anything was.</returns>
    public async Task<bool> ImportAsync(FieldDocument backup)
    {
        var settings = preferences.Settings;
        var any = false;
        await WriteAsync(
            backup.Kind,
            backup.Id,
            d =>
            {
                var newer = new List<FieldChange>();
                foreach (var (path, field) in backup.Fields)
                {
                    if (!d.Fields.TryGetValue(path, out var mine) || field.IsAfter(mine.Order, mine.Operation))
                    {
                        newer.Add(new FieldChange(path, field.Value, field.Order, field.OverOrder, field.Over));
                    }
                }

                any = newer.Count > 0;
                return any
                    ? new Operation(
                        NewId(),
                        backup.Kind,
                        backup.Id,
                        settings.Technician,
                        settings.Device,
                        clock.GetLocalNow(),
                        "set",
                        null,
                        newer
                    )
                    : null;
            },
            typing: false
        );
        return any;
    }

    // What the office has beside what is here. Nothing waiting is lost: it is here already, field by field.
    private async Task JoinAsync(FieldDocument office)
    {
        while (true)
        {
            var json = (await store.ReadForChangeAsync(office.Id))[0];
            var joined = Text(json.Length > 0 ? Read(json)!.Join(office) : office);
            if (joined == json || await store.ChangeAsync(office.Id, json, Line(Read(joined)!), joined, null, null))
            {
                return;
            }
        }
    }

    private async Task<(FieldDocument Document, bool Kept)> WriteAsync(
        string kind,
        Guid id,
        Func<FieldDocument, Operation?> write,
        bool typing
    )
    {
        var after = FieldDocument.Empty(id, kind);
        var isKept = false;
        if (!MayWrite)
        {
            return (await OpenFieldsAsync(id) ?? after, true);
        }

        Writing++;
        Changed?.Invoke();
        try
        {
            while (true)
            {
                var read = await store.ReadForChangeAsync(id);
                var before = read[0].Length > 0 ? Read(read[0])! : FieldDocument.Empty(id, kind);
                if (write(before) is not { } operation)
                {
                    return (before, true);
                }

                operation = operation with { Account = preferences.Settings.Account };

                var draft = typing && read[1].Length > 0 ? JsonSerializer.Deserialize(read[1], ContractsJson.Default.Operation) : null;
                draft = draft is not null && IsStillTyped(draft, operation, before) ? draft : null;
                operation = draft is null ? operation : FieldDocument.Instead(operation, draft);
                after = draft is null ? before.With(operation) : before.Replacing(operation);
                var json = JsonSerializer.Serialize(operation, ContractsJson.Default.Operation);
                if (await store.ChangeAsync(id, read[0], Line(after), Text(after), json, draft?.Id.ToString()))
                {
                    break;
                }
            }

            isKept = true;
            Kept++;
            Trouble = null;
        }
        catch (Microsoft.JSInterop.JSException e)
        {
            Trouble = e.Message;
        }
        finally
        {
            Writing--;
            Changed?.Invoke();
        }

        await CountAsync();
        Queued?.Invoke();
        return (after, isKept);
    }

    private static bool IsStillTyped(Operation draft, Operation next, FieldDocument document)
    {
        var since = next.At - draft.At;
        return since >= TimeSpan.Zero
            && since < Typing
            && draft.Author == next.Author
            && draft.Account == next.Account
            && draft.Fields is { } fields
            && fields.Count == next.Fields!.Count
            && fields.All(f => next.Fields.Any(n => n.Path == f.Path) && document.Fields[f.Path].Operation == draft.Id);
    }

    private Guid NewId() => newId?.Invoke() ?? Guid.CreateVersion7();

    private static FieldDocument? Read(string json) => JsonSerializer.Deserialize(json, ContractsJson.Default.FieldDocument);

    private static string Line(FieldDocument document) => JsonSerializer.Serialize(RecordLine.Of(document), ClientJson.Default.RecordLine);

    private static string Text(FieldDocument document) => JsonSerializer.Serialize(document, ContractsJson.Default.FieldDocument);
}
