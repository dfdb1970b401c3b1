namespace Rinsewright.Files.Loggers;

/// <summary>Dates above the table that show their own order, for example <c>Mission start: Tue Apr 08 2031</c>.</summary>
internal static class Preamble
{
    private static readonly System.Buffers.SearchValues<char> Breaks = System.Buffers.SearchValues.Create(":,;=\t ");
    private const long TwoDays = 2 * 86_400_000L;

    /// <summary>The one order under which the table's first or last row falls within two days of such a date; null where none or several do.</summary>
    public static DateOrder? OrderOf(IReadOnlyList<string> lines, IReadOnlyList<DateOrder> fit, List<List<string?>> rows, Clock clock)
    {
        var dates = new List<long>();
        foreach (var line in lines)
        {
            for (
                var at = 0;
                at >= 0 && at < line.Length;
                at = line.AsSpan(at + 1).IndexOfAny(Breaks) is >= 0 and var next ? at + 1 + next : -1
            )
            {
                var text = line.AsSpan(at).Trim(":,;=\t \"");
                if (
                    StampText.TryParse(text, out var parts)
                    && parts is { HasDate: true, Known: { } known }
                    && StampText.TryResolve(parts, known, out var ms)
                )
                {
                    dates.Add(ms);
                    break;
                }
            }
        }

        if (dates.Count == 0 || rows.Count == 0)
        {
            return null;
        }

        DateOrder? found = null;
        foreach (var order in fit)
        {
            foreach (var row in (ReadOnlySpan<List<string?>>)[rows[0], rows[^1]])
            {
                if (
                    StampText.TryParse(clock.TextOf(row), out var parts)
                    && StampText.TryResolve(parts, order, out var ms)
                    && dates.Exists(d => Math.Abs(d - ms) <= TwoDays)
                )
                {
                    if (found is not null && found != order)
                    {
                        return null;
                    }

                    found = order;
                }
            }
        }

        return found;
    }
}
