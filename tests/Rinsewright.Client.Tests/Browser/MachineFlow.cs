using Deque.AxeCore.Commons;
using Deque.AxeCore.Playwright;
using Microsoft.Playwright;
using Rinsewright.Engine.Machines;
using Xunit;

namespace Rinsewright.Client.Tests.Browser;

/// <summary>The Machine screen as a person uses it, at both sizes, in both themes and languages.</summary>
[Collection("Browser")]
public sealed class MachineFlow(BrowserFixture fixture)
{
    /// <summary>Choose a kind, tap and walk to parts, note a state, slide the rack; axe finds nothing.</summary>
    [Theory]
    [InlineData(false, "en", false)]
    [InlineData(false, "es", true)]
    [InlineData(true, "en", true)]
    [InlineData(true, "es", false)]
    public async Task A_part_is_found_by_touch_and_by_key(bool desk, string language, bool dark)
    {
        var server = await fixture.ServerAsync();
        await using var context = await fixture.ContextAsync(
            desk ? BrowserFixture.Desk : BrowserFixture.Phone,
            language,
            dark ? ColorScheme.Dark : ColorScheme.Light
        );
        var screen = await Screen.OpenAsync(context, server.Address, "machine", language);
        var page = screen.Page;
        var drawn = page.Locator(".section-host svg.section");
        await drawn.WaitForAsync();

        // By key: to a part and into it.
        await page.Locator(".section-host").FocusAsync();
        await page.Keyboard.PressAsync("ArrowRight");
        await page.Keyboard.PressAsync("ArrowDown");
        await page.Keyboard.PressAsync("Enter");
        await page.Locator("#part").WaitForAsync();

        // By touch, at the large size: the booster.
        await page.Locator("input[value=reading]").CheckAsync();
        await page.Locator("[data-id='booster']").ScrollIntoViewIfNeededAsync();
        await page.Locator("[data-id='booster']").ClickAsync();
        await Assertions.Expect(page.GetByRole(AriaRole.Heading, new() { Name = screen.Words["section.part.booster"] })).ToBeVisibleAsync();
        await page.Locator("#part input[value=Dirty]").CheckAsync();
        await Assertions
            .Expect(page.Locator("[data-id='booster']"))
            .ToHaveAttributeAsync("aria-label", $"{screen.Words["section.part.booster"]}, {screen.Words["section.state.dirty"]}");

        var found = new List<string>();
        foreach (var kind in Enum.GetValues<MachineKind>())
        {
            await page.SelectOptionAsync("#machine-kind", kind.ToString());
            await Assertions
                .Expect(page.Locator(".head .sub"))
                .ToHaveTextAsync(Rinsewright.Files.Drawing.Section.SectionWords.Kind(kind, screen.Words));
            await screen.FitsAsync();
            var result = await page.RunAxe(new AxeRunOptions());
            found.AddRange(result.Violations.Select(v => $"{kind}: {v.Id}: {string.Join(" | ", v.Nodes.Take(3).Select(n => n.Html))}"));
        }

        Assert.True(found.Count == 0, string.Join('\n', found));
        if (Environment.GetEnvironmentVariable("RINSEWRIGHT_PICTURES") is { Length: > 0 } folder)
        {
            await page.SelectOptionAsync("#machine-kind", nameof(MachineKind.RackConveyorTwoTank));
            await page.Locator("input[value=fit]").CheckAsync();
            await page.ScreenshotAsync(
                new() { Path = Path.Combine(folder, $"machine-{(desk ? "desk" : "phone")}-{language}.png"), FullPage = true }
            );
        }

        screen.Quiet();
    }
}
