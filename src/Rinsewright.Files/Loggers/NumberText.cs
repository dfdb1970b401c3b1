using System.Globalization;
using System.Runtime.CompilerServices;

namespace Rinsewright.Files.Loggers;

/// <summary>How a number is written.</summary>
internal enum NumberForm
{
    /// <summary>Not a number.</summary>
    None,

    /// <summary>Digits only.</summary>
    Whole,

    /// <summary>One point.</summary>
    Point,

    /// <summary>One comma.</summary>
    Comma,

    /// <summary>Points first, one comma last: the comma is the decimal mark.</summary>
    PointsThenComma,

    /// <summary>Commas first, one point last: the point is the decimal mark.</summary>
    CommasThenPoint,
}

/// <summary>Numbers of a column: exact to 15 digits by hand, more by the base class library. The culture of the computer never matters.</summary>
internal static class NumberText
{
    private static readonly double[] Powers = [1, 1e1, 1e2, 1e3, 1e4, 1e5, 1e6, 1e7, 1e8, 1e9, 1e10, 1e11, 1e12, 1e13, 1e14, 1e15];

    /// <summary>Reads a number with the given decimal mark.</summary>
    public static bool TryParse(ReadOnlySpan<char> text, char mark, out double value)
    {
        if (text.IsEmpty)
        {
            value = 0;
            return false;
        }

        var i = 0;
        var negative = false;
        if (text[0] is '-' or '+' or '\u2212')
        {
            negative = text[0] != '+';
            i = 1;
        }

        ulong digits = 0;
        var first = i;
        while (i < text.Length && (uint)(text[i] - '0') <= 9)
        {
            digits = (digits * 10) + (uint)(text[i] - '0');
            i++;
        }

        var count = i - first;
        var decimals = 0;
        if (i < text.Length && text[i] == mark)
        {
            var from = ++i;
            while (i < text.Length && (uint)(text[i] - '0') <= 9)
            {
                digits = (digits * 10) + (uint)(text[i] - '0');
                i++;
            }

            decimals = i - from;
            count += decimals;
        }

        if (i == text.Length && count is > 0 and <= 15)
        {
            // Both operands are exact, so the quotient is the correctly rounded value.
            value = digits / Powers[decimals];
            value = negative ? -value : value;
            return true;
        }

        return TryParseLong(text, mark, out value);
    }

    /// <summary>Powers of ten that are exact, by which the digits of a number are divided.</summary>
    public static double[] PowersOfTen => Powers;

    /// <summary>Reads the everyday number at the start of a text: at most 15 digits, perhaps one decimal mark, no sign.</summary>
    /// <param name="text">Starts with the number; what follows it is for the caller to judge.</param>
    /// <param name="mark">Decimal mark.</param>
    /// <param name="digits">All its digits.</param>
    /// <param name="decimals">How many of them stand behind the mark.</param>
    /// <returns>Its length; 0 where there is none.</returns>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static int TakePlain(ReadOnlySpan<byte> text, byte mark, out long digits, out int decimals)
    {
        digits = 0;
        decimals = 0;
        var i = 0;
        uint digit;
        while (i < text.Length && (digit = (uint)(text[i] - '0')) <= 9)
        {
            digits = (digits * 10) + digit;
            i++;
        }

        var count = i;
        if (i < text.Length && text[i] == mark)
        {
            var from = ++i;
            while (i < text.Length && (digit = (uint)(text[i] - '0')) <= 9)
            {
                digits = (digits * 10) + digit;
                i++;
            }

            decimals = i - from;
            count += decimals;
        }

        return count is > 0 and <= 15 ? i : 0;
    }

    /// <summary>How the number is written; says nothing of which mark is the decimal one.</summary>
    public static NumberForm FormOf(ReadOnlySpan<char> text)
    {
        text = text.Trim();
        var i = text.Length > 0 && text[0] is '-' or '+' or '\u2212' ? 1 : 0;
        int digits = 0,
            points = 0,
            commas = 0,
            lastPoint = -1,
            lastComma = -1;
        for (; i < text.Length; i++)
        {
            switch (text[i])
            {
                case >= '0' and <= '9':
                    digits++;
                    break;
                case '.':
                    points++;
                    lastPoint = i;
                    break;
                case ',':
                    commas++;
                    lastComma = i;
                    break;
                case 'e' or 'E' when digits > 0 && IsExponent(text[(i + 1)..]):
                    i = text.Length;
                    break;
                default:
                    return NumberForm.None;
            }
        }

        return digits == 0 ? NumberForm.None
            : points == 0 && commas == 0 ? NumberForm.Whole
            : points == 1 && commas == 0 ? NumberForm.Point
            : points == 0 && commas == 1 ? NumberForm.Comma
            : commas == 1 && lastComma > lastPoint ? NumberForm.PointsThenComma
            : points == 1 && lastPoint > lastComma ? NumberForm.CommasThenPoint
            : NumberForm.None;
    }

    private static bool IsExponent(ReadOnlySpan<char> text)
    {
        text = text.TrimStart("+-");
        return text.Length is > 0 and <= 3 && !text.ContainsAnyExceptInRange('0', '9');
    }

    private static bool TryParseLong(ReadOnlySpan<char> text, char mark, out double value)
    {
        value = 0;
        var trimmed = text.Trim();
        if (trimmed.Length is 0 or > 64)
        {
            return false;
        }

        if (trimmed.Length != text.Length)
        {
            return TryParse(trimmed, mark, out value);
        }

        Span<char> plain = stackalloc char[64];
        text.CopyTo(plain);
        plain = plain[..text.Length];
        var thousands = mark == '.' ? ',' : '.';
        if (plain.Contains(thousands))
        {
            // Thousands are believed only where the decimal mark stands behind them.
            if (plain.IndexOf(mark) < plain.LastIndexOf(thousands))
            {
                return false;
            }

            return TryParse(plain.ToString().Replace(thousands.ToString(), "", StringComparison.Ordinal), mark, out value);
        }

        plain.Replace(mark, '.');
        plain.Replace('\u2212', '-');
        return double.TryParse(
                plain,
                NumberStyles.AllowLeadingSign | NumberStyles.AllowDecimalPoint | NumberStyles.AllowExponent,
                CultureInfo.InvariantCulture,
                out value
            ) && double.IsFinite(value);
    }
}
