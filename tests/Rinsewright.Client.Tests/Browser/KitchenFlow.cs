using System.Text.RegularExpressions;
using Microsoft.Playwright;
using Rinsewright.Tests.Shared;
using Xunit;

namespace Rinsewright.Client.Tests.Browser;

/// <summary>A kitchen and its machine without a signal, found again as people type, sent once when the signal is back, seen on another device.</summary>
[Collection("Browser")]
public sealed class KitchenFlow(BrowserFixture fixture)
{
    /// <summary>Made while the server is gone; a second device then has it, and what both write comes together.</summary>
    [Fact]
    public async Task A_kitchen_made_without_the_server_reaches_a_second_device()
    {
        await using var server = new LiveServer();
        await server.StartAsync();
        await using var context = await fixture.ContextAsync(BrowserFixture.Phone);
        var screen = await Screen.OpenAsync(context, server.Address, "kitchens");
        var page = screen.Page;
        await screen.KeptAsync();
        await server.StopAsync();
        await page.ReloadAsync();
        await screen.ReadyAsync();

        await page.FillAsync("#new-name", "Café Larkspur");
        await page.Locator("#new-kitchen button").ClickAsync();
        await page.FillAsync("#f-note", "ring at the dock");
        await page.ClickAsync("#add-followUps");
        var what = page.Locator("#follow-ups input[type=text]").First;
        await what.FillAsync("delime the booster");
        await page.Locator("#follow-ups input[type=date]").FillAsync("2026-01-05");
        await page.Locator("#follow-ups input[type=text]").Last.FillAsync("acid, goggles");
        await page.Locator("#follow-ups input[type=text]").Last.BlurAsync();
        await page.Locator("#machines .btn").ClickAsync();
        await page.Locator("#new-machine button").ClickAsync();
        await page.Locator("#machine-place").WaitForAsync();
        await Assertions.Expect(page.Locator("#machine-place > summary .fold-now")).ToHaveTextAsync("Café Larkspur");

        // Everything is there after the page is loaded again, and is found with a slip and without the accent.
        await screen.GoAsync("kitchens");
        await page.FillAsync("#search", "cafe larkpsur");
        await page.Locator("#kitchen-list a").Filter(new() { HasText = "Café Larkspur" }).ClickAsync();
        await Assertions.Expect(page.Locator("#f-note")).ToHaveValueAsync("ring at the dock");
        await Assertions.Expect(page.Locator("#machines .saved-list li")).ToHaveCountAsync(1);
        await screen.GoAsync("day");
        await Assertions.Expect(page.Locator("#due")).ToContainTextAsync("delime the booster");
        await Assertions.Expect(page.Locator("#take")).ToContainTextAsync("acid, goggles");

        // The signal is back.
        await server.StartAsync();
        await screen.GoAsync("settings");
        await page.Locator(".send .btn").ClickAsync();
        await Assertions.Expect(page.Locator(".send p").First).ToHaveTextAsync(screen.Words["client.send.all"]);

        await using var second = await fixture.ContextAsync(BrowserFixture.Desk);
        var other = await Screen.OpenAsync(second, server.Address, "kitchens");
        await other.Page.Locator("#kitchen-list a").Filter(new() { HasText = "Café Larkspur" }).ClickAsync();
        await other.Page.FillAsync("#f-hours", "2 to 4 pm");
        await other.Page.Locator("#f-hours").BlurAsync();
        await other.Page.WaitForTimeoutAsync(400); // the pause after typing, then the write
        await other.SavedAsync();
        await other.GoAsync("settings");
        await other.Page.Locator(".send .btn").ClickAsync();
        await Assertions.Expect(other.Page.Locator(".send p").First).ToHaveTextAsync(other.Words["client.send.all"]);

        await page.Locator(".send .btn").ClickAsync();
        await Assertions.Expect(page.Locator(".send p").First).ToHaveTextAsync(screen.Words["client.send.all"]);
        await screen.GoAsync("kitchens");
        await page.Locator("#kitchen-list a").Filter(new() { HasText = "Café Larkspur" }).ClickAsync();
        await Assertions.Expect(page.Locator("#f-hours")).ToHaveValueAsync("2 to 4 pm");
        await Assertions.Expect(page.Locator("#f-note")).ToHaveValueAsync("ring at the dock");
        await screen.UnfoldAsync("history");
        await page.Locator("#history .btn").ClickAsync();
        await Assertions.Expect(page.Locator("#history li").Filter(new() { HasText = "2 to 4 pm" })).ToHaveCountAsync(1);

        // A proof begun here carries the kitchen.
        await page.Locator("#state .btn").ClickAsync();
        await Assertions.Expect(page.Locator(".head .sub")).ToContainTextAsync("Café Larkspur");
        await Assertions.Expect(page).ToHaveURLAsync(new Regex("/proof/[0-9a-f-]+$", RegexOptions.None, TimeSpan.FromSeconds(1)));
    }

