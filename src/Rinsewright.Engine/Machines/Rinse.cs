using Rinsewright.Engine.Quantities;

namespace Rinsewright.Engine.Machines;

/// <summary>The fresh final rinse, from the supply valve to the nozzles.</summary>
public sealed record FinalRinse
{
    /// <summary>Flow at <see cref="Pressure"/>.</summary>
    public required Figure<VolumeFlow> Flow { get; init; }

    /// <summary>Flow pressure at the arm that <see cref="Flow"/> belongs to, and that the regulator is set to.</summary>
    public required Figure<GaugePressure> Pressure { get; init; }

    /// <summary>Share of its water that hits ware.</summary>
    public required Figure<Ratio> Hit { get; init; }

    /// <summary>Heat-transfer coefficient where it hits.</summary>
    public required Figure<HeatTransferCoefficient> Transfer { get; init; }

    /// <summary>Dry air that passes while it sprays.</summary>
    public required Figure<MassFlow> Air { get; init; }

    /// <summary>Share of its water that the last tank catches; the rest goes to the drain.</summary>
    public required Figure<Ratio> Captured { get; init; }

    /// <summary>
    /// The same nozzles with the regulator turned: the flow goes with the root of the pressure, equation W8 of Water. To write another pressure alone would mean other nozzles.
    /// </summary>
    /// <param name="pressure">Flow pressure at the arm, above 0.</param>
    public FinalRinse TurnedTo(Figure<GaugePressure> pressure)
    {
        var share = Math.Sqrt(pressure.Value.InPsi / Pressure.Value.InPsi);
        return this with { Pressure = pressure, Flow = Flow with { Written = Flow.Written with { Value = Flow.Written.Value * share } } };
    }
}

/// <summary>Booster heater between supply and final rinse.</summary>
public sealed record Booster
{
    /// <summary>Water in it.</summary>
    public required Figure<Volume> Capacity { get; init; }

    /// <summary>Its heater.</summary>
    public required Heater Heater { get; init; }

    /// <summary>Its thermostat.</summary>
    public required Thermostat Thermostat { get; init; }

    /// <summary>Heat lost per kelvin above the room.</summary>
    public required Figure<HeatConductance> ShellLoss { get; init; }

    /// <summary>Heat held by its metal.</summary>
    public required Figure<HeatCapacity> Metal { get; init; }

    /// <summary>Where it stands: its load side, from the unload-end face, beside the machine. For the drawing.</summary>
    public required Figure<Length> At { get; init; }

    /// <summary>Its width along the machine. For the drawing.</summary>
    public required Figure<Length> Width { get; init; }
}

/// <summary>Water and power as the building gives them.</summary>
public sealed record Supply
{
    /// <summary>Temperature of the water that feeds tanks and booster; where there is no booster, of the final rinse.</summary>
    public required Figure<Temperature> Water { get; init; }

    /// <summary>Pressure with nothing flowing.</summary>
    public required Figure<GaugePressure> StaticPressure { get; init; }

    /// <summary>Voltage between lines.</summary>
    public required Figure<ElectricPotential> Voltage { get; init; }

    /// <summary>Room air.</summary>
    public required Figure<Temperature> Room { get; init; }

    /// <summary>Relative humidity of the room.</summary>
    public required Figure<Ratio> Humidity { get; init; }
}
