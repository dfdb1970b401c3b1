using System.Runtime.CompilerServices;
using System.Text;

namespace Rinsewright.Files.Loggers;

/// <summary>
/// Reads regular rows straight from the bytes: the usual number of fields, a stamp of the usual shape, an everyday number in every channel,
/// in step with the row before, nothing to tell in the columns beside. Any other row is left to <see cref="RowReader"/>, which reads a
/// regular one to the same digit. Allocates nothing.
/// </summary>
internal sealed class PlainRows
{
    private const int LongestCell = 64;
    private const int Most = 2048;
    private readonly FastStamp stamps;
    private readonly Clock clock;
    private readonly Recording recording;
    private readonly FaultMarks? given;
    private readonly Encoding encoding;
    private readonly byte separator;
    private readonly Column[] columns;
    private readonly double[] values;
    private readonly double[] row;
    private readonly double[] powers = NumberText.PowersOfTen;

    public PlainRows(Layout layout, Clock clock, IReadOnlyList<ChannelPlan> plans, RowReader rows, Recording recording, Encoding encoding)
    {
        (this.clock, this.recording, this.encoding) = (clock, recording, encoding);
        stamps = new FastStamp(clock);
        separator = (byte)layout.Separator;
        given = rows.GivenMarks;
        row = new double[plans.Count];
        values = new double[plans.Count * Most];
        columns = new Column[layout.Width];
        for (var i = 0; i < columns.Length; i++)
        {
            columns[i] = rows.IsQuiet(i) is { } quiet ? new Column(Duty.Look) { Beside = new SideColumn(quiet) } : new Column(Duty.Skip);
        }

        for (var i = 0; i < plans.Count; i++)
        {
            if (plans[i].Column < columns.Length)
            {
                columns[plans[i].Column] = new Column(Duty.Number)
                {
                    Channel = i,
                    Mark = plans[i].Mark,
                    // A comma that separates fields is a decimal mark inside quotes alone.
                    PlainMark = plans[i].Mark == layout.Separator ? (byte)0 : (byte)plans[i].Mark,
                };
            }
        }

        if (clock.Column < columns.Length)
        {
            columns[clock.Column] = new Column(clock.Kind == ClockKind.Stamp ? Duty.Stamp : Duty.Count);
        }

        if (clock.Column >= columns.Length || plans.Any(p => p.Column >= columns.Length))
        {
            // Rows of the usual length lack a column that is wanted: none of them is regular.
            columns = [];
        }
    }

    private enum Duty
    {
        Skip,
        Look,
        Stamp,
        Count,
        Number,
    }

    /// <summary>Reads the rows at the start of a block.</summary>
    /// <param name="block">Lines with their ends.</param>
    /// <param name="rows">Rows read.</param>
    /// <returns>Bytes read: all of them, or up to the first row that is not regular.</returns>
    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    public int Read(ReadOnlySpan<byte> block, out int rows)
    {
        rows = 0;
        var at = 0;
        if (columns.Length == 0)
        {
            return 0;
        }

        // Rows one step apart wait together.
        var waiting = 0;
        var due = recording.NextInStep(out var step);
        while (at < block.Length)
        {
            var next = ReadRow(block, at, waiting, out var ms);
            if (next < 0)
            {
                break;
            }

            if (ms == due)
            {
                due += step;
                waiting++;
                if (waiting == Most)
                {
                    Add(waiting);
                    waiting = 0;
                }
            }
            else
            {
                Add(waiting);
                var added = recording.TryAddInStep(ms, Row(waiting));
                waiting = 0;
                due = recording.NextInStep(out step);
                if (!added)
                {
                    break;
                }
            }

            at = next;
            rows++;
        }

        Add(waiting);
        return at;
    }

    private void Add(int waiting)
    {
        if (waiting > 0)
        {
            recording.AddInStep(waiting, values, Most);
        }
    }

    private ReadOnlySpan<double> Row(int waiting)
    {
        for (var i = 0; i < row.Length; i++)
        {
            row[i] = values[(i * Most) + waiting];
        }

        return row;
    }

