namespace Rinsewright.Engine.Heat;

/// <summary>
/// Propagators that were needed before. A healthy run needs five; where a coefficient drifts from step to step, the one unused longest makes room. Allocates nothing
/// once made.
/// </summary>
internal sealed class SlabPropagators
{
    private readonly SlabPropagator[] kept;
    private readonly long[] used;
    private int count;
    private long calls;

    /// <summary>Room for a number of propagators of at most so many cells.</summary>
    public SlabPropagators(int capacity, int mostCells)
    {
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(capacity);
        kept = new SlabPropagator[capacity];
        used = new long[capacity];
        for (var i = 0; i < capacity; i++)
        {
            kept[i] = new SlabPropagator(mostCells);
        }
    }

    /// <summary>Propagator of a slab over a step in s. Use it before the next call: it may be set anew then.</summary>
    public SlabPropagator For(in Slab slab, double seconds)
    {
        calls++;
        for (var i = 0; i < count; i++)
        {
            if (kept[i].Seconds == seconds && kept[i].Slab == slab)
            {
                used[i] = calls;
                return kept[i];
            }
        }

        var place = count < kept.Length ? count++ : Oldest();
        used[place] = calls;
        kept[place].Set(slab, seconds);
        return kept[place];
    }

    private int Oldest()
    {
        var oldest = 0;
        for (var i = 1; i < count; i++)
        {
            if (used[i] < used[oldest])
            {
                oldest = i;
            }
        }

        return oldest;
    }
}
