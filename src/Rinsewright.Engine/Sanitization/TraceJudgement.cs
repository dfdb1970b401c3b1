using Rinsewright.Engine.Quantities;
using Rinsewright.Engine.Records;

namespace Rinsewright.Engine.Sanitization;

/// <summary>Judges what a logger's channel shows: finds its passes and proves each one against the surface limits in force.</summary>
internal sealed class TraceJudgement
{
    // Practice with ISO 15883 counts A0 from 65 °C up [a0-concept].
    private static readonly Temperature A0Floor = Temperature.FromCelsius(65);

    private readonly HeatDose heatUnits;
    private readonly HeatDose a0 = HeatDose.A0(A0Floor);
    private readonly TemperatureDifference uncertainty;
    private readonly IReadOnlyList<Limit> surface;
    private readonly PassRules rules;
    private readonly ProofTerms terms;
    private readonly IReadOnlyList<DerivationStep> doseSteps;
    private readonly IReadOnlyList<DerivationStep> a0Steps;
    private readonly double doseFloorC;

    public TraceJudgement(ProofTerms terms, IReadOnlyList<Limit> limits, Amount uncertaintyUsed, bool stated, PassRules rules)
    {
        this.terms = terms;
        this.rules = rules;
        uncertainty = TemperatureDifference.FromCelsius(uncertaintyUsed.SI);
        var options = terms.HeatUnits ?? HeatUnitOptions.Default;
        heatUnits = HeatDose.HeatUnits(options);
        doseFloorC = (options.Floor ?? Temperature.FromFahrenheit(143)).InCelsius;
        surface = [.. limits.Where(l => l.Point == MeasuringPoint.WareSurface && l.Sense == LimitSense.Minimum)];
        var unsure = new DerivationStep(
            "S5",
            Statement.Of(stated ? "proof.step-instrument" : "proof.step-instrument-assumed", ("uncertainty", uncertaintyUsed)),
            uncertaintyUsed
        );
        var sampling = new DerivationStep("S4", Statement.Of("proof.step-sampling"));
        doseSteps =
        [
            new DerivationStep(
                "S1",
                Statement.Of("proof.step-hue-rate"),
                null,
                new Citation("hue-history-2009", "rate equation", "NSF/ANSI 3, heat unit equivalents")
            ),
            new DerivationStep("S2", Statement.Of("proof.step-integral")),
            new DerivationStep(
                "S1",
                options.Cap is { } cap
                    ? Statement.Of("proof.step-cap", ("cap", new Amount(Math.Round(cap.InFahrenheit, 6), Units.Fahrenheit)))
                    : Statement.Of("proof.step-no-cap")
            ),
            new DerivationStep(
                "S1",
                options.Floor is { } floor
                    ? Statement.Of("proof.step-floor", ("floor", new Amount(Math.Round(floor.InFahrenheit, 6), Units.Fahrenheit)))
                    : Statement.Of("proof.step-no-floor")
            ),
            sampling,
            unsure,
        ];
        a0Steps =
        [
            new DerivationStep(
                "S3",
                Statement.Of("proof.step-a0-rate", ("floor", new Amount(65, Units.Celsius))),
                null,
                new Citation("iso-15883-1", "Annex B", "ISO 15883-1", Basis: Basis.SecondHand)
            ),
            new DerivationStep("S2", Statement.Of("proof.step-integral")),
            sampling,
            unsure,
        ];
    }

