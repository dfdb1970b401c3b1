namespace Rinsewright.Files.Loggers;

/// <summary>How a file tells the time.</summary>
internal enum ClockKind
{
    /// <summary>Date and time, in one to three columns.</summary>
    Stamp,

    /// <summary>Seconds since 1970 UTC, or a multiple.</summary>
    Epoch,

    /// <summary>A number that counts from the start.</summary>
    Elapsed,

    /// <summary>Hours, minutes, seconds without a date.</summary>
    ElapsedText,

    /// <summary>Year, day of the year, clock as <c>1930</c>.</summary>
    DayOfYear,

    /// <summary>Days since the end of 1899, as spreadsheets count; perhaps seconds of the day beside it.</summary>
    SerialDays,
}

/// <summary>Reads the time of a row: milliseconds of the civil clock since year 1, or since the start where the file has no date.</summary>
internal sealed class Clock
{
    private const long DayMs = 86_400_000;
    private static readonly long EpochMs = DateTime.UnixEpoch.Ticks / TimeSpan.TicksPerMillisecond;
    private static readonly long SerialMs = new DateTime(1899, 12, 30).Ticks / TimeSpan.TicksPerMillisecond;
    private long lastOfDay = -1;
    private long days;

    public required ClockKind Kind { get; init; }

    /// <summary>Column of the stamp, date, number or year.</summary>
    public required int Column { get; init; }

    /// <summary>Column of the time of day, day of the year or seconds of the day; -1 where there is none.</summary>
    public int Second { get; init; } = -1;

    /// <summary>Column of the AM/PM word or the clock; -1 where there is none.</summary>
    public int Third { get; init; } = -1;

    /// <summary>Milliseconds in one unit of a counted time.</summary>
    public double Scale { get; init; } = 1000;

    public DateOrder Order { get; set; }

    /// <summary>Decimal mark of a counted time.</summary>
    public char Mark { get; set; } = '.';

    /// <summary>Offset from UTC of the civil clock that is reported, in minutes, where the stamps carry one.</summary>
    public int? Offset { get; set; }

    /// <summary>Milliseconds from UTC to the civil clock that the person gave for a count since 1970.</summary>
    public long EpochShift { get; set; }

    /// <summary>Whether the time is a civil one.</summary>
    public bool HasDate => Kind is not (ClockKind.Elapsed or ClockKind.ElapsedText);

    public bool Uses(int column) => column == Column || (Second >= 0 && column == Second) || (Third >= 0 && column == Third);

    /// <summary>Highest column needed.</summary>
    public int LastColumn => Math.Max(Column, Math.Max(Second, Third));

    /// <summary>The text of the row's stamp.</summary>
    public string TextOf(List<string?> row)
    {
        var text = Column < row.Count ? row[Column] ?? "" : "";
        text = Second >= 0 && Second < row.Count ? $"{text} {row[Second]}" : text;
        return Third >= 0 && Third < row.Count ? $"{text} {row[Third]}" : text;
    }

    /// <summary>Reads the time of a row.</summary>
    public bool TryRead(List<string?> row, out long milliseconds)
    {
        milliseconds = 0;
        if (LastColumn >= row.Count && !(Kind is ClockKind.Stamp && Third >= row.Count && Second < row.Count))
        {
            return false;
        }

        switch (Kind)
        {
            case ClockKind.Stamp:
                return TryStamp(TextOf(row), out milliseconds);
            case ClockKind.Epoch:
                return Number(row[Column], out var epoch) && TryMilliseconds(epoch, Scale, EpochMs + EpochShift, out milliseconds);
            case ClockKind.Elapsed:
                return Number(row[Column], out var count) && TryMilliseconds(count, Scale, 0, out milliseconds);
            case ClockKind.ElapsedText:
                return TryElapsed(row[Column] ?? "", out milliseconds);
            case ClockKind.DayOfYear:
                return TryDayOfYear(row, out milliseconds);
            default:
                return TrySerial(row, out milliseconds);
        }
    }

