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
        await screen.SavedAsync(); // the field says at once how it stands
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
        var sheet = await File.ReadAllTextAsync(
            await download.PathAsync(),
            System.Text.Encoding.Latin1,
            TestContext.Current.CancellationToken
        );
        Assert.StartsWith("%PDF-", sheet, StringComparison.Ordinal);
        Assert.Contains("/StructTreeRoot", sheet, StringComparison.Ordinal);
        Assert.Contains("/FontFile2", sheet, StringComparison.Ordinal);

        // What is no logger file is refused with a sentence, and the proof that was open stays.
        await page.Locator("#file .drop input[type=file]")
            .SetInputFilesAsync(
                new FilePayload
                {
                    Name = "photo.csv",
                    MimeType = "text/csv",
                    Buffer = [0xFF, 0xD8, 0xFF, 0xE0, 0, 16, 0x4A, 0x46, 0x49, 0x46, 0, 1],
                }
            );
        await Assertions
            .Expect(page.Locator(".run-state .bad"))
            .ToContainTextAsync(screen.Words.Say("client.file.refused", ("name", "photo.csv")));
        Assert.Equal(3, await page.Locator(".passes label").CountAsync());

        var rows = Enumerable
            .Range(0, 200)
            .Select(i =>
                (
                    $"2031-05-14 10:{i / 60:00}:{i % 60:00}",
                    i < 40 ? 74
                    : i < 100 ? 172 - (98 * Math.Exp(-(i - 40) / 12.0))
                    : 74 + (98 * Math.Exp(-(i - 100) / 60.0))
                )
            );
        await page.Locator("#file .drop input[type=file]")
            .SetInputFilesAsync(
                new FilePayload
                {
                    Name = "log.xlsx",
                    MimeType = "application/octet-stream",
                    Buffer = Workbooks.Of(rows),
                }
            );
        await Assertions.Expect(page.Locator(".passes label")).ToHaveCountAsync(1);
        await Assertions.Expect(page.Locator("#file .fold-now")).ToHaveTextAsync("log.xlsx");

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
        Assert.Equal(3, kitchens.Count);
        Assert.Single(kitchens, k => k == "Larkspur Lodge");
    }
}
