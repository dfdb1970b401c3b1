using Rinsewright.Engine.Quantities;
using Rinsewright.Engine.Records;

namespace Rinsewright.Engine.Sanitization;

/// <summary>What sanitizing in a sink has to hold by the rule set in force.</summary>
/// <param name="Minimum">Least strength; null for hot water.</param>
/// <param name="Maximum">Most; null where nothing says it.</param>
/// <param name="Temperature">Least temperature, in every unit printed; empty where nothing says it.</param>
/// <param name="AcidityMaximum">Highest pH it is good for; null where nothing says it.</param>
/// <param name="Contact">Least time under the surface; null where nothing says it.</param>
/// <param name="Citations">Where that is printed, strength or temperature first.</param>
public sealed record HandRequirement(
    Amount? Minimum,
    Amount? Maximum,
    IReadOnlyList<Amount> Temperature,
    double? AcidityMaximum,
    Amount? Contact,
    IReadOnlyList<Citation> Citations
);

/// <summary>
/// Sanitizing by immersion in a sink. Rule C5 of the README: the row of the table that the planned temperature and pH allow with the least strength; a pH that is not known takes the row with
/// the highest; where rows name no temperature, the strongest counts. A rule made for hands stands in front of the table. Of contact times the shortest whose conditions are shown to hold.
/// </summary>
public static class HandSanitizing
{
    /// <summary>What is asked of the wash, in every unit printed; empty where the set says nothing.</summary>
    public static HandRule? Wash(RuleSet rules) => rules.ByHand.FirstOrDefault(h => h.Step == HandStep.Wash);

    /// <summary>What is asked of sanitizing.</summary>
    /// <param name="rules">Rule set in force.</param>
    /// <param name="method">Sanitizer.</param>
    /// <param name="at">Temperature the solution will have; not used for hot water.</param>
    /// <param name="pH">Its pH; null where it is not known.</param>
    /// <param name="label">What the product's label says.</param>
    /// <returns>Null where the set says nothing of this, or where nothing in it fits so cold or so alkaline a solution.</returns>
    public static HandRequirement? Required(RuleSet rules, SanitizingMethod method, Amount at, double? pH, SanitizerLabel label)
    {
        var hand = rules.ByHand.FirstOrDefault(h => h.Step == HandStep.Sanitize && h.Method == method);
        if (method == SanitizingMethod.HotWater)
        {
            return hand is null ? null : new HandRequirement(null, null, hand.TemperatureMinimum, null, hand.Least, [hand.Citation]);
        }

        var row = Row(rules, method, hand?.Minimum, at, pH);
        var minimum = Stronger(label.Minimum, hand?.Minimum ?? row?.Minimum);
        if (minimum is not { } least || (row is null && hand is null))
        {
            return null;
        }

        var time = hand?.Least is null ? Contact(rules, method, least, at, pH) : null;
        List<Citation> citations = [];
        foreach (var citation in (Citation?[])[hand?.Citation, row?.Citation, time?.Citation])
        {
            if (citation is not null && !citations.Contains(citation))
            {
                citations.Add(citation);
            }
        }

        return new HandRequirement(
            least,
            Maximum(rules, method, label),
            row?.TemperatureMinimum ?? hand?.TemperatureMinimum ?? [],
            row?.AcidityMaximum,
            Longer(hand?.Least ?? time?.Least, label.ContactTimeMinimum),
            citations
        );
    }

    /// <summary>Hardest water a rule set allows with a sanitizer; empty where it says nothing.</summary>
    public static IReadOnlyList<Amount> HardnessMaximum(RuleSet rules, SanitizingMethod method) =>
        rules.Sanitizers.FirstOrDefault(r => r.Method == method)?.HardnessMaximum ?? [];

    private static SanitizerRow? Row(RuleSet rules, SanitizingMethod method, Amount? byHand, Amount at, double? pH)
    {
        var fits = rules
            .Sanitizers.Where(r =>
                r.Method == method
                && (byHand is not { } b || ((r.Minimum?.SI ?? 0) <= b.SI && (r.Below is not { } below || b.SI < below.SI)))
                && (r.TemperatureMinimum.Count == 0 || at.Value >= Limit.Pick(r.TemperatureMinimum, at.Unit).Value)
            )
            .ToList();
        var column = pH is { } p
            ? fits.Where(r => r.AcidityMaximum is not { } most || p <= most).OrderBy(r => r.AcidityMaximum ?? double.MaxValue)
            : fits.OrderByDescending(r => r.AcidityMaximum ?? double.MaxValue);
        var first = column.FirstOrDefault();
        var rows = column.Where(r => r.AcidityMaximum == first?.AcidityMaximum);
        return fits.Exists(r => r.TemperatureMinimum.Count == 0)
            ? rows.OrderByDescending(r => r.Minimum?.SI ?? 0).FirstOrDefault()
            : rows.OrderBy(r => r.Minimum?.SI ?? 0).FirstOrDefault();
    }

    private static ContactTime? Contact(RuleSet rules, SanitizingMethod method, Amount strength, Amount at, double? pH) =>
        rules
            .Contact.Where(c =>
                c.Method == method
                && (c.Minimum is not { } m || strength.SI >= m.SI * (1 - 1e-12))
                && (c.AcidityMaximum is not { } a || pH <= a)
                && (c.TemperatureMinimum.Count == 0 || at.Value >= Limit.Pick(c.TemperatureMinimum, at.Unit).Value)
            )
            .MinBy(c => c.Least.SI);

    private static Amount? Maximum(RuleSet rules, SanitizingMethod method, SanitizerLabel label)
    {
        var ceiling = rules
            .Limits.Where(l =>
                l.Point == MeasuringPoint.SanitizingSolution
                && l.Sense == LimitSense.Maximum
                && l.Dimension == Dimension.MassConcentration
                && l.Methods.Contains(method)
            )
            .Select(l => (Amount?)l.Printed[0])
            .FirstOrDefault();
        return label.Maximum is { } own && (ceiling is not { } c || own.SI < c.SI) ? own : ceiling;
    }

    private static Amount? Stronger(Amount? a, Amount? b) => Longer(a, b);

    private static Amount? Longer(Amount? a, Amount? b) => a is { } x && b is { } y ? (x.SI >= y.SI ? x : y) : a ?? b;
}
