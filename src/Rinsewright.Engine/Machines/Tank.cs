using Rinsewright.Engine.Quantities;

namespace Rinsewright.Engine.Machines;

/// <summary>What a tank holds water for.</summary>
public enum TankDuty
{
    /// <summary>Knocks off coarse soil, cool.</summary>
    Prewash,

    /// <summary>Washes, with detergent.</summary>
    Wash,

    /// <summary>Rinses with its own pump, fed by the final rinse.</summary>
    PumpedRinse,
}

/// <summary>One tank with what stands in it, in the order the ware travels.</summary>
public sealed record Tank
{
    /// <summary>Id inside the machine: <c>prewash</c>, <c>wash</c> or <c>rinse</c>.</summary>
    public required string Id { get; init; }

    /// <summary>What it is for.</summary>
    public required TankDuty Duty { get; init; }

    /// <summary>Load-side wall, from the load-end face.</summary>
    public required Figure<Length> From { get; init; }

    /// <summary>Unload-side wall, from the load-end face.</summary>
    public required Figure<Length> To { get; init; }

    /// <summary>Water up to the overflow.</summary>
    public required Figure<Volume> Capacity { get; init; }

    /// <summary>Water surface at the overflow.</summary>
    public required Figure<Area> Surface { get; init; }

    /// <summary>Heat lost through the shell per kelvin above the room.</summary>
    public required Figure<HeatConductance> ShellLoss { get; init; }

    /// <summary>Heat held by the metal the water wets.</summary>
    public required Figure<HeatCapacity> Metal { get; init; }

    /// <summary>Its heater; null where it has none.</summary>
    public Heater? Heater { get; init; }

    /// <summary>Its thermostat; null where it has no heater.</summary>
    public Thermostat? Thermostat { get; init; }

    /// <summary>Its fill valve and float; null where only overflow or the final rinse feeds it.</summary>
    public Fill? Fill { get; init; }

    /// <summary>Its pump, arms and spray.</summary>
    public required Pump Pump { get; init; }

    /// <summary>Dry air that passes through its zone while it runs.</summary>
    public required Figure<MassFlow> AirRunning { get; init; }

    /// <summary>Dry air that passes while it stands.</summary>
    public required Figure<MassFlow> AirIdle { get; init; }

    /// <summary>Tank its overflow goes to; null for the drain.</summary>
    public string? SpillsTo { get; init; }
}

/// <summary>Kinds of heater.</summary>
public enum HeaterKind
{
    /// <summary>Electric elements.</summary>
    Electric,

    /// <summary>Steam coil.</summary>
    SteamCoil,

    /// <summary>Gas burner and tubes; its efficiency stands in the rated power.</summary>
    Gas,
}

/// <summary>How three elements are connected.</summary>
public enum Connection
{
    /// <summary>One element on one circuit.</summary>
    SinglePhase,

    /// <summary>Three elements between the lines.</summary>
    Delta,

    /// <summary>Three elements to a star point that floats.</summary>
    Wye,

    /// <summary>Three elements to a star point tied to neutral.</summary>
    WyeWithNeutral,
}

/// <summary>A heater of a tank or booster.</summary>
public sealed record Heater
{
    /// <summary>Kind.</summary>
    public required HeaterKind Kind { get; init; }

    /// <summary>Heat to the water at rated voltage; for a steam coil null, its heat follows the temperatures.</summary>
    public Figure<Power>? Rated { get; init; }

    /// <summary>Connection of electric elements.</summary>
    public Connection Connection { get; init; }

    /// <summary>Voltage the elements are rated at; null where not electric.</summary>
    public Figure<ElectricPotential>? RatedVoltage { get; init; }

    /// <summary>Steam coil: heat per kelvin between steam and water.</summary>
    public Figure<HeatConductance>? Coil { get; init; }

    /// <summary>Steam coil: temperature of the steam.</summary>
    public Figure<Temperature>? Steam { get; init; }
}

/// <summary>A thermostat: heats below the set point less half the band, stops above it plus half the band.</summary>
/// <param name="SetPoint">Middle of the band.</param>
/// <param name="Band">Width of the band.</param>
public sealed record Thermostat(Figure<Temperature> SetPoint, Figure<TemperatureDifference> Band);

/// <summary>Fill valve and float of a tank.</summary>
/// <param name="Flow">Flow while open.</param>
/// <param name="Closes">Share of the capacity at which the float closes the valve.</param>
/// <param name="Opens">Share at which it opens again.</param>
/// <param name="LowWater">Share below which heater and dosing are cut out.</param>
public sealed record Fill(Figure<VolumeFlow> Flow, Figure<Ratio> Closes, Figure<Ratio> Opens, Figure<Ratio> LowWater);

/// <summary>Pump of a tank with its arms.</summary>
/// <param name="Flow">Flow, new and clean.</param>
/// <param name="ArmPressure">Pressure at the arm at that flow.</param>
/// <param name="HeatToWater">Shaft power that ends in the water.</param>
/// <param name="Transfer">Mean heat-transfer coefficient of its spray on ware.</param>
/// <param name="Cross">Share of its flow that crosses to the next tank, and back; null where there is none.</param>
public sealed record Pump(
    Figure<VolumeFlow> Flow,
    Figure<GaugePressure> ArmPressure,
    Figure<Power> HeatToWater,
    Figure<HeatTransferCoefficient> Transfer,
    Figure<Ratio>? Cross = null
);
