using System.Text;
using Rinsewright.Engine.Records;

namespace Rinsewright.Files.Loggers;

/// <summary>The pass that reads the samples: regular rows straight from the bytes, every other row the long way.</summary>
internal sealed class TableReader
{
    private const int MostKept = 200;
    private readonly Layout layout;
    private readonly Clock clock;
    private readonly IReadOnlyList<ChannelPlan> plans;
    private readonly RowReader rows;
    private readonly Pace pace;
    private readonly Recording recording;
    private readonly List<RejectedRow> rejected = [];
    private char[] text = [];

    public TableReader(
        Layout layout,
        Clock clock,
        IReadOnlyList<ChannelPlan> plans,
        ChannelChoice choice,
        IReadOnlyList<ColumnSample> sample,
        FaultMarks marks,
        Pace pace,
        bool newestFirst
    )
    {
        (this.layout, this.clock, this.plans, this.pace) = (layout, clock, plans, pace);
        Channels = [.. plans.Select(p => new ChannelRecord(p.Column))];
        recording = new Recording(Channels, Reject) { NewestFirst = newestFirst };
        rows = new RowReader(layout, clock, plans, choice, sample, marks, recording, Reject);
    }

    public ChannelRecord[] Channels { get; }

    public Recording Recording => recording;

    public long Rows { get; private set; }

    public long RejectedCount { get; private set; }

    public IReadOnlyList<RejectedRow> Rejected => [.. rejected.OrderBy(r => r.Line)];

    public IReadOnlyList<LoggerEvent> Events => rows.Events;

    /// <summary>Reads the whole text.</summary>
    public void Read(TextSource source, bool rowByRow)
    {
        if (
            !rowByRow
            && layout.Shape == RowShape.Table
            && layout.Separator != ' '
            && clock.Kind is ClockKind.Stamp or ClockKind.Epoch or ClockKind.Elapsed
            && clock.Second < 0
        )
        {
            ReadFast(source);
        }
        else
        {
            ReadLong(source);
        }

        recording.Finish();
        pace.Done(Rows);
    }

    private void ReadLong(TextSource source)
    {
        using var reader = source.Open();
        var lines = new LineReader(reader);
        while (lines.TryRead(out var line))
        {
            if (lines.Line > layout.FirstData)
            {
                Take(line, lines.Line, !lines.Terminated);
            }
        }
    }

    private void ReadFast(TextSource source)
    {
        var plain = new PlainRows(layout, clock, plans, rows, recording, source.ByteEncoding);
        var blocks = new LineBlocks(source.OpenBytes());
        long line = 0;
        while (blocks.TryRead(line, out var block))
        {
            while (!block.IsEmpty)
            {
                if (line >= layout.FirstData)
                {
                    var read = plain.Read(block, out var count);
                    block = block[read..];
                    line += count;
                    Rows += count;
                }

                if (!block.IsEmpty)
                {
                    line++;
                    var odd = LineBlocks.TakeLine(ref block, out var terminated);
                    if (line > layout.FirstData)
                    {
                        Take(Text(odd, source.ByteEncoding), line, !terminated);
                    }
                }
            }

            Tick();
        }
    }

    private ReadOnlySpan<char> Text(ReadOnlySpan<byte> line, Encoding encoding)
    {
        var most = encoding.GetMaxCharCount(line.Length);
        if (text.Length < most)
        {
            text = new char[most];
        }

        return text.AsSpan(0, encoding.GetChars(line, text));
    }

    private void Take(ReadOnlySpan<char> line, long number, bool cut)
    {
        if (line.Length > LineReader.LongestLine)
        {
            throw LineReader.TooLong(number);
        }

        if (line.Trim(" \t\f\r\0\u001a").IsEmpty)
        {
            return;
        }

        if (++Rows % Pace.Stride == 0)
        {
            Tick();
        }

        rows.Take(line, number, cut);
    }

    private void Tick()
    {
        pace.Tick(Rows);
        if (Rows > int.MaxValue - LineReader.LongestLine)
        {
            throw new UnreadableFileException(Statement.Of("files.too-many-rows"));
        }
    }

    private void Reject(long line, Statement reason)
    {
        RejectedCount++;
        if (rejected.Count < MostKept)
        {
            rejected.Add(new RejectedRow(line, reason));
        }
    }
}
