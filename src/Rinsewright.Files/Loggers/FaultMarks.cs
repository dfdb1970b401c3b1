namespace Rinsewright.Files.Loggers;

/// <summary>Cells that say "no reading": words and values that no place on a dish machine can have.</summary>
internal sealed class FaultMarks(IReadOnlyList<string>? given)
{
    // Powers of two: raw codes; -127, -196.6: a digital sensor's answer to silence in °C and °F; the rest as boards write them.
    private static readonly double[] Values =
    [
        -100,
        -127,
        -148,
        -196.6,
        -200,
        -328,
        -273,
        -273.1,
        -273.15,
        -999,
        -999.9,
        -9999,
        -99.9,
        -32768,
        999,
        999.9,
        2047,
        4095,
        6999,
        7999,
        9999,
        32767,
        65535,
        65336,
    ];

    private static readonly HashSet<string> Words = new(StringComparer.OrdinalIgnoreCase)
    {
        "NA",
        "N/A",
        "#N/A",
        "NaN",
        "-NaN",
        "1.#QNAN",
        "OL",
        "O.L",
        "O.L.",
        "OF",
        "OPEN",
        "OVER",
        "OVLD",
        "OVERLOAD",
        "ERR",
        "ERROR",
        "FAULT",
        "FAIL",
        "NULL",
        "NONE",
        "INF",
        "-INF",
        "LO",
        "HI",
        "NC",
        "N.C.",
        "BURNOUT",
        "B.OUT",
        "#VALUE!",
        "#REF!",
        "#DIV/0!",
        "INVALID",
        "NODATA",
        "NO DATA",
        "MISSING",
        "X",
        "?",
        "*",
    };

    private static readonly System.Buffers.SearchValues<char> Dashes = System.Buffers.SearchValues.Create("-–—_. /*#?");

    private readonly double[] extraValues =
    [
        .. (given ?? [])
            .Where(g => NumberText.TryParse(g.Replace(',', '.'), '.', out _))
            .Select(g => NumberText.TryParse(g.Replace(',', '.'), '.', out var v) ? v : 0),
    ];

    private readonly HashSet<string> extraWords = new(given ?? [], StringComparer.OrdinalIgnoreCase);

    /// <summary>Whether the person added marks.</summary>
    public bool HasGiven => extraWords.Count > 0;

    /// <summary>Whether a cell that is no number is a fault mark: a known word, dashes, or letters only.</summary>
    public bool IsWord(string cell)
    {
        if (cell.Length == 0 || Words.Contains(cell) || extraWords.Contains(cell))
        {
            return true;
        }

        return !cell.AsSpan().ContainsAnyExcept(Dashes) && cell.Length >= 2;
    }

    /// <summary>Whether a value is a fault mark.</summary>
    public bool IsValue(double value) => Array.IndexOf(Values, value) >= 0 || Array.IndexOf(extraValues, value) >= 0;
}
