namespace Rinsewright.Engine.Water;

/// <summary>Laws of centrifugal pumps, in plain SI numbers. Equations W47 to W49 of this folder's README.</summary>
public static class Pumps
{
    /// <summary>Flow, head and power at another speed: as the speed, its square and its cube. Equation W47.</summary>
    /// <param name="flow">In any unit.</param>
    /// <param name="head">In any unit.</param>
    /// <param name="power">In any unit.</param>
    /// <param name="ratio">New speed to old, above 0.</param>
    public static (double Flow, double Head, double Power) AtSpeed(double flow, double head, double power, double ratio) =>
        (flow * ratio, head * ratio * ratio, power * ratio * ratio * ratio);

    /// <summary>Power at the shaft, W = ρ g Q H / η. Equation W48.</summary>
    /// <param name="flow">m³/s.</param>
    /// <param name="head">m.</param>
    /// <param name="density">kg/m³.</param>
    /// <param name="efficiency">Of the pump, above 0 to 1.</param>
    public static double ShaftPower(double flow, double head, double density, double efficiency) =>
        density * LiquidWater.Gravity * flow * head / efficiency;

    /// <summary>Head at the suction above the vapour pressure, m. Equation W49. Below what the pump needs it rattles: hot water over a clogged strainer does that.</summary>
    /// <param name="pressure">Absolute pressure on the water, Pa.</param>
    /// <param name="vapour">Vapour pressure, Pa.</param>
    /// <param name="density">kg/m³.</param>
    /// <param name="rise">Water surface above the pump, m; negative where it has to lift.</param>
    /// <param name="loss">Lost in the suction, m.</param>
    public static double SuctionHead(double pressure, double vapour, double density, double rise, double loss) =>
        ((pressure - vapour) / (density * LiquidWater.Gravity)) + rise - loss;
}
