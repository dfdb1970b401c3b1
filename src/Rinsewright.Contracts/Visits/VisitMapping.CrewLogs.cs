using Rinsewright.Contracts.Records;
using Rinsewright.Engine.Quantities;
using Rinsewright.Engine.Records;
using Rinsewright.Engine.Visits;

namespace Rinsewright.Contracts.Visits;

public static partial class VisitMapping
{
    /// <summary>Most days of a crew's log that are looked at.</summary>
    public const int CrewLogDays = 31;

    /// <summary>Most entries a day of a crew's log.</summary>
    public const int CrewLogShifts = 6;

    private static CrewLog CrewLog(CrewLogDto l, string field)
    {
        var kind = Kind(l.Kind, field + ".kind");
        var unit = Units.Find(l.Unit ?? "");
        if (unit is null || unit.Dimension != kind.Unit.Dimension)
        {
            throw new ContractException(
                field + ".unit",
                $"{l.Kind} is read in {kind.Unit.Ucum} or a unit of the same kind, not '{l.Unit}'"
            );
        }

        var log = new CrewLog(
            l.Kind,
            unit,
            l.Until == default
                ? throw new ContractException(field + ".until", "absent; the last day looked at, such as 2026-11-23")
                : l.Until,
            Between(l.Days, CrewLogDays, field + ".days"),
            Between(l.ShiftsPerDay, CrewLogShifts, field + ".shiftsPerDay")
        )
        {
            State = Wire.Parse<OperatingState>(l.State, field + ".state"),
            Whole = l.Whole,
            Entries = Each(l.Entries, field + ".entries", (e, f) => Entry(e, kind.Point, unit, f)),
            Unread = Each(l.Unread, field + ".unread", Unread),
            Closed = l.Closed ?? [],
        };
        var twice = log
            .Entries.Select(e => (e.On, e.Shift))
            .Concat(log.Unread.Select(e => (e.On, e.Shift)))
            .GroupBy(e => e)
            .FirstOrDefault(g => g.Count() > 1);
        return twice is null
            ? log
            : throw new ContractException(field + ".entries", $"shift {twice.Key.Shift} of {twice.Key.On:yyyy-MM-dd} stands there twice");
    }

    private static CrewEntry Entry(CrewEntryDto e, MeasuringPoint point, Unit unit, string field)
    {
        if (e.On == default)
        {
            throw new ContractException(field + ".on", "absent; the day of the entry, such as 2026-11-23");
        }

        var value = Wire.To(new AmountDto(e.Value, unit.Ucum), point, field + ".value");
        return new CrewEntry(e.On, Between(e.Shift, CrewLogShifts, field + ".shift"), value.Value, e.ActionWritten);
    }

    private static UnreadEntry Unread(CrewUnreadDto e, string field) =>
        e.On == default ? throw new ContractException(field + ".on", "absent; the day of the entry, such as 2026-11-23")
        : string.IsNullOrWhiteSpace(e.Text) || e.Text.Length > CrewLogJudgement.LongestUnread
            ? throw new ContractException(field + ".text", $"what is written there, 1 to {CrewLogJudgement.LongestUnread} characters")
        : new UnreadEntry(e.On, Between(e.Shift, CrewLogShifts, field + ".shift"), e.Text);

    private static int Between(int value, int most, string field) =>
        value >= 1 && value <= most ? value : throw new ContractException(field, $"a number from 1 to {most}");

    private static CrewLogDto From(CrewLog l) =>
        new(
            l.Kind,
            l.Unit.Ucum,
            l.Until,
            l.Days,
            l.ShiftsPerDay,
            Wire.Name(l.State),
            l.Whole,
            Some(l.Entries, e => new CrewEntryDto(e.On, e.Shift, e.Value, e.ActionWritten)),
            l.Closed.Count > 0 ? l.Closed : null,
            Some(l.Unread, e => new CrewUnreadDto(e.On, e.Shift, e.Text))
        );
}
