using Rinsewright.Engine.Quantities;
using Rinsewright.Engine.Records;

namespace Rinsewright.Engine.Sanitization;

/// <summary>
/// Entry of the slice: evidence in, verdict with its derivation out. <i>Proven</i> is only ever made here and in the judgements beside it, from complete evidence.
/// </summary>
public static class SanitizationProof
{
    /// <summary>Judges everything that was measured on one machine.</summary>
    /// <param name="terms">What it is judged against.</param>
    /// <param name="channels">Channels of a logger file with the place each sensor was in; empty where there was none.</param>
    /// <param name="readings">Typed-in readings.</param>
    /// <param name="openQuestions">What the reader of the file could not settle; keeps a verdict from being proven.</param>
    public static Proof Prove(
        ProofTerms terms,
        IReadOnlyList<(Trace Trace, MeasuringPoint Role)> channels,
        IReadOnlyList<Reading> readings,
        IReadOnlyList<Statement> openQuestions
    ) => Prove(terms, channels, readings, openQuestions, []);

    /// <summary>The same with proofs made before beside it.</summary>
    internal static Proof Prove(
        ProofTerms terms,
        IReadOnlyList<(Trace Trace, MeasuringPoint Role)> channels,
        IReadOnlyList<Reading> readings,
        IReadOnlyList<Statement> openQuestions,
        IReadOnlyList<Carried> carried
    )
    {
        var limits = LimitsInForce.For(terms);
        var (uncertainty, stated) = UncertaintyUsed(terms, channels);
        var judgement = new TraceJudgement(terms, limits, uncertainty, stated, PassRules.Default);
        var proofs = channels.Select(c => judgement.Judge(c.Trace, c.Role)).ToList();
        var checks = JudgeReadings(terms, limits, readings, proofs.Any(p => p.Passes.Count > 0) || carried.Any(c => c.ShowsWare));
        return new Proof(terms, limits, proofs, checks, Together(terms, proofs, checks, readings, openQuestions, carried));
    }

    /// <summary>
    /// The logger's ± that is used: the stated one, else the worst the Food Code allows a water thermometer, in the unit of the file
    /// (3 °F, or 1.5 °C where it logs Celsius; [cdc-vsp-2018] for 4-203.12).
    /// </summary>
    public static (Amount Value, bool Stated) UncertaintyUsed(
        ProofTerms terms,
        IReadOnlyList<(Trace Trace, MeasuringPoint Role)> channels
    ) =>
        terms.Instrument?.Uncertainty is { } stated
            ? (stated, true)
            : (WorstAllowed(channels.Count > 0 ? channels[0].Trace.Unit : Units.Celsius), false);

    /// <summary>The worst the Food Code allows a water thermometer that reads in this unit ([cdc-vsp-2018] for 4-203.12).</summary>
    internal static Amount WorstAllowed(Unit unit) =>
        unit == Units.Fahrenheit ? new Amount(3, Units.FahrenheitDifference) : new Amount(1.5, Units.CelsiusDifference);

    private static IReadOnlyList<Check> JudgeReadings(
        ProofTerms terms,
        IReadOnlyList<Limit> limits,
        IReadOnlyList<Reading> readings,
        bool hasSurface
    )
    {
        var checks = new List<Check>();
        foreach (var reading in readings.Where(r => r.Point is not (MeasuringPoint.SanitizingSolution or MeasuringPoint.WaterSupply)))
        {
            checks.Add(ReadingJudgement.Judge(reading, limits, terms.Rules.Instruments));
        }

        if (terms.Method != SanitizingMethod.HotWater)
        {
            checks.AddRange(ChemicalJudgement.Judge(terms, limits, readings));
        }

        // Every limited point that nobody read is said, once.
        foreach (var limit in limits.Where(l => l.Force != LimitForce.CommonPractice && l.Point != MeasuringPoint.SanitizingSolution))
        {
            var id = ReadingJudgement.IdOf(limit.Point, limit.Dimension);
            var read =
                checks.Exists(c => c.Id == id) || readings.Any(r => r.Point == limit.Point && r.Value.Unit.Dimension == limit.Dimension);
            if (!read && !(limit.Point == MeasuringPoint.WareSurface && hasSurface))
            {
                checks.Add(ReadingJudgement.NotRead(limit));
            }
        }

        return checks;
    }

