#!/usr/bin/env -S dotnet run
// The one command of the project, the same for a person and for the build machine:
//     dotnet run build.cs -- check | verify | bench | publish | accept | format
#:include tools/build/Shell.cs
#:include tools/build/Tally.cs
#:include tools/build/Browser.cs
#:include tools/build/Postgres.cs
#:property PublishAot=false
#:property InvariantGlobalization=true

using System.Diagnostics;
using System.Globalization;
using System.Runtime.CompilerServices;
using System.Runtime.InteropServices;
using System.Text.Json;
using Rinsewright.Build;

const string Solution = "Rinsewright.slnx";
const string Configuration = "Release";

// What a phone has to fetch before the program works without a signal, in bytes (compressed).
const long FirstLoadBudget = 3_000_000;

// What touches data is tested on both databases: without one of them a check has failed.
const string NoPostgres =
    "PostgreSQL: not found and not installed, or it did not start (Debian: apt-get install postgresql); what needs it was skipped";

// Projects whose answers must not change where people write a comma for the decimal point.
string[] cultureProjects =
[
    "Rinsewright.Engine.Tests",
    "Rinsewright.Contracts.Tests",
    "Rinsewright.Drawing.Tests",
    "Rinsewright.Files.Tests",
    "Rinsewright.Cli.Tests",
];

Environment.CurrentDirectory = Path.GetDirectoryName(ThisFile())!;
var clock = Stopwatch.StartNew();
var verb = args is [var first, ..] ? first : "help";
using var stopping = new CancellationTokenSource();

// Ctrl+C, or a time limit of whoever called us: what was started (tests, a database) is ended before we go.
using var interrupted = PosixSignalRegistration.Create(PosixSignal.SIGINT, Stop);
using var terminated = PosixSignalRegistration.Create(PosixSignal.SIGTERM, Stop);

void Stop(PosixSignalContext signal)
{
    signal.Cancel = true;
    stopping.Cancel();
}

try
{
    return verb switch
    {
        "check" => await CheckAsync(),
        "verify" => await VerifyAsync(),
        "bench" => await BenchAsync(),
        "publish" => await PublishAsync(),
        "accept" => await AcceptAsync(),
        "format" => await Steps(RestoreToolsAsync, () => DotnetAsync(["csharpier", "format", "."])),
        _ => Help(),
    };
}
catch (OperationCanceledException)
{
    Console.WriteLine($"Stopped after {clock.Elapsed.TotalMinutes.ToString("0.0", CultureInfo.InvariantCulture)} min: not a result.");
    return 130;
}

// ---- verbs

async Task<int> CheckAsync()
{
    var tally = new Tally();
    var notRun = new List<string>();
    Say("Tools");
    tally.Step("restore the tools", await RestoreToolsAsync());
    Say("Format");
    tally.Step("format: mend it with  dotnet run build.cs -- format", await DotnetAsync(["csharpier", "check", "."]));
    Say("Build, warnings as errors");
    if (tally.Step("build", await DotnetAsync(["build", Solution, "-c", Configuration, "-warnaserror", "--nologo"])))
    {
        await TestsAsync(tally);
    }
    else
    {
        notRun.Add("tests: the build failed");
    }

    Say($"Result after {clock.Elapsed.TotalMinutes.ToString("0.0", CultureInfo.InvariantCulture)} min");
    tally.Print(notRun);
    return tally.Failed == 0 ? 0 : 1;
}

async Task TestsAsync(Tally tally)
{
    Say("What the tests need");
    var variables = new Dictionary<string, string>(StringComparer.Ordinal);
    if (await Browser.FindOrInstallAsync(stopping.Token) is { } browser)
    {
        variables["RINSEWRIGHT_BROWSER"] = browser;
    }
    else
    {
        tally.Step("browser: install Chromium, or name a browser of its kind in RINSEWRIGHT_BROWSER", 1);
    }

    await using var postgres = await Postgres.StartAsync(stopping.Token);
    if (postgres is not null)
    {
        variables["RINSEWRIGHT_TEST_POSTGRES"] = postgres.ConnectionString;
    }
    else
    {
        tally.Step(NoPostgres, 1);
    }

    Say("All tests");
    await TestAsync(["--solution", Solution], variables, tally);
    variables["RINSEWRIGHT_TEST_CULTURE"] = "decimal-comma";
    foreach (var project in cultureProjects)
    {
        Say($"{project} again, with a decimal comma");
        await TestAsync(["--project", $"tests/{project}"], variables, tally);
    }
}

