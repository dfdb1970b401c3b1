namespace Rinsewright.Files.Loggers;

/// <summary>Names of the months, as loggers of several languages write them.</summary>
internal static class MonthWords
{
    private static readonly string[] Months = ["jan", "feb", "mar", "apr", "may", "jun", "jul", "aug", "sep", "oct", "nov", "dec"];

    private static readonly Dictionary<string, int> OtherMonths = new(StringComparer.Ordinal)
    {
        ["ene"] = 1,
        ["abr"] = 4,
        ["ago"] = 8,
        ["set"] = 9,
        ["dic"] = 12,
        ["mär"] = 3,
        ["mrz"] = 3,
        ["mai"] = 5,
        ["okt"] = 10,
        ["dez"] = 12,
        ["fév"] = 2,
        ["fev"] = 2,
        ["avr"] = 4,
        ["aoû"] = 8,
        ["déc"] = 12,
        ["out"] = 10,
        ["maj"] = 5,
        ["mag"] = 5,
        ["giu"] = 6,
        ["lug"] = 7,
        ["ott"] = 10,
        ["gen"] = 1,
    };

    public static bool TryRead(ref ReadOnlySpan<char> text, out int month)
    {
        var n = 0;
        while (n < text.Length && char.IsLetter(text[n]))
        {
            n++;
        }

        if (!TryWord(text[..n], out month))
        {
            return false;
        }

        text = text[n..];
        return true;
    }

    public static bool TryWord(ReadOnlySpan<char> word, out int month)
    {
        month = 0;
        if (word.Length is < 3 or > 10)
        {
            return false;
        }

        Span<char> three = stackalloc char[3];
        word[..3].ToLowerInvariant(three);
        for (var m = 0; m < Months.Length; m++)
        {
            if (three.SequenceEqual(Months[m]))
            {
                month = m + 1;
                return true;
            }
        }

        return OtherMonths.TryGetValue(three.ToString(), out month);
    }
}
