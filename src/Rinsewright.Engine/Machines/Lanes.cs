using System.Numerics;
using Rinsewright.Engine.Water;

namespace Rinsewright.Engine.Machines;

/// <summary>Formulas of the model for several machines side by side, a machine a lane. What a lane gives never depends on its neighbours.</summary>
internal static class Lanes
{
    /// <summary>Machines side by side.</summary>
    public static int Count => Vector<double>.Count;

    /// <summary>Sets one lane.</summary>
    public static void Set(ref Vector<double> vector, int lane, double value) => vector = vector.WithElement(lane, value);

    /// <summary>Takes the new value in the lanes of a mask.</summary>
    public static void Take(ref Vector<double> place, Vector<long> mask, Vector<double> value) =>
        place = Vector.ConditionalSelect(mask, value, place);

    /// <summary>Heat, water and slope of <see cref="VentExchange"/>.</summary>
    public static (Vector<double> Heat, Vector<double> Evaporation, Vector<double> Slope) Vent(
        Vector<double> air,
        Vector<double> approach,
        Vector<double> celsius,
        RoomLanes room
    )
    {
        var leaving = room.Celsius + (approach * (celsius - room.Celsius));
        var below = Vector.Create(MoistAir.C) + leaving;
        var pressure =
            MoistAir.PascalPerMillimetreOfMercury
            * Vector.Exp(MoistAir.Ln10 * (Vector.Create(MoistAir.A) - (Vector.Create(MoistAir.B) / below)));
        var dry = Vector.Create(MoistAir.Atmosphere) - pressure;
        var humidity = MoistAir.MolarMassRatio * pressure / dry;
        var vapour = Vector.Create(MoistAir.VapourHeat) + (MoistAir.VapourCapacity * leaving);
        var humiditySlope =
            Vector.Create(MoistAir.MolarMassRatio * MoistAir.Atmosphere * MoistAir.Ln10 * MoistAir.B)
            / (dry * dry)
            * pressure
            / (below * below);
        return (
            air * ((MoistAir.AirCapacity * leaving) + (humidity * vapour) - room.Enthalpy),
            air * (humidity - room.Humidity),
            air * approach * (Vector.Create(MoistAir.AirCapacity) + (MoistAir.VapourCapacity * humidity) + (humiditySlope * vapour))
        );
    }

    /// <summary>Coefficient of a zone limited by the heat of its water, as <see cref="Heat.SprayTransfer.OfZone"/>; 0 where nothing sprays.</summary>
    public static Vector<double> OfZone(Vector<double> film, Vector<double> area, Vector<double> water)
    {
        var carried = water * LiquidWater.HeatCapacity;
        var sprays = Vector.GreaterThan(carried, Vector<double>.Zero) & Vector.GreaterThan(film, Vector<double>.Zero);
        var safe = Vector.ConditionalSelect(sprays, carried, Vector<double>.One);
        var zone = safe / area * (Vector<double>.One - Vector.Exp(-film * area / safe));
        return Vector.ConditionalSelect(sprays, zone, Vector<double>.Zero);
    }
}

/// <summary>Air of the rooms of several machines.</summary>
internal struct RoomLanes
{
    /// <summary>°C.</summary>
    public Vector<double> Celsius;

    /// <summary>kg/kg.</summary>
    public Vector<double> Humidity;

    /// <summary>J/kg.</summary>
    public Vector<double> Enthalpy;

    /// <summary>Takes a lane's room.</summary>
    public void Load(in RoomAir room, int lane)
    {
        Lanes.Set(ref Celsius, lane, room.Celsius);
        Lanes.Set(ref Humidity, lane, room.Humidity);
        Lanes.Set(ref Enthalpy, lane, room.Enthalpy);
    }
}
