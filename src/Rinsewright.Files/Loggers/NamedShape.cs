using System.Buffers;
using Rinsewright.Engine.Records;

namespace Rinsewright.Files.Loggers;

/// <summary>
/// Rows whose values carry their own names: <c>time=2031-09-17T13:02:00 plate_f=160.9</c>. Fields without a name may stand in front: a
/// clock, a word of the program that wrote the line. Each name is a column, wherever in its row it stands.
/// </summary>
internal sealed class NamedShape : RowShape
{
    private const int MostNames = 256;
    private static readonly SearchValues<char> NotInNames = SearchValues.Create(",;:\"<>&?");
    private readonly Dictionary<string, int> places = new(StringComparer.Ordinal);
    private readonly List<string> names = [];
    private readonly List<(string Name, string Value)> items = [];

    /// <summary>The shape of the sampled rows.</summary>
    public NamedShape(IEnumerable<List<string>> rows)
    {
        foreach (var row in rows)
        {
            Unfold(row, items);
            foreach (var (name, _) in items)
            {
                if (names.Count < MostNames && places.TryAdd(name, names.Count))
                {
                    names.Add(name.StartsWith('\0') ? "" : name);
                }
            }
        }
    }

    public override string Name => "named-values";

    public override IReadOnlyList<string> Names => names;

    /// <summary>Whether a row has at least one value with its name.</summary>
    public static bool Fits(List<string> row) => row.Exists(f => TryName(f, out _, out _));

    /// <summary>The values of a row without their names.</summary>
    public static List<string> Values(List<string> row)
    {
        var unfolded = new List<(string Name, string Value)>();
        Unfold(row, unfolded);
        return unfolded.ConvertAll(i => i.Value);
    }

    /// <summary>Whether one of the names is of a time: an elapsed time or a count of seconds is no stamp by itself.</summary>
    public static bool TellsTime(List<string> row) => row.Exists(f => TryName(f, out var name, out _) && ColumnWords.IsTime(name));

    public override bool TryShape(List<string> fields, List<string?> columns, out Statement? refused)
    {
        columns.Clear();
        refused = null;
        Unfold(fields, items);
        if (!items.Exists(i => !i.Name.StartsWith('\0')))
        {
            refused = Statement.Of("files.row-no-names", ("text", Quote.Short(string.Join(' ', fields))));
            return false;
        }

        for (var i = 0; i < names.Count; i++)
        {
            columns.Add("");
        }

        foreach (var (name, value) in items)
        {
            if (places.TryGetValue(name, out var at))
            {
                columns[at] = value;
            }
        }

        return true;
    }

    // A time behind its date and a unit behind its number belong to the name in front, when a blank separates the fields.
    private static void Unfold(List<string> row, List<(string Name, string Value)> into)
    {
        into.Clear();
        var bare = 0;
        foreach (var field in row)
        {
            if (TryName(field, out var name, out var value))
            {
                into.Add((name, value));
            }
            else if (into.Count > 0 && GoesOn(into[^1], field))
            {
                into[^1] = (into[^1].Name, into[^1].Value + " " + field);
            }
            else if (field.Length > 0)
            {
                into.Add(($"\0{bare++}", field));
            }
        }
    }

    private static bool GoesOn((string Name, string Value) last, string field) =>
        !last.Name.StartsWith('\0')
        && Cell.KindOf(last.Value) switch
        {
            CellKind.Date => Cell.KindOf(field) is CellKind.Time,
            CellKind.DateAndTime or CellKind.Time => Cell.KindOf(field) is CellKind.Half,
            CellKind.Number => UnitWords.Exact(field) is not null || UnitWords.OtherQuantity(field) is not null,
            _ => false,
        };

    private static bool TryName(string field, out string name, out string value)
    {
        name = value = "";
        var at = field.IndexOf('=', StringComparison.Ordinal);
        if (at is < 1 or > 60 || !char.IsLetter(field[0]) || field.AsSpan(0, at).ContainsAny(NotInNames))
        {
            return false;
        }

        name = field[..at].TrimEnd();
        value = field[(at + 1)..].Trim().Trim('"');
        return true;
    }
}
