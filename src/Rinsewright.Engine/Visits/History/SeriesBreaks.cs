using Rinsewright.Engine.Machines;

namespace Rinsewright.Engine.Visits.History;

/// <summary>What was done that touches a series (H2). Where the record does not say what a change moves, it may have moved this too.</summary>
internal static class SeriesBreaks
{
    public static IReadOnlyList<SeriesBreak> Of(SeriesKey key, IReadOnlyList<HistoryVisit> visits)
    {
        var area = VisitReadingKinds.Find(key.Kind)?.Area;
        List<SeriesBreak> breaks = [];
        for (var v = 0; v < visits.Count; v++)
        {
            var visit = visits[v].Visit;
            var changes = visit
                .Changes.Where(c => c.Areas.Count == 0 || area is null || c.Areas.Contains(area.Value))
                .Select(c => new SeriesBreak(v, c.At ?? visit.Began, c.What, c.Kind, c.Before, c.After));
            // A part that was fitted is told by its change; without one nobody said what it moves.
            var parts = visit.Changes.Any(c => c.Kind is ChangeKind.Replaced or ChangeKind.Repaired)
                ? []
                : visit
                    .PartsUsed.Where(p => p.Where == PartWhere.Fitted)
                    .Select(p => new SeriesBreak(v, visit.Began, p.What, null, null, null));
            var containers = visit
                .Supplies.Where(s => s.Changed && Feeds(key, s))
                .Select(s => new SeriesBreak(v, visit.Began, s.Product, null, null, null));
            breaks.AddRange(
                changes.Concat(parts).Concat(containers).OrderBy(b => b.At).ThenBy(b => b.What, StringComparer.Ordinal).ThenBy(b => b.Kind)
            );
        }

        return breaks;
    }

    private static bool Feeds(SeriesKey key, SupplyCount supply) =>
        supply.Feeds switch
        {
            FedProduct.Detergent => key.Kind is "rd-detergent",
            FedProduct.RinseAdditive => key.Kind is "rd-rinse-additive",
            FedProduct.Sanitizer => key.Kind is "rd-sanitizer" or "sanitizer-ph",
            _ => false,
        };
}
