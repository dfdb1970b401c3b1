using Rinsewright.Engine.Quantities;
using Rinsewright.Engine.Records;

namespace Rinsewright.Files.Loggers;

/// <summary>Changes to a whole channel once all of it is known: values that turned out to be fault marks, a logger that had wrapped around.</summary>
internal static class Retrace
{
    /// <summary>Takes out the samples with one exact value and marks the holes.</summary>
    public static void WithoutValue(ChannelRecord channel, double value, string mark)
    {
        var trace = channel.Samples.Build(Units.Celsius);
        var kept = new TraceBuilder();
        var marks = new List<TraceMark>();
        var next = 0;
        var open = -1;
        long rows = 0;
        void Close()
        {
            if (open >= 0)
            {
                marks.Add(new TraceMark(TraceMarkKind.Fault, kept.Count, 0, rows, null, mark));
                open = -1;
            }
        }

        var seconds = new double[4096];
        var values = new double[4096];
        for (var from = 0; from < trace.Count; from += seconds.Length)
        {
            var n = Math.Min(seconds.Length, trace.Count - from);
            trace.CopyTo(from, seconds.AsSpan(0, n), values.AsSpan(0, n));
            for (var i = 0; i < n; i++)
            {
                for (; next < channel.Marks.Count && channel.Marks[next].First <= from + i; next++)
                {
                    marks.Add(channel.Marks[next] with { First = kept.Count });
                }

                if (values[i] == value)
                {
                    rows = open < 0 ? 1 : rows + 1;
                    open = 0;
                }
                else
                {
                    Close();
                    kept.Add((long)Math.Round(seconds[i] * 1000), values[i]);
                }
            }
        }

        Close();
        for (; next < channel.Marks.Count; next++)
        {
            marks.Add(channel.Marks[next] with { First = kept.Count });
        }

        channel.Replace(kept, marks);
    }

    /// <summary>Puts the part behind <paramref name="cut"/> in front, as a logger with a full memory wrote it later.</summary>
    /// <param name="channel">Channel.</param>
    /// <param name="cut">Samples before the step back.</param>
    /// <param name="moved">Milliseconds by which the later part had been shifted on the axis.</param>
    /// <param name="origin">Milliseconds from the old second 0 to the new one; negative.</param>
    public static void Rotate(ChannelRecord channel, int cut, long moved, long origin)
    {
        var trace = channel.Samples.Build(Units.Celsius);
        var turned = new TraceBuilder();
        var tail = trace.Count - cut;
        for (var i = 0; i < trace.Count; i++)
        {
            var at = i < tail ? cut + i : i - tail;
            turned.Add((long)Math.Round(trace.SecondsAt(at) * 1000) - (i < tail ? moved : 0) - origin, trace.ValueAt(at));
        }

        var marks = channel
            .Marks.Where(m => m.Kind != TraceMarkKind.ClockBack)
            .Select(m => m with { First = m.First >= cut ? m.First - cut : m.First + tail })
            .OrderBy(m => m.First);
        channel.Replace(turned, [.. marks]);
    }

    /// <summary>Turns a channel round that was written from its newest sample to its oldest.</summary>
    /// <param name="channel">Channel.</param>
    /// <param name="lastAt">Milliseconds of the file's last row on the old axis: second 0 of the new one.</param>
    public static void Reverse(ChannelRecord channel, long lastAt)
    {
        var trace = channel.Samples.Build(Units.Celsius);
        var turned = new TraceBuilder();
        for (var i = trace.Count - 1; i >= 0; i--)
        {
            turned.Add(lastAt - (long)Math.Round(trace.SecondsAt(i) * 1000), trace.ValueAt(i));
        }

        channel.Replace(turned, [.. channel.Marks.Select(m => m with { First = trace.Count - m.First - m.Count }).OrderBy(m => m.First)]);
    }
}
