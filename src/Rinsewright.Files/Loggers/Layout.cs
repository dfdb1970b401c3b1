using Rinsewright.Engine.Records;

namespace Rinsewright.Files.Loggers;

/// <summary>Where the table starts, what separates its fields and what its headings are, from the first lines of the file.</summary>
internal sealed class Layout
{
    private static readonly (char Mark, string Name)[] Separators =
    [
        ('\t', "tab"),
        (';', "semicolon"),
        (',', "comma"),
        ('|', "bar"),
        (' ', "spaces"),
    ];

    private Layout(char separator) => Separator = separator;

    public char Separator { get; }

    /// <summary>Index of the first data line in the sample; its line number less one.</summary>
    public int FirstData { get; private set; }

    /// <summary>Number of the line with the names; 0 without headings.</summary>
    public int HeadingLine { get; private set; }

    public IReadOnlyList<string> Names { get; private set; } = [];

    public IReadOnlyList<string> Units { get; private set; } = [];

    public IReadOnlyList<string> Preamble { get; private set; } = [];

    public RowShape Shape { get; private set; } = RowShape.Table;

    /// <summary>Most frequent number of fields.</summary>
    public int Width { get; private set; }

    public List<Decision> Decisions { get; } = [];

    /// <summary>Sampled data rows, split.</summary>
    public List<List<string>> Rows { get; } = [];

    /// <summary>Decides from the first lines.</summary>
    /// <exception cref="UnreadableFileException">No table of readings, or headings without readings.</exception>
    public static Layout Decide(IReadOnlyList<string> lines, DialectOverridesView given)
    {
        var best = default(Trial);
        foreach (var (mark, name) in Separators)
        {
            if (given.Separator is { } wanted ? wanted != name : false)
            {
                continue;
            }

            if (given.Separator is null && best is not null && mark != ' ' && !lines.Any(l => l.Contains(mark, StringComparison.Ordinal)))
            {
                continue;
            }

            var trial = Trial.Of(lines, mark, name, given);
            if (best is null || trial.Score > best.Score * (mark == ' ' ? 1.1 : 1))
            {
                best = trial;
            }
        }

        if (best is null)
        {
            throw DialectOverridesView.Unknown("separator", given.Separator!, Separators.Select(s => s.Name));
        }

        if (best.Score == 0)
        {
            throw NoReadings(lines);
        }

        var layout = new Layout(best.Mark) { Width = best.Width, FirstData = best.First };
        for (var i = best.First; i < best.Rows.Count; i++)
        {
            if (best.Rows[i].Count > 1 || best.Rows[i][0].Length > 0)
            {
                layout.Rows.Add(best.Rows[i]);
            }
        }

        layout.Decisions.Add(
            new Decision(
                "separator",
                best.Name,
                given.Separator is null ? Statement.Of("files.separator", ("fields", (long)best.Width)) : Statement.Of("files.given"),
                given.Separator is null ? DecisionBasis.Inferred : DecisionBasis.Given,
                [.. Separators.Select(s => s.Name).Where(n => n != best.Name)]
            )
        );
        layout.Shape = RowShape.Find(layout.Rows);
        layout.FindHeading(best, lines, given);
        return layout;
    }

    private static UnreadableFileException NoReadings(IReadOnlyList<string> lines)
    {
        foreach (var (mark, _) in Separators.AsSpan(0, 3))
        {
            var at = lines.ToList().FindIndex(l => Fields.Split(l, mark) is { Count: >= 2 } fields && fields.Exists(ColumnWords.IsTime));
            if (at >= 0)
            {
                return new UnreadableFileException(Statement.Of("files.no-readings", ("line", (long)(at + 1))));
            }
        }

        return new UnreadableFileException(Statement.Of("files.no-table"));
    }

    private void FindHeading(Trial trial, IReadOnlyList<string> lines, DialectOverridesView given)
    {
        var first = trial.First;
        var names = -1;
        var basis = DecisionBasis.Read;
        if (given.HeaderLine is { } line)
        {
            basis = DecisionBasis.Given;
            names = line > 0 && line <= trial.Rows.Count ? line - 1 : -1;
        }
        else if (Shape == RowShape.Table)
        {
            names = HeadingAbove(trial);
        }

        if (names >= 0)
        {
            Names = trial.Rows[names];
            HeadingLine = names + 1;
            for (var i = names + 1; i < first; i++)
            {
                if (trial.Rows[i].Exists(c => UnitWords.Exact(c) is not null || UnitWords.OtherQuantity(c) is not null))
                {
                    Units = trial.Rows[i];
                    break;
                }
            }
        }
        else
        {
            Names = Shape.Names;
        }

        Preamble =
        [
            .. lines.Take(first).Where((_, i) => i != names).Select(l => l.Trim('\f', ' ', '\t')).Where(l => l.Length > 0).Take(100),
        ];
        var because =
            basis == DecisionBasis.Given ? Statement.Of("files.given")
            : HeadingLine > 0 ? Statement.Of("files.heading-found", ("line", (long)HeadingLine), ("first", (long)(first + 1)))
            : Statement.Of("files.heading-none", ("first", (long)(first + 1)));
        Decisions.Add(
            new Decision(
                "heading",
                HeadingLine.ToString(System.Globalization.CultureInfo.InvariantCulture),
                because,
                HeadingLine > 0 ? basis
                    : basis == DecisionBasis.Given ? basis
                    : DecisionBasis.Inferred,
                HeadingLine > 0 ? ["0"] : []
            )
        );
        if (Shape != RowShape.Table)
        {
            Decisions.Add(new Decision("layout", Shape.Name, Statement.Of("files.layout-" + Shape.Name), DecisionBasis.Inferred, []));
        }
    }

