using System.Globalization;
using Rinsewright.Engine.Bench;
using Xunit;

namespace Rinsewright.Client.Tests.Browser;

/// <summary>
/// How long a sum takes on the screen, from a keystroke to the figures, on a processor slowed four times. Not a test: run it by hand on a published server with
/// <c>RINSEWRIGHT_PUBLISHED=artifacts/site dotnet run --project tests/Rinsewright.Client.Tests -- -explicit only -class "*BenchTimes"</c>.
/// </summary>
[Collection("Browser")]
public sealed class BenchTimes(BrowserFixture fixture)
{
    // Deletes the last character and types it again, twelve times; each time until the page was drawn with what came of it.
    private const string Type = """
        async () => {
          const field = [...document.querySelectorAll(".fields input")].find((f) => f.value.length > 0) ?? document.querySelector(".fields input");
          const text = field.value;
          const times = [];
          for (let i = 0; i < 12; i++) {
            const page = document.querySelector(".bench");
            const changed = new Promise((done) => {
              const seen = new MutationObserver(() => { seen.disconnect(); requestAnimationFrame(() => done(performance.now())); });
              seen.observe(page, { subtree: true, childList: true, characterData: true, attributes: true });
              setTimeout(() => done(NaN), 1500);
            });
            const start = performance.now();
            field.value = i % 2 ? text : text + "1";
            field.dispatchEvent(new Event("input", { bubbles: true }));
            times.push((await changed) - start);
            await new Promise((done) => setTimeout(done, 200));
          }
          return times.filter((t) => !Number.isNaN(t));
        }
        """;

    /// <summary>Prints the times of each sum.</summary>
    [Fact(Explicit = true)]
    public async Task Keystroke()
    {
        var server = await fixture.ServerAsync();
        await using var context = await fixture.ContextAsync(BrowserFixture.Phone);
        var screen = await Screen.OpenAsync(context, server.Address, "bench");
        var page = screen.Page;
        var devTools = await context.NewCDPSessionAsync(page);
        foreach (var tool in BenchTools.All)
        {
            await devTools.SendAsync("Emulation.setCPUThrottlingRate", new Dictionary<string, object> { ["rate"] = 1 });
            await screen.GoAsync("bench/" + tool.Id);
            await page.Locator(".bench .fields input").First.WaitForAsync();
            foreach (var field in tool.Fields.Where(f => f is { Optional: false, Usual: null }))
            {
                var middle = Math.Sqrt(Math.Max(field.Low, 1e-3) * field.High).ToString("0.####", CultureInfo.InvariantCulture);
                if (await page.Locator("#bench-" + field.Id).CountAsync() > 0)
                {
                    await page.FillAsync("#bench-" + field.Id, $"{middle} {field.Unit.Symbol}");
                }
            }

            await page.WaitForTimeoutAsync(500);
            await devTools.SendAsync("Emulation.setCPUThrottlingRate", new Dictionary<string, object> { ["rate"] = 4 });
            var times = (await page.EvaluateAsync<double[]>(Type)).Skip(4).Order().ToArray();
            TestContext.Current.TestOutputHelper!.WriteLine(
                times.Length == 0
                    ? $"{tool.Id}: nothing changed"
                    : string.Create(
                        CultureInfo.InvariantCulture,
                        $"{tool.Id}, processor slowed 4x: middle {times[times.Length / 2]:0} ms, worst {times[^1]:0} ms of {times.Length}"
                    )
            );
        }
    }
}
