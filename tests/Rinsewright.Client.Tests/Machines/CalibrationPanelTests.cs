using Bunit;
using Microsoft.Extensions.DependencyInjection;
using Rinsewright.Client.Machines;
using Rinsewright.Client.Shell;
using Rinsewright.Client.Tests.Records;
using Rinsewright.Contracts.Language;
using Rinsewright.Contracts.Records;
using Rinsewright.Engine.Machines;
using Xunit;

namespace Rinsewright.Client.Tests.Machines;

/// <summary>Readings typed on the screen, and what they say.</summary>
public sealed class CalibrationPanelTests : BunitContext
{
    private static readonly Machine TwoTanks = TypicalMachines.Of(MachineKind.RackConveyorTwoTank);
    private static readonly DateOnly Day = new(2031, 5, 14);
    private readonly Preferences preferences = new(new MemoryDevice());

    /// <summary>What the panel asks for.</summary>
    public CalibrationPanelTests()
    {
        Services.AddSingleton(preferences);
        Services.AddSingleton(new LateParts(null!)); // fetches nothing outside a browser
        Services.AddSingleton(TimeProvider.System);
    }

    /// <summary>
    /// A heat-up that takes twice as long as 18 kW would: about half the heater is told, the interval around it, and kept as measured. From the heat balance of the tank,
    /// 68.84 kg of water and 45 kJ/K of metal: 333 kJ/K over 13.9 K in 510 s is 9.1 kW, and its losses.
    /// </summary>
    [Fact]
    public async Task A_slow_heat_up_tells_half_a_heater()
    {
        Machine? kept = null;
        IReadOnlyList<KeptReading> readings =
        [
            new("heatUpTime", new AmountDto(510, "s"), Day, "wash", new AmountDto(130, "[degF]"), new AmountDto(155, "[degF]")),
        ];
        var panel = Render<CalibrationPanel>(p =>
            p.Add(c => c.Machine, TwoTanks).Add(c => c.Readings, readings).Add(c => c.Changed, m => kept = m)
        );
        await panel.Find("#calibrate").ClickAsync(new());
        panel.WaitForElement("#calibrate-keep", TimeSpan.FromSeconds(30)).Click();

        var heater = kept!.Tanks.Single(t => t.Duty == TankDuty.Wash).Heater!.Rated!.Value;
        Assert.Equal(Provenance.Measured, heater.Basis);
        Assert.Equal(Day, heater.On);
        Assert.InRange(heater.Value.InKilowatt, 9, 11);
    }

    /// <summary>A reading asks for what its kind needs before it can be kept, and says its caution.</summary>
    [Fact]
    public void A_kind_asks_for_what_it_needs()
    {
        IReadOnlyList<KeptReading> kept = [];
        var panel = Render<CalibrationPanel>(p =>
            p.Add(c => c.Machine, TwoTanks).Add(c => c.Readings, []).Add(c => c.ReadingsChanged, r => kept = r)
        );
        panel.Find("#reading-kind").Change("lineCurrentA");
        Assert.Contains(preferences.Words["client.caution.electrical"], panel.Find(".caution").TextContent, StringComparison.Ordinal);
        panel.Find("#reading-kind").Change("levelDrop");
        panel.Find("#reading-value").Input("25");
        Assert.True(panel.Find("#reading-add").HasAttribute("disabled"));
        panel.Find("#reading-over").Input("60");
        panel.Find("#reading-add").Click();

        var reading = Assert.Single(kept);
        Assert.Equal(("levelDrop", "wash", 25.0, 60.0), (reading.Kind, reading.Part, reading.Value.Value, reading.Over!.Value));
    }

    /// <summary>Every kind of reading, figure and problem has words in both languages.</summary>
    [Fact]
    public void Everything_is_named()
    {
        foreach (var language in Words.Languages)
        {
            var words = Words.For(language);
            Assert.DoesNotContain(ReadingKinds.All, k => words["client.calibrate.kind." + k.Id].StartsWith('['));
            foreach (var kind in Enum.GetValues<MachineKind>())
            {
                var machine = TypicalMachines.Of(kind);
                var result = MachineCalibration.From(machine, []);
                Assert.All(
                    result.Figures.Select(f => f.Id).Concat(result.Unknown.Select(u => u.Id)),
                    id =>
                        Assert.False(
                            words["client.calibrate.figure." + id].StartsWith('[')
                                && words["client.calibrate.figure." + id[(id.IndexOf('.', StringComparison.Ordinal) + 1)..]]
                                    .StartsWith('['),
                            id
                        )
                );
            }
        }
    }
}
