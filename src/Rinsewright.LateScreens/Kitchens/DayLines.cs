using System.Text.Json;
using Rinsewright.Client.Parts;
using Rinsewright.Client.Records;
using Rinsewright.Client.Visits;
using Rinsewright.Contracts.Records;
using Rinsewright.Engine.Visits;

namespace Rinsewright.Client.Kitchens;

/// <summary>What a day is made of: the kitchens that may be on it, not all of a large service.</summary>
/// <param name="Kitchens">Kitchens by name.</param>
/// <param name="Proofs">Proofs of each.</param>
/// <param name="Visits">Visits that say how machines stand, by kitchen.</param>
public sealed record DayLines(
    IReadOnlyList<RecordLine> Kitchens,
    IReadOnlyDictionary<Guid, List<ProofLine>> Proofs,
    ILookup<Guid?, RecordLine> Visits
)
{
    private static readonly string[] BadStandings =
    [
        .. Enum.GetValues<VisitStanding>().Where(s => VisitStandingPanel.Kind(s) == "bad").Select(s => $"{s}".ToLowerInvariant()),
    ];

    /// <summary>Reads them.</summary>
    /// <param name="work">Documents on this device.</param>
    /// <param name="until">Last day something may be due.</param>
    public static async Task<DayLines> ReadAsync(Work work, DateOnly until)
    {
        var proofs = await work.ListAsync();
        var bad = proofs.Where(p => StatusKind.OfOutcome(p.Verdict) == "bad").ToList();
        IReadOnlyList<RecordLine> kitchens;
        ILookup<Guid?, RecordLine> visits;
        if (bad.Exists(p => p.KitchenId is null))
        {
            // Of one that only names its kitchen nobody knows which that is before all are read.
            kitchens = await work.LinesAsync(Kinds.Kitchen);
            visits = await KitchenState.VisitsAsync(work);
        }
        else
        {
            var named = bad.Select(p => p.KitchenId!.Value).Distinct().ToList();
            var lines = await work.DayLinesAsync(KitchenWords.Day(until), BadStandings, named);
            kitchens = [.. Of(lines[0]).OrderBy(k => k.Name, StringComparer.CurrentCultureIgnoreCase)];
            visits = Of(lines[1]).ToLookup(v => v.Kitchen);
        }

        return new(kitchens, KitchenState.ByKitchen(kitchens, proofs), visits);
    }

    /// <summary>Machines that must not be used or do not sanitize, the last left so first.</summary>
    public IEnumerable<(RecordLine Kitchen, MachineState State)> Failed() =>
        Kitchens.SelectMany(k => KitchenState.Of(Proofs[k.Id], Visits[k.Id]).Bad.Select(s => (k, s))).OrderByDescending(f => f.s.At);

    private static IEnumerable<RecordLine> Of(string json) =>
        (JsonSerializer.Deserialize(json, ClientJson.Default.RecordLineArray) ?? []).Where(l => !l.Deleted);
}
