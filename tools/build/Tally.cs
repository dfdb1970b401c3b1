using System.Globalization;
using System.Text.RegularExpressions;

namespace Rinsewright.Build;

/// <summary>Counts over every step and every run of the tests.</summary>
internal sealed partial class Tally
{
    private readonly List<string> failures = [];
    private int runFailed;
    private bool summarized;

    public int Passed { get; private set; }

    public int Failed { get; private set; }

    public int Skipped { get; private set; }

    /// <summary>Counts a step that is no test: only its failure. True where it went well.</summary>
    public bool Step(string name, int exit)
    {
        if (exit != 0)
        {
            Failed++;
            failures.Add(name);
        }

        return exit == 0;
    }

    public void BeginRun()
    {
        runFailed = 0;
        summarized = false;
    }

    /// <summary>Takes one line of the output of the tests.</summary>
    public void Read(string line)
    {
        var match = SummaryLine().Match(line);
        if (!match.Success)
        {
            return;
        }

        summarized = true;
        var count = int.Parse(match.Groups["count"].Value, CultureInfo.InvariantCulture);
        switch (match.Groups["what"].Value)
        {
            case "succeeded":
                Passed += count;
                break;
            case "failed":
                Failed += count;
                runFailed += count;
                break;
            default:
                Skipped += count;
                break;
        }
    }

    /// <summary>A run that ends badly without naming a failed test (a crash, nothing run) counts as one failure.</summary>
    public void EndRun(string name, int exit)
    {
        if (!summarized || (exit != 0 && runFailed == 0))
        {
            Step($"test run {name} ended with {exit}{(summarized ? "" : " and without a summary")}", Math.Max(exit, 1));
        }
    }

    /// <summary>The closing lines; the last is always <c>N passed, N failed</c>.</summary>
    public void Print(IEnumerable<string> notRun)
    {
        foreach (var failure in failures)
        {
            Console.WriteLine($"FAILED   {failure}");
        }

        foreach (var reason in notRun)
        {
            Console.WriteLine($"NOT RUN  {reason}");
        }

        if (Skipped > 0)
        {
            Console.WriteLine($"SKIPPED  {Skipped} tests, each with its reason above");
        }

        Console.WriteLine($"{Passed} passed, {Failed} failed");
    }

    [GeneratedRegex(@"^\s*(?<what>succeeded|failed|skipped):\s+(?<count>\d+)\s*$", RegexOptions.CultureInvariant, 1000)]
    private static partial Regex SummaryLine();
}
