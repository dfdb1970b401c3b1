using Microsoft.Playwright;
using Rinsewright.Files.Demo;
using Rinsewright.Tests.Shared;
using Xunit;

namespace Rinsewright.Client.Tests.Browser;

/// <summary>
/// Takes the handbook's pictures. Not a test: run it by hand with
/// <c>dotnet run --project tests/Rinsewright.Client.Tests -- -explicit only -class "*HandbookPictures"</c> and look at docs/handbook/images.
/// </summary>
[Collection("Browser")]
public sealed class HandbookPictures(BrowserFixture fixture)
{
    /// <summary>Phone, desk, desk in the dark, phone in Spanish.</summary>
    [Theory(Explicit = true)]
    [InlineData("proof-phone", 390, 844, "en", false)]
    [InlineData("proof-desk", 1280, 800, "en", false)]
    [InlineData("proof-desk-dark", 1280, 800, "en", true)]
    [InlineData("proof-phone-es", 390, 844, "es", false)]
    public async Task Take(string name, int width, int height, string language, bool dark)
    {
        var server = await fixture.ServerAsync();
        await using var context = await fixture.ContextAsync(
            new ViewportSize { Width = width, Height = height },
            language,
            dark ? ColorScheme.Dark : ColorScheme.Light
        );
        var screen = await Screen.OpenAsync(context, server.Address, "", language);
        await screen.Page.Locator(".demo-list button").First.ClickAsync();
        await screen.Page.Locator(".passes label").First.WaitForAsync();
        await screen.UnfoldAsync("readings");
        await screen.Page.FillAsync("#wash", language == "es" ? "158,6" : "158.6");
        await screen.Page.FillAsync("#pumped-rinse", language == "es" ? "164,1" : "164.1");
        await screen.Page.FillAsync("#final-rinse", language == "es" ? "177,2" : "177.2");
        await screen.Page.FillAsync("#flow-pressure", language == "es" ? "20,1" : "20.1");
        await screen.VerdictAsync("not-proven");
        await Assertions
            .Expect(screen.Page.Locator(".fold-now").Nth(1))
            .ToHaveTextAsync(screen.Words.Say("client.readings.now", ("count", "4")));
        await screen.Page.ReloadAsync();
        await screen.Page.Locator(".chart-host").First.WaitForAsync();
        await Assertions
            .Expect(screen.Page.Locator(".fold-now").Nth(1))
            .ToHaveTextAsync(screen.Words.Say("client.readings.now", ("count", "4")));
        await screen.Page.WaitForTimeoutAsync(2500);
        Assert.Equal(DemoLoggers.LarkspurTwoTank, (await screen.Page.Locator("#file .fold-now").TextContentAsync())?.Trim());
        await screen.Page.ScreenshotAsync(
            new PageScreenshotOptions { Path = Path.Combine(Tree.Root, "docs", "handbook", "images", name + ".png") }
        );
        if (Environment.GetEnvironmentVariable("RINSEWRIGHT_PICTURES_WHOLE") is { } folder)
        {
            await screen.Page.ScreenshotAsync(
                new PageScreenshotOptions { Path = Path.Combine(folder, name + "-whole.png"), FullPage = true }
            );
        }
    }

    /// <summary>The Machine screen: what it should read, a fault, what if.</summary>
    [Theory(Explicit = true)]
    [InlineData("machine-phone", 390, 844, "reads")]
    [InlineData("machine-fault", 1280, 800, "faults")]
    [InlineData("machine-what-if", 1280, 800, "what-if")]
    public async Task Take_machine(string name, int width, int height, string tab)
    {
        var server = await fixture.ServerAsync();
        await using var context = await fixture.ContextAsync(new ViewportSize { Width = width, Height = height });
        var screen = await Screen.OpenAsync(context, server.Address, "machine");
        var page = screen.Page;
        await page.Locator("#machine-file").SetInputFilesAsync(Path.Combine(Tree.Root, "docs", "examples", "larkspur-two-tank.json"));
        await page.Locator("#should-read .read-row").First.WaitForAsync();
        await page.Locator($".tabs input[value={tab}]").CheckAsync();
        if (tab == "faults")
        {
            await page.ClickAsync("[data-fault='drain-seal-missing']");
            await page.Locator("#faults .lesson b").WaitForAsync();
        }
        else if (tab == "what-if")
        {
            await page.FillAsync("#knob-water-typed", "110");
            await page.Locator("#knob-water-typed").BlurAsync();
            await page.Locator("#what-if-result .shows").First.WaitForAsync();
        }

        await page.WaitForTimeoutAsync(2500);
        await page.ScreenshotAsync(
            new PageScreenshotOptions { Path = Path.Combine(Tree.Root, "docs", "handbook", "images", name + ".png") }
        );
    }
}
