namespace Rinsewright.Engine.Water;

/// <summary>Flow through openings, over rims and out of tanks, in plain SI numbers. Equations W40 to W46 of this folder's README.</summary>
public static class Openings
{
    private const double Gravity = LiquidWater.Gravity;

    /// <summary>Flow of a nozzle or orifice, m³/s = Cd · π/4 · d² · √(2 Δp / ρ). Equation W40.</summary>
    /// <param name="discharge">Cd: sharp edge 0.60 to 0.62, short tube 0.80, drilled or rounded 0.85 to 0.97 (from memory).</param>
    /// <param name="diameter">m.</param>
    /// <param name="pressure">Pressure drop, Pa, not negative.</param>
    /// <param name="density">kg/m³.</param>
    public static double Nozzle(double discharge, double diameter, double pressure, double density) =>
        discharge * Math.PI / 4 * diameter * diameter * Math.Sqrt(2 * pressure / density);

    /// <summary>Flow at another pressure, in the unit of <paramref name="flow"/>: flows go as the root of the pressures. Equation W41.</summary>
    public static double AtPressure(double flow, double pressure, double otherPressure) => flow * Math.Sqrt(otherPressure / pressure);

    /// <summary>
    /// Flow through a ring-shaped gap, m³/s: the smaller of the turbulent π D c Cd √(2 Δp/ρ) and the laminar π D c³ Δp / (12 µ L). Equation W42. A worn seal, a loose union.
    /// </summary>
    /// <param name="diameter">Of the seal, m.</param>
    /// <param name="gap">m.</param>
    /// <param name="length">Of the gap in flow direction, m.</param>
    /// <param name="pressure">Pa.</param>
    /// <param name="density">kg/m³.</param>
    /// <param name="viscosity">Pa s.</param>
    /// <param name="discharge">Cd of the turbulent case.</param>
    public static double Gap(
        double diameter,
        double gap,
        double length,
        double pressure,
        double density,
        double viscosity,
        double discharge = 0.6
    ) =>
        Math.Min(
            discharge * Math.PI * diameter * gap * Math.Sqrt(2 * pressure / density),
            Math.PI * diameter * gap * gap * gap * pressure / (12 * viscosity * length)
        );

    /// <summary>Flow over the rim of an upright pipe, m³/s: weir while shallow, orifice when drowned; they meet at 3/8 of the diameter. Equation W43.</summary>
    /// <param name="diameter">Of the pipe, m.</param>
    /// <param name="head">Water above the rim, m, not negative.</param>
    /// <param name="discharge">Cd.</param>
    public static double Standpipe(double diameter, double head, double discharge = 0.6) =>
        Math.Min(
            2.0 / 3 * discharge * Math.Sqrt(2 * Gravity) * Math.PI * diameter * Math.Pow(head, 1.5),
            discharge * Math.PI / 4 * diameter * diameter * Math.Sqrt(2 * Gravity * head)
        );

    /// <summary>Flow over a straight rim with two ends, m³/s = 1.84 (L − 0.2 h) h^1.5 (Francis). Equation W44.</summary>
    /// <param name="length">Of the rim, m.</param>
    /// <param name="head">Water above the rim, m.</param>
    /// <param name="ends">How many ends draw the stream in: 2, 1 or 0.</param>
    public static double Rim(double length, double head, int ends = 2) => 1.84 * (length - (0.1 * ends * head)) * Math.Pow(head, 1.5);

    /// <summary>Time in which a tank with upright walls falls from one depth to another, s = 2A/(Cd a √(2g)) (√h₁ − √h₂). Equation W45.</summary>
    /// <param name="surface">Water surface, m².</param>
    /// <param name="diameter">Of the drain, m.</param>
    /// <param name="from">Depth over the drain, m.</param>
    /// <param name="to">Depth at the end, not above <paramref name="from"/>.</param>
    /// <param name="discharge">Cd.</param>
    public static double DrainTime(double surface, double diameter, double from, double to = 0, double discharge = 0.6) =>
        2 * surface / (discharge * Math.PI / 4 * diameter * diameter * Math.Sqrt(2 * Gravity)) * (Math.Sqrt(from) - Math.Sqrt(to));

    /// <summary>
    /// Nozzles that must be closed for a flow at a pressure to be as small as it is, of <paramref name="nozzles"/> equal ones: n (1 − flow/(K √p)), K of all of them open. Equation W46.
    /// Below 0 where more flows than new nozzles let through: worn or missing.
    /// </summary>
    public static double PluggedAt(int nozzles, double flow, double pressure, double ratedFlow, double ratedPressure) =>
        nozzles * (1 - (flow / AtPressure(ratedFlow, ratedPressure, pressure)));
}
