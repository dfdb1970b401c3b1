using System.Globalization;

namespace Rinsewright.Contracts.Language;

/// <summary>
/// Days and times as people read them: <c>28 Nov 2026</c> in English, <c>28 nov 2026</c> in Spanish, <c>14:05</c>. A month that is a word cannot be taken for a day, as it is in
/// figures on one side of a border or the other. The months stand in the words files and not in a culture: the browser has none (invariant globalization), and screen, paper, server
/// and command line have to say the same. What programs read (JSON, CSV, names of files, values of fields) stays ISO 8601.
/// </summary>
public sealed partial class Words
{
    private string[]? months;

    /// <summary>A day with its year, held together by no-break spaces: <c>28 Nov 2026</c>.</summary>
    public string Day(DateOnly day) => $"{DayOfYear(day)}\u00a0{Year(day)}";

    /// <summary>A day without its year, where the year is known: <c>28 Nov</c>.</summary>
    public string DayOfYear(DateOnly day) => $"{day.Day.ToString(CultureInfo.InvariantCulture)}\u00a0{Month(day)}";

    /// <summary>A month with its year: <c>Nov 2026</c>.</summary>
    public string MonthOfYear(DateOnly day) => $"{Month(day)}\u00a0{Year(day)}";

    /// <summary>Day and time to the minute, 0:00 to 23:59, as the clock showed it where it was written: <c>28 Nov 2026 14:05</c>.</summary>
    public string Moment(DateTimeOffset at) => $"{Day(DateOnly.FromDateTime(at.DateTime))} {Clock(at)}";

    /// <summary>As <see cref="Moment"/> with how far the clock stood from universal time, for papers that travel: <c>28 Nov 2026 14:05 UTC−07:00</c>.</summary>
    public string MomentAndZone(DateTimeOffset at) =>
        $"{Moment(at)} UTC{(at.Offset == TimeSpan.Zero ? "" : at.ToString("zzz", CultureInfo.InvariantCulture).Replace('-', '−'))}";

    /// <summary>Day and time to the second, for samples of a logger: <c>28 Nov 2026 14:05:09</c>.</summary>
    public string Second(DateTime at) => $"{Day(DateOnly.FromDateTime(at))} {at.ToString("HH:mm:ss", CultureInfo.InvariantCulture)}";

    /// <summary>Time alone to the minute: <c>14:05</c>.</summary>
    public static string Clock(DateTimeOffset at) => at.ToString("HH:mm", CultureInfo.InvariantCulture);

    private string Month(DateOnly day) => (months ??= this["date.months"].Split(' '))[day.Month - 1];

    private static string Year(DateOnly day) => day.Year.ToString("0000", CultureInfo.InvariantCulture);
}
