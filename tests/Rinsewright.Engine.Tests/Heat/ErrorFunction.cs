namespace Rinsewright.Engine.Tests.Heat;

/// <summary>Error function, for the closed forms the slab is held against. Series below 2, continued fraction above (Abramowitz and Stegun 7.1.6, 7.1.14, from memory).</summary>
internal static class ErrorFunction
{
    public static double Erf(double x)
    {
        if (Math.Abs(x) >= 2)
        {
            return Math.Sign(x) * (1 - (Math.Exp(-x * x) * ScaledTail(Math.Abs(x))));
        }

        // All terms of one sign: nothing cancels.
        double term = x,
            sum = x;
        for (var n = 1; Math.Abs(term) > 1e-18 * Math.Abs(sum); n++)
        {
            term *= 2 * x * x / ((2 * n) + 1);
            sum += term;
        }

        return 2 / Math.Sqrt(Math.PI) * Math.Exp(-x * x) * sum;
    }

    public static double Complement(double x) => x < 2 ? 1 - Erf(x) : Math.Exp(-x * x) * ScaledTail(x);

    /// <summary>exp(x²) times the complement, for x not negative: no overflow where the two meet.</summary>
    public static double ScaledComplement(double x) => x < 2 ? Math.Exp(x * x) * (1 - Erf(x)) : ScaledTail(x);

    private static double ScaledTail(double x)
    {
        double fraction = 0;
        for (var k = 120; k >= 1; k--)
        {
            fraction = k / 2.0 / (x + fraction);
        }

        return 1 / (Math.Sqrt(Math.PI) * (x + fraction));
    }
}
