using System.Text.Json;
using Microsoft.Playwright;
using Rinsewright.Engine.Machines;
using Rinsewright.Tests.Shared;
using Xunit;

namespace Rinsewright.Client.Tests.Browser;

/// <summary>Everything of a device in a file and back on another, photographs of plates among it; files of earlier versions; more than one file should hold.</summary>
[Collection("Browser")]
public sealed class BackupFlow(BrowserFixture fixture)
{
    [Fact]
    public async Task A_plates_photograph_is_in_the_file_and_at_the_office()
    {
        await using var server = new LiveServer();
        await server.StartAsync();
        await using var context = await fixture.ContextAsync(BrowserFixture.Phone);
        var screen = await Screen.OpenAsync(context, server.Address, "machine");
        var machine = await MachineAsync(screen);
        await screen.Page.Locator("#plate-camera").SetInputFilesAsync(Photograph);
        var shown = await ShownAsync(screen);
        var exported = await ExportAsync(screen);
        await screen.Page.Locator(".send .btn").ClickAsync();
        await Assertions.Expect(screen.Page.Locator(".send p").First).ToHaveTextAsync(screen.Words["client.send.all"]);

        // Another device of the same office.
        await using var second = await fixture.ContextAsync(BrowserFixture.Phone);
        var other = await Screen.OpenAsync(second, server.Address, "machine");
        await other.Page.Locator($"a[href='{machine}']").First.ClickAsync();
        Assert.Equal(shown, await ShownAsync(other));

        // And one that has the file alone.
        await using var elsewhere = new LiveServer();
        await elsewhere.StartAsync();
        await using var third = await fixture.ContextAsync(BrowserFixture.Phone);
        var alone = await Screen.OpenAsync(third, elsewhere.Address, "settings");
        await ImportAsync(alone, exported, added: 1);
        await alone.GoAsync(machine);
        Assert.Equal(shown, await ShownAsync(alone));
    }

    [Fact]
    public async Task A_photograph_an_earlier_version_kept_beside_the_machine_is_in_the_file_and_becomes_part_of_the_machine()
    {
        await using var server = new LiveServer();
        await server.StartAsync();
        await using var context = await fixture.ContextAsync(BrowserFixture.Phone);
        var screen = await Screen.OpenAsync(context, server.Address, "machine");
        var machine = await MachineAsync(screen);
        var mark = "photograph-" + machine.Split('/')[^1];
        var address = "data:image/jpeg;base64," + Convert.ToBase64String(Photograph.Buffer);
        await screen.Page.EvaluateAsync(
            "async ([id, value]) => { await (await import('./js/store.js')).mark(id, value); }",
            new[] { mark, address }
        );
        var exported = await ExportAsync(screen);

        await using var elsewhere = new LiveServer();
        await elsewhere.StartAsync();
        await using var second = await fixture.ContextAsync(BrowserFixture.Phone);
        var other = await Screen.OpenAsync(second, elsewhere.Address, "settings");
        await ImportAsync(other, exported, added: 1);
        await other.GoAsync(machine);
        Assert.Equal(address, await ShownAsync(other));
        await other.SavedAsync();
        Assert.Equal("", await other.Page.EvaluateAsync<string>("async (id) => await (await import('./js/store.js')).mark(id)", mark));
        await other.Page.ReloadAsync();
        Assert.Equal(address, await ShownAsync(other));
    }

    [Fact]
    public async Task A_file_of_an_earlier_version_is_read_and_one_that_is_none_changes_nothing()
    {
        await using var server = new LiveServer();
        await server.StartAsync();
        await using var context = await fixture.ContextAsync(BrowserFixture.Phone);
        var screen = await Screen.OpenAsync(context, server.Address, "settings");
        await screen
            .Page.Locator("#import-file")
            .SetInputFilesAsync(
                new FilePayload
                {
                    Name = "photo.json",
                    MimeType = "application/json",
                    Buffer = Photograph.Buffer,
                }
            );
        await Assertions.Expect(screen.Page.GetByText(screen.Words["client.keep.not-a-backup"])).ToBeVisibleAsync();
        await ImportAsync(
            screen,
            await File.ReadAllBytesAsync(
                Path.Combine(Tree.Root, "tests", "Rinsewright.Client.Tests", "Browser", "Fixtures", "device-before-photographs.json"),
                TestContext.Current.CancellationToken
            ),
            added: 2
        );
        Assert.Equal(
            "abc",
            await screen.Page.EvaluateAsync<string>(
                "async () => await (await (await import('./js/files.js')).blob('ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad')).text()"
            )
        );
        await screen.GoAsync("kitchens");
        await Assertions.Expect(screen.Page.Locator("#kitchen-list")).ToContainTextAsync("Quince Hotel");
    }

