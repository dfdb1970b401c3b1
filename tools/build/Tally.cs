using System.Text.RegularExpressions;

namespace Rinsewright.Build;

internal sealed partial class Tally
{
    public int Passed { get; private set; }

    public int Failed { get; set; }

    public int Skipped { get; private set; }

    public int Runs { get; set; }

    public int Reported { get; set; }

    public bool BadExit { get; set; }

    [GeneratedRegex(@"^\s*(succeeded|failed|skipped):\s+(\d+)\s*$", RegexOptions.ExplicitCapture | RegexOptions.CultureInvariant, 1000)]
    public static partial Regex SummaryLine();

    public void Add(string name, int count)
    {
        switch (name)
        {
            case "succeeded":
                Passed += count;
                break;
            case "failed":
                Failed += count;
                break;
            default:
                Skipped += count;
                break;
        }
    }
}
