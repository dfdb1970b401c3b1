namespace Rinsewright.Engine.Quantities;

public static partial class Units
{
    /// <summary>Ampere.</summary>
    public static readonly Unit Ampere = new("A", "A", Dimension.ElectricCurrent, 1, 1, 0, 1, "amp", "amps", "ampere", "amperes");

    /// <summary>Milliampere.</summary>
    public static readonly Unit Milliampere = new("mA", "mA", Dimension.ElectricCurrent, 1, 1000, 0, 1);

    /// <summary>Volt.</summary>
    public static readonly Unit Volt = new("V", "V", Dimension.ElectricPotential, 1, 1, 0, 1, "volt", "volts");

    /// <summary>Millivolt.</summary>
    public static readonly Unit Millivolt = new("mV", "mV", Dimension.ElectricPotential, 1, 1000, 0, 1);

    private static Unit[] Electric() => [Ampere, Milliampere, Volt, Millivolt];
}
