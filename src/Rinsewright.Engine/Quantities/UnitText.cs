using System.Text;

namespace Rinsewright.Engine.Quantities;

/// <summary>Finds the unit a person or a file means: the exact UCUM code first, then symbols and spellings without case, spaces and look-alikes.</summary>
public static class UnitText
{
    private static readonly Dictionary<(Dimension, string), Unit> BySpelling = Spellings();

    /// <summary>The unit of this dimension that the text names; null where there is none.</summary>
    public static Unit? Find(string text, Dimension dimension)
    {
        var trimmed = text.Trim();
        // French degrees are written with a small f; a capital one is a temperature in the wrong field.
        return dimension == Dimension.Hardness && (Plain(trimmed) is "f" or "°f") && (trimmed[^1] is 'F' or '℉') ? null
            : Units.Find(trimmed) is { } exact && exact.Dimension == dimension ? exact
            : BySpelling.GetValueOrDefault((dimension, Plain(trimmed)));
    }

    /// <summary>Any unit of any dimension that the text names, to say what was meant; null where there is none.</summary>
    public static Unit? FindElsewhere(string text)
    {
        var plain = Plain(text);
        return Units.Find(text.Trim())
            ?? Enum.GetValues<Dimension>().Select(d => BySpelling.GetValueOrDefault((d, plain))).FirstOrDefault(u => u is not null);
    }

    internal static bool IsBareDegree(string text) => Plain(text) is "°" or "deg" or "degree" or "degrees" or "grado" or "grados";

    private static string Plain(string text)
    {
        var plain = new StringBuilder(text.Length);
        foreach (var c in text)
        {
            if (AmountText.IsSpace(c))
            {
                continue;
            }

            _ = c switch
            {
                'º' or '˚' => plain.Append('°'),
                '℃' => plain.Append("°c"),
                '℉' => plain.Append("°f"),
                'µ' or 'μ' => plain.Append('u'),
                '²' => plain.Append('2'),
                '³' or '₃' => plain.Append('3'),
                '·' or '⋅' or '*' => plain.Append('.'),
                _ => plain.Append(char.ToLowerInvariant(c)),
            };
        }

        return plain.ToString();
    }

    private static Dictionary<(Dimension, string), Unit> Spellings()
    {
        var found = new Dictionary<(Dimension, string), Unit>();
        foreach (var unit in Units.All)
        {
            // Codes that differ by case only (mW, MW) are told apart by the exact match above; here the first one stands.
            foreach (var spelling in (string[])[unit.Ucum, unit.Symbol, .. unit.Spellings])
            {
                found.TryAdd((unit.Dimension, Plain(spelling)), unit);
            }
        }

        return found;
    }
}
