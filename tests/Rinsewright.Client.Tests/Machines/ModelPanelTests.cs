using Bunit;
using Microsoft.Extensions.DependencyInjection;
using Rinsewright.Client.Machines;
using Rinsewright.Client.Shell;
using Rinsewright.Client.Tests.Records;
using Rinsewright.Contracts.Language;
using Rinsewright.Engine.Machines;
using Rinsewright.Files.Drawing.Section;
using Xunit;

namespace Rinsewright.Client.Tests.Machines;

/// <summary>What the machine should read, what-if and faults.</summary>
public sealed class ModelPanelTests : BunitContext
{
    private readonly Preferences preferences = new(new MemoryDevice());

    /// <summary>The model runs in the test itself.</summary>
    public ModelPanelTests()
    {
        Services.AddSingleton(preferences);
        Services.AddSingleton<IModelling, AtOnce>();
    }

    /// <summary>
    /// A missing drain seal is hidden under load: a two-tank machine overflows more than the leak takes. Idle it makes up and heats hundreds of litres an hour.
    /// </summary>
    [Fact]
    public void A_missing_drain_seal_shows_only_when_idle()
    {
        (ModelAnswer Answer, string Fault) read = default;
        var panel = Render<ModelPanel>(p =>
            p.Add(m => m.Machine, TypicalMachines.Of(MachineKind.RackConveyorTwoTank)).Add(m => m.Read, r => read = r)
        );
        panel.Find("#model-fault").Change("drain-seal-missing");

        Assert.Contains(preferences.Words["client.model.hidden"], panel.Markup, StringComparison.Ordinal);
        Assert.Equal("drain-seal-missing", read.Fault);
        Assert.Contains(
            panel.FindAll("tr.shows"),
            r => r.TextContent.Contains(preferences.Words["observable.idleWater"], StringComparison.Ordinal)
        );
    }

    /// <summary>Colder water coming in never makes the final rinse hotter; as described puts everything back.</summary>
    [Fact]
    public void A_change_is_compared_and_taken_back()
    {
        var panel = Render<ModelPanel>(p => p.Add(m => m.Machine, TypicalMachines.Of(MachineKind.RackConveyorTwoTank)));
        var heads = panel.FindAll("thead th").Count;
        panel.Find("#knob-supply-water").Change("100");
        Assert.Equal(heads + 1, panel.FindAll("thead th").Count);
        Assert.NotEmpty(panel.FindAll("tr.shows"));
        panel.Find("#model-reset").Click();
        Assert.Equal(heads, panel.FindAll("thead th").Count);
    }

    /// <summary>Every fault of the model has words in both languages, and every fault with a part is one of them.</summary>
    [Fact]
    public void Every_fault_is_named_and_every_named_part_is_drawn()
    {
        foreach (var language in Words.Languages)
        {
            var words = Words.For(language);
            Assert.DoesNotContain(MachineFaults.All, f => words["fault." + f.Id].StartsWith('['));
            Assert.DoesNotContain(Observables.All, o => words["observable." + o.Id].StartsWith('['));
        }

        var plans = Enum.GetValues<MachineKind>().Select(k => SectionPlanner.Of(TypicalMachines.Of(k))).ToList();
        Assert.All(
            FaultParts.Faults,
            f =>
            {
                Assert.NotNull(MachineFaults.Find(f));
                Assert.Contains(plans, p => FaultParts.Of(f, p).Count > 0);
            }
        );
    }

    private sealed class AtOnce : IModelling
    {
        public Task<ModelAnswer> RunAsync(ModelAsk ask) => Task.FromResult(ModelExports.Answer(ask));
    }
}
