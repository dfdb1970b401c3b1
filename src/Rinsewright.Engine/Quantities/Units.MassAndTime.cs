namespace Rinsewright.Engine.Quantities;

public static partial class Units
{
    // Avoirdupois pound (Q6), exact in kilograms.
    private const double PoundInKilogram = 0.45359237;

    /// <summary>Kilogram.</summary>
    public static readonly Unit Kilogram = new("kg", "kg", Dimension.Mass, 1, 1, 0, 2, "kilo", "kilos");

    /// <summary>Gram.</summary>
    public static readonly Unit Gram = new("g", "g", Dimension.Mass, 1, 1000, 0, 1, "gram", "grams", "gr", "gramo", "gramos");

    /// <summary>Milligram.</summary>
    public static readonly Unit Milligram = new("mg", "mg", Dimension.Mass, 1, 1000000, 0, 1);

    /// <summary>Avoirdupois pound. Exact: 0.45359237 kg.</summary>
    public static readonly Unit Pound = new(
        "[lb_av]",
        "lb",
        Dimension.Mass,
        PoundInKilogram,
        1,
        0,
        2,
        "lbs",
        "pound",
        "pounds",
        "libra",
        "libras"
    );

    /// <summary>Avoirdupois ounce, 1/16 pound.</summary>
    public static readonly Unit Ounce = new("[oz_av]", "oz", Dimension.Mass, PoundInKilogram, 16, 0, 1, "ounce", "ounces", "onza", "onzas");

    /// <summary>Second.</summary>
    public static readonly Unit Second = new(
        "s",
        "s",
        Dimension.Duration,
        1,
        1,
        0,
        1,
        "sec",
        "secs",
        "second",
        "seconds",
        "seg",
        "segundo",
        "segundos"
    );

    /// <summary>Minute.</summary>
    public static readonly Unit Minute = new(
        "min",
        "min",
        Dimension.Duration,
        60,
        1,
        0,
        1,
        "mins",
        "minute",
        "minutes",
        "minuto",
        "minutos"
    );

    /// <summary>Hour.</summary>
    public static readonly Unit Hour = new("h", "h", Dimension.Duration, 3600, 1, 0, 2, "hr", "hrs", "hour", "hours", "hora", "horas");

    /// <summary>Day of 24 hours.</summary>
    public static readonly Unit Day = new("d", "d", Dimension.Duration, 86400, 1, 0, 1, "day", "days", "día", "días");

    /// <summary>Metre per second.</summary>
    public static readonly Unit MetrePerSecond = new("m/s", "m/s", Dimension.Speed, 1, 1, 0, 3);

    /// <summary>Metre per minute.</summary>
    public static readonly Unit MetrePerMinute = new("m/min", "m/min", Dimension.Speed, 1, 60, 0, 2);

    /// <summary>Foot per minute, as conveyor speed stands on data plates.</summary>
    public static readonly Unit FootPerMinute = new("[ft_i]/min", "ft/min", Dimension.Speed, 3048, 600000, 0, 1, "fpm", "feet/min");

    private static Unit[] Masses() => [Kilogram, Gram, Milligram, Pound, Ounce];

    private static Unit[] Times() => [Second, Minute, Hour, Day, MetrePerSecond, MetrePerMinute, FootPerMinute];
}
