using Microsoft.Playwright;
using Xunit;

namespace Rinsewright.Client.Tests.Browser;

/// <summary>What a browser may refuse: to keep anything, to keep a file, to go on keeping, the camera. Each is said plainly, and what was entered before stays or can be taken along.</summary>
[Collection("Browser")]
public sealed class StorageFlow(BrowserFixture fixture)
{
    // The store of files is full; everything else is kept.
    private const string NoRoomForFiles = """
        () => {
          const put = IDBObjectStore.prototype.put;
          IDBObjectStore.prototype.put = function (...all) {
            if (this.name === "files") throw new DOMException("no room", "QuotaExceededError");
            return put.apply(this, all);
          };
        }
        """;

    [Fact]
    public async Task A_browser_that_lets_nothing_be_kept_says_so_on_every_screen()
    {
        var server = await fixture.ServerAsync();
        await using var context = await fixture.ContextAsync(BrowserFixture.Phone);
        await context.AddInitScriptAsync(
            """
            IDBFactory.prototype.open = () => { throw new DOMException("storage is off", "SecurityError"); };
            Object.defineProperty(window, "localStorage", { get: () => { throw new DOMException("storage is off", "SecurityError"); } });
            """
        );
        var page = await context.NewPageAsync();
        page.SetDefaultTimeout(120000);
        var words = Contracts.Language.Words.For("en");
        foreach (var path in new[] { "", "kitchens", "settings" })
        {
            await page.GotoAsync(server.Address + path);
            await Assertions.Expect(page.Locator("#store-refused")).ToContainTextAsync("storage is off");
            await Assertions.Expect(page.Locator("#store-refused")).ToContainTextAsync(words["client.store.refused"].Split("}. ")[1]);
            await Assertions.Expect(page.GetByText(words["client.error.text"])).ToHaveCountAsync(0); // nothing is said to be kept
            await Assertions.Expect(page.Locator("#blazor-error-ui")).ToBeHiddenAsync();
        }
    }

    [Fact]
    public async Task A_browser_that_cleared_what_it_kept_says_so_and_what_was_sent_comes_back()
    {
        await using var server = new LiveServer();
        await server.StartAsync();
        await using var context = await fixture.ContextAsync(BrowserFixture.Phone);
        var screen = await Screen.OpenAsync(context, server.Address, "kitchens");
        await Assertions.Expect(screen.Page.Locator("#store-cleared")).ToHaveCountAsync(0); // a first start is no loss
        await screen.Page.FillAsync("#new-name", "Quince Hotel");
        await screen.Page.Locator("#new-kitchen button").ClickAsync();
        await screen.SavedAsync();
        await screen.GoAsync("settings");
        await screen.Page.Locator(".send .btn").ClickAsync();
        await Assertions.Expect(screen.Page.Locator(".send p").First).ToHaveTextAsync(screen.Words["client.send.all"]);

        await screen.Page.EvaluateAsync(
            "() => new Promise((done, fail) => { const gone = indexedDB.deleteDatabase('rinsewright'); gone.onsuccess = () => done(); gone.onerror = () => fail(gone.error); })"
        );
        await screen.GoAsync("kitchens");
        await Assertions.Expect(screen.Page.Locator("#store-cleared")).ToContainTextAsync(screen.Words["client.store.cleared"]);
        await Assertions.Expect(screen.Page.Locator("#kitchen-list")).ToContainTextAsync("Quince Hotel");
        await screen.Page.ReloadAsync();
        await screen.Page.Locator("#store-cleared button").ClickAsync(); // until somebody has seen it
        await Assertions.Expect(screen.Page.Locator("#store-cleared")).ToHaveCountAsync(0);
        await screen.Page.ReloadAsync();
        await screen.ReadyAsync();
        await Assertions.Expect(screen.Page.Locator("#kitchen-list")).ToContainTextAsync("Quince Hotel");
        await Assertions.Expect(screen.Page.Locator("#store-cleared")).ToHaveCountAsync(0);
    }

