using System.Text;

namespace Rinsewright.Contracts.Records;

/// <summary>Finds names as people type them with one wet thumb: without accents, in any case, a letter too many, too few, wrong or swapped.</summary>
public static class Forgiving
{
    private const string Accented = "áàâäãåéèêëíìîïóòôöõøúùûüñçýÿß";
    private const string Plain = "aaaaaaeeeeiiiioooooouuuuncyys";

    /// <summary>Lower case without accents; everything that is no letter or digit becomes one space.</summary>
    public static string Fold(string text)
    {
        var folded = new StringBuilder(text.Length);
        foreach (var raw in text)
        {
            var c = char.ToLowerInvariant(raw);
            var at = Accented.IndexOf(c, StringComparison.Ordinal);
            c = at >= 0 ? Plain[at] : c;
            if (char.IsLetterOrDigit(c))
            {
                folded.Append(c);
            }
            else if (c is not ('\'' or '’') && folded.Length > 0 && folded[^1] != ' ')
            {
                folded.Append(' ');
            }
        }

        return folded.ToString().TrimEnd();
    }

    /// <summary>How far a folded text is from what is searched for: 0 where every word stands in it as typed; null where one is not found.</summary>
    /// <param name="search">Folded words searched for; all must be found.</param>
    /// <param name="text">Folded text.</param>
    public static int? Distance(string search, string text)
    {
        var sum = 0;
        var words = text.Split(' ');
        foreach (var wanted in search.Split(' ', StringSplitOptions.RemoveEmptyEntries))
        {
            if (text.Contains(wanted, StringComparison.Ordinal))
            {
                continue;
            }

            var most = MostSlips(wanted);
            var best = most + 1;
            foreach (var word in words)
            {
                best = Math.Min(best, Slips(wanted, word, best));
            }

            if (best > most)
            {
                return null;
            }

            sum += best;
        }

        return sum;
    }

    /// <summary>An id made of a name, so that two devices without a signal give the same kitchen the same id.</summary>
    public static Guid IdOf(string name)
    {
        var folded = Fold(name);
        Span<byte> bytes = stackalloc byte[16];
        BitConverter.TryWriteBytes(bytes, Hash(folded));
        BitConverter.TryWriteBytes(bytes[8..], Hash(folded + "|"));
        bytes[7] = (byte)((bytes[7] & 0x0f) | 0x80); // version 8: made by a rule of our own (RFC 9562)
        bytes[8] = (byte)((bytes[8] & 0x3f) | 0x80);
        return new Guid(bytes);
    }

    /// <summary>A short key of a text: FNV-1a with 64 bits over its characters.</summary>
    public static string KeyOf(string text) => Hash(text).ToString("x16", System.Globalization.CultureInfo.InvariantCulture);

    private static ulong Hash(string text)
    {
        var hash = 14695981039346656037UL;
        foreach (var c in text)
        {
            hash = (hash ^ c) * 1099511628211UL;
        }

        return hash;
    }

    /// <summary>Most slips that still find a word; short ones leave no room for any: "bar" is not "bay".</summary>
    internal static int MostSlips(string wanted) =>
        wanted.Length switch
        {
            < 4 => 0,
            < 8 => 1,
            _ => 2,
        };

    // Letters too many, too few, wrong or swapped with the next between what is wanted and the beginning of a word; no more than enough to know.
    internal static int Slips(string wanted, string word, int enough)
    {
        if (word.Length < wanted.Length - enough)
        {
            return enough;
        }

        var width = Math.Min(word.Length, wanted.Length + enough);
        var (before, last, now) = (new int[width + 1], new int[width + 1], new int[width + 1]);
        for (var j = 0; j <= width; j++)
        {
            last[j] = j;
        }

        for (var i = 1; i <= wanted.Length; i++)
        {
            now[0] = i;
            for (var j = 1; j <= width; j++)
            {
                var same = wanted[i - 1] == word[j - 1];
                now[j] = Math.Min(Math.Min(last[j] + 1, now[j - 1] + 1), last[j - 1] + (same ? 0 : 1));
                if (i > 1 && j > 1 && wanted[i - 1] == word[j - 2] && wanted[i - 2] == word[j - 1])
                {
                    now[j] = Math.Min(now[j], before[j - 2] + 1);
                }
            }

            (before, last, now) = (last, now, before);
        }

        return Math.Min(enough, last.Min()); // the word may go on: people stop typing when they see it
    }
}
