using Rinsewright.Engine.Heat;
using Rinsewright.Engine.Water;

namespace Rinsewright.Engine.Machines;

/// <summary>The fresh final rinse from valve to nozzles.</summary>
internal sealed record RinseParameters
{
    /// <summary>Line, regulator and nozzles as built.</summary>
    public required RinseCircuit Circuit { get; init; }

    /// <summary>Flow it was built for, kg/s: what <see cref="Transfer"/> belongs to.</summary>
    public required double Nominal { get; init; }

    /// <summary>What the regulator is set to, Pa; infinite where it holds nothing back.</summary>
    public required double Regulator { get; init; }

    /// <summary>Supply pressure with nothing flowing, Pa.</summary>
    public required double Static { get; init; }

    /// <summary>Line resistance against a clean line; 1 clean.</summary>
    public double Line { get; init; } = 1;

    /// <summary>Nozzle coefficient against new; 1 new.</summary>
    public double Nozzles { get; init; } = 1;

    /// <summary>Share of the flow that passes a shut valve.</summary>
    public double Leak { get; init; }

    /// <summary>Share of the water that hits ware.</summary>
    public required double Hit { get; init; }

    /// <summary>How much of hit and transfer the aim leaves; 1 aimed.</summary>
    public double Aim { get; init; } = 1;

    /// <summary>Heat transfer where it hits, W/(m²·K).</summary>
    public required double Transfer { get; init; }

    /// <summary>Dry air while it sprays, kg/s.</summary>
    public required double Air { get; init; }

    /// <summary>Share the last tank catches.</summary>
    public double Captured { get; init; } = 1;

    /// <summary>Rinse valve and its switch.</summary>
    public Contact Valve { get; init; }

    /// <summary>Added to what its temperature gauge shows, K.</summary>
    public double GaugeOffset { get; init; }

    /// <summary>Start of the zone, m from the load end.</summary>
    public double ZoneFrom { get; init; }

    /// <summary>End of the zone, m.</summary>
    public double ZoneTo { get; init; }

    /// <summary>Start of the stretch in which a rack keeps the switch made, m.</summary>
    public double SwitchFrom { get; init; }

    /// <summary>End of that stretch, m.</summary>
    public double SwitchTo { get; init; }

    /// <summary>Whether it has no switch and runs while the belt moves.</summary>
    public bool WhileMoving { get; init; }

    /// <summary>Pressure and flow while the valve is open.</summary>
    public RinseFlow Running => Circuit.At(Regulator, Static, Nozzles, Line);
}

/// <summary>Booster.</summary>
internal sealed record BoosterParameters
{
    /// <summary>Heat capacity of water and metal, J/K.</summary>
    public required double Capacity { get; init; }

    /// <summary>Loss through its shell, W/K.</summary>
    public required double Shell { get; init; }

    /// <summary>Heater and thermostat.</summary>
    public required HeaterParameters Heater { get; init; }
}

/// <summary>How ware moves.</summary>
internal sealed record TravelParameters
{
    /// <summary>Speed, m/s.</summary>
    public double Speed { get; init; }

    /// <summary>Against that speed; 1 as set.</summary>
    public double SpeedFactor { get; init; } = 1;

    /// <summary>Racks asked for against racks that arrive, where the belt slips; 1 where it does not.</summary>
    public double Slip { get; init; } = 1;

    /// <summary>Where the tunnel ends, m from the load end.</summary>
    public double End { get; init; }

    /// <summary>How long pumps run on after the last rack, s.</summary>
    public double Hold { get; init; } = 60;

    /// <summary>Phases of a door machine; null on a conveyor.</summary>
    public CycleParameters? Cycle { get; init; }
}

/// <summary>Phases of a machine with doors, s.</summary>
internal sealed record CycleParameters
{
    /// <summary>Wash pump runs.</summary>
    public required double Wash { get; init; }

    /// <summary>Wait, or dump.</summary>
    public required double Dwell { get; init; }

    /// <summary>Fill for the rinse; 0 where none.</summary>
    public double Refill { get; init; }

    /// <summary>Rinse.</summary>
    public required double Rinse { get; init; }

    /// <summary>Closed after the rinse.</summary>
    public required double End { get; init; }

    /// <summary>Open.</summary>
    public required double Load { get; init; }

    /// <summary>Dry air while open, kg/s.</summary>
    public required double AirOpen { get; init; }

    /// <summary>Opening of the drain while it dumps, m²; 0 where it does not.</summary>
    public double Dump { get; init; }

    /// <summary>Whether it fills and dumps with every rack.</summary>
    public bool Dumps => Refill > 0;

    /// <summary>Length of a cycle, s.</summary>
    public double Length => Wash + Dwell + Refill + Rinse + End + Load;
}

/// <summary>What is carried through.</summary>
internal sealed record WareParameters
{
    /// <summary>Length of a rack, m.</summary>
    public required double RackLength { get; init; }

    /// <summary>Parts along a rack that the model moves one by one.</summary>
    public required int Groups { get; init; }

    /// <summary>Pieces in a rack.</summary>
    public required double Pieces { get; init; }

    /// <summary>Wetted area of a piece, m².</summary>
    public required double PieceArea { get; init; }

    /// <summary>Thickness, m.</summary>
    public required double Thickness { get; init; }

    /// <summary>Material.</summary>
    public required Material Material { get; init; }

    /// <summary>Mass of the plastic rack, kg.</summary>
    public required double RackMass { get; init; }

    /// <summary>Wetted area of the rack, m².</summary>
    public required double RackArea { get; init; }

    /// <summary>Half the thickness of its bars, m.</summary>
    public required double RackHalfThickness { get; init; }

    /// <summary>Temperature it comes in at, °C.</summary>
    public required double In { get; init; }

    /// <summary>Soil on a rack, kg.</summary>
    public required double Soil { get; init; }

    /// <summary>Water a rack carries, kg.</summary>
    public required double CarryOver { get; init; }

    /// <summary>How well rinse water replaces the carried film.</summary>
    public double Exchange { get; init; } = 0.3;

    /// <summary>Wetted area of a loaded rack, m².</summary>
    public double Area => (Pieces * PieceArea) + RackArea;

    /// <summary>Heat capacity of the pieces of a rack, J/K: both faces are wetted, so their volume is half the area times the thickness.</summary>
    public double PieceHeat => Pieces * Material.HeatPerVolume * PieceArea / 2 * Thickness;

    /// <summary>Heat capacity of the plastic rack, J/K.</summary>
    public double RackHeat => RackMass * Material.Polypropylene.HeatCapacity;
}

/// <summary>Chemicals.</summary>
internal sealed record FeedParameters
{
    /// <summary>Detergent the controller is set to, kg/kg.</summary>
    public double Detergent { get; init; }

    /// <summary>Detergent the soil needs, kg/kg: what the soil index counts as enough.</summary>
    public double Needed { get; init; }

    /// <summary>Width of its band, kg/kg.</summary>
    public double Band { get; init; }

    /// <summary>Detergent per time while it feeds, kg/s.</summary>
    public double Rate { get; init; }

    /// <summary>What the probe makes of the true strength; 1 true.</summary>
    public double Probe { get; init; } = 1;

    /// <summary>Rinse additive in the final rinse, kg/kg.</summary>
    public double Additive { get; init; }

    /// <summary>Sanitizer in the fill of a fill-and-dump machine, kg/kg.</summary>
    public double Sanitizer { get; init; }

    /// <summary>Sanitizer used up per second and per unit of soil mass fraction, 1/s.</summary>
    public double Demand { get; init; } = 0.5;
}
