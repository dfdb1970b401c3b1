using Microsoft.Playwright;
using Rinsewright.Engine.Machines;
using Xunit;

namespace Rinsewright.Client.Tests.Browser;

/// <summary>The Bench as a person uses it, without a signal, at both sizes, in both themes and languages.</summary>
[Collection("Browser")]
public sealed class BenchFlow(BrowserFixture fixture)
{
    /// <summary>From a titration to a closed delime; what was typed is still there on coming back.</summary>
    [Theory]
    [InlineData(false, "en", false)]
    [InlineData(false, "es", true)]
    [InlineData(true, "en", true)]
    [InlineData(true, "es", false)]
    public async Task A_sum_is_worked_without_a_signal(bool desk, string language, bool dark)
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
        await CheckAsync("list");
        await page.GetByRole(AriaRole.Link, new() { Name = screen.Words["bench.titration.name"] }).First.ClickAsync();

        // CHV070, CHV071: ten drops of normal acid in 50 mL are 1.55 g/L of a 20 % product.
        await page.FillAsync("#bench-normality", "1");
        await page.FillAsync("#bench-sample", "50");
        await page.FillAsync("#bench-drops", "10");
        await Assertions.Expect(page.Locator(".bench-first b")).ToHaveTextAsync(language == "en" ? "1.55" : "1,55");
        await CheckAsync("titration");
        await page.FillAsync("#bench-drops", "ten");
        await Assertions.Expect(page.Locator("#bench-drops")).ToHaveAttributeAsync("aria-invalid", "true");
        await Assertions.Expect(page.Locator(".bench-answer")).ToContainTextAsync(screen.Words["bench.field.drops"]);
        await page.FillAsync("#bench-drops", "10");

        await page.GetByRole(AriaRole.Link, new() { Name = screen.Words["client.bench.back"] }).ClickAsync();
        await page.GetByRole(AriaRole.Link, new() { Name = screen.Words["bench.delime.name"] }).First.ClickAsync();
        await Assertions.Expect(page.Locator(".bench-answer")).ToContainTextAsync(screen.Words["bench.problem.chlorine-first"]);
        foreach (var id in new[] { "chlorineOff", "drained", "noChlorine" })
        {
            await page.SelectOptionAsync($"#bench-{id}", "yes");
        }

        await Assertions.Expect(page.Locator(".bench-first b")).Not.ToBeEmptyAsync();
        await CheckAsync("delime");
        await page.GetByRole(AriaRole.Link, new() { Name = screen.Words["client.bench.back"] }).ClickAsync();
        await page.GetByRole(AriaRole.Link, new() { Name = screen.Words["bench.titration.name"] }).First.ClickAsync();
        await Assertions.Expect(page.Locator("#bench-sample")).ToHaveValueAsync("50");

        Assert.True(found.Count == 0, string.Join('\n', found));

        async Task CheckAsync(string name)
        {
            found.AddRange(await screen.FindingsAsync(name));
        }
    }

    /// <summary>A machine is made; a sum takes its figures, is kept with it and stands on its screen; the card over the sinks is made. All but the first without a signal.</summary>
    [Theory]
    [InlineData(false, "en")]
    [InlineData(true, "es")]
    public async Task A_sum_is_kept_with_a_machine_and_printed(bool desk, string language)
    {
        var server = await fixture.ServerAsync();
        await using var context = await fixture.ContextAsync(
            desk ? BrowserFixture.Desk : BrowserFixture.Phone,
            language,
            ColorScheme.Light
        );
        var screen = await Screen.OpenAsync(context, server.Address, "machine", language);
        var (page, words) = (screen.Page, screen.Words);
        await screen.KeptAsync();
        await page.SelectOptionAsync("#machine-kind", nameof(MachineKind.DoorHotWater));
        await page.Locator("#new-machine button").ClickAsync();
        await page.Locator(".section-host svg.section").WaitForAsync();
        await context.SetOfflineAsync(true);

        await screen.UnfoldAsync("machine-set-ups");
        await page.Locator("#machine-set-ups a.btn").ClickAsync();
        await page.GetByRole(AriaRole.Link, new() { Name = words["bench.tank-dosing.name"] }).First.ClickAsync();

        // 10 gal, typical of the kind, at 1.5 g/L: 56.8 g.
        await Assertions.Expect(page.Locator("#bench-tank")).ToHaveValueAsync("10");
        await Assertions.Expect(page.Locator(".bench-rest dd").First).ToContainTextAsync("57");
        await page.FillAsync("#bench-by", "R. Okafor");
        await page.ClickAsync("#bench-pin");
        await Assertions.Expect(page.Locator("#bench-keep [role=status]")).Not.ToBeEmptyAsync();
        await screen.UnfoldAsync("bench-machine");
        await Assertions.Expect(page.Locator(".bench-kept")).ToContainTextAsync("R. Okafor");
        await screen.FitsAsync();

        await page.GotoAsync(screen.Address + "bench/by-hand");
        await screen.ReadyAsync();
        await Assertions.Expect(page.Locator(".bench-answer")).ToContainTextAsync(words["bench.field.label"]);
        await page.FillAsync("#bench-label", language == "en" ? "5.25" : "5,25");
        await Assertions.Expect(page.Locator(".bench-first b")).ToHaveTextAsync("123");
        Assert.Equal(0, await page.Locator("#bench-washSink").CountAsync());
        await page.SelectOptionAsync("#bench-sinks", "volumes");
        await page.Locator("#bench-washSink").WaitForAsync();
        await page.SelectOptionAsync("#bench-sinks", "measured");
        var download = await page.RunAndWaitForDownloadAsync(() => page.ClickAsync("#bench-pdf"));
        await using var file = File.OpenRead(await download.PathAsync());
        var head = new byte[5];
        await file.ReadExactlyAsync(head, TestContext.Current.CancellationToken);
        Assert.Equal("%PDF-"u8.ToArray(), head);
        Assert.Empty(await screen.FindingsAsync("printed"));

        // The office cannot be reached; nothing else may be wrong.
        Assert.All(screen.Complaints, c => Assert.Contains("ERR_INTERNET_DISCONNECTED", c, StringComparison.Ordinal));
    }

    /// <summary>A visit runs at a machine; a sum of that machine is kept with it and stands in the visit.</summary>
    [Fact]
    public async Task A_sum_is_kept_with_the_visit_that_runs()
    {
        var server = await fixture.ServerAsync();
        await using var context = await fixture.ContextAsync(BrowserFixture.Phone);
        var screen = await Screen.OpenAsync(context, server.Address, "machine");
        var (page, words) = (screen.Page, screen.Words);
        await page.SelectOptionAsync("#machine-kind", nameof(MachineKind.DoorHotWater));
        await page.Locator("#new-machine button").ClickAsync();
        await screen.BeginVisitAsync();
        await screen.UnfoldAsync("sums");
        await page.ClickAsync("#to-bench");
        await page.GetByRole(AriaRole.Link, new() { Name = words["bench.tank-dosing.name"] }).First.ClickAsync();
        await page.FillAsync("#bench-by", "R. Okafor");
        await page.ClickAsync("#bench-pin-visit");
        await Assertions.Expect(page.Locator("#bench-keep [role=status]")).ToHaveTextAsync(words["client.bench.kept-visit"]);
        await page.ClickAsync("#bench-keep a.btn");
        await page.Locator("#standing").WaitForAsync();
        await screen.UnfoldAsync("sums");
        await Assertions.Expect(page.Locator("#sums")).ToContainTextAsync("R. Okafor");
    }
}
