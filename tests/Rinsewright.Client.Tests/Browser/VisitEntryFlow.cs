using Microsoft.Playwright;
using Rinsewright.Contracts.Language;
using Rinsewright.Tests.Shared;
using Xunit;

namespace Rinsewright.Client.Tests.Browser;

/// <summary>What a visit of a chemical machine asks besides figures: why something was not read, what a strip is made for, which vial, a photograph of a part, how many parts, drums.</summary>
[Collection("Browser")]
public sealed class VisitEntryFlow(BrowserFixture fixture)
{
    [Fact]
    public async Task What_stands_beside_the_figures_is_kept()
    {
        await using var server = new LiveServer();
        await server.StartAsync();
        await using var context = await fixture.ContextAsync(BrowserFixture.Phone);
        var screen = await Screen.OpenAsync(context, server.Address, "machine");
        var page = screen.Page;
        await page.SelectOptionAsync("#machine-kind", "DoorChemical");
        await page.Locator("#new-machine button").ClickAsync();
        await page.Locator("#begin-visit").WaitForAsync();

        // A drum that was put on eight days ago and is empty now: the full one is due in eight days.
        await screen.UnfoldAsync("drums");
        await page.Locator("#add-drum").ClickAsync();
        await page.Locator("#drums input[id$='-product']").FillAsync("Invented sanitizer");
        await page.Locator("#drums input[id$='-size']").FillAsync("5 gal");
        // The page's own day.
        var today = DateOnly.Parse(
            await page.EvaluateAsync<string>("new Date(Date.now() - new Date().getTimezoneOffset() * 6e4).toISOString().slice(0, 10)"),
            System.Globalization.CultureInfo.InvariantCulture
        );
        await Assertions.Expect(page.Locator("#drums input[type=date]")).ToHaveValueAsync(""); // nobody has said since when
        await page.Locator("#drums input[type=date]").FillAsync(Written(today.AddDays(3)));
        await Assertions.Expect(page.Locator("#drums [role=status]")).ToHaveTextAsync(screen.Words["client.drums.not-yet"]);
        await page.Locator("#drums input[type=date]").FillAsync(Written(today.AddDays(-8)));
        await Assertions.Expect(page.Locator("#drums [role=status]")).ToHaveTextAsync(screen.Words["client.drums.no-life"]);
        Assert.Empty(await screen.FindingsAsync("drums"));
        await screen.SavedAsync();
        await page.Locator("#begin-visit").ClickAsync();
        await page.Locator("#standing h2").WaitForAsync();

        // A part that is worn is photographed before anything is changed: as found.
        await screen.UnfoldAsync("parts");
        var part = page.Locator(".visit-part").First;
        await part.GetByLabel(screen.Words["part-state.worn"], new() { Exact = true }).CheckAsync();
        await Assertions.Expect(part).ToContainTextAsync(screen.Words["ware.estimate"]);
        await part.Locator("input[type=file]").SetInputFilesAsync(Path.Combine(Tree.Root, "docs", "handbook", "images", "proof-phone.png"));
        await Assertions.Expect(part.Locator(".saved-list li")).ToHaveCountAsync(1);
        var name = await part.Locator("legend").First.TextContentAsync();
        await Assertions.Expect(page.Locator("#found .saved-list li")).ToContainTextAsync(name!);

        // Counted in the visit, changed there, and written on the machine.
        await screen.UnfoldAsync("supplies");
        await page.Locator("#count-drums").ClickAsync();
        await Assertions.Expect(page.Locator("#supply-0")).ToHaveValueAsync("Invented sanitizer");
        await Assertions.Expect(page.Locator("#days-0")).ToHaveValueAsync("");
        await page.Locator("#supplies .visit-item .tick input").First.CheckAsync();
        await page.Locator("#drum-0").ClickAsync();
        await Assertions.Expect(page.Locator("#drum-0")).ToHaveCountAsync(0);

        // Why it was not read: it stays, and goes as soon as it is read.
        var wash = page.Locator(".reading", new() { Has = page.Locator("#asFound-rd-wash-temp") });
        await wash.GetByText(screen.Words["client.visit.not-read"]).ClickAsync();
        await page.FillAsync("#asFound-rd-wash-temp-why", "tank already drained");

        // A strip made for something else is said; another vial as left does not change what was read as found.
        await page.FillAsync("#asFound-rd-sanitizer", "50");
        await page.FillAsync("#asFound-rd-sanitizer-lot", "L-101");
        var strip = page.Locator("#found .reading", new() { Has = page.Locator("#asFound-rd-sanitizer") });
        await strip.GetByLabel(screen.Words["sanitizing-method.iodine"], new() { Exact = true }).CheckAsync();
        await Assertions.Expect(page.Locator("#asFound-rd-sanitizer-note")).ToContainTextAsync(screen.Words["sanitizing-method.iodine"]);
        await strip.GetByLabel(screen.Words["sanitizing-method.chlorine"], new() { Exact = true }).CheckAsync();
        await Assertions
            .Expect(page.Locator("#asFound-rd-sanitizer-note"))
            .Not.ToContainTextAsync(screen.Words["sanitizing-method.iodine"]);

        await screen.UnfoldAsync("changes");
        await page.FillAsync("#part-what", "Squeeze tube, 3/16 in");
        await page.FillAsync("#part-count", "1.5");
        await page.Locator("#add-part").ClickAsync();
        await Assertions.Expect(page.Locator("#new-part .problem")).ToHaveTextAsync(screen.Words["client.visit.part-count-whole"]);
        await page.FillAsync("#part-count", "2");
        await page.Locator("#add-part").ClickAsync();
        await Assertions.Expect(page.Locator("#changes .saved-list")).ToContainTextAsync("2 × Squeeze tube, 3/16 in");

        await screen.UnfoldAsync("left");
        await page.FillAsync("#asLeft-rd-sanitizer", "60");
        await Assertions.Expect(page.Locator("#asLeft-rd-sanitizer-lot")).ToHaveValueAsync("L-101");
        await page.FillAsync("#asLeft-rd-sanitizer-lot", "L-202");
        await Assertions.Expect(page.Locator("#asFound-rd-sanitizer-lot")).ToHaveValueAsync("L-101");

        await screen.UnfoldAsync("finish");
        await page.Locator("#finish").GetByLabel("Español", new() { Exact = true }).CheckAsync();
        await Assertions.Expect(page.Locator("#plain-lines")).ToHaveAttributeAsync("lang", "es");
        Assert.Empty(await screen.FindingsAsync("everything entered"));

        await screen.SavedAsync();
        await page.ReloadAsync();
        await page.Locator("#standing h2").WaitForAsync();
        await Assertions.Expect(page.Locator("#asFound-rd-wash-temp-why")).ToHaveValueAsync("tank already drained");
        await screen.UnfoldAsync("found");
        await page.FillAsync("#asFound-rd-wash-temp", "128");
        await Assertions.Expect(page.Locator("#asFound-rd-wash-temp-why")).ToHaveCountAsync(0);
        await screen.UnfoldAsync("left");
        await Assertions.Expect(page.Locator("#asFound-rd-sanitizer-lot")).ToHaveValueAsync("L-101");
        await Assertions.Expect(page.Locator("#asLeft-rd-sanitizer-lot")).ToHaveValueAsync("L-202");
        await screen.UnfoldAsync("finish");
        await Assertions.Expect(page.Locator("#plain-lines")).ToHaveAttributeAsync("lang", "es");
        await Assertions.Expect(page.Locator("#plain-lines")).ToContainTextAsync(Words.For("es")["client.visit.you-do"]);
        await screen.SavedAsync();

        await page.GoBackAsync();
        await page.Locator("#begin-visit").WaitForAsync();
        await screen.UnfoldAsync("drums");
        await Assertions.Expect(page.Locator("#drums input[type=date]")).ToHaveValueAsync(Written(today));
        await Assertions
            .Expect(page.Locator("#drums .saved-list"))
            .ToContainTextAsync(screen.Words.Say("client.drums.lasted", ("days", "8")));
        await Assertions
            .Expect(page.Locator("#drums [role=status]"))
            .ToContainTextAsync(screen.Words.Say("client.drums.life", ("count", "1"), ("days", "8")));
        screen.Quiet();
    }

    private static string Written(DateOnly day) => day.ToString("yyyy-MM-dd", System.Globalization.CultureInfo.InvariantCulture);
}
