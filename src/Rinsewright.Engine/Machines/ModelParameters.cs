using Rinsewright.Engine.Sanitization;
using Rinsewright.Engine.Water;

namespace Rinsewright.Engine.Machines;

/// <summary>
/// What the model computes with: the description as plain doubles, SI with °C, made once by <see cref="From"/>. Immutable; a fault makes a
/// changed copy.
/// </summary>
internal sealed partial record ModelParameters
{
    /// <summary>Kind of machine.</summary>
    public required MachineKind Kind { get; init; }

    /// <summary>How it sanitizes.</summary>
    public required SanitizingMethod Sanitizing { get; init; }

    /// <summary>Tanks in the order the ware travels; the last receives the final rinse.</summary>
    public required TankParameters[] Tanks { get; init; }

    /// <summary>Final rinse; null on a fill-and-dump machine.</summary>
    public RinseParameters? Rinse { get; init; }

    /// <summary>Booster; null where the building supplies the final rinse.</summary>
    public BoosterParameters? Booster { get; init; }

    /// <summary>How ware moves.</summary>
    public required TravelParameters Travel { get; init; }

    /// <summary>What is carried through.</summary>
    public required WareParameters Ware { get; init; }

    /// <summary>Chemicals.</summary>
    public required FeedParameters Feed { get; init; }

    /// <summary>Temperature of the water from the building, °C.</summary>
    public double SupplyTemperature { get; init; } = 60;

    /// <summary>Room air, °C.</summary>
    public double RoomTemperature { get; init; } = 24;

    /// <summary>Relative humidity of the room, 0 to 1.</summary>
    public double RoomHumidity { get; init; } = 0.5;

    /// <summary>Multiplies the air through zones and final rinse, not that through an open door: 1 as the machine was set up.</summary>
    public double AirFactor { get; init; } = 1;

    /// <summary>How far the air leaving a zone has come from room to water temperature, 0 to 1.</summary>
    public double AirApproach { get; init; } = 0.6;

    /// <summary>Heat transfer to ware between the sprays, W/(m²·K).</summary>
    public double GapTransfer { get; init; } = 30;

    /// <summary>Heat transfer to wet ware in room air, W/(m²·K).</summary>
    public double RoomTransfer { get; init; } = 80;

    /// <summary>Index of the tank that washes.</summary>
    public int Wash { get; init; }

    /// <summary>Whether a conveyor or belt carries the ware.</summary>
    public bool Conveys => Travel.Cycle is null;

    /// <summary>This with one tank changed.</summary>
    public ModelParameters WithTank(int index, Func<TankParameters, TankParameters> change)
    {
        var tanks = (TankParameters[])Tanks.Clone();
        tanks[index] = change(tanks[index]);
        return this with { Tanks = tanks };
    }

    /// <summary>This with every tank changed.</summary>
    public ModelParameters WithTanks(Func<TankParameters, TankParameters> change) =>
        this with
        {
            Tanks = Array.ConvertAll(Tanks, t => change(t)),
        };
}

/// <summary>How a float or switch behaves.</summary>
internal enum Contact
{
    /// <summary>As it should.</summary>
    Works,

    /// <summary>As if always made: the rinse runs, the pump runs, the fill is open.</summary>
    On,

    /// <summary>As if never made.</summary>
    Off,
}

/// <summary>One tank.</summary>
internal sealed record TankParameters
{
    /// <summary>Id inside the machine.</summary>
    public required string Id { get; init; }

    /// <summary>What it is for.</summary>
    public required TankDuty Duty { get; init; }

    /// <summary>Water at the overflow, kg.</summary>
    public required double Full { get; init; }

    /// <summary>Water surface, m².</summary>
    public required double Surface { get; init; }

    /// <summary>Loss through the shell, W/K.</summary>
    public required double Shell { get; init; }

    /// <summary>Heat capacity of the wetted metal, J/K.</summary>
    public required double Metal { get; init; }

    /// <summary>Heater; null where there is none.</summary>
    public HeaterParameters? Heater { get; init; }

