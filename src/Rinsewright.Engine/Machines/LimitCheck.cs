using Rinsewright.Engine.Quantities;
using Rinsewright.Engine.Records;
using Rinsewright.Engine.Sanitization;

namespace Rinsewright.Engine.Machines;

/// <summary>A limit in force held against what was computed. It says what the model expects there and is no judgement of a machine; one limit never excuses another.</summary>
/// <param name="Limit">Limit.</param>
/// <param name="Value">What was computed, in the limit's leading unit; null where the model does not compute it.</param>
/// <param name="Met">Whether it keeps the limit; null where the model cannot say.</param>
public sealed record LimitCheck(Limit Limit, Amount? Value, bool? Met)
{
    /// <summary>How the rules of sanitization class a kind of machine.</summary>
    public static MachineType TypeOf(MachineKind kind) =>
        kind switch
        {
            MachineKind.Undercounter or MachineKind.DoorHotWater => MachineType.StationaryRackDualTemperature,
            MachineKind.DoorChemical => MachineType.StationaryRackSingleTemperature,
            MachineKind.RackConveyorOneTank => MachineType.SingleTankConveyor,
            _ => MachineType.MultitankConveyor,
        };

    internal static IReadOnlyList<LimitCheck> All(Machine machine, RuleSet rules, Func<string, Observed?> read)
    {
        var limits = LimitsInForce.For(new ProofTerms(TypeOf(machine.Kind), machine.Sanitizing, rules, machine.Plate));
        var checks = new List<LimitCheck>(limits.Count);
        foreach (var limit in limits)
        {
            checks.Add(Of(limit, ObservableOf(limit) is { } observable ? read(observable.Id) : null));
        }

        return checks;
    }

    private static LimitCheck Of(Limit limit, Observed? observed)
    {
        if (observed is null)
        {
            return new LimitCheck(limit, null, null);
        }

        if (observed.Value is not { } value)
        {
            // A rinse that never comes reaches nothing.
            return new LimitCheck(limit, null, limit.Sense == LimitSense.Minimum ? false : null);
        }

        // The last digits of a double decide nothing: a tank held at the limit keeps it.
        var written = value.In(limit.Printed[0].Unit);
        var amount = written with { Value = Math.Round(written.Value, 6) };
        return new LimitCheck(limit, amount, !ReadingJudgement.Violates(amount, limit));
    }

    // The least that the final rinse falls to counts against a minimum.
    private static Observable? ObservableOf(Limit limit) =>
        (limit.Point, limit.Dimension) switch
        {
            (MeasuringPoint.WashTank, Dimension.Temperature) => Observables.WashTankTemperature,
            (MeasuringPoint.PumpedRinseTank, Dimension.Temperature) => Observables.RinseTankTemperature,
            (MeasuringPoint.FinalRinseManifold, Dimension.Temperature) when limit.Sense == LimitSense.Minimum =>
                Observables.FinalRinseLowest,
            (MeasuringPoint.FinalRinseManifold, Dimension.Temperature) => Observables.FinalRinseTemperature,
            (MeasuringPoint.FinalRinseLine, Dimension.GaugePressure) => Observables.FinalRinsePressure,
            (MeasuringPoint.SanitizingSolution, Dimension.MassConcentration) => Observables.SanitizerOnWare,
            (MeasuringPoint.WareSurface, Dimension.Temperature) => Observables.PlatePeakTemperature,
            (MeasuringPoint.WareSurface, Dimension.HeatUnits) => Observables.PlateHeatUnits,
            (MeasuringPoint.WareSurface, Dimension.EquivalentTime) => Observables.PlateEquivalentTime,
            _ => null,
        };
}
