namespace Rinsewright.Engine.Visits.History;

/// <summary>How long a part was in.</summary>
/// <param name="What">What.</param>
/// <param name="Fitted">Place of the visit at which it was fitted.</param>
/// <param name="Replaced">Place of the visit at which the next was; null for the one that is in.</param>
/// <param name="Days">Days it lasted, or is in until today.</param>
public sealed record PartLife(string What, int Fitted, int? Replaced, int Days);

/// <summary>A part of the acceptance test that was declined.</summary>
/// <param name="Visit">Place of the visit.</param>
/// <param name="Area">Which.</param>
/// <param name="Because">Why.</param>
/// <param name="MadeUp">Place of the later visit at which it was run and passed; null while it is not.</param>
public sealed record DeclinedTest(int Visit, AcceptanceArea Area, string Because, int? MadeUp);

/// <summary>Parts and tests that are owed (H7).</summary>
internal static class PartHistories
{
    public static IReadOnlyList<OwedPart> Owed(IReadOnlyList<HistoryVisit> visits, DateOnly today) =>
        PartsOwed.Of([.. visits.Select(v => new PartsTold(v.Visit.On, v.Visit.PartsUsed))], today);

    public static IReadOnlyList<PartLife> Lives(IReadOnlyList<HistoryVisit> visits, DateOnly today)
    {
        var fittings = visits
            .SelectMany((v, place) => Fitted(v.Visit).Distinct(StringComparer.OrdinalIgnoreCase).Select(what => (What: what, Place: place)))
            .GroupBy(f => f.What, f => f.Place, StringComparer.OrdinalIgnoreCase);
        List<PartLife> lives = [];
        foreach (var part in fittings)
        {
            var places = part.Order().ToList();
            var name = part.Key;
            for (var i = 0; i < places.Count; i++)
            {
                int? next = i + 1 < places.Count ? places[i + 1] : null;
                lives.Add(new PartLife(name, places[i], next, Days(visits[places[i]], next is { } n ? visits[n].Visit.On : today)));
            }
        }

        return [.. lives.OrderBy(l => l.What, StringComparer.Ordinal).ThenBy(l => l.Fitted)];
    }

    public static IReadOnlyList<DeclinedTest> Declined(IReadOnlyList<HistoryVisit> visits)
    {
        List<DeclinedTest> all = [];
        for (var v = 0; v < visits.Count; v++)
        {
            foreach (var line in visits[v].Result.Acceptance.Where(a => a.Standing == AcceptanceStanding.Declined))
            {
                var made = Enumerable
                    .Range(v + 1, visits.Count - v - 1)
                    .Where(later =>
                        visits[later].Result.Acceptance.Any(a => a.Area == line.Area && a.Standing == AcceptanceStanding.Passed)
                    )
                    .Cast<int?>()
                    .FirstOrDefault();
                var why = visits[v].Visit.Declined.Where(d => d.Area == line.Area).Select(d => d.Because).Order(StringComparer.Ordinal);
                all.Add(new DeclinedTest(v, line.Area, string.Join("; ", why), made));
            }
        }

        return all;
    }

    // The stock list names what came out of the van; where it is empty, the changes say what was replaced.
    private static IEnumerable<string> Fitted(Visit visit)
    {
        var used = visit.PartsUsed.Where(p => p.Where == PartWhere.Fitted).Select(p => Name(p.What)).ToList();
        return used.Count > 0 ? used : visit.Changes.Where(c => c.Kind == ChangeKind.Replaced).Select(c => Name(c.What));
    }

    private static string Name(string what) => PartsOwed.Name(what);

    private static int Days(HistoryVisit from, DateOnly to) => Math.Max(0, to.DayNumber - from.Visit.On.DayNumber);
}
