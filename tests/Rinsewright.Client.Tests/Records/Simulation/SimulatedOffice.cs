using System.Globalization;
using System.Text.Json;
using Rinsewright.Contracts;
using Rinsewright.Contracts.Records;

namespace Rinsewright.Client.Tests.Records.Simulation;

/// <summary>
/// The office as the server is, in memory: a list of operations is taken in whole, each once; fields are joined by the same rule, of a proof the later writer stands; original files lie under their
/// content; changes go out by number. Its process may die over whatever it takes in, and is away until it is started again.
/// </summary>
internal sealed class SimulatedOffice(World world)
{
    private const int PerPage = 1;
    private const double Dies = 0.1;
    private const int LongestAway = 8000; // milliseconds: some tens of steps
    private DateTimeOffset back;
    private SortedDictionary<long, Guid> turns = [];
    private Dictionary<Guid, long> numbers = [];
    private long revision;
    private Copied? copy;

    public Dictionary<Guid, Operation> Operations { get; private set; } = [];

    /// <summary>When each operation came, by the office's clock.</summary>
    public Dictionary<Guid, DateTimeOffset> Received { get; } = [];

    /// <summary>What stands, by document.</summary>
    public Dictionary<Guid, Standing> Documents { get; private set; } = [];

    /// <summary>Original files.</summary>
    public HashSet<string> Files { get; private set; } = [];

    /// <summary>Whether it was ever put back to an older copy.</summary>
    public bool Restored { get; private set; }

    /// <summary>How often it died over something new before it had committed it: nothing of it is kept.</summary>
    public int DiedBeforeCommit { get; private set; }

    /// <summary>How often it died over something new after it had committed it: it is kept, and nobody was told.</summary>
    public int DiedAfterCommit { get; private set; }

    /// <summary>Whether its process has died and is not back.</summary>
    public bool Away => world.Troubled && world.Now < back;

    /// <summary>A copy of everything is made.</summary>
    public void Copy()
    {
        world.Told?.Invoke($"a copy is made at {revision}");
        copy = Committed();
    }

    /// <summary>What came since the copy is gone. The office does not know it.</summary>
    public void Restore()
    {
        if (copy is not { } c)
        {
            return;
        }

        world.Told?.Invoke($"the office is put back from {revision} to {c.Revision}");
        Restored = true;
        GoOnFrom(c);
    }

    /// <summary>Half of the files are gone: an old copy of their folder alone was put back.</summary>
    public void LoseFiles()
    {
        world.Told?.Invoke("files are lost");
        Files.RemoveWhere(_ => world.Random.Next(2) == 0);
    }

    /// <summary>Takes a list of operations in; null where it died over it.</summary>
    public OperationResults? Receive(IReadOnlyList<Operation> operations) =>
        Take(() => Apply(operations), operations.Any(o => !Operations.ContainsKey(o.Id)));

    /// <summary>Takes a file in; false where it died over it.</summary>
    public bool ReceiveFile(string sha256) => Take(() => Files.Add(sha256) ? "new" : "there", !Files.Contains(sha256)) is not null;

    // One transaction, as seen from outside: all of it or nothing, whenever the process dies.
    private T? Take<T>(Func<T> write, bool isNew)
        where T : class
    {
        if (!world.Troubled || world.Random.NextDouble() >= Dies)
        {
            return write();
        }

        back = world.Now.AddMilliseconds(world.Random.Next(LongestAway));
        var count = isNew ? 1 : 0;
        if (world.Random.Next(2) == 0)
        {
            DiedAfterCommit += count;
            write();
            world.Told?.Invoke("the office dies after it has committed that");
            return null;
        }

        DiedBeforeCommit += count;
        var committed = Committed();
        var answer = write();
        GoOnFrom(committed);
        world.Told?.Invoke("the office dies before it has committed that");
        return world.Bug == Planted.AnswersBeforeItCommits ? answer : null;
    }

    private Copied Committed() => new(new(Operations), new(Documents), [.. Files], new(numbers), new(turns), revision);

    private void GoOnFrom(Copied kept)
    {
        (Operations, Documents, Files) = (new(kept.Operations), new(kept.Documents), [.. kept.Files]);
        (numbers, turns, revision) = (new(kept.Numbers), new(kept.Turns), kept.Revision);
    }

    private OperationResults Apply(IReadOnlyList<Operation> operations)
    {
        var before = revision;
        List<OperationResult> results = [.. operations.Select(ApplyOne)];
        world.Told?.Invoke(
            $"office: {string.Join("; ", operations.Zip(results).Select(o => $"{o.First.Action} {o.First.Id.ToString()[..4]} of {o.First.DocumentId.ToString()[^1]} by {o.First.Device}{(o.First.Again ? " again" : "")} {string.Join(',', o.First.Proof?.Files.Select(f => f.Name) ?? [])} is {o.Second.Revision}{(o.Second.Repeated ? " repeated" : "")}"))}"
        );
        if (revision > before)
        {
            turns[revision] = world.NewId();
        }

        var wanted = operations
            .SelectMany(o => o.Proof?.Files ?? [])
            .Select(f => f.Sha256)
            .Where(f => !Files.Contains(f))
            .Distinct()
            .ToList();
        return new(results, Cursor(results.Max(r => r.Revision)), wanted);
    }

