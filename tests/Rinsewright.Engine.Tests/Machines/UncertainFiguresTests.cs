using Rinsewright.Engine.Machines;

namespace Rinsewright.Engine.Tests.Machines;

/// <summary>A figure that is off: what the model computes with is changed as if the description had said so.</summary>
public sealed class UncertainFiguresTests
{
    private static readonly DateOnly Day = new(2026, 11, 20);

    public static TheoryData<MachineKind> Kinds => [.. Enum.GetValues<MachineKind>()];

    [Theory]
    [MemberData(nameof(Kinds))]
    public void A_change_of_the_description_and_of_the_numbers_are_the_same(MachineKind kind)
    {
        var machine = TypicalMachines.Of(kind);
        var p = ModelParameters.From(machine);
        foreach (var figure in UncertainFigures.Of(machine))
        {
            foreach (var off in new[] { -0.3, 0.2 })
            {
                var written = ModelParameters.From(figure.Measured(machine, off, 0.05, "test", Day));
                AssertSame(figure.Id, figure.Change(p, off), written);
            }
        }
    }

    [Theory]
    [MemberData(nameof(Kinds))]
    public void A_measured_figure_keeps_its_uncertainty(MachineKind kind)
    {
        var machine = TypicalMachines.Of(kind);
        foreach (var figure in UncertainFigures.Of(machine))
        {
            Assert.Equal(figure.Scatter.Typical, figure.Sigma(machine));
            Assert.Equal(0.017, figure.Sigma(figure.Measured(machine, 0.1, 0.017, "test", Day)), 1e-12);
        }
    }

    // By what the steady model makes of them: rounding of units apart, the same machine.
    private static void AssertSame(string id, ModelParameters expected, ModelParameters actual)
    {
        var racks = 0.6 * Duties.MostRacks(expected);
        var a = new SteadySolver(expected.Tanks.Length).Solve(expected, racks);
        var b = new SteadySolver(actual.Tanks.Length).Solve(actual, racks);
        for (var i = 0; i < a.Tanks.Length; i++)
        {
            Assert.True(Math.Abs(a.Tanks[i].Celsius - b.Tanks[i].Celsius) < 1e-6, id);
            Assert.True(Math.Abs(a.Tanks[i].Power - b.Tanks[i].Power) < 1e-3, id);
            Assert.True(Math.Abs(expected.Tanks[i].Closes - actual.Tanks[i].Closes) < 1e-9, id);
            Assert.True(Math.Abs(expected.Tanks[i].FillFlow - actual.Tanks[i].FillFlow) < 1e-12, id);
        }

        Assert.True(Math.Abs(a.BoosterPower - b.BoosterPower) < 1e-3, id);
        Assert.True(Math.Abs(a.Rinse.Pressure - b.Rinse.Pressure) < 1e-6, id);
        Assert.True(Math.Abs(a.RinseTransfer - b.RinseTransfer) < 1e-6, id);
        Assert.Equal(expected.Ware.Thickness, actual.Ware.Thickness, 1e-12);
    }
}
