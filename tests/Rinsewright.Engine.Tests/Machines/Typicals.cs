using Rinsewright.Engine.Machines;

namespace Rinsewright.Engine.Tests.Machines;

/// <summary>Typical machines as the model computes with them.</summary>
internal static class Typicals
{
    public static ModelParameters TwoTank => Of(MachineKind.RackConveyorTwoTank);

    public static ModelParameters OneTank => Of(MachineKind.RackConveyorOneTank);

    public static ModelParameters Door => Of(MachineKind.DoorHotWater);

    public static TheoryData<MachineKind> Kinds => [.. Enum.GetValues<MachineKind>()];

    public static ModelParameters Of(MachineKind kind) => ModelParameters.From(TypicalMachines.Of(kind));

    /// <summary>Solved at racks an hour.</summary>
    public static SteadySolution Steady(this ModelParameters p, double racksPerHour) =>
        new SteadySolver(p.Tanks.Length).Solve(p, racksPerHour / 3600);

    public static double Fahrenheit(double celsius) => (celsius * 1.8) + 32;

    public static double Number(this SteadyReading reading, Observable observable) => reading.Of(observable.Id)!.Value!.Value.Value;

    public static double Number(this RunResult run, Observable observable) => run.Of(observable.Id)!.Value!.Value.Value;
}
