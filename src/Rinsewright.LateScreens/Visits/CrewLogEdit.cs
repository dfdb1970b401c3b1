using Rinsewright.Contracts;
using Rinsewright.Contracts.Records;
using Rinsewright.Contracts.Visits;
using Rinsewright.Engine.Quantities;
using Rinsewright.Engine.Records;
using Rinsewright.Engine.Sanitization;
using Rinsewright.Engine.Visits;

namespace Rinsewright.Client.Visits;

/// <summary>What changes in a crew's log while it is copied.</summary>
internal static class CrewLogEdit
{
    // What crews write down, the usual first.
    private static readonly string[] Logged =
    [
        "rd-final-rinse-temp",
        "rd-sanitizer",
        "rd-wash-temp",
        "rd-power-rinse-temp",
        "rd-ware-surface-temp",
        "rd-rinse-pressure",
        "sanitizer-ph",
    ];

    /// <summary>Readings a crew may log on this machine, the usual first.</summary>
    public static IReadOnlyList<string> Kinds(VisitWork work)
    {
        if (work.Visit?.Machine is not { } machine)
        {
            return [];
        }

        var hot = machine.Sanitizing == SanitizingMethod.HotWater;
        var usual = VisitReadingKinds.Usual(work.Trade, machine);
        return
        [
            .. Logged
                .Where(k =>
                    usual.Contains(k, StringComparer.Ordinal) || (!hot && VisitReadingKinds.Own.Contains(k, StringComparer.Ordinal))
                )
                .OrderBy(k => k != (hot ? "rd-final-rinse-temp" : "rd-sanitizer")),
        ];
    }

    /// <summary>A log of a reading that is not copied yet.</summary>
    public static CrewLogDto New(VisitDocument visit, string kind, UnitDisplay units) =>
        new(kind, UnitOf(kind, units).Ucum, DateOnly.FromDateTime(visit.Began.DateTime).AddDays(-1), CrewLog.UsualDays, 3, "load");

    /// <summary>Units a paper may be printed in.</summary>
    public static IReadOnlyList<Unit> UnitsOf(string kind) =>
        [.. ((Unit[])[UnitOf(kind, UnitDisplay.Us), UnitOf(kind, UnitDisplay.Si)]).Distinct()];

    /// <summary>Why a value cannot be there; null where it can.</summary>
    public static Statement? Refusal(VisitWork work, string kind, Amount value) =>
        VisitReadingKinds.Find(kind) is { } k ? TypedRange.Refusal(k.Point, value) : null;

    /// <summary>A value as it might stand there.</summary>
    public static AmountDto Example(Unit unit) => Wire.From(CrewLogJudgement.Example(unit));

    /// <summary>The visit with one log changed.</summary>
    public static VisitDocument Set(VisitDocument visit, int place, Func<CrewLogDto, CrewLogDto> change) =>
        visit with
        {
            CrewLogs = [.. (visit.CrewLogs ?? []).Select((l, i) => i == place ? change(l) : l)],
        };

    /// <summary>A list, or nothing where it is empty.</summary>
    public static IReadOnlyList<T>? Some<T>(IReadOnlyList<T> items) => items.Count > 0 ? items : null;

    private static Unit UnitOf(string kind, UnitDisplay units) =>
        Shown.UnitFor(VisitReadingKinds.Find(kind)!.Unit, units == UnitDisplay.Si ? UnitDisplay.Si : UnitDisplay.Us);
}
