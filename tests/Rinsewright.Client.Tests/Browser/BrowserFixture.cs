using Microsoft.Playwright;
using Rinsewright.Client.Tests.Browser;
using Xunit;

[assembly: AssemblyFixture(typeof(BrowserFixture))]

namespace Rinsewright.Client.Tests.Browser;

/// <summary>One server and one browser for all flows that leave the server running.</summary>
public sealed class BrowserFixture : IAsyncLifetime
{
    private readonly SemaphoreSlim starting = new(1, 1);
    private IPlaywright? playwright;
    private IBrowser? browser;
    private LiveServer? server;

    /// <summary>A phone held upright.</summary>
    public static ViewportSize Phone { get; } = new() { Width = 390, Height = 844 };

    /// <summary>A desk.</summary>
    public static ViewportSize Desk { get; } = new() { Width = 1280, Height = 800 };

    /// <inheritdoc/>
    public ValueTask InitializeAsync() => ValueTask.CompletedTask;

    /// <summary>The shared server.</summary>
    public async Task<LiveServer> ServerAsync()
    {
        await StartAsync();
        return server!;
    }

    /// <summary>A browser with nothing remembered.</summary>
    public async Task<IBrowserContext> ContextAsync(ViewportSize size, string language = "en", ColorScheme theme = ColorScheme.Light)
    {
        await StartAsync();
        return await browser!.NewContextAsync(
            new BrowserNewContextOptions
            {
                ViewportSize = size,
                Locale = language == "es" ? "es-MX" : "en-US",
                ColorScheme = theme,
                HasTouch = size.Width < 600,
                AcceptDownloads = true,
                ReducedMotion = ReducedMotion.Reduce,
                ServiceWorkers = ServiceWorkerPolicy.Allow,
                TimezoneId = "America/Denver",
            }
        );
    }

    /// <inheritdoc/>
    public async ValueTask DisposeAsync()
    {
        if (browser is not null)
        {
            await browser.DisposeAsync();
        }

        playwright?.Dispose();
        if (server is not null)
        {
            await server.DisposeAsync();
        }

        starting.Dispose();
    }

    private async Task StartAsync()
    {
        await starting.WaitAsync();
        try
        {
            if (browser is not null)
            {
                return;
            }

            Assertions.SetDefaultExpectTimeout(120000); // two runtimes start at once on a busy machine
            server = new LiveServer();
            await server.StartAsync();
            playwright = await Playwright.CreateAsync();
            browser = await playwright.Chromium.LaunchAsync(
                new BrowserTypeLaunchOptions
                {
                    ExecutablePath = Environment.GetEnvironmentVariable("RINSEWRIGHT_BROWSER") ?? "/usr/bin/chromium",
                    Args =
                    [
                        "--no-sandbox",
                        "--disable-gpu",
                        "--disable-quic",
                        "--no-first-run",
                        "--disable-background-networking",
                        "--disable-component-update",
                        "--disable-sync",
                    ],
                }
            );
        }
        finally
        {
            starting.Release();
        }
    }
}
