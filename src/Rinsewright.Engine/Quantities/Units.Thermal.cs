namespace Rinsewright.Engine.Quantities;

public static partial class Units
{
    // International Table Btu, exact in joules (Q3).
    private const double BtuInJoule = 1055.05585262;

    /// <summary>Kelvin.</summary>
    public static readonly Unit Kelvin = new("K", "K", Dimension.Temperature, 1, 1, 0, 1, "kelvin", "kelvins");

    /// <summary>Degree Celsius.</summary>
    public static readonly Unit Celsius = new("Cel", "°C", Dimension.Temperature, 1, 1, 273.15, 1, "c", "degc", "oc", "celsius", "ºc");

    /// <summary>Degree Fahrenheit. Exact: K = (°F + 459.67) × 5/9.</summary>
    public static readonly Unit Fahrenheit = new(
        "[degF]",
        "°F",
        Dimension.Temperature,
        5,
        9,
        459.67,
        1,
        "f",
        "degf",
        "of",
        "fahrenheit",
        "ºf"
    );

    /// <summary>Difference of one kelvin (one degree Celsius).</summary>
    public static readonly Unit CelsiusDifference = new(
        "K{diff}",
        "°C",
        Dimension.TemperatureDifference,
        1,
        1,
        0,
        1,
        "c",
        "degc",
        "oc",
        "celsius",
        "cel",
        "k",
        "kelvin",
        "kelvins"
    );

    /// <summary>Difference of one degree Fahrenheit.</summary>
    public static readonly Unit FahrenheitDifference = new(
        "[degF]{diff}",
        "°F",
        Dimension.TemperatureDifference,
        5,
        9,
        0,
        1,
        "f",
        "degf",
        "of",
        "fahrenheit",
        "[degf]"
    );

    /// <summary>Joule.</summary>
    public static readonly Unit Joule = new("J", "J", Dimension.Energy, 1, 1, 0, 0, "joule", "joules");

    /// <summary>Megajoule.</summary>
    public static readonly Unit Megajoule = new("MJ", "MJ", Dimension.Energy, 1e6, 1, 0, 2);

    /// <summary>Kilowatt-hour.</summary>
    public static readonly Unit KilowattHour = new("kW.h", "kWh", Dimension.Energy, 3.6e6, 1, 0, 2, "kw·h", "kw*h");

    /// <summary>British thermal unit, International Table.</summary>
    public static readonly Unit Btu = new("[Btu_IT]", "Btu", Dimension.Energy, BtuInJoule, 1, 0, 0, "btus", "[btu]");

    /// <summary>Watt.</summary>
    public static readonly Unit Watt = new("W", "W", Dimension.Power, 1, 1, 0, 0, "watt", "watts");

    /// <summary>Kilowatt.</summary>
    public static readonly Unit Kilowatt = new("kW", "kW", Dimension.Power, 1000, 1, 0, 1, "kilowatt", "kilowatts");

    /// <summary>British thermal unit (International Table) per hour.</summary>
    public static readonly Unit BtuPerHour = new(
        "[Btu_IT]/h",
        "Btu/h",
        Dimension.Power,
        BtuInJoule,
        3600,
        0,
        0,
        "btuh",
        "btu/hr",
        "[btu]/h"
    );

    /// <summary>Mechanical horsepower, 550 foot pound-force per second, as on the plate of a pump motor.</summary>
    public static readonly Unit Horsepower = new("[HP]", "hp", Dimension.Power, 550 * 0.3048 * 4.4482216152605, 1, 0, 2, "horsepower");

    private static Unit[] Thermal() =>
        [
            Kelvin,
            Celsius,
            Fahrenheit,
            CelsiusDifference,
            FahrenheitDifference,
            Joule,
            Megajoule,
            KilowattHour,
            Btu,
            Watt,
            Kilowatt,
            BtuPerHour,
            Horsepower,
        ];
}
