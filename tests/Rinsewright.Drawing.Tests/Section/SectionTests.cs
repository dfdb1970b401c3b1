using Rinsewright.Contracts.Language;
using Rinsewright.Drawing;
using Rinsewright.Drawing.Section;
using Rinsewright.Engine.Machines;
using Rinsewright.Engine.Quantities;
using Xunit;

namespace Rinsewright.Drawing.Tests.Section;

/// <summary>What holds for the section of every kind of machine.</summary>
public sealed class SectionTests
{
    private const double Finger = 44;

    public static TheoryData<MachineKind> Kinds => [.. Enum.GetValues<MachineKind>()];

    /// <summary>Kind, language, scale, flags, runs from right to left.</summary>
    public static TheoryData<MachineKind, string, double, FlagText, bool> Ways
    {
        get
        {
            TheoryData<MachineKind, string, double, FlagText, bool> ways = [];
            foreach (var kind in Enum.GetValues<MachineKind>())
            {
                foreach (var language in Words.Languages)
                {
                    ways.Add(kind, language, 0.43, FlagText.Full, false);
                    ways.Add(kind, language, 0.325, FlagText.Short, true);
                    ways.Add(kind, language, 0.2, FlagText.Full, false);
                }
            }

            return ways;
        }
    }

    // The parts every machine of a kind must show: our own list in the design of the section.
    private static readonly string[] Everywhere =
    [
        "pump-intake-strainer@wash",
        "wash-pump@wash",
        "scrap-tray-large@wash",
        "scrap-tray-small@wash",
        "scrap-basket@wash",
        "standpipe@wash",
        "standpipe-seal@wash",
        "tank-heater@wash",
        "float@wash",
        "thermometer-wash@wash",
        "wash-arm-upper@wash",
        "wash-arm-lower@wash",
        "cap-upper@wash",
        "cap-lower@wash",
        "water-supply-valve",
        "rinse-strainer",
        "pressure-regulator",
        "fill-valve",
        "detergent",
        "detergent-dispenser",
        "detergent-probe@wash",
        "rinse-additive-feeder",
    ];

    private static readonly string[] OfHotWater =
    [
        "booster",
        "rinse-arm-upper@final-rinse",
        "rinse-arm-lower@final-rinse",
        "pressure-gauge",
        "thermometer-rinse",
        "rinse-solenoid",
        "vacuum-breaker",
    ];

    private static readonly string[] OfRackConveyors = ["wash-switch", "rinse-switch"];

    private static readonly string[] OfConveyors =
    [
        "curtain-long@load",
        "curtain-long@wash-rinse",
        "table-limit-switch",
        "conveyor-drive",
        "vent@load",
        "door@wash",
    ];

    private static readonly string[] OfSeveralTanks =
    [
        "deflector-flap@rinse",
        "power-rinse-arm-upper@power-rinse",
        "cap-lower@power-rinse",
        "vent@unload",
    ];

    [Theory]
    [MemberData(nameof(Kinds))]
    public void Every_part_of_the_list_is_there(MachineKind kind)
    {
        var machine = TypicalMachines.Of(kind);
        var ids = SectionPlanner.Of(machine).Parts.Select(p => p.Id).ToHashSet(StringComparer.Ordinal);

        Assert.Equal([], Everywhere.Except(ids));
        Assert.Empty(machine.FinalRinse is null ? [] : OfHotWater.Where(p => !ids.Contains(p)));
        Assert.Empty(machine.Conveyor is null ? [] : OfConveyors.Where(p => !ids.Contains(p)));
        Assert.Empty(machine.Conveyor is null || kind == MachineKind.Flight ? [] : OfRackConveyors.Where(p => !ids.Contains(p)));
        Assert.Empty(machine.Tanks.Count < 2 ? [] : OfSeveralTanks.Where(p => !ids.Contains(p)));
        Assert.Equal(kind == MachineKind.DoorChemical, ids.Contains("drain-valve"));
        Assert.Equal(ids.Count, SectionPlanner.Of(machine).Parts.Count);
    }

