namespace Rinsewright.Engine.Quantities;

/// <summary>
/// Reads what people type: <c>71,4 °C</c>, <c>160 F</c>, <c>−3 °C</c>, <c>1 250 L</c>, <c>20 [psi]</c>. Never looks at the current culture, never
/// guesses: what can be read in two ways is refused with the reason.
/// </summary>
public static class AmountText
{
    /// <summary>Reads an amount of one dimension.</summary>
    /// <param name="text">As typed.</param>
    /// <param name="dimension">What is asked for: <c>3 °F</c> is a difference where a difference is asked for.</param>
    /// <param name="amount">The amount in the unit it was typed in.</param>
    /// <param name="problem">Why it was refused; null where it was read.</param>
    /// <param name="decimalMark">Point or comma where it is known; settles only what both could mean, such as <c>1,250</c>.</param>
    /// <param name="assumed">Unit of a bare number; null to refuse a bare number. pH needs no unit.</param>
    public static bool TryParse(
        string text,
        Dimension dimension,
        out Amount amount,
        out ParseProblem? problem,
        char? decimalMark = null,
        Unit? assumed = null
    )
    {
        amount = default;
        var start = 0;
        while (start < text.Length && IsSpace(text[start]))
        {
            start++;
        }

        var end = text.Length;
        while (end > start && IsSpace(text[end - 1]))
        {
            end--;
        }

        if (start == end)
        {
            problem = new ParseProblem("amount.empty", "", 0);
            return false;
        }

        start = SkipLead(text, start, end, dimension);
        if (!NumberText.TryRead(text, start, end, decimalMark, out var value, out var next, out problem))
        {
            return false;
        }

        while (next < end && IsSpace(text[next]))
        {
            next++;
        }

        problem = UnitProblem(text, next, end, dimension, assumed, out var unit);
        if (problem is not null)
        {
            return false;
        }

        var si = unit!.ToSI(value);
        problem =
            !double.IsFinite(value) || !double.IsFinite(si) ? new ParseProblem("amount.too-large", text[start..next].TrimEnd(), start)
            : si < 0 && dimension is (Dimension.Temperature or Dimension.AbsolutePressure)
                ? new ParseProblem("amount.below-zero", text[start..end], start)
            : null;
        if (problem is not null)
        {
            return false;
        }

        amount = new Amount(value, unit);
        return true;
    }

    internal static bool IsSpace(char c) => char.IsWhiteSpace(c) || c is '\u200b' or '\ufeff';

    // "pH 7.5" puts the unit first; an uncertainty is typed "±0.9 F" or "+/- 0.9 F".
    private static int SkipLead(string text, int start, int end, Dimension dimension)
    {
        string[] leads = dimension switch
        {
            Dimension.Acidity or Dimension.AcidityDifference => ["ph"],
            Dimension.TemperatureDifference => ["±", "+/-", "+/−", "+-"],
            _ => [],
        };
        foreach (var lead in leads)
        {
            if (text.AsSpan(start, end - start).StartsWith(lead, StringComparison.OrdinalIgnoreCase))
            {
                start += lead.Length;
                while (start < end && (IsSpace(text[start]) || (leads[0] == "ph" && text[start] is '=' or ':')))
                {
                    start++;
                }

                break;
            }
        }

        return start;
    }

    private static ParseProblem? UnitProblem(string text, int from, int end, Dimension dimension, Unit? assumed, out Unit? unit)
    {
        var typed = text[from..end];
        if (typed.Length == 0)
        {
            unit =
                assumed
                ?? dimension switch
                {
                    Dimension.Acidity => Units.PH,
                    Dimension.AcidityDifference => Units.PHDifference,
                    _ => null,
                };
            return unit is null ? new ParseProblem("amount.no-unit", text.Trim(), 0) : null;
        }

        unit = UnitText.Find(typed, dimension);
        return unit is not null ? null
            : UnitText.IsBareDegree(typed) ? new ParseProblem("amount.no-scale", typed, from)
            : UnitText.FindElsewhere(typed) is not null ? new ParseProblem("amount.other-dimension", typed, from)
            : new ParseProblem("amount.unknown-unit", typed, from);
    }
}
