using System.Runtime.InteropServices;
using Rinsewright.Engine.Records;

namespace Rinsewright.Files.Loggers;

/// <summary>What one channel's cell of a row held.</summary>
[StructLayout(LayoutKind.Auto)]
internal struct CellValue
{
    /// <summary>Whether the row has this channel at all.</summary>
    public bool Present;

    /// <summary>The fault mark; null where the cell holds a number.</summary>
    public string? Fault;

    public double Value;
}

/// <summary>
/// Puts rows on one time axis. A row out of line with its neighbours waits for the next one, which tells whether the clock stepped or one
/// stamp was wrong. After a step back the axis goes on at the usual interval, so that time on it never runs backwards; the step is marked.
/// </summary>
internal sealed class Recording(ChannelRecord[] channels, Action<long, Statement> reject)
{
    private const double Wide = TraceBuilder.GapFactor;
    private readonly CellValue[] held = new CellValue[channels.Length];
    private long heldMs;
    private long heldLine;
    private bool holding;
    private long last = long.MinValue;
    private long shift;
    private long step;
    private long limit;

    /// <summary>Whether the file runs from the newest row to the oldest; its axis is then kept turned round until the end.</summary>
    public bool NewestFirst { get; init; }

    /// <summary>Milliseconds of the last row on the axis.</summary>
    public long LastAt { get; private set; }

    /// <summary>Stamp of second 0, in milliseconds of the clock.</summary>
    public long Origin { get; private set; }

    /// <summary>Rows on the axis.</summary>
    public long Rows { get; private set; }

    public ChannelRecord[] Channels => channels;

    /// <summary>Steps back of the clock, all of them, and the first with its line and size.</summary>
    public long StepsBack { get; private set; }

    public (long Line, long Milliseconds) FirstBack { get; private set; }

    /// <summary>Samples of each channel before the first step back.</summary>
    public int[] CountsAtFirstBack { get; } = new int[channels.Length];

    /// <summary>Stamp of the last row before the first step back, and of the last row of all, without shift.</summary>
    public long LastBeforeBack { get; private set; }

    public long LastStamp => last;

    /// <summary>Milliseconds by which the axis was shifted at the first step back.</summary>
    public long ShiftAtFirstBack { get; private set; }

    public long Equal { get; private set; }

    public long FirstEqualLine { get; private set; }

    /// <summary>Adds a row whose channels all hold everyday numbers, when it is in step; false where the row must go the long way.</summary>
    public bool TryAddInStep(long ms, ReadOnlySpan<double> values)
    {
        ms = NewestFirst ? -ms : ms;
        var ahead = ms - last;
        if ((ulong)(ahead - 1) >= (ulong)limit || holding || MayUndoShift(ahead))
        {
            return false;
        }

        if (ahead != step)
        {
            step = ahead;
            limit = (long)(ahead * Wide);
        }

        last = ms;
        Rows++;
        var at = ms - Origin + shift;
        LastAt = at;
        for (var i = 0; i < values.Length; i++)
        {
            channels[i].AddPlain(at, values[i]);
        }

        return true;
    }

    /// <summary>Time of the row that would be in step with the last two, and the step to the one behind it; a time that no row has where none can be.</summary>
    public long NextInStep(out long ahead)
    {
        ahead = NewestFirst ? -step : step;
        return holding || step == 0 || MayUndoShift(step) ? long.MinValue : (NewestFirst ? -last : last) + ahead;
    }

    // A step that long may be the clock that is set forward again.
    private bool MayUndoShift(long ahead) => shift > 0 && ahead > shift;

    /// <summary>Adds rows whose channels all hold everyday numbers, each one step behind the last.</summary>
    /// <param name="count">Rows.</param>
    /// <param name="values">Their values, channel by channel.</param>
    /// <param name="stride">From one channel's first value to the next one's.</param>
    public void AddInStep(int count, ReadOnlySpan<double> values, int stride)
    {
        var first = last + step - Origin + shift;
        last += step * count;
        Rows += count;
        LastAt = last - Origin + shift;
        for (var i = 0; i < channels.Length; i++)
        {
            channels[i].Samples.Add(first, step, values.Slice(i * stride, count));
        }
    }

