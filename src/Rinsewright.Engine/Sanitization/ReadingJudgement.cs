using Rinsewright.Engine.Quantities;
using Rinsewright.Engine.Records;

namespace Rinsewright.Engine.Sanitization;

/// <summary>
/// Judges one reading against the limits of its point. The comparison is made in the unit the reading was taken in, against the figure printed in
/// that unit (README, rule P1); only a unit nobody printed is converted.
/// </summary>
public static class ReadingJudgement
{
    /// <summary>Judges a typed-in reading.</summary>
    /// <param name="reading">What was read.</param>
    /// <param name="limits">Limits in force.</param>
    /// <param name="instruments">What the rule asks of instruments.</param>
    public static Check Judge(Reading reading, IReadOnlyList<Limit> limits, IReadOnlyList<InstrumentRule> instruments)
    {
        var own = limits.Where(l => l.Point == reading.Point && l.Dimension == reading.Value.Unit.Dimension).ToList();
        return reading.Method == ReadingMethod.IrreversibleLabel ? JudgeLabel(reading, own) : JudgeValue(reading, own, instruments);
    }

    /// <summary>A line for a point whose reading was not taken: shown, never passed over.</summary>
    public static Check NotRead(Limit limit) =>
        new(
            IdOf(limit.Point, limit.Dimension),
            Outcome.Undetermined,
            ReadingStatus.NotRead,
            null,
            null,
            null,
            limit,
            Statement.Of("proof.not-read", ("point", limit.Point), ("limit", limit.Printed[0])),
            [Statement.Of("proof.settle-read", ("point", limit.Point))],
            []
        );

    /// <summary>Id of the check of one point and quantity.</summary>
    internal static string IdOf(MeasuringPoint point, Dimension dimension) => $"{Kebab(point.ToString())}-{Kebab(dimension.ToString())}";

    internal static string Kebab(string name) =>
        string.Concat(name.Select((c, i) => char.IsUpper(c) ? (i > 0 ? "-" : "") + char.ToLowerInvariant(c) : c.ToString()));

    /// <summary>The comparison of a value with one limit, as a step.</summary>
    internal static DerivationStep Compare(Amount value, Limit limit)
    {
        var figure = limit.PrintedIn(value.Unit);
        var printed = limit.Printed.Any(p => p.Unit == value.Unit);
        var key = printed ? "proof.step-compare" : "proof.step-compare-converted";
        return new DerivationStep(
            "P1",
            Statement.Of(
                key,
                ("value", value),
                ("sense", limit.Sense),
                ("limit", figure),
                ("printed", limit.Printed[0]),
                ("source", limit.Citation)
            ),
            figure,
            limit.Citation
        );
    }

    internal static bool Violates(Amount value, Limit limit)
    {
        var figure = limit.PrintedIn(value.Unit).Value;
        return limit.Sense == LimitSense.Minimum ? value.Value < figure : value.Value > figure;
    }

    private static Check JudgeLabel(Reading reading, List<Limit> own)
    {
        const string Id = "ware-surface-label";
        var reached = reading.Reached == true;
        var limit = own.FirstOrDefault(l => l.Sense == LimitSense.Minimum);
        if (limit is null)
        {
            return Without(Id, reading);
        }

        var steps = new List<DerivationStep>
        {
            new("P3", Statement.Of(reached ? "proof.step-label-turned" : "proof.step-label-not-turned", ("label", reading.Value))),
            Compare(reading.Value, limit),
        };
        if (Expired(reading) is { } expired)
        {
            return Make(Outcome.Undetermined, ReadingStatus.Open, expired, Statement.Of("proof.settle-fresh"));
        }

        var figure = limit.PrintedIn(reading.Value.Unit);
        return (reached, reading.Value.Value >= figure.Value, reading.Value.Value <= figure.Value) switch
        {
            (true, true, _) => Make(
                Outcome.Proven,
                ReadingStatus.InRange,
                Statement.Of("proof.label-reached", ("label", reading.Value), ("limit", figure))
            ),
            (false, _, true) => Make(
                Outcome.NotProven,
                ReadingStatus.OutOfRange,
                Statement.Of("proof.label-not-reached", ("label", reading.Value), ("limit", figure))
            ),
            (true, false, _) => Make(
                Outcome.Undetermined,
                ReadingStatus.Open,
                Statement.Of("proof.label-too-low", ("label", reading.Value), ("limit", figure)),
                Statement.Of("proof.settle-label", ("limit", figure))
            ),
            _ => Make(
                Outcome.Undetermined,
                ReadingStatus.Open,
                Statement.Of("proof.label-too-high", ("label", reading.Value), ("limit", figure)),
                Statement.Of("proof.settle-label", ("limit", figure))
            ),
        };

        Check Make(Outcome outcome, ReadingStatus status, Statement because, Statement? settle = null) =>
            new(Id, outcome, status, reading.Value, null, null, limit, because, Settles(reading, outcome, settle), steps, reading);
    }

