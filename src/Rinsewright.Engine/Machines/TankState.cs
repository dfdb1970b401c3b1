using Rinsewright.Engine.Water;

namespace Rinsewright.Engine.Machines;

/// <summary>A tank in time, with the flows of the last step.</summary>
internal sealed class TankState
{
    /// <summary>Water, kg.</summary>
    public double Mass { get; set; }

    /// <summary>Water and metal, °C.</summary>
    public double Celsius { get; set; }

    /// <summary>Whether the heater is on.</summary>
    public bool Heats { get; set; }

    /// <summary>Whether the fill valve is open.</summary>
    public bool Fills { get; set; }

    /// <summary>Whether the pump runs.</summary>
    public bool Pumps { get; set; }

    /// <summary>Flows of its pump.</summary>
    public SprayFlow Spray { get; set; }

    /// <summary>Heater, W.</summary>
    public double Power { get; set; }

    /// <summary>Fill, with what leaks in, kg/s.</summary>
    public double Fill { get; set; }

    /// <summary>Over the overflow, kg/s.</summary>
    public double Overflow { get; set; }

    /// <summary>Through leak or open drain, kg/s.</summary>
    public double Leak { get; set; }

    /// <summary>Thrown onto the floor, kg/s.</summary>
    public double Floor { get; set; }

    /// <summary>Sprayed into the drain, kg/s.</summary>
    public double Drained { get; set; }

    /// <summary>Crosses to the next tank, kg/s.</summary>
    public double CrossOn { get; set; }

    /// <summary>Crosses to the tank before, kg/s.</summary>
    public double CrossBack { get; set; }

    /// <summary>Evaporates, kg/s.</summary>
    public double Evaporation { get; set; }

    /// <summary>Heat the air took, W.</summary>
    public double Vent { get; set; }

    /// <summary>Heat ware took, J in the step.</summary>
    public double ToWare { get; set; }

    /// <summary>Rise of <see cref="Vent"/> per kelvin, W/K.</summary>
    public double VentSlope { get; set; }

    /// <summary>Water of films that came in, kg in the step.</summary>
    public double FilmIn { get; set; }

    /// <summary>Their heat, J in the step.</summary>
    public double FilmHeat { get; set; }

    /// <summary>Water of films that leave, kg in the step.</summary>
    public double FilmOut { get; set; }

    /// <summary>Solutes gained but for flows between tanks, kg in the step.</summary>
    public double[] Source { get; } = new double[Solute.Count];

    /// <summary>Empty, at a temperature, everything off but the fill.</summary>
    public void Start(double celsius)
    {
        Mass = 0;
        Celsius = celsius;
        Heats = false;
        Fills = true;
        Pumps = false;
        Spray = default;
        Power = 0;
    }
}
