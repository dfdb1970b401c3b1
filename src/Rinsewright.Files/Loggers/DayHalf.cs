namespace Rinsewright.Files.Loggers;

/// <summary>Words for before and after noon, as computers in many languages write them into exports.</summary>
internal static class DayHalf
{
    // Compared in lower case without points and spaces.
    private static readonly HashSet<string> Morning = new(StringComparer.Ordinal)
    {
        "am",
        "a",
        "dop",
        "dopol",
        "vorm",
        "vormittags",
        "mañana",
        "manhã",
        "matin",
        "fm",
        "ap",
        "de",
        "öö",
        "πμ",
        "дп",
        "пробяд",
        "пробед",
        "hom",
        "prijepodne",
        "pd",
        "sa",
        "öö",
        "ös",
        "rano",
        "przedpoł",
        "上午",
        "午前",
        "오전",
        "ص",
        "ق.ظ",
        "früh",
        "öv",
        "öe",
        "mg",
        "vm",
    };

    private static readonly HashSet<string> Afternoon = new(StringComparer.Ordinal)
    {
        "pm",
        "p",
        "odp",
        "odpol",
        "nachm",
        "nachmittags",
        "tarde",
        "soir",
        "em",
        "ip",
        "du",
        "μμ",
        "пп",
        "следобед",
        "popoł",
        "pop",
        "poslijepodne",
        "md",
        "ch",
        "下午",
        "午後",
        "오후",
        "م",
        "nm",
        "ab",
        "noche",
        "noite",
    };

    /// <summary>False for a word of the morning, true for one of the afternoon; null for any other word.</summary>
    public static bool? Of(ReadOnlySpan<char> word)
    {
        Span<char> plain = stackalloc char[16];
        var n = 0;
        foreach (var c in word)
        {
            if (c is '.' or ' ' or '\u00a0' or '\u202f')
            {
                continue;
            }

            if (n == plain.Length)
            {
                return null;
            }

            plain[n++] = char.ToLowerInvariant(c);
        }

        var key = plain[..n].ToString();
        return Morning.Contains(key) ? false
            : Afternoon.Contains(key) ? true
            : null;
    }
}
