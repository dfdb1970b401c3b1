using System.Runtime.CompilerServices;

namespace Rinsewright.Engine.Records;

/// <summary>
/// Reads a trace sample by sample at the speed of an array: two neighbouring blocks are kept unpacked, so that two places a few seconds apart
/// cost nothing wherever they lie. For one reader at a time.
/// </summary>
internal sealed class TraceView(Trace trace)
{
    private const int Shift = 11;
    private const int Size = 1 << Shift;

    // Block b lies in half b mod 2 of both arrays.
    private readonly double[] seconds = new double[2 * Size];
    private readonly double[] values = new double[2 * Size];
    private int even = -1;
    private int odd = -1;

    public int Count => trace.Count;

    public double SecondsAt(int index) => seconds[PlaceOf(index)];

    public double ValueAt(int index) => values[PlaceOf(index)];

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private int PlaceOf(int index)
    {
        var block = index >> Shift;
        if (((block & 1) == 0 ? even : odd) != block)
        {
            Unpack(block);
        }

        return index & ((2 * Size) - 1);
    }

    [MethodImpl(MethodImplOptions.NoInlining)]
    private void Unpack(int block)
    {
        var first = block << Shift;
        if ((uint)first >= (uint)trace.Count)
        {
            throw new ArgumentOutOfRangeException(nameof(block), block, "Inside the trace.");
        }

        var at = first & ((2 * Size) - 1);
        var n = Math.Min(Size, trace.Count - first);
        trace.CopyTo(first, seconds.AsSpan(at, n), values.AsSpan(at, n));
        (even, odd) = (block & 1) == 0 ? (block, odd) : (even, block);
    }
}
