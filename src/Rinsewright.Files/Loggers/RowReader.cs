using Rinsewright.Engine.Records;

namespace Rinsewright.Files.Loggers;

/// <summary>Reads any one row: samples, fault marks, an event, or the reason why it is refused.</summary>
internal sealed class RowReader
{
    private const int MostEvents = 200;
    private readonly Layout layout;
    private readonly Clock clock;
    private readonly IReadOnlyList<ChannelPlan> plans;
    private readonly ChannelChoice choice;
    private readonly FaultMarks marks;
    private readonly Recording recording;
    private readonly Action<long, Statement> reject;
    private readonly List<string> fields = [];
    private readonly List<string?> columns = [];
    private readonly CellValue[] cells;
    private readonly HashSet<int> widths;
    private readonly int widest;
    private readonly int[] fewestDecimals;
    private readonly List<LoggerEvent> events = [];
    private readonly List<bool> tellsEvents = [];

    public RowReader(
        Layout layout,
        Clock clock,
        IReadOnlyList<ChannelPlan> plans,
        ChannelChoice choice,
        IReadOnlyList<ColumnSample> sample,
        FaultMarks marks,
        Recording recording,
        Action<long, Statement> reject
    )
    {
        (this.layout, this.clock, this.plans, this.choice, this.marks, this.recording, this.reject) = (
            layout,
            clock,
            plans,
            choice,
            marks,
            recording,
            reject
        );
        cells = new CellValue[plans.Count];
        // Field counts that belong to the file: the usual one, the first row's and any that a twentieth of the sampled rows have.
        widths =
        [
            .. layout.Rows.GroupBy(r => r.Count).Where(g => g.Count() * 20 >= layout.Rows.Count && g.Count() > 1).Select(g => g.Key),
            layout.Width,
            layout.Rows[0].Count,
        ];
        widest = Math.Max(widths.Max(), layout.Names.Count);
        fewestDecimals =
        [
            .. plans.Select(p =>
                sample[p.Column].WithDecimals >= sample[p.Column].Of(CellKind.Number) - 1 && sample[p.Column].FewestDecimals < int.MaxValue
                    ? sample[p.Column].FewestDecimals
                    : 0
            ),
        ];
    }

    public IReadOnlyList<LoggerEvent> Events => events;

    /// <summary>Fault marks that the person added; null where there are none.</summary>
    public FaultMarks? GivenMarks => marks.HasGiven ? marks : null;

    /// <summary>Tells of a cell in a column beside the channels whether it is nothing to note; null where no cell of it can be.</summary>
    public Func<string, bool>? IsQuiet(int column) =>
        choice.IsUnit(column) ? cell => !IsOtherUnit(column, cell)
        : TellsEvents(column) ? cell => cell.Length <= 1 || !IsEvent(cell)
        : null;

    /// <summary>Takes one line.</summary>
    /// <param name="line">The line.</param>
    /// <param name="number">Its number, from 1.</param>
    /// <param name="cut">Whether the file ends inside it.</param>
    public void Take(ReadOnlySpan<char> line, long number, bool cut)
    {
        Fields.Split(line, layout.Separator, fields);
        if (!layout.Shape.TryShape(fields, columns, out var refused))
        {
            reject(number, refused!);
            return;
        }

        if (!clock.TryRead(columns, out var ms))
        {
            WithoutStamp(line, number, cut);
            return;
        }

        if (ReferenceEquals(layout.Shape, RowShape.Table) && fields.Count > widest + 1 && fields.Skip(widest + 1).Any(f => f.Length > 0))
        {
            reject(number, Statement.Of("files.row-long", ("fields", (long)fields.Count), ("expected", (long)widest)));
            return;
        }

        TakeCells(ms, number, cut);
    }

    private void TakeCells(long ms, long number, bool cut)
    {
        var empty = 0;
        var read = 0;
        for (var i = 0; i < plans.Count; i++)
        {
            var column = plans[i].Column;
            cells[i] = default;
            if (column >= columns.Count)
            {
                empty++;
                continue;
            }

            if (columns[column] is not { } cell)
            {
                continue;
            }

            cells[i].Present = true;
            if (cell.Length == 0)
            {
                cells[i].Fault = "";
                empty++;
                continue;
            }

            if (!TryCell(cell, i, cut && column == columns.Count - 1, out var reason))
            {
                reject(number, reason!);
                return;
            }

            read++;
        }

        var text = EventText();
        if (text is not null && events.Count < MostEvents)
        {
            events.Add(new LoggerEvent(number, clock.HasDate ? At(ms) : null, text));
        }

        if (read == 0 && text is not null)
        {
            return;
        }

        if (plans.Any(p => p.Column >= columns.Count) && (read == 0 || !widths.Contains(columns.Count)))
        {
            reject(
                number,
                cut
                    ? Statement.Of("files.row-cut")
                    : Statement.Of("files.row-short", ("fields", (long)columns.Count), ("expected", (long)layout.Width))
            );
            return;
        }

        foreach (var (column, _) in choice.UnitColumns)
        {
            if (column < columns.Count && columns[column] is { } unit && IsOtherUnit(column, unit))
            {
                reject(number, Statement.Of("files.row-unit", ("text", Quote.Short(unit))));
                return;
            }
        }

        foreach (ref var cell in cells.AsSpan())
        {
            // A field that rows of this length never have counts as empty.
            if (!cell.Present && ReferenceEquals(layout.Shape, RowShape.Table))
            {
                (cell.Present, cell.Fault) = (true, "");
            }
        }

        recording.Add(ms, cells, number);
    }

