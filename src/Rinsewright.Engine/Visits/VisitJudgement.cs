using Rinsewright.Engine.Knowledge;
using Rinsewright.Engine.Machines;
using Rinsewright.Engine.Quantities;
using Rinsewright.Engine.Records;
using Rinsewright.Engine.Sanitization;

namespace Rinsewright.Engine.Visits;

/// <summary>
/// What a visit amounts to, at any moment while it is entered. Dangers first; then whether ware is sanitized, from the proof as left and from what was found; then what is near, clashes or moved. What was
/// not read never helps. Rules V1 to V17.
/// </summary>
public static class VisitJudgement
{
    /// <summary>Racks that the proof on ware is read on, as the knowledge's verdict <c>vd-sanitary</c> has it.</summary>
    public const int Racks = 3;

    // vd-watch of the knowledge: within 3 °F of a limit, or within 20 % of a chemical one (from memory).
    private const double NearFahrenheit = 3;
    private const double NearShare = 0.2;

    /// <summary>Judges a visit.</summary>
    /// <param name="visit">The visit as far as it is entered.</param>
    /// <param name="knowledge">What the trade knows.</param>
    /// <param name="rules">Rule set in force at the place; the data plate of the machine stands in front of it.</param>
    /// <param name="bands">The machine's own bands, kept by whoever judges while typing; null to work them out.</param>
    /// <exception cref="ArgumentException">The machine's description does not fit together.</exception>
    public static VisitResult Judge(Visit visit, TradeKnowledge knowledge, RuleSet rules, OwnBands? bands = null)
    {
        var proofs = new VisitProofs(visit, rules);
        bands ??= OwnBands.Of(visit.Machine);
        var lines = ReadingLines.Of(visit, knowledge, proofs, bands);
        var after = proofs.After.Verdict.Outcome;
        var stops = StopReasons.Of(visit, knowledge, after);
        var clashes = ReadingClashes.Of(visit, lines);
        var unexplained = UnexplainedChanges.Of(visit, lines);
        var logs = CrewLogJudgement.Of(visit, knowledge, rules, lines, bands);
        var parts = Parts(visit, knowledge);
        var acceptance = AcceptanceTest.Of(visit, lines, rules);
        var (standing, because) = Standing(
            visit,
            knowledge,
            rules,
            proofs.After,
            lines,
            stops,
            clashes,
            unexplained,
            logs,
            parts,
            acceptance
        );
        return new VisitResult(
            standing,
            because,
            stops,
            proofs.Before,
            proofs.After,
            lines,
            clashes,
            unexplained,
            logs,
            parts,
            acceptance,
            MissingBeforeSigning.Of(visit, proofs.After, lines, parts, acceptance),
            Warnings(visit, stops),
            NextVisits.Of(visit, knowledge, standing, parts),
            PlainLines.Was(visit, knowledge, standing, stops),
            PlainLines.Done(visit, knowledge, standing, proofs.Before.Verdict.Outcome, after),
            PlainLines.YouDo(visit, standing, proofs.After)
        );
    }

