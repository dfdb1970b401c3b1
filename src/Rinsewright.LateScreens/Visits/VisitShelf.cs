using System.Globalization;
using Rinsewright.Client.Kitchens;
using Rinsewright.Client.Machines;
using Rinsewright.Client.Records;
using Rinsewright.Client.Shell;
using Rinsewright.Contracts;
using Rinsewright.Contracts.Machines;
using Rinsewright.Contracts.Records;
using Rinsewright.Contracts.Visits;
using Rinsewright.Engine.Machines;
using Rinsewright.Engine.Visits;

namespace Rinsewright.Client.Visits;

/// <summary>The visits on this device, each a document of fields that is sent to the office.</summary>
public sealed class VisitShelf(Work work, MachineShelf machines, Preferences preferences, TimeProvider clock)
{
    /// <summary>The documents on this device.</summary>
    public Work Work => work;

    private readonly HashSet<Guid> beginning = [];
    private readonly Dictionary<Guid, Task> writes = [];

    /// <summary>Every visit in one line, the latest first.</summary>
    public async Task<IReadOnlyList<RecordLine>> LinesAsync() =>
        [.. (await work.LinesAsync(Kinds.Visit)).OrderByDescending(l => l.At ?? DateTimeOffset.MinValue)];

    /// <summary>Begins a visit to a machine, with what its last visit left to be compared with.</summary>
    /// <param name="machineId">Machine.</param>
    /// <returns>Its id; null where the machine is not on this device, and for a second tap while the first is still at it.</returns>
    public async Task<Guid?> BeginAsync(Guid machineId)
    {
        if (!beginning.Add(machineId))
        {
            return null;
        }

        try
        {
            return await BeginOneAsync(machineId);
        }
        finally
        {
            beginning.Remove(machineId);
        }
    }

    private async Task<Guid?> BeginOneAsync(Guid machineId)
    {
        if (await machines.OpenAsync(machineId) is not { } machine)
        {
            return null;
        }

        var kitchenId = await machines.KitchenAsync(machineId);
        var kitchen = kitchenId is { } k ? await work.OpenFieldsAsync(k) : null;
        var rules = kitchen?[KitchenPaths.RuleSet];
        var last = await LastAsync(machineId, _ => true);
        var visit = new VisitDocument(
            Guid.CreateVersion7(),
            VisitDocument.CurrentVersion,
            kitchen?[KitchenPaths.Name] ?? machine.Kitchen ?? "",
            VisitFile.MachineOf(machine with { SetUps = [] }),
            clock.GetLocalNow()
        )
        {
            Technician = preferences.Settings.Technician is { Length: > 0 } name ? name : null,
            RuleSet = rules is { Length: > 0 } ? rules : null,
            // What an instrument is does not change from one visit to the next.
            Instruments = last?.Instruments,
            Earlier = last is null ? null : Left(last),
        };
        await work.SetAsync(
            Kinds.Visit,
            visit.Id,
            [
                new(VisitPaths.Kitchen, kitchenId?.ToString() ?? ""),
                new(VisitPaths.Machine, machineId.ToString()),
                new(VisitPaths.MachineName, machine.Name ?? ""),
                new(VisitPaths.Began, visit.Began.ToString("O", CultureInfo.InvariantCulture)),
                .. VisitFields.Of(visit),
            ]
        );
        return visit.Id;
    }

    /// <summary>A visit; null where it is not on this device or deleted.</summary>
    /// <exception cref="ContractException">It cannot be read; says why.</exception>
    public async Task<VisitDocument?> OpenAsync(Guid id)
    {
        // A page left a moment ago may still be writing: what is opened has all of it, or the next write would take it away.
        while (writes.TryGetValue(id, out var write) && !write.IsCompleted)
        {
            await write.HoweverItEnds();
        }

        return await work.OpenFieldsAsync(id) is { Deleted: false, Kind: Kinds.Visit } document ? VisitFields.Read(document) : null;
    }

    /// <summary>Remembers a write of a visit that is under way: whoever opens the visit waits for it.</summary>
    public Task Writing(Guid visit, Task write) => writes[visit] = write;

    /// <summary>The machine's document a visit is of; null where nobody said.</summary>
    public async Task<Guid?> MachineAsync(Guid id) =>
        Guid.TryParse((await work.OpenFieldsAsync(id))?[VisitPaths.Machine], out var machine) ? machine : null;

    /// <summary>The kitchen's and the machine's document a visit is of; each null where nobody said.</summary>
    public async Task<(Guid? Kitchen, Guid? Machine)> PlaceAsync(Guid id)
    {
        var document = await work.OpenFieldsAsync(id);
        return (
            Guid.TryParse(document?[VisitPaths.Kitchen], out var kitchen) ? kitchen : null,
            Guid.TryParse(document?[VisitPaths.Machine], out var machine) ? machine : null
        );
    }

    /// <summary>The language a visit's kitchen is spoken to, <c>en</c> or <c>es</c>: the first that its page names; null where it names neither.</summary>
    public async Task<string?> LanguageAsync(Guid id) =>
        (await PlaceAsync(id)).Kitchen is { } kitchen
            ? KitchenWords.Language((await work.OpenFieldsAsync(kitchen))?[KitchenPaths.Languages] ?? "")
            : null;

