using System.Globalization;
using System.Text;

namespace Rinsewright.Files.Tables;

/// <summary>Tables as text that spreadsheets open: UTF-8 with its mark, commas, quoted as RFC 4180 says.</summary>
internal static class CsvText
{
    /// <summary>The text with its head alone.</summary>
    public static StringBuilder Headed(IEnumerable<string> head) =>
        new StringBuilder().Append('\ufeff').AppendJoin(',', head).Append("\r\n"); // the mark by which spreadsheets know UTF-8

    /// <summary>Appends a row. Text is guarded; numbers (<see cref="double"/>, <see cref="int"/>) are written with a point, yes and no as words, days and times as ISO 8601 has them, what is absent as nothing.</summary>
    public static void Row(StringBuilder text, IReadOnlyList<object?> cells) => text.AppendJoin(',', cells.Select(Cell)).Append("\r\n");

    private static string Cell(object? cell) =>
        cell switch
        {
            null => "",
            double number => number.ToString("R", CultureInfo.InvariantCulture),
            int number => number.ToString(CultureInfo.InvariantCulture),
            bool yes => yes ? "yes" : "no",
            DateOnly day => day.ToString("O", CultureInfo.InvariantCulture),
            DateTimeOffset at => at.ToString("yyyy-MM-dd'T'HH:mm:sszzz", CultureInfo.InvariantCulture),
            _ => Quoted(cell.ToString()!),
        };

    // A cell that a spreadsheet would take for a formula gets an apostrophe before it.
    private static string Quoted(string cell)
    {
        var safe = cell.Length > 0 && cell[0] is '=' or '+' or '-' or '@' ? "'" + cell : cell;
        return safe.AsSpan().IndexOfAny(",;\"\t\r\n".AsSpan()) >= 0 ? $"\"{safe.Replace("\"", "\"\"", StringComparison.Ordinal)}\"" : safe;
    }
}
