using System.Text;
using Rinsewright.Contracts.Machines;
using Rinsewright.Contracts.Records;
using Rinsewright.Files.Loggers;

namespace Rinsewright.Files.Tables;

/// <summary>
/// Kitchens and machines as a table, text (CSV) or a workbook: one row for a machine, the kitchen's facts in its first row. Comma, semicolon or tab, quoted as RFC 4180 says; the head
/// names the columns in English or Spanish, in any order and case.
/// </summary>
public static class KitchenTable
{
    private const string Machine = "machine";
    private const string Kind = "machine kind";

    private static readonly Dictionary<string, string> Columns = new(StringComparer.Ordinal)
    {
        ["kitchen"] = KitchenPaths.Name,
        ["cocina"] = KitchenPaths.Name,
        ["address"] = KitchenPaths.Address,
        ["direccion"] = KitchenPaths.Address,
        ["hours"] = KitchenPaths.Hours,
        ["horas"] = KitchenPaths.Hours,
        ["key"] = KitchenPaths.Key,
        ["llave"] = KitchenPaths.Key,
        ["languages"] = KitchenPaths.Languages,
        ["idiomas"] = KitchenPaths.Languages,
        ["next visit"] = KitchenPaths.NextVisit,
        ["proxima visita"] = KitchenPaths.NextVisit,
        ["note"] = KitchenPaths.Note,
        ["nota"] = KitchenPaths.Note,
        ["machine"] = Machine,
        ["maquina"] = Machine,
        ["machine kind"] = Kind,
        ["tipo de maquina"] = Kind,
    };

    /// <summary>Columns written, in their order.</summary>
    public static IReadOnlyList<string> Head { get; } =
    ["kitchen", "address", "hours", "key", "languages", "next visit", "note", "machine", "machine kind"];

    /// <summary>Reads a table; never throws for what is in it.</summary>
    /// <param name="text">Text.</param>
    /// <param name="known">Kitchens that are here already, by name.</param>
    public static TablePreview Read(string text, IReadOnlyDictionary<string, Guid> known) => Read(Rows(text), known);

    /// <summary>Reads a table from a file: text in any usual encoding, or a workbook, of which the first sheet that names kitchens is taken; never throws for what is in it.</summary>
    /// <param name="file">The file's bytes.</param>
    /// <param name="known">Kitchens that are here already, by name.</param>
    /// <param name="ct">Stops the reading.</param>
    public static TablePreview Read(byte[] file, IReadOnlyDictionary<string, Guid> known, CancellationToken ct = default)
    {
        try
        {
            var head = file.AsSpan(0, Math.Min(file.Length, FileKind.HeadLength));
            if (file.Length > 0 && FileKind.IsWorkbook(head))
            {
                using var stream = new MemoryStream(file, writable: false);
                var sheets = Workbook.Sheets(stream, ct);
                return Read([.. sheets.FirstOrDefault(NamesKitchens) ?? sheets.FirstOrDefault(s => s.Count > 0) ?? []], known);
            }

            var sample = file.AsSpan(0, Math.Min(file.Length, TextEncoding.SampleLength));
            var (encoding, skip, _) = TextEncoding.Decide(sample, sample.Length == file.Length, null);
            return Read(encoding.GetString(file.AsSpan(skip)), known);
        }
        catch (UnreadableFileException e)
        {
            return new TablePreview([], [new TableProblem(1, e.Says.Key, "")]);
        }
    }

    private static bool NamesKitchens(IReadOnlyList<(int Number, List<string> Cells)> rows) =>
        rows.Count > 0 && rows[0].Cells.Exists(c => Columns.GetValueOrDefault(Forgiving.Fold(c)) == KitchenPaths.Name);

    private static TablePreview Read(List<(int Number, List<string> Cells)> rows, IReadOnlyDictionary<string, Guid> known)
    {
        var problems = new List<TableProblem>();
        if (rows.Count == 0)
        {
            return new TablePreview([], [new TableProblem(1, "client.table.empty", "")]);
        }

        var columns = new Dictionary<string, int>(StringComparer.Ordinal);
        foreach (var (i, head) in rows[0].Cells.Index().Where(c => c.Item.Trim().Length > 0))
        {
            if (!Columns.TryGetValue(Forgiving.Fold(head), out var column))
            {
                problems.Add(new TableProblem(1, "client.table.column", head));
            }
            else if (!columns.TryAdd(column, i))
            {
                problems.Add(new TableProblem(1, "client.table.column-twice", head));
            }
        }

        if (!columns.ContainsKey(KitchenPaths.Name))
        {
            problems.Add(new TableProblem(1, "client.table.no-kitchen", string.Join(", ", rows[0].Cells)));
            return new TablePreview([], problems);
        }

        var names = known.GroupBy(k => Forgiving.Fold(k.Key), StringComparer.Ordinal).ToDictionary(g => g.Key, g => g.First().Value);
        var kitchens = new Dictionary<string, TableKitchen>(StringComparer.Ordinal);
        foreach (var (number, cells) in rows.Skip(1))
        {
            string At(string column) => columns.TryGetValue(column, out var i) && i < cells.Count ? cells[i].Trim() : "";
            var name = At(KitchenPaths.Name);
            if (name.Length == 0)
            {
                problems.Add(new TableProblem(number, "client.table.row-without-kitchen", string.Join(" | ", cells)));
                continue;
            }

            var folded = Forgiving.Fold(name);
            if (!kitchens.TryGetValue(folded, out var kitchen))
            {
                var here = names.TryGetValue(folded, out var id);
                kitchen = new TableKitchen(here ? id : Forgiving.IdOf(name), here, name);
                kitchens[folded] = kitchen;
            }

            Add(kitchen.Fields, columns.Keys, At, number, problems);
            if (At(Machine).Length + At(Kind).Length > 0)
            {
                AddMachine(kitchen, At, number, problems);
            }
        }

        return new TablePreview([.. kitchens.Values], problems);
    }

