using Rinsewright.Engine.Quantities;
using Rinsewright.Engine.Records;

namespace Rinsewright.Engine.Sanitization;

/// <summary>
/// Judges a chemical sanitizing rinse: concentration × pH × temperature (and water hardness for quats) by the rule set's table, the contact time,
/// and the ceiling; too strong is out of range as well. Rules C1 to C4 of the README.
/// </summary>
public static class ChemicalJudgement
{
    /// <summary>Checks the readings of the sanitizing solution.</summary>
    /// <param name="terms">Machine, method, rule set, label.</param>
    /// <param name="limits">Limits in force (ceiling, data plate).</param>
    /// <param name="readings">Readings; those of the sanitizing solution are used, hardness also from the supply.</param>
    /// <returns>Strength first, then acidity, temperature, hardness and contact time, <i>not read</i> ones included.</returns>
    public static IReadOnlyList<Check> Judge(ProofTerms terms, IReadOnlyList<Limit> limits, IReadOnlyList<Reading> readings)
    {
        var solution = new Solution(
            Latest(readings, Dimension.MassConcentration),
            Latest(readings, Dimension.Acidity),
            Latest(readings, Dimension.Temperature),
            Latest(readings, Dimension.Hardness),
            Latest(readings, Dimension.Duration)
        );
        var rows = terms.Rules.Sanitizers.Where(r => r.Method == terms.Method).ToList();
        if (rows.Count == 0)
        {
            return
            [
                Undetermined(
                    "sanitizer",
                    null,
                    Statement.Of("proof.no-sanitizer-table", ("rules", terms.Rules.Title)),
                    Statement.Of("proof.settle-rules")
                ),
            ];
        }

        var checks = new List<Check>();
        var row = Strength(terms, limits, rows, solution, checks);
        if (row is not null)
        {
            Conditions(terms, row, solution, checks);
        }

        Contact(terms, solution, checks);
        return checks;
    }

    // C1: the concentration picks the row; below the first row or above the ceiling it is out of range.
    private static SanitizerRow? Strength(
        ProofTerms terms,
        IReadOnlyList<Limit> limits,
        List<SanitizerRow> rows,
        Solution s,
        List<Check> checks
    )
    {
        const string Id = "sanitizer-strength";
        if (s.Strength is not { } reading)
        {
            checks.Add(NotRead(Id, "proof.strength-not-read"));
            return null;
        }

        var value = reading.Value;
        var steps = new List<DerivationStep>();
        var bounds = limits.Where(l => l.Point == MeasuringPoint.SanitizingSolution && l.Dimension == Dimension.MassConcentration).ToList();
        if (LabelBound(terms.Label?.Minimum, LimitSense.Minimum) is { } least)
        {
            bounds.Add(least);
        }

        if (LabelBound(terms.Label?.Maximum, LimitSense.Maximum) is { } most)
        {
            bounds.Add(most);
        }

        steps.AddRange(bounds.Select(b => ReadingJudgement.Compare(value, b)));
        if (bounds.Find(b => ReadingJudgement.Violates(value, b)) is { } broken)
        {
            var key = broken.Sense == LimitSense.Minimum ? "proof.strength-low" : "proof.strength-high";
            checks.Add(
                Make(
                    Id,
                    Outcome.NotProven,
                    ReadingStatus.OutOfRange,
                    reading,
                    broken,
                    Statement.Of(key, ("value", value), ("limit", broken.PrintedIn(value.Unit)), ("source", broken.Citation)),
                    steps
                )
            );
            return null;
        }

        var fitting = rows.Where(r => r.Minimum is not { } m || value.SI >= m.SI * (1 - 1e-12))
            .Where(r => r.Below is not { } b || value.SI < b.SI * (1 - 1e-12))
            .ToList();
        if (fitting.Count == 0)
        {
            var lowest = rows.MinBy(r => r.Minimum?.SI ?? 0)!;
            steps.Add(
                new DerivationStep(
                    "C1",
                    Statement.Of("proof.step-no-row", ("value", value), ("limit", lowest.Minimum!.Value)),
                    lowest.Minimum,
                    lowest.Citation
                )
            );
            checks.Add(
                Make(
                    Id,
                    Outcome.NotProven,
                    ReadingStatus.OutOfRange,
                    reading,
                    null,
                    Statement.Of("proof.strength-low", ("value", value), ("limit", lowest.Minimum!.Value), ("source", lowest.Citation)),
                    steps
                )
            );
            return null;
        }

        if (fitting[0].Minimum is null && terms.Label?.Minimum is null)
        {
            checks.Add(
                Make(
                    Id,
                    Outcome.Undetermined,
                    ReadingStatus.Open,
                    reading,
                    null,
                    Statement.Of("proof.label-needed", ("source", fitting[0].Citation)),
                    steps,
                    Statement.Of("proof.settle-product-label")
                )
            );
            return PickByAcidity(fitting, s, checks);
        }

        checks.Add(
            Make(
                Id,
                Outcome.Proven,
                ReadingStatus.InRange,
                reading,
                bounds.FirstOrDefault(),
                Statement.Of("proof.strength-in-range", ("value", value), ("source", fitting[0].Citation)),
                [
                    .. steps,
                    new DerivationStep(
                        "C1",
                        Statement.Of("proof.step-row", ("value", value), ("limit", fitting[0].Minimum ?? terms.Label!.Minimum!.Value)),
                        fitting[0].Minimum,
                        fitting[0].Citation
                    ),
                ]
            )
        );
        return PickByAcidity(fitting, s, checks);
    }

