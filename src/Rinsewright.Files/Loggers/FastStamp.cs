namespace Rinsewright.Files.Loggers;

/// <summary>
/// Reads stamps of one shape at full speed: only what changed since the last row is read. The part up to the minute is compared, the
/// seconds are two digits; where the minute changed, the six digits of the time; anything else goes the long way.
/// </summary>
internal sealed class FastStamp(Clock clock)
{
    private readonly char[] last = new char[48];
    private int length = -1;
    private int hourAt;
    private int secondAt;
    private long dayBase;
    private long minuteBase;

    public bool TryRead(ReadOnlySpan<char> text, out long milliseconds)
    {
        if (text.Length == length)
        {
            var known = last.AsSpan(0, length);
            var at = secondAt;
            if (text[(at + 2)..].SequenceEqual(known[(at + 2)..]))
            {
                var tens = (uint)(text[at] - '0');
                var ones = (uint)(text[at + 1] - '0');
                if (tens <= 5 && ones <= 9)
                {
                    if (text[..at].SequenceEqual(known[..at]))
                    {
                        milliseconds = minuteBase + ((tens * 10) + ones) * 1000L;
                        return true;
                    }

                    if (dayBase >= 0 && TryMinute(text, known))
                    {
                        milliseconds = minuteBase + ((tens * 10) + ones) * 1000L;
                        return true;
                    }
                }
            }
        }

        return TryLong(text, out milliseconds);
    }

    private bool TryMinute(ReadOnlySpan<char> text, ReadOnlySpan<char> known)
    {
        var h = hourAt;
        if (!text[..h].SequenceEqual(known[..h]) || text[h + 2] != ':' || text[h + 5] != ':')
        {
            return false;
        }

        var hour = Two(text, h);
        var minute = Two(text, h + 3);
        if (hour > 23 || minute > 59)
        {
            return false;
        }

        minuteBase = dayBase + (((hour * 60) + minute) * 60_000L);
        text.CopyTo(last);
        return true;
    }

    private bool TryLong(ReadOnlySpan<char> text, out long milliseconds)
    {
        length = -1;
        if (
            !StampText.TryParse(text, out var parts)
            || !parts.HasDate
            || !StampText.TryResolve(parts, clock.Order, out milliseconds)
            || parts.OffsetMinutes != clock.Offset && parts.OffsetMinutes is not null
        )
        {
            milliseconds = 0;
            return false;
        }

        if (!parts.HasSeconds || text.Length > last.Length)
        {
            return true;
        }

        // hh:mm:ss with two digits each.
        var first = text.IndexOf(':');
        if (
            first < 2
            || text.Length < first + 6
            || text[first + 3] != ':'
            || !Digits(text, first - 2)
            || !Digits(text, first + 1)
            || !Digits(text, first + 4)
        )
        {
            return true;
        }

        hourAt = first - 2;
        secondAt = first + 4;
        length = text.Length;
        text.CopyTo(last);
        minuteBase = milliseconds - (Two(text, secondAt) * 1000L);
        dayBase =
            parts.TwelveHour || (hourAt > 0 && char.IsAsciiDigit(text[hourAt - 1]))
                ? -1
                : minuteBase - (((Two(text, hourAt) * 60) + Two(text, first + 1)) * 60_000L);
        return true;
    }

    private static bool Digits(ReadOnlySpan<char> text, int at) => (uint)(text[at] - '0') <= 9 && (uint)(text[at + 1] - '0') <= 9;

    // More than 99 where either is no digit.
    private static int Two(ReadOnlySpan<char> text, int at)
    {
        var tens = (uint)(text[at] - '0');
        var ones = (uint)(text[at + 1] - '0');
        return tens <= 9 && ones <= 9 ? (int)((tens * 10) + ones) : 1000;
    }
}
