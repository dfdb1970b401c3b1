using System.Globalization;

namespace Rinsewright.Engine.Tests;

/// <summary>Reads the published check values beside the tests: comment header, then plain CSV without quotes.</summary>
internal static class Published
{
    public static IEnumerable<Dictionary<string, string>> Rows(string slice, string file)
    {
        var lines = File.ReadAllLines(Path.Combine(AppContext.BaseDirectory, slice, "Published", file))
            .Where(l => l.Length > 0 && l[0] != '#')
            .ToList();
        var names = lines[0].Split(',');
        return lines.Skip(1).Select(l => names.Zip(l.Split(',')).ToDictionary(p => p.First, p => p.Second, StringComparer.Ordinal));
    }

    public static double Number(this Dictionary<string, string> row, string name) => double.Parse(row[name], CultureInfo.InvariantCulture);

    public static double? OptionalNumber(this Dictionary<string, string> row, string name) =>
        row[name].Length == 0 ? null : row.Number(name);
}