    // C2: of the rows of that strength, the mildest that the pH allows.
    private static SanitizerRow? PickByAcidity(List<SanitizerRow> rows, Solution s, List<Check> checks)
    {
        const string Id = "sanitizer-acidity";
        if (rows.TrueForAll(r => r.AcidityMaximum is null))
        {
            return rows[0];
        }

        if (s.Acidity is not { } reading)
        {
            checks.Add(NotRead(Id, "proof.acidity-not-read"));
            return null;
        }

        var highest = rows.MaxBy(r => r.AcidityMaximum)!;
        if (reading.Value.Value > highest.AcidityMaximum)
        {
            var because = Statement.Of(
                "proof.acidity-not-covered",
                ("value", reading.Value),
                ("limit", new Amount(highest.AcidityMaximum!.Value, Units.PH)),
                ("source", highest.Citation)
            );
            checks.Add(
                Make(
                    Id,
                    Outcome.NotProven,
                    ReadingStatus.OutOfRange,
                    reading,
                    null,
                    because,
                    [new DerivationStep("C2", because, null, highest.Citation)],
                    Statement.Of("proof.settle-approval")
                )
            );
            return null;
        }

        var row = rows.Where(r => r.AcidityMaximum is null || reading.Value.Value <= r.AcidityMaximum)
            .MinBy(r => r.TemperatureMinimum.Count == 0 ? 0 : r.TemperatureMinimum[0].SI)!;
        var says = Statement.Of(
            "proof.acidity-row",
            ("value", reading.Value),
            ("limit", new Amount(row.AcidityMaximum ?? 14, Units.PH)),
            ("source", row.Citation)
        );
        checks.Add(
            Make(Id, Outcome.Proven, ReadingStatus.InRange, reading, null, says, [new DerivationStep("C2", says, null, row.Citation)])
        );
        return row;
    }

    // C3: temperature and water hardness of the row, or of the label where it says more.
    private static void Conditions(ProofTerms terms, SanitizerRow row, Solution s, List<Check> checks)
    {
        if (row.TemperatureMinimum.Count > 0 || terms.Label?.TemperatureMinimum is not null)
        {
            var printed = terms.Label?.TemperatureMinimum is { } t ? [t] : row.TemperatureMinimum;
            Condition(
                "sanitizer-temperature",
                s.Temperature,
                Bound("sanitizer-temperature", LimitSense.Minimum, printed, row.Citation),
                "proof.solution-cold",
                "proof.solution-warm-enough",
                "proof.solution-temperature-not-read"
            );
        }

        if (row.HardnessMaximum.Count > 0)
        {
            var printed = terms.Label?.WaterHardnessMaximum is { } h ? [h] : row.HardnessMaximum;
            Condition(
                "sanitizer-hardness",
                s.Hardness,
                Bound("sanitizer-hardness", LimitSense.Maximum, printed, row.Citation),
                "proof.water-too-hard",
                "proof.water-soft-enough",
                "proof.hardness-not-read"
            );
        }

        void Condition(string id, Reading? reading, Limit limit, string fails, string holds, string notRead)
        {
            if (reading is null)
            {
                checks.Add(NotRead(id, notRead) with { Limit = limit });
                return;
            }

            var broken = ReadingJudgement.Violates(reading.Value, limit);
            checks.Add(
                Make(
                    id,
                    broken ? Outcome.NotProven : Outcome.Proven,
                    broken ? ReadingStatus.OutOfRange : ReadingStatus.InRange,
                    reading,
                    limit,
                    Statement.Of(
                        broken ? fails : holds,
                        ("value", reading.Value),
                        ("limit", limit.PrintedIn(reading.Value.Unit)),
                        ("source", limit.Citation)
                    ),
                    [ReadingJudgement.Compare(reading.Value, limit) with { Equation = "C3" }]
                )
            );
        }
    }

