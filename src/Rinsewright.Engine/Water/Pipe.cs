namespace Rinsewright.Engine.Water;

/// <summary>What water does in a pipe.</summary>
/// <param name="Speed">m/s.</param>
/// <param name="Reynolds">Reynolds number.</param>
/// <param name="Friction">Darcy friction factor.</param>
/// <param name="Loss">Pressure lost, Pa.</param>
public readonly record struct PipeFlow(double Speed, double Reynolds, double Friction, double Loss);

/// <summary>A straight round pipe with fittings, plain SI numbers. Equations W50 to W53 of this folder's README.</summary>
/// <param name="Diameter">Inside, m.</param>
/// <param name="Length">m.</param>
/// <param name="Roughness">m: drawn copper 1.5e-6, steel 4.6e-5 (from memory).</param>
/// <param name="Fittings">Sum of their loss coefficients K.</param>
public readonly record struct Pipe(double Diameter, double Length, double Roughness, double Fittings = 0)
{
    private const double LaminarEnd = 2300;

    /// <summary>Loss at a flow. Equation W50: f (L/D) ρv²/2 + ΣK ρv²/2.</summary>
    /// <param name="flow">m³/s, above 0.</param>
    /// <param name="celsius">Temperature of the water.</param>
    public PipeFlow At(double flow, double celsius)
    {
        var density = WaterProperties.Density(celsius);
        var speed = flow / (Math.PI / 4 * Diameter * Diameter);
        var reynolds = density * speed * Diameter / WaterProperties.Viscosity(celsius);
        var friction = FrictionFactor(reynolds, Roughness / Diameter);
        return new PipeFlow(speed, reynolds, friction, ((friction * Length / Diameter) + Fittings) * density * speed * speed / 2);
    }

    /// <summary>Friction factor: 64/Re where laminar, else Colebrook solved to the last digit. Equation W51.</summary>
    public static double FrictionFactor(double reynolds, double relativeRoughness)
    {
        if (reynolds < LaminarEnd)
        {
            return 64 / reynolds;
        }

        // x = 1/√f; Newton on Colebrook from Haaland, three or four turns.
        var x = 1 / Math.Sqrt(Haaland(reynolds, relativeRoughness));
        for (var turn = 0; turn < 20; turn++)
        {
            var inside = (relativeRoughness / 3.7) + (2.51 * x / reynolds);
            var f = x + (2 * Math.Log10(inside));
            var slope = 1 + (2 / Math.Log(10) * 2.51 / reynolds / inside);
            var next = x - (f / slope);
            if (Math.Abs(next - x) <= 1e-15 * x)
            {
                break;
            }

            x = next;
        }

        return 1 / (x * x);
    }

    /// <summary>Haaland's explicit friction factor, within 2 % of Colebrook. Equation W52.</summary>
    public static double Haaland(double reynolds, double relativeRoughness)
    {
        var x = -1.8 * Math.Log10(Math.Pow(relativeRoughness / 3.7, 1.11) + (6.9 / reynolds));
        return 1 / (x * x);
    }

    /// <summary>Speed of a pressure wave, m/s = √(K/ρ)/√(1 + K D/(E e)). Equation W53.</summary>
    /// <param name="diameter">Inside, m.</param>
    /// <param name="wall">Wall thickness, m.</param>
    /// <param name="elasticity">Of the wall, Pa: copper 117e9.</param>
    /// <param name="density">kg/m³.</param>
    public static double WaveSpeed(double diameter, double wall, double elasticity, double density)
    {
        const double Bulk = 2.19e9;
        return Math.Sqrt(Bulk / density) / Math.Sqrt(1 + (Bulk * diameter / (elasticity * wall)));
    }

    /// <summary>Pressure rise when a flow of this speed is stopped faster than the wave returns, Pa = ρ a Δv. Equation W53.</summary>
    public static double Surge(double waveSpeed, double speed, double density) => density * waveSpeed * speed;
}
