using System.Globalization;
using System.Runtime.CompilerServices;

namespace Rinsewright.Benchmarks;

/// <summary>What to measure.</summary>
/// <param name="Rows">Sizes of the invented files, in rows.</param>
/// <param name="Repeats">How often each job runs on each file.</param>
/// <param name="PassEvery">Seconds from one pass of ware to the next.</param>
/// <param name="Write">Whether to update docs/handbook/performance.md.</param>
/// <param name="Only">Only this part of <see cref="PerformancePage.Parts"/>; null for all.</param>
internal sealed record BenchOptions(IReadOnlyList<int> Rows, int Repeats, int PassEvery, bool Write, string? Only = null)
{
    public const string Help = """
        dotnet run build.cs -- bench [--rows 100000,1000000,10000000] [--repeats 5] [--pass-every 1200] [--only proof|model|spread|carbonate|sync|devices] [--write]
          --rows        sizes of the invented logger files
          --repeats     runs of each job on each file; medians are shown
          --pass-every  seconds from one pass of ware to the next, at least 240
          --only        only this part: proof (logger files), model (an hour against SciPy, a steady solve, the table of faults, what-ifs),
                        spread (2,000 draws), carbonate (a million waters against SciPy), sync (1,000 visits to the office and back)
                        or devices (200 at once); the last two need a published server in artifacts/site or RINSEWRIGHT_PUBLISHED, and
                        PostgreSQL where RINSEWRIGHT_TEST_POSTGRES holds a connection string
          --write       put what was measured into docs/handbook/performance.md
        """;

    /// <summary>Null where an argument is not known.</summary>
    public static BenchOptions? Parse(string[] args)
    {
        var options = new BenchOptions([100_000, 1_000_000, 10_000_000], 5, 1200, Write: false);
        for (var i = 0; i < args.Length; i++)
        {
            var value = i + 1 < args.Length ? args[i + 1] : "";
            switch (args[i])
            {
                case "--write":
                    options = options with { Write = true };
                    continue;
                case "--only" when PerformancePage.Parts.Contains(value):
                    options = options with { Only = value };
                    break;
                case "--rows" when value.Split(',').All(r => Whole(r) >= 10_000):
                    options = options with { Rows = [.. value.Split(',').Select(Whole)] };
                    break;
                case "--repeats" when Whole(value) >= 1:
                    options = options with { Repeats = Whole(value) };
                    break;
                case "--pass-every" when Whole(value) >= 240:
                    options = options with { PassEvery = Whole(value) };
                    break;
                default:
                    return null;
            }

            i++;
        }

        return options;
    }

    /// <summary>Folder that holds Rinsewright.slnx.</summary>
    public static string Root() => Path.GetFullPath(Path.Combine(Path.GetDirectoryName(ThisFile())!, "..", ".."));

    private static string ThisFile([CallerFilePath] string path = "") => path;

    private static int Whole(string text) => int.TryParse(text, NumberStyles.None, CultureInfo.InvariantCulture, out var n) ? n : 0;
}
