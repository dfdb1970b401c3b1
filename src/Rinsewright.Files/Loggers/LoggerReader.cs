using System.Globalization;
using Rinsewright.Engine.Quantities;
using Rinsewright.Engine.Records;

namespace Rinsewright.Files.Loggers;

/// <summary>
/// Reads the export of a temperature logger: text in any layout, or a workbook. Every decision is a small one of its own (see the folder's
/// README for their order), says on what it rests, and can be overridden. Text is read in bounded memory.
/// </summary>
public static class LoggerReader
{
    private const int SampleLines = 600;
    private const int SampleCharacters = 1 << 19;

    /// <summary>Reads a file.</summary>
    /// <param name="stream">Seekable stream of its bytes; left open.</param>
    /// <param name="name">Name it came with.</param>
    /// <param name="options">What the person said, and who is told of the progress.</param>
    /// <param name="ct">Stops the reading within a tenth of a second.</param>
    /// <exception cref="UnreadableFileException">The file holds no table of temperature readings.</exception>
    /// <exception cref="OperationCanceledException">Asked to stop.</exception>
    public static Task<LoggerFile> ReadAsync(Stream stream, string name, LoggerReaderOptions options, CancellationToken ct)
    {
        ArgumentNullException.ThrowIfNull(stream);
        ArgumentNullException.ThrowIfNull(options);
        if (!stream.CanSeek)
        {
            throw new ArgumentException("The stream can seek.", nameof(stream));
        }

        return Task.Run(() => Read(stream, name, options, ct), ct);
    }

    private static LoggerFile Read(Stream stream, string name, LoggerReaderOptions options, CancellationToken ct)
    {
        ct.ThrowIfCancellationRequested();
        var given = new DialectOverridesView(options);
        var decisions = new List<Decision>();
        var head = Head(stream, FileKind.HeadLength);
        if (FileKind.IsWorkbook(head))
        {
            using var text = Workbook.ToText(stream, given, decisions, ct);
            return ReadText(text, name, options, given, decisions, ct);
        }

        return ReadText(stream, name, options, given, decisions, ct);
    }

    private static LoggerFile ReadText(
        Stream stream,
        string name,
        LoggerReaderOptions options,
        DialectOverridesView given,
        List<Decision> decisions,
        CancellationToken ct
    )
    {
        var head = Head(stream, TextEncoding.SampleLength);
        var (encoding, skip, decision) = TextEncoding.Decide(head, head.Length == stream.Length, given.Encoding);
        if (!decisions.Exists(d => d.Id == "sheet"))
        {
            decisions.Add(decision);
        }

        var source = new TextSource(stream, encoding, skip);
        var pace = new Pace(stream, options.Progress, ct);
        var (lines, whole) = source.Sample(SampleLines, SampleCharacters);
        FileKind.RequireText(string.Join('\n', lines.Take(50)));
        if (lines.TrueForAll(string.IsNullOrWhiteSpace))
        {
            throw new UnreadableFileException(Statement.Of(whole ? "files.empty" : "files.no-table"));
        }

        var layout = Layout.Decide(lines, given);
        decisions.AddRange(layout.Decisions);
        var rows = Shaped(layout);
        var columns = Sampled(rows, given);
        var (clock, value, because, basis) = ClockChoice.Choose(columns, layout.Names, layout.Shape);
        var dates = new DateOrderEvidence();
        var marks = new DecimalMarks(columns.Count);
        foreach (var row in rows)
        {
            Survey.Take(row, clock, dates, marks);
        }

        SettleOverWholeFile(source, layout, clock, dates, marks, columns, lines.Count, whole, given, pace);
        var (byColumn, markDecision) = marks.Decide(
            given.DecimalMark,
            i => columns[i].Mostly(CellKind.Number, CellKind.Fault) && !clock.Uses(i)
        );
        decisions.Add(markDecision);
        decisions.Add(new Decision("clock", value, because, basis, []));
        DateDecision(clock, dates, rows, layout, given, decisions);
        OffsetDecision(clock, layout, rows, given, decisions);
        clock.Mark = byColumn[clock.Column];
        var choice = new ChannelChoice(layout, rows, columns, clock, given, decisions);
        var plans = choice.Choose(byColumn);
        var reader = new TableReader(layout, clock, plans, choice, columns, given.Marks, pace, IsNewestFirst(clock, rows));
        reader.Read(source, options.RowByRow);
        var channels = Judgements.Finish(reader, plans, clock, decisions);
        return channels.Count == 0
            ? throw new UnreadableFileException(Statement.Of("files.no-values", ("rows", reader.Rows), ("rejected", reader.RejectedCount)))
            : new LoggerFile(name, reader.Rows, reader.RejectedCount, reader.Rejected, decisions, channels, layout.Preamble, reader.Events);
    }

