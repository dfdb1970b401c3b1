using System.Runtime.InteropServices;
using nietras.SeparatedValues;

namespace Rinsewright.Benchmarks;

/// <summary>Where and with what a measurement was made.</summary>
internal sealed record Machine(
    string Processor,
    int Cores,
    string System,
    string Runtime,
    string Sep,
    string? Python,
    string? PythonVersions
)
{
    private const string Versions =
        "import platform,pandas,numpy;print(f'Python {platform.python_version()}, pandas {pandas.__version__}, NumPy {numpy.__version__}')";

    public static async Task<Machine> AskAsync()
    {
        string? python = null;
        string? versions = null;
        // The system's own interpreter first: a distribution packs pandas for that one.
        foreach (
            var candidate in (string[])
                [Environment.GetEnvironmentVariable("RINSEWRIGHT_PYTHON") ?? "", "/usr/bin/python3", "python3", "python"]
        )
        {
            if (candidate.Length > 0 && await Child.AskAsync(candidate, "-c", Versions) is { } answer)
            {
                (python, versions) = (candidate, answer);
                break;
            }
        }

        return new Machine(
            ProcessorName(),
            Environment.ProcessorCount,
            RuntimeInformation.OSDescription,
            RuntimeInformation.FrameworkDescription,
            typeof(SepReader).Assembly.GetName().Version?.ToString(3) ?? "",
            python,
            versions
        );
    }

    private static string ProcessorName()
    {
        const string info = "/proc/cpuinfo";
        var line = File.Exists(info)
            ? File.ReadLines(info).FirstOrDefault(l => l.StartsWith("model name", StringComparison.Ordinal))
            : null;
        return line is null
            ? RuntimeInformation.ProcessArchitecture.ToString()
            : line[(line.IndexOf(':', StringComparison.Ordinal) + 1)..].Trim();
    }
}
