using System.Text.RegularExpressions;
using Microsoft.Playwright;
using Rinsewright.Contracts.Machines;
using Rinsewright.Engine.Machines;
using Xunit;

namespace Rinsewright.Client.Tests.Browser;

/// <summary>A machine without a signal: described, read, spoilt, calibrated, photographed and exported.</summary>
[Collection("Browser")]
public sealed class MachineOfflineFlow(BrowserFixture fixture)
{
    /// <summary>The server is gone before the first figure is typed; nothing of it is lost when the page loads again.</summary>
    [Fact]
    public async Task A_machine_is_described_and_calibrated_without_the_server()
    {
        await using var server = new LiveServer();
        await server.StartAsync();
        await using var context = await fixture.ContextAsync(BrowserFixture.Phone);
        var screen = await Screen.OpenAsync(context, server.Address, "machine");
        var page = screen.Page;
        await screen.KeptAsync();
        screen.Quiet();
        await server.StopAsync();
        await page.ReloadAsync();
        await screen.ReadyAsync();

        await page.SelectOptionAsync("#machine-kind", nameof(MachineKind.RackConveyorTwoTank));
        await page.Locator("#new-machine button").ClickAsync();
        await page.Locator("#plate-camera")
            .SetInputFilesAsync(
                new FilePayload
                {
                    Name = "plate.png",
                    MimeType = "image/png",
                    Buffer = Dot,
                }
            );
        await page.Locator("#plate-photo img").WaitForAsync();
        await TypeAsync("#machine-name", "Larkspur");
        await TypeAsync("#figure-tanks-wash-heater-rated", "15");

        await TabAsync("reads");
        await page.Locator("#should-read .read-row").First.WaitForAsync();
        await TabAsync("faults");
        foreach (
            var (fault, lesson) in new[]
            {
                ("drain-seal-missing", "lesson-idle"),
                ("fill-strainer-clogged", "lesson-heat-up"),
                ("rinse-jets-scaled", "lesson-load"),
            }
        )
        {
            await page.ClickAsync($"[data-fault='{fault}']");
            await Assertions.Expect(page.Locator("#faults .lesson")).ToContainTextAsync(screen.Words["client.model." + lesson]);
            await page.ClickAsync("#fault-other");
        }

        // A heat-up that says half the heater is gone: what solves it comes from the device.
        await TabAsync("measured");
        await AddAsync("supplyTemperature", "132");
        await page.SelectOptionAsync("#reading-kind", "heatUpTime");
        await page.FillAsync("#reading-from", "130");
        await page.FillAsync("#reading-to", "155");
        await AddAsync(null, "510");
        await page.ClickAsync("#calibrate");
        await Assertions
            .Expect(page.Locator("#calibrated tbody"))
            .ToContainTextAsync(
                new Regex(Regex.Escape(screen.Words["client.calibrate.figure.heater"]), RegexOptions.None, TimeSpan.FromSeconds(1))
            );
        await page.ClickAsync("#calibrate-keep");
        await screen.SavedAsync();

        await page.ReloadAsync();
        await Assertions.Expect(page.Locator(".head h1")).ToHaveTextAsync("Larkspur");
        await TabAsync("plate");
        await page.Locator("#plate-photo img").WaitForAsync();
        var download = await page.RunAndWaitForDownloadAsync(() => page.ClickAsync("#export"));
        var text = await File.ReadAllTextAsync((await download.PathAsync())!, TestContext.Current.CancellationToken);
        var machine = MachineFile.Read(text).Machine!;
        var heater = machine.Tanks.Single(t => t.Duty == TankDuty.Wash).Heater!.Rated!.Value;
        Assert.Equal(Provenance.Measured, heater.Basis);
        Assert.InRange(heater.Value.InKilowatt, 5, 11);
        Assert.Equal(Provenance.Measured, machine.Supply.Water.Basis);

        // The file opens as a second machine.
        await screen.GoAsync("machine");
        await page.Locator("#machine-file")
            .SetInputFilesAsync(
                new FilePayload
                {
                    Name = "larkspur.json",
                    MimeType = "application/json",
                    Buffer = System.Text.Encoding.UTF8.GetBytes(text),
                }
            );
        await Assertions.Expect(page.Locator(".head h1")).ToHaveTextAsync("Larkspur");

        Task TabAsync(string name) => page.Locator($".tabs input[value={name}]").CheckAsync();

        async Task TypeAsync(string field, string value)
        {
            await page.FillAsync(field, value);
            await page.Locator(field).BlurAsync();
        }

        async Task AddAsync(string? kind, string value)
        {
            if (kind is not null)
            {
                await page.SelectOptionAsync("#reading-kind", kind);
            }

            await page.FillAsync("#reading-value", value);
            await page.ClickAsync("#reading-add");
        }
    }

    // One white dot, as a camera would give it.
    private static byte[] Dot { get; } =
        Convert.FromBase64String("iVBORw0KGgoAAAANSUhEUgAAAAEAAAABCAYAAAAfFcSJAAAADUlEQVR42mP8/5+hHgAHggJ/PchI7wAAAABJRU5ErkJggg==");
}
