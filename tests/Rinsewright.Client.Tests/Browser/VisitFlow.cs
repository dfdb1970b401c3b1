using Microsoft.Playwright;
using Rinsewright.Contracts.Language;
using Rinsewright.Tests.Shared;
using Xunit;

namespace Rinsewright.Client.Tests.Browser;

/// <summary>A visit from start to signed report without a signal, as a technician goes through one, and what the office has of it afterwards.</summary>
[Collection("Browser")]
public sealed class VisitFlow(BrowserFixture fixture)
{
    // This browser has none of its own.
    private const string ShareSheet = """
        navigator.canShare = (what) => what.files?.length === 1;
        navigator.share = async ({ files: [file] }) => { globalThis.sharedPaper = `${file.name} ${file.type} ${file.size}`; };
        """;

    /// <summary>
    /// A door machine of the demo service. Its ware stays at 155 °F, under the rule's 160 °F (Food Code 4-703.11(B)): not sanitizing. The booster is set, the acceptance test is asked for, the ware
    /// reaches 168 °F; what is not run is declined with a reason, both sides sign, the report is made. All of it with the server stopped; then it reaches the office once.
    /// </summary>
    [Fact]
    public async Task A_visit_without_the_server_reaches_it_once()
    {
        await using var server = new LiveServer();
        await server.StartAsync();
        await using var context = await fixture.ContextAsync(BrowserFixture.Phone);
        await context.AddInitScriptAsync(ShareSheet);
        var screen = await Screen.OpenAsync(context, server.Address, "kitchens");
        var page = screen.Page;
        await screen.KeptAsync();
        await screen.NewKitchenAsync("Quince Hotel");
        await page.FillAsync("#f-languages", "español, English");
        await screen.SavedAsync();
        await screen.NewMachineAsync("DoorHotWater");
        await server.StopAsync();

        await screen.BeginVisitAsync();
        await StandsAsync("not-proved");
        await page.FillAsync("#visit-complaint", "plates come out cool");
        await page.FillAsync("#visit-technician", "Ruth Ames");
        await page.FillAsync("#asFound-rd-ware-surface-temp", "155");
        await StandsAsync("not-sanitary");
        await page.SetInputFilesAsync("#asFound-camera", Path.Combine(Tree.Root, "docs", "handbook", "images", "proof-phone.png"));
        await Assertions
            .Expect(page.Locator(".visit .saved-list li", new() { HasText = screen.Words["client.visit.remove"] }))
            .ToHaveCountAsync(1);
        await AccessibleAsync("as found");

        // What was changed asks for its test; it may not be signed before.
        await screen.UnfoldAsync("changes");
        await page.FillAsync("#change-what", "booster thermostat");
        await page.SelectOptionAsync("#change-unit", "[degF]");
        await page.FillAsync("#change-before", "172");
        await page.FillAsync("#change-after", "190");
        await page.Locator("#add-change").ClickAsync();
        await Assertions.Expect(page.Locator("#new-change .problem")).ToHaveTextAsync(screen.Words["client.visit.say-areas"]);
        await page.Locator("#new-change .ticks label").First.ClickAsync();
        await page.Locator("#add-change").ClickAsync();
        // The drawing leads to the part in the list; what is found there is the first suspect of the complaint.
        await screen.UnfoldAsync("parts");
        await page.Locator("#visit-section").FocusAsync();
        await page.Keyboard.PressAsync("ArrowRight");
        await page.Keyboard.PressAsync("Enter");
        await Assertions.Expect(page.Locator(".visit-part:focus")).ToHaveCountAsync(1);
        await AccessibleAsync("parts");

        await screen.UnfoldAsync("finish");
        await Assertions.Expect(page.Locator("#do-sign-technician")).ToBeDisabledAsync();
        await Assertions.Expect(page.Locator("#plain-lines")).ToHaveAttributeAsync("lang", "es");
        await Assertions.Expect(page.Locator("#plain-lines")).ToContainTextAsync(Words.For("es")["visit.was.unknown"]);
        await page.SelectOptionAsync("#cause-fault", "booster-element-failed");
        var cause = await page.Locator("#cause-fault option:checked").TextContentAsync();
        Assert.False(string.IsNullOrWhiteSpace(cause));
        await page.Locator("#visit-cause").GetByLabel(screen.Words["cause-known.confirmed"], new() { Exact = true }).CheckAsync();
        await Assertions.Expect(page.Locator("#plain-lines")).Not.ToContainTextAsync(Words.For("es")["visit.was.unknown"]);
        await page.Locator("#finish").GetByLabel("English", new() { Exact = true }).CheckAsync();
        await Assertions.Expect(page.Locator("#plain-lines")).ToContainTextAsync(cause!, new() { IgnoreCase = true });
        await Assertions.Expect(page.Locator("#plain-lines")).ToContainTextAsync(screen.Words["cause-owner.machine"]);

        // Everything is there after the page is closed in the middle and opened again.
        await screen.SavedAsync();
        await page.ReloadAsync();
        await page.Locator("#standing").WaitForAsync();
        await Assertions.Expect(page.Locator("#visit-complaint")).ToHaveValueAsync("plates come out cool");
        await screen.UnfoldAsync("left");
        await page.FillAsync("#asLeft-rd-ware-surface-temp", "168");

        await screen.UnfoldAsync("finish");
        foreach (var area in new[] { "heat", "pressure", "chemistry", "timing", "leaks" })
        {
            var declined = page.Locator($"#declined-{area}");
            if (await declined.CountAsync() > 0)
            {
                await declined.FillAsync("service begins");
            }
        }

        await page.Locator("#do-sign-technician").ClickAsync();
        await page.FillAsync("#sign-kitchen", "Ola Finch");
        await page.Locator("#do-sign-kitchen").ClickAsync();
        await Assertions.Expect(page.Locator("#finish")).ToContainTextAsync("Ola Finch");
        await AccessibleAsync("finish");
        var download = await page.RunAndWaitForDownloadAsync(() => page.Locator("#paper-report").ClickAsync());
        await using (var pdf = File.OpenRead(await download.PathAsync()))
        {
            // The photograph is in it, as the browser shrank it.
            using var bytes = new MemoryStream();
            await pdf.CopyToAsync(bytes, TestContext.Current.CancellationToken);
            Assert.Contains("/DCTDecode", System.Text.Encoding.Latin1.GetString(bytes.ToArray()), StringComparison.Ordinal);
        }

        // A device with a share sheet gets the same paper.
        await page.Locator("#share-visit").ClickAsync();
        var shared = await page.EvaluateAsync<string>("() => globalThis.sharedPaper");
        Assert.Matches(@"^report-\d{4}-\d\d-\d\d-\d{4}\.pdf application/pdf [1-9]\d{4,}$", shared);

        // The signal is back: sent once, and another device has it.
        await server.StartAsync();
        await screen.GoAsync("settings");
        await page.Locator(".send .btn").ClickAsync();
        await Assertions.Expect(page.Locator(".send p").First).ToHaveTextAsync(screen.Words["client.send.all"]);
        await using var second = await fixture.ContextAsync(BrowserFixture.Desk);
        var other = await Screen.OpenAsync(second, server.Address, "kitchens");
        await other.Page.Locator("#kitchen-list a").First.ClickAsync();
        await Assertions.Expect(other.Page.Locator("#visits li")).ToHaveCountAsync(1);
        await other.Page.Locator("#visits a").First.ClickAsync();
        await other.Page.Locator("#standing").WaitForAsync();
        await Assertions.Expect(other.Page.Locator("#visit-complaint")).ToHaveValueAsync("plates come out cool");
        await Assertions.Expect(other.Page.Locator("#finish")).ToContainTextAsync("Ola Finch");

        async Task StandsAsync(string standing) =>
            await Assertions
                .Expect(page.Locator("#standing h2"))
                .ToHaveTextAsync(screen.Words["visit-standing." + standing], new() { Timeout = 120000 });

        async Task AccessibleAsync(string where)
        {
            Assert.Empty(await screen.FindingsAsync(where));
        }
    }
}
