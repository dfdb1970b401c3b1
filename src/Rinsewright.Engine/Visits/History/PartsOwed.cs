namespace Rinsewright.Engine.Visits.History;

/// <summary>A part that lies at the kitchen or is ordered and was not fitted since.</summary>
/// <param name="What">What.</param>
/// <param name="Count">How many, as said last.</param>
/// <param name="Where">On site or ordered, as said last.</param>
/// <param name="Expected">When it is expected; null where not known.</param>
/// <param name="Since">Place of the visit at which it was first said.</param>
/// <param name="Days">Days since then.</param>
/// <param name="Late">Whether the day it was expected is over.</param>
public sealed record OwedPart(string What, int Count, PartWhere Where, DateOnly? Expected, int Since, int Days, bool Late);

/// <summary>The parts one visit told of.</summary>
/// <param name="On">Day of the visit.</param>
/// <param name="Used">Parts fitted, on site and ordered.</param>
public sealed record PartsTold(DateOnly On, IReadOnlyList<PartUse> Used);

/// <summary>Parts that are owed to one machine (H7). A part is known by its name; capitals and spaces do not count.</summary>
public static class PartsOwed
{
    /// <summary>What lies at the kitchen or is ordered and was not fitted since, the longest owed first.</summary>
    /// <param name="visits">The visits to one machine in the order of time; those that told of no part may be left out.</param>
    /// <param name="today">Today.</param>
    public static IReadOnlyList<OwedPart> Of(IReadOnlyList<PartsTold> visits, DateOnly today)
    {
        Dictionary<string, OwedPart> owed = new(StringComparer.OrdinalIgnoreCase);
        for (var v = 0; v < visits.Count; v++)
        {
            foreach (var part in visits[v].Used.GroupBy(p => Name(p.What), StringComparer.OrdinalIgnoreCase))
            {
                // Fitted and, at the same visit, ordered again: one is still owed.
                if (part.Any(p => p.Where == PartWhere.Fitted))
                {
                    owed.Remove(part.Key);
                }

                if (part.Where(p => p.Where != PartWhere.Fitted).OrderBy(p => p.Where).ThenBy(p => p.Expected).LastOrDefault() is { } still)
                {
                    var since = owed.TryGetValue(part.Key, out var before) ? before.Since : v;
                    owed[part.Key] = new OwedPart(
                        part.Key,
                        part.Where(p => p.Where == still.Where).Sum(p => p.Count),
                        still.Where,
                        still.Expected,
                        since,
                        Math.Max(0, today.DayNumber - visits[since].On.DayNumber),
                        still.Where == PartWhere.Ordered && still.Expected < today
                    );
                }
            }
        }

        return [.. owed.Values.OrderBy(o => o.Since).ThenBy(o => o.What, StringComparer.Ordinal)];
    }

    /// <summary>Of those what a visit has to bring along: what is ordered. What is said to lie at the kitchen is there already.</summary>
    /// <param name="visits">As in <see cref="Of"/>.</param>
    /// <param name="today">Today.</param>
    public static IEnumerable<OwedPart> ToTake(IReadOnlyList<PartsTold> visits, DateOnly today) =>
        Of(visits, today).Where(o => o.Where == PartWhere.Ordered);

    internal static string Name(string what) => string.Join(' ', what.Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries));
}
