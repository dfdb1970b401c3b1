using System.Globalization;
using Microsoft.Playwright;
using Xunit;

namespace Rinsewright.Client.Tests.Browser;

/// <summary>
/// How long the day takes to show in a browser that has just started, and how long the search of kitchens takes, with a large service on the device and a processor slowed four times. Not a test: run it
/// by hand on a published server with
/// <c>RINSEWRIGHT_PUBLISHED=artifacts/site dotnet run --project tests/Rinsewright.Client.Tests -- -explicit only -class "*DayTimes"</c>.
/// </summary>
[Collection("Browser")]
public sealed class DayTimes(BrowserFixture fixture)
{
    private const int Starts = 5;
    private const int SearchStarts = 3;
    private const int DocumentsAtOnce = 500;

    // From the start of the navigation to the first page drawn with the day on it; also when other parts of the start were reached.
    private const string Watch = """
        const drawn = (selector) => new Promise((done) => {
          const seen = new MutationObserver(() => {
            if (document.querySelector(selector)) {
              seen.disconnect();
              requestAnimationFrame(() => done(performance.now()));
            }
          });
          seen.observe(document, { subtree: true, childList: true });
        });
        globalThis.kept = drawn("#first .saved-list");
        globalThis.shown = drawn("#due, #failed, #nothing, #kitchen-list");
        """;

    private const string Fill = """
        async (documents) => {
          const store = await import("./js/store.js");
          const cursor = (await store.mark("cursor")) ?? "";
          await store.takeOver(documents, cursor, cursor);
        }
        """;

    // The field is touched, as by a person, and then each key from the event to the page drawn with what was found, which is never what was found before.
    private const string Type = """
        async (texts) => {
          const field = document.getElementById("search");
          const list = () => document.querySelector(".note[role=status]").textContent + document.getElementById("kitchen-list").textContent;
          const times = [];
          field.focus();
          await new Promise((done) => setTimeout(done, 300));
          for (const text of texts) {
            const before = list();
            const start = performance.now();
            const drawn = new Promise((done) => {
              const seen = new MutationObserver(() => { if (list() !== before) { seen.disconnect(); requestAnimationFrame(() => done(performance.now() - start)); } });
              seen.observe(document.querySelector("main"), { subtree: true, childList: true, characterData: true, attributes: true });
              setTimeout(() => { seen.disconnect(); done(NaN); }, 5000);
            });
            field.value = text;
            field.dispatchEvent(new Event("input", { bubbles: true }));
            times.push(await drawn);
            await new Promise((done) => setTimeout(done, 300));
          }
          return times;
        }
        """;

    private static readonly string[] Searches =
    [
        "hos",
        "hospital",
        "",
        "hospitl",
        "chapel str",
        "flight",
        "harbor",
        "lodge 12",
        "Bonda",
        "",
    ];

    /// <summary>Prints the times with nothing on the device and with 2,000 machines and 20,000 visits.</summary>
    [Theory(Explicit = true)]
    [InlineData(false)]
    [InlineData(true)]
    public async Task Day(bool filled)
    {
        var server = await fixture.ServerAsync();
        using var playwright = await Playwright.CreateAsync();
        var folder = Directory.CreateTempSubdirectory("rinsewright-day-");
        try
        {
            await FillAsync(playwright, folder.FullName, server.Address, filled);
            foreach (var slowed in new[] { 1, 4 })
            {
                List<double> kept = [],
                    times = [];
                for (var i = 0; i < Starts; i++)
                {
                    await using var context = await OpenAsync(playwright, folder.FullName);
                    times.Add(await StartAsync(context, server.Address, "day", slowed));
                    if (filled)
                    {
                        kept.Add(await context.Pages[^1].EvaluateAsync<double>("globalThis.kept"));
                    }
                }

                Say($"Day, {(filled ? "filled" : "empty")}, read anew", slowed, times);
                if (filled)
                {
                    Say("Day, filled, as kept", slowed, kept);
                }
            }
        }
        finally
        {
            folder.Delete(recursive: true);
        }
    }

