using Microsoft.Playwright;
using Rinsewright.Files.Demo;
using Xunit;

namespace Rinsewright.Client.Tests.Browser;

/// <summary>What is on the ware and a logger that rode through the machine, entered on a visit without a signal.</summary>
[Collection("Browser")]
public sealed class VisitLoggerFlow(BrowserFixture fixture)
{
    /// <summary>
    /// A two-tank conveyor of a new kitchen. A picture of the ware is tapped and its cause asked for; a logger file is read on the Proof screen, which already knows kind, sanitizing and rules, and is
    /// counted with the visit.
    /// </summary>
    [Fact]
    public async Task A_logger_is_read_from_a_visit_and_counts()
    {
        await using var server = new LiveServer();
        await server.StartAsync();
        await using var context = await fixture.ContextAsync(BrowserFixture.Phone);
        var screen = await Screen.OpenAsync(context, server.Address, "kitchens");
        var page = screen.Page;
        await screen.KeptAsync();
        await screen.NewKitchenAsync("Quince Hotel");
        await screen.NewMachineAsync("RackConveyorOneTank");
        await server.StopAsync();
        await screen.BeginVisitAsync();

        // On the ware.
        await screen.UnfoldAsync("ware");
        var picture = page.Locator("#ware .ware-grid button").First;
        await picture.ClickAsync();
        await Assertions.Expect(picture).ToHaveAttributeAsync("aria-pressed", "true");
        await page.Locator("#ware .visit-item input").FillAsync("on the lower rack");
        await AccessibleAsync("ware");
        var id = (await picture.GetAttributeAsync("id"))!["visit-".Length..];
        await page.Locator("#visit-ware-cause").ClickAsync();
        await Assertions.Expect(page.Locator("#" + id)).ToHaveAttributeAsync("aria-pressed", "true");
        await page.GoBackAsync();

        // The Proof screen knows the machine; the file is the demo's.
        await page.Locator("#asFound-logger").ClickAsync();
        await Assertions.Expect(page.Locator("#machine-type")).ToHaveValueAsync("singleTankConveyor");
        await page.Locator("input[type=file]")
            .First.SetInputFilesAsync(
                new FilePayload
                {
                    Name = DemoLoggers.LarkspurTwoTank,
                    MimeType = "text/csv",
                    Buffer = DemoLoggers.Bytes(DemoLoggers.LarkspurTwoTank),
                }
            );
        await page.Locator(".passes label").First.WaitForAsync();
        var passes = await page.Locator(".passes label").CountAsync();
        await screen.SavedAsync();
        await page.Locator("#back-to-visit").ClickAsync();
        await page.Locator("#found .saved-list button").ClickAsync();
        await Assertions.Expect(page.Locator("#found .visit-item")).ToContainTextAsync(DemoLoggers.LarkspurTwoTank);
        await Assertions
            .Expect(page.Locator("#found .visit-item"))
            .ToContainTextAsync(passes.ToString(System.Globalization.CultureInfo.InvariantCulture));
        // The ware was read by the logger alone; what is on it is still open.
        await Assertions.Expect(page.Locator("#standing h2")).ToHaveTextAsync(screen.Words["visit-standing.watch"]);
        await AccessibleAsync("logger counted");

        // Kept, and taken away again.
        await screen.SavedAsync();
        await page.ReloadAsync();
        await page.Locator("#standing h2").WaitForAsync();
        await screen.UnfoldAsync("found");
        await page.Locator("#found .visit-item button").ClickAsync();
        await Assertions.Expect(page.Locator("#found .visit-item")).ToHaveCountAsync(0);
        await screen.UnfoldAsync("ware");
        await Assertions.Expect(page.Locator("#ware .visit-item input")).ToHaveValueAsync("on the lower rack");

        async Task AccessibleAsync(string where)
        {
            Assert.Empty(await screen.FindingsAsync(where));
        }
    }
}