    public Changes ChangesAfter(string cursor, string seen)
    {
        var (known, restarted) = seen.Split(' ', StringSplitOptions.RemoveEmptyEntries).Any(s => Known(s).Restarted)
            ? (0, true)
            : Known(cursor);
        var rows = Documents.Where(d => d.Value.Revision > known).OrderBy(d => d.Value.Revision).ToList();
        var page = rows.Take(PerPage).ToList();
        world.Told?.Invoke(
            $"asked after '{Short(cursor)}' seen '{seen.Length}': {(restarted ? "restarted" : "")} gives {string.Join(',', page.Select(p => $"{p.Key.ToString()[^1]}@{p.Value.Revision}"))}"
        );
        return new Changes(
            [.. page.Select(d => Told(d.Key, d.Value))],
            Cursor(
                page.Count == 0 ? known
                : world.Bug == Planted.SkipsChanges ? rows[^1].Value.Revision
                : page[^1].Value.Revision
            ),
            rows.Count > page.Count,
            restarted,
            Lost()
        );
    }

    private static string Short(string cursor) => cursor.Length > 8 ? cursor[..8] : cursor;

    // Files of what stands that are not there.
    private List<string> Lost() =>
        world.Bug == Planted.NeverAsksForLostFiles
            ? []
            : [.. Documents.Values.SelectMany(d => d.Writer?.Proof?.Files ?? []).Select(f => f.Sha256).Where(f => !Files.Contains(f))];

    public static string Text(FieldDocument document) => JsonSerializer.Serialize(document, ContractsJson.Default.FieldDocument);

    public static string Text(ProofDocument proof) => JsonSerializer.Serialize(proof, ContractsJson.Default.ProofDocument);

    private static Change Told(Guid id, Standing stands) =>
        new(
            id,
            stands.Kind,
            stands.Writer?.Action is "delete" ? "delete" : "put",
            stands.Writer?.At ?? default,
            "",
            false,
            stands.Versions,
            stands.Writer?.Proof,
            stands.Document
        );

    // As the server's: a number, and the tag of the list it came with, so that a number given again after a restoration is known for another.
    private string Cursor(long number) => number == 0 ? "" : string.Create(CultureInfo.InvariantCulture, $"{number}-{Tag(number):n}");

    private Guid Tag(long number) => turns.FirstOrDefault(t => t.Key >= number).Value;

    private (long Known, bool Restarted) Known(string cursor)
    {
        if (cursor.Length == 0)
        {
            return (0, false);
        }

        var parts = cursor.Split('-');
        var number = long.Parse(parts[0], CultureInfo.InvariantCulture);
        if (world.Bug == Planted.HidesThatItWasRestored)
        {
            return (Math.Min(number, revision), false);
        }

        return number <= revision && Tag(number) == Guid.ParseExact(parts[1], "n") ? (number, false) : (0, true);
    }

    // After a restoration devices send what stands with them: of one operation another device may have more left than the first.
    private bool Completes(Operation operation)
    {
        if (operation.Fields is null || Documents[operation.DocumentId] is not { Document: { } document } stands || document.Has(operation))
        {
            return false;
        }

        Documents[operation.DocumentId] = stands with { Document = document.With(operation), Revision = ++revision };
        return true;
    }

    private OperationResult ApplyOne(Operation operation)
    {
        if (operation.Kind != Kinds.Proof && FieldCheck.Fault(operation) is { } fault)
        {
            return new OperationResult(operation.Id, "refused", 0, false, fault);
        }

        if (Operations.ContainsKey(operation.Id) && world.Bug != Planted.AppliesTwice)
        {
            var stands = Documents[operation.DocumentId];
            if (stands.Writer is { } standing && standing.Id != operation.Id)
            {
                Documents[operation.DocumentId] = stands with { Revision = ++revision };
            }

            return new OperationResult(operation.Id, "applied", Completes(operation) ? revision : numbers[operation.Id], Repeated: true);
        }

        Operations[operation.Id] = operation;
        Received[operation.Id] = world.Now;
        var before = Documents.GetValueOrDefault(operation.DocumentId);
        Documents[operation.DocumentId] = new Standing(
            operation.Kind,
            operation.Fields is null
                ? null
                : Joined(operation, before?.Document ?? FieldDocument.Empty(operation.DocumentId, operation.Kind)),
            operation.Fields is not null ? null
                : before?.Writer is { } writer && !IsLater(operation, writer) ? writer
                : operation,
            ++revision,
            (before?.Versions ?? 0) + 1
        );
        numbers[operation.Id] = revision;
        return new OperationResult(operation.Id, "applied", revision, Repeated: false);
    }

    private FieldDocument Joined(Operation operation, FieldDocument document) =>
        world.Bug == Planted.LastArrivalStands
            ? new FieldDocument(
                document.Id,
                document.Kind,
                1,
                document
                    .Fields.Where(f => operation.Fields!.All(c => c.Path != f.Key))
                    .Concat(operation.Fields!.Select(c => KeyValuePair.Create(c.Path, FieldValue.Of(operation, c))))
                    .OrderBy(f => f.Key, StringComparer.Ordinal)
                    .ToDictionary()
            )
            : document.With(operation);

    // A device whose clock runs ahead does not win for ever.
    private bool IsLater(Operation operation, Operation than)
    {
        var (mine, theirs) = (Written(operation), Written(than));
        return mine > theirs || (mine == theirs && operation.Id.CompareTo(than.Id) > 0);
    }

    private long Written(Operation operation) =>
        (operation.At < Received[operation.Id] ? operation.At : Received[operation.Id]).ToUnixTimeMilliseconds();

    /// <summary>A document as it stands: of fields, or the operation that wrote it last.</summary>
    internal sealed record Standing(string Kind, FieldDocument? Document, Operation? Writer, long Revision, int Versions);

    private sealed record Copied(
        Dictionary<Guid, Operation> Operations,
        Dictionary<Guid, Standing> Documents,
        HashSet<string> Files,
        Dictionary<Guid, long> Numbers,
        SortedDictionary<long, Guid> Turns,
        long Revision
    );
}
