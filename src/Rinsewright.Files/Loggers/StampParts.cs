using System.Runtime.InteropServices;

namespace Rinsewright.Files.Loggers;

/// <summary>Order of year, month and day.</summary>
internal enum DateOrder
{
    /// <summary>Year, month, day.</summary>
    Ymd,

    /// <summary>Day, month, year.</summary>
    Dmy,

    /// <summary>Month, day, year.</summary>
    Mdy,
}

/// <summary>Parts of a stamp before anyone knows which number is the day.</summary>
[StructLayout(LayoutKind.Auto)]
internal struct StampParts
{
    /// <summary>The three numbers of the date as they stand.</summary>
    public int A,
        B,
        C;

    /// <summary>The order that the date itself shows (four digits, a month's name); null where it does not.</summary>
    public DateOrder? Known;

    /// <summary>Mark between the numbers of the date.</summary>
    public char DateMark;

    public bool HasDate,
        HasTime,
        TwelveHour,
        HasSeconds;

    /// <summary>Time of day in ms; may pass 24 h where there is no date.</summary>
    public long DayMilliseconds;

    /// <summary>Offset from UTC in minutes; null where the stamp carries none.</summary>
    public int? OffsetMinutes;

    /// <summary>Whether the year has two digits.</summary>
    public bool ShortYear;
}