    /// <summary>Prints the time of each key in the search of kitchens, with 2,000 machines and 20,000 visits, the first of them right after a start.</summary>
    [Fact(Explicit = true)]
    public async Task Search()
    {
        var server = await fixture.ServerAsync();
        using var playwright = await Playwright.CreateAsync();
        var folder = Directory.CreateTempSubdirectory("rinsewright-search-");
        try
        {
            await FillAsync(playwright, folder.FullName, server.Address, filled: true);
            for (var start = 0; start < SearchStarts; start++)
            {
                await using var context = await OpenAsync(playwright, folder.FullName);
                Say("Kitchens", 4, [await StartAsync(context, server.Address, "kitchens", 4)]);
                await context.Pages[^1].WaitForTimeoutAsync(3000);
                for (var round = 0; round < 2; round++)
                {
                    var times = await context.Pages[^1].EvaluateAsync<double[]>(Type, Searches);
                    Say(
                        $"start {start + 1}, round {round + 1}: " + string.Join(", ", times.Select((t, n) => $"'{Searches[n]}' {t:0}")),
                        4,
                        times
                    );
                }
            }
        }
        finally
        {
            folder.Delete(recursive: true);
        }
    }

    private static async Task FillAsync(IPlaywright playwright, string folder, string address, bool filled)
    {
        await using (var context = await OpenAsync(playwright, folder))
        {
            var screen = await Screen.OpenAsync(context, address, "day");
            await screen.KeptAsync();
            if (filled)
            {
                foreach (var part in new InventedService().Documents().Chunk(DocumentsAtOnce))
                {
                    await screen.Page.EvaluateAsync(Fill, part);
                }
            }

            // Compiled code is kept by the browser from the second visit on.
            await screen.GoAsync("day");
            await screen.Page.Locator("#due, #failed, #nothing").First.WaitForAsync();
            await screen.Page.WaitForTimeoutAsync(3000);
        }
    }

    private static async Task<double> StartAsync(IBrowserContext context, string address, string path, int slowed)
    {
        var page = await context.NewPageAsync();
        page.SetDefaultTimeout(120000);
        var devTools = await context.NewCDPSessionAsync(page);
        await page.AddInitScriptAsync(Watch);
        await devTools.SendAsync("Emulation.setCPUThrottlingRate", new Dictionary<string, object> { ["rate"] = slowed });
        await page.GotoAsync(address + path);
        return await page.EvaluateAsync<double>("globalThis.shown");
    }

    private static void Say(string what, int slowed, IReadOnlyList<double> times)
    {
        var sorted = times.Order().ToArray();
        TestContext.Current.TestOutputHelper!.WriteLine(
            string.Create(
                CultureInfo.InvariantCulture,
                $"{what}, processor slowed {slowed}x: middle {sorted[sorted.Length / 2]:0} ms, worst {sorted[^1]:0} ms of {sorted.Length}"
            )
        );
    }

    // With a folder of its own, as a person's browser has: what is kept lies on the disk, and the browser itself is started anew each time.
    private static Task<IBrowserContext> OpenAsync(IPlaywright playwright, string folder) =>
        playwright.Chromium.LaunchPersistentContextAsync(
            folder,
            new BrowserTypeLaunchPersistentContextOptions
            {
                ExecutablePath = Environment.GetEnvironmentVariable("RINSEWRIGHT_BROWSER") ?? "/usr/bin/chromium",
                Args = ["--no-sandbox", "--disable-gpu", "--disable-quic", "--no-first-run", "--disable-background-networking"],
                ViewportSize = BrowserFixture.Phone,
                Locale = "en-US",
                ReducedMotion = ReducedMotion.Reduce,
                ServiceWorkers = ServiceWorkerPolicy.Allow,
            }
        );
}
