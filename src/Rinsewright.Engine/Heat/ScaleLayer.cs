namespace Rinsewright.Engine.Heat;

/// <summary>Scale on heated surfaces. Equations H12 and H13.</summary>
internal static class ScaleLayer
{
    /// <summary>Conductivity of scale, W/(m K) [limescale-conductivity].</summary>
    public const double Conductivity = 2.2;

    /// <summary>
    /// How much hotter scale makes the sheath of an electric element, K. Equation H12. The element goes on giving nearly the same heat until a high limit trips or it fails.
    /// </summary>
    /// <param name="flux">Heat per surface of the element, W/m².</param>
    /// <param name="thickness">Of the scale, m.</param>
    public static double SheathRise(double flux, double thickness) => flux * thickness / Conductivity;

    // Thickness, m, and share of the fuel lost, of normal scale in a boiler [nist-handbook-115]; nothing is said beyond.
    private static readonly (double Thickness, double Lost)[] Fuel =
    [
        (0, 0),
        (0.0254 / 64, 0.010),
        (0.0254 / 32, 0.020),
        (0.0254 * 3 / 64, 0.030),
        (0.0254 / 16, 0.039),
    ];

    /// <summary>Share of the fuel that normal scale costs where a flame or steam heats through it, 0 to 1, by straight lines between the published figures; null beyond 1/16 in.</summary>
    /// <param name="thickness">Of the scale, m, 0 or more.</param>
    public static double? FuelLost(double thickness)
    {
        for (var i = 1; i < Fuel.Length; i++)
        {
            var (from, to) = (Fuel[i - 1], Fuel[i]);
            if (thickness <= to.Thickness)
            {
                return from.Lost + ((to.Lost - from.Lost) * (thickness - from.Thickness) / (to.Thickness - from.Thickness));
            }
        }

        return null;
    }

    /// <summary>Conductance left of a coil or heat exchanger, W/K. Equation H13.</summary>
    /// <param name="clean">Clean, W/K, above 0.</param>
    /// <param name="thickness">Of the scale, m.</param>
    /// <param name="area">Of the surface, m², above 0.</param>
    public static double ScaledCoil(double clean, double thickness, double area) => 1 / ((1 / clean) + (thickness / (Conductivity * area)));

    /// <summary>Heat of a steam coil, W, never from the water to the steam.</summary>
    /// <param name="coil">W/K.</param>
    /// <param name="steam">°C.</param>
    /// <param name="water">°C.</param>
    public static double CoilPower(double coil, double steam, double water) => coil * Math.Max(0, steam - water);
}
