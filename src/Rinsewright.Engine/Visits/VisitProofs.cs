using Rinsewright.Engine.Machines;
using Rinsewright.Engine.Quantities;
using Rinsewright.Engine.Records;
using Rinsewright.Engine.Sanitization;

namespace Rinsewright.Engine.Visits;

/// <summary>The readings of a visit as evidence of sanitizing: which count, and what they prove before and after (V3, V4).</summary>
internal sealed class VisitProofs
{
    private readonly Visit visit;
    private readonly ProofTerms terms;
    private readonly RuleSet rules;
    private readonly Dictionary<VisitReading, Check> checks = new(ReferenceEqualityComparer.Instance);

    public VisitProofs(Visit visit, RuleSet rules)
    {
        this.visit = visit;
        this.rules = rules;
        var machine = visit.Machine;
        terms = new ProofTerms(LimitCheck.TypeOf(machine.Kind), machine.Sanitizing, rules, machine.Plate, visit.Label);
        // What was left untouched is left as it was found.
        var left = visit.Touched
            ? visit.Readings.Where(r => r.Moment == VisitMoment.AsLeft)
            : visit.Readings.Where(r => r.Moment != VisitMoment.Between);
        After = Prove([.. left], Carried(p => visit.Touched ? p.Moment == VisitMoment.AsLeft : p.Moment != VisitMoment.Between));
        Before = Prove([.. visit.Readings.Where(r => r.Moment == VisitMoment.AsFound)], Carried(p => p.Moment == VisitMoment.AsFound));
        _ = Prove([.. visit.Readings.Where(r => r.Moment == VisitMoment.Between)], []);
    }

    public Proof Before { get; }

    public Proof After { get; }

    /// <summary>The check of a reading; null where no rule speaks of it or it may not be used.</summary>
    public Check? Of(VisitReading reading) => checks.GetValueOrDefault(reading);

    /// <summary>Why a reading may not be used as evidence; null where it may.</summary>
    public static Statement? Refused(Visit visit, VisitReading reading)
    {
        if (reading.Value is not { } value || VisitReadingKinds.Find(reading.Kind) is not { } kind)
        {
            return reading.Value is null ? null : Statement.Of("visit.reading.unknown", ("kind", reading.Kind));
        }

        if (value.Unit.Dimension != kind.Unit.Dimension)
        {
            return Statement.Of("visit.reading.other-dimension", ("value", value), ("unit", kind.Unit.Symbol));
        }

        if (!double.IsFinite(value.Value) || TypedRange.Refusal(kind.Point, value) is not null)
        {
            return TypedRange.Refusal(kind.Point, value)
                ?? Statement.Of("visit.reading.other-dimension", ("value", value), ("unit", kind.Unit.Symbol));
        }

        if (reading.Method == ReadingMethod.Strip && Supply(visit, reading) is { Tests: { } made } && made != visit.Machine.Sanitizing)
        {
            return Statement.Of("visit.reading.wrong-strip", ("strip", made), ("machine", visit.Machine.Sanitizing));
        }

        // The table of strengths asks nothing of a strip's date: out of date it shows nothing, and is left out here. A label's date is judged with the label.
        return
            reading.Method == ReadingMethod.Strip
            && Supply(visit, reading)?.Expires is { } end
            && DateOnly.FromDateTime((reading.At ?? visit.Began).DateTime) > end
            ? Statement.Of("visit.reading.expired", ("date", end))
            : null;
    }

    /// <summary>The strip or label of a reading; null where not said.</summary>
    public static TestSupply? Supply(Visit visit, VisitReading reading) =>
        reading.Supply is { } name ? visit.TestSupplies.GetValueOrDefault(name) : null;

    /// <summary>The instrument of a reading; null where not said.</summary>
    public static Instrument? InstrumentOf(Visit visit, VisitReading reading) =>
        reading.Instrument is not { } name ? null
        : (visit.Instruments.GetValueOrDefault(name) ?? new Instrument(name)) is var said
        && (reading.Value is not { } value || said.Measures(value.Unit.Dimension))
            ? said
        : null;

    // A chemical rinse is judged by one strength. Of several racks each is judged, and the worst counts; order of entry never decides.
    private Proof Prove(List<VisitReading> lines, IReadOnlyList<Carried> carried)
    {
        var evidence = lines
            .Where(r => r.Value is not null && Refused(visit, r) is null)
            .Select(r => (Line: r, Reading: ReadingOf(r)))
            .Where(r => r.Reading.Point != MeasuringPoint.Unknown)
            .OrderBy(r => r.Reading.At ?? DateTimeOffset.MaxValue)
            .ThenBy(r => r.Line.Kind, StringComparer.Ordinal)
            .ThenByDescending(r => r.Reading.Value.SI)
            .ToList();
        var strengths = evidence.Where(e => IsStrength(e.Reading)).ToList();
        if (terms.Method == SanitizingMethod.HotWater || strengths.Count < 2)
        {
            return Keep(evidence, carried);
        }

        // The weakest last: what it asks of temperature and pH is what these are shown against.
        var proofs = strengths
            .OrderByDescending(s => s.Reading.Value.SI)
            .Select(s => Keep([.. evidence.Where(e => !IsStrength(e.Reading) || ReferenceEquals(e.Line, s.Line))], carried))
            .ToList();
        return proofs.FindLast(p => p.Verdict.Outcome == Outcome.NotProven)
            ?? proofs.FindLast(p => p.Verdict.Outcome == Outcome.Undetermined)
            ?? proofs[^1];
    }

    private Proof Keep(List<(VisitReading Line, Reading Reading)> evidence, IReadOnlyList<Carried> carried)
    {
        var proof = SanitizationProof.Prove(terms, [], [.. evidence.Select(e => e.Reading)], [], carried);
        foreach (var (line, reading) in evidence)
        {
            if (proof.Checks.FirstOrDefault(c => ReferenceEquals(c.Reading, reading)) is { } check)
            {
                checks[line] = check;
            }
        }

        return proof;
    }

    private IReadOnlyList<Carried> Carried(Func<CountedProof, bool> wanted) =>
        [
            .. visit
                .Proofs.Where(wanted)
                .OrderBy(p => p.At ?? DateTimeOffset.MaxValue)
                .ThenBy(p => p.Name, StringComparer.Ordinal)
                .ThenBy(p => p.Outcome)
                .ThenBy(p => p.Passes)
                .Select(p => p.Says(visit, rules)),
        ];

    private static bool IsStrength(Reading reading) =>
        reading is { Point: MeasuringPoint.SanitizingSolution, Value.Unit.Dimension: Dimension.MassConcentration };

    private Reading ReadingOf(VisitReading r)
    {
        var supply = Supply(visit, r);
        // A strip without a time is dated by the visit, so that an expired one is seen.
        return new Reading(
            VisitReadingKinds.PointOn(VisitReadingKinds.Find(r.Kind)!, visit.Machine),
            r.Value!.Value,
            r.Method,
            InstrumentOf(visit, r),
            r.At ?? visit.Began,
            r.Reached,
            supply?.Lot,
            supply?.Expires
        );
    }
}
