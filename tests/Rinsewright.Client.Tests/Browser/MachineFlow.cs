using System.Text.RegularExpressions;
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
        await CheckAsync("plate");
        await PictureAsync("plate");
        await TabAsync("reads");
        await page.Locator("#should-read .read-row").First.WaitForAsync();
        await CheckAsync("two tanks");
        await PictureAsync("readings");

        // Three faults. A missing drain seal: hidden under load, plain when idle, and shown on the drawing.
        await TabAsync("faults");
        await CheckAsync("faults");
        await page.FillAsync("#fault-search", screen.Words["fault.drain-seal-missing"]);
        await page.ClickAsync("[data-fault='drain-seal-missing']");
        await Assertions.Expect(page.Locator("#faults .lesson")).ToContainTextAsync(screen.Words["client.model.lesson-idle"]);
        await Assertions
            .Expect(page.Locator("[data-id='standpipe-seal@wash']"))
            .ToHaveAttributeAsync(
                "aria-label",
                new Regex(screen.Words["section.state.missing"], RegexOptions.None, TimeSpan.FromSeconds(1))
            );
        await CheckAsync("a fault");
        await PictureAsync("fault");
        foreach (var (fault, lesson) in new[] { ("fill-strainer-clogged", "lesson-heat-up"), ("rinse-jets-scaled", "lesson-load") })
        {
            await page.ClickAsync("#fault-other");
            await page.ClickAsync($"[data-fault='{fault}']");
            await Assertions.Expect(page.Locator("#faults .lesson")).ToContainTextAsync(screen.Words["client.model." + lesson]);
        }

        // What if the water comes in colder: the booster no longer makes it.
        await TabAsync("what-if");
        await page.FillAsync("#knob-water-typed", "hot");
        await page.Locator("#knob-water-typed").BlurAsync();
        await Assertions.Expect(page.Locator("#knob-water-problem")).ToContainTextAsync("180");
        await page.FillAsync("#knob-water-typed", "60");
        await page.Locator("#knob-water-typed").BlurAsync();
        await page.Locator("#what-if-result .limit-list .st.bad").First.WaitForAsync();
        await Assertions.Expect(page.Locator("#knob-water-problem")).ToHaveCountAsync(0);
        await page.Locator("#day-cost > summary").ClickAsync();
        await page.FillAsync("#day-racks", "400");
        await page.Locator("#day-racks").BlurAsync();
        await page.Locator("#day-table").WaitForAsync();
        await CheckAsync("what if");
        await PictureAsync("what-if");

        // A reading says its caution where it is chosen.
        await TabAsync("measured");
        await page.SelectOptionAsync("#reading-kind", "lineCurrentA");
        await page.FillAsync("#reading-value", "40");
        await page.ClickAsync("#reading-add");
        await page.Locator("#calibrate").WaitForAsync();
        await CheckAsync("measured");
        await PictureAsync("measured");
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
            await TabAsync("reads");
            await page.Locator("#should-read .read-row").First.WaitForAsync();
            await CheckAsync(kind.ToString());
            await PictureAsync(kind.ToString());
        }

        Assert.True(found.Count == 0, string.Join('\n', found));
        screen.Quiet();

        Task TabAsync(string name) => page.Locator($".tabs input[value={name}]").CheckAsync();

        async Task MakeAsync(MachineKind kind)
        {
            await page.SelectOptionAsync("#machine-kind", kind.ToString());
            await page.Locator("#new-machine button").ClickAsync();
            await page.Locator(".section-host svg.section").WaitForAsync();
        }

        async Task CheckAsync(string name)
        {
            found.AddRange(await screen.FindingsAsync(name));
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