    [Fact]
    public async Task A_photograph_there_is_no_room_for_is_said_and_the_machine_and_visit_are_as_they_were()
    {
        var server = await fixture.ServerAsync();
        await using var context = await fixture.ContextAsync(BrowserFixture.Phone);
        var screen = await Screen.OpenAsync(context, server.Address, "machine");
        var page = screen.Page;
        await page.SelectOptionAsync("#machine-kind", "DoorHotWater");
        await page.Locator("#new-machine button").ClickAsync();
        await page.Locator("#plate-camera").WaitForAsync(new() { State = WaitForSelectorState.Attached });
        await page.EvaluateAsync(NoRoomForFiles);
        await page.Locator("#plate-camera").SetInputFilesAsync(Picture(Dot));
        await Assertions.Expect(page.Locator("#plate-photo [role=status]")).ToHaveTextAsync(screen.Words["client.machine.photo-not-kept"]);
        await Assertions.Expect(page.Locator("#plate-photo img")).ToHaveCountAsync(0);
        await page.Locator("#plate-camera").SetInputFilesAsync(Picture([1, 2, 3]));
        await Assertions.Expect(page.Locator("#plate-photo [role=status]")).ToHaveTextAsync(screen.Words["client.machine.photo-large"]);

        await screen.BeginVisitAsync();
        await screen.UnfoldAsync("found");
        await page.Locator("#asFound-camera").SetInputFilesAsync(Picture(Dot));
        await Assertions.Expect(page.GetByText(screen.Words["client.visit.photo-not-kept"])).ToBeVisibleAsync();
        await screen.SavedAsync();
    }

    [Fact]
    public async Task A_loggers_file_there_is_no_room_for_is_judged_all_the_same()
    {
        var server = await fixture.ServerAsync();
        await using var context = await fixture.ContextAsync(BrowserFixture.Phone);
        var screen = await Screen.OpenAsync(context, server.Address);
        await screen.Page.EvaluateAsync(NoRoomForFiles);
        await screen.GiveAsync(Files.Demo.DemoLoggers.Names[0]);
        await Assertions.Expect(screen.Page.Locator("#verdict h2")).ToBeVisibleAsync();
        await Assertions
            .Expect(screen.Page.Locator("#file-not-kept"))
            .ToHaveTextAsync(screen.Words.Say("client.file.not-kept", ("name", Files.Demo.DemoLoggers.Names[0])));
        await screen.SavedAsync();
    }

    [Fact]
    public async Task A_camera_that_is_refused_is_said_and_the_list_is_left()
    {
        var server = await fixture.ServerAsync();
        await using var context = await fixture.ContextAsync(BrowserFixture.Phone);
        await context.AddInitScriptAsync(
            """navigator.mediaDevices.getUserMedia = async () => { throw new DOMException("Permission denied", "NotAllowedError"); };"""
        );
        var screen = await Screen.OpenAsync(context, server.Address, "kitchens");
        await screen.Page.ClickAsync("#scan-start");
        await Assertions
            .Expect(screen.Page.Locator("#scan [role=status]"))
            .ToHaveTextAsync(screen.Words.Say("client.scan.denied", ("reason", "Permission denied.")));
        await Assertions.Expect(screen.Page.Locator("#scan-start")).ToBeVisibleAsync();
        await Assertions.Expect(screen.Page.Locator("#new-kitchen")).ToBeVisibleAsync();
    }

    private static FilePayload Picture(byte[] bytes) =>
        new()
        {
            Name = "plate.png",
            MimeType = "image/png",
            Buffer = bytes,
        };

    // One white dot, as a camera would give it.
    private static byte[] Dot { get; } =
        Convert.FromBase64String("iVBORw0KGgoAAAANSUhEUgAAAAEAAAABCAYAAAAfFcSJAAAADUlEQVR42mP8/5+hHgAHggJ/PchI7wAAAABJRU5ErkJggg==");
}
