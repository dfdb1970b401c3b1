using System.Globalization;

namespace Rinsewright.Engine.Quantities;

/// <summary>Writes amounts. The decimal mark and the group sign are passed in: nothing here looks at the current culture.</summary>
public static class AmountFormat
{
    // Between number and symbol, so that the two never part at a line's end.
    private const char NoBreakSpace = '\u00a0';

    /// <summary>For people: number with sensible decimals, no-break space, symbol; for example <c>1,250.5 L</c>.</summary>
    /// <param name="amount">What to write.</param>
    /// <param name="decimalMark">Point or comma.</param>
    /// <param name="groupSign">Between groups of three digits; empty for none.</param>
    /// <param name="digits">Most decimals; null for what suits the unit and the size.</param>
    public static string Show(Amount amount, char decimalMark = '.', string groupSign = ",", int? digits = null)
    {
        var number = Number(amount.Value, digits ?? SensibleDigits(amount), decimalMark, groupSign);
        return amount.Unit.Symbol.Length == 0 ? number : $"{number}{NoBreakSpace}{amount.Unit.Symbol}";
    }

    /// <summary>A number with at most so many decimals, no trailing zeros.</summary>
    public static string Number(double value, int digits, char decimalMark = '.', string groupSign = ",")
    {
        var text = value.ToString(digits == 0 ? "#,0" : "#,0." + new string('#', digits), CultureInfo.InvariantCulture);
        var at = text.IndexOf('.', StringComparison.Ordinal);
        var (whole, fraction) = at < 0 ? (text, "") : (text[..at], text[(at + 1)..]);
        whole = whole.Replace(",", groupSign, StringComparison.Ordinal);
        return fraction.Length == 0 ? (whole == "-0" ? "0" : whole) : $"{whole}{decimalMark}{fraction}";
    }

    /// <summary>For files: shortest number that reads back the same, a space, the UCUM code; for example <c>71.4 Cel</c>.</summary>
    public static string Ucum(Amount amount) => $"{amount.Value.ToString("R", CultureInfo.InvariantCulture)} {amount.Unit.Ucum}";

    /// <summary>Decimals that suit: the unit's own, and for a small amount as many more as keep two figures (at most 6).</summary>
    public static int SensibleDigits(Amount amount)
    {
        var size = Math.Abs(amount.Value);
        if (amount.Unit.Offset != 0 || size == 0 || size >= 1)
        {
            return amount.Unit.Digits;
        }

        var figures = 1 - (int)Math.Floor(Math.Log10(size));
        return Math.Clamp(figures, amount.Unit.Digits, Math.Max(6, amount.Unit.Digits));
    }
}