    /// <summary>A table shows what it would bring and what it leaves out, and is kept only when asked.</summary>
    [Fact]
    public async Task A_table_is_looked_at_before_it_is_kept()
    {
        var server = await fixture.ServerAsync();
        await using var context = await fixture.ContextAsync(BrowserFixture.Desk);
        var screen = await Screen.OpenAsync(context, server.Address, "kitchens/table");
        var page = screen.Page;
        await page.Locator("#table-file")
            .SetInputFilesAsync(
                new FilePayload
                {
                    Name = "kitchens.csv",
                    MimeType = "text/csv",
                    Buffer = "kitchen,machine,machine kind\nTin Bell Diner,Bell,door-chemical\n,Bell,flight\n"u8.ToArray(),
                }
            );
        await Assertions.Expect(page.Locator("#preview li")).ToHaveCountAsync(1);
        await Assertions.Expect(page.Locator("#table-problems li")).ToHaveCountAsync(1);
        await page.ClickAsync("#take-table");
        await Assertions.Expect(page.Locator("#preview")).ToHaveCountAsync(0);
        await screen.GoAsync("kitchens");
        await Assertions.Expect(page.Locator("#kitchen-list")).ToContainTextAsync("Bell");
    }

    /// <summary>What is on the device goes into tables: a row for every visit of the demo, and what was ordered and is to be done in its own words.</summary>
    [Fact]
    public async Task Visits_are_written_as_tables()
    {
        await using var server = new LiveServer(demo: true);
        await server.StartAsync();
        await using var context = await fixture.ContextAsync(BrowserFixture.Phone);
        var screen = await Screen.OpenAsync(context, server.Address, "day");
        var page = screen.Page;
        await screen.KeptAsync();
        await page.Locator("#take li", new() { HasText = "Element for the wash tank" }).WaitForAsync();
        await screen.GoAsync("kitchens/table");
        var visits = Tree.Files("docs/visits/history", ".json").Count;

        foreach (
            var (which, rows, says) in ((string, int?, string)[])
                [
                    ("visits", visits, "Millrace Brewery"),
                    ("readings", null, "rd-rinse-pressure"),
                    ("findings", null, "finding,found"),
                    ("parts", null, "\"Element for the wash tank, 5 kW\""),
                    ("follow-ups", null, "\"Delime acid, 2 gal; goggles and gloves\""),
                ]
        )
        {
            var download = await page.RunAndWaitForDownloadAsync(() => page.ClickAsync($"#write-{which}"));
            Assert.Matches($"^rinsewright-{which}-[0-9]{{4}}-[0-9]{{2}}-[0-9]{{2}}\\.csv$", download.SuggestedFilename);
            var text = await File.ReadAllTextAsync(await download.PathAsync(), TestContext.Current.CancellationToken);
            Assert.Contains(says, text, StringComparison.Ordinal);
            if (rows is { } count)
            {
                Assert.Equal(count, text.Split("\r\n").Length - 2); // its head, and what follows the last end of line
            }
        }

        Assert.Empty(await screen.FindingsAsync("tables"));
    }
}
