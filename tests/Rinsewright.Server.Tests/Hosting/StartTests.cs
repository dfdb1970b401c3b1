using System.Diagnostics;
using System.Net;
using System.Net.Http.Json;
using System.Net.Sockets;

namespace Rinsewright.Server.Tests.Hosting;

/// <summary>The program itself, as a person starts it.</summary>
public sealed class StartTests : IDisposable
{
    private readonly string folder = Path.Combine(Path.GetTempPath(), $"rinsewright-{Guid.CreateVersion7():n}");

    [Theory]
    [InlineData("http://0.0.0.0:0", "en_US.UTF-8", "nobody has to sign in yet")]
    [InlineData("http://*:0", "es_MX.UTF-8", "nadie tiene que identificarse")]
    public async Task Open_address_is_refused_with_the_reason_and_the_way(string address, string language, string reason)
    {
        var (status, _, errors) = await RunAsync(language, "--urls", address);
        Assert.Equal(78, status);
        Assert.Contains(reason, errors, StringComparison.Ordinal);
        Assert.Contains("Rinsewright:AllowOpenNetwork=true", errors, StringComparison.Ordinal);
        Assert.Contains("docs/handbook/server.md", errors, StringComparison.Ordinal);
        Assert.False(Directory.Exists(folder));
    }

    [Fact]
    public async Task Taken_address_is_said_without_a_stack_trace()
    {
        using var taken = new TcpListener(IPAddress.Loopback, 0);
        taken.Start();
        var (status, output, errors) = await RunAsync("en", "--urls", $"http://{taken.LocalEndpoint}");
        Assert.Equal(78, status);
        Assert.Contains($"http://{taken.LocalEndpoint} is in use", errors, StringComparison.Ordinal);
        Assert.DoesNotContain("   at ", output + errors, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Data_folder_that_cannot_be_made_is_named()
    {
        await File.WriteAllTextAsync(folder, "in the way", TestContext.Current.CancellationToken);
        var (status, _, errors) = await RunAsync("en", "--urls", "http://127.0.0.1:0");
        Assert.Equal(78, status);
        Assert.Contains(folder, errors, StringComparison.Ordinal);
        Assert.Contains("--Rinsewright:Data", errors, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Database_that_does_not_answer_is_said_without_its_password()
    {
        var (status, _, errors) = await RunAsync(
            "en",
            "--urls",
            "http://127.0.0.1:0",
            "--Rinsewright:Database=Host=127.0.0.1;Port=1;Username=u;Password=hush"
        );
        Assert.Equal(78, status);
        Assert.Contains("Rinsewright:Database", errors, StringComparison.Ordinal);
        Assert.DoesNotContain("hush", errors, StringComparison.Ordinal);
    }

    [Theory, InlineData(Database.Sqlite), InlineData(Database.Postgres)]
    public async Task Start_prints_where_it_runs_and_where_the_data_is(Database database)
    {
        await using var postgres = database == Database.Postgres ? await OwnPostgres.MakeAsync() : null;
        using var process = Start("en", [.. At(postgres), "--urls", "http://127.0.0.1:0"]);
        try
        {
            var line = await process.StandardOutput.ReadLineAsync(TestContext.Current.CancellationToken);
            Assert.Matches(@"^Rinsewright is running at http://127\.0\.0\.1:\d+$", line);
            var data = postgres is null ? folder : "PostgreSQL, " + Path.Combine(folder, "files");
            Assert.Equal("Data: " + data, await process.StandardOutput.ReadLineAsync(TestContext.Current.CancellationToken));
            if (!OperatingSystem.IsWindows())
            {
                Assert.Equal(UnixFileMode.UserRead | UnixFileMode.UserWrite | UnixFileMode.UserExecute, File.GetUnixFileMode(folder));
            }
        }
        finally
        {
            process.Kill();
            await process.WaitForExitAsync(TestContext.Current.CancellationToken);
        }
    }

    [Theory, InlineData(Database.Sqlite), InlineData(Database.Postgres)]
    public async Task Whoever_runs_the_server_gets_a_link_for_an_account_of_the_office_that_works_once(Database database)
    {
        await using var postgres = database == Database.Postgres ? await OwnPostgres.MakeAsync() : null;
        using var process = Start("en", [.. At(postgres), "--urls", "http://127.0.0.1:0", "--Rinsewright:InviteOffice=true"]);
        try
        {
            string? line;
            string? address = null;
            do
            {
                line = await process.StandardOutput.ReadLineAsync(TestContext.Current.CancellationToken);
                address = line?.StartsWith("Rinsewright is running at ", StringComparison.Ordinal) is true ? line.Split(' ')[^1] : address;
            } while (line is not null && !line.Contains("/accept#", StringComparison.Ordinal));

            Assert.StartsWith(address + "/accept#", line, StringComparison.Ordinal);
            using var client = new HttpClient { BaseAddress = new Uri(address!) };
            var acceptance = new Contracts.Accounts.Acceptance(line!.Split('#')[1], "Odile Marsh", "four plates and a rack");
            foreach (var expected in new[] { HttpStatusCode.OK, HttpStatusCode.NotFound })
            {
                using var answer = await client.PostAsJsonAsync(
                    "api/invitations/accept",
                    acceptance,
                    TestContext.Current.CancellationToken
                );
                Assert.Equal(expected, answer.StatusCode);
            }

            Assert.Contains(
                "\"office\"",
                await client.GetStringAsync("api/me", TestContext.Current.CancellationToken),
                StringComparison.Ordinal
            );
        }
        finally
        {
            process.Kill();
            await process.WaitForExitAsync(TestContext.Current.CancellationToken);
        }
    }

    /// <summary>Removes the data folder.</summary>
    public void Dispose()
    {
        if (Directory.Exists(folder))
        {
            Directory.Delete(folder, recursive: true);
        }
        else
        {
            File.Delete(folder);
        }
    }

    private static IEnumerable<string> At(OwnPostgres? postgres) =>
        postgres is null ? [] : ["--Rinsewright:Database=" + postgres.Connection];

    private async Task<(int Status, string Output, string Errors)> RunAsync(string language, params string[] arguments)
    {
        using var process = Start(language, arguments);
        var output = process.StandardOutput.ReadToEndAsync(TestContext.Current.CancellationToken);
        var errors = process.StandardError.ReadToEndAsync(TestContext.Current.CancellationToken);
        await process.WaitForExitAsync(TestContext.Current.CancellationToken);
        return (process.ExitCode, await output, await errors);
    }

    private Process Start(string language, params string[] arguments)
    {
        var start = new ProcessStartInfo(Environment.ProcessPath is { } p && Path.GetFileNameWithoutExtension(p) == "dotnet" ? p : "dotnet")
        {
            UseShellExecute = false,
            RedirectStandardOutput = true,
            RedirectStandardError = true,
            WorkingDirectory = Path.GetTempPath(),
        };
        start.ArgumentList.Add(typeof(Program).Assembly.Location);
        foreach (var argument in arguments.Append("--Rinsewright:Demo=false").Append("--Rinsewright:Data=" + folder))
        {
            start.ArgumentList.Add(argument);
        }

        start.Environment["LANG"] = language;
        return Process.Start(start)!;
    }
}
