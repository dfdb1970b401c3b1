namespace Rinsewright.Engine.Quantities;

public static partial class Units
{
    /// <summary>Cubic metre per second.</summary>
    public static readonly Unit CubicMetrePerSecond = new("m3/s", "m³/s", Dimension.VolumeFlow, 1, 1, 0, 6);

    /// <summary>Litre per minute.</summary>
    public static readonly Unit LitrePerMinute = new(
        "L/min",
        "L/min",
        Dimension.VolumeFlow,
        1,
        60000,
        0,
        1,
        "lpm",
        "litres/min",
        "liters/min"
    );

    /// <summary>Litre per hour.</summary>
    public static readonly Unit LitrePerHour = new("L/h", "L/h", Dimension.VolumeFlow, 1, 3600000, 0, 0, "l/hr", "lph");

    /// <summary>Millilitre per minute, as dosing pumps are set.</summary>
    public static readonly Unit MillilitrePerMinute = new("mL/min", "mL/min", Dimension.VolumeFlow, 1, 60000000, 0, 1);

    /// <summary>US gallon per minute.</summary>
    public static readonly Unit GallonPerMinute = new("[gal_us]/min", "gal/min", Dimension.VolumeFlow, GallonInCubicMetre, 60, 0, 2, "gpm");

    /// <summary>US gallon per hour.</summary>
    public static readonly Unit GallonPerHour = new(
        "[gal_us]/h",
        "gal/h",
        Dimension.VolumeFlow,
        GallonInCubicMetre,
        3600,
        0,
        0,
        "gph",
        "gal/hr"
    );

    /// <summary>Kilogram per second.</summary>
    public static readonly Unit KilogramPerSecond = new("kg/s", "kg/s", Dimension.MassFlow, 1, 1, 0, 4);

    /// <summary>Gram per second.</summary>
    public static readonly Unit GramPerSecond = new("g/s", "g/s", Dimension.MassFlow, 1, 1000, 0, 2);

    /// <summary>Kilogram per hour.</summary>
    public static readonly Unit KilogramPerHour = new("kg/h", "kg/h", Dimension.MassFlow, 1, 3600, 0, 2, "kg/hr");

    /// <summary>Gram per minute.</summary>
    public static readonly Unit GramPerMinute = new("g/min", "g/min", Dimension.MassFlow, 1, 60000, 0, 1);

    /// <summary>Avoirdupois pound per hour, as steam use stands on data plates.</summary>
    public static readonly Unit PoundPerHour = new(
        "[lb_av]/h",
        "lb/h",
        Dimension.MassFlow,
        PoundInKilogram,
        3600,
        0,
        1,
        "lb/hr",
        "lbs/h",
        "lbs/hr"
    );

    private static Unit[] Flows() =>
        [
            CubicMetrePerSecond,
            LitrePerMinute,
            LitrePerHour,
            MillilitrePerMinute,
            GallonPerMinute,
            GallonPerHour,
            KilogramPerSecond,
            GramPerSecond,
            KilogramPerHour,
            GramPerMinute,
            PoundPerHour,
        ];
}
