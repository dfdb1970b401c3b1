namespace Rinsewright.Engine.Machines;

/// <summary>How a heater stands in the steady state.</summary>
internal enum HeaterStand
{
    /// <summary>Holds the set point.</summary>
    Holds,

    /// <summary>Gives all it has and does not reach it.</summary>
    Full,

    /// <summary>Off: not needed, cut out, or not there.</summary>
    Off,
}

/// <summary>A tank in the steady state, time means.</summary>
internal struct SteadyTank
{
    /// <summary>°C.</summary>
    public double Celsius;

    /// <summary>Water, kg.</summary>
    public double Mass;

    /// <summary>Heater.</summary>
    public HeaterStand Stand;

    /// <summary>Heater, W.</summary>
    public double Power;

    /// <summary>Pump heat, W.</summary>
    public double PumpHeat;

    /// <summary>Fill with what leaks in, kg/s.</summary>
    public double Fill;

    /// <summary>Overflow, kg/s.</summary>
    public double Overflow;

    /// <summary>Leak, kg/s.</summary>
    public double Leak;

    /// <summary>Thrown onto the floor, kg/s.</summary>
    public double Floor;

    /// <summary>Sprayed into the drain, kg/s.</summary>
    public double Drained;

    /// <summary>Crosses to the next tank, kg/s.</summary>
    public double CrossOn;

    /// <summary>Crosses to the tank before, kg/s.</summary>
    public double CrossBack;

    /// <summary>Evaporates, kg/s.</summary>
    public double Evaporation;

    /// <summary>Heat to the air, W.</summary>
    public double Vent;

    /// <summary>Rise of that per kelvin, W/K.</summary>
    public double VentSlope;

    /// <summary>Coefficient of its spray on ware, W/(m²·K); 0 where it does not spray.</summary>
    public double Transfer;

    /// <summary>Flows of its pump while it runs.</summary>
    public Water.SprayFlow Spray;

    /// <summary>All liquid that leaves, kg/s.</summary>
    public readonly double Out => Overflow + Leak + Floor + Drained + CrossOn + CrossBack;
}

/// <summary>The steady state at one load. Filled by <see cref="SteadySolver"/>; used again with every solve.</summary>
internal sealed class SteadySolution(int tanks)
{
    /// <summary>Tanks.</summary>
    public SteadyTank[] Tanks { get; } = new SteadyTank[tanks];

    /// <summary>Shares of time.</summary>
    public Duties Duties { get; set; }

    /// <summary>Final rinse at the booster's outlet, °C.</summary>
    public double Booster { get; set; }

    /// <summary>Booster, W.</summary>
    public double BoosterPower { get; set; }

    /// <summary>Final rinse while it runs.</summary>
    public Water.RinseFlow Rinse { get; set; }

    /// <summary>Mean flow of the final rinse with what passes a shut valve, kg/s.</summary>
    public double MeanRinse { get; set; }

    /// <summary>Final rinse where it meets ware, °C.</summary>
    public double RinseOnWare { get; set; }

    /// <summary>Its coefficient on ware, W/(m²·K).</summary>
    public double RinseTransfer { get; set; }

    /// <summary>Its heat to the air, mean, W.</summary>
    public double RinseVent { get; set; }

    /// <summary>Its water to the air, mean, kg/s.</summary>
    public double RinseEvaporation { get; set; }

    /// <summary>What the last tank catches, mean, kg/s.</summary>
    public double Captured { get; set; }

    /// <summary>What by-passes it to the drain, mean, kg/s.</summary>
    public double Bypassed { get; set; }

    /// <summary>Share of the carried film that the final rinse leaves.</summary>
    public double FilmKept { get; set; }

    /// <summary>Solves it took.</summary>
    public int Rounds { get; set; }

    /// <summary>All heat to the air, W.</summary>
    public double Vent
    {
        get
        {
            var sum = RinseVent;
            foreach (ref readonly var tank in Tanks.AsSpan())
            {
                sum += tank.Vent;
            }

            return sum;
        }
    }
}
