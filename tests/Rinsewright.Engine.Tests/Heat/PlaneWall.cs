namespace Rinsewright.Engine.Tests.Heat;

/// <summary>
/// Closed form the slab is held against: a plane wall of half thickness L, suddenly in a fluid, both faces alike. θ = (T − fluid)/(start − fluid) = Σ Cₙ exp(−ζₙ² Fo) cos(ζₙ x/L),
/// ζ tan ζ = Bi, C = 4 sin ζ/(2ζ + sin 2ζ) (Carslaw and Jaeger, from memory).
/// </summary>
internal sealed class PlaneWall
{
    private readonly double[] roots;

    public PlaneWall(double biot, int terms = 400) => roots = [.. Enumerable.Range(0, terms).Select(n => Root(biot, n))];

    public double FirstRoot => roots[0];

    public double FirstFactor => Factor(roots[0]);

    /// <summary>θ at x/L from the middle.</summary>
    public double At(double place, double fourier, int terms = int.MaxValue) => Sum(fourier, terms, zeta => Math.Cos(zeta * place));

    /// <summary>Mean of θ over the wall.</summary>
    public double Mean(double fourier, int terms = int.MaxValue) => Sum(fourier, terms, zeta => Math.Sin(zeta) / zeta);

    private static double Factor(double zeta) => 4 * Math.Sin(zeta) / ((2 * zeta) + Math.Sin(2 * zeta));

    private double Sum(double fourier, int terms, Func<double, double> shape)
    {
        double sum = 0;
        foreach (var zeta in roots.Take(terms))
        {
            sum += Factor(zeta) * Math.Exp(-zeta * zeta * fourier) * shape(zeta);
        }

        return sum;
    }

    // ζ sin ζ − Bi cos ζ changes sign once in (nπ, nπ + π/2).
    private static double Root(double biot, int n)
    {
        double low = n * Math.PI,
            high = low + (Math.PI / 2);
        for (var i = 0; i < 200; i++)
        {
            var middle = (low + high) / 2;
            var beyond = ((middle * Math.Sin(middle)) - (biot * Math.Cos(middle))) * (n % 2 == 0 ? 1 : -1) > 0;
            (low, high) = beyond ? (low, middle) : (middle, high);
        }

        return (low + high) / 2;
    }
}
