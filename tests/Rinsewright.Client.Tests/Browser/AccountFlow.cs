using System.Text.Json;
using System.Text.RegularExpressions;
using Microsoft.Playwright;
using Xunit;

namespace Rinsewright.Client.Tests.Browser;

/// <summary>Accounts as people use them: the first one, an invited technician without a signal, a session that is ended, a kitchen that sees only itself, a passkey.</summary>
[Collection("Browser")]
public sealed class AccountFlow(BrowserFixture fixture)
{
    private const string Password = "four plates and a rack";

    /// <summary>
    /// Set-up, an invited technician, a visit without the server; the office ends the session; the phone says "sign in to send" and keeps everything; after the sign-in it is sent once, in
    /// the technician's name.
    /// </summary>
    [Fact]
    public async Task What_a_technician_entered_without_a_signal_waits_for_the_sign_in_and_is_sent_once()
    {
        await using var server = new LiveServer();
        await server.StartAsync();
        await using var desk = await fixture.ContextAsync(BrowserFixture.Desk);
        var office = await SetUpAsync(desk, server);
        var link = await InviteAsync(office, "Ines Calloway", "technician");
        await using var context = await fixture.ContextAsync(BrowserFixture.Phone);
        var phone = await AcceptAsync(context, server, link, null);
        var page = phone.Page;
        await phone.KeptAsync();

        await phone.GoAsync("kitchens");
        await phone.NewKitchenAsync("Quince Hotel");
        await phone.NewMachineAsync("DoorHotWater");
        await SentAsync(phone);

        // Without the server: the visit is entered as before, and the page says as whom.
        await server.StopAsync();
        await page.ReloadAsync();
        await phone.ReadyAsync();
        await Assertions.Expect(page.Locator(".head .saved")).ToContainTextAsync("Ines Calloway");
        await phone.BeginVisitAsync();
        await page.Locator("#visit-complaint").FillAsync("plates come out cool");
        await page.FillAsync("#asFound-rd-ware-surface-temp", "155");
        await phone.SavedAsync();

        // The office ends the session of the phone, which has no signal and sends nothing meanwhile.
        await context.SetOfflineAsync(true);
        await server.StartAsync();
        await office.GoAsync("people");
        await office.Page.Locator("#accounts .fold").Filter(new() { HasText = "Ines Calloway" }).Locator("summary").ClickAsync();
        await office.Page.Locator("[id^=end-]").ClickAsync();
        await Assertions.Expect(office.Page.Locator("#accounts .fold[open]")).ToContainTextAsync(office.Words["account.session-none"]);

        // The phone says so, keeps what it has, and goes on after the sign-in.
        await context.SetOfflineAsync(false);
        await phone.GoAsync("settings");
        await page.Locator(".send .btn").Last.ClickAsync();
        await Assertions.Expect(page.Locator(".send p").First).ToHaveTextAsync(Waiting());
        await Assertions.Expect(page.Locator(".head .saved")).ToContainTextAsync(phone.Words["client.saved.sign-in"]);
        Assert.DoesNotContain("\"visit\"", await ChangesAsync(office), StringComparison.Ordinal);
        await page.Locator(".send a.btn").ClickAsync();
        await Assertions.Expect(page.Locator("#sign-in-name")).ToHaveValueAsync("Ines Calloway");
        await page.FillAsync("#sign-in-password", "not the password");
        await page.Locator("#sign-in [type=submit]").ClickAsync();
        await Assertions.Expect(page.Locator("#sign-in .problem")).ToHaveTextAsync(phone.Words["account.problem.sign-in"]);
        await Assertions.Expect(page.Locator("#sign-in-name")).ToHaveValueAsync("Ines Calloway"); // no input is lost
        await page.FillAsync("#sign-in-password", Password);
        await page.Locator("#sign-in [type=submit]").ClickAsync();
        await page.Locator("#me").WaitForAsync();
        await SentAsync(phone);
        await SentAsync(phone); // again: nothing doubles

        // The office has it once, by her.
        await office.GoAsync("settings");
        await SentAsync(office);
        await office.GoAsync("kitchens");
        await office.Page.Locator("#kitchen-list a").Filter(new() { HasText = "Quince Hotel" }).ClickAsync();
        await Assertions.Expect(office.Page.Locator("#visits li")).ToHaveCountAsync(1);
        await office.Page.Locator("#visits a").First.ClickAsync();
        await Assertions.Expect(office.Page.Locator("#visit-complaint")).ToHaveValueAsync("plates come out cool");
        using var document = JsonDocument.Parse(await ChangesAsync(office));
        Assert.All(
            document.RootElement.GetProperty("items").EnumerateArray().ToList(),
            c => Assert.Equal("Ines Calloway", c.GetProperty("author").GetString())
        );
    }

