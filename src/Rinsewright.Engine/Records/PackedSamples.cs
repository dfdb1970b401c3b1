using System.Runtime.CompilerServices;
using System.Runtime.Intrinsics;
using System.Runtime.Intrinsics.X86;

namespace Rinsewright.Engine.Records;

/// <summary>
/// Samples of a channel in blocks. A full block whose values are all whole multiples of 1, 0.1, 0.01 or 0.001 (what loggers write) is
/// kept as whole numbers of two or four bytes, but only where dividing gives back exactly the values that came in; any other block stays as it is.
/// </summary>
internal sealed class PackedSamples
{
    private const int Shift = 12;
    private const int Size = 1 << Shift;
    private const int MostRoom = 64 * Size;
    private static readonly double[] Scales = [10, 100, 1, 1000];
    private readonly List<Block> blocks = [];
    private readonly int[] whole = new int[Size];
    private double[] tail = new double[256];
    private short[] room = [];
    private int roomTaken;
    private int tailCount;
    private int usualScale;

    public int Count { get; private set; }

    public double this[int index]
    {
        get
        {
            if ((uint)index >= (uint)Count)
            {
                throw new ArgumentOutOfRangeException(nameof(index), index, $"0 to {Count - 1}");
            }

            var block = index >> Shift;
            return block == blocks.Count ? tail[index & (Size - 1)] : blocks[block].At(index & (Size - 1));
        }
    }

    public void Add(double value)
    {
        if (tailCount == tail.Length)
        {
            MakeRoom();
        }

        tail[tailCount++] = value;
        Count++;
    }

    public void Add(ReadOnlySpan<double> values)
    {
        Count += values.Length;
        while (!values.IsEmpty)
        {
            if (tailCount == tail.Length)
            {
                MakeRoom();
            }

            var n = Math.Min(values.Length, tail.Length - tailCount);
            values[..n].CopyTo(tail.AsSpan(tailCount));
            tailCount += n;
            values = values[n..];
        }
    }

    public void CopyTo(int first, Span<double> target)
    {
        if (first < 0 || first + target.Length > Count)
        {
            throw new ArgumentOutOfRangeException(nameof(first), first, $"0 to {Count - target.Length}");
        }

        while (!target.IsEmpty)
        {
            var from = first & (Size - 1);
            var n = Math.Min(Size - from, target.Length);
            var block = first >> Shift;
            if (block == blocks.Count)
            {
                tail.AsSpan(from, n).CopyTo(target);
            }
            else
            {
                blocks[block].CopyTo(from, target[..n]);
            }

            target = target[n..];
            first += n;
        }
    }

    private void MakeRoom()
    {
        if (tail.Length < Size)
        {
            Array.Resize(ref tail, tail.Length * 2);
            return;
        }

        blocks.Add(Pack());
        tailCount = 0;
    }

    private Block Pack()
    {
        for (var i = 0; i < Scales.Length; i++)
        {
            var s = (usualScale + i) % Scales.Length;
            if (TryWhole(Scales[s], out var least, out var most))
            {
                usualScale = s;
                return least >= short.MinValue && most <= short.MaxValue
                    ? new Block(Shortened(), null, null, Scales[s])
                    : new Block(default, (int[])whole.Clone(), null, Scales[s]);
            }
        }

        return new Block(default, null, (double[])tail.Clone(), 1);
    }

    // Room for many blocks at once, not cleared: clearing it would cost as much as packing.
    private ReadOnlyMemory<short> Shortened()
    {
        if (roomTaken == room.Length)
        {
            room = GC.AllocateUninitializedArray<short>(Math.Clamp(blocks.Count * Size, Size, MostRoom));
            roomTaken = 0;
        }

        var place = room.AsMemory(roomTaken, Size);
        roomTaken += Size;
        var shorts = place.Span;
        for (var i = 0; i < shorts.Length; i++)
        {
            shorts[i] = (short)whole[i];
        }

        return place;
    }

    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    private bool TryWhole(double scale, out int least, out int most)
    {
        (least, most) = (int.MaxValue, int.MinValue);
        for (var i = 0; i < Size; i++)
        {
            var value = tail[i];
            var nearest = (value * scale) + (value < 0 ? -0.5 : 0.5);
            if (nearest is not (> int.MinValue and < int.MaxValue))
            {
                return false;
            }

            var n = (int)nearest;
            if (n / scale != value)
            {
                return false;
            }

            whole[i] = n;
            least = Math.Min(least, n);
            most = Math.Max(most, n);
        }

        return true;
    }

    // One of the three holds the block.
    private sealed class Block(ReadOnlyMemory<short> shorts, int[]? ints, double[]? doubles, double scale)
    {
        public double At(int index) =>
            !shorts.IsEmpty ? shorts.Span[index] / scale
            : ints is not null ? ints[index] / scale
            : doubles![index];

        [MethodImpl(MethodImplOptions.AggressiveOptimization)]
        public void CopyTo(int from, Span<double> target)
        {
            if (!shorts.IsEmpty)
            {
                var source = shorts.Span.Slice(from, target.Length);
                var i = 0;
                if (Avx.IsSupported)
                {
                    // Four at a time: dividing is what unpacking costs.
                    var by = Vector256.Create(scale);
                    for (; i <= source.Length - Vector128<short>.Count; i += Vector128<short>.Count)
                    {
                        var (low, high) = Vector128.Widen(Vector128.Create(source[i..]));
                        Avx.Divide(Avx.ConvertToVector256Double(low), by).CopyTo(target[i..]);
                        Avx.Divide(Avx.ConvertToVector256Double(high), by).CopyTo(target[(i + Vector256<double>.Count)..]);
                    }
                }

                for (; i < source.Length; i++)
                {
                    target[i] = source[i] / scale;
                }
            }
            else if (ints is not null)
            {
                var source = ints.AsSpan(from, target.Length);
                for (var i = 0; i < source.Length; i++)
                {
                    target[i] = source[i] / scale;
                }
            }
            else
            {
                doubles.AsSpan(from, target.Length).CopyTo(target);
            }
        }
    }
}
