using System.Globalization;
using System.Text.Json;
using Rinsewright.Client.Records;
using Rinsewright.Contracts;
using Rinsewright.Contracts.Records;

namespace Rinsewright.Client.Tests.Records.Simulation;

/// <summary>The office as the server is, in memory: a list of operations is taken in whole, each once, joined by the same rule; changes go out by number.</summary>
internal sealed class SimulatedOffice(World world)
{
    private const int PerPage = 1;
    private SortedDictionary<long, Guid> turns = [];
    private Dictionary<Guid, long> numbers = [];
    private long revision;
    private (
        Dictionary<Guid, Operation>,
        Dictionary<Guid, (FieldDocument, long, int)>,
        Dictionary<Guid, long>,
        SortedDictionary<long, Guid>,
        long
    )? copy;

    public Dictionary<Guid, Operation> Operations { get; private set; } = [];

    public Dictionary<Guid, (FieldDocument Document, long Revision, int Versions)> Documents { get; private set; } = [];

    /// <summary>Whether it was ever put back to an older copy.</summary>
    public bool Restored { get; private set; }

    /// <summary>A copy of everything is made.</summary>
    public void Copy() => copy = (new(Operations), new(Documents), new(numbers), new(turns), revision);

    /// <summary>What came since the copy is gone. The office does not know it.</summary>
    public void Restore()
    {
        if (copy is not { } c)
        {
            return;
        }

        Restored = true;
        (Operations, Documents, numbers, turns, revision) = (new(c.Item1), new(c.Item2), new(c.Item3), new(c.Item4), c.Item5);
    }

    public OperationResults Apply(IReadOnlyList<Operation> operations)
    {
        var before = revision;
        List<OperationResult> results = [.. operations.Select(ApplyOne)];
        if (revision > before)
        {
            turns[revision] = world.NewId();
        }

        return new(results, Cursor(results.Max(r => r.Revision)));
    }

    public Changes ChangesAfter(string cursor, string seen)
    {
        var (known, restarted) = seen.Split(' ', StringSplitOptions.RemoveEmptyEntries).Any(s => Known(s).Restarted)
            ? (0, true)
            : Known(cursor);
        var rows = Documents.Values.Where(d => d.Revision > known).OrderBy(d => d.Revision).ToList();
        var page = rows.Take(PerPage).ToList();
        return new Changes(
            [
                .. page.Select(d => new Change(
                    d.Document.Id,
                    d.Document.Kind,
                    "put",
                    world.Now,
                    "",
                    false,
                    d.Versions,
                    null,
                    JsonSerializer.Deserialize(Text(d.Document), ContractsJson.Default.FieldDocument)
                )),
            ],
            Cursor(
                page.Count == 0 ? known
                : world.Bug == Planted.SkipsChanges ? rows[^1].Revision
                : page[^1].Revision
            ),
            rows.Count > page.Count,
            restarted
        );
    }

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

    public static string Text(FieldDocument document) => JsonSerializer.Serialize(document, ContractsJson.Default.FieldDocument);

    // After a restoration devices send what stands with them: of one operation another device may have more left than the first.
    private bool Completes(Operation operation)
    {
        var (document, _, versions) = Documents[operation.DocumentId];
        if (document.Has(operation))
        {
            return false;
        }

        Documents[operation.DocumentId] = (document.With(operation), ++revision, versions);
        return true;
    }

    private OperationResult ApplyOne(Operation operation)
    {
        if (FieldCheck.Fault(operation) is { } fault)
        {
            return new OperationResult(operation.Id, "refused", 0, false, fault);
        }

        if (Operations.ContainsKey(operation.Id) && world.Bug != Planted.AppliesTwice)
        {
            return new OperationResult(operation.Id, "applied", Completes(operation) ? revision : numbers[operation.Id], Repeated: true);
        }

        Operations[operation.Id] = operation;
        var (document, _, versions) = Documents.GetValueOrDefault(
            operation.DocumentId,
            (FieldDocument.Empty(operation.DocumentId, operation.Kind), 0, 0)
        );
        var after =
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
        Documents[operation.DocumentId] = (after, ++revision, versions + 1);
        numbers[operation.Id] = revision;
        return new OperationResult(operation.Id, "applied", revision, Repeated: false);
    }
}

/// <summary>The way to the office from one tab: what goes may not arrive, arrive late, or twice; what comes back likewise.</summary>
internal sealed class SimulatedNetwork(World world, SimulatedOffice office, Device device, Func<bool> alive) : IOffice
{
    private const double Lost = 0.2;
    private const double Doubled = 0.2;
    private static readonly OfficeAnswer Nothing = new(0, "");

    public async Task<OfficeAnswer> SendAsync(string operationsJson, string language)
    {
        var operations = JsonSerializer.Deserialize(operationsJson, ContractsJson.Default.IReadOnlyListOperation)!;
        await world.StopAsync(alive);
        if (Loses())
        {
            return Nothing;
        }

        if (world.Troubled && world.Random.NextDouble() < Doubled)
        {
            _ = LaterAsync(operations); // a copy that arrives whenever, also after what was sent later
        }

        var results = office.Apply(operations);
        await world.StopAsync(alive);
        if (Loses())
        {
            return Nothing;
        }

        world.Acknowledged.UnionWith(results.Results.Where(r => r.Outcome != "refused").Select(r => r.Id));
        return new OfficeAnswer(200, JsonSerializer.Serialize(results, ContractsJson.Default.OperationResults));
    }

    public async Task<OfficeAnswer> ChangesAsync(string cursor, string seen)
    {
        await world.StopAsync(alive);
        if (Loses())
        {
            return Nothing;
        }

        var changes = JsonSerializer.Serialize(office.ChangesAfter(cursor, seen), ContractsJson.Default.Changes);
        await world.StopAsync(alive);
        return Loses() ? Nothing : new OfficeAnswer(200, changes);
    }

    public Task<int> SendFileAsync(string sha256) => Task.FromResult(0);

    public Task<OfficeAnswer> HistoryAsync(Guid id) => Task.FromResult(Nothing);

    private bool Loses() => device.Away || (world.Troubled && world.Random.NextDouble() < Lost);

    private async Task LaterAsync(IReadOnlyList<Operation> operations)
    {
        await world.StopAsync(() => true);
        await world.StopAsync(() => true);
        office.Apply(operations);
    }
}