    // C4: the shortest contact time whose conditions are shown to hold; the label may ask for more.
    private static void Contact(ProofTerms terms, Solution s, List<Check> checks)
    {
        const string Id = "contact-time";
        var times = terms.Rules.Contact.Where(c => c.Method == terms.Method && Holds(c, s)).ToList();
        if (times.Count == 0)
        {
            return;
        }

        var shortest = times.MinBy(c => c.Least.SI)!;
        var least = terms.Label?.ContactTimeMinimum is { } l && l.SI > shortest.Least.SI ? l : shortest.Least;
        var limit = Bound(Id, LimitSense.Minimum, [least], shortest.Citation);
        if (s.Contact is not { } reading)
        {
            checks.Add(NotRead(Id, "proof.contact-not-read") with { Limit = limit });
            return;
        }

        var broken = ReadingJudgement.Violates(reading.Value, limit);
        checks.Add(
            Make(
                Id,
                broken ? Outcome.NotProven : Outcome.Proven,
                broken ? ReadingStatus.OutOfRange : ReadingStatus.InRange,
                reading,
                limit,
                Statement.Of(
                    broken ? "proof.contact-short" : "proof.contact-long-enough",
                    ("value", reading.Value),
                    ("limit", least),
                    ("source", shortest.Citation)
                ),
                [ReadingJudgement.Compare(reading.Value, limit) with { Equation = "C4" }]
            )
        );
    }

    private static bool Holds(ContactTime c, Solution s) =>
        (c.Minimum is not { } m || (s.Strength is { } r && r.Value.SI >= m.SI * (1 - 1e-12)))
        && (c.AcidityMaximum is not { } a || (s.Acidity is { } p && p.Value.Value <= a))
        && (
            c.TemperatureMinimum.Count == 0
            || (s.Temperature is { } t && t.Value.Value >= Limit.Pick(c.TemperatureMinimum, t.Value.Unit).Value)
        );

    private static Reading? Latest(IReadOnlyList<Reading> readings, Dimension dimension) =>
        readings.LastOrDefault(r =>
            r.Value.Unit.Dimension == dimension
            && (r.Point == MeasuringPoint.SanitizingSolution || (dimension == Dimension.Hardness && r.Point == MeasuringPoint.WaterSupply))
        );

    /// <summary>What bounds the strength besides the limits in force: the first row of the table, and the label.</summary>
    internal static IEnumerable<Limit> StrengthBounds(ProofTerms terms)
    {
        var rows = terms.Rules.Sanitizers.Where(r => r.Method == terms.Method).ToList();
        return (
            (Limit?[])
                [
                    rows.TrueForAll(r => r.Minimum is not null) && rows.MinBy(r => r.Minimum!.Value.SI) is { } row
                        ? Bound("table", LimitSense.Minimum, [row.Minimum!.Value], row.Citation)
                        : null,
                    LabelBound(terms.Label?.Minimum, LimitSense.Minimum),
                    LabelBound(terms.Label?.Maximum, LimitSense.Maximum),
                ]
        ).OfType<Limit>();
    }

    private static Limit? LabelBound(Amount? figure, LimitSense sense) =>
        figure is { } f ? Bound("label", sense, [f], new Citation("product-label", "", "Product label", Basis: Basis.Service)) : null;

    private static Limit Bound(string id, LimitSense sense, IReadOnlyList<Amount> printed, Citation citation) =>
        new(id, MeasuringPoint.SanitizingSolution, sense, printed, LimitForce.Rule, citation, [], []);

    private static Check NotRead(string id, string key) =>
        Undetermined(id, ReadingStatus.NotRead, Statement.Of(key), Statement.Of(key + "-settle"));

    private static Check Undetermined(string id, ReadingStatus? status, Statement because, Statement settle) =>
        new(id, Outcome.Undetermined, status ?? ReadingStatus.Open, null, null, null, null, because, [settle], []);

    private static Check Make(
        string id,
        Outcome outcome,
        ReadingStatus status,
        Reading reading,
        Limit? limit,
        Statement because,
        IReadOnlyList<DerivationStep> steps,
        Statement? settle = null
    ) =>
        new(
            id,
            outcome,
            status,
            reading.Value,
            null,
            null,
            limit,
            because,
            [.. ((Statement?[])[outcome == Outcome.Proven ? null : TypedRange.UnitQuestion(reading), settle]).OfType<Statement>()],
            steps,
            reading
        );

    private sealed record Solution(Reading? Strength, Reading? Acidity, Reading? Temperature, Reading? Hardness, Reading? Contact);
}
