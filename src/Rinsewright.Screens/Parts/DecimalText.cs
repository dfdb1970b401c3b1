using System.Globalization;

namespace Rinsewright.Client.Parts;

/// <summary>What became of a typed number.</summary>
public enum DecimalReading
{
    /// <summary>Nothing typed.</summary>
    Empty,

    /// <summary>A number.</summary>
    Number,

    /// <summary>Not a number.</summary>
    Unreadable,

    /// <summary>One mark followed by three digits: a decimal mark or a thousands mark, nothing tells which.</summary>
    Unclear,
}

/// <summary>Reads numbers as people type them: decimal point or comma, spaces between thousands.</summary>
public static class DecimalText
{
    /// <summary>Reads a number.</summary>
    public static (DecimalReading What, double Value) Read(string? text)
    {
        var plain = string.Concat((text ?? "").Where(c => !char.IsWhiteSpace(c) && c is not '\u202f' and not '\u00a0')).Replace('−', '-');
        if (plain.Length == 0)
        {
            return (DecimalReading.Empty, 0);
        }

        var marks = plain.Count(c => c is '.' or ',');
        var last = plain.LastIndexOfAny(['.', ',']);
        if (marks > 1)
        {
            var mark = plain[last];
            // Several of one kind are thousands; of two kinds, the last is the decimal mark.
            var other = mark == '.' ? ',' : '.';
            plain = plain.Contains(other, StringComparison.Ordinal)
                ? plain.Replace(other.ToString(), "", StringComparison.Ordinal).Replace(mark, '.')
                : plain.Replace(mark.ToString(), "", StringComparison.Ordinal);
        }
        else if (marks == 1)
        {
            var whole = plain[..last].TrimStart('-', '+');
            if (
                plain.Length - last == 4
                && plain.AsSpan(last + 1).IndexOfAnyExceptInRange('0', '9') < 0
                && whole.Length is > 0 and < 4
                && whole[0] != '0'
            )
            {
                return (DecimalReading.Unclear, 0);
            }

            plain = plain.Replace(',', '.');
        }

        const NumberStyles Style = NumberStyles.AllowLeadingSign | NumberStyles.AllowDecimalPoint;
        return double.TryParse(plain, Style, CultureInfo.InvariantCulture, out var value) && double.IsFinite(value)
            ? (DecimalReading.Number, value)
            : (DecimalReading.Unreadable, 0);
    }

    /// <summary>Writes a number for a field, with the decimal mark of the language and no thousands marks.</summary>
    public static string Write(double value, int digits, string language)
    {
        var text = value.ToString("0." + new string('#', digits), CultureInfo.InvariantCulture);
        return language == "es" ? text.Replace('.', ',') : text;
    }
}