    private static byte[] Head(Stream stream, int length)
    {
        stream.Position = 0;
        var bytes = new byte[(int)Math.Min(length, stream.Length)];
        var n = stream.ReadAtLeast(bytes, bytes.Length, throwOnEndOfStream: false);
        return n == bytes.Length ? bytes : bytes[..n];
    }

    private static bool IsNewestFirst(Clock clock, List<List<string?>> rows)
    {
        if (!clock.HasDate)
        {
            return false;
        }

        int down = 0,
            up = 0;
        long? last = null;
        foreach (var row in rows)
        {
            if (clock.TryRead(row, out var ms))
            {
                down += ms < last ? 1 : 0;
                up += ms > last ? 1 : 0;
                last = ms;
            }
        }

        return down >= 3 && down > 10 * up;
    }

    private static List<List<string?>> Shaped(Layout layout)
    {
        var rows = new List<List<string?>>();
        foreach (var fields in layout.Rows)
        {
            var row = new List<string?>();
            if (layout.Shape.TryShape(fields, row, out _))
            {
                rows.Add(row);
            }
        }

        return rows;
    }

    private static List<ColumnSample> Sampled(List<List<string?>> rows, DialectOverridesView given)
    {
        var columns = new List<ColumnSample>();
        foreach (var row in rows)
        {
            for (var i = 0; i < Math.Min(row.Count, 1024); i++)
            {
                if (i == columns.Count)
                {
                    columns.Add(new ColumnSample());
                }

                if (row[i] is { } cell)
                {
                    columns[i].Add(cell, given.Marks);
                }
            }
        }

        return columns;
    }

    private static void SettleOverWholeFile(
        TextSource source,
        Layout layout,
        Clock clock,
        DateOrderEvidence dates,
        DecimalMarks marks,
        List<ColumnSample> columns,
        int sampled,
        bool whole,
        DialectOverridesView given,
        Pace pace
    )
    {
        if (whole)
        {
            return;
        }

        var dateOpen =
            clock.Kind == ClockKind.Stamp
            && given.DateOrder is null
            && dates.Decide().Reason is not (DateOrderReason.Shown or DateOrderReason.NumberTooLarge);
        var markOpen =
            given.DecimalMark is null
            && Enumerable.Range(0, columns.Count).All(i => clock.Uses(i) || !marks.Shows(i))
            && layout.Separator != ',';
        if (dateOpen || markOpen)
        {
            Survey.WholeFile(source, layout, clock, dates, marks, sampled, dateOpen, markOpen, pace);
        }
    }

    private static void DateDecision(
        Clock clock,
        DateOrderEvidence dates,
        List<List<string?>> rows,
        Layout layout,
        DialectOverridesView given,
        List<Decision> decisions
    )
    {
        if (clock.Kind != ClockKind.Stamp)
        {
            return;
        }

        var (order, reason, fit) = dates.Decide();
        if (reason == DateOrderReason.Open && Preamble.OrderOf(layout.Preamble, fit, rows, clock) is { } told)
        {
            (order, reason) = (told, DateOrderReason.Preamble);
        }

        // Degrees Fahrenheit are written where the month is written first: a better guess until the person answers, never an answer.
        if (
            reason == DateOrderReason.Open
            && fit.Contains(DateOrder.Mdy)
            && layout.Names.Any(n => UnitWords.InHeading(n) == Units.Fahrenheit.Ucum)
        )
        {
            order = DateOrder.Mdy;
        }

        clock.Order = given.DateOrder ?? order;
        if (dates.TwelveHour)
        {
            decisions.Add(new Decision("clock-hours", "12", Statement.Of("files.clock-twelve"), DecisionBasis.Read, []));
        }

        if (given.DateOrder is not null)
        {
            decisions.Add(new Decision("date-order", Name(clock.Order), Statement.Of("files.given"), DecisionBasis.Given, []));
            return;
        }

        var basis = reason switch
        {
            DateOrderReason.Shown => DecisionBasis.Read,
            DateOrderReason.Open => DecisionBasis.Open,
            _ => DecisionBasis.Inferred,
        };
        var others =
            reason == DateOrderReason.Shown
                ? []
                : (DateOrder[])
                    [
                        .. fit.Where(o => o != order),
                        .. Enum.GetValues<DateOrder>().Where(o => o != order && !fit.Contains(o) && reason != DateOrderReason.Open),
                    ];
        var because = Statement.Of(
            reason switch
            {
                DateOrderReason.Shown => "files.date-shown",
                DateOrderReason.NumberTooLarge => "files.date-number",
                DateOrderReason.Backwards => "files.date-backwards",
                DateOrderReason.Midnight => "files.date-midnight",
                DateOrderReason.EvenSteps => "files.date-even",
                DateOrderReason.Preamble => "files.date-preamble",
                _ => "files.date-open",
            },
            ("orders", Orders([.. fit.OrderBy(o => o != order)])),
            ("order", Order(order))
        );
        decisions.Add(new Decision("date-order", Name(order), because, basis, [.. others.Select(Name)]));
    }

