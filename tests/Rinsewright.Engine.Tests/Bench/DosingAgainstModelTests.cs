using Rinsewright.Engine.Bench;
using Rinsewright.Engine.Chemistry;
using Rinsewright.Engine.Machines;
using Rinsewright.Engine.Quantities;

namespace Rinsewright.Engine.Tests.Bench;

/// <summary>Two routes to one dose: the mixed tank of the Bench, and the machine model's balance of solutes over all tanks, films and overflows. They share no code.</summary>
public sealed class DosingAgainstModelTests
{
    [Theory]
    [InlineData(MachineKind.DoorHotWater, 40)]
    [InlineData(MachineKind.Undercounter, 20)]
    [InlineData(MachineKind.RackConveyorOneTank, 150)]
    [InlineData(MachineKind.RackConveyorTwoTank, 150)]
    [InlineData(MachineKind.RackConveyorTwoTank, 60)]
    public void The_hold_dose_is_that_of_the_solute_balance(MachineKind kind, double racks)
    {
        var machine = TypicalMachines.Of(kind);
        var (model, rinse, strength) = Read(machine, racks, []);
        var dosing = new TankDosing(machine.Tanks.Single(t => t.Duty == TankDuty.Wash).Capacity.Value, rinse);

        Relative.Equal(model.InGram, dosing.HoldDose(strength).InGram, 0.01);
        Relative.Equal(strength.InGramPerLitre, dosing.SettlesAt(model).InGramPerLitre, 0.01);
        Relative.Equal(rinse.InLitre, TankDosing.RinseFrom(model, strength).InLitre, 0.01);
    }

    // The rinse at 12 psi instead of 20: the dose that holds the same strength falls by the root of the pressures, and so says the model.
    [Fact]
    public void A_short_rinse_asks_for_less()
    {
        var machine = TypicalMachines.Of(MachineKind.DoorHotWater);
        var turned = machine with { FinalRinse = machine.FinalRinse!.TurnedTo(new Figure<GaugePressure>(new Amount(12, Units.Psi))) };
        var (was, _, _) = Read(machine, 40, []);
        var (now, _, _) = Read(turned, 40, []);
        var pressure = machine.FinalRinse!.Pressure.Value.InPsi;

        Relative.Equal(Math.Sqrt(12 / pressure), now.InGram / was.InGram, 0.01);
    }

    private static (Mass Fed, Volume Reaches, MassConcentration Strength) Read(
        Machine machine,
        double racks,
        IReadOnlyList<FaultAtSeverity> faults
    )
    {
        var reading = SteadyState.Of(machine, racks, faults);
        double Value(Observable observable) => reading.Of(observable.Id)!.Value!.Value.In(observable.Unit).Value;
        return (
            Mass.FromGram(Value(Observables.DetergentPerRack)),
            Volume.FromGallon(Value(Observables.RinseVolumePerRack)) * machine.FinalRinse!.Captured.Value.InFraction,
            MassConcentration.FromGramPerLitre(Value(Observables.WashDetergent))
        );
    }
}
