namespace Rinsewright.Engine.Tests.Heat;

/// <summary>Closed form the slab is held against: a body without end behind its face, suddenly in a fluid (Carslaw and Jaeger, from memory).</summary>
internal static class SemiInfinite
{
    /// <summary>Share of the way from start to fluid, at a depth.</summary>
    public static double Approach(double depth, double conductivity, double diffusivity, double coefficient, double seconds)
    {
        var spread = Math.Sqrt(diffusivity * seconds);
        var x = depth / (2 * spread);
        var y = coefficient * spread / conductivity;
        // exp(2xy + y²) erfc(x + y) = exp(−x²) · [exp((x + y)²) erfc(x + y)]
        return ErrorFunction.Complement(x) - (Math.Exp(-x * x) * ErrorFunction.ScaledComplement(x + y));
    }
}
