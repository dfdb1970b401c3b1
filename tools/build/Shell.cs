using System.Diagnostics;

namespace Rinsewright.Build;

internal static class Shell
{
    /// <summary>Runs a program with its output passed through line by line; a program that is not there counts as exit 127.</summary>
    public static async Task<int> RunAsync(
        string program,
        IEnumerable<string> arguments,
        CancellationToken ct,
        Dictionary<string, string>? variables = null,
        Action<string>? onLine = null,
        bool quiet = false
    )
    {
        var start = new ProcessStartInfo(program, arguments)
        {
            RedirectStandardOutput = onLine is not null || quiet,
            RedirectStandardError = quiet,
            UseShellExecute = false,
        };
        start.Environment["DOTNET_CLI_TELEMETRY_OPTOUT"] = "1";
        start.Environment["DOTNET_NOLOGO"] = "1";
        start.Environment["DOTNET_CLI_UI_LANGUAGE"] = "en";
        foreach (var (name, value) in variables ?? [])
        {
            start.Environment[name] = value;
        }

        try
        {
            using var process = Process.Start(start)!;
            await using var killed = ct.Register(() => process.Kill(entireProcessTree: true));
            var errors = quiet ? process.StandardError.ReadToEndAsync(CancellationToken.None) : Task.FromResult("");
            while (start.RedirectStandardOutput && await process.StandardOutput.ReadLineAsync(CancellationToken.None) is { } line)
            {
                onLine?.Invoke(line);
                if (!quiet)
                {
                    Console.WriteLine(line);
                }
            }

            await process.WaitForExitAsync(CancellationToken.None);
            if (process.ExitCode != 0 && (await errors).Trim() is { Length: > 0 } text)
            {
                Console.WriteLine(text);
            }

            ct.ThrowIfCancellationRequested();
            return process.ExitCode;
        }
        catch (System.ComponentModel.Win32Exception)
        {
            return 127;
        }
    }

    public static bool IsRootOnDebian => OperatingSystem.IsLinux() && File.Exists("/usr/bin/apt-get") && Environment.UserName == "root";

    public static async Task<bool> InstallAsync(string package, CancellationToken ct)
    {
        Console.WriteLine($"Installing {package} with apt-get ...");
        var quietly = new Dictionary<string, string>(StringComparer.Ordinal) { ["DEBIAN_FRONTEND"] = "noninteractive" };
        await RunAsync("apt-get", ["update", "-q"], ct, quietly, quiet: true);
        return await RunAsync("apt-get", ["install", "-y", "-q", "--no-install-recommends", package], ct, quietly, quiet: true) == 0;
    }
}
