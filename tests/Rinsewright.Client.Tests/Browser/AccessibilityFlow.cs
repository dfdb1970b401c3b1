using Microsoft.Playwright;
using Xunit;

namespace Rinsewright.Client.Tests.Browser;

/// <summary>axe finds nothing on any screen, in both themes and languages, at both sizes; nothing is wider than the page.</summary>
[Collection("Browser")]
public sealed class AccessibilityFlow(BrowserFixture fixture)
{
    /// <summary>Every screen.</summary>
    [Theory]
    [InlineData(false, "en", false)]
    [InlineData(false, "es", true)]
    [InlineData(true, "en", true)]
    [InlineData(true, "es", false)]
    public async Task Every_screen_is_free_of_findings(bool desk, string language, bool dark)
    {
        var server = await fixture.ServerAsync();
        await using var context = await fixture.ContextAsync(
            desk ? BrowserFixture.Desk : BrowserFixture.Phone,
            language,
            dark ? ColorScheme.Dark : ColorScheme.Light
        );
        var screen = await Screen.OpenAsync(context, server.Address, "", language);
        var page = screen.Page;
        var found = new List<string>();
        await CheckAsync("empty");
        await page.Locator(".demo-list button").First.ClickAsync();
        await page.Locator(".chart-host").First.WaitForAsync();
        foreach (var id in new[] { "place", "readings", "terms", "logger", "file" })
        {
            await screen.UnfoldAsync(id);
        }

        await page.FillAsync("#final-rinse", "177");
        await screen.VerdictAsync("not-proven");
        foreach (var line in await page.Locator("details.ev > summary").AllAsync())
        {
            await line.ClickAsync();
        }

        await CheckAsync("proof");
        await page.SelectOptionAsync("#method", "chlorine");
        await page.Locator("#strength").WaitForAsync();
        await CheckAsync("chlorine");
        foreach (var key in new[] { "day", "kitchens", "saved", "limits", "settings" })
        {
            if (!desk && key is ("saved" or "limits" or "settings"))
            {
                await page.Locator(".nav")
                    .GetByRole(AriaRole.Link, new() { Name = screen.Words["client.nav.more"], Exact = true })
                    .ClickAsync();
                await Assertions.Expect(page.Locator(".head h1")).ToHaveTextAsync(screen.Words["client.nav.more"]);
                await CheckAsync("more");
            }

            await page.Locator(desk || key is "day" or "kitchens" ? ".nav" : "#content")
                .GetByRole(AriaRole.Link, new() { Name = screen.Words["client.nav." + key], Exact = true })
                .ClickAsync();
            await Assertions.Expect(page.Locator(".head h1")).ToHaveTextAsync(screen.Words["client.nav." + key]);
            await Assertions.Expect(page).ToHaveTitleAsync(screen.Words["client.nav." + key] + " · Rinsewright");
            await CheckAsync(key);
        }

        await screen.GoAsync("no-such-screen");
        await page.Locator("#nothing").WaitForAsync();
        await CheckAsync("no such screen");
        await screen.GoAsync("kitchens");
        await page.FillAsync("#new-name", "Larkspur Lodge");
        await page.Locator("#new-kitchen button").ClickAsync();
        await page.Locator("#facts").WaitForAsync();
        await page.ClickAsync("#add-followUps");
        await page.Locator("#follow-ups .item").WaitForAsync();
        foreach (var id in new[] { "people", "water", "sinks", "tariff", "history" })
        {
            await screen.UnfoldAsync(id);
        }

        await page.ClickAsync("#add-water");
        await page.Locator("#water .item").WaitForAsync();
        await CheckAsync("kitchen");
        await screen.GoAsync("kitchens");
        await page.Locator("#kitchen-list li").First.WaitForAsync();
        await CheckAsync("kitchens with one");
        await screen.GoAsync("kitchens/table");
        await CheckAsync("table");

        Assert.True(found.Count == 0, string.Join('\n', found));
        screen.Quiet();

        // That it would have been found: a button without a name.
        await page.EvaluateAsync("() => document.querySelector('main').append(document.createElement('button'))");
        Assert.Contains(await screen.FindingsAsync("planted"), f => f.StartsWith("planted: button-name", StringComparison.Ordinal));

        async Task CheckAsync(string name)
        {
            found.AddRange(await screen.FindingsAsync(name));
        }
    }
}
