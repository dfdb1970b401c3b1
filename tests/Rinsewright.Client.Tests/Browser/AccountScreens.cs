using Microsoft.Playwright;
using Rinsewright.Tests.Shared;
using Xunit;

namespace Rinsewright.Client.Tests.Browser;

/// <summary>axe finds nothing on any screen of the accounts, in both themes and languages, at both sizes; nothing is wider than the page.</summary>
[Collection("Browser")]
public sealed class AccountScreens(BrowserFixture fixture)
{
    // Where pictures of each state go, to be looked at; none where it is not set.
    private static readonly string? Pictures = Environment.GetEnvironmentVariable("RINSEWRIGHT_PICTURES");

    /// <summary>Every screen and state.</summary>
    [Theory]
    [InlineData(false, "en", false)]
    [InlineData(false, "es", true)]
    [InlineData(true, "en", true)]
    [InlineData(true, "es", false)]
    public async Task Every_screen_of_the_accounts_is_free_of_findings(bool desk, string language, bool dark)
    {
        await using var server = new LiveServer();
        await server.StartAsync();
        await using var context = await fixture.ContextAsync(
            desk ? BrowserFixture.Desk : BrowserFixture.Phone,
            language,
            dark ? ColorScheme.Dark : ColorScheme.Light
        );
        var screen = await Screen.OpenAsync(
            context,
            server.Address.Replace("127.0.0.1", "localhost", StringComparison.Ordinal),
            "account",
            language
        );
        var page = screen.Page;
        var found = new List<string>();
        await page.FillAsync("#set-up-name", "Odile Marsh");
        await page.FillAsync("#set-up-password", "short");
        await page.Locator("#set-up [type=submit]").ClickAsync();
        await page.Locator("#set-up .problem").WaitForAsync();
        await CheckAsync("set-up");
        await page.FillAsync("#set-up-password", "four plates and a rack");
        await page.Locator("#set-up [type=submit]").ClickAsync();
        await page.Locator("#sessions li").WaitForAsync();
        await screen.UnfoldAsync("password");
        await CheckAsync("account");
        await screen.GoAsync("kitchens");
        await page.FillAsync("#new-name", "Larkspur Lodge");
        await page.Locator("#new-kitchen button").ClickAsync();
        await page.Locator("#facts").WaitForAsync();
        await screen.GoAsync("people");
        await page.FillAsync("#invite-name", "Ana Whitlock");
        await page.SelectOptionAsync("#invite-role", "kitchen");
        await page.Locator("#invite-kitchens input").First.CheckAsync();
        await page.Locator("#invite [type=submit]").ClickAsync();
        var link = await page.Locator("#invite-link").InputValueAsync();
        await page.Locator("#accounts summary").First.ClickAsync();
        await page.Locator("#accounts .saved-list li").First.WaitForAsync();
        await screen.UnfoldAsync("audit");
        await page.Locator("#audit-read").ClickAsync();
        await page.Locator("#audit-lines li").First.WaitForAsync();
        await screen.UnfoldAsync("demo");
        await page.Locator("#demo-remove").ClickAsync();
        await CheckAsync("people");
        await screen.GoAsync("accept" + link[link.IndexOf('#', StringComparison.Ordinal)..]);
        await page.Locator("#accept-password").WaitForAsync();
        await CheckAsync("accept");
        await screen.GoAsync("accept#nonsense");
        await page.ReloadAsync();
        await page.Locator("#accept .btn").First.WaitForAsync();
        await CheckAsync("accept refused");
        await screen.GoAsync("account");
        await page.Locator("#do-sign-out").ClickAsync();
        if (await page.Locator("#sign-out-anyway").CountAsync() > 0)
        {
            await page.Locator("#sign-out-anyway").ClickAsync();
        }

        await page.Locator("#sign-in-passkey").WaitForAsync();
        await CheckAsync("sign-in");
        await screen.GoAsync("settings");
        await page.Locator(".send a").WaitForAsync();
        await CheckAsync("settings");
        await screen.GoAsync("accept" + link[link.IndexOf('#', StringComparison.Ordinal)..]);
        await page.ReloadAsync();
        await page.FillAsync("#accept-password", "four plates and a rack");
        await page.Locator("#accept [type=submit]").ClickAsync();
        await page.Locator("#me").WaitForAsync();
        await page.Locator("#look-only").WaitForAsync();
        await CheckAsync("kitchen");
        Assert.True(found.Count == 0, string.Join('\n', found));

        async Task CheckAsync(string name)
        {
            if (Pictures is { Length: > 0 } folder)
            {
                var file = $"{name.Replace(' ', '-')}-{(desk ? "desk" : "phone")}-{language}-{(dark ? "dark" : "light")}.png";
                await page.ScreenshotAsync(new() { Path = Path.Combine(Tree.Root, folder, file), FullPage = true });
            }

            found.AddRange(await screen.FindingsAsync(name));
        }
    }
}
