using System.Runtime.InteropServices.JavaScript;
using System.Runtime.Versioning;

namespace Rinsewright.Client.Sanitization;

/// <summary>The file given to the worker as a seekable stream: read where it lies, a stretch at a time.</summary>
[SupportedOSPlatform("browser")]
internal sealed partial class WorkerFile(long length) : Stream
{
    private const int Stretch = 1 << 20;
    private readonly byte[] buffer = new byte[(int)Math.Min(Stretch, Math.Max(1, length))];
    private long bufferStart;
    private int bufferCount;

    public override bool CanRead => true;

    public override bool CanSeek => true;

    public override bool CanWrite => false;

    public override long Length => length;

    public override long Position { get; set; }

    public override int Read(byte[] buffer, int offset, int count) => Read(buffer.AsSpan(offset, count));

    public override int Read(Span<byte> into)
    {
        if (Position >= length || into.Length == 0)
        {
            return 0;
        }

        if (Position < bufferStart || Position >= bufferStart + bufferCount)
        {
            bufferStart = Position;
            bufferCount = Read(
                (double)Position,
                (int)Math.Min(buffer.Length, length - Position),
                buffer.AsSpan(0, (int)Math.Min(buffer.Length, length - Position))
            );
        }

        var from = (int)(Position - bufferStart);
        var n = Math.Min(into.Length, bufferCount - from);
        buffer.AsSpan(from, n).CopyTo(into);
        Position += n;
        return n;
    }

    public override Task<int> ReadAsync(byte[] buffer, int offset, int count, CancellationToken cancellationToken) =>
        Task.FromResult(Read(buffer, offset, count));

    public override ValueTask<int> ReadAsync(Memory<byte> buffer, CancellationToken cancellationToken = default) => new(Read(buffer.Span));

    public override long Seek(long offset, SeekOrigin origin) =>
        Position = origin switch
        {
            SeekOrigin.Begin => offset,
            SeekOrigin.Current => Position + offset,
            _ => length + offset,
        };

    public override void Flush() { }

    public override void SetLength(long value) => throw new NotSupportedException();

    public override void Write(byte[] buffer, int offset, int count) => throw new NotSupportedException();

    [JSImport("progress", "compute-worker")]
    internal static partial void Progress(double bytes, double total, double rows);

    [JSImport("read", "compute-worker")]
    private static partial int Read(double offset, int count, [JSMarshalAs<JSType.MemoryView>] Span<byte> into);
}
