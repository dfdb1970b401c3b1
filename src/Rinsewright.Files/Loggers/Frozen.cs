using System.Runtime.CompilerServices;
using Rinsewright.Engine.Records;

namespace Rinsewright.Files.Loggers;

/// <summary>
/// Finds a channel stuck at one exact value. A steady tank is told from it by the noise of its last digit: only a channel whose value
/// otherwise seldom repeats can be called frozen, and, where it has neighbours, only while one of them moves.
/// </summary>
internal static class Frozen
{
    /// <summary>Rows at one exact value, with a neighbour moving, that are called frozen. Our own choice, no source.</summary>
    public const int RowsWithNeighbour = 30;

    /// <summary>The same for a channel alone.</summary>
    public const int RowsAlone = 120;

    /// <summary>Share of repeated values outside the stretch above which the channel is too coarse to tell.</summary>
    public const double MostRepeats = 0.5;

    /// <summary>A neighbour moves if it spans at least this much in the stretch, in its own unit.</summary>
    public const double Movement = 5;

    /// <summary>Stretches of one exact value in a trace, at least <paramref name="shortest"/> samples long, and the share of repeats outside them.</summary>
    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    public static (List<(int First, int Count)> Runs, double Repeats) RunsOf(Trace trace, int shortest)
    {
        var runs = new List<(int, int)>();
        var values = new double[4096];
        var from = 0;
        var previous = double.NaN;
        long repeats = 0;
        long inRuns = 0;
        for (var at = 0; at <= trace.Count; at += values.Length)
        {
            var n = Math.Min(values.Length, trace.Count - at);
            trace.CopyTo(at, values.AsSpan(0, n));
            for (var i = 0; i < n; i++)
            {
                if (values[i] == previous)
                {
                    repeats++;
                    continue;
                }

                Close(at + i);
                previous = values[i];
            }
        }

        Close(trace.Count);
        var outside = trace.Count - inRuns;
        return (runs, outside <= 10 ? 0 : Math.Max(0, repeats - inRuns) / (double)outside);

        void Close(int end)
        {
            if (end - from >= shortest && runs.Count < 1000)
            {
                runs.Add((from, end - from));
                inRuns += end - from;
            }

            from = end;
        }
    }

    /// <summary>The frozen stretches of one channel among its neighbours.</summary>
    public static List<(int First, int Count)> Find(Trace trace, IReadOnlyList<Trace> neighbours)
    {
        var alone = neighbours.Count == 0;
        var (runs, repeats) = RunsOf(trace, alone ? RowsAlone : RowsWithNeighbour);
        if (runs.Count == 0 || repeats > MostRepeats || (alone && runs.Sum(r => r.Count) == trace.Count))
        {
            return [];
        }

        return alone
            ? runs
            : runs.FindAll(r => neighbours.Any(n => Moves(n, trace.SecondsAt(r.First), trace.SecondsAt(r.First + r.Count - 1))));
    }

    private static bool Moves(Trace neighbour, double fromSeconds, double toSeconds)
    {
        var first = FirstAt(neighbour, fromSeconds);
        double low = double.PositiveInfinity,
            high = double.NegativeInfinity;
        for (var i = first; i < neighbour.Count && neighbour.SecondsAt(i) <= toSeconds; i++)
        {
            low = Math.Min(low, neighbour.ValueAt(i));
            high = Math.Max(high, neighbour.ValueAt(i));
            if (high - low >= Movement)
            {
                return true;
            }
        }

        return false;
    }

    private static int FirstAt(Trace trace, double seconds)
    {
        int low = 0,
            high = trace.Count;
        while (low < high)
        {
            var middle = (low + high) >> 1;
            (low, high) = trace.SecondsAt(middle) < seconds ? (middle + 1, high) : (low, middle);
        }

        return low;
    }
}
