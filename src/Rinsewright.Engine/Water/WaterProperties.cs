namespace Rinsewright.Engine.Water;

/// <summary>
/// Properties of liquid water at 0.1 MPa, 253.15 to 383.15 K, by the formulas of [iapws-sr6-08]; vapour pressure by [iapws-if97]. Equations W30 to W33. For the tools of the
/// Bench; the machine model counts water with the constants of <see cref="LiquidWater"/>.
/// </summary>
public static class WaterProperties
{
    private const double GasConstant = 0.46151805; // kJ/(kg K)
    private const double ReferenceKelvin = 10;
    private const double KelvinAtZeroCelsius = 273.15;

    private static readonly double[] VolumeA = [6.74458446e3, -2.22521604e5, 1.00231247e8, -1.63552118e9, 8.32299658e9];
    private static readonly int[] VolumeN = [4, 5, 7, 8, 9];
    private static readonly double[] VolumeB =
    [
        5.78545292e-3,
        -1.53195665e-2,
        3.11337859e-2,
        -4.23546241e-2,
        3.38713507e-2,
        -1.19946761e-2,
    ];

    private static readonly double[] CapacityA = [-1.661470539e5, 2.708781640e6, -1.557191544e8];
    private static readonly int[] CapacityN = [4, 5, 7];
    private static readonly double[] CapacityB = [-0.8237426256, 1.908956353, -2.017597384, 0.8546361348];
    private static readonly int[] CapacityM = [2, 3, 4, 5];

    /// <summary>Density, kg/m³.</summary>
    public static double Density(double celsius)
    {
        var (alpha, beta) = Variables(celsius);
        var v = 1.93763157e-2;
        for (var i = 0; i < VolumeA.Length; i++)
        {
            v += VolumeA[i] * Math.Pow(alpha, VolumeN[i]);
        }

        for (var i = 0; i < VolumeB.Length; i++)
        {
            v += VolumeB[i] * Math.Pow(beta, i + 1);
        }

        return 1 / (v * GasConstant * ReferenceKelvin / 100); // R·Tr/p0 with kJ and 0.1 MPa
    }

    /// <summary>Heat capacity at constant pressure, kJ/(kg K).</summary>
    public static double HeatCapacity(double celsius)
    {
        var tau = (celsius + KelvinAtZeroCelsius) / ReferenceKelvin;
        var (alpha, beta) = Variables(celsius);
        var sum = 0.0;
        for (var i = 0; i < CapacityA.Length; i++)
        {
            sum += CapacityN[i] * (CapacityN[i] + 1) * CapacityA[i] * Math.Pow(alpha, CapacityN[i] + 2);
        }

        for (var i = 0; i < CapacityB.Length; i++)
        {
            sum += CapacityM[i] * (CapacityM[i] + 1) * CapacityB[i] * Math.Pow(beta, CapacityM[i] + 2);
        }

        return -GasConstant * (-8.983025854 + (tau * sum));
    }

    /// <summary>Viscosity, Pa s.</summary>
    public static double Viscosity(double celsius)
    {
        var t = (celsius + KelvinAtZeroCelsius) / 300;
        return 1e-6
            * ((280.68 * Math.Pow(t, -1.9)) + (511.45 * Math.Pow(t, -7.7)) + (61.131 * Math.Pow(t, -19.6)) + (0.45903 * Math.Pow(t, -40)));
    }

    /// <summary>Heat conductivity, W/(m K).</summary>
    public static double HeatConductivity(double celsius)
    {
        var t = (celsius + KelvinAtZeroCelsius) / 300;
        return (1.6630 * Math.Pow(t, -1.15)) - (1.7781 * Math.Pow(t, -3.4)) + (1.1567 * Math.Pow(t, -6.0)) - (0.432115 * Math.Pow(t, -7.6));
    }

    /// <summary>Relative permittivity.</summary>
    public static double Permittivity(double celsius)
    {
        var t = (celsius + KelvinAtZeroCelsius) / 300;
        return (-43.7527 * Math.Pow(t, -0.05))
            + (299.504 * Math.Pow(t, -1.47))
            - (399.364 * Math.Pow(t, -2.11))
            + (221.327 * Math.Pow(t, -2.31));
    }

    /// <summary>Pressure of saturated vapour, Pa, 0 to 100 °C.</summary>
    public static double SaturationPressure(double celsius)
    {
        var t = celsius + KelvinAtZeroCelsius;
        var theta = t - (0.23855557567849 / (t - 650.17534844798));
        var a = (theta * theta) + (1167.0521452767 * theta) - 724213.16703206;
        var b = (-17.073846940092 * theta * theta) + (12020.824702470 * theta) - 3232555.0322333;
        var c = (14.915108613530 * theta * theta) - (4823.2657361591 * theta) + 405113.40542057;
        var root = 2 * c / (-b + Math.Sqrt((b * b) - (4 * a * c)));
        return 1e6 * root * root * root * root;
    }

    /// <summary>Temperature at which vapour of a pressure is saturated, °C, 611 Pa to 0.1 MPa and some way beyond. Equation of [iapws-if97].</summary>
    /// <param name="pressure">Absolute, Pa.</param>
    public static double SaturationTemperature(double pressure)
    {
        var beta = Math.Sqrt(Math.Sqrt(pressure * 1e-6));
        var e = (beta * beta) - (17.073846940092 * beta) + 14.915108613530;
        var f = (1167.0521452767 * beta * beta) + (12020.824702470 * beta) - 4823.2657361591;
        var g = (-724213.16703206 * beta * beta) - (3232555.0322333 * beta) + 405113.40542057;
        var d = 2 * g / (-f - Math.Sqrt((f * f) - (4 * e * g)));
        var sum = 650.17534844798 + d;
        return ((sum - Math.Sqrt((sum * sum) - (4 * (-0.23855557567849 + (650.17534844798 * d))))) / 2) - KelvinAtZeroCelsius;
    }

    private static (double Alpha, double Beta) Variables(double celsius)
    {
        var t = celsius + KelvinAtZeroCelsius;
        return (ReferenceKelvin / (593 - t), ReferenceKelvin / (t - 232));
    }
}
