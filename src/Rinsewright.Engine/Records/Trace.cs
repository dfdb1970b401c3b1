using Rinsewright.Engine.Quantities;

namespace Rinsewright.Engine.Records;

/// <summary>What is odd about a stretch of a trace.</summary>
public enum TraceMarkKind
{
    /// <summary>Time passed without a sample (longer than the usual interval).</summary>
    Gap,

    /// <summary>Rows carried a fault mark or no number: the channel has a hole here.</summary>
    Fault,

    /// <summary>Samples are there but stuck at one exact value while they should move.</summary>
    Frozen,

    /// <summary>Samples are there but outside what the place can have.</summary>
    Implausible,

    /// <summary>The logger's clock stepped backwards here.</summary>
    ClockBack,

    /// <summary>Two samples carried the same time.</summary>
    Duplicate,

    /// <summary>The sampling interval changed here.</summary>
    IntervalChange,
}

/// <summary>A marked stretch: never silently dropped, never bridged in a heat dose where it is a hole or suspect.</summary>
/// <param name="Kind">What is odd.</param>
/// <param name="First">Index of the first stored sample at or after the stretch begins.</param>
/// <param name="Count">Stored samples inside the stretch; 0 for a hole between <c>First - 1</c> and <c>First</c>.</param>
/// <param name="Rows">Rows of the file concerned (for a fault: how many carried no number).</param>
/// <param name="Line">Line of the file where it starts; null where there was no file.</param>
/// <param name="Reason">Why, for example the mark that stood there.</param>
public sealed record TraceMark(TraceMarkKind Kind, int First, int Count, long Rows, long? Line, string Reason)
{
    /// <summary>Whether nothing may be concluded about the surface across this stretch.</summary>
    public bool BreaksEvidence => Kind is not (TraceMarkKind.Duplicate or TraceMarkKind.IntervalChange);
}

/// <summary>
/// One channel of samples in time order: seconds since the first sample of the file and values in the unit they were logged in.
/// Only samples that carried a number are stored; holes and suspect stretches are <see cref="Marks"/>. Built by <see cref="TraceBuilder"/>.
/// </summary>
public sealed class Trace
{
    private readonly PackedSamples values;
    private readonly TimeAxis axis;

    internal Trace(
        string name,
        Unit unit,
        DateTime? start,
        TimeSpan? utcOffset,
        PackedSamples values,
        TimeAxis axis,
        IReadOnlyList<TraceMark> marks
    )
    {
        Name = name;
        Unit = unit;
        Start = start;
        UtcOffset = utcOffset;
        this.values = values;
        this.axis = axis;
        Marks = marks;
    }

    /// <summary>Name of the channel as the file or the person gives it.</summary>
    public string Name { get; }

    /// <summary>Unit the samples are in.</summary>
    public Unit Unit { get; }

    /// <summary>Local clock time of second 0; null where the file carries elapsed time only.</summary>
    public DateTime? Start { get; }

    /// <summary>Offset of that clock from UTC; null where the file does not say.</summary>
    public TimeSpan? UtcOffset { get; }

    /// <summary>Holes and suspect stretches, in order.</summary>
    public IReadOnlyList<TraceMark> Marks { get; }

    /// <summary>Number of samples.</summary>
    public int Count => values.Count;

    /// <summary>Usual time between samples in s: the median step; null with fewer than two samples.</summary>
    public double? IntervalSeconds => axis.UsualStepSeconds;

    /// <summary>Seconds of sample <paramref name="index"/>.</summary>
    public double SecondsAt(int index) => axis.SecondsAt(index);

    /// <summary>Value of sample <paramref name="index"/> in <see cref="Unit"/>.</summary>
    public double ValueAt(int index) => values[index];

    /// <summary>Local clock time of sample <paramref name="index"/>; null where the file carries elapsed time only.</summary>
    public DateTime? TimeAt(int index) => Start?.AddTicks((long)Math.Round(SecondsAt(index) * TimeSpan.TicksPerSecond));

    /// <summary>Copies a run of values alone.</summary>
    /// <param name="first">First index.</param>
    /// <param name="samples">Filled with values in <see cref="Unit"/>.</param>
    public void CopyTo(int first, Span<double> samples) => values.CopyTo(first, samples);

    /// <summary>Copies a run of samples: the way kernels read a trace.</summary>
    /// <param name="first">First index.</param>
    /// <param name="seconds">Filled with seconds.</param>
    /// <param name="samples">Filled with values in <see cref="Unit"/>; same length.</param>
    public void CopyTo(int first, Span<double> seconds, Span<double> samples)
    {
        axis.CopyTo(first, seconds);
        values.CopyTo(first, samples);
    }
}
