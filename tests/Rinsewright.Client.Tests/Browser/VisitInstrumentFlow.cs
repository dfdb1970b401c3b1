using Microsoft.Playwright;
using Xunit;

namespace Rinsewright.Client.Tests.Browser;

/// <summary>Several instruments in one visit: the one that suits is taken, and what cannot be never hides the field it is mended in.</summary>
[Collection("Browser")]
public sealed class VisitInstrumentFlow(BrowserFixture fixture)
{
    // Larkspur Lodge's conveyor, as the server seeds it: its visits carry a pressure gauge, a test plate and a probe.
    private const string Larkspur = "01993a00-c001-7000-8000-7a6d617261c1";

    [Fact]
    public async Task A_gauge_in_hand_is_not_written_beside_temperatures()
    {
        await using var server = new LiveServer(demo: true);
        await server.StartAsync();
        await using var context = await fixture.ContextAsync(BrowserFixture.Phone);
        var screen = await Screen.OpenAsync(context, server.Address, "kitchens");
        var page = screen.Page;
        await screen.KeptAsync();
        await page.Locator("#kitchen-list a").Nth(5).WaitForAsync();
        await screen.GoAsync($"machine/{Larkspur}");
        await screen.BeginVisitAsync();
        await Assertions.Expect(page.Locator("#asFound-instrument option").First).ToContainTextAsync("Test gauge");

        await page.FillAsync("#asFound-rd-ware-surface-temp", "165");
        await page.FillAsync("#asFound-rd-final-rinse-temp", "184");
        await page.FillAsync("#asFound-rd-rinse-pressure", "20");
        await page.Locator("#asFound-rd-rinse-pressure").BlurAsync();
        await Assertions
            .Expect(page.Locator("#found .reading", new() { Has = page.Locator("#asFound-rd-rinse-pressure") }))
            .ToContainTextAsync("Test gauge");
        await Assertions
            .Expect(page.Locator("#found .reading", new() { Has = page.Locator("#asFound-rd-final-rinse-temp") }))
            .Not.ToContainTextAsync("Test gauge");
        await Assertions.Expect(page.Locator("#standing h2")).Not.ToHaveTextAsync(screen.Words["client.visit.cannot-be"]);

        // Usual detergent, and gauges that show right or too little, are taken; a pH where its rise is asked for is refused at the field, and the rest is still judged.
        await page.FillAsync("#asFound-rd-detergent", "2.5");
        await page.FillAsync("#asFound-rd-wash-gauge-error", "0");
        await page.FillAsync("#asFound-rd-rinse-gauge-error", "-2");
        await page.FillAsync("#asFound-rd-carryover-ph", "8.3");
        await page.Locator("#asFound-rd-carryover-ph").BlurAsync();
        await Assertions.Expect(page.Locator("#found .problem")).ToHaveCountAsync(1);
        await Assertions.Expect(page.Locator("#asFound-rd-carryover-ph-field .problem")).ToContainTextAsync("8.3");
        await Assertions.Expect(page.Locator("#standing h2")).Not.ToHaveTextAsync(screen.Words["client.visit.cannot-be"]);
        await page.FillAsync("#asFound-rd-carryover-ph", "0.4");
        await Assertions.Expect(page.Locator("#found .problem")).ToHaveCountAsync(0);

        // An accuracy that cannot be is refused with every field still there to mend it.
        await screen.UnfoldAsync("start");
        var accuracy = page.Locator("#start input[id$='-uncertainty']").First;
        var before = await accuracy.InputValueAsync();
        await accuracy.FillAsync("0");
        await accuracy.BlurAsync();
        await page.Locator(".verdict[role=alert]").WaitForAsync(new() { Timeout = 120000 });
        await Assertions.Expect(page.Locator("#asFound-rd-final-rinse-temp")).ToHaveValueAsync("184");
        Assert.True(await page.Locator("#parts .visit-part").CountAsync() > 10);
        await accuracy.FillAsync(before);
        await accuracy.BlurAsync();
        await page.Locator("#standing h2").WaitForAsync(new() { Timeout = 120000 });
    }
}
