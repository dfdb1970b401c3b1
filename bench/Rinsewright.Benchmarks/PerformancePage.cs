using System.Text;

namespace Rinsewright.Benchmarks;

/// <summary>docs/handbook/performance.md: one part for each job, so that one can be measured again without the others.</summary>
internal static class PerformancePage
{
    /// <summary>Parts in the order they stand on the page.</summary>
    public static readonly string[] Parts = ["proof", "model", "spread", "carbonate", "sync", "devices"];

    private const string Head = """
        # Speed and memory

        Made by `dotnet run build.cs -- bench --write`, or one part of it with `--only`; do not edit by hand. Ratios travel between machines, times do not. Each part names the machine it was made on.


        """;

    /// <summary>Puts a part into the page in place of the one that was there.</summary>
    public static void Write(string part, string text)
    {
        var path = Path.Combine(BenchOptions.Root(), "docs", "handbook", "performance.md");
        var was = File.Exists(path) ? File.ReadAllText(path) : "";
        var page = new StringBuilder(Head);
        foreach (var name in Parts)
        {
            if ((name == part ? text.Trim() : Between(was, name)) is { Length: > 0 } body)
            {
                page.Append(Open(name)).Append("\n\n").Append(body).Append("\n\n").Append(Close(name)).Append("\n\n");
            }
        }

        File.WriteAllText(path, page.ToString().TrimEnd() + "\n");
    }

    private static string Open(string part) => $"<!-- {part} -->";

    private static string Close(string part) => $"<!-- end of {part} -->";

    private static string Between(string page, string part)
    {
        int from = page.IndexOf(Open(part), StringComparison.Ordinal),
            to = page.IndexOf(Close(part), StringComparison.Ordinal);
        return from >= 0 && to > from ? page[(from + Open(part).Length)..to].Trim() : "";
    }
}