    // The lowest line above the data that names a time; else the nearest line of words with as many fields.
    private static int HeadingAbove(Trial trial)
    {
        var nearest = -1;
        for (var i = trial.First - 1; i >= Math.Max(0, trial.First - 8); i--)
        {
            var row = trial.Rows[i];
            var filled = row.Count(c => c.Length > 0);
            if (filled == 0 || (filled == 1 && trial.Width > 1 && row.Count < trial.Width - 1))
            {
                continue;
            }

            if (row.Count >= 2 && row.Exists(c => c.Length <= 120 && ColumnWords.IsTime(c) && c is not "TS" and not "ts"))
            {
                return i;
            }

            if (
                nearest < 0
                && (filled >= 2 || row.Count == trial.Width)
                && Math.Abs(row.Count - trial.Width) <= 2
                && row.Exists(c => Cell.KindOf(c) is CellKind.Word or CellKind.Text)
                && !row.Exists(c => Cell.KindOf(c) is CellKind.DateAndTime)
            )
            {
                nearest = i;
            }
        }

        return nearest;
    }

    private sealed record Trial(char Mark, string Name, List<List<string>> Rows, int Width, int First, double Score)
    {
        public static Trial Of(IReadOnlyList<string> lines, char mark, string name, DialectOverridesView given)
        {
            var rows = lines.Select(l => Fields.Split(l, mark)).ToList();
            var shapes = rows.Select(RowLook.Of).ToList();
            var from = given.HeaderLine is > 0 and { } line ? Math.Min(line, rows.Count) : 0;
            var data = Enumerable.Range(from, rows.Count - from).Where(i => shapes[i].IsData).ToList();
            if (data.Count == 0)
            {
                return new Trial(mark, name, rows, 0, 0, 0);
            }

            var stamped = data.Count(i => shapes[i].IsStamped);
            if (stamped * 4 >= data.Count)
            {
                // A preamble line may carry a stamp too, but in another place.
                var place = data.Where(i => shapes[i].IsStamped).GroupBy(i => shapes[i].StampAt).MaxBy(g => g.Count())!.Key;
                data.RemoveAll(i => shapes[i].StampAt != place);
            }

            var width = data.GroupBy(i => rows[i].Count).MaxBy(g => (g.Count(), g.Key))!.Key;
            var first = data.FirstOrDefault(i => Math.Abs(rows[i].Count - width) <= 2, data[0]);
            if (!shapes[first].IsStamped && data.Count >= 8)
            {
                // Without stamps a preamble can look like data: data go on.
                first = data.FirstOrDefault(
                    i => rows[i].Count == width || RowShape.KindShape.Fits(rows[i]) || RowShape.PairShape.Fits(rows[i]),
                    first
                );
            }

            while (
                first > from
                && shapes[first - 1].IsStamped
                && shapes[first - 1].StampAt == shapes[first].StampAt
                && rows[first - 1].Count >= 2
            )
            {
                first--;
            }

            return new Trial(mark, name, rows, width, first, data.Count + (0.01 * Math.Min(width, 20)));
        }
    }
}

/// <summary>Whether a row looks like data: it carries a stamp and a number, or is all numbers.</summary>
internal readonly record struct RowLook(bool IsData, bool IsStamped, int StampAt, int Numbers = 0)
{
    public static RowLook Of(List<string> row)
    {
        if (NamedShape.Fits(row))
        {
            var named = OfValues(NamedShape.Values(row));
            return named with { IsData = named is { IsData: true, IsStamped: true } || NamedShape.TellsTime(row) && named.Numbers >= 2 };
        }

        return OfValues(row);
    }

    private static RowLook OfValues(List<string> row)
    {
        var stampAt = -1;
        int numbers = 0,
            stamps = 0,
            words = 0,
            texts = 0,
            faults = 0,
            hashes = 0;
        for (var i = 0; i < row.Count; i++)
        {
            switch (Cell.KindOf(row[i]))
            {
                case CellKind.Number:
                    numbers++;
                    break;
                case CellKind.DateAndTime or CellKind.Date or CellKind.Time:
                    stamps++;
                    stampAt = stampAt < 0 ? i : stampAt;
                    break;
                case CellKind.Hashes:
                    hashes++;
                    stampAt = stampAt < 0 ? i : stampAt;
                    break;
                case CellKind.Fault or CellKind.Half:
                    faults++;
                    break;
                case CellKind.Word:
                    words++;
                    break;
                case CellKind.Text:
                    texts++;
                    break;
            }
        }

        if (stamps > 0)
        {
            return new RowLook(numbers + faults > 0, true, stampAt);
        }

        if (hashes > 0)
        {
            return new RowLook(numbers > 0, true, stampAt);
        }

        var plain = numbers >= 2 && texts == 0 && words <= 3 && words <= numbers;
        return new RowLook(plain || RowShape.PairShape.Fits(row), false, -1, numbers);
    }
}
