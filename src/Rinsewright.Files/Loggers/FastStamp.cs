using System.Runtime.CompilerServices;
using System.Runtime.InteropServices;
using System.Text;

namespace Rinsewright.Files.Loggers;

/// <summary>
/// Reads stamps of one shape at full speed: only what changed since the last row is read. The part up to the minute is compared, the
/// seconds are two digits; where the minute changed, the six digits of the time; anything else goes the long way.
/// </summary>
internal sealed class FastStamp(Clock clock)
{
    private readonly byte[] last = new byte[48];
    private int hourAt;
    private int secondAt;
    private long dayBase;
    private long minuteBase;

    /// <summary>Length of the usual stamp; -1 where none is known.</summary>
    public int Length { get; private set; } = -1;

    /// <summary>Reads a stamp that differs from the last one in its time of day alone.</summary>
    /// <param name="text">Starts with the stamp.</param>
    /// <param name="separator">What ends it, unless the line does.</param>
    /// <param name="milliseconds">Milliseconds of the clock.</param>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public bool TryKnown(ReadOnlySpan<byte> text, byte separator, out long milliseconds)
    {
        milliseconds = 0;
        var length = Length;
        if ((uint)length >= (uint)text.Length || (text[length] != separator && text[length] is not ((byte)'\n' or (byte)'\r')))
        {
            return false;
        }

        var at = secondAt;
        var known = last.AsSpan(0, length);
        text = text[..length];
        var tens = (uint)(text[at] - '0');
        var ones = (uint)(text[at + 1] - '0');
        if (
            tens > 5
            || ones > 9
            || !(at + 2 == length || text[(at + 2)..].SequenceEqual(known[(at + 2)..]))
            || !(Same(text[..at], known[..at]) || (dayBase >= 0 && TryMinute(text, known)))
        )
        {
            return false;
        }

        milliseconds = minuteBase + (((tens * 10) + ones) * 1000L);
        return true;
    }

    /// <summary>Reads any stamp and learns its shape.</summary>
    /// <param name="text">The stamp.</param>
    /// <param name="bytes">Its bytes, perhaps in quotes.</param>
    /// <param name="milliseconds">Milliseconds of the clock.</param>
    public bool TryLong(ReadOnlySpan<char> text, ReadOnlySpan<byte> bytes, out long milliseconds)
    {
        Length = -1;
        if (
            !StampText.TryParse(text, out var parts)
            || !parts.HasDate
            || !StampText.TryResolve(parts, clock.Order, out milliseconds)
            || (parts.OffsetMinutes != clock.Offset && parts.OffsetMinutes is not null)
        )
        {
            milliseconds = 0;
            return false;
        }

        // hh:mm:ss with two digits each.
        var first = bytes.IndexOf((byte)':');
        if (
            !parts.HasSeconds
            || bytes.Length > last.Length
            || !Ascii.IsValid(bytes)
            || first < 2
            || bytes.Length < first + 6
            || bytes[first + 3] != ':'
            || !Digits(bytes, first - 2)
            || !Digits(bytes, first + 1)
            || !Digits(bytes, first + 4)
        )
        {
            return true;
        }

        hourAt = first - 2;
        secondAt = first + 4;
        Length = bytes.Length;
        bytes.CopyTo(last);
        minuteBase = milliseconds - (Two(bytes, secondAt) * 1000L);
        dayBase =
            parts.TwelveHour || (hourAt > 0 && char.IsAsciiDigit((char)bytes[hourAt - 1]))
                ? -1
                : minuteBase - (((Two(bytes, hourAt) * 60) + Two(bytes, first + 1)) * 60_000L);
        return true;
    }

    // Both of one length; eight bytes at a time, the last eight perhaps once more.
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static bool Same(ReadOnlySpan<byte> text, ReadOnlySpan<byte> known)
    {
        if (text.Length < sizeof(ulong))
        {
            return text.SequenceEqual(known);
        }

        for (var i = 0; i < text.Length - sizeof(ulong); i += sizeof(ulong))
        {
            if (MemoryMarshal.Read<ulong>(text[i..]) != MemoryMarshal.Read<ulong>(known[i..]))
            {
                return false;
            }
        }

        return MemoryMarshal.Read<ulong>(text[^sizeof(ulong)..]) == MemoryMarshal.Read<ulong>(known[^sizeof(ulong)..]);
    }

    private bool TryMinute(ReadOnlySpan<byte> text, ReadOnlySpan<byte> known)
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

    private static bool Digits(ReadOnlySpan<byte> text, int at) => (uint)(text[at] - '0') <= 9 && (uint)(text[at + 1] - '0') <= 9;

    // More than 99 where either is no digit.
    private static int Two(ReadOnlySpan<byte> text, int at)
    {
        var tens = (uint)(text[at] - '0');
        var ones = (uint)(text[at + 1] - '0');
        return tens <= 9 && ones <= 9 ? (int)((tens * 10) + ones) : 1000;
    }
}