    // V11: the first row that speaks decides; everything that speaks is said.
    private static (VisitStanding, IReadOnlyList<Statement>) Standing(
        Visit visit,
        TradeKnowledge knowledge,
        RuleSet rules,
        Proof after,
        IReadOnlyList<JudgedReading> lines,
        IReadOnlyList<StopReason> stops,
        IReadOnlyList<ReadingClash> clashes,
        IReadOnlyList<Statement> unexplained,
        IReadOnlyList<JudgedCrewLog> logs,
        IReadOnlyList<PartLine> parts,
        IReadOnlyList<AcceptanceLine> acceptance
    )
    {
        List<(VisitStanding Standing, Statement Because)> says =
        [
            .. stops
                .Where(s => s.Open)
                .Select(s =>
                    (
                        s.Kind == StopKind.Danger ? VisitStanding.StopUse : VisitStanding.NotSanitary,
                        Statement.Of("visit.because.stop", ("what", s.Name))
                    )
                ),
        ];
        if (after.Verdict.Outcome != Outcome.Proven)
        {
            var standing = after.Verdict.Outcome == Outcome.NotProven ? VisitStanding.NotSanitary : VisitStanding.NotProved;
            // What holds is no reason.
            var holds = after.Checks.Where(c => c.Outcome == Outcome.Proven).Select(c => c.Because).ToList();
            says.AddRange(after.Verdict.Because.Where(b => !holds.Exists(h => ReferenceEquals(h, b))).Select(b => (standing, b)));
        }

        says.AddRange(
            acceptance
                .Where(a => a.Standing is AcceptanceStanding.NotRun or AcceptanceStanding.Failed or AcceptanceStanding.Declined)
                .Select(a =>
                    (
                        a.Standing == AcceptanceStanding.NotRun ? VisitStanding.NotProved : VisitStanding.Watch,
                        Statement.Of("visit.because.acceptance", ("area", a.Area), ("says", a.Because))
                    )
                )
        );
        says.AddRange(Near(visit, rules, after, lines).Select(n => (VisitStanding.Watch, n)));
        says.AddRange(StillOnWare(visit, knowledge).Select(w => (VisitStanding.Watch, w)));
        says.AddRange(clashes.Select(c => (VisitStanding.Watch, c.Says)));
        says.AddRange(unexplained.Select(u => (VisitStanding.Watch, u)));
        says.AddRange(
            logs.OrderBy(l => l.Log.Kind, StringComparer.Ordinal)
                .SelectMany(l => l.Because.Select(l.Of))
                .Select(b => (VisitStanding.Watch, b))
        );
        says.AddRange(
            parts
                .Where(p => p.State is PartState.Worn or PartState.Broken or PartState.Missing)
                .Select(p => (VisitStanding.Watch, Statement.Of("visit.because.part", ("part", p.Part.Name), ("state", p.State))))
        );
        var worst = says.Select(s => s.Standing).DefaultIfEmpty(VisitStanding.Sanitary).Min();
        return (
            worst,
            says.Count == 0
                ? [Statement.Of("visit.because.fine")]
                :
                [
                    .. says.OrderBy(s => s.Standing)
                        .Select(s => s.Because)
                        .DistinctBy(b => (b.Key, string.Join('|', b.Values.Select(v => v.Value)))),
                ]
        );
    }

    private static IEnumerable<Statement> Near(Visit visit, RuleSet rules, Proof after, IReadOnlyList<JudgedReading> lines)
    {
        var left = lines.Where(l => l.Reading.Value is not null && IsLast(visit, l.Reading.Moment)).ToList();
        var onWare = visit.Machine.Sanitizing == SanitizingMethod.HotWater ? "rd-ware-surface-temp" : "rd-sanitizer";
        var racks =
            left.Count(l => l.Reading.Kind == onWare && l.Rule is { Outcome: Outcome.Proven })
            + visit
                .Proofs.Where(p => p.Outcome == Outcome.Proven && IsLast(visit, p.Moment) && p.ShowsWare(visit, rules))
                .Sum(p => p.Passes);
        if (after.Verdict.Outcome == Outcome.Proven && racks < Racks)
        {
            yield return Statement.Of("visit.because.few-racks", ("count", (long)racks), ("needed", (long)Racks));
        }

        foreach (var line in left)
        {
            if (line.Rule is { Status: ReadingStatus.NearLimit } near)
            {
                yield return near.Because;
            }
            else if (
                line.Reading.Method != ReadingMethod.IrreversibleLabel
                && line.Rule is { Status: ReadingStatus.InRange, Limit: { } limit }
                && IsNear(line.Reading.Value!.Value, limit)
            )
            {
                yield return Statement.Of(
                    "visit.because.near",
                    ("reading", UnexplainedChanges.Name(line)),
                    ("value", line.Reading.Value!.Value),
                    ("limit", limit.PrintedIn(line.Reading.Value.Value.Unit))
                );
            }

            if (line.Band is BandStanding.Below or BandStanding.Above)
            {
                yield return Statement.Of("visit.because.band", ("reading", UnexplainedChanges.Name(line)), ("says", line.Says[^1]));
            }
        }
    }

