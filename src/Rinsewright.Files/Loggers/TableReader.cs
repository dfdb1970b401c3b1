using nietras.SeparatedValues;
using Rinsewright.Engine.Records;

namespace Rinsewright.Files.Loggers;

/// <summary>The pass that reads the samples: regular rows at full speed through Sep, every other row the long way.</summary>
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
    public void Read(TextSource source)
    {
        var tail = source.LastLine();
        if (
            layout.Shape == RowShape.Table
            && layout.Separator != ' '
            && clock.Kind is ClockKind.Stamp or ClockKind.Epoch or ClockKind.Elapsed
            && clock.Second < 0
        )
        {
            ReadFast(source, tail);
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
        using var text = source.Open();
        var lines = new LineReader(text);
        while (lines.TryRead(out var line))
        {
            if (lines.Line > layout.FirstData)
            {
                Take(line, lines.Line, !lines.Terminated);
            }
        }
    }

    private void ReadFast(TextSource source, string tail)
    {
        using var text = source.Open();
        using var reader = Sep.New(layout.Separator)
            .Reader(o =>
                o with
                {
                    HasHeader = false,
                    DisableColCountCheck = true,
                    DisableQuotesParsing = true,
                    Unescape = false,
                    InitialBufferLength = 1 << 16,
                }
            )
            .From(text);
        var fast = new FastRows(layout, clock, plans, recording, tail);
        try
        {
            while (fast.ReadStretch(reader, Pace.Stride))
            {
                Rows += fast.TakeRead();
                pace.Tick(Rows);
                if (fast.OddLine > 0)
                {
                    var odd = reader.Current.Span;
                    Take(odd, fast.OddLine, tail.Length > 0 && odd.SequenceEqual(tail));
                }
            }

            Rows += fast.TakeRead();
        }
        catch (NotSupportedException)
        {
            // A row longer than the tokenizer's buffer.
            throw LineReader.TooLong(fast.Line + 1);
        }
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
            pace.Tick(Rows);
            if (Rows > int.MaxValue - Pace.Stride)
            {
                throw new UnreadableFileException(Statement.Of("files.too-many-rows"));
            }
        }

        rows.Take(line, number, cut);
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