    private static Verdict Together(
        ProofTerms terms,
        IReadOnlyList<ChannelProof> proofs,
        IReadOnlyList<Check> checks,
        IReadOnlyList<Reading> readings,
        IReadOnlyList<Statement> openQuestions,
        IReadOnlyList<Carried> carried
    )
    {
        var passes = proofs.SelectMany(p => p.Passes.Select(pass => (Channel: p.Trace.Name, Pass: pass))).ToList();
        var taken = checks.Where(c => c.Status != ReadingStatus.NotRead).ToList();
        var because = new List<Statement>();
        var settle = new List<Statement>();
        var outcomes = new List<Outcome>();
        var surfaceShown =
            terms.Method == SanitizingMethod.HotWater
                ? passes.Count > 0 || carried.Any(c => c.ShowsWare) || taken.Exists(c => c.Reading?.Point == MeasuringPoint.WareSurface)
                : taken.Exists(c => c.Id == "sanitizer-strength");

        // What is open comes first: every figure after it holds only for the reading that was tried.
        foreach (var question in openQuestions)
        {
            outcomes.Add(Outcome.Undetermined);
            because.Add(question);
        }

        foreach (var proof in carried.OrderBy(c => c.Outcome == Outcome.Proven))
        {
            outcomes.Add(proof.Outcome);
            because.Add(proof.Because);
        }

        if (terms.Method == SanitizingMethod.HotWater)
        {
            Passes(passes, openQuestions.Count > 0, outcomes, because, settle);
        }

        // A reading that has no limit here neither helps nor hurts.
        foreach (
            var check in taken
                .Where(c =>
                    c.Limit is not null || c.Outcome != Outcome.Undetermined || c.Id.StartsWith("sanitizer", StringComparison.Ordinal)
                )
                .OrderBy(c => c.Outcome == Outcome.Proven)
        )
        {
            outcomes.Add(check.Outcome);
            if (check.Outcome != Outcome.Proven || passes.Count == 0)
            {
                because.Add(check.Because);
            }

            settle.AddRange(check.WouldSettle);
        }

        // Of a chemical rinse nothing may stay unread: strength, acidity, temperature, hardness and contact are one proof.
        if (terms.Method != SanitizingMethod.HotWater)
        {
            foreach (
                var missing in checks.Where(c =>
                    c.Status == ReadingStatus.NotRead && (c.Id.StartsWith("sanitizer", StringComparison.Ordinal) || c.Id == "contact-time")
                )
            )
            {
                outcomes.Add(Outcome.Undetermined);
                because.Add(missing.Because);
                settle.AddRange(missing.WouldSettle);
            }
        }

        if (!surfaceShown)
        {
            outcomes.Add(Outcome.Undetermined);
            var slow =
                terms.Method != SanitizingMethod.HotWater
                    ? null
                    : proofs.FirstOrDefault(p => p.Role == MeasuringPoint.WareSurface && TooSlow(p.Trace));
            if (slow is not null)
            {
                // The true reason before the one it leads to.
                because.Add(Statement.Of("proof.note-coarse", ("interval", TraceJudgement.Pace(slow.Trace.IntervalSeconds!.Value))));
            }

            because.Add(Statement.Of(NothingShown(terms, proofs, readings)));
            settle.Add(
                Statement.Of(
                    terms.Method != SanitizingMethod.HotWater ? "proof.settle-chemical"
                    : slow is not null ? "proof.settle-sampling"
                    : "proof.settle-surface"
                )
            );
        }

        var outcome = Verdicts.Worst(outcomes);
        return new Verdict(outcome, because, outcome == Outcome.Proven ? [] : [.. settle.DistinctBy(s => s.Key)]);
    }

    private static bool TooSlow(Trace trace) => trace.IntervalSeconds > PassRules.Default.CoarsestInterval;

    private static string NothingShown(ProofTerms terms, IReadOnlyList<ChannelProof> proofs, IReadOnlyList<Reading> readings) =>
        terms.Method != SanitizingMethod.HotWater ? "proof.chemical-needs-strength"
        : proofs.Any(p => p.Role == MeasuringPoint.WareSurface) ? "proof.no-pass-in-file"
        : proofs.Count > 0 || readings.Count > 0 ? "proof.water-never-proves-ware"
        : "proof.nothing-measured";

    private static void Passes(
        List<(string Channel, Pass Pass)> passes,
        bool asked,
        List<Outcome> outcomes,
        List<Statement> because,
        List<Statement> settle
    )
    {
        if (passes.Count == 0)
        {
            return;
        }

        outcomes.AddRange(passes.Select(p => p.Pass.Outcome));
        long Count(Outcome o) => passes.LongCount(p => p.Pass.Outcome == o);
        because.Add(
            Count(Outcome.Proven) != passes.Count
                ? Statement.Of(
                    passes.Count == 1 ? "proof.pass-one" : "proof.passes-mixed",
                    ("count", (long)passes.Count),
                    ("proven", Count(Outcome.Proven)),
                    ("failed", Count(Outcome.NotProven)),
                    ("open", Count(Outcome.Undetermined))
                )
            : asked ? Statement.Of("proof.passes-would-be", ("count", (long)passes.Count))
            : passes.Count == 1 ? Statement.Of("proof.pass-proven")
            : passes.Count == 2 ? Statement.Of("proof.passes-both-proven")
            : Statement.Of("proof.passes-all-proven", ("count", (long)passes.Count))
        );
        var worst = passes.FindIndex(p => p.Pass.Outcome == Outcome.NotProven);
        worst = worst >= 0 ? worst : passes.FindIndex(p => p.Pass.Outcome == Outcome.Undetermined);
        if (worst >= 0)
        {
            var (channel, pass) = passes[worst];
            var several = passes.Exists(p => p.Channel != channel);
            because.AddRange(
                pass.Verdict.Because.Select(b =>
                    several
                        ? Statement.Of("proof.in-pass-of", ("channel", channel), ("pass", (long)pass.Number), ("says", b))
                        : Statement.Of("proof.in-pass", ("pass", (long)pass.Number), ("says", b))
                )
            );
            settle.AddRange(
                passes
                    .Where(p => p.Pass.Outcome == Outcome.Undetermined)
                    .Take(50)
                    .SelectMany(p => p.Pass.Verdict.WouldSettle)
                    .DistinctBy(s => s.Key)
            );
        }
    }
}
