using System.Text.RegularExpressions;
using Deque.AxeCore.Commons;
using Deque.AxeCore.Playwright;
using Microsoft.Playwright;
using Rinsewright.Contracts.Machines;
using Rinsewright.Engine.Machines;
using Xunit;

namespace Rinsewright.Client.Tests.Browser;

/// <summary>The Machine screen as a person uses it, at both sizes, in both themes and languages.</summary>
[Collection("Browser")]
public sealed class MachineFlow(BrowserFixture fixture)
{
    /// <summary>Describe a machine, walk and tap to parts, note a state, type the plate, leave and come back, export; axe finds nothing.</summary>
    [Theory]
    [InlineData(false, "en", false)]
    [InlineData(false, "es", true)]
    [InlineData(true, "en", true)]
    [InlineData(true, "es", false)]
    public async Task A_machine_is_described_and_its_parts_are_found(bool desk, string language, bool dark)
    {
        var server = await fixture.ServerAsync();
        await using var context = await fixture.ContextAsync(
            desk ? BrowserFixture.Desk : BrowserFixture.Phone,
            language,
            dark ? ColorScheme.Dark : ColorScheme.Light
        );
        var screen = await Screen.OpenAsync(context, server.Address, "machine", language);
        var page = screen.Page;
        var found = new List<string>();
        await CheckAsync("empty");
        await MakeAsync(MachineKind.RackConveyorTwoTank);

        // By key: to a part and into it.
        await page.Locator(".section-host").FocusAsync();
        await page.Keyboard.PressAsync("ArrowRight");
        await page.Keyboard.PressAsync("ArrowDown");
        await page.Keyboard.PressAsync("Enter");
        await page.Locator("#part").WaitForAsync();

        // By touch, at the large size.
        await page.Locator("input[value=reading]").CheckAsync();
        await page.Locator("[data-id='booster']").ScrollIntoViewIfNeededAsync();
        await page.Locator("[data-id='booster'] .b").First.ClickAsync();
        await Assertions.Expect(page.Locator("#part h2")).ToHaveTextAsync(screen.Words["section.part.booster"]);
        await page.Locator("#part input[value=Dirty]").CheckAsync();
        await Assertions
            .Expect(page.Locator("[data-id='booster']"))
            .ToHaveAttributeAsync("aria-label", $"{screen.Words["section.part.booster"]}, {screen.Words["section.state.dirty"]}");

        // The plate: a number alone has the unit it had; what is typed is the plate's.
        await page.FillAsync("#figure-booster-heater-rated", "30");
        await page.Locator("#figure-booster-heater-rated").BlurAsync();
        await page.FillAsync("#machine-name", "Larkspur");
        await Assertions.Expect(page.Locator(".head h1")).ToHaveTextAsync("Larkspur");
        await page.Locator("#model tbody").First.WaitForAsync();

        // A missing drain seal: hidden under load, plain when idle, and shown on the drawing.
        await page.SelectOptionAsync("#model-fault", "drain-seal-missing");
        await Assertions.Expect(page.Locator("#model [role=status]")).ToContainTextAsync(screen.Words["client.model.hidden"]);
        await Assertions
            .Expect(page.Locator("[data-id='standpipe-seal@wash']"))
            .ToHaveAttributeAsync(
                "aria-label",
                new Regex(screen.Words["section.state.missing"], RegexOptions.None, TimeSpan.FromSeconds(1))
            );
        await CheckAsync("two tanks");
        await PictureAsync("machine");
        var download = await page.RunAndWaitForDownloadAsync(() => page.ClickAsync("#export"));
        var written = MachineFile.Read(await File.ReadAllTextAsync((await download.PathAsync())!, TestContext.Current.CancellationToken));
        var rated = written.Machine!.Booster!.Heater.Rated!.Value;
        Assert.Equal(30, rated.Value.InKilowatt, 9);
        Assert.Equal(Provenance.DataPlate, rated.Basis);
        Assert.Equal("Larkspur", written.Machine.Name);

        await page.ReloadAsync();
        await Assertions.Expect(page.Locator(".head h1")).ToHaveTextAsync("Larkspur");
        foreach (var kind in new[] { MachineKind.Undercounter, MachineKind.DoorChemical, MachineKind.Flight })
        {
            await screen.GoAsync("machine");
            await MakeAsync(kind);
            await CheckAsync(kind.ToString());
        }

        Assert.True(found.Count == 0, string.Join('\n', found));
        screen.Quiet();

        async Task MakeAsync(MachineKind kind)
        {
            await page.SelectOptionAsync("#machine-kind", kind.ToString());
            await page.Locator("#new-machine button").ClickAsync();
            await page.Locator(".section-host svg.section").WaitForAsync();
        }

        async Task CheckAsync(string name)
        {
            await screen.FitsAsync();
            var result = await page.RunAxe(new AxeRunOptions());
            found.AddRange(result.Violations.Select(v => $"{name}: {v.Id}: {string.Join(" | ", v.Nodes.Take(3).Select(n => n.Html))}"));
        }

        async Task PictureAsync(string name)
        {
            if (Environment.GetEnvironmentVariable("RINSEWRIGHT_PICTURES") is { Length: > 0 } folder)
            {
                await page.Locator("input[value=fit]").CheckAsync();
                await page.ScreenshotAsync(
                    new() { Path = Path.Combine(folder, $"{name}-{(desk ? "desk" : "phone")}-{language}.png"), FullPage = true }
                );
            }
        }
    }
}