    [Theory]
    [MemberData(nameof(Kinds))]
    public void A_finger_tells_every_part_from_its_neighbour_at_the_reading_scale(MachineKind kind)
    {
        var plan = SectionPlanner.Of(TypicalMachines.Of(kind));

        Assert.True(plan.LeastDistance() * plan.ReadingScale >= Finger, $"{plan.LeastDistance():0.0} mm");

        // The two commonest conveyors read at the scale the design set; machines with less room for their parts need more of it.
        var most = kind switch
        {
            MachineKind.RackConveyorOneTank or MachineKind.RackConveyorTwoTank => 0.325,
            MachineKind.Undercounter or MachineKind.DoorChemical => 0.6,
            _ => 0.38,
        };
        Assert.True(plan.ReadingScale <= most, $"{plan.ReadingScale}");
    }

    [Theory]
    [MemberData(nameof(Ways))]
    public void No_word_covers_another_and_all_lies_inside(MachineKind kind, string language, double scale, FlagText text, bool mirrored)
    {
        var machine = TypicalMachines.Of(kind) with { RunsRightToLeft = mirrored };
        var drawing = SectionDrawing.Of(machine, Options(language) with { Scale = scale, Flags = text });
        var texts = Texts(drawing.Scene().Marks).Where(t => t.Style.StartsWith('f') || t.Style.StartsWith('z')).ToList();

        var areas = texts.Select(t => LabelPlacer.AreaOf(t.Style, t.Text, t.X, t.Y, t.Anchor)).ToList();
        for (var i = 0; i < areas.Count; i++)
        {
            Assert.InRange(areas[i].Left, -4, drawing.Width + 1);
            Assert.InRange(areas[i].Top, -4, drawing.Height);
            Assert.InRange(areas[i].Right, 0, drawing.Width + 4);
            Assert.InRange(areas[i].Bottom, 0, drawing.Height + 1);
            for (var k = i + 1; k < areas.Count; k++)
            {
                Assert.False(areas[i].Meets(areas[k]), $"'{texts[i].Text}' covers '{texts[k].Text}'");
            }
        }

        foreach (var part in drawing.Plan.Parts)
        {
            foreach (var p in part.Body.SelectMany(b => drawing.Frame.At(b.Outline).Steps).Select(s => s.To))
            {
                Assert.InRange(p.X, 0, drawing.Width);
                Assert.InRange(p.Y, 0, drawing.Height);
            }
        }
    }

    [Theory]
    [MemberData(nameof(Kinds))]
    public void Every_part_is_named_in_both_languages_and_told_apart(MachineKind kind)
    {
        var plan = SectionPlanner.Of(TypicalMachines.Of(kind));
        foreach (var language in Words.Languages)
        {
            var words = Words.For(language);
            var names = plan.Parts.Select(p => SectionWords.Name(p, plan, words)).ToList();

            Assert.DoesNotContain(names, n => n.Contains('[', StringComparison.Ordinal));
            Assert.DoesNotContain(plan.Parts, p => SectionWords.Flag(p, words, true).StartsWith('['));
            Assert.Equal(names.Count, names.Distinct(StringComparer.Ordinal).Count());
            Assert.DoesNotContain(plan.Zones, z => words["section.zone." + z.Id].StartsWith('['));
            Assert.DoesNotContain(plan.Flows, f => words["section.flow." + f.Id.Split('@')[0]].StartsWith('['));
        }
    }

    [Theory]
    [MemberData(nameof(Kinds))]
    public void The_arrow_keys_reach_every_part(MachineKind kind)
    {
        var drawing = SectionDrawing.Of(TypicalMachines.Of(kind), Options("en"));
        var all = drawing.Plan.Parts.Where(p => p.Side != FlagSide.None).ToList();
        HashSet<string> reached = [];
        Queue<string> next = new([drawing.Frame.Step(null, 1, 0)!.Id]);
        while (next.TryDequeue(out var id))
        {
            if (!reached.Add(id))
            {
                continue;
            }

            foreach (var (dx, dy) in ((int, int)[])[(1, 0), (-1, 0), (0, 1), (0, -1)])
            {
                if (drawing.Frame.Step(id, dx, dy) is { } to)
                {
                    var (a, b) = (drawing.Frame.At(all.Find(p => p.Id == id)!.Handle), drawing.Frame.At(to.Handle));
                    Assert.True(((b.X - a.X) * dx) + ((b.Y - a.Y) * dy) > 0, $"{id} to {to.Id} goes another way");
                    next.Enqueue(to.Id);
                }
            }
        }

        Assert.Empty(all.Select(p => p.Id).Except(reached));
    }

