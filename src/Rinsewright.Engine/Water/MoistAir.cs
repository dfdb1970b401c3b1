namespace Rinsewright.Engine.Water;

/// <summary>Moist air at one atmosphere. Equations W1 to W4 of this folder's README; 1 to 100 °C. Heat is counted from liquid water and dry air at 0 °C.</summary>
internal static class MoistAir
{
    /// <summary>Pressure of the atmosphere, Pa.</summary>
    public const double Atmosphere = 101325;

    /// <summary>Constants of W1 to W3; the kernels that compute several machines side by side use them too.</summary>
    internal const double PascalPerMillimetreOfMercury = 133.322;
    internal const double A = 8.07131;
    internal const double B = 1730.63;
    internal const double C = 233.426;

    // Mass of vapour to mass of air at equal pressures; J/(kg K) of air and of vapour; J/kg to make vapour at 0 °C.
    internal const double MolarMassRatio = 0.62198;
    internal const double AirCapacity = 1006;
    internal const double VapourCapacity = 1860;
    internal const double VapourHeat = 2.501e6;
    internal static readonly double Ln10 = Math.Log(10);

    /// <summary>Pressure of saturated vapour, Pa, over water at <paramref name="celsius"/>. Equation W1 (Antoine, from memory; within 0.4 % of steam tables).</summary>
    public static double SaturationPressure(double celsius) => PascalPerMillimetreOfMercury * Math.Exp(Ln10 * (A - (B / (C + celsius))));

    /// <summary>Rise of <see cref="SaturationPressure"/> per kelvin, Pa/K.</summary>
    public static double SaturationPressureSlope(double celsius) =>
        SaturationPressure(celsius) * Ln10 * B / ((C + celsius) * (C + celsius));

    /// <summary>Vapour carried by 1 kg of dry air at a vapour pressure in Pa, kg/kg. Equation W2.</summary>
    public static double Humidity(double vapourPressure) => MolarMassRatio * vapourPressure / (Atmosphere - vapourPressure);

    /// <summary>Vapour in saturated air, kg per kg of dry air.</summary>
    public static double SaturatedHumidity(double celsius) => Humidity(SaturationPressure(celsius));

    /// <summary>Rise of <see cref="SaturatedHumidity"/> per kelvin.</summary>
    public static double SaturatedHumiditySlope(double celsius)
    {
        var dry = Atmosphere - SaturationPressure(celsius);
        return MolarMassRatio * Atmosphere / (dry * dry) * SaturationPressureSlope(celsius);
    }

    /// <summary>Heat of moist air, J per kg of dry air. Equation W3.</summary>
    public static double Enthalpy(double celsius, double humidity) =>
        (AirCapacity * celsius) + (humidity * (VapourHeat + (VapourCapacity * celsius)));

    /// <summary>Rise of the heat of saturated air per kelvin, J/(kg K).</summary>
    public static double SaturatedEnthalpySlope(double celsius) =>
        AirCapacity
        + (VapourCapacity * SaturatedHumidity(celsius))
        + (SaturatedHumiditySlope(celsius) * (VapourHeat + (VapourCapacity * celsius)));
}

/// <summary>Air of the room.</summary>
internal readonly record struct RoomAir
{
    /// <summary>Air at a temperature in °C and a relative humidity from 0 to 1.</summary>
    public RoomAir(double celsius, double relativeHumidity)
    {
        Celsius = celsius;
        Humidity = MoistAir.Humidity(relativeHumidity * MoistAir.SaturationPressure(celsius));
        Enthalpy = MoistAir.Enthalpy(celsius, Humidity);
    }

    /// <summary>Temperature, °C.</summary>
    public double Celsius { get; }

    /// <summary>Vapour, kg per kg of dry air.</summary>
    public double Humidity { get; }

    /// <summary>Heat, J per kg of dry air.</summary>
    public double Enthalpy { get; }
}

/// <summary>Heat and vapour that air takes from a wet zone. Equation W4.</summary>
/// <param name="Heat">All heat taken, with that of the vapour, W.</param>
/// <param name="Evaporation">Water taken, kg/s.</param>
/// <param name="HeatPerKelvin">Rise of <paramref name="Heat"/> per kelvin of the water, W/K.</param>
internal readonly record struct VentExchange(double Heat, double Evaporation, double HeatPerKelvin)
{
    /// <summary>Exchange with room air that leaves saturated, part of the way between room and water.</summary>
    /// <param name="air">Dry air that passes, kg/s, not negative.</param>
    /// <param name="approach">Share of the way from room to water that the air is heated, 0 to 1.</param>
    /// <param name="water">Water, °C, 1 to 100.</param>
    /// <param name="room">Air of the room.</param>
    public static VentExchange Of(double air, double approach, double water, in RoomAir room)
    {
        var leaving = room.Celsius + (approach * (water - room.Celsius));
        var humidity = MoistAir.SaturatedHumidity(leaving);
        return new VentExchange(
            air * (MoistAir.Enthalpy(leaving, humidity) - room.Enthalpy),
            air * (humidity - room.Humidity),
            air * approach * MoistAir.SaturatedEnthalpySlope(leaving)
        );
    }
}
