using Microsoft.Playwright;
using Xunit;

namespace Rinsewright.Client.Tests.Browser;

/// <summary>A crew's log copied on a visit without a signal: quick, judged at once, nothing of it lost.</summary>
[Collection("Browser")]
public sealed class CrewLogFlow(BrowserFixture fixture)
{
    /// <summary>
    /// A door machine of a new kitchen. One line is typed and repeated: the same number at every hour is said. A slip stays in its field and says how to mend it; a day is closed; all of it is copied, so
    /// gaps are counted; the check is entered as found. After a reload it is all there.
    /// </summary>
    [Fact]
    public async Task A_log_is_copied_and_judged_at_once()
    {
        await using var server = new LiveServer();
        await server.StartAsync();
        await using var context = await fixture.ContextAsync(BrowserFixture.Phone);
        var screen = await Screen.OpenAsync(context, server.Address, "kitchens");
        var page = screen.Page;
        await screen.KeptAsync();
        await screen.NewKitchenAsync("Quince Hotel");
        await screen.NewMachineAsync("DoorHotWater");
        await server.StopAsync();
        await screen.BeginVisitAsync();
        await screen.UnfoldAsync("crew");
        await page.Locator("#add-crew-log").ClickAsync();
        var rows = page.Locator("#crew-log-0 .crew-row:not(.crew-head)");
        await Assertions.Expect(rows).ToHaveCountAsync(14);

        // A slip is said with day, shift and how to mend it, and stays to be mended.
        var first = rows.Nth(0).Locator("input");
        await first.Nth(0).FillAsync("1B2");
        await first.Nth(1).FillAsync("182");
        await Assertions.Expect(page.Locator("#crew-log-0 .problem")).ToContainTextAsync("1B2");
        await Assertions.Expect(first.Nth(0)).ToHaveValueAsync("1B2");
        await Assertions.Expect(page.Locator("#crew-says-0")).ToContainTextAsync("Line 1 cannot be read: “1B2”");
        await AccessibleAsync("a slip");
        await first.Nth(0).FillAsync("182");
        await first.Nth(2).FillAsync("182");
        await first.Nth(2).BlurAsync();
        await Assertions.Expect(page.Locator("#crew-log-0 .problem")).ToHaveCountAsync(0);
        await Assertions.Expect(rows.Nth(0).Locator(".crew-same")).ToBeDisabledAsync();

        // Two taps take the line above; a tap on the day closes it.
        await rows.Nth(1).Locator(".crew-same").ClickAsync();
        await rows.Nth(2).Locator(".crew-same").ClickAsync();
        await rows.Nth(3).Locator(".crew-day").ClickAsync();
        await rows.Nth(4).Locator(".crew-same").ClickAsync();
        await rows.Nth(5).Locator(".crew-same").ClickAsync();
        await Assertions.Expect(rows.Nth(4).Locator("input").Nth(2)).ToHaveValueAsync("182");
        var says = page.Locator("#crew-says-0");
        await Assertions.Expect(says).ToContainTextAsync("Nothing is missing of 15 entries");
        await Assertions.Expect(says).ToContainTextAsync("182\u00a0°F stands 15 times of 15");
        await Assertions.Expect(says).ToContainTextAsync("likely written without reading");

        // Outside the limit: 170 °F at the manifold.
        await rows.Nth(4).Locator("input").Nth(1).FillAsync("170");
        await page.Locator("#crew-log-0 .choice", new() { HasTextString = "170" }).Locator("label").Nth(1).ClickAsync();
        await Assertions.Expect(says).ToContainTextAsync("nothing written about what was done: 1");

        // All of it is copied: eight days are empty. 13 open days, 39 entries, 15 written.
        await page.Locator("#crew-whole-0").CheckAsync();
        await Assertions.Expect(says).ToContainTextAsync("Missing 24 of 39 entries");
        await page.Locator("#crew-found-0").CheckAsync();

        // What is written there and cannot be read is not missing.
        await rows.Nth(8).Locator("input").Nth(0).FillAsync("18x");
        await rows.Nth(8).Locator("input").Nth(0).BlurAsync();
        await Assertions.Expect(says).ToContainTextAsync("Line 9 cannot be read: “18x”");
        await Assertions.Expect(says).ToContainTextAsync("Missing 23 of 39 entries");
        await AccessibleAsync("judged");
        await page.EvaluateAsync("document.documentElement.dataset.theme = 'dark'");
        await AccessibleAsync("judged in the dark");

        await screen.SavedAsync();
        await page.ReloadAsync();
        await page.Locator("#standing h2").WaitForAsync();
        await screen.UnfoldAsync("crew");
        await Assertions.Expect(rows.Nth(4).Locator("input").Nth(1)).ToHaveValueAsync("170");
        await Assertions.Expect(rows.Nth(3).Locator(".crew-day")).ToHaveAttributeAsync("aria-pressed", "true");
        await Assertions.Expect(page.Locator("#crew-found-0")).ToBeCheckedAsync();
        await Assertions.Expect(says).ToContainTextAsync("Missing 23 of 39 entries");
        await Assertions.Expect(rows.Nth(8).Locator("input").Nth(0)).ToHaveValueAsync("18x");
        await Assertions.Expect(page.Locator("#crew-log-0 .problem")).ToContainTextAsync("18x");

        // More than three outside the limit are answered at once where they are not answered yet, and each may still have its own answer.
        for (var shift = 0; shift < 3; shift++)
        {
            await rows.Nth(9).Locator("input").Nth(shift).FillAsync($"17{shift + 1}");
        }

        await rows.Nth(9).Locator("input").Nth(2).BlurAsync();
        var all = page.Locator("#crew-log-0 .choice", new() { HasTextString = "4 entries miss the limit" });
        await all.Locator("label").First.ClickAsync();
        await Assertions.Expect(says).ToContainTextAsync("with what was done written beside them: 3");
        await Assertions.Expect(says).ToContainTextAsync("nothing written about what was done: 1");
        await page.Locator("#crew-0-each summary").ClickAsync();
        await page.Locator("#crew-0-each .choice", new() { HasTextString = "172" }).Locator("label").Nth(1).ClickAsync();
        await Assertions.Expect(says).ToContainTextAsync("nothing written about what was done: 2");
        await AccessibleAsync("answered at once");

        async Task AccessibleAsync(string where)
        {
            Assert.Empty(await screen.FindingsAsync(where));
        }
    }
}
