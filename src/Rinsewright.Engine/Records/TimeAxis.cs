using System.Runtime.CompilerServices;
using System.Runtime.InteropServices;
using System.Runtime.Intrinsics;

namespace Rinsewright.Engine.Records;

/// <summary>Sample times in whole milliseconds, kept as runs of equal steps: a regular logger costs nothing a sample.</summary>
internal sealed class TimeAxis
{
    private readonly List<Run> runs = [];
    private readonly Dictionary<long, long> stepCounts = [];
    private long countedInRun;
    private long runStep;

    public int Count { get; private set; }

    public long LastMilliseconds { get; private set; }

    public double? UsualStepSeconds => UsualStep() is { } ms ? ms / 1000.0 : null;

    public void Add(long milliseconds)
    {
        if (Count > 0 && milliseconds < LastMilliseconds)
        {
            throw new ArgumentOutOfRangeException(
                nameof(milliseconds),
                milliseconds,
                $"A sample's time is not before the last one's ({LastMilliseconds} ms)."
            );
        }

        var step = milliseconds - LastMilliseconds;
        if (step == runStep && countedInRun > 0)
        {
            // The common case of a regular logger: nothing but counting.
            countedInRun++;
            LastMilliseconds = milliseconds;
            Count++;
            return;
        }

        if (Count == 0)
        {
            runs.Add(new Run(0, milliseconds, 0));
        }
        else if (Count == runs[^1].First + 1)
        {
            // Second sample of a run sets its step.
            runs[^1] = runs[^1] with
            {
                Step = step,
            };
            countedInRun++;
            runStep = step;
        }
        else if (runs[^1].Step == step)
        {
            countedInRun++;
        }
        else
        {
            CloseRun();
            // The new run starts at the last sample, so that its step is known at once.
            runs.Add(new Run(Count - 1, LastMilliseconds, step));
            countedInRun = 1;
            runStep = step;
        }

        LastMilliseconds = milliseconds;
        Count++;
    }

    /// <summary>Adds times at equal steps.</summary>
    public void Add(long milliseconds, long step, int count)
    {
        for (var i = 0; i < count; i++)
        {
            var left = count - i;
            if (countedInRun > 0 && step == runStep && milliseconds - LastMilliseconds == step)
            {
                countedInRun += left;
                Count += left;
                LastMilliseconds += step * left;
                return;
            }

            Add(milliseconds);
            milliseconds += step;
        }
    }

    public double SecondsAt(int index)
    {
        var run = runs[RunOf(index)];
        return (run.Start + ((index - run.First) * run.Step)) / 1000.0;
    }

    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    public void CopyTo(int first, Span<double> seconds)
    {
        if (seconds.IsEmpty)
        {
            return;
        }

        var r = RunOf(first);
        for (var i = 0; i < seconds.Length; )
        {
            var run = runs[r];
            var end = r + 1 < runs.Count ? runs[r + 1].First : Count;
            var n = Math.Min(seconds.Length - i, end - first - i);
            Fill(seconds.Slice(i, n), run.Start + ((first + i - run.First) * run.Step), run.Step);
            i += n;
            r++;
        }
    }

    // Whole milliseconds are exact in a double, so that four at a time give the same seconds as one.
    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    private static void Fill(Span<double> seconds, long start, long step)
    {
        var i = 0;
        if (Vector256.IsHardwareAccelerated && seconds.Length >= 2 * Vector256<double>.Count)
        {
            var next = Vector256.Create((double)start, start + step, start + (2 * step), start + (3 * step));
            var ahead = Vector256.Create((double)(4 * step));
            var thousand = Vector256.Create(1000.0);
            for (; i <= seconds.Length - Vector256<double>.Count; i += Vector256<double>.Count)
            {
                (next / thousand).CopyTo(seconds[i..]);
                next += ahead;
            }
        }

        for (; i < seconds.Length; i++)
        {
            seconds[i] = (start + (i * step)) / 1000.0;
        }
    }

    public IEnumerable<TraceMark> Gaps(double factor)
    {
        if (UsualStep() is not { } usual)
        {
            yield break;
        }

        for (var r = 0; r < runs.Count; r++)
        {
            var end = r + 1 < runs.Count ? runs[r + 1].First : Count - 1;
            if (runs[r].Step > usual * factor)
            {
                for (var i = runs[r].First + 1; i <= end; i++)
                {
                    yield return new TraceMark(TraceMarkKind.Gap, i, 0, 0, null, $"{runs[r].Step / 1000.0:0.###} s");
                }
            }
        }
    }

    /// <summary>Where one steady step of at least five samples gives way to another that differs by more than half.</summary>
    public IEnumerable<TraceMark> IntervalChanges()
    {
        long steady = 0;
        for (var r = 0; r < runs.Count; r++)
        {
            var end = r + 1 < runs.Count ? runs[r + 1].First : Count - 1;
            if (end - runs[r].First < 5 || runs[r].Step == 0)
            {
                continue;
            }

            var step = runs[r].Step;
            if (steady > 0 && Math.Max(step, steady) > 1.5 * Math.Min(step, steady))
            {
                yield return new TraceMark(
                    TraceMarkKind.IntervalChange,
                    runs[r].First,
                    0,
                    0,
                    null,
                    $"{steady / 1000.0:0.###} s, {step / 1000.0:0.###} s"
                );
            }

            steady = step;
        }
    }

    private long? UsualStep()
    {
        // The median: an irregular logger has no most frequent step worth the name.
        CloseRun();
        var half = (Count - 1) / 2;
        foreach (var (step, times) in stepCounts.OrderBy(p => p.Key))
        {
            half -= (int)times;
            if (half < 0)
            {
                return step;
            }
        }

        return null;
    }

    private void CloseRun()
    {
        if (countedInRun > 0)
        {
            CollectionsMarshal.GetValueRefOrAddDefault(stepCounts, runs[^1].Step, out _) += countedInRun;
            countedInRun = 0;
        }
    }

    private int RunOf(int index)
    {
        if ((uint)index >= (uint)Count)
        {
            throw new ArgumentOutOfRangeException(nameof(index), index, $"0 to {Count - 1}");
        }

        int low = 0,
            high = runs.Count - 1;
        while (low < high)
        {
            var middle = (low + high + 1) >> 1;
            (low, high) = runs[middle].First <= index ? (middle, high) : (low, middle - 1);
        }

        return low;
    }

    [StructLayout(LayoutKind.Auto)]
    private readonly record struct Run(int First, long Start, long Step);
}
