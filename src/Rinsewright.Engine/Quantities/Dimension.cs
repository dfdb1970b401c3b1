namespace Rinsewright.Engine.Quantities;

/// <summary>What a unit measures. A point and a difference, a gauge and an absolute pressure, are different dimensions.</summary>
public enum Dimension
{
    /// <summary>A temperature on a scale (a point).</summary>
    Temperature,

    /// <summary>The difference of two temperatures.</summary>
    TemperatureDifference,

    /// <summary>Pressure above the surrounding air, as gauges show it.</summary>
    GaugePressure,

    /// <summary>Pressure above vacuum.</summary>
    AbsolutePressure,

    /// <summary>Length.</summary>
    Length,

    /// <summary>Area.</summary>
    Area,

    /// <summary>Volume.</summary>
    Volume,

    /// <summary>Mass.</summary>
    Mass,

    /// <summary>Time span.</summary>
    Duration,

    /// <summary>Speed, as of a conveyor.</summary>
    Speed,

    /// <summary>Volume per time.</summary>
    VolumeFlow,

    /// <summary>Mass per time.</summary>
    MassFlow,

    /// <summary>Energy.</summary>
    Energy,

    /// <summary>Power.</summary>
    Power,

    /// <summary>Mass of a dissolved substance per volume of solution.</summary>
    MassConcentration,

    /// <summary>Water hardness, as calcium carbonate.</summary>
    Hardness,

    /// <summary>Alkalinity, as calcium carbonate.</summary>
    Alkalinity,

    /// <summary>Equivalents of an acid or base per volume of solution.</summary>
    Normality,

    /// <summary>Electrical conductivity of water.</summary>
    Conductivity,

    /// <summary>Acidity on the pH scale.</summary>
    Acidity,

    /// <summary>The difference of two acidities on the pH scale.</summary>
    AcidityDifference,

    /// <summary>Electric current.</summary>
    ElectricCurrent,

    /// <summary>Electric potential (voltage).</summary>
    ElectricPotential,

    /// <summary>A share of a whole.</summary>
    Ratio,

    /// <summary>Accumulated heat unit equivalents (HUE).</summary>
    HeatUnits,

    /// <summary>Accumulated equivalent time at 80 °C with z = 10 °C (A0).</summary>
    EquivalentTime,

    /// <summary>Heat flow per kelvin of difference.</summary>
    HeatConductance,

    /// <summary>Heat to warm a body by one kelvin.</summary>
    HeatCapacity,

    /// <summary>Heat flow per area and kelvin between a surface and the water or air on it.</summary>
    HeatTransferCoefficient,
}
