using Rinsewright.Engine.Quantities;

namespace Rinsewright.Engine.Records;

/// <summary>
/// Builds a <see cref="Trace"/> sample by sample in bounded memory (2 to 8 bytes a sample on a regular clock). The reader of a file reports what it met;
/// the builder finds gaps itself: a step longer than <see cref="GapFactor"/> times the usual one.
/// </summary>
public sealed class TraceBuilder
{
    /// <summary>A step longer than this many usual steps is a gap.</summary>
    public const double GapFactor = 1.75;

    private readonly PackedSamples values = new();
    private readonly TimeAxis axis = new();
    private readonly List<TraceMark> marks = [];

    /// <summary>Name of the channel.</summary>
    public string Name { get; set; } = "";

    /// <summary>Samples so far.</summary>
    public int Count => values.Count;

    /// <summary>Seconds of the last sample; null before the first.</summary>
    public double? LastSeconds => axis.Count == 0 ? null : axis.LastMilliseconds / 1000.0;

    /// <summary>Adds a sample.</summary>
    /// <param name="milliseconds">Time since second 0 of the file, not before the last sample.</param>
    /// <param name="value">Finite value in the channel's unit.</param>
    /// <exception cref="ArgumentOutOfRangeException">The value is not finite or the time goes back.</exception>
    public void Add(long milliseconds, double value)
    {
        if (!double.IsFinite(value))
        {
            throw new ArgumentOutOfRangeException(nameof(value), value, "A sample is a finite number; a missing one is a mark.");
        }

        axis.Add(milliseconds);
        values.Add(value);
    }

    /// <summary>Adds samples at equal steps.</summary>
    /// <param name="milliseconds">Time of the first since second 0 of the file, not before the last sample.</param>
    /// <param name="step">Milliseconds from one to the next, not negative.</param>
    /// <param name="samples">Finite values in the channel's unit.</param>
    /// <exception cref="ArgumentOutOfRangeException">A value is not finite or the time goes back.</exception>
    public void Add(long milliseconds, long step, ReadOnlySpan<double> samples)
    {
        foreach (var value in samples)
        {
            if (!double.IsFinite(value))
            {
                throw new ArgumentOutOfRangeException(nameof(samples), value, "A sample is a finite number; a missing one is a mark.");
            }
        }

        axis.Add(milliseconds, step, samples.Length);
        values.Add(samples);
    }

    /// <summary>Marks a stretch that starts at the next sample. Neighbouring marks of one kind and reason are joined.</summary>
    public void Mark(TraceMarkKind kind, string reason, long? line = null, int count = 0, long rows = 1)
    {
        if (
            marks.Count > 0
            && marks[^1] is var last
            && last.Kind == kind
            && last.First + last.Count == Count
            && string.Equals(last.Reason, reason, StringComparison.Ordinal)
        )
        {
            marks[^1] = last with { Count = last.Count + count, Rows = last.Rows + rows };
        }
        else
        {
            marks.Add(new TraceMark(kind, Count, count, rows, line, reason));
        }
    }

    /// <summary>Takes over a mark whose place among the samples is known.</summary>
    public void Mark(TraceMark mark) => marks.Add(mark);

    /// <summary>Marks samples already stored, for example a frozen stretch found afterwards.</summary>
    public void MarkStored(TraceMarkKind kind, int first, int count, string reason, long? line = null) =>
        marks.Add(new TraceMark(kind, first, count, count, line, reason));

    /// <summary>Finishes the trace.</summary>
    /// <param name="unit">Unit of the values.</param>
    /// <param name="start">Local clock time of second 0; null for elapsed time.</param>
    /// <param name="utcOffset">Offset of the clock; null where not known.</param>
    public Trace Build(Unit unit, DateTime? start = null, TimeSpan? utcOffset = null)
    {
        // A hole that a fault already explains is not marked twice. Building changes nothing, so a trace can be looked at before it is finished.
        var holes = marks.Where(m => m.Kind == TraceMarkKind.Fault && m.Count == 0).Select(m => m.First).ToHashSet();
        var found = axis.Gaps(GapFactor).Where(g => !holes.Contains(g.First)).Concat(axis.IntervalChanges());
        return new Trace(Name, unit, start, utcOffset, values, axis, [.. marks.Concat(found).OrderBy(m => m.First)]);
    }

    /// <summary>A trace from arrays, for tests and typed-in series.</summary>
    public static Trace From(string name, Unit unit, ReadOnlySpan<double> seconds, ReadOnlySpan<double> samples, DateTime? start = null)
    {
        var builder = new TraceBuilder { Name = name };
        for (var i = 0; i < seconds.Length; i++)
        {
            builder.Add((long)Math.Round(seconds[i] * 1000), samples[i]);
        }

        return builder.Build(unit, start);
    }
}
