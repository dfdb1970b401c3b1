namespace Rinsewright.Cli;

/// <summary>Plain text for a terminal, readable at 80 columns: wrapped paragraphs and aligned tables.</summary>
internal sealed class TextPage(TextWriter writer)
{
    private const int Width = 80;

    public void Line(string text = "") => writer.WriteLine(text.TrimEnd());

    public void Heading(string text) => Line(text);

    /// <summary>A wrapped paragraph; lines after the first are indented by <paramref name="hanging"/> more.</summary>
    public void Paragraph(string text, int indent = 0, int hanging = 0)
    {
        var margin = new string(' ', indent);
        foreach (var line in Wrap(text, Width - indent, Width - indent - hanging))
        {
            Line(margin + line);
            margin = new string(' ', indent + hanging);
        }
    }

    /// <summary>A name and its wrapped description beside it, or below it where the name is long.</summary>
    public void Entry(string name, string text, int column)
    {
        var lines = Wrap(text, Width - column, Width - column).ToList();
        if (name.Length + 2 > column)
        {
            Line(name);
        }
        else
        {
            Line(name.PadRight(column) + (lines.Count > 0 ? lines[0] : ""));
            lines = [.. lines.Skip(1)];
        }

        foreach (var line in lines)
        {
            Line(new string(' ', column) + line);
        }
    }

    /// <summary>Rows under their heads, two spaces apart; columns named in <paramref name="right"/> are flush right.</summary>
    public void Table(
        IReadOnlyList<string> heads,
        IReadOnlyList<IReadOnlyList<string>> rows,
        IReadOnlySet<int> right,
        Action<int>? after = null
    )
    {
        var widths = heads.Select((h, i) => rows.Select(r => r[i].Length).Append(h.Length).Max()).ToList();
        string Row(IReadOnlyList<string> cells) =>
            "  " + string.Join("  ", cells.Select((c, i) => right.Contains(i) ? c.PadLeft(widths[i]) : c.PadRight(widths[i])));
        Line(Row(heads));
        for (var i = 0; i < rows.Count; i++)
        {
            Line(Row(rows[i]));
            after?.Invoke(i);
        }
    }

    private static IEnumerable<string> Wrap(string text, int first, int rest)
    {
        var (line, width) = ("", first);
        foreach (var word in text.Split(' ', StringSplitOptions.RemoveEmptyEntries))
        {
            if (line.Length > 0 && line.Length + 1 + word.Length > width)
            {
                yield return line;
                (line, width) = (word, rest);
            }
            else
            {
                line = line.Length == 0 ? word : $"{line} {word}";
            }
        }

        if (line.Length > 0)
        {
            yield return line;
        }
    }
}
