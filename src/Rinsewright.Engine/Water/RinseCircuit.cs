namespace Rinsewright.Engine.Water;

/// <summary>Flow of the final rinse.</summary>
/// <param name="Pressure">At the arm, Pa.</param>
/// <param name="Flow">kg/s.</param>
internal readonly record struct RinseFlow(double Pressure, double Flow);

/// <summary>
/// Final rinse from the supply through line strainer and regulator to the nozzles. Equations W8 and W9. The regulator holds its pressure as long as the supply can give it;
/// else the nozzles share the static pressure with the line.
/// </summary>
internal readonly record struct RinseCircuit
{
    // Line resistance, clean, against that of the nozzles (estimate, from memory).
    private const double LineShare = 0.15;

    private readonly double line;

    private RinseCircuit(double coefficient)
    {
        Coefficient = coefficient;
        line = LineShare / (coefficient * coefficient);
    }

    /// <summary>Nozzle coefficient K of flow = K · √pressure, kg/s per √Pa.</summary>
    public double Coefficient { get; }

    /// <summary>Circuit that gives a flow (kg/s, above 0) at an arm pressure (Pa, above 0).</summary>
    public static RinseCircuit FromNominal(double flow, double pressure)
    {
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(flow);
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(pressure);
        return new RinseCircuit(flow / Math.Sqrt(pressure));
    }

    /// <summary>Pressure and flow while it runs.</summary>
    /// <param name="regulator">Pressure the regulator is set to, Pa; infinite where it no longer holds.</param>
    /// <param name="staticPressure">Supply with nothing flowing, Pa.</param>
    /// <param name="nozzles">Share of the nozzle coefficient left, above 0 to 1.</param>
    /// <param name="strainer">Resistance of the line against a clean one, 1 or more.</param>
    public RinseFlow At(double regulator, double staticPressure, double nozzles = 1, double strainer = 1)
    {
        var coefficient = Coefficient * nozzles;
        if (coefficient <= 0)
        {
            return new RinseFlow(Math.Max(0, Math.Min(regulator, staticPressure)), 0);
        }

        var resistance = 1 / (coefficient * coefficient);
        var pressure = Math.Max(0, Math.Min(regulator, staticPressure * resistance / (resistance + (line * strainer))));
        return new RinseFlow(pressure, coefficient * Math.Sqrt(pressure));
    }
}