    // Where the next row starts; negative where this one is not regular.
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private int ReadRow(ReadOnlySpan<byte> block, int at, int waiting, out long ms)
    {
        ms = 0;
        var own = columns;
        for (var c = 0; c < own.Length; c++)
        {
            ref readonly var column = ref own[c];
            var rest = block[at..];
            int length;
            if (column.Duty == Duty.Number)
            {
                length = TakeNumber(rest, column, waiting);
            }
            else if (column.Duty == Duty.Stamp && stamps.TryKnown(rest, separator, out ms))
            {
                length = stamps.Length;
            }
            else
            {
                length = TakeOther(rest, column, ref ms);
            }

            at += length;
            if (length < 0 || (uint)at >= (uint)block.Length || (c + 1 < own.Length && block[at++] != separator))
            {
                return -1;
            }
        }

        var end = block[at++];
        if (end == '\r' && at < block.Length && block[at] == '\n')
        {
            return at + 1;
        }

        return end is (byte)'\n' or (byte)'\r' ? at : -1;
    }

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private int TakeNumber(ReadOnlySpan<byte> rest, in Column column, int waiting)
    {
        var length = NumberText.TakePlain(rest, column.PlainMark, out var digits, out var decimals);
        double value;
        if (length == 0 || (uint)length >= (uint)rest.Length || !IsEnd(rest[length]))
        {
            length = TakeOtherNumber(rest, column.Mark, out value);
        }
        else
        {
            // Both operands are exact, so the quotient is the correctly rounded value.
            value = digits / powers[decimals];
        }

        if (value is not (>= ChannelRecord.PlainLow and <= ChannelRecord.PlausibleHigh) || (given is not null && given.IsValue(value)))
        {
            return -1;
        }

        values[(column.Channel * Most) + waiting] = value;
        return length;
    }

    [MethodImpl(MethodImplOptions.NoInlining)]
    private int TakeOther(ReadOnlySpan<byte> rest, in Column column, ref long ms) =>
        column.Duty switch
        {
            Duty.Stamp => TakeStamp(rest, out ms),
            Duty.Count => TakeCount(rest, out ms),
            Duty.Look => TakeBeside(rest, column.Beside!),
            _ => TakeAny(rest),
        };

    // Apart from the method above, which would clear its room for characters on every row.
    [MethodImpl(MethodImplOptions.NoInlining)]
    private int TakeOtherNumber(ReadOnlySpan<byte> rest, char mark, out double value)
    {
        value = 0;
        var length = CellLength(rest);
        Span<char> text = stackalloc char[LongestCell];
        return TryText(rest, length, ref text) && NumberText.TryParse(text, mark, out value) ? length : -1;
    }

    private int TakeStamp(ReadOnlySpan<byte> rest, out long ms)
    {
        ms = 0;
        var length = CellLength(rest);
        Span<char> text = stackalloc char[LongestCell];
        return TryText(rest, length, ref text) && stamps.TryLong(text, rest[..length], out ms) ? length : -1;
    }

    private int TakeCount(ReadOnlySpan<byte> rest, out long ms)
    {
        ms = 0;
        var length = CellLength(rest);
        Span<char> text = stackalloc char[LongestCell];
        return TryText(rest, length, ref text) && clock.TryNumber(text, out ms) ? length : -1;
    }

    private int TakeBeside(ReadOnlySpan<byte> rest, SideColumn beside)
    {
        var length = TakeAny(rest);
        return length >= 0 && beside.IsQuiet(rest[..length], encoding) ? length : -1;
    }

    private int TakeAny(ReadOnlySpan<byte> rest)
    {
        var length = CellLength(rest);
        return length < 0 || Unquoted(rest[..length], out _) ? length : -1;
    }

    private bool IsEnd(byte b) => b == separator || b is (byte)'\n' or (byte)'\r';

    private int CellLength(ReadOnlySpan<byte> rest) => rest.IndexOfAny(separator, (byte)'\n', (byte)'\r');

    private bool TryText(ReadOnlySpan<byte> rest, int length, ref Span<char> text)
    {
        if ((uint)length > LongestCell || !Unquoted(rest[..length], out var bare))
        {
            return false;
        }

        text = text[..encoding.GetChars(bare, text)];
        return true;
    }

    // Quotes around the whole cell alone: any others may hold a separator.
    private static bool Unquoted(ReadOnlySpan<byte> cell, out ReadOnlySpan<byte> bare)
    {
        bare = cell.Length >= 2 && cell[0] == '"' && cell[^1] == '"' ? cell[1..^1] : cell;
        return !bare.Contains((byte)'"');
    }

    private readonly struct Column(Duty duty)
    {
        public Duty Duty { get; } = duty;

        public int Channel { get; init; }

        public char Mark { get; init; }

        public byte PlainMark { get; init; }

        public SideColumn? Beside { get; init; }
    }
}

/// <summary>A column beside the channels whose cells may have something to tell; most rows repeat the cell before.</summary>
internal sealed class SideColumn(Func<string, bool> isQuiet)
{
    private byte[] last = [];

    /// <summary>Whether a cell tells nothing that the long way would have to note.</summary>
    public bool IsQuiet(ReadOnlySpan<byte> cell, Encoding encoding)
    {
        if (cell.SequenceEqual(last))
        {
            return true;
        }

        if (!isQuiet(encoding.GetString(cell).Trim().Trim('"').Trim()))
        {
            return false;
        }

        last = cell.ToArray();
        return true;
    }
}
