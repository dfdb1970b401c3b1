namespace Rinsewright.Files.Loggers;

/// <summary>Reads dates and times in all the shapes loggers write; the order of the date's numbers stays open here.</summary>
internal static class StampText
{
    private const long Day = 86_400_000;

    /// <summary>Reads a date, a time, or both.</summary>
    public static bool TryParse(ReadOnlySpan<char> text, out StampParts parts)
    {
        parts = default;
        text = text.Trim(" \t\"'\u00a0");
        if (text.Length is < 4 or > 48)
        {
            return false;
        }

        SkipWeekday(ref text);
        var half = LeadingHalf(ref text);
        if (TryDate(ref text, ref parts))
        {
            var before = text.Length;
            text = text.TrimStart(" \t,_\u00a0");
            text = text.Length > 1 && text[0] is 'T' or 't' or '-' && char.IsAsciiDigit(text[1]) ? text[1..] : text;
            if (text.IsEmpty)
            {
                return true;
            }

            if (before == text.Length && !char.IsAsciiDigit(text[0]))
            {
                return false;
            }

            half ??= LeadingHalf(ref text);
        }

        return TryTime(ref text, ref parts) && TryTail(text, half, ref parts);
    }

    /// <summary>Milliseconds since year 1 of the civil clock under one order; false where that order does not fit.</summary>
    public static bool TryResolve(StampParts parts, DateOrder order, out long milliseconds)
    {
        milliseconds = parts.DayMilliseconds;
        if (!parts.HasDate)
        {
            return true;
        }

        var (year, month, day) = (parts.Known ?? order) switch
        {
            DateOrder.Ymd => (parts.A, parts.B, parts.C),
            DateOrder.Dmy => (parts.C, parts.B, parts.A),
            _ => (parts.C, parts.A, parts.B),
        };
        if (parts.ShortYear)
        {
            // Two digits: loggers of the trade are younger than 1980.
            year += year < 80 ? 2000 : 1900;
        }

        if (
            year is < 1970 or > 2200
            || month is < 1 or > 12
            || day < 1
            || day > DateTime.DaysInMonth(year, month)
            || parts.DayMilliseconds > Day
        )
        {
            return false;
        }

        milliseconds += new DateTime(year, month, day).Ticks / TimeSpan.TicksPerMillisecond;
        return true;
    }

    private static bool TryDate(ref ReadOnlySpan<char> text, ref StampParts parts)
    {
        var rest = text;
        if (TryNamedMonthFirst(ref rest, ref parts))
        {
            text = rest;
            return true;
        }

        if (!TryInt(ref rest, out parts.A, out var lengthA) || rest.IsEmpty)
        {
            return lengthA is 8 or 12 or 14 && TryCompact(ref text, lengthA, ref parts);
        }

        if (lengthA is 8 && rest[0] is ' ' or 'T' or 't' or '_')
        {
            return TryCompact(ref text, 8, ref parts);
        }

        var mark = rest[0];
        if (mark is not ('-' or '/' or '.' or ' ' or '年') || lengthA > 4)
        {
            return false;
        }

        rest = rest[1..].TrimStart(' ');
        if (MonthWords.TryRead(ref rest, out parts.B))
        {
            rest = rest.TrimStart(" -/.,");
            if (!TryInt(ref rest, out parts.C, out var lengthYear) || lengthYear is not (2 or 4))
            {
                return false;
            }

            parts.Known = lengthA == 4 ? DateOrder.Ymd : DateOrder.Dmy;
            parts.ShortYear = lengthA != 4 && lengthYear == 2;
        }
        else
        {
            if (
                mark == ' '
                || !TryInt(ref rest, out parts.B, out var lengthB)
                || lengthB > 2
                || rest.IsEmpty
                || (rest[0] != mark && rest[0] != '月')
            )
            {
                return false;
            }

            rest = rest[1..].TrimStart(' ');
            if (
                !TryInt(ref rest, out parts.C, out var lengthC)
                || lengthC is not (1 or 2 or 4)
                || (lengthA == 4 && lengthC == 4)
                || lengthA == 3
            )
            {
                return false;
            }

            parts.Known = lengthA == 4 ? DateOrder.Ymd : null;
            parts.ShortYear = lengthA <= 2 && lengthC <= 2;
            rest = mark == '.' && rest.Length > 0 && rest[0] == '.' ? rest[1..] : rest.TrimStart('日');
        }

        parts.HasDate = true;
        parts.DateMark = mark;
        text = rest;
        return true;
    }

    private static bool TryNamedMonthFirst(ref ReadOnlySpan<char> text, ref StampParts parts)
    {
        var rest = text;
        if (!MonthWords.TryRead(ref rest, out var month))
        {
            return false;
        }

        rest = rest.TrimStart(" -/.");
        if (!TryInt(ref rest, out var day, out var dayLength) || dayLength > 2)
        {
            return false;
        }

        rest = rest.TrimStart(" ,-/");
        var beforeYear = rest;
        if (TryInt(ref rest, out var year, out var length) && length == 4 && (rest.IsEmpty || rest[0] != ':'))
        {
            (parts.A, parts.B, parts.C) = (month, day, year);
            parts.Known = DateOrder.Mdy;
            parts.HasDate = true;
            text = rest;
            return true;
        }

        // "Apr 08 21:00:00 UTC 2031": the year may stand last.
        var last = text.LastIndexOf(' ');
        if (last > 0 && text.Length - last == 5)
        {
            var tail = text[(last + 1)..];
            if (TryInt(ref tail, out year, out length) && length == 4 && tail.IsEmpty)
            {
                (parts.A, parts.B, parts.C) = (month, day, year);
                parts.Known = DateOrder.Mdy;
                parts.HasDate = true;
                text = beforeYear[..^5];
                return true;
            }
        }

        return false;
    }

