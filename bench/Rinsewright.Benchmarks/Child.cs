using System.Diagnostics;
using System.Globalization;

namespace Rinsewright.Benchmarks;

/// <summary>One run of a job in a process of its own.</summary>
/// <param name="Seconds">Time of the job itself, s.</param>
/// <param name="Passes">Passes it found.</param>
/// <param name="PeakBytes">Most memory the whole process held.</param>
internal sealed record Child(double Seconds, int Passes, long PeakBytes)
{
    /// <summary>Runs a program that prints <c>seconds;passes;peak bytes</c> as its last line.</summary>
    public static async Task<Child> RunAsync(string program, params string[] arguments)
    {
        var start = new ProcessStartInfo(program, arguments) { RedirectStandardOutput = true, UseShellExecute = false };
        using var process = Process.Start(start)!;
        var output = await process.StandardOutput.ReadToEndAsync();
        await process.WaitForExitAsync();
        if (process.ExitCode != 0)
        {
            throw new InvalidOperationException($"{program} {string.Join(' ', arguments)} ended with {process.ExitCode}.");
        }

        var parts = output.Trim().Split('\n')[^1].Split(';');
        return new Child(
            double.Parse(parts[0], CultureInfo.InvariantCulture),
            int.Parse(parts[1], CultureInfo.InvariantCulture),
            long.Parse(parts[2], CultureInfo.InvariantCulture)
        );
    }

    /// <summary>First line a program prints; null where it is not there or fails.</summary>
    public static async Task<string?> AskAsync(string program, params string[] arguments)
    {
        try
        {
            var start = new ProcessStartInfo(program, arguments)
            {
                RedirectStandardOutput = true,
                RedirectStandardError = true,
                UseShellExecute = false,
            };
            using var process = Process.Start(start)!;
            var output = await process.StandardOutput.ReadToEndAsync();
            await process.WaitForExitAsync();
            return process.ExitCode == 0 ? output.Trim().Split('\n')[0] : null;
        }
        catch (System.ComponentModel.Win32Exception)
        {
            return null;
        }
    }
}
