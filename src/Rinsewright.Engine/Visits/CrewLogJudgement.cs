using Rinsewright.Engine.Knowledge;
using Rinsewright.Engine.Machines;
using Rinsewright.Engine.Numerics;
using Rinsewright.Engine.Quantities;
using Rinsewright.Engine.Records;
using Rinsewright.Engine.Sanitization;

namespace Rinsewright.Engine.Visits;

/// <summary>What a crew's log says of itself and of the machine (V14 to V17): gaps, the same number again and again, limits missed in silence, a gauge that disagrees.</summary>
public static class CrewLogJudgement
{
    /// <summary>The check of the knowledge that gaps and copied numbers are.</summary>
    public const string Finding = "chk-log-gaps";

    /// <summary>The lesson of the knowledge that fits.</summary>
    public const string Lesson = "tt-test";

    /// <summary>Below this chance a number was likely written without reading.</summary>
    public const double Risk = 0.01;

    /// <summary>Entries from which on they are compared with each other (estimate, no source).</summary>
    public const int Least = 5;

    // Most of an own band is what is not known of this machine, the same every day; what is left moves from reading to reading (estimate, no source).
    private const double DayShare = 1.0 / 3;

    // An own band reaches from the 5 to the 95 % point.
    private const double BandDeviations = 2 * 1.6448536269514722;

    // A gap here and there is said; more than this keeps the machine from standing without a remark (estimate, no source).
    private const double GapsToWatch = 0.1;

    private static readonly double[] Steps = [10, 5, 2, 1, 0.5, 0.2, 0.1, 0.05, 0.02, 0.01];

    internal static IReadOnlyList<JudgedCrewLog> Of(
        Visit visit,
        TradeKnowledge knowledge,
        RuleSet rules,
        IReadOnlyList<JudgedReading> lines,
        OwnBands bands
    ) => [.. visit.CrewLogs.Select(log => Judge(visit, log, knowledge, rules, lines, bands))];

    private static JudgedCrewLog Judge(
        Visit visit,
        CrewLog log,
        TradeKnowledge knowledge,
        RuleSet rules,
        IReadOnlyList<JudgedReading> lines,
        OwnBands bands
    )
    {
        var known = knowledge.Observables.Readings.FirstOrDefault(r => r.Id == log.Kind);
        var kind = VisitReadingKinds.Find(log.Kind);
        if (kind is null || kind.Unit.Dimension != log.Unit.Dimension || !log.LookedThrough)
        {
            Statement why =
                kind is null ? Statement.Of("visit.reading.unknown", ("kind", log.Kind))
                : log.LookedThrough ? Statement.Of("visit.log.other-unit", ("unit", log.Unit.Symbol), ("usual", kind.Unit.Symbol))
                : Statement.Of("visit.log.empty");
            return new JudgedCrewLog(log, known, 0, [], null, null, null, [why], []);
        }

        object name = known is { } k ? k.Name : Statement.Of($"visit.kind.{log.Kind}");
        List<Statement> says = [],
            because = [];
        void Say(Statement said, bool watch = false)
        {
            says.Add(said);
            if (watch)
            {
                because.Add(said);
            }
        }

        var entries = log.Looked;
        var (expected, missing) = Missing(log, entries, name, Say);
        var same = Same(log, entries, rules, Spread(log, kind, bands));
        SaySame(same, entries.Count, name, Say);
        var outside = Outside(visit, log, kind, entries, rules);
        SayOutside(outside ?? [], log, name, Say);
        var middle = Middle(visit, log, kind, entries, knowledge, lines);
        SayMiddle(middle, log, kind, entries.Count, name, Say);
        var closed = entries.Count(e => log.Closed.Contains(e.On));
        if (closed > 0)
        {
            Say(Statement.Of("visit.log.closed", ("reading", name), ("count", (long)closed)), watch: true);
        }

        var judged = new JudgedCrewLog(log, known, expected, missing, same, outside, middle, says, because);
        if (
            (judged.Gaps || because.Count > 0)
            && visit.Training.All(t => t.Topic != Lesson)
            && knowledge.Visit.TrainingTopics.FirstOrDefault(t => t.Id == Lesson) is { } topic
        )
        {
            says.Add(Statement.Of("visit.log.teach", ("topic", topic.Title)));
        }

        return judged;
    }

