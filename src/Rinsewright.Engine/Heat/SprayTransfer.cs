using Rinsewright.Engine.Water;

namespace Rinsewright.Engine.Heat;

/// <summary>Heat passed from spray to ware. Equations H7 and H8.</summary>
internal static class SprayTransfer
{
    /// <summary>Share of a pumped spray that meets ware (estimate, from memory; of little weight, for the water has heat in plenty).</summary>
    public const double PumpedHit = 0.7;

    // Power of the flow in the coefficient of a film or jet (estimate, from memory).
    private const double FlowPower = 0.6;

    /// <summary>Coefficient at another flow than nominal, W/(m² K). Equation H7.</summary>
    /// <param name="nominal">At nominal flow.</param>
    /// <param name="flowShare">Flow against nominal, not negative.</param>
    /// <param name="covered">Share of the surface the spray still reaches.</param>
    public static double AtFlow(double nominal, double flowShare, double covered = 1) =>
        flowShare > 0 ? nominal * Math.Pow(flowShare, FlowPower) * covered : 0;

    /// <summary>
    /// Coefficient of a zone, W/(m² K), limited by the heat its own water can bring. Equation H8: a fresh rinse has little water, so its film would pass more heat than the water holds.
    /// </summary>
    /// <param name="coefficient">Of the film, W/(m² K).</param>
    /// <param name="area">Wetted ware in the zone, m², above 0.</param>
    /// <param name="water">Water that meets the ware, kg/s.</param>
    public static double OfZone(double coefficient, double area, double water)
    {
        var carried = water * LiquidWater.HeatCapacity;
        return carried > 0 && coefficient > 0 ? carried / area * (1 - Math.Exp(-coefficient * area / carried)) : 0;
    }
}