    /// <summary>Writes a table that <see cref="Read"/> takes back.</summary>
    public static string Write(IEnumerable<(FieldDocument Kitchen, IReadOnlyList<(string Name, string Kind)> Machines)> kitchens)
    {
        var text = CsvText.Headed(Head);
        foreach (var (kitchen, machines) in kitchens)
        {
            var facts = Head.Take(Head.Count - 2).Select(h => kitchen[Columns[h]]).ToList();
            foreach (var (name, kind) in machines.Count > 0 ? machines : [("", "")])
            {
                CsvText.Row(text, [.. facts, name, kind]);
            }
        }

        return text.ToString();
    }

    private static void Add(
        List<KeyValuePair<string, string>> all,
        IEnumerable<string> columns,
        Func<string, string> at,
        int number,
        List<TableProblem> problems
    )
    {
        foreach (var column in columns.Where(c => c is not (KitchenPaths.Name or Machine or Kind)))
        {
            var value = at(column);
            var stands = all.FirstOrDefault(f => f.Key == column).Value;
            if (value.Length == 0 || value == stands)
            {
                continue;
            }

            if (stands is not null)
            {
                problems.Add(new TableProblem(number, "client.table.says-otherwise", value));
            }
            else if (
                column == KitchenPaths.NextVisit
                && !DateOnly.TryParseExact(
                    value,
                    "yyyy-MM-dd",
                    System.Globalization.CultureInfo.InvariantCulture,
                    System.Globalization.DateTimeStyles.None,
                    out _
                )
            )
            {
                problems.Add(new TableProblem(number, "client.table.day", value)); // 3/4/2027 is a day in March or in April
            }
            else
            {
                all.Add(new(column, value));
            }
        }
    }

    private static void AddMachine(TableKitchen kitchen, Func<string, string> at, int number, List<TableProblem> problems)
    {
        if (MachineFile.Kind(at(Kind)) is not { } kind)
        {
            problems.Add(new TableProblem(number, "client.table.kind", at(Kind)));
            return;
        }

        var name = at(Machine);
        var id = Forgiving.IdOf($"{kitchen.Id} {(name.Length > 0 ? name : at(Kind))}");
        if (kitchen.Machines.All(m => m.Id != id))
        {
            kitchen.Machines.Add(new TableMachine(id, name, kind));
        }
    }

    private static List<(int Number, List<string> Cells)> Rows(string text)
    {
        var separator = Separator(text);
        var rows = new List<(int, List<string>)>();
        var (cells, cell, quoted, line, start) = (new List<string>(), new StringBuilder(), false, 1, 1);
        void EndCell()
        {
            cells.Add(cell.ToString());
            cell.Clear();
        }

        void EndRow()
        {
            EndCell();
            if (cells.Exists(c => c.Trim().Length > 0))
            {
                rows.Add((start, cells));
            }

            (cells, start) = ([], line);
        }

        for (var i = text.StartsWith('\ufeff') ? 1 : 0; i < text.Length; i++)
        {
            var c = text[i];
            line += c == '\n' ? 1 : 0;
            if (quoted)
            {
                if (c != '"')
                {
                    cell.Append(c);
                }
                else if (i + 1 < text.Length && text[i + 1] == '"')
                {
                    cell.Append('"');
                    i++;
                }
                else
                {
                    quoted = false;
                }
            }
            else if (c == '"' && cell.Length == 0)
            {
                quoted = true;
            }
            else if (c == separator)
            {
                EndCell();
            }
            else if (c == '\n')
            {
                EndRow();
            }
            else if (c != '\r')
            {
                cell.Append(c);
            }
        }

        EndRow();
        return rows;
    }

    private const string Separators = ",;\t";

    // The one of the three that the head has most of.
    private static char Separator(string text)
    {
        var end = text.IndexOf('\n', StringComparison.Ordinal);
        var head = end < 0 ? text : text[..end];
        return Separators.MaxBy(s => head.Count(c => c == s));
    }
}