    public ChannelProof Judge(Trace trace, MeasuringPoint role)
    {
        var notes = new List<Statement>();
        if (trace.Unit.Dimension != Dimension.Temperature || trace.Count < 2)
        {
            return new ChannelProof(trace, role, [], [Statement.Of("proof.note-too-few")]);
        }

        if (role != MeasuringPoint.WareSurface)
        {
            return new ChannelProof(trace, role, [], [Statement.Of("proof.note-not-ware", ("point", role))]);
        }

        var found = PassFinder.Find(trace, doseFloorC, rules);
        var passes = new List<Pass>(found.Passes.Count);
        var usual = trace.IntervalSeconds;
        foreach (var span in found.Passes)
        {
            passes.Add(JudgePass(trace, span, passes.Count + 1, usual));
        }

        if (passes.Count == 0)
        {
            notes.Add(Statement.Of(found.Drifts > 0 ? "proof.note-drift-only" : "proof.note-no-pass"));
        }
        else if (found.Drifts > 0)
        {
            notes.Add(Statement.Of("proof.note-drift", ("count", (long)found.Drifts)));
        }

        if (usual is { } interval && interval > rules.CoarsestInterval)
        {
            notes.Add(Statement.Of("proof.note-coarse", ("interval", Pace(interval))));
        }

        return new ChannelProof(trace, role, passes, notes);
    }

    /// <summary>The time between two samples as a person says it: from two minutes on in minutes.</summary>
    public static Amount Pace(double seconds) =>
        seconds >= 120 ? new Amount(Math.Round(seconds / 60, 1), Units.Minute) : new Amount(seconds, Units.Second);

    private Pass JudgePass(Trace trace, PassFinder.Span span, int number, double? usual)
    {
        var dose = heatUnits.Over(trace, span.First, span.Last, uncertainty);
        var equivalent = a0.Over(trace, span.First, span.Last, uncertainty);
        var peak = new Amount(trace.ValueAt(span.Peak), trace.Unit);
        var window = new Window(trace, span, peak, Interval(trace, span, usual), HasHole(trace, span), dose, equivalent);
        return new Pass(
            number,
            span.First,
            span.Last,
            trace.SecondsAt(span.First),
            trace.SecondsAt(span.Peak),
            trace.SecondsAt(span.Last),
            peak,
            dose,
            equivalent,
            Verdicts.Worst(surface.Select(l => Decide(window, Measure(window, l)).Outcome)),
            () => Explain(window)
        );
    }

    // The reasons in words and data: made when somebody asks, for a long file has thousands of passes.
    private PassDetail Explain(Window w)
    {
        var checks = surface.Select(l => Explain(w, l, Measure(w, l))).ToList();
        var verdict =
            checks.Count == 0
                ? new Verdict(
                    Outcome.Undetermined,
                    [Statement.Of("proof.no-surface-limit", ("method", terms.Method))],
                    [Statement.Of("proof.settle-chemical")]
                )
                : Verdicts.Worst(checks);
        return new PassDetail(ZoneFinder.Find(w.Trace, w.Span, terms.Machine), checks, verdict);
    }

    private Measured Measure(Window w, Limit limit)
    {
        switch (limit.Dimension)
        {
            case Dimension.HeatUnits:
                return new Measured("heat-dose", "proof.dose", w.HeatUnits, Units.HeatUnit, limit.Printed[0].In(Units.HeatUnit).Value);
            case Dimension.EquivalentTime:
                return new Measured("a0", "proof.a0", w.A0, Units.A0Second, limit.Printed[0].In(Units.A0Second).Value);
            case Dimension.Duration when limit.While is { Count: > 0 } hold:
                var time = HoldTime.Longest(w.Trace, w.Span.First, w.Span.Last, Limit.Pick(hold, w.Trace.Unit), uncertainty);
                return new Measured("hold", "proof.hold", time, Units.Second, limit.Printed[0].In(Units.Second).Value);
            default:
                // The peak is judged as it was logged; the instrument's ± decides whether that settles it.
                var u = uncertainty.InCelsius / (w.Trace.Unit.ToSI(1) - w.Trace.Unit.ToSI(0));
                var peak = new Bounded(w.Peak.Value, w.Peak.Value - u, w.Peak.Value + u);
                return new Measured("peak", "proof.peak", peak, w.Peak.Unit, limit.PrintedIn(w.Peak.Unit).Value);
        }
    }

