using Microsoft.Playwright;
using Xunit;

namespace Rinsewright.Client.Tests.Browser;

/// <summary>The Proof screen as a person uses it.</summary>
[Collection("Browser")]
public sealed class ProofFlow(BrowserFixture fixture)
{
    /// <summary>An ambiguous date is asked; the answer reads the file again.</summary>
    [Fact]
    public async Task An_open_decision_is_shown_on_top_and_can_be_given()
    {
        var server = await fixture.ServerAsync();
        await using var context = await fixture.ContextAsync(BrowserFixture.Desk);
        var screen = await Screen.OpenAsync(context, server.Address);
        var page = screen.Page;
        await screen.GiveAsync("ambiguous.csv", System.Text.Encoding.UTF8.GetBytes(Ambiguous()));
        await screen.UnfoldAsync("file");
        var first = page.Locator(".decision").First;
        await Assertions.Expect(first.Locator(".basis")).ToHaveTextAsync(screen.Words["client.basis.open"]);
        await first.Locator("select").SelectOptionAsync("dmy");
        await Assertions.Expect(page.Locator(".decision.given").First).ToBeVisibleAsync();
        Assert.Equal(0, await page.Locator(".decision.open").CountAsync());
        screen.Quiet();
    }

    /// <summary>A file without a unit on three columns asks once for all of them.</summary>
    [Fact]
    public async Task One_answer_gives_every_column_its_unit()
    {
        var server = await fixture.ServerAsync();
        await using var context = await fixture.ContextAsync(BrowserFixture.Phone);
        var screen = await Screen.OpenAsync(context, server.Address);
        var page = screen.Page;
        var lines = Ambiguous().Split('\n')[1..];
        var three = string.Join(
            '\n',
            lines.Select(l => l.Length > 0 ? l[6..10] + "-" + l[..5].Replace('/', '-') + l[10..] + l[19..] + l[19..] : "")
        );
        await screen.GiveAsync("three.csv", System.Text.Encoding.UTF8.GetBytes(three));
        await Assertions.Expect(page.Locator(".settle.answer select")).ToHaveCountAsync(1);
        await screen.VerdictAsync("undetermined");
        await page.Locator("#answer-unit-all").SelectOptionAsync("[degF]");
        await Assertions.Expect(page.Locator(".settle.answer")).ToHaveCountAsync(0);
        await screen.VerdictAsync("proven");
        // Nothing in the file says where the sensors were: the verdict owns up to it, one line for each column.
        await Assertions.Expect(page.Locator("#verdict p")).ToHaveCountAsync(4);
        screen.Quiet();
    }

    /// <summary>Arrow keys read the curve; plus narrows the view; Home shows all.</summary>
    [Fact]
    public async Task The_chart_is_read_and_zoomed_by_keyboard()
    {
        var server = await fixture.ServerAsync();
        await using var context = await fixture.ContextAsync(BrowserFixture.Desk);
        var screen = await Screen.OpenAsync(context, server.Address);
        var page = screen.Page;
        await page.Locator(".demo-list button").First.ClickAsync();
        await page.Locator(".chart-host[tabindex]").FocusAsync();
        await page.Keyboard.PressAsync("ArrowRight");
        var read = page.Locator(".chart-read");
        await Assertions.Expect(read).ToContainTextAsync("HUE");
        var before = await read.TextContentAsync();
        await page.Keyboard.PressAsync("ArrowRight");
        await Assertions.Expect(read).Not.ToHaveTextAsync(before!);
        var whole = page.GetByRole(AriaRole.Button, new() { Name = screen.Words["client.chart.whole"] });
        await Assertions.Expect(whole).ToBeDisabledAsync();
        await page.Keyboard.PressAsync("+");
        await Assertions.Expect(whole).ToBeEnabledAsync();
        await page.Keyboard.PressAsync("Home");
        await Assertions.Expect(whole).ToBeDisabledAsync();
        screen.Quiet();
    }

    /// <summary>Typed readings alone, in Spanish with a decimal comma; delete and undo.</summary>
    [Fact]
    public async Task A_label_alone_proves_and_a_deleted_proof_comes_back()
    {
        var server = await fixture.ServerAsync();
        await using var context = await fixture.ContextAsync(BrowserFixture.Phone, "es");
        var screen = await Screen.OpenAsync(context, server.Address, "", "es");
        var page = screen.Page;
        await page.GetByRole(AriaRole.Button, new() { Name = screen.Words["client.empty.type"] }).ClickAsync();
        await page.FillAsync("#kitchen", "Tin Bell Diner");
        await page.FillAsync("#wash", "71,4");
        await page.GetByLabel(screen.Words["client.label.reached"], new() { Exact = true }).CheckAsync();
        await Assertions.Expect(page.Locator(".why .ev-name").First).ToBeVisibleAsync();
        await page.FillAsync("#wash", "160,5");
        await screen.VerdictAsync("proven");
        await page.ReloadAsync();
        await screen.VerdictAsync("proven");
        await page.GetByRole(AriaRole.Link, new() { Name = screen.Words["client.nav.more"], Exact = true }).ClickAsync();
        await page.GetByRole(AriaRole.Link, new() { Name = screen.Words["client.nav.saved"] }).ClickAsync();
        var here = page.Locator(".saved-list li").Filter(new() { HasText = "Tin Bell Diner" });
        await here.Locator(".text-button").ClickAsync();
        await Assertions.Expect(here).ToHaveCountAsync(0);
        await page.Locator(".toast button").ClickAsync();
        await Assertions.Expect(here).ToHaveCountAsync(1);
        screen.Quiet();
    }

    // Invented: every day and month of the year's first half could change places.
    private static string Ambiguous()
    {
        var lines = new List<string> { "Date Time,Plate (°F)" };
        var at = new DateTime(2031, 3, 4, 10, 0, 0, DateTimeKind.Unspecified);
        for (var i = 0; i < 240; i++)
        {
            var value =
                i < 60 ? 74
                : i < 120 ? 172 - (98 * Math.Exp(-(i - 60) / 12.0))
                : 74 + (98 * Math.Exp(-(i - 120) / 60.0));
            lines.Add(FormattableString.Invariant($"{at.AddSeconds(i):MM/dd/yyyy HH:mm:ss},{value:0.0}"));
        }

        return string.Join('\n', lines) + "\n";
    }
}
