namespace Rinsewright.Engine.Quantities;

/// <summary>The units the trade uses, by dimension.</summary>
public static class Units
{
    /// <summary>Kelvin.</summary>
    public static readonly Unit Kelvin = new("K", "K", Dimension.Temperature, 1, 1, 0, 1, "kelvin");

    /// <summary>Degree Celsius.</summary>
    public static readonly Unit Celsius = new("Cel", "°C", Dimension.Temperature, 1, 1, 273.15, 1, "c", "degc", "oc", "celsius", "ºc");

    /// <summary>Degree Fahrenheit. Exact: K = (°F + 459.67) × 5/9.</summary>
    public static readonly Unit Fahrenheit = new("[degF]", "°F", Dimension.Temperature, 5, 9, 459.67, 1, "f", "degf", "of", "fahrenheit", "ºf");

    /// <summary>Difference of one kelvin (one degree Celsius).</summary>
    public static readonly Unit CelsiusDifference = new("K{diff}", "°C", Dimension.TemperatureDifference, 1);

    /// <summary>Difference of one degree Fahrenheit.</summary>
    public static readonly Unit FahrenheitDifference = new("[degF]{diff}", "°F", Dimension.TemperatureDifference, 5, 9);

    /// <summary>Pound-force per square inch, gauge. Exact: 4.4482216152605 N over (0.0254 m)².</summary>
    public static readonly Unit Psi = new("[psi]", "psi", Dimension.GaugePressure, 4.4482216152605, 0.00064516, 0, 1, "psig", "lbf/in2");

    /// <summary>Kilopascal, gauge.</summary>
    public static readonly Unit Kilopascal = new("kPa", "kPa", Dimension.GaugePressure, 1000, 1, 0, 0);

    /// <summary>Second.</summary>
    public static readonly Unit Second = new("s", "s", Dimension.Duration, 1, 1, 0, 1, "sec", "seconds");

    /// <summary>Milligram per litre.</summary>
    public static readonly Unit MilligramPerLitre = new("mg/L", "mg/L", Dimension.MassConcentration, 1e-3, 1, 0, 1, "ppm");

    /// <summary>Hardness as calcium carbonate, milligram per litre.</summary>
    public static readonly Unit HardnessMilligramPerLitre = new("mg/L{CaCO3}", "mg/L CaCO₃", Dimension.Hardness, 1e-3, 1, 0, 0);

    /// <summary>pH.</summary>
    public static readonly Unit PH = new("[pH]", "pH", Dimension.Acidity, 1);

    /// <summary>Heat unit equivalent, accumulated. The code is a UCUM annotation: UCUM has no unit for it.</summary>
    public static readonly Unit HeatUnit = new("{HUE}", "HUE", Dimension.HeatUnits, 1, 1, 0, 0, "hue");

    /// <summary>Equivalent second at 80 °C, accumulated (A0).</summary>
    public static readonly Unit A0Second = new("s{A0}", "A0", Dimension.EquivalentTime, 1, 1, 0, 1);

    /// <summary>Every unit.</summary>
    public static IReadOnlyList<Unit> All { get; } =
    [
        Kelvin, Celsius, Fahrenheit, CelsiusDifference, FahrenheitDifference, Psi, Kilopascal, Second, MilligramPerLitre, HardnessMilligramPerLitre, PH, HeatUnit, A0Second,
    ];

    /// <summary>The unit with this UCUM code; null where there is none.</summary>
    public static Unit? Find(string ucum) => All.FirstOrDefault(u => string.Equals(u.Ucum, ucum, StringComparison.Ordinal));
}