    private (Outcome Outcome, ReadingStatus Status, string Because) Decide(Window w, Measured m)
    {
        if (w.Interval > rules.CoarsestInterval)
        {
            return (Outcome.Undetermined, ReadingStatus.Open, "proof.too-coarse");
        }

        if (w.Trace.SecondsAt(w.Span.Last) - w.Trace.SecondsAt(w.Span.First) > rules.Longest)
        {
            return (Outcome.Undetermined, ReadingStatus.Open, "proof.too-long");
        }

        if (m.Found.Low >= m.Least)
        {
            return (Outcome.Proven, ReadingStatus.InRange, m.Key + "-proven");
        }

        // A peak may hide in a hole or between slow samples: then its absence shows nothing.
        var mayHide = (w.Hole && m.Unit.Dimension == Dimension.Temperature) || w.Interval > rules.FineInterval;
        return m.Found.High < m.Least && !mayHide ? (Outcome.NotProven, ReadingStatus.OutOfRange, m.Key + "-fails")
            : m.Found.Value >= m.Least ? (Outcome.Undetermined, ReadingStatus.NearLimit, m.Key + "-open-above")
            : (Outcome.Undetermined, ReadingStatus.Open, m.Key + "-open-below");
    }

    private Check Explain(Window w, Limit limit, Measured m)
    {
        var (outcome, status, because) = Decide(w, m);
        Amount value = new(m.Found.Value, m.Unit),
            low = new(m.Found.Low, m.Unit),
            high = new(m.Found.High, m.Unit);
        var settle = new List<Statement>();
        if (outcome == Outcome.Undetermined)
        {
            Settle(w, because, settle);
        }

        var values = new (string, object)[]
        {
            ("value", value),
            ("low", low),
            ("high", high),
            ("limit", limit.PrintedIn(m.Unit)),
            ("source", limit.Citation),
            ("interval", Pace(w.Interval)),
        };
        var steps = Steps(w, limit, m.Id).Append(new DerivationStep("S4", Statement.Of("proof.step-bounds", values), value));
        return new Check(m.Id, outcome, status, value, low, high, limit, Statement.Of(because, values), settle, [.. steps]);
    }

    private IEnumerable<DerivationStep> Steps(Window w, Limit limit, string id) =>
        id switch
        {
            "heat-dose" => doseSteps,
            "a0" => a0Steps,
            "hold" =>
            [
                new DerivationStep(
                    "S6",
                    Statement.Of("proof.step-hold", ("temperature", Limit.Pick(limit.While!, w.Trace.Unit))),
                    null,
                    limit.Citation
                ),
                doseSteps[^2],
                doseSteps[^1],
            ],
            _ => [ReadingJudgement.Compare(w.Peak, limit), doseSteps[^1]],
        };

    private void Settle(Window w, string because, List<Statement> settle)
    {
        if (because == "proof.too-coarse")
        {
            settle.Add(Statement.Of("proof.settle-sampling"));
            return;
        }

        if (because == "proof.too-long")
        {
            settle.Add(Statement.Of("proof.settle-pass"));
            return;
        }

        if (w.Hole)
        {
            settle.Add(Statement.Of("proof.settle-hole"));
        }

        if (w.Interval > 1)
        {
            settle.Add(Statement.Of("proof.settle-sampling"));
        }

        if (uncertainty.InCelsius > 0)
        {
            settle.Add(Statement.Of("proof.settle-calibrated"));
        }

        settle.Add(Statement.Of("proof.settle-pass"));
    }

    // Usual step inside the pass: a logger may sample faster or slower than over the whole file.
    private static double Interval(Trace trace, PassFinder.Span span, double? usual) =>
        span.Last > span.First
            ? Math.Min((trace.SecondsAt(span.Last) - trace.SecondsAt(span.First)) / (span.Last - span.First), usual ?? double.MaxValue)
            : usual ?? 0;

    private static bool HasHole(Trace trace, PassFinder.Span span)
    {
        var holes = new Holes(trace.Marks, span.First);
        for (var i = span.First; i < span.Last && holes.Any; i++)
        {
            if (holes.Between(i))
            {
                return true;
            }
        }

        return false;
    }

    private sealed record Window(Trace Trace, PassFinder.Span Span, Amount Peak, double Interval, bool Hole, Bounded HeatUnits, Bounded A0);

    private readonly record struct Measured(string Id, string Key, Bounded Found, Unit Unit, double Least);
}