    private bool IsOtherUnit(int column, string unit) =>
        unit.Length > 0 && UnitWords.Exact(unit) != choice.UnitColumns.Find(u => u.Column == column).Unit;

    private bool TryCell(string cell, int channel, bool cut, out Statement? reason)
    {
        reason = null;
        var plan = plans[channel];
        var text = cell;
        if (!NumberText.TryParse(text, plan.Mark, out var value))
        {
            if (WithUnit.TryTake(cell, out text, out _) && NumberText.TryParse(text, plan.Mark, out value))
            {
                cells[channel].Value = value;
            }
            else if (marks.IsWord(cell) || !cell.AsSpan().ContainsAnyInRange('0', '9'))
            {
                cells[channel].Fault = Quote.Short(cell);
                return true;
            }
            else
            {
                reason = Statement.Of("files.row-not-number", ("column", (long)(plan.Column + 1)), ("text", Quote.Short(cell)));
                return false;
            }
        }

        var mark = text.IndexOf(plan.Mark, StringComparison.Ordinal);
        if (cut && (mark < 0 ? 0 : text.Length - mark - 1) < fewestDecimals[channel])
        {
            reason = Statement.Of("files.row-cut");
            return false;
        }

        cells[channel].Value = value;
        cells[channel].Fault = marks.IsValue(value) ? cell : null;
        return true;
    }

    // A row without a stamp: words alone are an event, for example a battery warning; anything else is refused.
    private void WithoutStamp(ReadOnlySpan<char> line, long number, bool cut)
    {
        var numbers = plans.Count(p =>
            p.Column < columns.Count && columns[p.Column] is { Length: > 0 } cell && NumberText.FormOf(cell) != NumberForm.None
        );
        var stamp = clock.TextOf(columns).Trim();
        if (numbers == 0 && !cut)
        {
            var said = EventText();
            if (!IsHeading() && (said is not null || (IsWordsOnly(stamp) && fields.Exists(f => Cell.KindOf(f) == CellKind.Word))))
            {
                var text = said ?? Quote.Short(line.Trim());
                if (events.Count < MostEvents)
                {
                    events.Add(new LoggerEvent(number, null, text));
                }

                if (fields.Count(f => f.Length > 0) == 1)
                {
                    foreach (var channel in recording.Channels)
                    {
                        channel.Fault(text, number);
                    }
                }

                return;
            }
        }

        reject(
            number,
            cut ? Statement.Of("files.row-cut")
                : IsHeading() ? Statement.Of("files.row-heading")
                : stamp.Length >= 4 && !stamp.AsSpan().ContainsAnyExcept("# ") ? Statement.Of("files.row-hashes")
                : Statement.Of("files.row-no-stamp", ("text", Quote.Short(stamp)))
        );
    }

    private static bool IsWordsOnly(string stamp) =>
        !stamp.AsSpan().ContainsAnyInRange('0', '9') && !stamp.Contains('#', StringComparison.Ordinal);

    private bool IsHeading() =>
        layout.Names.Count > 1
        && fields.Count >= 2
        && clock.Column < fields.Count
        && clock.Column < layout.Names.Count
        && fields[clock.Column].Length > 0
        && string.Equals(fields[clock.Column], layout.Names[clock.Column], StringComparison.OrdinalIgnoreCase);

    private string? EventText()
    {
        string? text = null;
        for (var i = 0; i < columns.Count; i++)
        {
            if (columns[i] is { Length: > 1 } cell && TellsEvents(i) && IsEvent(cell))
            {
                text = text is null ? Quote.Short(cell) : $"{text}, {Quote.Short(cell)}";
            }
        }

        return text;
    }

    private bool TellsEvents(int column)
    {
        while (tellsEvents.Count <= column)
        {
            var i = tellsEvents.Count;
            tellsEvents.Add(
                !clock.Uses(i)
                    && !choice.IsUnit(i)
                    && !plans.Any(p => p.Column == i)
                    && ColumnWords.Sense(choice.Heading(i), "") is { Quantity: "event" } or { Sense: ColumnSense.Unknown }
            );
        }

        return tellsEvents[column];
    }

    // Columns that hold a word on every row (type of sensor, state) tell of no event.
    private bool IsEvent(string cell) =>
        Cell.KindOf(cell) == CellKind.Word && layout.Rows.Count(r => r.Contains(cell)) * 4 <= layout.Rows.Count + 3;

    private static DateTime? At(long ms) =>
        ms >= 0 && ms < DateTime.MaxValue.Ticks / TimeSpan.TicksPerMillisecond
            ? new DateTime(ms * TimeSpan.TicksPerMillisecond, DateTimeKind.Unspecified)
            : null;
}
