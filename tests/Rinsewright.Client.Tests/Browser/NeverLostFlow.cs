using Microsoft.Playwright;
using Xunit;

namespace Rinsewright.Client.Tests.Browser;

/// <summary>What can happen to a device and its office, in a real browser: nothing saved is lost, nothing is there twice, and what cannot be kept is said.</summary>
[Collection("Browser")]
public sealed class NeverLostFlow(BrowserFixture fixture)
{
    [Fact]
    public async Task A_server_put_back_to_an_older_backup_gets_again_what_it_lost()
    {
        await using var server = new LiveServer();
        await server.StartAsync();
        await using var context = await fixture.ContextAsync(BrowserFixture.Phone);
        var screen = await Screen.OpenAsync(context, server.Address, "kitchens");
        await screen.Page.FillAsync("#new-name", "Quince Hotel");
        await screen.Page.Locator("#new-kitchen button").ClickAsync();
        await screen.Page.Locator("#f-address").FillAsync("3 Orchard Row");
        await SendAsync(screen);
        await server.StopAsync();
        server.Copy();
        await server.StartAsync();
        await screen.GoAsync("kitchens");
        await screen.Page.Locator("#kitchen-list a").First.ClickAsync();
        await screen.Page.Locator("#f-address").FillAsync("5 Orchard Row");
        await screen.SavedAsync();
        await screen.GoAsync("kitchens");
        await screen.Page.FillAsync("#new-name", "Bramble Cafe");
        await screen.Page.Locator("#new-kitchen button").ClickAsync();
        await screen.SavedAsync();
        await SendAsync(screen);

        await server.StopAsync();
        server.Restore();
        await server.StartAsync();
        await SendAsync(screen);
        await Assertions.Expect(screen.Page.Locator("#sent-again")).ToBeVisibleAsync();
        await Assertions.Expect(screen.Page.Locator(".send p").First).ToHaveTextAsync(screen.Words["client.send.all"]);
        using var client = new HttpClient { BaseAddress = new Uri(server.Address) };
        Assert.Contains(
            "5 Orchard Row",
            await client.GetStringAsync(new Uri("api/changes", UriKind.Relative), TestContext.Current.CancellationToken),
            StringComparison.Ordinal
        );

        await using var second = await fixture.ContextAsync(BrowserFixture.Desk);
        var other = await Screen.OpenAsync(second, server.Address, "kitchens");
        await Assertions.Expect(other.Page.Locator("#kitchen-list a")).ToHaveCountAsync(2);
        await other.Page.Locator("#kitchen-list a").Filter(new() { HasText = "Quince Hotel" }).ClickAsync();
        await Assertions.Expect(other.Page.Locator("#f-address")).ToHaveValueAsync("5 Orchard Row");
    }

    [Fact]
    public async Task An_answer_that_is_lost_after_the_server_kept_the_change_makes_it_once()
    {
        await using var server = new LiveServer();
        await server.StartAsync();
        await using var context = await fixture.ContextAsync(BrowserFixture.Phone);
        var screen = await Screen.OpenAsync(context, server.Address, "kitchens");
        var lost = 0;
        await context.RouteAsync(
            "**/api/operations",
            async route =>
            {
                // The server has it; the answer does not come back.
                await route.FetchAsync();
                lost++;
                await route.AbortAsync("connectionreset");
            }
        );
        await screen.Page.FillAsync("#new-name", "Quince Hotel");
        await screen.Page.Locator("#new-kitchen button").ClickAsync();
        await screen.SavedAsync();
        await screen.GoAsync("settings");
        await screen.Page.Locator(".send .btn").ClickAsync();
        await Assertions.Expect(screen.Page.Locator(".send p").First).Not.ToHaveTextAsync(screen.Words["client.send.all"]);
        Assert.True(lost > 0);

        await context.UnrouteAsync("**/api/operations");
        await SendAsync(screen);
        using var client = new HttpClient { BaseAddress = new Uri(server.Address) };
        var changes = await client.GetStringAsync(new Uri("api/changes", UriKind.Relative), TestContext.Current.CancellationToken);
        using var json = System.Text.Json.JsonDocument.Parse(changes);
        var kitchen = Assert.Single(json.RootElement.GetProperty("items").EnumerateArray());
        Assert.Equal(1, kitchen.GetProperty("versions").GetInt32());
    }

    [Fact]
    public async Task A_device_that_is_full_says_so_and_keeps_what_is_typed_on_the_screen()
    {
        var server = await fixture.ServerAsync();
        await using var context = await fixture.ContextAsync(BrowserFixture.Phone);
        var screen = await Screen.OpenAsync(context, server.Address, "kitchens");
        await screen.Page.FillAsync("#new-name", "Quince Hotel");
        await screen.Page.Locator("#new-kitchen button").ClickAsync();
        await screen.Page.Locator("#f-note").WaitForAsync();
        await screen.SavedAsync();
        await screen.Page.EvaluateAsync(
            """
            () => {
              window.put = IDBObjectStore.prototype.put;
              IDBObjectStore.prototype.put = () => { throw new DOMException("no room", "QuotaExceededError"); };
            }
            """
        );
        await screen.Page.FillAsync("#f-note", new string('n', 1500));
        await Assertions.Expect(screen.Page.Locator(".notice.bad")).ToBeVisibleAsync();
        await Assertions.Expect(screen.Page.Locator(".saved").First).ToContainTextAsync(screen.Words["client.saved.not"]);
        await Assertions.Expect(screen.Page.Locator("#f-note")).ToHaveValueAsync(new string('n', 1500));

        await screen.Page.EvaluateAsync("() => { IDBObjectStore.prototype.put = window.put; }");
        await screen.Page.FillAsync("#f-note", "room again");
        await screen.SavedAsync();
        await screen.Page.ReloadAsync();
        await Assertions.Expect(screen.Page.Locator("#f-note")).ToHaveValueAsync("room again");
    }

    private static async Task SendAsync(Screen screen)
    {
        await screen.SavedAsync();
        await screen.GoAsync("settings");
        await screen.Page.Locator(".send .btn").ClickAsync();
        await Assertions
            .Expect(screen.Page.Locator(".send p").First)
            .ToHaveTextAsync(screen.Words["client.send.all"], new() { Timeout = 30000 });
    }
}
