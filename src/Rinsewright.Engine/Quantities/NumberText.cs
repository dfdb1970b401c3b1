using System.Globalization;

namespace Rinsewright.Engine.Quantities;

/// <summary>
/// Reads the number at the start of a typed amount. Rules: a lone point or comma is the decimal mark, unless one to three digits stand before it and
/// exactly three after it and neither side shows what is meant (<c>1,250</c>): then it is refused, or settled by the mark the caller knows. Where both
/// stand, the last one is the decimal mark. Where one stands several times it groups. Spaces and apostrophes only ever group. Groups are of three.
/// </summary>
internal static class NumberText
{
    public static bool TryRead(
        string text,
        int start,
        int end,
        char? decimalMark,
        out double value,
        out int next,
        out ParseProblem? problem
    )
    {
        value = 0;
        problem = null;
        var at = start;
        var negative = false;
        if (at < end && text[at] is '-' or '+' or '\u2212' or '\u2013' or '\ufe63' or '\uff0d')
        {
            negative = text[at] != '+';
            at++;
            while (at < end && AmountText.IsSpace(text[at]))
            {
                at++;
            }
        }

        next = EndOfDigits(text, at, end);
        var body = text[at..next];
        if (body.Length == 0 || !body.Any(char.IsAsciiDigit))
        {
            problem = new ParseProblem("amount.no-number", text[start..end], start);
            return false;
        }

        if (Plain(body, decimalMark, out var key) is not { } plain)
        {
            problem = new ParseProblem(key, body, at);
            return false;
        }

        next = Exponent(text, next, end, out var exponent);
        value = double.Parse(plain + exponent, NumberStyles.Float, CultureInfo.InvariantCulture);
        value = negative ? -value : value;
        return true;
    }

    // Digits and the marks between them; a space or apostrophe belongs to the number only where exactly three digits follow.
    private static int EndOfDigits(string text, int at, int end)
    {
        var i = at;
        while (i < end)
        {
            if (char.IsAsciiDigit(text[i]))
            {
                i++;
            }
            else if (text[i] is '.' or ',' && i + 1 < end && char.IsAsciiDigit(text[i + 1]))
            {
                i++;
            }
            else if (i > at && IsGroupOnly(text[i]) && ThreeDigitsAt(text, i + 1, end))
            {
                i++;
            }
            else
            {
                break;
            }
        }

        return i;
    }

    private static bool IsGroupOnly(char c) => c is '\'' or '\u2019' || AmountText.IsSpace(c);

    private static bool ThreeDigitsAt(string text, int at, int end) =>
        at + 3 <= end
        && char.IsAsciiDigit(text[at])
        && char.IsAsciiDigit(text[at + 1])
        && char.IsAsciiDigit(text[at + 2])
        && (at + 3 == end || !char.IsAsciiDigit(text[at + 3]));

    // The number with a point and no groups; null with a reason where it cannot be told.
    private static string? Plain(string body, char? decimalMark, out string key)
    {
        key = "amount.bad-groups";
        var points = body.Count(c => c == '.');
        var commas = body.Count(c => c == ',');
        var spaced = body.Any(IsGroupOnly);
        char? mark;
        if (points > 0 && commas > 0)
        {
            mark = body.LastIndexOf('.') > body.LastIndexOf(',') ? '.' : ',';
            if (body.Count(c => c == mark) > 1)
            {
                return null;
            }
        }
        else if (points + commas > 1)
        {
            mark = null;
        }
        else if (points + commas == 1)
        {
            mark = points == 1 ? '.' : ',';
            var index = body.IndexOf(mark.Value, StringComparison.Ordinal);
            var couldGroup = !spaced && index is >= 1 and <= 3 && body[0] != '0' && body.Length - index - 1 == 3;
            if (couldGroup && decimalMark is null)
            {
                key = "amount.ambiguous-mark";
                return null;
            }

            mark = couldGroup && decimalMark != mark ? null : mark;
        }
        else
        {
            mark = null;
        }

        var at = mark is { } m ? body.LastIndexOf(m) : body.Length;
        var whole = Ungrouped(body[..at]);
        var fraction = at < body.Length ? body[(at + 1)..] : "";
        return whole is null || !fraction.All(char.IsAsciiDigit) ? null
            : fraction.Length > 0 ? $"{whole}.{fraction}"
            : whole;
    }

    private static string? Ungrouped(string whole)
    {
        if (whole.All(char.IsAsciiDigit))
        {
            return whole.Length == 0 ? "0" : whole;
        }

        var sign = whole.First(c => !char.IsAsciiDigit(c));
        var groups = whole.Split(sign);
        return groups[0].Length is >= 1 and <= 3 && groups.All(g => g.All(char.IsAsciiDigit)) && groups.Skip(1).All(g => g.Length == 3)
            ? string.Concat(groups)
            : null;
    }

    private static int Exponent(string text, int at, int end, out string exponent)
    {
        exponent = "";
        if (at >= end || text[at] is not ('e' or 'E'))
        {
            return at;
        }

        var i = at + 1;
        if (i < end && text[i] is '+' or '-')
        {
            i++;
        }

        var digits = i;
        while (i < end && char.IsAsciiDigit(text[i]))
        {
            i++;
        }

        if (i == digits)
        {
            return at;
        }

        exponent = text[at..i];
        return i;
    }
}
