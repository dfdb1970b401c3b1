using System.Text;
using Rinsewright.Files.Demo;

namespace Rinsewright.Cli.Tests;

/// <summary>Runs the program in this process, with its own streams.</summary>
internal static class Run
{
    private static readonly TimeProvider Noon = new FixedClock(new DateTimeOffset(2031, 5, 14, 12, 0, 0, TimeSpan.Zero));

    /// <summary>Runs with these arguments and nothing on standard input.</summary>
    public static Task<Answer> Async(params string[] args) => WithInputAsync([], args);

    /// <summary>Runs with these bytes on standard input.</summary>
    public static async Task<Answer> WithInputAsync(
        byte[] input,
        string[] args,
        CancellationToken? cancellation = null,
        bool watched = false
    )
    {
        using var stdin = new MemoryStream(input);
        using var stdout = new StringWriter();
        using var stderr = new StringWriter();
        var status = await CommandLine.RunAsync(
            args,
            new Terminal(stdin, stdout, stderr, watched, Noon),
            cancellation ?? TestContext.Current.CancellationToken
        );
        return new Answer(status, Plain(stdout), Plain(stderr));
    }

    /// <summary>A demo file in a folder that is gone afterwards.</summary>
    public static TemporaryFile Demo(string name) => new(name, DemoLoggers.Bytes(name));

    /// <summary>A file of this text.</summary>
    public static TemporaryFile File(string name, string text) => new(name, Encoding.UTF8.GetBytes(text));

    // A lone carriage return is progress, not the end of a line.
    private static string Plain(StringWriter writer) => writer.ToString().Replace("\r\n", "\n", StringComparison.Ordinal);

    private sealed class FixedClock(DateTimeOffset now) : TimeProvider
    {
        public override TimeZoneInfo LocalTimeZone => TimeZoneInfo.Utc;

        public override DateTimeOffset GetUtcNow() => now;
    }
}

/// <summary>What came back.</summary>
internal sealed record Answer(int Status, string Output, string Error);

/// <summary>A file in a folder of its own.</summary>
internal sealed class TemporaryFile : IDisposable
{
    private readonly string folder = Directory.CreateTempSubdirectory("rinsewright-test-").FullName;

    public TemporaryFile(string name, byte[] bytes)
    {
        Path = System.IO.Path.Combine(folder, name);
        System.IO.File.WriteAllBytes(Path, bytes);
    }

    public string Path { get; }

    public string Beside(string name) => System.IO.Path.Combine(folder, name);

    public void Dispose() => Directory.Delete(folder, recursive: true);
}
