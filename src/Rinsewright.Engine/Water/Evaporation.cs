namespace Rinsewright.Engine.Water;

/// <summary>Water that leaves as vapour. Equations W14 and W15 of this folder's README, one atmosphere.</summary>
internal static class Evaporation
{
    /// <summary>Heat of evaporation at 0 °C, kJ/kg; latent heat is counted with it here.</summary>
    public const double Latent = 2501;

    // (95 + 0.425 v)(p_w − p_a)/Y in lb/(h ft²), v in ft/min, p in inHg, Y in Btu/lb, turned into kg/(s m²), m/s, kPa and kJ/kg by the definitions of the units.
    private const double PoundPerHourSquareFoot = 0.45359237 / 3600 / 0.09290304;
    private const double InchOfMercury = 3.386389;
    private const double BtuPerPound = 2.326;
    private const double FootPerMinute = 0.3048 / 60;

    /// <summary>First constant of the open surface, kg kJ/(s m² kPa kg).</summary>
    public const double Still = 95 * PoundPerHourSquareFoot * BtuPerPound / InchOfMercury;

    /// <summary>Its rise for each m/s of air.</summary>
    public const double ForSpeed = 0.425 * PoundPerHourSquareFoot * BtuPerPound / InchOfMercury / FootPerMinute;

    /// <summary>Evaporation of an open surface, kg/(s m²) = (0.0885 + 0.0779 v)(p_w − p_a)/Y. Equation W14 [ashrae-pool-1998]. A surface nobody disturbs gives 0.74 of it.</summary>
    /// <param name="water">Water, °C.</param>
    /// <param name="room">Air of the room.</param>
    /// <param name="speed">Speed of the air over it, m/s.</param>
    /// <param name="latent">Y, heat of evaporation at the water's temperature, kJ/kg.</param>
    public static double OpenSurface(double water, in RoomAir room, double speed, double latent)
    {
        var vapour = MoistAir.Atmosphere * room.Humidity / (MoistAir.MolarMassRatio + room.Humidity);
        return (Still + (ForSpeed * speed)) * (WaterProperties.SaturationPressure(water) - vapour) / 1000 / latent;
    }

    /// <summary>Heat of evaporation, kJ/kg: 2501 − 2.38 °C, within 0.3 % of steam tables to 90 °C (from memory).</summary>
    public static double LatentAt(double celsius) => Latent - (2.38 * celsius);

    /// <summary>Dry air in moist air that leaves saturated, kg/s. Ideal gases.</summary>
    /// <param name="flow">m³/s.</param>
    /// <param name="celsius">°C.</param>
    public static double DryAir(double flow, double celsius) =>
        flow * (MoistAir.Atmosphere - MoistAir.SaturationPressure(celsius)) / (287.055 * (celsius + 273.15));

    /// <summary>What exhaust that leaves saturated carries off, kg/s and W. Equation W15.</summary>
    /// <param name="flow">m³/s of exhaust.</param>
    /// <param name="celsius">Of the exhaust, °C.</param>
    /// <param name="room">Air that replaces it.</param>
    public static (double Vapour, double Heat) Exhaust(double flow, double celsius, in RoomAir room)
    {
        var air = DryAir(flow, celsius);
        var humidity = MoistAir.SaturatedHumidity(celsius);
        return (air * (humidity - room.Humidity), air * (MoistAir.Enthalpy(celsius, humidity) - room.Enthalpy));
    }
}
