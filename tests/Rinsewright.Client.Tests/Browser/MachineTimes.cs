using System.Globalization;
using Rinsewright.Engine.Machines;
using Xunit;

namespace Rinsewright.Client.Tests.Browser;

/// <summary>
/// How long a what-if takes on the screen, from a slider's move to the figures, on a processor slowed four times. Not a test: run it by hand on a published server with
/// <c>RINSEWRIGHT_PUBLISHED=artifacts/site dotnet run --project tests/Rinsewright.Client.Tests -- -explicit only -class "*MachineTimes"</c>.
/// </summary>
[Collection("Browser")]
public sealed class MachineTimes(BrowserFixture fixture)
{
    private const string Move = """
        async ([id, values]) => {
          const slider = document.getElementById(id);
          const times = [];
          for (const value of values) {
            const result = document.getElementById("what-if-result");
            const changed = new Promise((done) => {
              const seen = new MutationObserver(() => { seen.disconnect(); requestAnimationFrame(() => done(performance.now())); });
              seen.observe(result, { subtree: true, childList: true, characterData: true, attributes: true });
            });
            const start = performance.now();
            slider.value = value;
            slider.dispatchEvent(new Event("input", { bubbles: true }));
            times.push((await changed) - start);
            await new Promise((done) => setTimeout(done, 400));
          }
          return times;
        }
        """;

    /// <summary>Prints the times of each kind of machine.</summary>
    [Theory(Explicit = true)]
    [InlineData(MachineKind.RackConveyorTwoTank)]
    [InlineData(MachineKind.RackConveyorThreeTank)]
    [InlineData(MachineKind.DoorHotWater)]
    [InlineData(MachineKind.Undercounter)]
    public async Task What_if(MachineKind kind)
    {
        var server = await fixture.ServerAsync();
        await using var context = await fixture.ContextAsync(BrowserFixture.Phone);
        var screen = await Screen.OpenAsync(context, server.Address, "machine");
        var page = screen.Page;
        await page.SelectOptionAsync("#machine-kind", kind.ToString());
        await page.Locator("#new-machine button").ClickAsync();
        await page.Locator("#plate").WaitForAsync();
        await page.Locator(".tabs input[value=what-if]").CheckAsync();
        await page.Locator("#what-if-result table").WaitForAsync();
        var devTools = await context.NewCDPSessionAsync(page);
        foreach (var slowed in new[] { 1, 4 })
        {
            await devTools.SendAsync("Emulation.setCPUThrottlingRate", new Dictionary<string, object> { ["rate"] = slowed });
            var values = Enumerable.Range(0, 12).Select(i => (130 - i).ToString(CultureInfo.InvariantCulture)).ToArray();
            var times = (await page.EvaluateAsync<double[]>(Move, new object[] { "knob-water", values })).Skip(4).Order().ToArray();
            TestContext.Current.TestOutputHelper!.WriteLine(
                string.Create(
                    CultureInfo.InvariantCulture,
                    $"{kind}, processor slowed {slowed}x: middle {times[times.Length / 2]:0} ms, worst {times[^1]:0} ms of {times.Length}"
                )
            );
        }
    }
}
