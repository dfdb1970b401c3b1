namespace Rinsewright.Engine.Tests.Water;

/// <summary>
/// Viscosity and heat conductivity of water at any density [iapws-r12-08, iapws-r15-11], without the critical terms: a second opinion on the engine's equations for liquid water at
/// one bar. Coefficients from memory; the releases' own check values (opened) show that they are right.
/// </summary>
internal static class FullFormulation
{
    private static readonly double[] ViscosityOfGas = [1.67752, 2.20462, 0.6366564, -0.241605];

    private static readonly (int I, int J, double H)[] ViscosityOfDensity =
    [
        (0, 0, 5.20094e-1),
        (1, 0, 8.50895e-2),
        (2, 0, -1.08374),
        (3, 0, -2.89555e-1),
        (0, 1, 2.22531e-1),
        (1, 1, 9.99115e-1),
        (2, 1, 1.88797),
        (3, 1, 1.26613),
        (5, 1, 1.20573e-1),
        (0, 2, -2.81378e-1),
        (1, 2, -9.06851e-1),
        (2, 2, -7.72479e-1),
        (3, 2, -4.89837e-1),
        (4, 2, -2.57040e-1),
        (0, 3, 1.61913e-1),
        (1, 3, 2.57399e-1),
        (0, 4, -3.25372e-2),
        (3, 4, 6.98452e-2),
        (4, 5, 8.72102e-3),
        (3, 6, -4.35673e-3),
        (5, 6, -5.93264e-4),
    ];

    private static readonly double[] ConductivityOfGas = [2.443221e-3, 1.323095e-2, 6.770357e-3, -3.454586e-3, 4.096266e-4];

    private static readonly double[][] ConductivityOfDensity =
    [
        [1.60397357, -0.646013523, 0.111443906, 0.102997357, -0.0504123634, 0.00609859258],
        [2.33771842, -2.78843778, 1.53616167, -0.463045512, 0.0832827019, -0.00719201245],
        [2.19650529, -4.54580785, 3.55777244, -1.40944978, 0.275418278, -0.0205938816],
        [-1.21051378, 1.60812989, -0.621178141, 0.0716373224],
        [-2.7203370, 4.57586331, -3.18369245, 1.1168348, -0.19268305, 0.012913842],
    ];

    /// <summary>µPa s.</summary>
    public static double Viscosity(double density, double kelvin)
    {
        var (t, r) = (kelvin / 647.096, density / 322.0);
        var gas = 100 * Math.Sqrt(t) / ViscosityOfGas.Select((h, i) => h / Math.Pow(t, i)).Sum();
        return gas * Math.Exp(r * ViscosityOfDensity.Sum(c => c.H * Math.Pow((1 / t) - 1, c.I) * Math.Pow(r - 1, c.J)));
    }

    /// <summary>mW/(m K).</summary>
    public static double HeatConductivity(double density, double kelvin)
    {
        var (t, r) = (kelvin / 647.096, density / 322.0);
        var gas = Math.Sqrt(t) / ConductivityOfGas.Select((l, k) => l / Math.Pow(t, k)).Sum();
        return gas
            * Math.Exp(
                r
                    * ConductivityOfDensity
                        .Select((row, i) => Math.Pow((1 / t) - 1, i) * row.Select((l, j) => l * Math.Pow(r - 1, j)).Sum())
                        .Sum()
            );
    }
}