    private static Statement Order(DateOrder order) => Statement.Of("client.value." + Name(order));

    private static Statement Orders(DateOrder[] fit) =>
        fit switch
        {
            [var a, var b, var c] => Statement.Of("files.orders-three", ("a", Order(a)), ("b", Order(b)), ("c", Order(c))),
            [var a, var b] => Statement.Of("files.orders-two", ("a", Order(a)), ("b", Order(b))),
            [var a] => Order(a),
            _ => Statement.Of("client.value.none"),
        };

    private static void OffsetDecision(
        Clock clock,
        Layout layout,
        List<List<string?>> rows,
        DialectOverridesView given,
        List<Decision> decisions
    )
    {
        if (!clock.HasDate)
        {
            return;
        }

        var (minutes, because, basis) = FindOffset(clock, layout, rows);
        if (given.OffsetMinutes is { } said)
        {
            if (clock.Kind == ClockKind.Epoch)
            {
                clock.EpochShift = said * 60_000L;
            }

            (minutes, because, basis) = (said, Statement.Of("files.given"), DecisionBasis.Given);
        }

        clock.Offset = minutes;
        decisions.Add(new Decision("utc-offset", minutes is { } m ? ZoneWords.Show(m) : "", because, basis, []));
    }

    private static (int? Minutes, Statement Because, DecisionBasis Basis) FindOffset(Clock clock, Layout layout, List<List<string?>> rows)
    {
        if (clock.Kind == ClockKind.Epoch)
        {
            return (0, Statement.Of("files.offset-epoch"), DecisionBasis.Inferred);
        }

        foreach (var column in (ReadOnlySpan<int>)[clock.Column, clock.Second, clock.Third])
        {
            if (column >= 0 && column < layout.Names.Count && ZoneWords.FindIn(layout.Names[column], names: true) is { } heading)
            {
                return (heading, Statement.Of("files.offset-heading", ("heading", layout.Names[column])), DecisionBasis.Read);
            }
        }

        if (
            clock.Kind == ClockKind.Stamp
            && rows.Select(r => StampText.TryParse(clock.TextOf(r), out var parts) ? parts.OffsetMinutes : null)
                .FirstOrDefault(o => o is not null)
                is { } stamped
        )
        {
            return (stamped, Statement.Of("files.offset-stamp"), DecisionBasis.Read);
        }

        var after = clock.LastColumn + 1;
        if (
            rows.Count > 0
            && rows.TrueForAll(r => after < r.Count && r[after] is { Length: >= 3 } zone && zone == rows[0][after])
            && ZoneWords.OffsetOf(rows[0][after]) is { } named
        )
        {
            return (named, Statement.Of("files.offset-stamp"), DecisionBasis.Read);
        }

        foreach (var line in layout.Preamble)
        {
            if (ZoneWords.FindIn(line, names: true) is { } preamble)
            {
                return (preamble, Statement.Of("files.offset-preamble", ("line", Quote.Short(line))), DecisionBasis.Read);
            }
        }

        return (null, Statement.Of("files.offset-none"), DecisionBasis.Assumed);
    }

    private static string Name(DateOrder order) => order.ToString().ToLower(CultureInfo.InvariantCulture);
}
