using System.Diagnostics;
using System.Globalization;
using nietras.SeparatedValues;
using Rinsewright.Contracts.Sanitization;
using Rinsewright.Files.Sanitization;

namespace Rinsewright.Benchmarks.Sanitization;

/// <summary>
/// The jobs that are compared, each timed from opening the file to having its result, start of the process not counted: that favours the script,
/// whose libraries take longer to load. A job prints <c>seconds;passes;peak bytes</c> and leaves one dose a line in its own file.
/// </summary>
internal static class ProofJobs
{
    public static async Task RunAsync(string job, string file, string doses)
    {
        var clock = Stopwatch.StartNew();
        var found = job switch
        {
            "proof" => await ProveAsync(file),
            "tokenize" => Tokenize(file),
            _ => throw new ArgumentException($"No job {job}.", nameof(job)),
        };
        var seconds = clock.Elapsed.TotalSeconds;
        File.WriteAllLines(doses, found.Select(d => d.ToString("R", CultureInfo.InvariantCulture)));
        Console.WriteLine(string.Create(CultureInfo.InvariantCulture, $"{seconds:R};{found.Count};{PeakBytes()}"));
    }

    // The whole proof, as every host runs it.
    private static async Task<IReadOnlyList<double>> ProveAsync(string file)
    {
        await using var stream = File.OpenRead(file);
        var report = await ProofRun.RunAsync(new ProofRequest(), stream, Path.GetFileName(file), progress: null, CancellationToken.None);
        return [.. report.Passes.Select(p => p.HeatUnits.Value)];
    }

    // Splitting the same file into fields and nothing else: the floor under every reader built on it.
    private static List<double> Tokenize(string file)
    {
        long characters = 0;
        using var reader = Sep.New(',').Reader().FromFile(file);
        foreach (var row in reader)
        {
            characters += row[0].Span.Length + row[1].Span.Length;
        }

        return characters > 0 ? [] : throw new InvalidDataException("Nothing in the file.");
    }

    // The most memory the process ever held; Linux keeps it, elsewhere the runtime asks the system.
    private static long PeakBytes()
    {
        if (!OperatingSystem.IsLinux())
        {
            return Process.GetCurrentProcess().PeakWorkingSet64;
        }

        var line = File.ReadLines("/proc/self/status").First(l => l.StartsWith("VmHWM:", StringComparison.Ordinal));
        return long.Parse(line.Split(' ', StringSplitOptions.RemoveEmptyEntries)[^2], CultureInfo.InvariantCulture) * 1024;
    }
}