    private static (int Expected, IReadOnlyList<int> Missing) Missing(
        CrewLog log,
        IReadOnlyList<CrewEntry> entries,
        object name,
        Action<Statement, bool> say
    )
    {
        if (log.Counts is not var (first, last))
        {
            return (0, []);
        }

        var open = Enumerable
            .Range(0, last.DayNumber - first.DayNumber + 1)
            .Select(first.AddDays)
            .Where(d => !log.Closed.Contains(d))
            .ToList();
        var written = entries.Select(e => (e.On, e.Shift)).ToHashSet();
        int[] missing = [.. Enumerable.Range(1, log.ShiftsPerDay).Select(shift => open.Count(day => !written.Contains((day, shift))))];
        var (expected, count) = (open.Count * log.ShiftsPerDay, missing.Sum());
        if (expected == 0)
        {
            return (0, missing);
        }

        var worst = missing.Max();
        say(
            count == 0 ? Statement.Of("visit.log.complete", ("reading", name), ("expected", (long)expected))
                : missing.Count(m => m == worst) == 1 && log.ShiftsPerDay > 1
                    ? Statement.Of(
                        "visit.log.missing-shift",
                        ("reading", name),
                        ("missing", (long)count),
                        ("expected", (long)expected),
                        ("shift", (long)(Array.IndexOf(missing, worst) + 1)),
                        ("count", (long)worst),
                        ("days", (long)open.Count)
                    )
                : Statement.Of("visit.log.missing", ("reading", name), ("missing", (long)count), ("expected", (long)expected)),
            count > GapsToWatch * expected
        );
        return (expected, missing);
    }

    // Standard deviation from reading to reading, in the unit of the log; null where the model reads no such thing in that state.
    private static double? Spread(CrewLog log, VisitReadingKind kind, OwnBands bands) =>
        bands.Find(kind, log.State) is { } band
        && (band.High.In(log.Unit).Value - band.Low.In(log.Unit).Value) / BandDeviations * DayShare is > 0 and var spread
            ? spread
            : null;

    private static SameNumber? Same(CrewLog log, IReadOnlyList<CrewEntry> entries, RuleSet rules, double? spread)
    {
        if (entries.Count < Least)
        {
            return null;
        }

        var step = StepOf(log, entries, rules);
        var all = Most(entries, null, 1);
        if (all.Likely || log.ShiftsPerDay == 1)
        {
            return all;
        }

        // Every shift is looked at as well, and each look may find something by chance.
        return entries
                .GroupBy(e => e.Shift)
                .Where(g => g.Count() >= Least)
                .Select(g => Most([.. g], g.Key, log.ShiftsPerDay))
                .Where(s => s.Likely)
                .MinBy(s => s.Chance)
            ?? all;

        SameNumber Most(IReadOnlyList<CrewEntry> of, int? shift, int looks)
        {
            var most = of.GroupBy(e => e.Value).OrderByDescending(g => g.Count()).ThenBy(g => g.Key).First();
            return new SameNumber(
                new Amount(most.Key, log.Unit),
                most.Count(),
                of.Count,
                shift,
                new Amount(step, log.Unit),
                spread is { } s ? Math.Min(1, looks * Chance(of.Count, most.Count(), NormalShare.Within(step / 2 / s))) : null
            );
        }
    }

    /// <summary>V15: any k of n alike, each at most as likely as the fullest cell: C(n, k) p^(k − 1), and p^(n − 1) where all are.</summary>
    internal static double Chance(int n, int k, double p)
    {
        var ways = 0.0;
        for (var i = 1; i <= n - k; i++)
        {
            ways += Math.Log((double)(k + i) / i);
        }

        return Math.Min(1, Math.Exp(ways + ((k - 1) * Math.Log(p))));
    }

