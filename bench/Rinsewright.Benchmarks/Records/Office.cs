using System.Diagnostics;
using System.Net;
using System.Net.Http.Json;
using System.Net.Sockets;
using System.Text;
using System.Text.Encodings.Web;
using System.Text.Json;
using Npgsql;
using Rinsewright.Contracts;
using Rinsewright.Contracts.Records;

namespace Rinsewright.Benchmarks.Records;

/// <summary>A published server in a process of its own with an empty store of its own.</summary>
internal sealed class Office : IAsyncDisposable
{
    private static readonly ContractsJson AsBrowser = new(
        new JsonSerializerOptions(ContractsJson.Default.Options) { Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping }
    );

    private readonly Process process;

    private Office(Process process, Uri address, string data)
    {
        this.process = process;
        Address = address;
        Data = data;
    }

    /// <summary>Where it listens.</summary>
    public Uri Address { get; }

    /// <summary>Its data folder.</summary>
    public string Data { get; }

    /// <summary>The published server; null where there is none.</summary>
    public static string? Published()
    {
        var folder = Environment.GetEnvironmentVariable("RINSEWRIGHT_PUBLISHED") ?? Path.Combine("artifacts", "site");
        var file = Path.Combine(BenchOptions.Root(), folder, "Rinsewright.Server.dll");
        return File.Exists(file) ? file : null;
    }

    /// <summary>Starts it on a folder and, where one is given, a PostgreSQL database.</summary>
    public static async Task<Office> StartAsync(string data, string? postgres)
    {
        var file = Published()!;
        var address = new Uri($"http://127.0.0.1:{FreePort()}/");
        var start = new ProcessStartInfo(
            "dotnet",
            [
                file,
                $"--urls={address}",
                $"--Rinsewright:Data={data}",
                "--Rinsewright:Demo=false",
                "--environment=Production",
                .. postgres is null ? Array.Empty<string>() : [$"--Rinsewright:Database={postgres}"],
            ]
        )
        {
            WorkingDirectory = Path.GetDirectoryName(file)!,
            RedirectStandardOutput = true,
            UseShellExecute = false,
        };
        var started = Process.Start(start)!;
        started.OutputDataReceived += (_, _) => { };
        started.BeginOutputReadLine();
        using var client = new HttpClient { BaseAddress = address };
        for (var left = 600; ; left--)
        {
            try
            {
                using var answer = await client.GetAsync(new Uri("api/changes", UriKind.Relative));
                answer.EnsureSuccessStatusCode();
                return new Office(started, address, data);
            }
            catch (HttpRequestException) when (left > 0 && !started.HasExited)
            {
                await Task.Delay(100);
            }
        }
    }

    /// <summary>A client that comes from an address of its own, as every device does: the server counts requests by address.</summary>
    /// <param name="number">Which, from 0 to 60,000.</param>
    public HttpClient Client(int number)
    {
        var from = new IPAddress([127, 1, (byte)(number / 250), (byte)((number % 250) + 2)]);
        var handler = new SocketsHttpHandler
        {
            PooledConnectionIdleTimeout = TimeSpan.FromMinutes(10),
            ConnectCallback = async (context, ct) =>
            {
                var socket = new Socket(SocketType.Stream, ProtocolType.Tcp) { NoDelay = true };
                socket.Bind(new IPEndPoint(from, 0));
                await socket.ConnectAsync(IPAddress.Loopback, context.DnsEndPoint.Port, ct);
                return new NetworkStream(socket, ownsSocket: true);
            },
        };
        return new HttpClient(handler) { BaseAddress = Address };
    }

    /// <inheritdoc/>
    public async ValueTask DisposeAsync()
    {
        process.Kill();
        await process.WaitForExitAsync();
        process.Dispose();
    }

    /// <summary>An operation as a browser writes it.</summary>
    public static string Text(Operation operation) => JsonSerializer.Serialize(operation, AsBrowser.Operation);

    /// <summary>Sends a list of operations; the place they have in the list of changes.</summary>
    /// <exception cref="InvalidOperationException">Any of them was not taken in.</exception>
    public static async Task<string?> SendAsync(HttpClient client, string operations)
    {
        using var content = new StringContent(operations, Encoding.UTF8, "application/json");
        using var answer = await client.PostAsync(new Uri("api/operations", UriKind.Relative), content);
        answer.EnsureSuccessStatusCode();
        var results = await answer.Content.ReadFromJsonAsync(ContractsJson.Default.OperationResults);
        return results!.Results.All(r => r is { Outcome: "applied" or "superseded", Repeated: false }) && results.Results.Count > 0
            ? results.Place
            : throw new InvalidOperationException("An operation was not taken in.");
    }

    /// <summary>What changed after a cursor, one page.</summary>
    public static async Task<Changes> ChangesAsync(HttpClient client, string cursor, string seen) =>
        (
            await client.GetFromJsonAsync(
                $"api/changes?after={Uri.EscapeDataString(cursor)}&seen={Uri.EscapeDataString(seen)}",
                ContractsJson.Default.Changes
            )
        )!;

    private static int FreePort()
    {
        using var listener = new TcpListener(IPAddress.Loopback, 0);
        listener.Start();
        return ((IPEndPoint)listener.LocalEndpoint).Port;
    }
}

/// <summary>A PostgreSQL database of its own, dropped afterwards.</summary>
internal sealed class OwnDatabase : IAsyncDisposable
{
    private readonly string server;
    private readonly string name = $"rinsewright_bench_{Guid.CreateVersion7():n}";

    private OwnDatabase(string server) => this.server = server;

    /// <summary>Connection string of a PostgreSQL server where databases may be made; null where none is given.</summary>
    public static string? Server { get; } =
        Environment.GetEnvironmentVariable("RINSEWRIGHT_TEST_POSTGRES") is { Length: > 0 } given ? given : null;

    /// <summary>Its connection string.</summary>
    public string Connection => new NpgsqlConnectionStringBuilder(server) { Database = name }.ToString();

    /// <summary>Makes it.</summary>
    public static async Task<OwnDatabase> MakeAsync(string server)
    {
        var database = new OwnDatabase(server);
        await database.RunAsync($"create database {database.name}");
        return database;
    }

    /// <inheritdoc/>
    public async ValueTask DisposeAsync()
    {
        NpgsqlConnection.ClearAllPools();
        await RunAsync($"drop database if exists {name} with (force)");
    }

    private async Task RunAsync(string sql)
    {
        var connection = new NpgsqlConnectionStringBuilder(server) { Database = "postgres", Pooling = false }.ToString();
        await using var source = NpgsqlDataSource.Create(connection);
        await using var command = source.CreateCommand(sql);
        await command.ExecuteNonQueryAsync();
    }
}
