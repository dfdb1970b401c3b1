using Rinsewright.Engine.Bench;
using Rinsewright.Engine.Machines;
using Rinsewright.Engine.Quantities;

namespace Rinsewright.Engine.Tests.Bench;

/// <summary>What a machine's description answers, and sums kept with it.</summary>
public sealed class MachineFiguresTests
{
    [Fact]
    public void Every_tool_takes_what_every_kind_of_machine_has()
    {
        foreach (var kind in Enum.GetValues<MachineKind>())
        {
            var machine = TypicalMachines.Of(kind);
            foreach (var tool in BenchTools.All)
            {
                foreach (var known in MachineFigures.For(tool, machine))
                {
                    var field = Assert.Single(tool.Fields, f => f.Id == known.Field);
                    var value = known.Value.In(field.Unit).Value;
                    Assert.InRange(value, field.Low, field.High);
                }

                foreach (var (id, option) in MachineFigures.Choices(tool, machine))
                {
                    Assert.Contains(option, Assert.Single(tool.Choices, c => c.Id == id).Options);
                }
            }
        }
    }

    [Fact]
    public void A_door_machine_gives_its_tank_and_its_rinse()
    {
        var machine = TypicalMachines.Of(MachineKind.DoorHotWater);
        var known = MachineFigures.For(BenchTools.Find("tank-dosing")!, machine).ToDictionary(k => k.Field, StringComparer.Ordinal);
        var rinse = machine.FinalRinse!;

        Assert.Equal(machine.Tanks[^1].Capacity.Written, known["tank"].Value);
        // By hand: flow times the rinse phase, of it what the tank catches.
        Assert.Equal(
            rinse.Flow.Value.InGallonPerMinute * machine.Cycle!.Rinse.Value.InSecond / 60 * rinse.Captured.Value.InFraction,
            known["rinsePerRack"].Value.In(Units.Gallon).Value,
            1e-9
        );
        Assert.Equal(Provenance.Typical, known["rinsePerRack"].Basis);
    }

    [Theory] // the other route: what the model says a rack takes
    [InlineData(MachineKind.DoorHotWater, 20)]
    [InlineData(MachineKind.RackConveyorTwoTank, 20)]
    public void Water_a_rack_is_that_of_the_model(MachineKind kind, double racks)
    {
        var machine = TypicalMachines.Of(kind);
        var model = SteadyState.Of(machine, racks).Of(Observables.RinseVolumePerRack.Id)!.Value!.Value.In(Units.Gallon).Value;
        var known = MachineFigures.For(BenchTools.Find("rinse-additive")!, machine).Single(k => k.Field == "rinsePerRack");

        Relative.Equal(model, known.Value.In(Units.Gallon).Value, 0.01);
    }

    [Fact]
    public void A_measured_figure_says_so_and_a_figure_out_of_range_is_left_out()
    {
        var machine = TypicalMachines.Of(MachineKind.DoorHotWater);
        var measured = machine with
        {
            Tanks =
            [
                machine.Tanks[0] with
                {
                    Capacity = new Figure<Volume>(new Amount(17, Units.Gallon), Provenance.Measured, "bucket", new DateOnly(2026, 11, 20)),
                },
            ],
        };
        var tool = BenchTools.Find("tank-dosing")!;

        Assert.Equal(Provenance.Measured, MachineFigures.For(tool, measured).Single(k => k.Field == "tank").Basis);
        var vast = machine with { Tanks = [machine.Tanks[0] with { Capacity = new Figure<Volume>(new Amount(600, Units.Gallon)) }] };
        Assert.DoesNotContain(MachineFigures.For(tool, vast), k => k.Field == "tank");
    }

    [Fact]
    public void A_kept_sum_comes_back()
    {
        var tool = BenchTools.Find("titration")!;
        var input = BenchInput.UsualOf(tool).And("drops", new Amount(9, Units.One)).And("endPoint", "m");
        var answer = tool.Solve(input).Answer!;
        var machine = BenchSetUps.Keep(
            TypicalMachines.Of(MachineKind.DoorHotWater),
            tool,
            input,
            answer,
            new DateOnly(2026, 11, 26),
            "R. Okafor"
        );

        var kept = Assert.Single(machine.SetUps);
        Assert.Equal(("titration", "R. Okafor", "product"), (kept.Tool, kept.By, kept.Found[0].Key));
        var again = tool.Solve(BenchSetUps.Input(tool, kept)).Answer!;
        Assert.Equal(answer.Results[0].Value!.Value.SI, again.Results[0].Value!.Value.SI, 1e-15);
        Assert.Equal(2, BenchSetUps.Keep(machine, tool, input, answer, new DateOnly(2026, 11, 27), "R. Okafor").SetUps.Count);
    }

    [Fact]
    public void What_a_later_version_kept_is_passed_over()
    {
        var tool = BenchTools.Find("titration")!;
        var kept = new SetUp(
            "titration",
            new DateOnly(2026, 11, 26),
            "",
            [KeyValuePair.Create("endPoint", "q"), KeyValuePair.Create("colour", "pink")],
            [KeyValuePair.Create("drops", new Amount(4, Units.Psi)), KeyValuePair.Create("bubbles", new Amount(4, Units.One))],
            []
        );
        var input = BenchSetUps.Input(tool, kept);

        Assert.Null(input.Find("drops"));
        Assert.Null(input.Find("bubbles"));
        Assert.Null(input.FindChoice("endPoint"));
    }

    [Fact] // kept before the strength of an acid had a unit of its own
    public void A_plain_number_of_an_earlier_version_is_in_the_unit_of_its_field()
    {
        var tool = BenchTools.Find("titration")!;
        var kept = new SetUp(tool.Id, new DateOnly(2026, 11, 1), "R. Okafor", [], [new("normality", new Amount(0.1, Units.One))], []);

        Assert.Equal(new Amount(0.1, Units.EquivalentPerLitre), BenchSetUps.Input(tool, kept).Find("normality"));
    }
}
