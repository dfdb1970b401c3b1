using System.Diagnostics;

namespace Rinsewright.Files.Loggers;

/// <summary>Tells how far the reading is, about four times a second, and stops it when asked.</summary>
internal sealed class Pace(Stream stream, IProgress<ReadingProgress>? progress, CancellationToken cancellation)
{
    /// <summary>Rows between two looks at the clock: far less than a tenth of a second of work.</summary>
    public const int Stride = 2048;

    private readonly long total = stream.Length;
    private long last = Stopwatch.GetTimestamp();

    /// <summary>Called every <see cref="Stride"/> rows.</summary>
    /// <exception cref="OperationCanceledException">Asked to stop.</exception>
    public void Tick(long rows)
    {
        cancellation.ThrowIfCancellationRequested();
        if (progress is not null && Stopwatch.GetElapsedTime(last).TotalMilliseconds >= 250)
        {
            last = Stopwatch.GetTimestamp();
            progress.Report(new ReadingProgress(stream.Position, total, rows));
        }
    }

    /// <summary>The last word.</summary>
    public void Done(long rows) => progress?.Report(new ReadingProgress(total, total, rows));
}
