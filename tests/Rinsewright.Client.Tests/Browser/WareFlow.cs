using Microsoft.Playwright;
using Xunit;

namespace Rinsewright.Client.Tests.Browser;

/// <summary>Ware results as a person uses them, without a signal, at both sizes, in both themes and languages.</summary>
[Collection("Browser")]
public sealed class WareFlow(BrowserFixture fixture)
{
    /// <summary>From film and stain to a cure: after the acid drop the rinse is all that comes next.</summary>
    [Theory]
    [InlineData(false, "en", false)]
    [InlineData(false, "es", true)]
    [InlineData(true, "en", true)]
    [InlineData(true, "es", false)]
    public async Task A_cause_is_told_without_a_signal(bool desk, string language, bool dark)
    {
        var server = await fixture.ServerAsync();
        await using var context = await fixture.ContextAsync(
            desk ? BrowserFixture.Desk : BrowserFixture.Phone,
            language,
            dark ? ColorScheme.Dark : ColorScheme.Light
        );
        var screen = await Screen.OpenAsync(context, server.Address, "bench", language);
        var page = screen.Page;
        var found = new List<string>();
        await screen.KeptAsync();
        await context.SetOfflineAsync(true);
        await page.GetByRole(AriaRole.Link, new() { Name = screen.Words["bench.ware.name"] }).First.ClickAsync();
        await Assertions.Expect(page.Locator(".ware-grid button")).ToHaveCountAsync(20);
        await CheckAsync("pictures");

        await page.ClickAsync("#wr-etching");
        await Assertions.Expect(page.Locator(".ware-next")).ToContainTextAsync(screen.Words["ware.skip"]);
        await CheckAsync("test");
        var cloud = language == "en" ? "Nothing removes the cloud" : "no se quita con nada";
        await page.GetByRole(AriaRole.Button, new() { Name = $"{screen.Words["ware.instead"]}: {cloud}" }).ClickAsync();
        await Assertions.Expect(page.Locator(".ware-next h3")).ToHaveTextAsync(cloud);
        await CheckAsync("acid test");
        await page.Locator(".ware-next .btn.go").ClickAsync();
        await Assertions.Expect(page.Locator(".ware-next h3")).ToHaveTextAsync(screen.Words["ware.next.rinse"]);
        await CheckAsync("rinse");
        await page.Locator(".ware-next .btn.go").ClickAsync();
        await Assertions.Expect(page.Locator(".ware-cause").First).ToContainTextAsync(language == "en" ? "Glass etched" : "Vidrio dañado");

        // What was answered is still there on coming back, and can be taken back.
        await page.GetByRole(AriaRole.Link, new() { Name = screen.Words["client.bench.back"] }).ClickAsync();
        await page.GetByRole(AriaRole.Link, new() { Name = screen.Words["bench.ware.name"] }).First.ClickAsync();
        await Assertions.Expect(page.Locator("#wr-etching")).ToHaveAttributeAsync("aria-pressed", "true");
        await CheckAsync("cure");
        await page.GetByRole(AriaRole.Button, new() { Name = screen.Words["ware.take-back"] }).ClickAsync();
        await Assertions.Expect(page.Locator(".ware-next h3")).ToHaveTextAsync(screen.Words["ware.next.rinse"]);

        await page.GetByRole(AriaRole.Button, new() { Name = screen.Words["ware.again"] }).ClickAsync();
        await page.ClickAsync("#wr-odor");
        await page.Locator(".ware-next .btn.go").ClickAsync();
        await Assertions.Expect(page.Locator(".ware-next.stop")).ToContainTextAsync(screen.Words["ware.next.stop"]);
        await CheckAsync("stop");

        Assert.True(found.Count == 0, string.Join('\n', found));

        async Task CheckAsync(string name)
        {
            found.AddRange(await screen.FindingsAsync(name));
        }
    }
}
