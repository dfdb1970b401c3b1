namespace Rinsewright.Engine.Quantities;

public static partial class Units
{
    // US gallon, 231 cubic inches of 0.0254 m (Q5), exact in cubic metres.
    private const double GallonInCubicMetre = 0.003785411784;

    /// <summary>Metre.</summary>
    public static readonly Unit Metre = new(
        "m",
        "m",
        Dimension.Length,
        1,
        1,
        0,
        2,
        "metre",
        "metres",
        "meter",
        "meters",
        "metro",
        "metros"
    );

    /// <summary>Centimetre.</summary>
    public static readonly Unit Centimetre = new("cm", "cm", Dimension.Length, 1, 100, 0, 1);

    /// <summary>Millimetre.</summary>
    public static readonly Unit Millimetre = new("mm", "mm", Dimension.Length, 1, 1000, 0, 1);

    /// <summary>Inch. Exact: 0.0254 m.</summary>
    public static readonly Unit Inch = new(
        "[in_i]",
        "in",
        Dimension.Length,
        254,
        10000,
        0,
        2,
        "inch",
        "inches",
        "\"",
        "″",
        "pulgada",
        "pulgadas"
    );

    /// <summary>Foot. Exact: 0.3048 m.</summary>
    public static readonly Unit Foot = new("[ft_i]", "ft", Dimension.Length, 3048, 10000, 0, 2, "foot", "feet", "'", "′", "pie", "pies");

    /// <summary>Square metre.</summary>
    public static readonly Unit SquareMetre = new("m2", "m²", Dimension.Area, 1, 1, 0, 2);

    /// <summary>Square centimetre.</summary>
    public static readonly Unit SquareCentimetre = new("cm2", "cm²", Dimension.Area, 1, 10000, 0, 1);

    /// <summary>Square inch.</summary>
    public static readonly Unit SquareInch = new("[sin_i]", "in²", Dimension.Area, SquareInchInSquareMetre, 1, 0, 1, "sqin", "[in_i]2");

    /// <summary>Square foot.</summary>
    public static readonly Unit SquareFoot = new("[sft_i]", "ft²", Dimension.Area, 0.09290304, 1, 0, 2, "sqft", "[ft_i]2");

    /// <summary>Cubic metre.</summary>
    public static readonly Unit CubicMetre = new("m3", "m³", Dimension.Volume, 1, 1, 0, 3);

    /// <summary>Litre.</summary>
    public static readonly Unit Litre = new(
        "L",
        "L",
        Dimension.Volume,
        1,
        1000,
        0,
        1,
        "litre",
        "litres",
        "liter",
        "liters",
        "litro",
        "litros"
    );

    /// <summary>Millilitre.</summary>
    public static readonly Unit Millilitre = new("mL", "mL", Dimension.Volume, 1, 1000000, 0, 1, "cc", "cm3");

    /// <summary>US gallon. Exact: 231 cubic inches.</summary>
    public static readonly Unit Gallon = new(
        "[gal_us]",
        "gal",
        Dimension.Volume,
        GallonInCubicMetre,
        1,
        0,
        2,
        "usgal",
        "gallon",
        "gallons",
        "gal.",
        "galón",
        "galones"
    );

    /// <summary>US fluid ounce, 1/128 of a US gallon.</summary>
    public static readonly Unit FluidOunce = new(
        "[foz_us]",
        "fl oz",
        Dimension.Volume,
        GallonInCubicMetre,
        128,
        0,
        1,
        "floz.",
        "fl.oz.",
        "fluidounces"
    );

    private static Unit[] Geometry() =>
        [
            Metre,
            Centimetre,
            Millimetre,
            Inch,
            Foot,
            SquareMetre,
            SquareCentimetre,
            SquareInch,
            SquareFoot,
            CubicMetre,
            Litre,
            Millilitre,
            Gallon,
            FluidOunce,
        ];
}
