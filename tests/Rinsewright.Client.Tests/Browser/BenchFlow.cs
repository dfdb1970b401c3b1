using Deque.AxeCore.Commons;
using Deque.AxeCore.Playwright;
using Microsoft.Playwright;
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
            await screen.FitsAsync();
            var result = await page.RunAxe(new AxeRunOptions());
            found.AddRange(result.Violations.Select(v => $"{name}: {v.Id}: {string.Join(" | ", v.Nodes.Take(3).Select(n => n.Html))}"));
        }
    }
}