    /// <summary>Added to what the gauge shows, K.</summary>
    public double GaugeOffset { get; init; }

    /// <summary>Fill flow while open, kg/s; 0 where only overflow or the final rinse feeds it.</summary>
    public double FillFlow { get; init; }

    /// <summary>What runs in always, kg/s.</summary>
    public double FillLeak { get; init; }

    /// <summary>Float: <see cref="Contact.On"/> fills always, <see cref="Contact.Off"/> never.</summary>
    public Contact Float { get; init; }

    /// <summary>Water at which the float closes, kg.</summary>
    public double Closes { get; init; }

    /// <summary>Water at which it opens again, kg.</summary>
    public double Opens { get; init; }

    /// <summary>Water below which heater and dosing are cut out, kg.</summary>
    public double LowWater { get; init; }

    /// <summary>Leak opening in the floor of the tank with its discharge coefficient, m².</summary>
    public double Leak { get; init; }

    /// <summary>Index of the tank its overflow runs to; −1 for the drain.</summary>
    public int SpillsTo { get; init; } = -1;

    /// <summary>Pump, arms and spray.</summary>
    public required PumpParameters Pump { get; init; }

    /// <summary>Dry air through its zone while it runs, kg/s.</summary>
    public required double AirRunning { get; init; }

    /// <summary>Dry air while it stands, kg/s.</summary>
    public required double AirIdle { get; init; }

    /// <summary>Start of its spray, m from the load end.</summary>
    public double ZoneFrom { get; init; }

    /// <summary>End of its spray, m.</summary>
    public double ZoneTo { get; init; }
}

/// <summary>A heater with its thermostat.</summary>
internal sealed record HeaterParameters
{
    /// <summary>Heat to the water as installed and supplied, W; unused by a coil.</summary>
    public double Power { get; init; }

    /// <summary>Steam coil, W/K; 0 where not a coil.</summary>
    public double Coil { get; init; }

    /// <summary>Steam, °C.</summary>
    public double Steam { get; init; }

    /// <summary>Whether its heat comes from steam or gas instead of electricity.</summary>
    public bool Burns { get; init; }

    /// <summary>Share of power or coil that is left, 0 to 1.</summary>
    public double Share { get; init; } = 1;

    /// <summary>Middle of the thermostat's band, °C.</summary>
    public required double SetPoint { get; init; }

    /// <summary>Width of the band, K.</summary>
    public required double Band { get; init; }

    /// <summary>What its sensor reads too much, K.</summary>
    public double SensorOffset { get; init; }

    /// <summary>Heat at a water temperature with the heater on, W.</summary>
    public double HeatAt(double celsius) => Share * (Coil > 0 ? Coil * Math.Max(0, Steam - celsius) : Power);
}

/// <summary>A recirculating pump with its arms.</summary>
internal sealed record PumpParameters
{
    /// <summary>Pump, strainer and arms as built.</summary>
    public required SprayCircuit Circuit { get; init; }

    /// <summary>What they are like today; the level of the tank is put in by the model.</summary>
    public SprayCondition Condition { get; init; } = SprayCondition.Clean;

    /// <summary>Shaft power to the water, W.</summary>
    public required double Heat { get; init; }

    /// <summary>Heat transfer of the spray, new and clean, W/(m²·K).</summary>
    public required double Transfer { get; init; }

    /// <summary>Share of the flow through an open arm end that leaves the machine.</summary>
    public double OpenEndOut { get; init; }

    /// <summary>Share of the flow that leaves the machine onto the floor.</summary>
    public double ThrownOut { get; init; }

    /// <summary>Share of the flow that runs to the drain.</summary>
    public double ToDrain { get; init; }

    /// <summary>Share of the ware the spray reaches; 1 as designed.</summary>
    public double Coverage { get; init; } = 1;

    /// <summary>Share of flow that crosses to the next tank, and of the next pump's flow that comes back.</summary>
    public double Cross { get; init; }

    /// <summary>Its switch: <see cref="Contact.On"/> runs always, <see cref="Contact.Off"/> never.</summary>
    public Contact Switch { get; init; }
}
