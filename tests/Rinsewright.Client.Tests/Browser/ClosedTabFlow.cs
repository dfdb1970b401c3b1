using Microsoft.Playwright;
using Rinsewright.Tests.Shared;
using Xunit;

namespace Rinsewright.Client.Tests.Browser;

/// <summary>A tab closed in the middle of an entry, without a signal, and opened again: what stood on the screen stands there again, written or not.</summary>
[Collection("Browser")]
public sealed class ClosedTabFlow(BrowserFixture fixture)
{
    // A device that is still busy with what came before: as long as this page lives nothing more is written.
    private const string Busy = """
        () => new Promise((done) => {
          const request = indexedDB.open("rinsewright");
          request.onsuccess = () => {
            const docs = request.result.transaction(["docs", "list", "outbox", "marks"], "readwrite").objectStore("docs");
            const again = () => { docs.get("nothing").onsuccess = again; };
            again();
            done();
          };
        })
        """;

    /// <summary>A reading, a photograph, a part's state and half a remark, which is still being typed; then the rest of it. Nothing waits for the tick that says it is kept.</summary>
    [Fact]
    public async Task A_visit_closed_in_the_middle_of_a_remark_has_every_letter_of_it()
    {
        await using var server = new LiveServer();
        await server.StartAsync();
        await using var context = await fixture.ContextAsync(BrowserFixture.Phone);
        var screen = await Screen.OpenAsync(context, server.Address, "kitchens");
        var page = screen.Page;
        await screen.KeptAsync();
        await screen.NewKitchenAsync("Quince Hotel");
        await screen.NewMachineAsync("DoorHotWater");
        await server.StopAsync();
        await screen.BeginVisitAsync();
        await page.FillAsync("#asFound-rd-ware-surface-temp", "155");
        await page.SetInputFilesAsync("#asFound-camera", Path.Combine(Tree.Root, "docs", "handbook", "images", "proof-phone.png"));
        await page.Locator("#found .saved-list li").WaitForAsync();
        await screen.UnfoldAsync("parts");
        var part = (await page.Locator(".visit-part").First.GetAttributeAsync("id"))!["look-".Length..];
        await page.Locator($"#look-{part} input[value=worn]").CheckAsync();
        await page.Locator($"#note-{part}").WaitForAsync();
        await page.EvaluateAsync(Busy);
        await page.Locator($"#note-{part}").PressSequentiallyAsync("rim bent, ");
        await Assertions.Expect(page.Locator(".saved").First).ToContainTextAsync(screen.Words["client.saved.saving"]);
        screen = await ReopenedAsync(context, screen, server.Address);

        await StandsAsync("rim bent, ");
        await Assertions.Expect(screen.Page.Locator("#asFound-rd-ware-surface-temp")).ToHaveValueAsync("155");
        await Assertions.Expect(screen.Page.Locator("#found .saved-list li")).ToHaveCountAsync(1);
        await Assertions.Expect(screen.Page.Locator($"#look-{part} input[value=worn]")).ToBeCheckedAsync();

        // A reading, judged by the page that comes after; and the rest of the word, at once.
        await screen.Page.FillAsync("#asFound-rd-ware-surface-temp", "168");
        await screen.Page.Locator($"#note-{part}").FocusAsync();
        await screen.Page.Keyboard.PressAsync("End");
        await screen.Page.Keyboard.TypeAsync("left hand");
        screen = await ReopenedAsync(context, screen, server.Address);
        await StandsAsync("rim bent, left hand");
        await Assertions.Expect(screen.Page.Locator("#asFound-rd-ware-surface-temp")).ToHaveValueAsync("168");
        await screen.SavedAsync();
        Assert.Equal(
            0,
            await screen.Page.EvaluateAsync<int>(
                "() => Object.keys(localStorage).filter((name) => name.startsWith('rinsewright.left-')).length"
            )
        );

        async Task StandsAsync(string remark)
        {
            await screen.Page.Locator("#standing h2").WaitForAsync();
            await screen.UnfoldAsync("parts");
            await Assertions.Expect(screen.Page.Locator($"#note-{part}")).ToHaveValueAsync(remark);
        }
    }

    /// <summary>The same of a proof.</summary>
    [Fact]
    public async Task A_proof_closed_in_the_middle_of_a_reading_has_it()
    {
        await using var server = new LiveServer();
        await server.StartAsync();
        await using var context = await fixture.ContextAsync(BrowserFixture.Phone);
        var screen = await Screen.OpenAsync(context, server.Address);
        var page = screen.Page;
        await screen.KeptAsync();
        await server.StopAsync();
        await page.GetByRole(AriaRole.Button, new() { Name = screen.Words["client.empty.type"] }).ClickAsync();
        await page.FillAsync("#kitchen", "Tin Bell Diner");
        await page.GetByLabel(screen.Words["client.label.reached"], new() { Exact = true }).CheckAsync();
        await page.WaitForURLAsync("**/proof/*");
        await page.EvaluateAsync(Busy);
        await page.Locator("#wash").PressSequentiallyAsync("160.5");
        await Assertions.Expect(page.Locator(".saved").First).ToContainTextAsync(screen.Words["client.saved.saving"]);
        screen = await ReopenedAsync(context, screen, server.Address);
        await screen.VerdictAsync("proven");
        await Assertions.Expect(screen.Page.Locator("#wash")).ToHaveValueAsync("160.5");
        await Assertions.Expect(screen.Page.Locator("#kitchen")).ToHaveValueAsync("Tin Bell Diner");
    }

    // As a person closes it: nothing is asked before.
    private static async Task<Screen> ReopenedAsync(IBrowserContext context, Screen screen, string address)
    {
        var path = screen.Page.Url[address.Length..];
        await screen.Page.CloseAsync(new() { RunBeforeUnload = false });
        return await Screen.OpenAsync(context, address, path);
    }
}
