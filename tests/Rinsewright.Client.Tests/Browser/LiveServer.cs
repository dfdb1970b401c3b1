using System.Net;
using System.Net.Sockets;
using Microsoft.AspNetCore.Builder;
using Microsoft.Extensions.DependencyInjection;
using Rinsewright.Server.Hosting;
using Rinsewright.Server.Storage;

namespace Rinsewright.Client.Tests.Browser;

/// <summary>The real server on a port of its own with an empty store; can be stopped and started again at the same address with the same data.</summary>
public sealed class LiveServer : IAsyncDisposable
{
    private readonly string data = Directory.CreateTempSubdirectory("rinsewright-client-").FullName;
    private readonly int port = FreePort();
    private WebApplication? app;

    /// <summary>Where it listens.</summary>
    public string Address => $"http://127.0.0.1:{port}/";

    /// <summary>Starts it.</summary>
    public async Task StartAsync()
    {
        app = ServerHost.Build([$"--urls={Address}", $"--Rinsewright:Data={data}", "--Rinsewright:Demo=false", "--environment=Production"]);
        var settings = app.Services.GetRequiredService<ServerSettings>();
        DataFolder.Make(settings);
        await StoreOpening.OpenAsync(app.Services, settings, CancellationToken.None);
        await app.StartAsync();
    }

    /// <summary>Stops it: no signal.</summary>
    public async Task StopAsync()
    {
        if (app is not null)
        {
            await app.StopAsync();
            await app.DisposeAsync();
            app = null;
        }
    }

    /// <inheritdoc/>
    public async ValueTask DisposeAsync()
    {
        await StopAsync();
        try
        {
            Directory.Delete(data, true);
        }
        catch (IOException)
        {
            // Left to the system's own cleaning.
        }
    }

    private static int FreePort()
    {
        using var listener = new TcpListener(IPAddress.Loopback, 0);
        listener.Start();
        return ((IPEndPoint)listener.LocalEndpoint).Port;
    }
}
