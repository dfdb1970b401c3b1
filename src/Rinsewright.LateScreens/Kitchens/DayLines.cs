using System.Globalization;
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
/// <param name="Parts">Visits that told of parts, by kitchen.</param>
public sealed record DayLines(
    IReadOnlyList<RecordLine> Kitchens,
    IReadOnlyDictionary<Guid, List<ProofLine>> Proofs,
    ILookup<Guid?, RecordLine> Visits,
    ILookup<Guid?, RecordLine> Parts
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
        if (!bad.Exists(p => p.KitchenId is null))
        {
            var named = bad.Select(p => p.KitchenId!.Value).Distinct().ToList();
            var lines = await work.DayLinesAsync(Iso(until), BadStandings, named);
            IReadOnlyList<RecordLine> some = [.. Of(lines[0]).OrderBy(k => k.Name, StringComparer.CurrentCultureIgnoreCase)];
            var names = some.Select(k => Forgiving.Fold(k.Name)).ToHashSet(StringComparer.Ordinal);
            if (!proofs.Any(p => p.KitchenId is null && names.Contains(Forgiving.Fold(p.Kitchen))))
            {
                return new(some, KitchenState.ByKitchen(some, proofs), Of(lines[1]).ToLookup(v => v.Kitchen), PartsOf(lines));
            }
        }

        // Of a proof that only names its kitchen nobody knows which of that name is meant before all are read.
        var kitchens = await work.LinesAsync(Kinds.Kitchen);
        var visits = await KitchenState.VisitsAsync(work);
        var parts = PartsOf(await work.DayLinesAsync(Iso(until), BadStandings, []));
        return new(kitchens, KitchenState.ByKitchen(kitchens, proofs), visits, parts);
    }

    /// <summary>Machines that must not be used or do not sanitize, the last left so first.</summary>
    public IEnumerable<(RecordLine Kitchen, MachineState State)> Failed() =>
        Kitchens.SelectMany(k => KitchenState.Of(Proofs[k.Id], Visits[k.Id]).Bad.Select(s => (k, s))).OrderByDescending(f => f.s.At);

    private static string Iso(DateOnly day) => day.ToString("O", CultureInfo.InvariantCulture);

    private static ILookup<Guid?, RecordLine> PartsOf(string[] lines) =>
        Of(lines[2]).Where(v => v.Parts is not null).ToLookup(v => v.Kitchen);

    private static IEnumerable<RecordLine> Of(string json) =>
        (JsonSerializer.Deserialize(json, ClientJson.Default.RecordLineArray) ?? []).Where(l => !l.Deleted);
}
