using System.Text.Json;
using Microsoft.Playwright;
using Rinsewright.Files.Demo;
using Xunit;

namespace Rinsewright.Client.Tests.Browser;

/// <summary>The work where the work is: a basement without signal.</summary>
[Collection("Browser")]
public sealed class OfflineFlow(BrowserFixture fixture)
{
    /// <summary>File and readings, reload, server gone, another file and its sheet, server back: sent once.</summary>
    [Fact]
    public async Task A_proof_made_without_the_server_reaches_it_once()
    {
        await using var server = new LiveServer();
        await server.StartAsync();
        await using var context = await fixture.ContextAsync(BrowserFixture.Phone);
        var screen = await Screen.OpenAsync(context, server.Address);
        var page = screen.Page;
        await screen.KeptAsync();
        await screen.GiveAsync(DemoLoggers.LarkspurTwoTank);
        Assert.Equal(5, await page.Locator(".passes label").CountAsync());
        await page.FillAsync("#kitchen", "Larkspur Lodge");
        await screen.UnfoldAsync("readings");
        await page.FillAsync("#final-rinse", "177,2");
        await screen.VerdictAsync("not-proven");
        await Assertions.Expect(page.Locator("#final-rinse-field .st")).ToHaveTextAsync(screen.Words["reading-status.out-of-range"]);
        screen.Quiet();

        await server.StopAsync();
        await page.ReloadAsync();
        await screen.ReadyAsync();
        await screen.VerdictAsync("not-proven");
        await screen.UnfoldAsync("readings");
        await Assertions.Expect(page.Locator("#final-rinse")).ToHaveValueAsync("177.2");
        await Assertions.Expect(page.Locator("#kitchen")).ToHaveValueAsync("Larkspur Lodge");

        await page.GetByRole(AriaRole.Button, new() { Name = screen.Words["client.proof.new"] }).ClickAsync();
        await page.Locator(".drop.large").WaitForAsync();
        await screen.GiveAsync(DemoLoggers.MillraceDoor);
        Assert.Equal(3, await page.Locator(".passes label").CountAsync());
        var download = await page.RunAndWaitForDownloadAsync(() =>
            page.GetByRole(AriaRole.Button, new() { Name = screen.Words["client.sheet.download"] }).ClickAsync()
        );
        var head = new byte[5];
        await using (var pdf = File.OpenRead(await download.PathAsync()))
        {
            await pdf.ReadExactlyAsync(head, TestContext.Current.CancellationToken);
        }

        Assert.Equal("%PDF-", System.Text.Encoding.ASCII.GetString(head));

        await server.StartAsync();
        await page.GotoAsync(server.Address + "saved");
        await screen.ReadyAsync();
        await Assertions.Expect(page.Locator(".send p").First).ToHaveTextAsync(screen.Words["client.send.all"], new() { Timeout = 30000 });
        await page.GetByRole(AriaRole.Button, new() { Name = screen.Words["client.send.now"] }).ClickAsync();
        await Assertions.Expect(page.Locator(".send p").First).ToHaveTextAsync(screen.Words["client.send.all"]);

        using var http = new HttpClient();
        using var proofs = JsonDocument.Parse(
            await http.GetStringAsync(server.Address + "api/proofs", TestContext.Current.CancellationToken)
        );
        var kitchens = proofs.RootElement.EnumerateArray().Select(p => p.GetProperty("kitchen").GetString()).ToList();
        Assert.Equal(2, kitchens.Count);
        Assert.Single(kitchens, k => k == "Larkspur Lodge");
    }
}
