using Microsoft.Playwright;
using Rinsewright.Server.Demo;
using Xunit;

namespace Rinsewright.Client.Tests.Browser;

/// <summary>A day with work in it, as the program shows it and as it stands there before the program has started, in both sizes, languages and themes.</summary>
[Collection("Browser")]
public sealed class DayScreens(BrowserFixture fixture)
{
    /// <summary>Nothing for axe to find, and nothing wider than the page. One browser goes through them all.</summary>
    [Fact]
    public async Task A_day_with_work_in_it_is_open_to_everybody()
    {
        await using var server = new LiveServer(demo: true);
        await server.StartAsync();
        await using var context = await fixture.ContextAsync(BrowserFixture.Phone);
        var screen = await Screen.OpenAsync(context, server.Address, "kitchens");
        var page = screen.Page;
        await screen.KeptAsync();
        await page.Locator("#kitchen-list a").Nth(5).WaitForAsync();
        // What the demo service does not have: a machine left badly.
        await screen.GoAsync($"machine/{DemoKitchens.MachineId(1)}");
        await screen.BeginVisitAsync();
        await page.FillAsync("#asFound-rd-ware-surface-temp", "150");
        await Assertions.Expect(page.Locator("#standing h2")).ToHaveTextAsync(screen.Words["visit-standing.not-sanitary"]);
        await screen.SavedAsync();
        await page.AddInitScriptAsync(DayKeptFlow.HoldStart);
        var found = new List<string>();
        foreach (var (desk, language, dark) in new[] { (false, "en", false), (false, "es", true), (true, "en", true), (true, "es", false) })
        {
            var where = $"{(desk ? "desk" : "phone")} {language} {(dark ? "dark" : "light")}";
            var size = desk ? BrowserFixture.Desk : BrowserFixture.Phone;
            await page.SetViewportSizeAsync(size.Width, size.Height);
            await page.EmulateMediaAsync(new() { ColorScheme = dark ? ColorScheme.Dark : ColorScheme.Light });
            await page.Locator(".nav a[href=kitchens]").ClickAsync();
            await page.Locator("#kitchen-list a").Nth(5).WaitForAsync();
            await page.Locator("details.display > summary").ClickAsync();
            await page.Locator($"details.display input[value={language}]").CheckAsync();
            await page.Locator("details.display > summary").ClickAsync();
            await Assertions.Expect(page.Locator("html")).ToHaveAttributeAsync("lang", language);
            await Assertions.Expect(page.Locator("html")).ToHaveAttributeAsync("data-theme", dark ? "dark" : "light");
            found.AddRange(await screen.FindingsAsync("kitchens, " + where));

            await page.Locator(".nav a[href=day]").ClickAsync();
            foreach (var part in new[] { "#due li", "#failed li", "#take li" })
            {
                await page.Locator(part).First.WaitForAsync();
            }

            found.AddRange(await screen.FindingsAsync("day, " + where));
            await page.WaitForFunctionAsync(
                "(language) => JSON.parse(localStorage.getItem('rinsewright.day'))?.language === language",
                language
            );
            await page.ReloadAsync();
            await page.Locator("#first li").First.WaitForAsync();
            found.AddRange(await screen.FindingsAsync("day as kept, " + where));
            await page.EvaluateAsync(DayKeptFlow.LetStart);
            await page.Locator("#due li").First.WaitForAsync();
        }

        Assert.True(found.Count == 0, string.Join('\n', found));
        screen.Quiet();
    }
}
