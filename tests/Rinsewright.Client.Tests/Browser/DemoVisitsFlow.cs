using Microsoft.Playwright;
using PdfSharp.Pdf;
using Rinsewright.Contracts.Language;
using Rinsewright.Files.Tests.Sheets;
using Rinsewright.Server.Demo;
using Xunit;

namespace Rinsewright.Client.Tests.Browser;

/// <summary>A short but whole visit to each kitchen of the invented service, on a phone and with the server stopped, and its report in both languages.</summary>
[Collection("Browser")]
public sealed class DemoVisitsFlow(BrowserFixture fixture)
{
    private static readonly string[] Standings = ["stop-use", "not-sanitary", "not-proved", "watch", "sanitary"];

    /// <summary>One reading as found, the first part of every zone, a setting changed, its test run or declined, signed by both sides, reported.</summary>
    [Fact]
    public async Task Every_demo_kitchen_is_visited_and_reported_without_a_signal()
    {
        await using var server = new LiveServer(demo: true);
        await server.StartAsync();
        await using var context = await fixture.ContextAsync(BrowserFixture.Phone);
        var screen = await Screen.OpenAsync(context, server.Address, "kitchens");
        var page = screen.Page;
        await screen.KeptAsync();
        await page.Locator("#kitchen-list a").Nth(5).WaitForAsync();
        await server.StopAsync();
        Assert.Equal(6, DemoKitchens.Machines.Count);
        foreach (var machine in DemoKitchens.Machines)
        {
            await screen.GoAsync($"kitchens/{DemoKitchens.KitchenId(machine.Kitchen)}");
            var kitchen = await page.Locator("#f-name").InputValueAsync();
            Assert.NotEmpty(kitchen);
            await screen.GoAsync($"machine/{DemoKitchens.MachineId(machine.Number)}");
            await screen.BeginVisitAsync();
            var standing = await VisitAsync(screen);
            foreach (var language in new[] { "English", "Español" })
            {
                var words = Words.For(language == "English" ? "en" : "es");
                await page.Locator("#finish").GetByLabel(language, new() { Exact = true }).CheckAsync();
                var download = await page.RunAndWaitForDownloadAsync(() => page.Locator("#paper-report").ClickAsync());
                var text = Text(await File.ReadAllBytesAsync((await download.PathAsync())!, TestContext.Current.CancellationToken));
                Assert.Contains(kitchen, text, StringComparison.Ordinal);
                Assert.Contains(words["visit-standing." + standing], text, StringComparison.OrdinalIgnoreCase);
                Assert.Contains("Ruth Ames", text, StringComparison.Ordinal);
                Assert.Contains("Ola Finch", text, StringComparison.Ordinal);
            }
        }
    }

    // How the machine stands in the end.
    private static async Task<string> VisitAsync(Screen screen)
    {
        var page = screen.Page;
        await page.FillAsync("#visit-technician", "Ruth Ames");
        await ReadAsync(page, "asFound");
        await screen.UnfoldAsync("parts");
        var parts = page.Locator("#parts h3 + .visit-part input[value=sound]");
        var zones = await page.Locator("#parts h3").CountAsync();
        Assert.Equal(zones, await parts.CountAsync());
        Assert.True(zones > 3);
        foreach (var part in await parts.AllAsync())
        {
            await part.CheckAsync();
        }

        await screen.UnfoldAsync("changes");
        await page.FillAsync("#change-what", "rinse thermostat");
        await page.SelectOptionAsync("#change-unit", "[degF]");
        await page.FillAsync("#change-before", "172");
        await page.FillAsync("#change-after", "190");
        await page.Locator("#new-change .ticks label").First.ClickAsync();
        await page.Locator("#add-change").ClickAsync();
        await screen.UnfoldAsync("left");
        await ReadAsync(page, "asLeft");
        await screen.UnfoldAsync("finish");
        await DeclinedAsync(page);
        await page.Locator("#do-sign-technician").ClickAsync();
        await page.FillAsync("#sign-kitchen", "Ola Finch");
        await page.Locator("#do-sign-kitchen").ClickAsync();
        await Assertions.Expect(page.Locator("#finish")).ToContainTextAsync("Ola Finch");
        await screen.SavedAsync();
        var says = (await page.Locator("#standing h2").TextContentAsync())!.Trim();
        return Assert.Single(Standings, s => screen.Words["visit-standing." + s] == says);
    }

    // What of the test is not run is declined, as it is judged, until it may be signed.
    private static async Task DeclinedAsync(IPage page)
    {
        var sign = page.Locator("#do-sign-technician");
        await Assertions.Expect(page.Locator("#finish input[id^=declined-]").First).ToBeVisibleAsync();
        for (var looks = 0; looks < 60 && await sign.IsDisabledAsync(); looks++)
        {
            foreach (var declined in await page.Locator("#finish input[id^=declined-]").AllAsync())
            {
                if (await declined.InputValueAsync() == "")
                {
                    await declined.FillAsync("service begins");
                }
            }

            await page.WaitForTimeoutAsync(500);
        }

        Assert.True(
            await sign.IsEnabledAsync(),
            string.Join('\n', await page.Locator("#finish .visit-item, #visit-missing").AllInnerTextsAsync())
        );
    }

    // What proves it: the ware's temperature, or the sanitizer's strength where it is not heat.
    private static async Task ReadAsync(IPage page, string moment)
    {
        var ware = page.Locator($"#{moment}-rd-ware-surface-temp");
        await page.Locator($"#{moment}-rd-ware-surface-temp, #{moment}-rd-sanitizer").First.WaitForAsync();
        await (await ware.CountAsync() > 0 ? ware : page.Locator($"#{moment}-rd-sanitizer")).FillAsync(
            await ware.CountAsync() > 0 ? "168" : "75"
        );
    }

    private static string Text(byte[] bytes)
    {
        using var pdf = PdfText.Open(bytes);
        return string.Concat(pdf.Pages.OfType<PdfPage>().Select(p => PdfText.Of(p).Replace('\n', ' ')));
    }
}
