using AngleSharp.Dom;
using Bunit;
using Microsoft.Extensions.DependencyInjection;
using Rinsewright.Client.Machines;
using Rinsewright.Client.Shell;
using Rinsewright.Client.Tests.Records;
using Rinsewright.Drawing.Section;
using Rinsewright.Engine.Machines;
using Xunit;

namespace Rinsewright.Client.Tests.Machines;

/// <summary>The section as a component: one focus stop, arrow keys, touch.</summary>
public sealed class MachineSectionTests : BunitContext
{
    private readonly Preferences preferences = new(new MemoryDevice());
    private readonly List<string> chosen = [];

    /// <summary>Words and a page that may be asked.</summary>
    public MachineSectionTests()
    {
        Services.AddSingleton(preferences);
        JSInterop.Mode = JSRuntimeMode.Loose;
    }

    /// <summary>The tab key stops once; every part is a button with its name and state.</summary>
    [Fact]
    public void The_drawing_is_one_stop_and_every_part_a_button()
    {
        var section = Draw();

        Assert.Single(section.FindAll("[tabindex='0']"));
        var parts = section.FindAll("svg [role=button]");
        Assert.Equal(SectionPlanner.Of(TypicalMachines.Of(MachineKind.RackConveyorTwoTank)).Parts.Count, parts.Count);
        Assert.All(
            parts,
            p => Assert.Contains(", " + preferences.Words["section.state.sound"], p.GetAttribute("aria-label"), StringComparison.Ordinal)
        );
    }

    /// <summary>An arrow goes on in the direction pressed, Enter opens, and where one is is said.</summary>
    [Fact]
    public void Arrow_keys_move_and_enter_opens()
    {
        var section = Draw();
        var host = section.Find(".section-host");
        host.Focus();
        host.KeyDown("ArrowRight");
        host.KeyDown("ArrowRight");
        host.KeyDown("Enter");

        var id = Assert.Single(chosen);
        var plan = SectionPlanner.Of(TypicalMachines.Of(MachineKind.RackConveyorTwoTank));
        var part = plan.Parts.First(p => p.Id == id);
        Assert.StartsWith(SectionWords.Name(part, plan, preferences.Words), section.Find("output").TextContent, StringComparison.Ordinal);
        Assert.NotNull(section.Find(".section-focus"));
    }

    /// <summary>A tap takes the nearest part; a tap on nothing takes none.</summary>
    [Fact]
    public async Task A_tap_takes_the_nearest_part()
    {
        var section = Draw();
        await section.InvokeAsync(() => section.Instance.OnWidth(1180));
        var machine = TypicalMachines.Of(MachineKind.RackConveyorTwoTank);
        var plan = SectionPlanner.Of(machine);
        var scale = (1180 - 24) / (plan.Right - plan.Left);
        var svg = section.Find("svg.section");
        var drawing = SectionDrawing.Of(machine, new SectionOptions { Words = preferences.Words, Scale = scale });
        Assert.Equal(SvgNumber(drawing.Height), svg.GetAttribute("height"));

        var at = drawing.Frame.At(plan.Parts.First(p => p.Id == "booster").Handle);
        await section.InvokeAsync(() => section.Instance.OnTap(at.X, at.Y));
        await section.InvokeAsync(() => section.Instance.OnTap(1, 1));

        Assert.Equal(["booster"], chosen);
    }

    /// <summary>While a rack moves only sprays, racks and what gives way is drawn anew.</summary>
    [Fact]
    public void A_moving_rack_opens_the_rinse()
    {
        var section = Draw();
        Assert.Empty(RinseSprays(section));
        section.Render(p => p.Add(s => s.RackAt, 1300));

        // The rinse switch is made from 1380 to 1500 mm: a rack from 1300 to 1808 mm holds it.
        Assert.NotEmpty(RinseSprays(section));
    }

    /// <summary>Parts in a state say so.</summary>
    [Fact]
    public void A_missing_cap_is_named_as_missing()
    {
        var section = Render<MachineSection>(p =>
            p.Add(s => s.Machine, TypicalMachines.Of(MachineKind.RackConveyorTwoTank))
                .Add(s => s.States, new Dictionary<string, PartState>(StringComparer.Ordinal) { ["cap-lower@wash"] = PartState.Missing })
        );

        Assert.EndsWith(
            preferences.Words["section.state.missing"],
            section.Find("[data-id='cap-lower@wash']").GetAttribute("aria-label"),
            StringComparison.Ordinal
        );
    }

    private static IEnumerable<IElement> RinseSprays(IRenderedComponent<MachineSection> section) =>
        section.FindAll(".spray").Where(s => s.GetAttribute("fill") == Booster());

    private static string Booster() =>
        $"#{WaterTint.At(TypicalMachines.Of(MachineKind.RackConveyorTwoTank).Booster!.Thermostat.SetPoint.Value).Screen:x6}";

    private static string SvgNumber(double value) => Rinsewright.Drawing.SvgWriter.Number(value);

    private IRenderedComponent<MachineSection> Draw() =>
        Render<MachineSection>(p =>
            p.Add(s => s.Machine, TypicalMachines.Of(MachineKind.RackConveyorTwoTank)).Add(s => s.SelectedChanged, chosen.Add)
        );
}
