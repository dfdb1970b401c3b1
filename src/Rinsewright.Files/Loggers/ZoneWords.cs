using System.Globalization;

namespace Rinsewright.Files.Loggers;

/// <summary>Offsets from UTC as loggers write them: <c>GMT-05:00</c>, <c>UTC+2</c>, <c>Z</c>, or a time zone's short or long name in English.</summary>
internal static class ZoneWords
{
    // Only names that mean one offset; a summer name is its own entry.
    private static readonly Dictionary<string, int> Names = new(StringComparer.OrdinalIgnoreCase)
    {
        ["Z"] = 0,
        ["UTC"] = 0,
        ["GMT"] = 0,
        ["UT"] = 0,
        ["WET"] = 0,
        ["WEST"] = 60,
        ["CET"] = 60,
        ["CEST"] = 120,
        ["MEZ"] = 60,
        ["MESZ"] = 120,
        ["EET"] = 120,
        ["EEST"] = 180,
        ["EST"] = -300,
        ["EDT"] = -240,
        ["CDT"] = -300,
        ["MST"] = -420,
        ["MDT"] = -360,
        ["PST"] = -480,
        ["PDT"] = -420,
        ["AKST"] = -540,
        ["AKDT"] = -480,
        ["HST"] = -600,
        ["ADT"] = -180,
        ["NDT"] = -150,
        ["NZST"] = 720,
        ["NZDT"] = 780,
        ["JST"] = 540,
        ["AEST"] = 600,
        ["AEDT"] = 660,
        ["CST"] = -360,
        ["AST"] = -240,
        ["Eastern Standard Time"] = -300,
        ["Eastern Daylight Time"] = -240,
        ["Central Standard Time"] = -360,
        ["Central Daylight Time"] = -300,
        ["Mountain Standard Time"] = -420,
        ["Mountain Daylight Time"] = -360,
        ["Pacific Standard Time"] = -480,
        ["Pacific Daylight Time"] = -420,
        ["Atlantic Standard Time"] = -240,
        ["Atlantic Daylight Time"] = -180,
        ["Alaskan Standard Time"] = -540,
        ["Alaskan Daylight Time"] = -480,
        ["Hawaiian Standard Time"] = -600,
        ["Greenwich Mean Time"] = 0,
        ["Coordinated Universal Time"] = 0,
        ["Central European Standard Time"] = 60,
        ["Central European Summer Time"] = 120,
        ["Central European Time"] = 60,
    };

    /// <summary>Minutes from UTC that the text says and nothing else; null where it says none.</summary>
    public static int? OffsetOf(ReadOnlySpan<char> text)
    {
        text = text.Trim(" ()[]");
        if (text.IsEmpty || text.Length > 40)
        {
            return null;
        }

        if (Names.TryGetValue(text.ToString(), out var minutes))
        {
            return minutes;
        }

        text =
            text.StartsWith("GMT", StringComparison.OrdinalIgnoreCase) || text.StartsWith("UTC", StringComparison.OrdinalIgnoreCase)
                ? text[3..].TrimStart()
                : text;
        return text.Length >= 2 && text[0] is '+' or '-' or '\u2212' && Signed(text, out var used) is { } signed && used == text.Length
            ? signed
            : null;
    }

    /// <summary>The offset that stands anywhere in a heading or a preamble line: <c>Date Time, GMT-05:00</c>.</summary>
    /// <param name="text">Heading or line.</param>
    /// <param name="names">Whether names of zones count too; short ones only as a whole word in capitals.</param>
    public static int? FindIn(string text, bool names)
    {
        foreach (var prefix in (ReadOnlySpan<string>)["GMT", "UTC"])
        {
            var at = text.IndexOf(prefix, StringComparison.Ordinal);
            if (at < 0)
            {
                continue;
            }

            var rest = text.AsSpan(at + 3).TrimStart(" (:");
            if (rest.Length >= 2 && rest[0] is '+' or '-' or '\u2212' && Signed(rest, out _) is { } minutes)
            {
                return minutes;
            }

            if ((at == 0 || !char.IsLetter(text[at - 1])) && (at + 3 == text.Length || !char.IsLetter(text[at + 3])))
            {
                return 0;
            }
        }

        if (!names)
        {
            return null;
        }

        foreach (var (name, minutes) in Names.OrderByDescending(n => n.Key.Length))
        {
            var at =
                name.Length < 3 ? -1 : text.IndexOf(name, name.Length > 5 ? StringComparison.OrdinalIgnoreCase : StringComparison.Ordinal);
            if (
                at >= 0
                && (at == 0 || !char.IsLetterOrDigit(text[at - 1]))
                && (at + name.Length == text.Length || !char.IsLetterOrDigit(text[at + name.Length]))
            )
            {
                return minutes;
            }
        }

        return null;
    }

    /// <summary>An offset as an override gives it, for example <c>-05:00</c>.</summary>
    public static string Show(int minutes) =>
        string.Create(CultureInfo.InvariantCulture, $"{(minutes < 0 ? '-' : '+')}{Math.Abs(minutes) / 60:00}:{Math.Abs(minutes) % 60:00}");

    private static int? Signed(ReadOnlySpan<char> text, out int used)
    {
        var sign = text[0] == '+' ? 1 : -1;
        used = 1;
        int hours = 0,
            minutes = 0,
            digits = 0;
        while (used < text.Length && char.IsAsciiDigit(text[used]) && digits < 4)
        {
            hours = (hours * 10) + (text[used++] - '0');
            digits++;
        }

        if (digits is 3 or 4)
        {
            (hours, minutes) = (hours / 100, hours % 100);
        }
        else if (
            digits > 0
            && used + 2 < text.Length
            && text[used] == ':'
            && char.IsAsciiDigit(text[used + 1])
            && char.IsAsciiDigit(text[used + 2])
        )
        {
            minutes = ((text[used + 1] - '0') * 10) + (text[used + 2] - '0');
            used += 3;
        }

        return digits > 0 && hours <= 14 && minutes < 60 ? sign * ((hours * 60) + minutes) : null;
    }
}
