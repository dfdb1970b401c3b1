using Rinsewright.Engine.Knowledge;

namespace Rinsewright.Engine.Visits.History;

/// <summary>What is followed from visit to visit.</summary>
public enum FollowedKind
{
    /// <summary>Somebody can get hurt by it.</summary>
    Danger,

    /// <summary>Ware is not sanitized with it.</summary>
    Sanitizing,

    /// <summary>A symptom, check or state of a reading without such a weight.</summary>
    Seen,

    /// <summary>A part that is worn, broken or missing.</summary>
    Part,
}

/// <summary>Something found, until it was looked for again and gone (H6).</summary>
/// <param name="Kind">Its weight.</param>
/// <param name="Id">Id of the symptom, check, state or part.</param>
/// <param name="Name">Its name.</param>
/// <param name="State">State of the part as seen last while it was not sound; null for what is no part.</param>
/// <param name="Note">What was noted last.</param>
/// <param name="Opened">Place of the visit at which it was found.</param>
/// <param name="Closed">Place of the visit at which it was looked for and gone; null while it is open.</param>
/// <param name="Days">Days from the one to the other, or until today.</param>
public sealed record FindingHistory(
    FollowedKind Kind,
    string Id,
    Phrase Name,
    PartState? State,
    string? Note,
    int Opened,
    int? Closed,
    int Days
)
{
    /// <summary>Whether it is still open.</summary>
    public bool Open => Closed is null;
}

/// <summary>Follows findings and parts through the visits (H6).</summary>
internal static class FindingHistories
{
    public static IReadOnlyList<FindingHistory> Of(IReadOnlyList<HistoryVisit> visits, TradeKnowledge knowledge, DateOnly today)
    {
        List<FindingHistory> all = [];
        var found = visits.SelectMany(v => v.Visit.Findings.Where(f => f.Found).Select(f => f.Id)).Distinct(StringComparer.Ordinal);
        foreach (var id in found)
        {
            var name =
                knowledge.FindCheck(id)?.Name
                ?? knowledge.FindSymptom(id)?.Name
                ?? knowledge.FindState(id)?.Kind.Name
                ?? new Phrase(id, id);
            all.AddRange(
                Follow(visits, today, v => Look(v, id))
                    .Select(e => new FindingHistory(Weight(visits, e, id, name), id, name, null, e.Note, e.Opened, e.Closed, e.Days))
            );
        }

        var parts = visits.SelectMany(v => v.Visit.Parts.Select(p => p.Part)).Distinct(StringComparer.Ordinal);
        foreach (var id in parts)
        {
            var name = knowledge.Anatomy.Parts.FirstOrDefault(p => p.Id == id)?.Name ?? new Phrase(id, id);
            all.AddRange(
                Follow(visits, today, v => PartLook(v, id))
                    .Select(e => new FindingHistory(FollowedKind.Part, id, name, e.State, e.Note, e.Opened, e.Closed, e.Days))
            );
        }

        return
        [
            .. all.OrderBy(f => f.Open ? 0 : 1)
                .ThenBy(f => f.Kind)
                .ThenByDescending(f => f.Opened)
                .ThenBy(f => f.Id, StringComparer.Ordinal),
        ];
    }

    private static IEnumerable<Episode> Follow(IReadOnlyList<HistoryVisit> visits, DateOnly today, Func<Visit, Seen?> look)
    {
        Episode? running = null;
        for (var v = 0; v < visits.Count; v++)
        {
            if (look(visits[v].Visit) is not { } seen)
            {
                continue;
            }

            if (seen.Found)
            {
                running ??= new Episode(v, null, null, null, 0);
                running = running with { State = seen.State ?? running.State, Note = seen.Note ?? running.Note };
            }

            if (!seen.Left && running is { } ended)
            {
                yield return ended with
                {
                    Closed = v,
                    Days = Days(visits[ended.Opened], visits[v].Visit.On),
                };
                running = null;
            }
        }

        if (running is { } open)
        {
            yield return open with
            {
                Days = Days(visits[open.Opened], today),
            };
        }
    }

    private static int Days(HistoryVisit from, DateOnly to) => Math.Max(0, to.DayNumber - from.Visit.On.DayNumber);

    // As V5 has it: gone is only what was looked for at the end of a visit, or at a later one, and not found.
    private static Seen? Look(Visit visit, string id)
    {
        var looks = visit.Findings.Where(f => f.Id == id).ToList();
        if (looks.Count == 0)
        {
            return null;
        }

        var left = looks.Where(f => f.Moment == VisitMoment.AsLeft).ToList();
        var note = looks.Where(f => f.Found).Select(f => f.Note).OfType<string>().Order(StringComparer.Ordinal).FirstOrDefault();
        return new Seen(looks.Exists(f => f.Found), left.Count > 0 ? left.Exists(f => f.Found) : looks.Exists(f => f.Found), null, note);
    }

    private static Seen? PartLook(Visit visit, string id)
    {
        var looks = visit.Parts.Where(p => p.Part == id && p.State != PartState.NotLookedAt).OrderBy(p => p.State).ToList();
        if (looks.Count == 0)
        {
            return null;
        }

        var worst = looks[^1];
        var left = looks.Where(p => p.Moment == VisitMoment.AsLeft).ToList();
        return new Seen(
            worst.State != PartState.Sound,
            (left.Count > 0 ? left : looks).Exists(p => p.State != PartState.Sound),
            worst.State == PartState.Sound ? null : worst.State,
            worst.Note
        );
    }

    private static FollowedKind Weight(IReadOnlyList<HistoryVisit> visits, Episode episode, string id, Phrase name)
    {
        var stops = visits
            .Skip(episode.Opened)
            .Take((episode.Closed ?? visits.Count - 1) - episode.Opened + 1)
            .SelectMany(v => v.Result.Stops)
            .Where(s => s.Id == id || s.FoundBy.Values.Any(v => v.Value is Phrase p && p == name))
            .Select(s => s.Kind)
            .ToList();
        return stops.Contains(StopKind.Danger) ? FollowedKind.Danger
            : stops.Count > 0 ? FollowedKind.Sanitizing
            : FollowedKind.Seen;
    }

    private sealed record Episode(int Opened, int? Closed, PartState? State, string? Note, int Days);

    private sealed record Seen(bool Found, bool Left, PartState? State, string? Note);
}