    /// <summary>A kitchen's account sees its kitchen alone, says that it only looks, and signing out takes the copies from the device.</summary>
    [Fact]
    public async Task A_kitchens_account_sees_its_kitchen_alone_and_leaves_nothing_behind()
    {
        await using var server = new LiveServer();
        await server.StartAsync();
        await using var desk = await fixture.ContextAsync(BrowserFixture.Desk);
        var office = await SetUpAsync(desk, server);
        foreach (var name in new[] { "Larkspur Lodge", "Saltbox Oyster Bar" })
        {
            await office.GoAsync("kitchens");
            await office.Page.FillAsync("#new-name", name);
            await office.Page.Locator("#new-kitchen button").ClickAsync();
            await office.Page.Locator("#facts").WaitForAsync();
            await SentAsync(office);
        }

        var link = await InviteAsync(office, "Ana Whitlock", "kitchen", "Larkspur Lodge");

        // On the same device, which has everything of the service: what is not the kitchen's goes.
        await office.GoAsync("account");
        await office.Page.Locator("#do-sign-out").ClickAsync();
        await office.Page.Locator("#sign-in").WaitForAsync();
        await office.GoAsync("kitchens");
        await Assertions.Expect(office.Page.Locator("#kitchen-list")).ToHaveCountAsync(0);
        var screen = await AcceptAsync(desk, server, link, office);
        var page = screen.Page;
        await SentAsync(screen);
        await screen.GoAsync("kitchens");
        await Assertions.Expect(page.Locator("#kitchen-list li")).ToHaveCountAsync(1);
        await Assertions.Expect(page.Locator("#kitchen-list")).ToContainTextAsync("Larkspur Lodge");
        await Assertions.Expect(page.Locator("#look-only")).ToBeVisibleAsync();
        await page.FillAsync("#new-name", "Not mine");
        await page.Locator("#new-kitchen button").ClickAsync();
        await screen.GoAsync("kitchens");
        await Assertions.Expect(page.Locator("#kitchen-list li")).ToHaveCountAsync(1);
        await screen.GoAsync("people");
        await Assertions.Expect(page.Locator("[role=status]").First).ToContainTextAsync(screen.Words["server.problem.role"]);
    }

    /// <summary>Signing out with something unsent says how much and asks; another person's sign-in does not send it, the same person's does.</summary>
    [Fact]
    public async Task What_is_unsent_at_sign_out_is_counted_kept_and_sent_by_the_same_person_alone()
    {
        await using var server = new LiveServer();
        await server.StartAsync();
        await using var context = await fixture.ContextAsync(BrowserFixture.Desk);
        var screen = await SetUpAsync(context, server);
        var page = screen.Page;
        var link = await InviteAsync(screen, "Bram Oakes", "technician");
        await page.RouteAsync("**/api/operations", r => r.AbortAsync()); // sending fails, everything else answers
        await screen.GoAsync("kitchens");
        await page.FillAsync("#new-name", "Quince Hotel");
        await page.Locator("#new-kitchen button").ClickAsync();
        await page.Locator("#facts").WaitForAsync();
        await screen.SavedAsync();
        await screen.GoAsync("account");
        await page.Locator("#do-sign-out").ClickAsync();
        await Assertions.Expect(page.Locator("#sign-out .problem")).ToContainTextAsync(Regex());
        await page.Locator("#stay").ClickAsync();
        await page.Locator("#do-sign-out").ClickAsync();
        await page.Locator("#sign-out-anyway").ClickAsync();
        await page.Locator("#sign-in").WaitForAsync();
        await page.UnrouteAsync("**/api/operations");

        screen = await AcceptAsync(context, server, link, screen);
        await screen.GoAsync("settings");
        await page.Locator(".send .btn").ClickAsync();
        await Assertions.Expect(page.Locator(".send .problem")).ToContainTextAsync("kept by Odile Marsh");
        await screen.GoAsync("account");
        await page.Locator("#do-sign-out").ClickAsync();
        await page.Locator("#sign-out-anyway").ClickAsync();
        await page.FillAsync("#sign-in-name", "odile marsh");
        await page.FillAsync("#sign-in-password", Password);
        await page.Locator("#sign-in [type=submit]").ClickAsync();
        await page.Locator("#me").WaitForAsync();
        await SentAsync(screen);
        await screen.GoAsync("kitchens");
        await Assertions.Expect(page.Locator("#kitchen-list")).ToContainTextAsync("Quince Hotel");
    }

