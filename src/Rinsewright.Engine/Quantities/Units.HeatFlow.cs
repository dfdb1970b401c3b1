namespace Rinsewright.Engine.Quantities;

public static partial class Units
{
    /// <summary>Watt per kelvin.</summary>
    public static readonly Unit WattPerKelvin = new("W/K", "W/K", Dimension.HeatConductance, 1, 1, 0, 1);

    /// <summary>Joule per kelvin.</summary>
    public static readonly Unit JoulePerKelvin = new("J/K", "J/K", Dimension.HeatCapacity, 1, 1, 0, 0);

    /// <summary>Kilojoule per kelvin.</summary>
    public static readonly Unit KilojoulePerKelvin = new("kJ/K", "kJ/K", Dimension.HeatCapacity, 1000, 1, 0, 1);

    /// <summary>Watt per square metre and kelvin.</summary>
    public static readonly Unit WattPerSquareMetreKelvin = new("W/(m2.K)", "W/(m²·K)", Dimension.HeatTransferCoefficient, 1, 1, 0, 0);

    private static Unit[] HeatFlows() => [WattPerKelvin, JoulePerKelvin, KilojoulePerKelvin, WattPerSquareMetreKelvin];
}
