using System.Globalization;
using Rinsewright.Engine.Records;

namespace Rinsewright.Files.Loggers;

/// <summary>How a row's fields become the columns of one table.</summary>
internal abstract class RowShape
{
    /// <summary>Plain table: fields are columns.</summary>
    public static readonly RowShape Table = new TableShape();

    /// <summary>Name of the shape, as the decision says it.</summary>
    public abstract string Name { get; }

    /// <summary>Headings the shape itself gives; empty where it gives none.</summary>
    public virtual IReadOnlyList<string> Names => [];

    /// <summary>Puts the fields of a row into its columns; a column that this kind of row does not have is null.</summary>
    public abstract bool TryShape(List<string> fields, List<string?> columns, out Statement? refused);

    /// <summary>The shape of the sampled rows.</summary>
    public static RowShape Find(IReadOnlyList<List<string>> rows)
    {
        var pairs = rows.Count(PairShape.Fits);
        if (pairs * 2 > rows.Count)
        {
            return new PairShape(rows.Where(PairShape.Fits));
        }

        var kinds = rows.Where(KindShape.Fits).ToList();
        if (kinds.Count * 10 > rows.Count * 8 && kinds.Select(r => r[0]).Distinct(StringComparer.Ordinal).Count() is >= 1 and <= 8)
        {
            return new KindShape(kinds);
        }

        return rows.Count(NamedShape.Fits) * 2 > rows.Count ? new NamedShape(rows.Where(NamedShape.Fits)) : Table;
    }

    private sealed class TableShape : RowShape
    {
        public override string Name => "table";

        public override bool TryShape(List<string> fields, List<string?> columns, out Statement? refused)
        {
            columns.Clear();
            columns.AddRange(fields);
            refused = null;
            return true;
        }
    }

    /// <summary>Label, value, label, value … with the clock last.</summary>
    internal sealed class PairShape : RowShape
    {
        private readonly List<string> labels = [];
        private readonly int lead;

        public PairShape(IEnumerable<List<string>> rows)
        {
            foreach (var row in rows)
            {
                lead = (row.Count - 1) % 2;
                for (var i = lead; i + 1 < row.Count; i += 2)
                {
                    if (!labels.Contains(row[i]) && labels.Count < 64)
                    {
                        labels.Add(row[i]);
                    }
                }
            }
        }

        public override string Name => "label-value";

        public override IReadOnlyList<string> Names => [.. labels, "epoch time"];

        public static bool Fits(List<string> row)
        {
            if (row.Count < 3 || !IsEpoch(row[^1]))
            {
                return false;
            }

            for (var i = (row.Count - 1) % 2; i + 1 < row.Count; i += 2)
            {
                if (row[i].Length == 0 || !char.IsLetter(row[i][0]) || Cell.KindOf(row[i + 1]) is not (CellKind.Number or CellKind.Fault))
                {
                    return false;
                }
            }

            return true;
        }

        public override bool TryShape(List<string> fields, List<string?> columns, out Statement? refused)
        {
            columns.Clear();
            refused = null;
            if (fields.Count < 2 || !IsEpoch(fields[^1]))
            {
                refused = Statement.Of("files.row-no-stamp", ("text", Quote.Short(fields.Count == 0 ? "" : fields[^1])));
                return false;
            }

            for (var i = 0; i < labels.Count; i++)
            {
                columns.Add(null);
            }

            columns.Add(fields[^1]);
            var seen = 0;
            for (var i = lead; i + 1 < fields.Count; i += 2)
            {
                var at = labels.IndexOf(fields[i]);
                if (at < 0 || i + 2 > fields.Count - 1 + lead && (fields.Count - 1 - lead) % 2 != 0)
                {
                    refused = Statement.Of("files.row-label", ("text", Quote.Short(fields[i])));
                    return false;
                }

                if (fields[i + 1].Length == 0)
                {
                    refused = Statement.Of("files.row-no-value", ("label", fields[i]));
                    return false;
                }

                columns[at] = fields[i + 1];
                seen++;
            }

            if (seen < labels.Count)
            {
                refused = Statement.Of(
                    "files.row-short",
                    ("fields", (long)fields.Count),
                    ("expected", (long)((labels.Count * 2) + 1 + lead))
                );
                return false;
            }

            return true;
        }

        private static bool IsEpoch(string cell) =>
            NumberText.TryParse(cell, '.', out var v) && v is (>= 9e8 and < 4.3e9) or (>= 9e11 and < 4.3e12);
    }

    /// <summary>First field names the row's kind; then year, day of the year and clock; the rest differs by kind.</summary>
    internal sealed class KindShape : RowShape
    {
        private readonly Dictionary<string, (int Offset, int Width)> kinds = new(StringComparer.Ordinal);
        private readonly List<string> names = ["#", "year", "day of year", "clock time"];

        public KindShape(List<List<string>> rows)
        {
            foreach (var group in rows.GroupBy(r => r[0], StringComparer.Ordinal))
            {
                var width = group.GroupBy(r => Width(r)).MaxBy(g => g.Count())!.Key;
                kinds[group.Key] = (names.Count, width);
                for (var i = 4; i < width; i++)
                {
                    names.Add(string.Create(CultureInfo.InvariantCulture, $"{group.Key} #{i + 1}"));
                }
            }
        }

        public override string Name => "row-kinds";

        public override IReadOnlyList<string> Names => names;

        public static bool Fits(List<string> row) =>
            row.Count >= 5
            && row[0].Length is > 0 and <= 5
            && NumberText.FormOf(row[0]) == NumberForm.Whole
            && int.TryParse(row[1], out var year)
            && year is >= 1980 and <= 2200
            && int.TryParse(row[2], out var day)
            && day is >= 1 and <= 366
            && int.TryParse(row[3], out var clock)
            && clock is >= 0 and <= 2400
            && clock % 100 < 60;

        public override bool TryShape(List<string> fields, List<string?> columns, out Statement? refused)
        {
            columns.Clear();
            refused = null;
            if (!kinds.TryGetValue(fields[0], out var kind))
            {
                refused = Statement.Of("files.row-kind", ("text", Quote.Short(fields[0])));
                return false;
            }

            if (Width(fields) != kind.Width)
            {
                refused = Statement.Of("files.row-short", ("fields", (long)Width(fields)), ("expected", (long)kind.Width));
                return false;
            }

            for (var i = 0; i < names.Count; i++)
            {
                columns.Add(null);
            }

            for (var i = 0; i < kind.Width; i++)
            {
                columns[i < 4 ? i : kind.Offset + i - 4] = fields[i];
            }

            return true;
        }

        // A separator at the end of a row adds no field.
        private static int Width(List<string> row) => row[^1].Length == 0 ? row.Count - 1 : row.Count;
    }
}

/// <summary>Pieces of a file inside a message.</summary>
internal static class Quote
{
    /// <summary>At most 40 characters, control characters shown as dots.</summary>
    public static string Short(ReadOnlySpan<char> text)
    {
        var n = Math.Min(text.Length, 40);
        Span<char> shown = stackalloc char[n];
        for (var i = 0; i < n; i++)
        {
            shown[i] = char.IsControl(text[i]) || char.IsSurrogate(text[i]) ? '·' : text[i];
        }

        return text.Length > n ? string.Concat(shown, "…") : shown.ToString();
    }
}
