using Rinsewright.Engine.Quantities;

namespace Rinsewright.Engine.Chemistry;

/// <summary>
/// Strength that stored bleach keeps. Equations C34 and C35: two hypochlorite ions react with each other, so that 1/c rises with time; how much, from the table of [bleach-decay-table]
/// (12.5 trade percent, 70 to 100 °F, to 180 days), between its points straight in ln(rise) against ln(days) and 1/T; below 70 °F by the activation energy of [lister-1956].
/// The rate falls with the salt in the solution: weaker bleach than 12.5 keeps better than this says, stronger keeps worse. Copper, nickel and light are not in it. A planning figure: titrate.
/// </summary>
public static class BleachAge
{
    private const double Initial = 12.5;
    private const double ActivationEnergy = 24.8 * 4184; // J/mol
    private const double GasConstant = 8.314462618;

    private static readonly double[] Days = [1, 7, 30, 90, 180];
    private static readonly double[] Fahrenheit = [70, 80, 90, 100];

    // Trade percent left, a row for each number of days.
    private static readonly double[][] Left =
    [
        [12.44, 12.37, 12.22, 11.92],
        [12.12, 11.69, 10.92, 9.71],
        [11.11, 9.93, 8.36, 6.68],
        [9.28, 7.48, 5.72, 4.27],
        [7.78, 5.95, 4.41, 3.23],
    ];

    /// <summary>How many times faster it goes at one temperature than at another. Equation C35.</summary>
    public static double Faster(Temperature at, Temperature than) =>
        Math.Exp(ActivationEnergy / GasConstant * ((1 / than.InKelvin) - (1 / at.InKelvin)));

    /// <summary>Trade percent left. Equation C34.</summary>
    /// <param name="initial">Trade percent when it was filled, above 0; made for 10 to 15.</param>
    /// <param name="age">Up to 180 days.</param>
    /// <param name="at">Mean temperature it stood at, 32 to 100 °F.</param>
    /// <exception cref="ArgumentOutOfRangeException">Older or hotter than the table.</exception>
    public static Ratio StrengthLeft(Ratio initial, Duration age, Temperature at)
    {
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(initial.InFraction, nameof(initial));
        var days = age.InSecond / 86400;
        ArgumentOutOfRangeException.ThrowIfGreaterThan(days, Days[^1] * (1 + 1e-9), nameof(age));
        ArgumentOutOfRangeException.ThrowIfGreaterThan(at.InFahrenheit, Fahrenheit[^1] + 1e-9, nameof(at));
        return days <= 0 ? initial : Ratio.FromPercent(1 / ((1 / initial.InPercent) + Rise(days, at)));
    }

    /// <summary>Days until so much of the strength is left; null where that is beyond the table's 180.</summary>
    public static Duration? Until(Ratio share, Ratio initial, Temperature at)
    {
        var (low, high) = (0.0, Days[^1]);
        double Share(double days) => (StrengthLeft(initial, Duration.FromSecond(86400 * days), at) / initial.InFraction).InFraction;
        if (Share(high) > share.InFraction)
        {
            return null;
        }

        for (var i = 0; i < 60; i++)
        {
            var middle = (low + high) / 2;
            (low, high) = Share(middle) > share.InFraction ? (middle, high) : (low, middle);
        }

        return Duration.FromSecond(86400 * high);
    }

    // 1/c − 1/c₀, for each trade percent.
    private static double Rise(double days, Temperature at)
    {
        // Colder than the table: as long ago as it takes there for what a day does at its coldest.
        if (at.InFahrenheit < Fahrenheit[0])
        {
            var coldest = Temperature.FromFahrenheit(Fahrenheit[0]);
            return Rise(days * Faster(at, coldest), coldest);
        }

        var i = Math.Max(0, Array.FindLastIndex(Fahrenheit[..^1], f => at.InFahrenheit >= f));
        var (cold, warm) = (Temperature.FromFahrenheit(Fahrenheit[i]).InKelvin, Temperature.FromFahrenheit(Fahrenheit[i + 1]).InKelvin);
        var share = ((1 / cold) - (1 / at.InKelvin)) / ((1 / cold) - (1 / warm));
        return Math.Exp(((1 - share) * LogRise(days, i)) + (share * LogRise(days, i + 1)));
    }

    private static double LogRise(double days, int column)
    {
        double At(int row) => Math.Log((1 / Left[row][column]) - (1 / Initial));
        if (days < Days[0])
        {
            return At(0) + Math.Log(days / Days[0]); // the first day is straight
        }

        var row = Math.Max(0, Array.FindLastIndex(Days[..^1], d => days >= d));
        var share = Math.Log(days / Days[row]) / Math.Log(Days[row + 1] / Days[row]);
        return ((1 - share) * At(row)) + (share * At(row + 1));
    }
}
