using Rinsewright.Engine.Records;

namespace Rinsewright.Engine.Sanitization;

/// <summary>Puts verdicts together: the worst counts, and one proof never excuses another.</summary>
internal static class Verdicts
{
    public static Verdict Worst(IReadOnlyList<Check> checks)
    {
        var outcome = Worst(checks.Select(c => c.Outcome));
        var deciding = checks.Where(c => c.Outcome == outcome).ToList();
        return new Verdict(
            outcome,
            [.. deciding.Select(c => c.Because)],
            [.. deciding.SelectMany(c => c.WouldSettle).DistinctBy(s => s.Key)]
        );
    }

    /// <summary>Not proven before undetermined before proven; undetermined where there is nothing.</summary>
    public static Outcome Worst(IEnumerable<Outcome> outcomes)
    {
        Outcome? worst = null;
        foreach (var o in outcomes)
        {
            worst =
                worst is Outcome.NotProven || o == Outcome.NotProven ? Outcome.NotProven
                : worst is Outcome.Undetermined || o == Outcome.Undetermined ? Outcome.Undetermined
                : Outcome.Proven;
        }

        return worst ?? Outcome.Undetermined;
    }
}
