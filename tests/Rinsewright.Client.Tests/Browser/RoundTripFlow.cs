using System.Security.Cryptography;
using System.Text.Json;
using System.Text.RegularExpressions;
using Microsoft.Playwright;
using Rinsewright.Contracts.Records;
using Rinsewright.Files.Demo;
using Rinsewright.Tests.Shared;
using Xunit;

namespace Rinsewright.Client.Tests.Browser;

/// <summary>Everything of a service in one file and into an empty server: both offices then have the same documents, field by field, and the same files, byte for byte.</summary>
[Collection("Browser")]
public sealed partial class RoundTripFlow(BrowserFixture fixture)
{
    /// <summary>A kitchen, its machine, a visit with a reading, a part, a photograph and a drawn signature, and the proof of a logger's file.</summary>
    [Fact]
    public async Task An_empty_server_gets_the_same_documents_and_files()
    {
        await using var server = new LiveServer();
        await server.StartAsync();
        await using var context = await fixture.ContextAsync(BrowserFixture.Phone);
        var screen = await Screen.OpenAsync(context, server.Address, "kitchens");
        var page = screen.Page;
        await screen.NewKitchenAsync("Quince Hotel");
        await page.FillAsync("#f-languages", "español, English");
        await screen.SavedAsync();
        await screen.NewMachineAsync("RackConveyorOneTank");
        await screen.BeginVisitAsync();
        var visit = page.Url[server.Address.Length..];
        await page.FillAsync("#visit-technician", "Ruth Ames");
        await page.FillAsync("#asFound-rd-ware-surface-temp", "168");
        await page.SetInputFilesAsync("#asFound-camera", Path.Combine(Tree.Root, "docs", "handbook", "images", "proof-phone.png"));
        await page.Locator("#found .saved-list li").WaitForAsync();
        await screen.UnfoldAsync("parts");
        var part = (await page.Locator(".visit-part").First.GetAttributeAsync("id"))!["look-".Length..];
        await page.Locator($"#look-{part} input[value=worn]").CheckAsync();
        await page.Locator($"#note-{part}").FillAsync("rim bent on the left");
        await page.Locator("#asFound-logger").ClickAsync();
        await Assertions.Expect(page.Locator("#machine-type")).ToHaveValueAsync("singleTankConveyor");
        await screen.GiveAsync(DemoLoggers.LarkspurTwoTank);
        await screen.SavedAsync();
        await page.Locator("#back-to-visit").ClickAsync();
        await page.Locator("#standing h2").WaitForAsync();
        await screen.UnfoldAsync("finish");
        await DrawAsync(page, "#pad-technician");
        await page.Locator("#do-sign-technician").ClickAsync();
        await Assertions.Expect(page.Locator("#finish")).ToContainTextAsync("Ruth Ames");
        await screen.SavedAsync();

        // All of it in a file, and at the office.
        await screen.GoAsync("settings");
        var download = await page.RunAndWaitForDownloadAsync(() => page.ClickAsync("#export"));
        await SendAsync(screen);

        // The file into a browser at an empty server.
        await using var elsewhere = new LiveServer();
        await elsewhere.StartAsync();
        await using var second = await fixture.ContextAsync(BrowserFixture.Desk);
        var other = await Screen.OpenAsync(second, elsewhere.Address, "settings");
        var file = (await download.PathAsync())!;
        await other.Page.Locator("#import-file").SetInputFilesAsync(file);
        await Assertions
            .Expect(other.Page.Locator("#kept-said"))
            .ToHaveTextAsync(
                other.Words.Say("client.keep.imported", ("file", Path.GetFileName(file)), ("added", "4"), ("kept", "0"), ("refused", "0"))
            );
        await SendAsync(other);

        using var first = new HttpClient { BaseAddress = new Uri(server.Address) };
        using var restored = new HttpClient { BaseAddress = new Uri(elsewhere.Address) };
        var (before, after) = (await DocumentsAsync(first), await DocumentsAsync(restored));
        Assert.Equal(
            [Kinds.Kitchen, Kinds.Machine, Kinds.Proof, Kinds.Visit],
            before.Values.Select(d => d.GetProperty("kind").GetString()).Order(StringComparer.Ordinal)
        );
        Assert.Equal(before.Keys, after.Keys);
        Assert.All(before, d => Same(d.Value, after[d.Key]));
        var kept = before[visit.Split('/')[^1]].GetRawText();
        Assert.All(["168", part, "rim bent on the left", "strokes", "Ruth Ames"], t => Assert.Contains(t, kept, StringComparison.Ordinal));

        // The files both name are at both.
        string[] names = [.. before.Values.SelectMany(d => Sha256().Matches(d.GetRawText())).Select(m => m.Value).Distinct().Order()];
        Assert.Contains(Convert.ToHexStringLower(SHA256.HashData(DemoLoggers.Bytes(DemoLoggers.LarkspurTwoTank))), names);
        Assert.Equal(2, names.Length);
        foreach (var name in names)
        {
            var (mine, theirs) = (await BytesAsync(first, name), await BytesAsync(restored, name));
            Assert.Equal(name, Convert.ToHexStringLower(SHA256.HashData(mine)));
            Assert.Equal(mine, theirs);
        }

        // And a person sees it there.
        await other.GoAsync(visit);
        await other.Page.Locator("#standing h2").WaitForAsync();
        await Assertions.Expect(other.Page.Locator("#asFound-rd-ware-surface-temp")).ToHaveValueAsync("168");
        await Assertions.Expect(other.Page.Locator("#finish .signature polyline")).ToHaveCountAsync(1);
    }

