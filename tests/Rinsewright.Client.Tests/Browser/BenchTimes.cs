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
    // Raises the first digit and puts it back, twelve times; each time until the page was drawn with other figures in the answer. The first field whose digit moves the answer is taken.
    private const string Type = """
        async () => {
          // The figures alone: working, curve and sensitivities wait until the typing rests.
          const answer = () => [...document.querySelectorAll(".bench-first, .bench-rest, .bench-note")].map((e) => e.textContent).join();
          const key = (field, text) => new Promise((done) => {
            const before = answer();
            const start = performance.now();
            const seen = new MutationObserver(() => {
              if (answer() !== before) { seen.disconnect(); requestAnimationFrame(() => done(performance.now() - start)); }
            });
            seen.observe(document.querySelector(".bench"), { subtree: true, childList: true, characterData: true });
            setTimeout(() => { seen.disconnect(); done(NaN); }, 1500);
            field.value = text;
            field.dispatchEvent(new Event("input", { bubbles: true }));
          });
          for (const field of [...document.querySelectorAll(".fields input")].filter((f) => /[1-9]/.test(f.value))) {
            const text = field.value;
            const other = text.replace(/[1-9]/, (d) => (d === "9" ? "8" : String(Number(d) + 1)));
            const times = [];
            for (let i = 0; i < 12; i++) {
              times.push(await key(field, i % 2 ? text : other));
              if (Number.isNaN(times[i])) { break; }
              await new Promise((done) => setTimeout(done, 400));
            }
            if (times.length === 12 && !times.some(Number.isNaN)) { return times; }
            await key(field, text);
          }
          return [];
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

            // What a probe shows is more than what the tap does.
            if (tool.Id == "conductivity")
            {
                await page.FillAsync("#bench-reading", "5000");
            }

            // A dose of acid is worked out only once chlorine is known to be gone.
            foreach (var choice in tool.Choices)
            {
                var select = page.Locator("#bench-" + choice.Id);
                if (await select.CountAsync() > 0 && await page.Locator(".bench-first").CountAsync() == 0)
                {
                    await select.SelectOptionAsync(choice.Options[^1]);
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
