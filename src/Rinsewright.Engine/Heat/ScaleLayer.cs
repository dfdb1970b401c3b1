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
