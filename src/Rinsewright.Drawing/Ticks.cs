namespace Rinsewright.Drawing;

/// <summary>Round figures along an axis.</summary>
internal static class Ticks
{
    private static readonly double[] Steps = [1, 2, 5, 10];
    private static readonly double[] TimeSteps =
    [
        1,
        2,
        5,
        10,
        15,
        30,
        60,
        120,
        300,
        600,
        900,
        1800,
        3600,
        7200,
        10800,
        21600,
        43200,
        86400,
    ];

    /// <summary>Step of 1, 2 or 5 times a power of ten that gives at most <paramref name="most"/> intervals.</summary>
    public static double Step(double span, int most)
    {
        var raw = span / Math.Max(1, most);
        var power = Math.Pow(10, Math.Floor(Math.Log10(raw)));
        return Steps.First(s => s * power >= raw * 0.999999) * power;
    }

    /// <summary>Step of whole seconds, minutes or hours that gives at most <paramref name="most"/> intervals; below 1 s as <see cref="Step"/>.</summary>
    public static double TimeStep(double seconds, int most)
    {
        var raw = seconds / Math.Max(1, most);
        if (raw <= 1)
        {
            return Step(seconds, most);
        }

        var found = TimeSteps.FirstOrDefault(s => s >= raw);
        return found > 0 ? found : Math.Ceiling(raw / 86400) * 86400;
    }

    /// <summary>Multiples of the step inside the range, ends included.</summary>
    public static IEnumerable<double> Within(double low, double high, double step)
    {
        for (var n = (long)Math.Ceiling((low / step) - 1e-9); n * step <= high + (step * 1e-9); n++)
        {
            yield return n * step;
        }
    }
}
