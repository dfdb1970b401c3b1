namespace Rinsewright.Engine.Records;

/// <summary>A list that only grows, in blocks below the large-object size: no copying and no doubling while it grows.</summary>
internal sealed class Chunked<T>
    where T : struct
{
    private const int Shift = 12;
    private const int Size = 1 << Shift;
    private readonly List<T[]> blocks = [];
    private T[] tail = [];
    private int tailCount = Size;

    public int Count { get; private set; }

    public T this[int index] =>
        (uint)index < (uint)Count
            ? blocks[index >> Shift][index & (Size - 1)]
            : throw new ArgumentOutOfRangeException(nameof(index), index, $"0 to {Count - 1}");

    public void Add(T value)
    {
        if (tailCount == Size)
        {
            tail = new T[Size];
            blocks.Add(tail);
            tailCount = 0;
        }

        tail[tailCount++] = value;
        Count++;
    }

    public void CopyTo(int first, Span<T> target)
    {
        if (first < 0 || first + target.Length > Count)
        {
            throw new ArgumentOutOfRangeException(nameof(first), first, $"0 to {Count - target.Length}");
        }

        while (!target.IsEmpty)
        {
            var from = first & (Size - 1);
            var n = Math.Min(Size - from, target.Length);
            blocks[first >> Shift].AsSpan(from, n).CopyTo(target);
            target = target[n..];
            first += n;
        }
    }
}