    private static bool TryCompact(ref ReadOnlySpan<char> text, int length, ref StampParts parts)
    {
        if (!int.TryParse(text[..4], out parts.A) || !int.TryParse(text[4..6], out parts.B) || !int.TryParse(text[6..8], out parts.C))
        {
            return false;
        }

        if (parts.A is < 1970 or > 2200 || parts.B is < 1 or > 12 || parts.C is < 1 or > 31)
        {
            return false;
        }

        parts.Known = DateOrder.Ymd;
        parts.HasDate = true;
        text = text[8..];
        return length is 8 || int.Parse(text[..2]) < 24;
    }

    private static bool TryTime(ref ReadOnlySpan<char> text, ref StampParts parts)
    {
        if (!TryInt(ref text, out var hour, out var length))
        {
            return false;
        }

        int minute,
            second = 0,
            milliseconds = 0;
        if (length is 4 or 6 && parts.HasDate && (text.IsEmpty || text[0] is ' ' or 'Z' or '+' or '-'))
        {
            if (length == 6)
            {
                second = hour % 100;
                hour /= 100;
                parts.HasSeconds = true;
            }

            (hour, minute) = (hour / 100, hour % 100);
        }
        else
        {
            if (text.IsEmpty || text[0] is not (':' or 'h') && !(text[0] == '.' && parts.HasDate) || length > 4)
            {
                return false;
            }

            var mark = text[0];
            text = text[1..];
            if (!TryInt(ref text, out minute, out var minuteLength) || minuteLength > 2)
            {
                return false;
            }

            if (text.Length > 1 && text[0] == mark && char.IsAsciiDigit(text[1]))
            {
                text = text[1..];
                TryInt(ref text, out second, out _);
                parts.HasSeconds = true;
                milliseconds = Fraction(ref text);
            }
        }

        if (minute > 59 || second > 60 || (parts.HasDate && hour > 24))
        {
            return false;
        }

        parts.HasTime = true;
        parts.DayMilliseconds = (((((long)hour * 60) + minute) * 60) + second) * 1000 + milliseconds;
        return true;
    }

    private static int Fraction(ref ReadOnlySpan<char> text)
    {
        if (text.Length < 2 || text[0] is not ('.' or ',' or ':') || !char.IsAsciiDigit(text[1]))
        {
            return 0;
        }

        text = text[1..];
        int milliseconds = 0,
            scale = 1000;
        while (!text.IsEmpty && char.IsAsciiDigit(text[0]))
        {
            scale /= 10;
            milliseconds += scale * (text[0] - '0');
            text = text[1..];
        }

        return milliseconds;
    }

    private static bool TryTail(ReadOnlySpan<char> text, bool? half, ref StampParts parts)
    {
        text = text.Trim(" \u00a0\u202f");
        if (half is null && !text.IsEmpty)
        {
            var word = text;
            // The whole rest, then without its last word: "PM", "p. m.", "PM CDT".
            half = DayHalf.Of(word);
            if (half is not null)
            {
                text = default;
            }
            else if (text.IndexOf(' ') is > 0 and var blank && DayHalf.Of(text[..blank]) is { } early)
            {
                half = early;
                text = text[(blank + 1)..].Trim();
            }
        }

        if (half is { } afternoon)
        {
            var hours = parts.DayMilliseconds / 3_600_000;
            if (hours > 12)
            {
                // 13 to 23 h beside the word: the word repeats what the number says.
                return afternoon && hours < 24;
            }

            parts.TwelveHour = true;
            parts.DayMilliseconds +=
                afternoon && hours < 12 ? Day / 2
                : !afternoon && hours == 12 ? -(Day / 2)
                : 0;
        }

        if (text.IsEmpty)
        {
            return true;
        }

        parts.OffsetMinutes = ZoneWords.OffsetOf(text);
        return parts.OffsetMinutes is not null;
    }

    private static void SkipWeekday(ref ReadOnlySpan<char> text)
    {
        if (!char.IsLetter(text[0]))
        {
            return;
        }

        var blank = text.IndexOfAny(" ,.");
        if (
            blank is >= 2 and <= 12
            && text.Length > blank + 1
            && !MonthWords.TryWord(text[..blank], out _)
            && DayHalf.Of(text[..blank]) is null
        )
        {
            text = text[blank..].TrimStart(" ,.");
        }
    }

    private static bool? LeadingHalf(ref ReadOnlySpan<char> text)
    {
        var digit = text.IndexOfAnyInRange('0', '9');
        if (digit is < 1 or > 8)
        {
            return null;
        }

        var half = DayHalf.Of(text[..digit]);
        text = half is null ? text : text[digit..];
        return half;
    }

    private static bool TryInt(ref ReadOnlySpan<char> text, out int value, out int length)
    {
        value = 0;
        length = 0;
        while (length < text.Length && (uint)(text[length] - '0') <= 9)
        {
            if (length < 9)
            {
                value = (value * 10) + (text[length] - '0');
            }

            length++;
        }

        text = text[length..];
        return length is > 0 and <= 9;
    }
}