    // What misses its limit may have been typed in the other unit: that is asked first.
    private static IReadOnlyList<Statement> Settles(Reading reading, Outcome outcome, params Statement?[] settle) =>
        [.. ((Statement?[])[outcome == Outcome.Proven ? null : TypedRange.UnitQuestion(reading), .. settle]).OfType<Statement>()];

    private static Check JudgeValue(Reading reading, List<Limit> own, IReadOnlyList<InstrumentRule> instruments)
    {
        var id = IdOf(reading.Point, reading.Value.Unit.Dimension);
        var value = reading.Value;
        var binding = own.Where(l => l.Force != LimitForce.CommonPractice).ToList();
        var steps = own.Select(l => Compare(value, l)).ToList();
        var (half, stated) = Uncertainty(reading, instruments);
        Amount? low = half is { } u ? value with { Value = value.Value - u } : null;
        Amount? high = half is { } w ? value with { Value = value.Value + w } : null;
        if (half is { } assumed && !stated)
        {
            var allowed = new Amount(
                assumed,
                value.Unit == Units.Fahrenheit ? Units.FahrenheitDifference
                    : value.Unit == Units.Celsius ? Units.CelsiusDifference
                    : value.Unit
            );
            steps.Add(new DerivationStep("P5", Statement.Of("proof.step-reading-assumed", ("uncertainty", allowed)), allowed));
        }

        if (reading.Point == MeasuringPoint.WareSurface && Ware() is { } open)
        {
            return open;
        }

        if (binding.Find(l => Violates(value, l)) is { } broken)
        {
            return Make(Outcome.NotProven, ReadingStatus.OutOfRange, broken, Because("proof.reading-below", "proof.reading-above", broken));
        }

        if (Unfit(reading, instruments) is { } unfit)
        {
            steps.Add(unfit.Step);
            return Make(Outcome.Undetermined, ReadingStatus.Open, binding.FirstOrDefault(), unfit.Because, unfit.Settle);
        }

        if (Expired(reading) is { } expired)
        {
            return Make(Outcome.Undetermined, ReadingStatus.Open, binding.FirstOrDefault(), expired, Statement.Of("proof.settle-fresh"));
        }

        if (own.Find(l => l.Force == LimitForce.CommonPractice && Violates(value, l)) is { } unusual)
        {
            return Make(
                Outcome.Proven,
                ReadingStatus.NearLimit,
                unusual,
                Because("proof.reading-unusual-low", "proof.reading-unusual-high", unusual)
            );
        }

        if (half is { } h && binding.Find(l => Math.Abs(value.Value - l.PrintedIn(value.Unit).Value) < h) is { } near)
        {
            steps.Add(new DerivationStep("P2", Statement.Of("proof.step-uncertainty", ("low", low!.Value), ("high", high!.Value))));
            return Make(
                Outcome.Proven,
                ReadingStatus.NearLimit,
                near,
                Statement.Of(
                    stated ? "proof.reading-within-uncertainty" : "proof.reading-within-assumed",
                    ("point", reading.Point),
                    ("value", value),
                    ("limit", near.PrintedIn(value.Unit))
                )
            );
        }

        if (Overdue(reading))
        {
            return Make(
                Outcome.Proven,
                ReadingStatus.NearLimit,
                binding.FirstOrDefault(),
                Statement.Of("proof.calibration-overdue", ("instrument", reading.Instrument!.Name))
            );
        }

        // A band of practice alone is still a band to be in.
        return (binding.Count > 0 ? binding : own).FirstOrDefault() is { } first
            ? Make(
                Outcome.Proven,
                ReadingStatus.InRange,
                first,
                Statement.Of("proof.reading-in-range", ("point", reading.Point), ("value", value), ("limit", first.PrintedIn(value.Unit)))
            )
            : Without(id, reading);

        Statement Because(string below, string above, Limit limit) =>
            Statement.Of(
                limit.Sense == LimitSense.Minimum ? below : above,
                ("point", reading.Point),
                ("value", value),
                ("limit", limit.PrintedIn(value.Unit)),
                ("source", limit.Citation)
            );

        // The ware itself is proven only where the lower bound passes, as with a logger; a tank or a gauge is compared as it was read.
        Check? Ware()
        {
            if (binding.Find(l => l.Sense == LimitSense.Minimum) is not { } least || low is not { } lower || high is not { } upper)
            {
                return null;
            }

            var (above, possible) = (!Violates(value, least), !Violates(upper, least));
            return !Violates(lower, least) || !possible
                ? null
                : Make(
                    Outcome.Undetermined,
                    above ? ReadingStatus.NearLimit : ReadingStatus.Open,
                    least,
                    Statement.Of(
                        above ? "proof.peak-open-above" : "proof.peak-open-below",
                        ("value", value),
                        ("low", lower),
                        ("high", upper),
                        ("limit", least.PrintedIn(value.Unit)),
                        ("source", least.Citation)
                    ),
                    Statement.Of("proof.settle-thermometer"),
                    Statement.Of("proof.settle-label", ("limit", least.PrintedIn(value.Unit)))
                );
        }

        Check Make(Outcome outcome, ReadingStatus status, Limit? limit, Statement because, params Statement[] settle) =>
            new(id, outcome, status, value, low, high, limit, because, Settles(reading, outcome, settle), steps, reading);
    }