    /// <summary>Adds a row.</summary>
    public void Add(long ms, ReadOnlySpan<CellValue> cells, long line)
    {
        ms = NewestFirst ? -ms : ms;
        if (holding)
        {
            Settle(ms);
        }

        if (Rows == 0)
        {
            Origin = ms;
            Commit(ms, cells, line);
            return;
        }

        var ahead = ms - last;
        if (ahead >= 0 && (step == 0 || ahead <= step * Wide))
        {
            Commit(ms, cells, line);
            return;
        }

        cells.CopyTo(held);
        (heldMs, heldLine, holding) = (ms, line, true);
    }

    /// <summary>Ends the file.</summary>
    public void Finish()
    {
        if (holding)
        {
            holding = false;
            Commit(heldMs, held, heldLine);
        }
    }

    private void Settle(long next)
    {
        holding = false;
        var near = last + Math.Max((long)(3 * step * Wide), 3000);
        var wrongAhead = heldMs > last && next > last && next < heldMs && next <= near;
        var wrongBack = heldMs < last && next > last && next <= near;
        if (wrongAhead || wrongBack)
        {
            Rows++;
            reject(heldLine, Statement.Of("files.row-stamp-out-of-line"));
            return;
        }

        Commit(heldMs, held, heldLine);
    }

    private void Commit(long ms, ReadOnlySpan<CellValue> cells, long line)
    {
        if (Rows > 0)
        {
            var ahead = ms - last;
            if (ahead < 0)
            {
                StepBack(ahead, line);
            }
            else if (ahead == 0)
            {
                MarkEqual(ms - Origin + shift, cells, line);
            }
            else
            {
                // The clock was set forward again by as much as it had gone back.
                shift = shift > 0 && ahead > shift && ahead - shift <= Math.Max(step, 1) * Wide ? 0 : shift;
                step = ahead;
                limit = (long)(step * Wide);
            }
        }

        last = ms;
        Rows++;
        var at = ms - Origin + shift;
        LastAt = at;
        for (var i = 0; i < cells.Length; i++)
        {
            if (!cells[i].Present)
            {
                continue;
            }

            if (cells[i].Fault is { } fault)
            {
                channels[i].Fault(fault, line);
            }
            else
            {
                channels[i].Add(at, cells[i].Value, line);
            }
        }
    }

    // Rows of two kinds may share a time; a channel that has two samples at one time is another matter.
    private void MarkEqual(long at, ReadOnlySpan<CellValue> cells, long line)
    {
        var any = false;
        for (var i = 0; i < cells.Length; i++)
        {
            if (cells[i].Present && channels[i].Samples.LastSeconds is { } seconds && (long)Math.Round(seconds * 1000) == at)
            {
                channels[i].Mark(TraceMarkKind.Duplicate, "", line, 1);
                any = true;
            }
        }

        if (any)
        {
            Equal++;
            FirstEqualLine = Equal == 1 ? line : FirstEqualLine;
        }
    }

    private void StepBack(long ahead, long line)
    {
        StepsBack++;
        if (StepsBack == 1)
        {
            FirstBack = (line, -ahead);
            LastBeforeBack = last;
            for (var i = 0; i < channels.Length; i++)
            {
                CountsAtFirstBack[i] = channels[i].Samples.Count;
            }
        }

        shift += -ahead + Math.Max(step, 1);
        ShiftAtFirstBack = StepsBack == 1 ? shift : ShiftAtFirstBack;
        foreach (var channel in channels)
        {
            channel.Mark(
                TraceMarkKind.ClockBack,
                ((-ahead) / 1000.0).ToString("0.###", System.Globalization.CultureInfo.InvariantCulture) + " s",
                line,
                0
            );
        }
    }
}
