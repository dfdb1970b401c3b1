namespace Rinsewright.Engine.Water;

/// <summary>
/// Liquid water as the model counts it. Heat capacity and density are constants, so that heat is exactly mass · capacity · temperature and is conserved to the
/// last digit; against real water between 20 and 90 °C that costs less than 0.4 % in capacity and about 1 % in density (from memory).
/// </summary>
internal static class LiquidWater
{
    /// <summary>Heat capacity, J/(kg K).</summary>
    public const double HeatCapacity = 4186;

    /// <summary>Density, kg/m³; water at 60 °C.</summary>
    public const double Density = 983.0;

    /// <summary>Gravity, m/s².</summary>
    public const double Gravity = 9.80665;
}
