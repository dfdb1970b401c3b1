using Rinsewright.Engine.Knowledge;
using Rinsewright.Engine.Machines;
using Rinsewright.Engine.Numerics;
using Rinsewright.Engine.Quantities;
using Rinsewright.Engine.Records;
using Rinsewright.Engine.Sanitization;

namespace Rinsewright.Engine.Visits;

/// <summary>What a crew's log says of itself and of the machine (V14 to V17): gaps, the same number again and again, limits missed in silence, a gauge that disagrees.</summary>
public static partial class CrewLogJudgement
{
    /// <summary>The check of the knowledge that gaps and copied numbers are.</summary>
    public const string Finding = "chk-log-gaps";

    /// <summary>The lesson of the knowledge that fits.</summary>
    public const string Lesson = "tt-test";

    /// <summary>Below this chance a number was likely written without reading.</summary>
    public const double Risk = 0.01;

    /// <summary>Entries from which on they are compared with each other (estimate, no source).</summary>
    public const int Least = 5;

    /// <summary>Longest text that is kept of what cannot be read, characters.</summary>
    public const int LongestUnread = 40;

    // A gap here and there is said; more than this keeps the machine from standing without a remark (estimate, no source).
    private const double GapsToWatch = 0.1;

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
        var (expected, missing) = Missing(log, entries, Say);
        foreach (var unread in log.LookedUnread)
        {
            Say(
                Statement.Of(
                    "visit.log.unread",
                    ("line", (long)log.LineOf(unread.On)),
                    ("date", unread.On),
                    ("shift", (long)unread.Shift),
                    ("text", unread.Text),
                    ("example", Example(log.Unit))
                )
            );
        }

        var same = Same(log, entries, rules, Spread(visit, log, kind, bands));
        SaySame(same, entries.Count, Say);
        var limits = Limits(visit, log, kind, rules);
        var outside = Outside(log, entries, limits);
        SayOutside(outside ?? [], log, Say);
        var off = GaugeOff(kind, log.Unit, knowledge);
        var middle = Middle(visit, log, entries, lines, off);
        SayMiddle(middle, log, kind, entries.Count, Say);
        var closed = entries.Count(e => log.Closed.Contains(e.On));
        if (closed > 0)
        {
            Say(Statement.Of("visit.log.closed", ("count", (long)closed)), watch: true);
        }

        var judged = new JudgedCrewLog(log, known, expected, missing, same, outside, middle, says, because)
        {
            Limits = limits,
            Own = bands.Find(kind, log.State),
            GaugeOff = off,
        };
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
        // What cannot be read is written, all the same.
        var written = entries.Select(e => (e.On, e.Shift)).Concat(log.LookedUnread.Select(e => (e.On, e.Shift))).ToHashSet();
        int[] missing = [.. Enumerable.Range(1, log.ShiftsPerDay).Select(shift => open.Count(day => !written.Contains((day, shift))))];
        var (expected, count) = (open.Count * log.ShiftsPerDay, missing.Sum());
        if (expected == 0)
        {
            return (0, missing);
        }

        var worst = missing.Max();
        say(
            count == 0 ? Statement.Of("visit.log.complete", ("expected", (long)expected))
                : missing.Count(m => m == worst) == 1 && log.ShiftsPerDay > 1
                    ? Statement.Of(
                        "visit.log.missing-shift",
                        ("missing", (long)count),
                        ("expected", (long)expected),
                        ("shift", (long)(Array.IndexOf(missing, worst) + 1)),
                        ("count", (long)worst),
                        ("days", (long)open.Count)
                    )
                : Statement.Of("visit.log.missing", ("missing", (long)count), ("expected", (long)expected)),
            count > GapsToWatch * expected
        );
        return (expected, missing);
    }

    private static List<OutsideEntry>? Outside(CrewLog log, IReadOnlyList<CrewEntry> entries, List<Limit> limits) =>
        limits.Count == 0
            ? null
            :
            [
                .. entries
                    .Select(e => (Entry: e, Limit: limits.Find(l => ReadingJudgement.Violates(new Amount(e.Value, log.Unit), l))))
                    .Where(e => e.Limit is not null)
                    .Select(e => new OutsideEntry(e.Entry, e.Limit!)),
            ];

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

    private static void SayOutside(List<OutsideEntry> outside, CrewLog log, Action<Statement, bool> say)
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
                    ("count", (long)group.Count()),
                    ("limit", limit.PrintedIn(log.Unit)),
                    ("value", new Amount(farthest.Value, log.Unit)),
                    ("date", farthest.On),
                    ("shift", (long)farthest.Shift)
                ),
                written is not true
            );
        }
    }

    /// <summary>A number as it might stand on a paper in a unit.</summary>
    public static Amount Example(Unit unit) =>
        new(
            unit == Units.Fahrenheit ? 182
                : unit.Dimension == Dimension.Temperature ? 83
                : unit == Units.MilligramPerLitre ? 50
                : unit == Units.Psi ? 20
                : unit.Dimension == Dimension.GaugePressure ? 140
                : 8,
            unit
        );

    private static Amount? GaugeOff(VisitReadingKind kind, Unit unit, TradeKnowledge knowledge)
    {
        var gauge = kind.Unit.Dimension switch
        {
            Dimension.Temperature => (Id: "rd-wash-gauge-error", Unit: Units.FahrenheitDifference),
            Dimension.GaugePressure => (Id: "rd-pressure-gauge-error", Unit: Units.Psi),
            _ => (Id: "", Unit: kind.Unit),
        };
        var mayBeOff = knowledge.Observables.Readings.FirstOrDefault(r => r.Id == gauge.Id)?.Normal is [var normal, ..] ? normal.Max : null;
        return mayBeOff is { } off ? new Amount(off, gauge.Unit).In(DifferenceUnit(unit)) : null;
    }

    private static LogMiddle? Middle(
        Visit visit,
        CrewLog log,
        IReadOnlyList<CrewEntry> entries,
        IReadOnlyList<JudgedReading> lines,
        Amount? gaugeOff
    )
    {
        // What was read as found is what the crew's gauge should have shown.
        var read = lines
            .Select(l => l.Reading)
            .Where(r => r is { Moment: VisitMoment.AsFound, Value: not null, Reached: null } && r.Kind == log.Kind && r.State == log.State)
            .Where(r => r.Method is not (ReadingMethod.MachineGauge or ReadingMethod.IrreversibleLabel))
            .Where(r => VisitProofs.Refused(visit, r) is null && ReadingLines.HalfWidth(visit, r, log.Unit) > 0)
            .ToList();
        if (entries.Count < Least || read.Count == 0 || log.State == OperatingState.Unknown || gaugeOff is not { } off)
        {
            return null;
        }

        var instrument = read.Max(r => ReadingLines.HalfWidth(visit, r, log.Unit));
        return new LogMiddle(
            new Amount(Median(entries.Select(e => e.Value)), log.Unit),
            new Amount(Median(read.Select(r => r.Value!.Value.In(log.Unit).Value)), log.Unit),
            off with
            {
                Value = off.Value + instrument,
            }
        );
    }

    private static void SayMiddle(LogMiddle? middle, CrewLog log, VisitReadingKind kind, int written, Action<Statement, bool> say)
    {
        if (middle is { } m)
        {
            say(
                Statement.Of(
                    !m.Apart ? "visit.log.middle-agrees"
                        : m.Middle.Value > m.Read.Value ? "visit.log.middle-high"
                        : "visit.log.middle-low",
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
                    ? Statement.Of("visit.log.middle-state")
                    : Statement.Of("visit.log.middle-not-read", ("state", log.State)),
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
