namespace Rinsewright.Drawing;

/// <summary>
/// Widths of letters, good enough to keep labels apart: thousandths of the letter size, rounded up from common sans-serif faces
/// (figures 556 to 562). The page's own face may differ a little; <see cref="Safety"/> covers that.
/// </summary>
public static class TextWidth
{
    /// <summary>Factor on the table for faces wider than it.</summary>
    public const double Safety = 1.06;

    private const int Figure = 562;

    // Lower case a to z, upper case A to Z.
    private static readonly int[] Lower =
    [
        556,
        570,
        510,
        570,
        556,
        320,
        570,
        562,
        245,
        250,
        515,
        245,
        870,
        562,
        570,
        570,
        570,
        345,
        510,
        320,
        562,
        510,
        750,
        505,
        505,
        500,
    ];
    private static readonly int[] Upper =
    [
        667,
        660,
        700,
        722,
        640,
        600,
        760,
        722,
        285,
        510,
        667,
        560,
        850,
        722,
        780,
        645,
        780,
        680,
        645,
        611,
        722,
        667,
        944,
        667,
        650,
        611,
    ];

    /// <summary>Width of a text, px, a little too wide rather than too narrow.</summary>
    /// <param name="text">The text.</param>
    /// <param name="size">Letter size, px.</param>
    /// <param name="weight">Letter weight; from 600 on letters are wider.</param>
    public static double Of(string text, double size, int weight = 500)
    {
        var sum = 0;
        foreach (var c in text)
        {
            sum += Of(c);
        }

        return sum / 1000.0 * size * Safety * (weight >= 600 ? 1.05 : 1);
    }

    private static int Of(char c) =>
        c switch
        {
            >= 'a' and <= 'z' => Lower[c - 'a'],
            >= 'A' and <= 'Z' => Upper[c - 'A'],
            >= '0' and <= '9' => Figure,
            ' ' or '\u00a0' or '.' or ',' or ':' or ';' or '\'' or '|' => 280,
            '\u202f' or '\u2009' => 200,
            '(' or ')' or '-' => 340,
            'í' or 'ì' or 'ï' => 280,
            'Á' or 'É' or 'Í' or 'Ó' or 'Ú' or 'Ñ' => 722,
            '°' => 400,
            '–' or '≥' or '≤' or '≈' or '±' or '+' or '=' or '→' => 600,
            '—' or '%' => 1000,
            _ => 600,
        };
}