    private static Check Without(string id, Reading reading) =>
        new(
            id,
            Outcome.Undetermined,
            ReadingStatus.NoLimit,
            reading.Value,
            null,
            null,
            null,
            Statement.Of("proof.no-limit", ("point", reading.Point), ("value", reading.Value)),
            [],
            [],
            reading
        );

    // Half-width in the unit of the reading: the stated one, else the worst the rule in force allows such an instrument (P5); null where it says nothing.
    private static (double? Half, bool Stated) Uncertainty(Reading reading, IReadOnlyList<InstrumentRule> rules)
    {
        var unit = reading.Value.Unit;
        if (Fitting(reading)?.Uncertainty is { } stated)
        {
            return (OnScaleOf(unit, stated), true);
        }

        var rule = rules.FirstOrDefault(r => r.Aspect == InstrumentAspect.Uncertainty && r.Measures == unit.Dimension);
        if (unit.Dimension != Dimension.Temperature)
        {
            return (rule is null ? null : Limit.Pick(rule.Maximum, unit).Value, false);
        }

        var worst = rule is null
            ? SanitizationProof.WorstAllowed(unit)
            : Limit.Pick(rule.Maximum, unit == Units.Fahrenheit ? Units.FahrenheitDifference : Units.CelsiusDifference);
        return (OnScaleOf(unit, worst), false);
    }

    // A ± is stated as a difference: on the scale of the reading, exactly as stated where the degrees are the same.
    private static double OnScaleOf(Unit unit, Amount halfWidth) =>
        (unit == Units.Fahrenheit && halfWidth.Unit == Units.FahrenheitDifference)
        || (unit == Units.Celsius && halfWidth.Unit == Units.CelsiusDifference)
        || unit == halfWidth.Unit
            ? halfWidth.Value
            : halfWidth.SI * unit.Denominator / unit.Numerator;

    // What a gauge states in psi says nothing of a temperature that is written beside it.
    private static Instrument? Fitting(Reading reading) =>
        reading.Instrument is { } i && i.Measures(reading.Value.Unit.Dimension) ? i : null;

    private static (DerivationStep Step, Statement Because, Statement Settle)? Unfit(Reading reading, IReadOnlyList<InstrumentRule> rules)
    {
        foreach (var rule in rules.Where(r => r.Measures == reading.Value.Unit.Dimension))
        {
            var stated = rule.Aspect == InstrumentAspect.Uncertainty ? Fitting(reading)?.Uncertainty : Fitting(reading)?.Division;
            if (stated is { } s && Limit.Pick(rule.Maximum, s.Unit) is var allowed && s.Value > allowed.Value)
            {
                var key = rule.Aspect == InstrumentAspect.Uncertainty ? "proof.instrument-uncertain" : "proof.instrument-coarse";
                var says = Statement.Of(key, ("stated", s), ("allowed", allowed), ("source", rule.Citation));
                return (
                    new DerivationStep("P4", says, allowed, rule.Citation),
                    says,
                    Statement.Of("proof.settle-instrument", ("allowed", allowed))
                );
            }
        }

        return null;
    }

    private static Statement? Expired(Reading reading) =>
        reading is { Expires: { } end, At: { } at } && DateOnly.FromDateTime(at.DateTime) > end
            ? Statement.Of("proof.expired", ("date", end))
            : null;

    private static bool Overdue(Reading reading) =>
        reading is { Instrument.CalibrationDue: { } due, At: { } at } && DateOnly.FromDateTime(at.DateTime) > due;
}
