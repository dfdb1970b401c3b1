namespace Rinsewright.Engine.Quantities;

/// <summary>Refuses what no quantity can be. Every quantity's constructor goes through here.</summary>
internal static class Guard
{
    /// <summary>A finite number in SI.</summary>
    public static double Finite(double value, string quantity) =>
        double.IsFinite(value)
            ? value
            : throw new ArgumentOutOfRangeException(nameof(value), value, $"{quantity} is a finite number; an unknown one is absent.");

    /// <summary>A finite number in SI, not below the zero of its scale.</summary>
    public static double NotNegative(double value, string quantity) =>
        Finite(value, quantity) >= 0
            ? value
            : throw new ArgumentOutOfRangeException(
                nameof(value),
                value,
                $"{quantity} is not below zero; zero is absolute zero or vacuum. The value is in SI."
            );

    /// <summary>The SI value of an amount that measures what is asked for.</summary>
    public static double Measures(Amount amount, Dimension dimension)
    {
        RequireSame(amount.Unit, dimension);
        return amount.SI;
    }

    /// <summary>An SI value written in a unit that measures what is asked for.</summary>
    public static Amount In(double si, Unit unit, Dimension dimension)
    {
        RequireSame(unit, dimension);
        return new Amount(unit.FromSI(si), unit);
    }

    private static void RequireSame(Unit unit, Dimension dimension)
    {
        if (unit.Dimension != dimension)
        {
            throw new ArgumentException($"{unit.Ucum} measures {unit.Dimension}, not {dimension}.", nameof(unit));
        }
    }
}