    // As coarse as everything written allows; where all is one number, no coarser than a gauge may be divided.
    private static double StepOf(CrewLog log, IReadOnlyList<CrewEntry> entries, RuleSet rules)
    {
        var seen = Array.Find(Steps, s => entries.All(e => Math.Abs((e.Value / s) - Math.Round(e.Value / s)) < 1e-6));
        seen = seen > 0 ? seen : Steps[^1];
        var difference = DifferenceUnit(log.Unit);
        return
            entries.All(e => e.Value == entries[0].Value)
            && rules.Instruments.FirstOrDefault(i => i.Measures == log.Unit.Dimension && i.Aspect == InstrumentAspect.Division) is { } rule
            ? Math.Min(
                seen,
                rule.Maximum.FirstOrDefault(m => m.Unit == difference) is { Value: > 0 } printed
                    ? printed.Value
                    : rule.Maximum[0].In(difference).Value
            )
            : seen;
    }

    private static void SaySame(SameNumber? same, int written, object name, Action<Statement, bool> say)
    {
        if (same is not { } s)
        {
            if (written > 0)
            {
                say(Statement.Of("visit.log.few", ("reading", name), ("count", (long)written), ("least", (long)Least)), false);
            }

            return;
        }

        List<(string, object)> values = [("reading", name), ("value", s.Value), ("count", (long)s.Count), ("of", (long)s.Of)];
        switch (s.Chance)
        {
            case null when s.Count >= Least && 2 * s.Count > s.Of:
                say(Statement.Of("visit.log.same-unknown", [.. values]), false);
                break;
            case null:
                break;
            case < Risk and var chance:
                values.AddRange([("step", s.Step), ("odds", Odds(chance)), ("shift", (long)(s.Shift ?? 0))]);
                say(Statement.Of(s.Shift is null ? "visit.log.same" : "visit.log.same-shift", [.. values]), true);
                break;
            default:
                say(Statement.Of("visit.log.varies", [.. values]), false);
                break;
        }
    }

    // "Less than once in so many", the figure cut to one digit and to a million.
    private static double Odds(double chance)
    {
        var odds = Math.Min(1e6, 1 / chance);
        var digit = Math.Pow(10, Math.Floor(Math.Log10(odds)));
        return Math.Floor(odds / digit) * digit;
    }

    private static List<OutsideEntry>? Outside(
        Visit visit,
        CrewLog log,
        VisitReadingKind kind,
        IReadOnlyList<CrewEntry> entries,
        RuleSet rules
    )
    {
        var limits = Limits(visit, log, kind, rules);
        return limits.Count == 0
            ? null
            :
            [
                .. entries
                    .Select(e => (Entry: e, Limit: limits.Find(l => ReadingJudgement.Violates(new Amount(e.Value, log.Unit), l))))
                    .Where(e => e.Limit is not null)
                    .Select(e => new OutsideEntry(e.Entry, e.Limit!)),
            ];
    }

    private static List<Limit> Limits(Visit visit, CrewLog log, VisitReadingKind kind, RuleSet rules)
    {
        var machine = visit.Machine;
        var point = VisitReadingKinds.PointOn(kind, machine);
        var terms = new ProofTerms(LimitCheck.TypeOf(machine.Kind), machine.Sanitizing, rules, machine.Plate, visit.Label);
        List<Limit> limits =
        [
            .. LimitsInForce
                .For(terms)
                .Where(l => l.Point == point && l.Dimension == log.Unit.Dimension && l.Force != LimitForce.CommonPractice),
        ];
        if (point == MeasuringPoint.SanitizingSolution && log.Unit.Dimension == Dimension.MassConcentration)
        {
            limits.AddRange(ChemicalJudgement.StrengthBounds(terms));
        }

        return limits;
    }