    /// <summary>Reads a counted time.</summary>
    public bool TryNumber(ReadOnlySpan<char> text, out long milliseconds)
    {
        milliseconds = 0;
        return NumberText.TryParse(text, Mark, out var count)
            && TryMilliseconds(count, Scale, Kind == ClockKind.Epoch ? EpochMs + EpochShift : 0, out milliseconds);
    }

    /// <summary>Reads one stamp text.</summary>
    public bool TryStamp(ReadOnlySpan<char> text, out long milliseconds)
    {
        if (!StampText.TryParse(text, out var parts))
        {
            // A spreadsheet turned this stamp into its own day count.
            milliseconds = 0;
            return NumberText.TryParse(text.Trim(), '.', out var serial)
                && serial is > 20_000 and < 80_000
                && text.Contains('.')
                && TryDays(text.Trim(), serial, out milliseconds);
        }

        if (!parts.HasDate || !(parts.HasTime || Second < 0) || !StampText.TryResolve(parts, Order, out milliseconds))
        {
            milliseconds = 0;
            return false;
        }

        if (Offset is { } offset && parts.OffsetMinutes is { } own)
        {
            milliseconds += (offset - own) * 60_000L;
        }

        return true;
    }

    private static bool TryMilliseconds(double value, double scale, long origin, out long milliseconds)
    {
        var ms = Math.Round(value * scale);
        milliseconds = double.IsFinite(ms) && Math.Abs(ms) < 1e15 ? (long)ms + origin : 0;
        return milliseconds >= 0 && double.IsFinite(ms) && Math.Abs(ms) < 1e15 && milliseconds < 70_000_000_000_000;
    }

    // Fewer than eight decimals of a day do not tell parts of a second.
    private static bool TryDays(ReadOnlySpan<char> text, double day, out long milliseconds)
    {
        var fine = text.Length - text.LastIndexOfAny('.', ',') > 8;
        return fine
            ? TryMilliseconds(day, DayMs, SerialMs, out milliseconds)
            : TryMilliseconds(Math.Round(day * 86_400), 1000, SerialMs, out milliseconds);
    }

    private bool Number(string? cell, out double value)
    {
        value = 0;
        return cell is not null
            && (NumberText.TryParse(cell, Mark, out value) || NumberText.TryParse(cell, Mark == '.' ? ',' : '.', out value));
    }

    private bool TryElapsed(string cell, out long milliseconds)
    {
        milliseconds = 0;
        if (!StampText.TryParse(cell, out var parts) || parts.HasDate)
        {
            return false;
        }

        // A clock without a date passes midnight.
        if (lastOfDay > 22 * 3_600_000L && lastOfDay < DayMs && parts.DayMilliseconds < 2 * 3_600_000L)
        {
            days++;
        }

        lastOfDay = parts.DayMilliseconds;
        milliseconds = parts.DayMilliseconds + (days * DayMs);
        return true;
    }

    private bool TryDayOfYear(List<string?> row, out long milliseconds)
    {
        milliseconds = 0;
        if (
            !int.TryParse(row[Column], out var year)
            || !int.TryParse(row[Second], out var day)
            || year is < 1970 or > 2200
            || day < 1
            || day > (DateTime.IsLeapYear(year) ? 366 : 365)
        )
        {
            return false;
        }

        var clock = 0;
        if (Third >= 0 && (!int.TryParse(row[Third], out clock) || clock is < 0 or > 2400 || clock % 100 > 59))
        {
            return false;
        }

        milliseconds =
            (new DateTime(year, 1, 1).Ticks / TimeSpan.TicksPerMillisecond)
            + ((day - 1) * DayMs)
            + ((((clock / 100) * 60) + (clock % 100)) * 60_000L);
        return true;
    }

    private bool TrySerial(List<string?> row, out long milliseconds)
    {
        milliseconds = 0;
        if (!Number(row[Column], out var day) || day is < 10_000 or > 100_000)
        {
            return false;
        }

        if (Second < 0)
        {
            return TryDays(row[Column]!, day, out milliseconds);
        }

        return Number(row[Second], out var seconds)
            && seconds is >= 0 and <= 86_400
            && TryMilliseconds(Math.Floor(day), DayMs, SerialMs + (long)Math.Round(seconds * 1000), out milliseconds);
    }
}