    [Theory]
    [MemberData(nameof(Kinds))]
    public void A_touch_on_a_handle_finds_a_part_and_a_touch_on_nothing_none(MachineKind kind)
    {
        var drawing = SectionDrawing.Of(
            TypicalMachines.Of(kind),
            Options("en") with
            {
                Scale = SectionPlanner.Of(TypicalMachines.Of(kind)).ReadingScale,
            }
        );
        foreach (var part in drawing.Plan.Parts.Where(p => p.Side != FlagSide.None))
        {
            var at = drawing.Frame.At(part.Handle);
            Assert.Equal(part.Id, drawing.Frame.Nearest(at.X, at.Y)?.Id);
        }

        Assert.Null(drawing.Frame.Nearest(2, drawing.Frame.Above + 4));
    }

    [Fact]
    public void What_is_faulty_read_or_selected_has_its_flag()
    {
        var drawing = SectionDrawing.Of(TypicalMachines.Of(MachineKind.RackConveyorTwoTank), Faulty());

        Assert.Empty(drawing.Waiting.Intersect([.. Faulty().States.Keys, .. Faulty().Readings.Keys, Faulty().Selected!]));
    }

    [Fact]
    public void A_machine_from_right_to_left_is_the_mirror_of_the_other()
    {
        var machine = TypicalMachines.Of(MachineKind.RackConveyorTwoTank);
        var one = SectionDrawing.Of(machine, Options("en"));
        var other = SectionDrawing.Of(machine with { RunsRightToLeft = true }, Options("en"));

        foreach (var part in one.Plan.Parts)
        {
            Assert.Equal(one.Width - one.Frame.X(part.Handle.X), other.Frame.X(part.Handle.X), 6);
        }
    }

    [Fact]
    public void Hotter_water_is_lighter_and_what_lies_off_the_ramp_has_its_end()
    {
        double Light(double f)
        {
            var c = WaterTint.At(Temperature.FromFahrenheit(f)).Screen;
            return (0.2126 * (c >> 16)) + (0.7152 * ((c >> 8) & 0xFF)) + (0.0722 * (c & 0xFF));
        }

        for (var f = 100; f < 195; f++)
        {
            Assert.True(Light(f) < Light(f + 1), $"{f}");
        }

        Assert.Equal(WaterTint.At(Temperature.FromFahrenheit(100)), WaterTint.At(Temperature.FromFahrenheit(50)));
        Assert.Equal(0xFEE838u, WaterTint.At(Temperature.FromFahrenheit(212)).Screen);
    }

    [Fact]
    public void Length_is_to_scale()
    {
        var machine = TypicalMachines.Of(MachineKind.RackConveyorTwoTank);
        var frame = SectionDrawing.Of(machine, Options("en") with { Scale = 0.4 }).Frame;

        // Wash from 150 to 750 mm: 600 mm at 0.4 px/mm.
        Assert.Equal(240, frame.X(750) - frame.X(150), 9);
    }

    internal static SectionOptions Options(string language) => new() { Words = Words.For(language) };

    internal static SectionOptions Faulty() =>
        Options("en") with
        {
            Selected = "pump-intake-strainer@wash",
            Ahead = [1030],
            States = new Dictionary<string, PartState>(StringComparer.Ordinal)
            {
                ["cap-lower@wash"] = PartState.Missing,
                ["scrap-tray-large@wash"] = PartState.Dirty,
                ["curtain-long@wash-rinse"] = PartState.Misplaced,
                ["standpipe-seal@rinse"] = PartState.Worn,
            },
            Readings = new Dictionary<string, SectionReading>(StringComparer.Ordinal)
            {
                ["thermometer-wash@wash"] = new("158.6 °F", StatusShape.Circle),
                ["thermometer-rinse"] = new("177.2 °F", StatusShape.Square),
            },
        };

    private static IEnumerable<SceneText> Texts(IEnumerable<SceneMark> marks) =>
        marks.SelectMany(m =>
            m switch
            {
                SceneText t => [t],
                ScenePart p => Texts(p.Marks),
                SceneLayer l => Texts(l.Marks),
                _ => Enumerable.Empty<SceneText>(),
            }
        );
}