    // What stands in a document; by which device and operation it came there is another matter.
    private static void Same(JsonElement one, JsonElement two)
    {
        Assert.Equal(one.GetProperty("action").GetString(), two.GetProperty("action").GetString());
        if (one.GetProperty("kind").GetString() == Kinds.Proof)
        {
            Assert.True(JsonElement.DeepEquals(one.GetProperty("proof"), two.GetProperty("proof")));
            return;
        }

        Assert.Equal(Fields(one), Fields(two));
        Assert.NotEmpty(Fields(one));

        static string[] Fields(JsonElement document) =>
            [
                .. document
                    .GetProperty("document")
                    .GetProperty("fields")
                    .EnumerateObject()
                    .Select(f => $"{f.Name} at {f.Value.GetProperty("order")}: {f.Value.GetProperty("value").GetString()}")
                    .Order(StringComparer.Ordinal),
            ];
    }

    private static async Task<SortedDictionary<string, JsonElement>> DocumentsAsync(HttpClient office)
    {
        var documents = new SortedDictionary<string, JsonElement>(StringComparer.Ordinal);
        var after = "";
        for (var more = true; more; )
        {
            using var page = JsonDocument.Parse(
                await office.GetStringAsync(new Uri("api/changes" + after, UriKind.Relative), TestContext.Current.CancellationToken)
            );
            foreach (var item in page.RootElement.GetProperty("items").EnumerateArray())
            {
                documents[item.GetProperty("documentId").GetString()!] = item.Clone();
            }

            after = "?after=" + Uri.EscapeDataString(page.RootElement.GetProperty("cursor").GetString()!);
            more = page.RootElement.GetProperty("more").GetBoolean();
        }

        return documents;
    }

    private static Task<byte[]> BytesAsync(HttpClient office, string sha256) =>
        office.GetByteArrayAsync(new Uri("api/files/" + sha256, UriKind.Relative), TestContext.Current.CancellationToken);

    private static async Task SendAsync(Screen screen)
    {
        await screen.Page.Locator(".send .btn").ClickAsync();
        await Assertions.Expect(screen.Page.Locator(".send p").First).ToHaveTextAsync(screen.Words["client.send.all"]);
    }

    private static async Task DrawAsync(IPage page, string pad)
    {
        await page.Locator(pad).ScrollIntoViewIfNeededAsync();
        var box = (await page.Locator(pad).BoundingBoxAsync())!;
        await page.Mouse.MoveAsync(box.X + 30, box.Y + 60);
        await page.Mouse.DownAsync();
        await page.Mouse.MoveAsync(box.X + 120, box.Y + 30, new() { Steps = 6 });
        await page.Mouse.MoveAsync(box.X + 200, box.Y + 70, new() { Steps = 6 });
        await page.Mouse.UpAsync();
        await page.Locator($"{pad} polyline").WaitForAsync(new() { State = WaitForSelectorState.Attached });
    }

    [GeneratedRegex("(?<![0-9a-f])[0-9a-f]{64}(?![0-9a-f])", RegexOptions.None, 2000)]
    private static partial Regex Sha256();
}
