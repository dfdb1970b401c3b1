using Microsoft.Playwright;
using Xunit;

namespace Rinsewright.Client.Tests.Browser;

/// <summary>Every part of a visit's page open at once, a danger found, in the languages, themes and sizes <see cref="VisitFlow"/> is not walked in.</summary>
[Collection("Browser")]
public sealed class VisitScreens(BrowserFixture fixture)
{
    private static readonly string[] Folds =
    [
        "start",
        "dangers",
        "found",
        "ware",
        "parts",
        "crew",
        "changes",
        "left",
        "supplies",
        "sums",
        "finish",
    ];

    /// <summary>Nothing for axe to find, and nothing wider than the page.</summary>
    [Theory]
    [InlineData(false, "es", true)]
    [InlineData(true, "en", true)]
    [InlineData(true, "es", false)]
    public async Task Everything_of_a_visit_is_open_to_everybody(bool desk, string language, bool dark)
    {
        var server = await fixture.ServerAsync();
        await using var context = await fixture.ContextAsync(
            desk ? BrowserFixture.Desk : BrowserFixture.Phone,
            language,
            dark ? ColorScheme.Dark : ColorScheme.Light
        );
        var screen = await Screen.OpenAsync(context, server.Address, "kitchens", language);
        var page = screen.Page;
        await screen.NewKitchenAsync($"Quince Hotel {language} {desk}");
        await screen.NewMachineAsync("DoorHotWater");
        await screen.BeginVisitAsync();
        foreach (var fold in Folds)
        {
            await screen.UnfoldAsync(fold);
        }

        await page.FillAsync("#visit-complaint", "film on glasses");
        await page.Locator("#dangers input[type=checkbox], #dangers input[type=radio]").First.CheckAsync();
        await page.SelectOptionAsync("#cause-fault", "booster-element-failed");
        await page.Locator("#visit-cause fieldset").First.WaitForAsync();
        await page.Locator("#visit-section svg").WaitForAsync();
        Assert.Empty(await screen.FindingsAsync($"visit, {(desk ? "desk" : "phone")} {language} {(dark ? "dark" : "light")}"));
        if (Environment.GetEnvironmentVariable("RINSEWRIGHT_PICTURES") is { } folder)
        {
            await page.ScreenshotAsync(new() { Path = Path.Combine(folder, $"visit-{desk}-{language}-{dark}.png"), FullPage = true });
        }

        screen.Quiet();
    }
}