    /// <summary>Proofs of a visit's machine that were made while it lasted, the latest first.</summary>
    public async Task<IReadOnlyList<ProofLine>> ProofsAsync(VisitDocument visit, Guid? machine) =>
        machine is null
            ? []
            :
            [
                .. (await work.ListAsync())
                    .Where(p => p.MachineId == machine && p.At >= visit.Began && (visit.Ended is not { } ended || p.At <= ended))
                    .OrderByDescending(p => p.At),
            ];

    /// <summary>A saved proof with its verdict; null where it is not on this device, and where it has to be opened first because more is asked of it than was judged.</summary>
    public async Task<ProofDocument?> ProofAsync(Guid id) => await work.OpenAsync(id) is { Unjudged: not true } proof ? proof : null;

    /// <summary>Whether it has to be opened first for that.</summary>
    public async Task<bool> IsProofUnjudgedAsync(Guid id) => (await work.OpenAsync(id))?.Unjudged is true;

    /// <summary>Keeps a visit: only what this screen changed is written, so that what came from elsewhere meanwhile stands.</summary>
    /// <param name="visit">The visit.</param>
    /// <param name="seen">As it was when it was opened or kept last.</param>
    /// <param name="result">What it amounts to; null where it was not judged.</param>
    /// <returns>Whether the device took it.</returns>
    public async Task<bool> SaveAsync(VisitDocument visit, VisitDocument seen, VisitResult? result)
    {
        List<KeyValuePair<string, string>> fields = [.. VisitFields.Changed(visit, seen)];
        if (result is not null)
        {
            fields.Add(new(VisitPaths.Standing, Wire.Name(result.Standing)));
            fields.Add(new(VisitPaths.Next, result.Next.On.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture)));
        }

        return (await work.TrySetAsync(Kinds.Visit, visit.Id, fields)).Kept;
    }

    /// <summary>Remembers that something was entered that is not judged yet.</summary>
    public Task UnjudgedAsync(Guid visit) => work.UnjudgedAsync(visit);

    /// <summary>Forgets that again.</summary>
    public Task JudgedAsync(Guid visit) => work.JudgedAsync(visit);

    /// <summary>Whether the page was left between a reading and its judgement.</summary>
    public Task<bool> IsUnjudgedAsync(Guid visit) => work.IsUnjudgedAsync(visit);

    /// <summary>The last visit to a machine that has not ended; null for none.</summary>
    public Task<VisitDocument?> RunningAsync(Guid machine) => LastAsync(machine, v => v.Ended is null);

    /// <summary>Keeps a sum with a visit, in the machine file of that day.</summary>
    /// <returns>Whether the visit is still there.</returns>
    public async Task<bool> PinAsync(Guid id, Func<Machine, Machine> keep)
    {
        if (await OpenAsync(id) is not { } visit || MachineFile.Read(visit.Machine.GetRawText()).Machine is not { } machine)
        {
            return false;
        }

        await SaveAsync(visit with { Machine = VisitFile.MachineOf(keep(machine)) }, visit, null);
        return true;
    }

    /// <summary>Writes the next visit that was agreed into the kitchen's page.</summary>
    public async Task AgreeAsync(Guid visit, DateOnly next)
    {
        if (Guid.TryParse((await work.OpenFieldsAsync(visit))?[VisitPaths.Kitchen], out var kitchen))
        {
            await work.SetAsync(Kinds.Kitchen, kitchen, KitchenPaths.NextVisit, next.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture));
        }
    }

    /// <summary>Takes a visit away; it stays in the history.</summary>
    public Task DeleteAsync(Guid id, bool back = false) =>
        work.SetAsync(Kinds.Visit, id, FieldDocument.DeletedPath, back ? "" : FieldDocument.Yes);

    private async Task<VisitDocument?> LastAsync(Guid machine, Func<VisitDocument, bool> wanted)
    {
        foreach (var line in (await LinesAsync()).Where(l => l.Machine == machine))
        {
            try
            {
                if (await OpenAsync(line.Id) is { } visit && wanted(visit))
                {
                    return visit;
                }
            }
            catch (ContractException)
            {
                // One that cannot be read is no reason not to begin; the one before it will do.
            }
        }

        return null;
    }

    // What was read last as left; where nothing was touched, what was found is what was left.
    private static List<EarlierReadingDto> Left(VisitDocument last)
    {
        var left = (last.Readings ?? []).Where(r => r.Value is not null && r.Moment == "asLeft").ToList();
        if (left.Count == 0)
        {
            left = [.. (last.Readings ?? []).Where(r => r.Value is not null && r.Moment == "asFound")];
        }

        return
        [
            .. left.GroupBy(r => (r.Kind, r.State))
                .Select(g => g.Last())
                .Select(r => new EarlierReadingDto(r.Kind, r.Value!, r.State, DateOnly.FromDateTime(last.Began.DateTime))),
        ];
    }
}