async Task<int> VerifyAsync()
{
    if (await Steps(RestoreToolsAsync, PublishAsync) is not 0 and var failed)
    {
        return failed;
    }

    Say("First load of the published client");
    var root = "artifacts/site/wwwroot";
    long total = 0;
    var manifest = await File.ReadAllTextAsync(Path.Combine(root, "service-worker-assets.js"), stopping.Token);
    using var assets = JsonDocument.Parse(manifest[manifest.IndexOf('{', StringComparison.Ordinal)..(manifest.LastIndexOf('}') + 1)]);
    var sizes = assets
        .RootElement.GetProperty("assets")
        .EnumerateArray()
        .Select(a => a.GetProperty("url").GetString()!)
        .Select(url => (Url: url, Size: Compressed(Path.Combine(root, url))))
        .ToList();
    // A build that was stopped in the middle of compressing leaves an empty file, and the next takes it for done.
    if (sizes.Find(s => s.Size == 0) is { Url: { } empty })
    {
        Console.WriteLine($"{empty} is empty. Delete artifacts and publish again.");
        return 1;
    }

    var late = Late(await File.ReadAllTextAsync(Path.Combine(root, "_framework/dotnet.js"), stopping.Token));
    var needed = sizes.Where(s => !late.Contains(Path.GetFileName(s.Url))).ToList();
    total = needed.Sum(s => s.Size);
    foreach (var (url, size) in needed.OrderByDescending(s => s.Size).Take(8))
    {
        Console.WriteLine($"{size, 10:N0}  {url}");
    }

    Console.WriteLine($"{total, 10:N0}  {needed.Count} files before the first page, compressed; at most {FirstLoadBudget:N0}");
    Console.WriteLine(
        $"{sizes.Sum(s => s.Size), 10:N0}  all {sizes.Count} files, with those that follow in the background (sheets, workbooks)"
    );
    if (total > FirstLoadBudget)
    {
        Console.WriteLine("The client is too large to fetch over a poor line. Find what grew in the list above.");
        return 1;
    }

    foreach (var context in (string[])["SqliteDb", "PostgresDb"])
    {
        Say($"Migrations of {context} match the model");
        if (
            await DotnetAsync([
                "ef",
                "migrations",
                "has-pending-model-changes",
                "--project",
                "src/Rinsewright.Server",
                "--context",
                context,
            ])
            is not 0
                and var pending
        )
        {
            return pending;
        }
    }

    return await LongTestsAsync();
}

// What takes too long for every check: the server killed two hundred times on each database, and many more histories of devices and office.
async Task<int> LongTestsAsync()
{
    var tally = new Tally();
    await using var postgres = await Postgres.StartAsync(stopping.Token);
    var variables = new Dictionary<string, string>(StringComparer.Ordinal)
    {
        ["RINSEWRIGHT_KILLS"] = "200",
        ["RINSEWRIGHT_HISTORIES"] = "100000",
    };
    if (postgres is not null)
    {
        variables["RINSEWRIGHT_TEST_POSTGRES"] = postgres.ConnectionString;
    }
    else
    {
        tally.Step(NoPostgres, 1);
    }

    Say("The server killed two hundred times while devices send, on each database");
    await TestAsync(["--project", "tests/Rinsewright.Server.Tests"], variables, tally, build: true, only: "*KillTests");
    Say("A hundred thousand histories of devices and office");
    await TestAsync(["--project", "tests/Rinsewright.Client.Tests"], variables, tally, build: true, only: "*SyncSimulationTests");
    tally.Print([]);
    return tally.Failed == 0 ? 0 : 1;
}

// Files the runtime fetches only when they are first needed, by its own list.
static HashSet<string> Late(string runtime)
{
    var config = runtime[
        runtime.IndexOf("/*json-start*/", StringComparison.Ordinal)..runtime.IndexOf("/*json-end*/", StringComparison.Ordinal)
    ];
    using var json = JsonDocument.Parse(config["/*json-start*/".Length..]);
    return json.RootElement.GetProperty("resources").TryGetProperty("lazyAssembly", out var late)
        ? [.. late.EnumerateArray().Select(a => a.GetProperty("name").GetString()!)]
        : [];
}