    /// <summary>A passkey is added, signs in without name and password, and signs in no more when it is removed.</summary>
    [Fact]
    public async Task A_passkey_is_added_signs_in_and_is_removed()
    {
        await using var server = new LiveServer();
        await server.StartAsync();
        await using var context = await fixture.ContextAsync(BrowserFixture.Desk);
        var screen = await SetUpAsync(context, server, server.Address.Replace("127.0.0.1", "localhost", StringComparison.Ordinal));
        var page = screen.Page;
        var devtools = await context.NewCDPSessionAsync(page);
        await devtools.SendAsync("WebAuthn.enable");
        await devtools.SendAsync(
            "WebAuthn.addVirtualAuthenticator",
            new Dictionary<string, object>
            {
                ["options"] = new Dictionary<string, object>
                {
                    ["protocol"] = "ctap2",
                    ["transport"] = "internal",
                    ["hasResidentKey"] = true,
                    ["hasUserVerification"] = true,
                    ["isUserVerified"] = true,
                    ["automaticPresenceSimulation"] = true,
                },
            }
        );
        await page.FillAsync("#passkey-name", "desk in the office");
        await page.Locator("#add-passkey").ClickAsync();
        await Assertions.Expect(page.Locator("#passkeys li")).ToHaveCountAsync(1);
        await Assertions.Expect(page.Locator("#passkeys li")).ToContainTextAsync("desk in the office");
        foreach (var _ in new int[2]) // the second time its counter has moved on
        {
            await page.Locator("#do-sign-out").ClickAsync();
            await page.Locator("#sign-in-passkey").ClickAsync();
            await Assertions.Expect(page.Locator("#me h2")).ToHaveTextAsync("Odile Marsh");
        }

        await page.Locator("#passkeys li .text-button").ClickAsync();
        await Assertions.Expect(page.Locator("#passkeys li")).ToHaveCountAsync(0);
        await page.Locator("#do-sign-out").ClickAsync();
        await page.Locator("#sign-in-passkey").ClickAsync();
        await Assertions.Expect(page.Locator("#sign-in .problem")).ToHaveTextAsync(screen.Words["account.problem.passkey-sign-in"]);
    }

    private static Task<string> ChangesAsync(Screen office) =>
        office.Page.EvaluateAsync<string>("fetch('api/changes').then(r => r.text())");

    private static Regex Waiting() => new(@"^Sign in to send\. [1-9]\d* to send", RegexOptions.None, TimeSpan.FromSeconds(1));

    private static Regex Regex() => new(@"^[1-9]\d* are not sent yet", RegexOptions.None, TimeSpan.FromSeconds(1));

    private static async Task<Screen> SetUpAsync(IBrowserContext context, LiveServer server, string? address = null)
    {
        var screen = await Screen.OpenAsync(context, address ?? server.Address, "account");
        await screen.Page.FillAsync("#set-up-name", "Odile Marsh");
        await screen.Page.FillAsync("#set-up-password", Password);
        await screen.Page.Locator("#set-up [type=submit]").ClickAsync();
        await Assertions.Expect(screen.Page.Locator("#me h2")).ToHaveTextAsync("Odile Marsh");
        return screen;
    }

    private static async Task<string> InviteAsync(Screen office, string name, string role, string? kitchen = null)
    {
        await office.GoAsync("people");
        await office.Page.FillAsync("#invite-name", name);
        await office.Page.SelectOptionAsync("#invite-role", role);
        if (kitchen is not null)
        {
            await office.Page.Locator("#invite-kitchens label").Filter(new() { HasText = kitchen }).Locator("input").CheckAsync();
        }

        await office.Page.Locator("#invite [type=submit]").ClickAsync();
        var link = await office.Page.Locator("#invite-link").InputValueAsync();
        await Assertions.Expect(office.Page.Locator("#invitations li").First).ToContainTextAsync(name);
        return link;
    }

    private static async Task<Screen> AcceptAsync(IBrowserContext context, LiveServer server, string link, Screen? on)
    {
        var path = "accept" + link[link.IndexOf('#', StringComparison.Ordinal)..];
        var screen = on ?? await Screen.OpenAsync(context, server.Address, path);
        if (on is not null)
        {
            await on.GoAsync(path);
        }

        await screen.Page.FillAsync("#accept-password", Password);
        await screen.Page.Locator("#accept [type=submit]").ClickAsync();
        await screen.Page.Locator("#me").WaitForAsync();
        Assert.DoesNotContain("#", screen.Page.Url, StringComparison.Ordinal); // the secret is out of the address
        return screen;
    }

    private static async Task SentAsync(Screen screen)
    {
        var back = screen.Page.Url[screen.Address.Length..];
        await screen.GoAsync("settings");
        await screen.Page.Locator(".send .btn").Last.ClickAsync();
        await Assertions.Expect(screen.Page.Locator(".send p").First).ToHaveTextAsync(screen.Words["client.send.all"]);
        await screen.GoAsync(back);
    }
}
