namespace Rinsewright.Files.Loggers;

/// <summary>Splits one line into its fields: quotes taken off, spaces around trimmed. A quote that is never closed is a damaged character, not a field over many lines.</summary>
internal static class Fields
{
    /// <summary>Splits a line. A blank as separator stands for any run of spaces and tabs.</summary>
    public static void Split(ReadOnlySpan<char> line, char separator, List<string> fields)
    {
        fields.Clear();
        line = line.Trim("\f\0\u001a\ufeff");
        if (!TrySplit(line, separator, fields, quotes: true))
        {
            fields.Clear();
            TrySplit(line, separator, fields, quotes: false);
        }
    }

    /// <summary>Splits a line into a new list.</summary>
    public static List<string> Split(ReadOnlySpan<char> line, char separator)
    {
        var fields = new List<string>();
        Split(line, separator, fields);
        return fields;
    }

    private static bool TrySplit(ReadOnlySpan<char> line, char separator, List<string> fields, bool quotes)
    {
        var runs = separator == ' ';
        var i = 0;
        if (runs)
        {
            line = line.Trim(" \t");
        }

        if (line.IsEmpty)
        {
            fields.Add("");
            return true;
        }

        while (true)
        {
            while (i < line.Length && line[i] != separator && line[i] is ' ' or '\u00a0')
            {
                i++;
            }

            if (quotes && i < line.Length && line[i] == '"')
            {
                if (!TryQuoted(line, separator, runs, ref i, out var field))
                {
                    return false;
                }

                fields.Add(field);
            }
            else
            {
                var from = i;
                while (i < line.Length && !IsSeparator(line[i], separator, runs))
                {
                    i++;
                }

                fields.Add(line[from..i].Trim().Trim('"').ToString());
            }

            if (i >= line.Length)
            {
                return true;
            }

            i++;
            while (runs && i < line.Length && IsSeparator(line[i], separator, runs))
            {
                i++;
            }
        }
    }

    private static bool IsSeparator(char c, char separator, bool runs) => c == separator || (runs && c == '\t');

    private static bool TryQuoted(ReadOnlySpan<char> line, char separator, bool runs, ref int i, out string field)
    {
        var from = ++i;
        var doubled = false;
        while (i < line.Length)
        {
            if (line[i] == '"')
            {
                if (i + 1 < line.Length && line[i + 1] == '"')
                {
                    doubled = true;
                    i++;
                }
                else
                {
                    break;
                }
            }

            i++;
        }

        field = "";
        if (i >= line.Length)
        {
            return false;
        }

        field = line[from..i].Trim().ToString();
        field = doubled ? field.Replace("\"\"", "\"", StringComparison.Ordinal) : field;
        i++;
        while (i < line.Length && !IsSeparator(line[i], separator, runs))
        {
            if (line[i] is not (' ' or '\t'))
            {
                return false;
            }

            i++;
        }

        return true;
    }
}
