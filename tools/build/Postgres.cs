using System.Net;
using System.Net.Sockets;

namespace Rinsewright.Build;

/// <summary>A PostgreSQL of its own for one run of the tests: private folder, private port, thrown away afterwards.</summary>
internal sealed class Postgres : IAsyncDisposable
{
    private readonly string folder;
    private readonly string programs;

    private Postgres(string folder, string programs, int port)
    {
        this.folder = folder;
        this.programs = programs;
        ConnectionString = $"Host=127.0.0.1;Port={port};Username=rinsewright;Database=postgres";
    }

    public string ConnectionString { get; }

    public static async Task<Postgres?> StartAsync(CancellationToken ct)
    {
        var found = FindPrograms();
        if (found is null && Shell.IsRootOnDebian && await Shell.InstallAsync("postgresql", ct))
        {
            found = FindPrograms();
        }

        if (found is null)
        {
            Console.WriteLine("PostgreSQL: none found");
            return null;
        }

        var home = Directory.CreateTempSubdirectory("rinsewright-postgres-").FullName;
        var port = FreePort();
        var server = new Postgres(home, found, port);
        var data = Path.Combine(home, "data");
        // A few seconds that are not broken off: a half-started server could not be found again to be ended.
        var unstopped = CancellationToken.None;
        // The server refuses to run as root, so root hands the folder to the account that the package made.
        var ready =
            (Environment.UserName != "root" || await Shell.RunAsync("chown", ["postgres", home], unstopped, quiet: true) == 0)
            && await server.RunAsync("initdb", ["-D", data, "-U", "rinsewright", "-A", "trust", "-E", "UTF8", "--no-sync"], unstopped) == 0
            && await server.RunAsync(
                "pg_ctl",
                [
                    "-D",
                    data,
                    "-w",
                    "-l",
                    Path.Combine(home, "log"),
                    "-o",
                    $"-p {port} -k \"{home}\" -c listen_addresses=127.0.0.1 -c fsync=off",
                    "start",
                ],
                unstopped
            ) == 0;
        if (!ready)
        {
            Console.WriteLine($"PostgreSQL: found in {found} but did not start");
            await server.DisposeAsync();
            return null;
        }

        Console.WriteLine($"PostgreSQL: {found}, port {port}");
        return server;
    }

    public async ValueTask DisposeAsync()
    {
        await RunAsync("pg_ctl", ["-D", Path.Combine(folder, "data"), "-m", "immediate", "stop"], CancellationToken.None);
        Directory.Delete(folder, recursive: true);
    }

    private Task<int> RunAsync(string program, string[] arguments, CancellationToken ct)
    {
        var path = Path.Combine(programs, program);
        return Environment.UserName == "root"
            ? Shell.RunAsync("runuser", ["-u", "postgres", "--", path, .. arguments], ct, quiet: true)
            : Shell.RunAsync(path, arguments, ct, quiet: true);
    }

    private static string? FindPrograms()
    {
        var debian = Directory.Exists("/usr/lib/postgresql")
            ? Directory.GetDirectories("/usr/lib/postgresql").OrderDescending(StringComparer.Ordinal).Select(d => Path.Combine(d, "bin"))
            : [];
        var path = (Environment.GetEnvironmentVariable("PATH") ?? "").Split(Path.PathSeparator);
        var suffix = OperatingSystem.IsWindows() ? ".exe" : "";
        return debian.Concat(path).FirstOrDefault(d => File.Exists(Path.Combine(d, "initdb" + suffix)));
    }

    private static int FreePort()
    {
        using var listener = new TcpListener(IPAddress.Loopback, 0);
        listener.Start();
        return ((IPEndPoint)listener.LocalEndpoint).Port;
    }
}