static long Compressed(string file) => new FileInfo(File.Exists(file + ".br") ? file + ".br" : file).Length;

async Task<int> PublishAsync()
{
    Say("Publish the server with its client to artifacts/site");
    if (Directory.Exists("artifacts/site"))
    {
        Directory.Delete("artifacts/site", recursive: true);
    }

    if (
        await DotnetAsync(["publish", "src/Rinsewright.Server", "-c", Configuration, "-o", "artifacts/site", "--nologo"])
        is not 0
            and var failed
    )
    {
        return failed;
    }

    Say("Publish the command line to artifacts/cli, compiled ahead for this platform");
    return await DotnetAsync(CompiledAhead("src/Rinsewright.Cli", "artifacts/cli"));
}

// The program that is measured is published just as the command line is.
Task<int> BenchAsync() =>
    Steps(
        () => DotnetAsync(CompiledAhead("bench/Rinsewright.Benchmarks", "artifacts/bench")),
        () =>
            Shell.RunAsync(
                Path.GetFullPath("artifacts/bench/Rinsewright.Benchmarks" + (OperatingSystem.IsWindows() ? ".exe" : "")),
                args[1..],
                stopping.Token
            )
    );

// Shorter at the start; the runtime still compiles again what runs often.
static string[] CompiledAhead(string project, string folder) =>
    [
        "publish",
        project,
        "-c",
        Configuration,
        "--use-current-runtime",
        "--no-self-contained",
        "-p:PublishReadyToRun=true",
        "-o",
        folder,
        "--nologo",
    ];

// A test that finds a golden file different leaves what it got under artifacts/received, at the same path; only this verb moves it into the tree.
async Task<int> AcceptAsync()
{
    const string received = "artifacts/received";
    if (Directory.Exists(received))
    {
        Directory.Delete(received, recursive: true);
    }

    var accepting = new Dictionary<string, string>(StringComparer.Ordinal) { ["RINSEWRIGHT_ACCEPT"] = "1" };
    await TestAsync(["--solution", Solution], accepting, new Tally(), build: true);
    var files = Directory.Exists(received) ? Directory.GetFiles(received, "*", SearchOption.AllDirectories) : [];
    foreach (var file in files)
    {
        var target = Path.GetRelativePath(received, file);
        Directory.CreateDirectory(Path.GetDirectoryName(Path.GetFullPath(target))!);
        File.Move(file, target, overwrite: true);
        Console.WriteLine($"accepted {target}");
    }

    Console.WriteLine(files.Length == 0 ? "Nothing to accept." : "Look at the differences before you commit them.");
    return 0;
}

static int Help()
{
    Console.WriteLine(
        """
        dotnet run build.cs -- check     format, build with warnings as errors, every test in two cultures and on two databases
        dotnet run build.cs -- verify    slow checks: size of the published client, migrations, 200 kills, 100,000 histories
        dotnet run build.cs -- bench     speed and memory; add --write to update docs/handbook/performance.md
        dotnet run build.cs -- publish   what a service installs, under artifacts/
        dotnet run build.cs -- accept    take over changed golden files and the public surface of the engine
        dotnet run build.cs -- format    bring the tree into the project's format
        """
    );
    return 64;
}

// ---- steps

Task<int> RestoreToolsAsync() => DotnetAsync(["tool", "restore"]);

async Task<int> DotnetAsync(string[] arguments) => await Shell.RunAsync("dotnet", arguments, stopping.Token);

static async Task<int> Steps(params Func<Task<int>>[] steps)
{
    foreach (var step in steps)
    {
        if (await step() is not 0 and var failed)
        {
            return failed;
        }
    }

    return 0;
}

async Task TestAsync(string[] what, Dictionary<string, string> variables, Tally tally, bool build = false, string? only = null)
{
    string[] arguments =
    [
        "test",
        .. what,
        "-c",
        Configuration,
        .. (build ? Array.Empty<string>() : ["--no-build"]),
        .. (only is null ? Array.Empty<string>() : ["--filter-class", only]),
    ];
    tally.BeginRun();
    var exit = await Shell.RunAsync("dotnet", arguments, stopping.Token, variables, tally.Read);
    tally.EndRun(string.Join(' ', what), exit);
}

void Say(string what) => Console.WriteLine($"{Environment.NewLine}== {what}");

static string ThisFile([CallerFilePath] string path = "") => path;