    [Fact]
    public async Task More_than_one_file_should_hold_is_handed_over_part_by_part_and_a_failure_is_said()
    {
        await using var server = new LiveServer();
        await server.StartAsync();
        await using var context = await fixture.ContextAsync(BrowserFixture.Phone);
        var screen = await Screen.OpenAsync(context, server.Address, "kitchens");
        await screen.Page.FillAsync("#new-name", "Quince Hotel");
        await screen.Page.Locator("#new-kitchen button").ClickAsync();
        await screen.SavedAsync();

        // Three files that say they are large: two fit into no file of a hundred million characters.
        string[] hashes = await screen.Page.EvaluateAsync<string[]>(
            """
            async () => {
              const store = await import("./js/store.js");
              const hashes = [];
              for (const text of ["one", "two", "three"]) {
                const bytes = new TextEncoder().encode(text);
                const digest = new Uint8Array(await crypto.subtle.digest("SHA-256", bytes));
                const sha256 = [...digest].map((b) => b.toString(16).padStart(2, "0")).join("");
                await store.keepFile({ sha256, name: text, size: 60e6, blob: new Blob([bytes]), sent: true });
                hashes.push(sha256);
              }
              return hashes;
            }
            """
        );
        var parts = new List<byte[]>();
        for (var part = 1; part <= 3; part++)
        {
            parts.Add(await ExportAsync(screen, go: part == 1, name: $"-{part}.json"));
            await Assertions
                .Expect(screen.Page.Locator("#export"))
                .ToHaveTextAsync(
                    part == 3
                        ? screen.Words["client.keep.export"]
                        : screen.Words.Say(
                            "client.keep.export-part",
                            ("part", (part + 1).ToString(System.Globalization.CultureInfo.InvariantCulture))
                        )
                );
        }

        Assert.Equal(
            hashes.Order(StringComparer.Ordinal),
            parts
                .SelectMany(p => JsonDocument.Parse(p).RootElement.GetProperty("files").EnumerateArray())
                .Select(f => f.GetProperty("sha256").GetString())
        );
        await using var second = await fixture.ContextAsync(BrowserFixture.Phone);
        await using var elsewhere = new LiveServer();
        await elsewhere.StartAsync();
        var other = await Screen.OpenAsync(second, elsewhere.Address, "settings");
        await ImportAsync(other, parts[0], added: 1);
        await ImportAsync(other, parts[2], added: 0);
        await ImportAsync(other, parts[1], added: 0);
        await other.GoAsync("kitchens");
        await Assertions.Expect(other.Page.Locator("#kitchen-list")).ToContainTextAsync("Quince Hotel");
        Assert.Equal(
            3,
            (
                await other.Page.EvaluateAsync<string[]>(
                    "async () => (await (await import('./js/store.js')).everything()).files.map((f) => f.sha256)"
                )
            ).Length
        );

        // No memory left for it.
        await screen.Page.EvaluateAsync("() => { Blob.prototype.arrayBuffer = () => { throw new RangeError('too large'); }; }");
        await screen.Page.ClickAsync("#export");
        await Assertions.Expect(screen.Page.Locator("#kept-said")).ToContainTextAsync("too large");
        await Assertions
            .Expect(screen.Page.Locator("#kept-said"))
            .ToContainTextAsync(screen.Words["client.keep.not-exported"].Split("}. ")[1]);
    }

    // A machine by its address.
    private static async Task<string> MachineAsync(Screen screen)
    {
        await screen.Page.SelectOptionAsync("#machine-kind", nameof(MachineKind.DoorHotWater));
        await screen.Page.Locator("#new-machine button").ClickAsync();
        await screen.Page.Locator("#plate-camera").WaitForAsync(new() { State = WaitForSelectorState.Attached });
        await screen.SavedAsync();
        return new Uri(screen.Page.Url).AbsolutePath[1..].Split('?')[0];
    }

    private static async Task<string> ShownAsync(Screen screen)
    {
        var picture = screen.Page.Locator("#plate-photo img");
        if (!await picture.IsVisibleAsync())
        {
            await screen.Page.Locator(".tabs input[value=plate]").CheckAsync();
        }

        await picture.WaitForAsync();
        return (await picture.GetAttributeAsync("src"))!;
    }

    private static async Task<byte[]> ExportAsync(Screen screen, bool go = true, string name = ".json")
    {
        if (go)
        {
            await screen.SavedAsync();
            await screen.GoAsync("settings");
        }

        var download = await screen.Page.RunAndWaitForDownloadAsync(() => screen.Page.ClickAsync("#export"));
        Assert.EndsWith(name, download.SuggestedFilename, StringComparison.Ordinal);
        return await File.ReadAllBytesAsync((await download.PathAsync())!, TestContext.Current.CancellationToken);
    }

    // Under a name of its own: the sentence of the file before must not pass for this one's.
    private static async Task ImportAsync(Screen screen, byte[] bytes, int added)
    {
        var name = $"rinsewright-{Guid.NewGuid():N}.json";
        await screen
            .Page.Locator("#import-file")
            .SetInputFilesAsync(
                new FilePayload
                {
                    Name = name,
                    MimeType = "application/json",
                    Buffer = bytes,
                }
            );
        await Assertions
            .Expect(screen.Page.Locator("#kept-said"))
            .ToHaveTextAsync(
                screen.Words.Say(
                    "client.keep.imported",
                    ("file", name),
                    ("added", added.ToString(System.Globalization.CultureInfo.InvariantCulture)),
                    ("kept", "0"),
                    ("refused", "0")
                )
            );
    }

    // One white dot, as a camera would give it.
    private static FilePayload Photograph { get; } =
        new()
        {
            Name = "plate.png",
            MimeType = "image/png",
            Buffer = Convert.FromBase64String(
                "iVBORw0KGgoAAAANSUhEUgAAAAEAAAABCAYAAAAfFcSJAAAADUlEQVR42mP8/5+hHgAHggJ/PchI7wAAAABJRU5ErkJggg=="
            ),
        };
}
