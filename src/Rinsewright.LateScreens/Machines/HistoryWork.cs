using System.Diagnostics;
using Rinsewright.Client.Records;
using Rinsewright.Client.Visits;
using Rinsewright.Contracts;
using Rinsewright.Contracts.Records;
using Rinsewright.Contracts.Visits;
using Rinsewright.Engine.Knowledge;
using Rinsewright.Engine.Machines;
using Rinsewright.Engine.Quantities;
using Rinsewright.Engine.Sanitization;
using Rinsewright.Engine.Visits;
using Rinsewright.Engine.Visits.History;

namespace Rinsewright.Client.Machines;

/// <summary>Reads the visits of a machine from the device and judges them a little at a time, so that the page stays live; the machine's own bands come last.</summary>
public sealed class HistoryWork(VisitShelf shelf, Work work, TradeKnowledge trade, TimeProvider clock)
{
    // As long as a page may be busy before a finger notices.
    private static readonly TimeSpan Busy = TimeSpan.FromMilliseconds(30);
    private static readonly TimeSpan Breath = TimeSpan.FromMilliseconds(1);
    private readonly Dictionary<string, OwnBands> bands = new(StringComparer.Ordinal);
    private readonly List<(VisitDocument Document, Visit Visit, RuleSet Rules, string Machine)> visits = [];
    private IReadOnlyList<HistoryProof> proofs = [];
    private IReadOnlyList<HistoryWater> water = [];
    private bool gone;

    /// <summary>Something more is there.</summary>
    public event Action? Changed;

    /// <summary>The history so far; null before the visits are read.</summary>
    public MachineHistory? History { get; private set; }

    /// <summary>Visits read so far.</summary>
    public int Read { get; private set; }

    /// <summary>Visits there are.</summary>
    public int Count { get; private set; }

    /// <summary>Visits that cannot be read.</summary>
    public int Unreadable { get; private set; }

    /// <summary>Whether the machine's own bands are here.</summary>
    public bool Whole { get; private set; }

    /// <summary>What the trade knows.</summary>
    public TradeKnowledge Trade => trade;

    /// <summary>The visits' documents by their id.</summary>
    public IReadOnlyDictionary<string, VisitDocument> Documents =>
        visits.ToDictionary(v => v.Document.Id.ToString(), v => v.Document, StringComparer.Ordinal);

    /// <summary>Reads and judges; done when the machine's own bands are here.</summary>
    /// <param name="machine">The machine.</param>
    /// <param name="kitchen">Its kitchen; null for none.</param>
    public async Task RunAsync(Guid machine, Guid? kitchen)
    {
        var lines = (await shelf.LinesAsync()).Where(l => l.Machine == machine).ToList();
        Count = lines.Count;
        proofs = await ProofsAsync(machine);
        water = kitchen is { } k && await work.OpenFieldsAsync(k) is { } document ? KitchenWater.Of(document) : [];
        foreach (var line in lines)
        {
            await TakeAsync(line.Id);
            Read++;
        }

        await JudgeAsync();
        foreach (var own in bands.Values)
        {
            while (!gone && own.Next())
            {
                await Task.Delay(Breath, clock);
            }
        }

        Whole = true;
        await JudgeAsync();
    }

    /// <summary>The page was left.</summary>
    public void Stop() => gone = true;

    private async Task TakeAsync(Guid id)
    {
        try
        {
            if (await shelf.OpenAsync(id) is { } document)
            {
                visits.Add((document, document.ToVisit(trade), document.Rules(), Described(document)));
            }
        }
        catch (Exception e) when (e is ContractException or RuleSetException)
        {
            Unreadable++;
        }
    }

    // Sums that were kept do not change what a machine should read.
    private static string Described(VisitDocument document) =>
        string.Join(
            '\n',
            document
                .Machine.EnumerateObject()
                .Where(p => p.Name is not ("setUps" or "name" or "kitchen"))
                .Select(p => p.Name + p.Value.GetRawText())
        );

    private async Task JudgeAsync()
    {
        var since = Stopwatch.GetTimestamp();
        List<HistoryVisit> judged = [];
        foreach (var (document, visit, rules, machine) in visits)
        {
            if (gone)
            {
                return;
            }

            try
            {
                judged.Add(
                    new HistoryVisit(
                        document.Id.ToString(),
                        visit,
                        VisitJudgement.Judge(visit, trade, rules, BandsOf(machine, visit.Machine))
                    )
                );
            }
            catch (ArgumentException)
            {
                Unreadable++;
            }

            if (Stopwatch.GetElapsedTime(since) > Busy)
            {
                await Task.Delay(Breath, clock);
                since = Stopwatch.GetTimestamp();
            }
        }

        History = MachineHistory.Of(judged, trade, DateOnly.FromDateTime(clock.GetLocalNow().DateTime), proofs, water);
        Changed?.Invoke();
    }

    private OwnBands BandsOf(string described, Machine machine)
    {
        if (!bands.TryGetValue(described, out var own))
        {
            var rates = visits
                .Where(v => v.Machine == described)
                .SelectMany(v => v.Visit.Readings)
                .Select(r => r.RacksPerHour)
                .OfType<double>();
            bands[described] = own = OwnBands.Coming(machine, [.. rates.Distinct().Order()]);
        }

        return own;
    }

    private async Task<IReadOnlyList<HistoryProof>> ProofsAsync(Guid machine) =>
        [
            .. (await work.ListAsync())
                .Where(p => p.MachineId == machine)
                .Select(p => new HistoryProof(
                    p.Id.ToString(),
                    p.At,
                    Enum.TryParse<Outcome>(p.Verdict, ignoreCase: true, out var outcome) ? outcome : Outcome.Undetermined
                )),
        ];
}
