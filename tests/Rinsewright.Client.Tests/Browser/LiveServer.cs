using System.Diagnostics;
using System.Net;
using System.Net.Sockets;
using Microsoft.AspNetCore.Builder;
using Microsoft.Data.Sqlite;
using Microsoft.Extensions.DependencyInjection;
using Rinsewright.Server.Demo;
using Rinsewright.Server.Hosting;
using Rinsewright.Server.Storage;
using Rinsewright.Tests.Shared;

namespace Rinsewright.Client.Tests.Browser;

/// <summary>The real server on a port of its own with an empty store; can be stopped and started again at the same address with the same data.</summary>
/// <param name="demo">With the invented service in it.</param>
public sealed class LiveServer(bool demo = false) : IAsyncDisposable
{
    private readonly string data = Directory.CreateTempSubdirectory("rinsewright-client-").FullName;
    private readonly int port = FreePort();
    private static readonly string? Published = Environment.GetEnvironmentVariable("RINSEWRIGHT_PUBLISHED") is { Length: > 0 } folder
        ? Path.Combine(Tree.Root, folder)
        : null; // folder of a published server, to run the flows on it
    private WebApplication? app;
    private Process? process;

    /// <summary>Where it listens.</summary>
    public string Address => $"http://127.0.0.1:{port}/";

    /// <summary>Starts it.</summary>
    public async Task StartAsync()
    {
        string[] settingsGiven =
        [
            $"--urls={Address}",
            $"--Rinsewright:Data={data}",
            $"--Rinsewright:Demo={(demo ? "true" : "false")}",
            "--environment=Production",
        ];
        if (Published is { } folder)
        {
            process = Process.Start(
                new ProcessStartInfo("dotnet", [Path.Combine(folder, "Rinsewright.Server.dll"), .. settingsGiven])
                {
                    WorkingDirectory = folder,
                }
            )!;
            await ListeningAsync();
            return;
        }

        app = ServerHost.Build(settingsGiven);
        var settings = app.Services.GetRequiredService<ServerSettings>();
        DataFolder.Make(settings);
        await StoreOpening.OpenAsync(app.Services, settings, CancellationToken.None);
        if (demo)
        {
            await using var scope = app.Services.CreateAsyncScope();
            await scope.ServiceProvider.GetRequiredService<DemoService>().SeedOnceAsync(CancellationToken.None);
        }

        await app.StartAsync();
    }

    /// <summary>Stops it: no signal.</summary>
    public async Task StopAsync()
    {
        if (process is not null)
        {
            process.Kill();
            await process.WaitForExitAsync();
            process = null;
        }

        if (app is not null)
        {
            await app.StopAsync();
            await app.DisposeAsync();
            app = null;
        }
    }

    /// <summary>Copies everything it keeps, while it is stopped.</summary>
    public void Copy()
    {
        SqliteConnection.ClearAllPools(); // a pooled connection holds the file that was there
        CopyFolder(data, data + "-copy");
    }

    /// <summary>Puts the copy in place of what it keeps, while it is stopped.</summary>
    public void Restore()
    {
        SqliteConnection.ClearAllPools();
        Directory.Delete(data, true);
        CopyFolder(data + "-copy", data);
    }

    /// <inheritdoc/>
    public async ValueTask DisposeAsync()
    {
        await StopAsync();
        try
        {
            Directory.Delete(data, true);
            if (Directory.Exists(data + "-copy"))
            {
                Directory.Delete(data + "-copy", true);
            }
        }
        catch (IOException)
        {
            // Left to the system's own cleaning.
        }
    }

    private static void CopyFolder(string from, string to)
    {
        foreach (var file in Directory.EnumerateFiles(from, "*", SearchOption.AllDirectories))
        {
            var target = Path.Combine(to, Path.GetRelativePath(from, file));
            Directory.CreateDirectory(Path.GetDirectoryName(target)!);
            File.Copy(file, target, overwrite: true);
        }
    }

    private async Task ListeningAsync()
    {
        for (var tries = 0; ; tries++)
        {
            try
            {
                using var client = new TcpClient();
                await client.ConnectAsync(IPAddress.Loopback, port);
                return;
            }
            catch (SocketException) when (tries < 150)
            {
                await Task.Delay(200);
            }
        }
    }

    private static int FreePort()
    {
        using var listener = new TcpListener(IPAddress.Loopback, 0);
        listener.Start();
        return ((IPEndPoint)listener.LocalEndpoint).Port;
    }
}
