namespace Rinsewright.Files.Loggers;

/// <summary>Questions that only the whole file answers: the order of the date's numbers, the decimal mark of a column of whole numbers.</summary>
internal static class Survey
{
    /// <summary>Takes one split row into the evidence.</summary>
    public static void Take(List<string?> row, Clock clock, DateOrderEvidence dates, DecimalMarks marks)
    {
        if (clock.Kind == ClockKind.Stamp && StampText.TryParse(clock.TextOf(row), out var parts))
        {
            dates.Add(parts);
        }

        for (var i = 0; i < row.Count; i++)
        {
            if (row[i] is { Length: > 0 } cell && !clock.Uses(i))
            {
                marks.Add(i, cell);
            }
        }
    }

    /// <summary>Goes on behind the sample until nothing is open or the file ends.</summary>
    public static void WholeFile(
        TextSource source,
        Layout layout,
        Clock clock,
        DateOrderEvidence dates,
        DecimalMarks marks,
        int sampled,
        bool dateOpen,
        bool markOpen,
        Pace pace
    )
    {
        using var text = source.Open();
        var lines = new LineReader(text);
        var fields = new List<string>();
        var columns = new List<string?>();
        long rows = 0;
        while (lines.TryRead(out var line))
        {
            if (++rows % Pace.Stride == 0)
            {
                pace.Tick(0);
                if ((!dateOpen || dates.Settled) && !markOpen)
                {
                    return;
                }
            }

            if (lines.Line <= sampled)
            {
                continue;
            }

            Fields.Split(line, layout.Separator, fields);
            if (layout.Shape.TryShape(fields, columns, out _))
            {
                Take(columns, clock, dates, marks);
            }
        }
    }
}