    // What was left untouched is left as it was found.
    private static bool IsLast(Visit visit, VisitMoment moment) =>
        visit.Touched ? moment == VisitMoment.AsLeft : moment != VisitMoment.Between;

    // A result seen on the ware stands until the same was looked for again and was gone.
    private static IEnumerable<Statement> StillOnWare(Visit visit, TradeKnowledge knowledge) =>
        visit
            .Ware.GroupBy(w => w.Result)
            .Where(g => g.Where(w => w.Moment == g.Max(x => x.Moment)).Any(w => w.Found))
            .OrderBy(g => g.Key, StringComparer.Ordinal)
            .Select(g => knowledge.WareResults.FirstOrDefault(r => r.Id == g.Key))
            .OfType<WareResult>()
            .Select(r => Statement.Of("visit.because.ware", ("result", r.Name)));

    private static bool IsNear(Amount value, Limit limit)
    {
        var figure = limit.PrintedIn(value.Unit);
        return value.Unit.Dimension switch
        {
            Dimension.Temperature => Math.Abs(value.In(Units.Fahrenheit).Value - figure.In(Units.Fahrenheit).Value) < NearFahrenheit,
            Dimension.MassConcentration => Math.Abs(value.Value - figure.Value) < NearShare * Math.Abs(figure.Value),
            _ => false,
        };
    }

    private static IReadOnlyList<PartLine> Parts(Visit visit, TradeKnowledge knowledge) =>
        [
            .. PartOrder
                .Of(visit.Machine, knowledge)
                .Select(p =>
                {
                    var looks = visit.Parts.Where(l => l.Part == p.Id && l.State != PartState.NotLookedAt).OrderBy(l => l.State).ToList();
                    return new PartLine(
                        p,
                        looks.LastOrDefault(l => l.Moment != VisitMoment.AsLeft),
                        looks.LastOrDefault(l => l.Moment == VisitMoment.AsLeft)
                    );
                }),
        ];

    private static IReadOnlyList<Statement> Warnings(Visit visit, IReadOnlyList<StopReason> stops)
    {
        List<Statement> says = [];
        if (stops.Any(s => s.Open))
        {
            says.Add(Statement.Of("visit.warn.tag"));
        }

        foreach (var (_, instrument) in visit.Instruments.OrderBy(i => i.Key, StringComparer.Ordinal))
        {
            if (instrument.CalibrationDue is { } due && due < visit.On)
            {
                says.Add(Statement.Of("visit.warn.calibration-overdue", ("instrument", instrument.Name), ("date", due)));
            }
            else if (instrument.CalibratedOn is null)
            {
                says.Add(Statement.Of("visit.warn.calibration-unknown", ("instrument", instrument.Name)));
            }
        }

        var first = visit.Changes.Min(c => c.At);
        var late =
            visit.Readings.Count(r => r.Moment == VisitMoment.AsFound && r.Value is not null && r.At > first)
            + visit.Photos.Count(p => p.Moment == VisitMoment.AsFound && p.At > first)
            + visit.Proofs.Count(p => p is { Moment: VisitMoment.AsFound, ClockOff: false } && p.At > first);
        if (late > 0)
        {
            says.Add(Statement.Of("visit.warn.found-late", ("count", (long)late)));
        }

        says.AddRange(
            visit
                .PartsUsed.Where(p => p.Where == PartWhere.OnSite)
                .OrderBy(p => p.What, StringComparer.Ordinal)
                .Select(p => Statement.Of("visit.warn.on-site", ("part", p.What)))
        );
        return says;
    }
}
