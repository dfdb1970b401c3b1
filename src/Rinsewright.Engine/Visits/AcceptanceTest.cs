using Rinsewright.Engine.Machines;
using Rinsewright.Engine.Records;
using Rinsewright.Engine.Sanitization;

namespace Rinsewright.Engine.Visits;

/// <summary>
/// The one test after any change: heat, pressure, chemistry, timing and leaks, all of them whatever was changed, for a second fault often outlives the first (V8). It is read, not ticked: its
/// evidence is what was read when everything was done and after the last change.
/// </summary>
internal static class AcceptanceTest
{
    private static readonly string[] ReadUnderLoad = ["rd-wash-temp", "rd-power-rinse-temp", "rd-final-rinse-temp"];

    public static IReadOnlyList<AcceptanceLine> Of(Visit visit, IReadOnlyList<JudgedReading> lines, RuleSet rules) =>
        [.. Enum.GetValues<AcceptanceArea>().Select(area => Line(visit, lines, rules, area))];

    /// <summary>Readings an area needs on a machine, in the order they are taken.</summary>
    public static IReadOnlyList<string> Needs(Machine machine, AcceptanceArea area)
    {
        var hot = machine.Sanitizing == SanitizingMethod.HotWater;
        IEnumerable<string> ids = area switch
        {
            AcceptanceArea.Heat => hot
                ? ["rd-wash-temp", "rd-power-rinse-temp", "rd-final-rinse-temp", "rd-ware-surface-temp"]
                : ["rd-wash-temp", "rd-power-rinse-temp", "rd-final-rinse-temp"],
            AcceptanceArea.Pressure => ["rd-rinse-pressure"],
            AcceptanceArea.Chemistry =>
            [
                .. (string[])(machine.Feeders.Any(f => f.Product == FedProduct.Detergent) ? ["rd-detergent"] : []),
                .. (string[])(hot ? [] : ["rd-sanitizer"]),
            ],
            AcceptanceArea.Timing when machine.Conveyor is not null => ["rd-conveyor-speed"],
            AcceptanceArea.Timing => machine.FinalRinse is null ? ["rd-wash-time"] : ["rd-wash-time", "rd-rinse-time"],
            _ => [],
        };
        return [.. ids.Where(id => VisitReadingKinds.Has(VisitReadingKinds.Find(id)!, machine))];
    }

    private static AcceptanceLine Line(Visit visit, IReadOnlyList<JudgedReading> lines, RuleSet rules, AcceptanceArea area)
    {
        if (!visit.Touched)
        {
            return new AcceptanceLine(area, AcceptanceStanding.NotNeeded, Statement.Of("visit.accept.not-needed"), []);
        }

        if (area == AcceptanceArea.Leaks)
        {
            return Leaks(visit);
        }

        var needs = Needs(visit.Machine, area);
        if (needs.Count == 0)
        {
            return new AcceptanceLine(area, AcceptanceStanding.HasNone, Statement.Of("visit.accept.has-none"), []);
        }

        var last = visit.Changes.Max(c => c.At);
        var left = lines
            .Where(l => l.Reading is { Moment: VisitMoment.AsLeft, Value: not null } r && Counts(r.At, last))
            .Where(l => VisitProofs.Refused(visit, l.Reading) is null && VisitReadingKinds.Find(l.Reading.Kind)?.Area == area)
            .ToList();
        if (left.Find(l => l.Rule?.Status == ReadingStatus.OutOfRange) is { } failed)
        {
            return new AcceptanceLine(area, AcceptanceStanding.Failed, failed.Rule!.Because, []);
        }

        // A logger that rode through after the last change reads the ware as well as a probe on it does.
        var rode =
            area == AcceptanceArea.Heat
                ? visit
                    .Proofs.Where(p => p.Moment == VisitMoment.AsLeft && p.ShowsWare(visit, rules))
                    .OrderBy(p => p.Name, StringComparer.Ordinal)
                    .ToList()
                : [];
        if (rode.Find(p => p.Outcome == Outcome.NotProven) is { } missed)
        {
            return new AcceptanceLine(area, AcceptanceStanding.Failed, missed.Says(visit, rules).Because, []);
        }

        // What fails only under load is not shown by an empty run.
        var open = needs
            .Where(id =>
                !(id == "rd-ware-surface-temp" && rode.Count > 0)
                && !left.Exists(l =>
                    l.Reading.Kind == id && (l.Reading.State == OperatingState.Load || !ReadUnderLoad.Contains(id, StringComparer.Ordinal))
                )
            )
            .ToList();
        return open.Count == 0
            ? new AcceptanceLine(area, AcceptanceStanding.Passed, Statement.Of("visit.accept.passed"), [])
            : Without(visit, area, open, left.Exists(l => open.Contains(l.Reading.Kind, StringComparer.Ordinal)));
    }

    private static AcceptanceLine Leaks(Visit visit)
    {
        var last = visit.Changes.Max(c => c.At);
        var looks = visit.Leaks.Where(l => l.Moment == VisitMoment.AsLeft && Counts(l.At, last)).ToList();
        return looks.Find(l => !l.Dry) is { } wet
                ? new AcceptanceLine(
                    AcceptanceArea.Leaks,
                    AcceptanceStanding.Failed,
                    wet.Where is { Length: > 0 } where
                        ? Statement.Of("visit.accept.leaks-at", ("where", where))
                        : Statement.Of("visit.accept.leaks"),
                    []
                )
            : looks.Count > 0 ? new AcceptanceLine(AcceptanceArea.Leaks, AcceptanceStanding.Passed, Statement.Of("visit.accept.dry"), [])
            : Without(visit, AcceptanceArea.Leaks, [], false);
    }

    private static AcceptanceLine Without(Visit visit, AcceptanceArea area, IReadOnlyList<string> needs, bool emptyRun)
    {
        var reasons = visit.Declined.Where(d => d.Area == area && !string.IsNullOrWhiteSpace(d.Because)).Select(d => d.Because).ToList();
        return reasons.Count > 0
            ? new AcceptanceLine(
                area,
                AcceptanceStanding.Declined,
                Statement.Of("visit.accept.declined", ("why", string.Join("; ", reasons.Order(StringComparer.Ordinal)))),
                needs
            )
            : new AcceptanceLine(
                area,
                AcceptanceStanding.NotRun,
                Statement.Of(emptyRun ? "visit.accept.empty-run" : "visit.accept.not-run"),
                needs
            );
    }

    private static bool Counts(DateTimeOffset? at, DateTimeOffset? lastChange) => at is not { } a || lastChange is not { } l || a >= l;
}