    private static void SayOutside(List<OutsideEntry> outside, CrewLog log, object name, Action<Statement, bool> say)
    {
        foreach (var group in outside.GroupBy(o => (o.Limit, o.Entry.ActionWritten)).OrderBy(g => g.Key.ActionWritten is true))
        {
            var (limit, written) = group.Key;
            var farthest = group.MaxBy(o => Math.Abs(o.Entry.Value - limit.PrintedIn(log.Unit).Value))!.Entry;
            say(
                Statement.Of(
                    written switch
                    {
                        true => "visit.log.outside-written",
                        false => "visit.log.outside-silent",
                        null => "visit.log.outside-open",
                    },
                    ("reading", name),
                    ("count", (long)group.Count()),
                    ("limit", limit.PrintedIn(log.Unit)),
                    ("value", new Amount(farthest.Value, log.Unit)),
                    ("date", farthest.On.ToString("yyyy-MM-dd")),
                    ("shift", (long)farthest.Shift)
                ),
                written is not true
            );
        }
    }

    private static LogMiddle? Middle(
        Visit visit,
        CrewLog log,
        VisitReadingKind kind,
        IReadOnlyList<CrewEntry> entries,
        TradeKnowledge knowledge,
        IReadOnlyList<JudgedReading> lines
    )
    {
        var gauge = kind.Unit.Dimension switch
        {
            Dimension.Temperature => (Id: "rd-wash-gauge-error", Unit: Units.FahrenheitDifference),
            Dimension.GaugePressure => (Id: "rd-pressure-gauge-error", Unit: Units.Psi),
            _ => (Id: "", Unit: kind.Unit),
        };
        var mayBeOff = knowledge.Observables.Readings.FirstOrDefault(r => r.Id == gauge.Id)?.Normal is [var normal, ..] ? normal.Max : null;
        // What was read as found is what the crew's gauge should have shown.
        var read = lines
            .Select(l => l.Reading)
            .Where(r => r is { Moment: VisitMoment.AsFound, Value: not null, Reached: null } && r.Kind == log.Kind && r.State == log.State)
            .Where(r => r.Method is not (ReadingMethod.MachineGauge or ReadingMethod.IrreversibleLabel))
            .Where(r => VisitProofs.Refused(visit, r) is null && ReadingLines.HalfWidth(visit, r, log.Unit) > 0)
            .ToList();
        if (entries.Count < Least || read.Count == 0 || log.State == OperatingState.Unknown || mayBeOff is not { } off)
        {
            return null;
        }

        var difference = DifferenceUnit(log.Unit);
        var instrument = read.Max(r => ReadingLines.HalfWidth(visit, r, log.Unit));
        return new LogMiddle(
            new Amount(Median(entries.Select(e => e.Value)), log.Unit),
            new Amount(Median(read.Select(r => r.Value!.Value.In(log.Unit).Value)), log.Unit),
            new Amount(new Amount(off, gauge.Unit).In(difference).Value + instrument, difference)
        );
    }

    private static void SayMiddle(
        LogMiddle? middle,
        CrewLog log,
        VisitReadingKind kind,
        int written,
        object name,
        Action<Statement, bool> say
    )
    {
        if (middle is { } m)
        {
            say(
                Statement.Of(
                    !m.Apart ? "visit.log.middle-agrees"
                        : m.Middle.Value > m.Read.Value ? "visit.log.middle-high"
                        : "visit.log.middle-low",
                    ("reading", name),
                    ("middle", m.Middle),
                    ("read", m.Read),
                    ("off", m.MayDiffer)
                ),
                m.Apart
            );
        }
        else if (written >= Least && kind.Unit.Dimension is Dimension.Temperature or Dimension.GaugePressure)
        {
            say(
                log.State == OperatingState.Unknown
                    ? Statement.Of("visit.log.middle-state", ("reading", name))
                    : Statement.Of("visit.log.middle-not-read", ("reading", name), ("state", log.State)),
                false
            );
        }
    }

    private static double Median(IEnumerable<double> values)
    {
        var sorted = values.Order().ToList();
        return (sorted[(sorted.Count - 1) / 2] + sorted[sorted.Count / 2]) / 2;
    }

    private static Unit DifferenceUnit(Unit unit) =>
        unit == Units.Fahrenheit ? Units.FahrenheitDifference
        : unit.Dimension == Dimension.Temperature ? Units.CelsiusDifference
        : unit;
}
