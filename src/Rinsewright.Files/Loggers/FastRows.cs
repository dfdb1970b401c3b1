using nietras.SeparatedValues;

namespace Rinsewright.Files.Loggers;

/// <summary>
/// Reads regular rows: the usual number of fields, a stamp of the usual shape, an everyday number in every channel, in step with the row
/// before. Allocates nothing. Works in stretches, so that the runtime sees a method called often and compiles it well.
/// </summary>
internal sealed class FastRows(Layout layout, Clock clock, IReadOnlyList<ChannelPlan> plans, Recording recording, string tail)
{
    private readonly FastStamp stamps = new(clock);
    private readonly int[] wanted = [.. plans.Select(p => p.Column)];
    private readonly char[] marks = [.. plans.Select(p => p.Mark)];
    private readonly double[] values = new double[plans.Count];
    private long read;

    /// <summary>Number of the last line reached, from 1.</summary>
    public long Line { get; private set; }

    /// <summary>The line the stretch stopped at because it is no regular row; 0 where it ran its length.</summary>
    public long OddLine { get; private set; }

    /// <summary>Rows read since the last call.</summary>
    public long TakeRead()
    {
        var rows = read;
        read = 0;
        return rows;
    }

    /// <summary>Reads at most <paramref name="most"/> rows, or up to an odd one, which is then the reader's current row; false at the end.</summary>
    public bool ReadStretch(SepReader reader, int most)
    {
        OddLine = 0;
        var line = Line;
        var width = layout.Width;
        var lead = layout.FirstData;
        var stampColumn = clock.Column;
        var counts = clock.Kind != ClockKind.Stamp;
        for (var n = 0; n < most; n++)
        {
            if (!reader.MoveNext())
            {
                Line = line;
                return false;
            }

            if (++line <= lead)
            {
                continue;
            }

            var row = reader.Current;
            if (row.ColCount == width && (tail.Length == 0 || !row.Span.SequenceEqual(tail)))
            {
                var stamp = row[stampColumn].Span;
                if (
                    (counts ? clock.TryNumber(stamp, out var ms) : stamps.TryRead(stamp, out ms))
                    && TryValues(row)
                    && recording.TryAddInStep(ms, values)
                )
                {
                    read++;
                    continue;
                }
            }

            OddLine = line;
            break;
        }

        Line = line;
        return true;
    }

    private bool TryValues(SepReader.Row row)
    {
        for (var i = 0; i < wanted.Length; i++)
        {
            if (
                !NumberText.TryParse(row[wanted[i]].Span, marks[i], out var value)
                || value is not (>= ChannelRecord.PlainLow and <= ChannelRecord.PlausibleHigh)
            )
            {
                return false;
            }

            values[i] = value;
        }

        return true;
    }
}
