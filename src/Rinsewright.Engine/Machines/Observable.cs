using Rinsewright.Engine.Quantities;

namespace Rinsewright.Engine.Machines;

/// <summary>When an observable is read.</summary>
public enum ReadDuring
{
    /// <summary>From empty and cold until everything is at its temperature.</summary>
    HeatUp,

    /// <summary>Hot, without racks.</summary>
    Idle,

    /// <summary>Racks at a steady rate.</summary>
    Load,

    /// <summary>Racks as fast as they fit.</summary>
    FullRate,
}

/// <summary>Something that a technician could read on the machine.</summary>
/// <param name="Id">Name, stable, in the files and on the command line.</param>
/// <param name="Unit">Unit the model gives it in.</param>
/// <param name="During">When it is read.</param>
/// <param name="Threshold">Difference that shows, in <paramref name="Unit"/>: less is below what gauges and eyes tell.</param>
public sealed record Observable(string Id, Unit Unit, ReadDuring During, double Threshold)
{
    /// <summary>What it measures.</summary>
    public Dimension Dimension => Unit.Dimension;
}

/// <summary>The observables of the model.</summary>
public static class Observables
{
    /// <summary>From the start of the fill until the wash tank's float closes.</summary>
    public static readonly Observable FillTime = new("fillTime", Units.Second, ReadDuring.HeatUp, 5);

    /// <summary>From the start of the fill until every heated tank reaches its set point.</summary>
    public static readonly Observable HeatUpTime = new("heatUpTime", Units.Second, ReadDuring.HeatUp, 15);

    /// <summary>Mean power of all tank heaters.</summary>
    public static readonly Observable IdleTankPower = new("idleTankPower", Units.Kilowatt, ReadDuring.Idle, 0.08);

    /// <summary>Mean power of the booster.</summary>
    public static readonly Observable IdleBoosterPower = new("idleBoosterPower", Units.Kilowatt, ReadDuring.Idle, 0.08);

    /// <summary>Water through fill and rinse valves.</summary>
    public static readonly Observable IdleWater = new("idleWater", Units.LitrePerHour, ReadDuring.Idle, 2);

    /// <summary>Wash tank, true.</summary>
    public static readonly Observable WashTankTemperature = new("washTankTemperature", Units.Fahrenheit, ReadDuring.Load, 1.5);

    /// <summary>Wash tank as its gauge shows it.</summary>
    public static readonly Observable WashGaugeTemperature = new("washGaugeTemperature", Units.Fahrenheit, ReadDuring.Load, 1.5);

    /// <summary>Pumped-rinse tank, true.</summary>
    public static readonly Observable RinseTankTemperature = new("rinseTankTemperature", Units.Fahrenheit, ReadDuring.Load, 1.5);

    /// <summary>Prewash tank, true.</summary>
    public static readonly Observable PrewashTankTemperature = new("prewashTankTemperature", Units.Fahrenheit, ReadDuring.Load, 1.5);

    /// <summary>Final rinse at the manifold, mean while it sprays.</summary>
    public static readonly Observable FinalRinseTemperature = new("finalRinseTemperature", Units.Fahrenheit, ReadDuring.Load, 1);

    /// <summary>Final rinse at the manifold, lowest while it sprays.</summary>
    public static readonly Observable FinalRinseLowest = new("finalRinseLowest", Units.Fahrenheit, ReadDuring.Load, 1);

    /// <summary>Final rinse as its gauge shows it.</summary>
    public static readonly Observable FinalRinseGaugeTemperature = new("finalRinseGaugeTemperature", Units.Fahrenheit, ReadDuring.Load, 1);

    /// <summary>Flow pressure at the rinse arm.</summary>
    public static readonly Observable FinalRinsePressure = new("finalRinsePressure", Units.Psi, ReadDuring.Load, 1);

    /// <summary>Final rinse for each rack.</summary>
    public static readonly Observable RinseVolumePerRack = new("rinseVolumePerRack", Units.Gallon, ReadDuring.Load, 0.03);

    /// <summary>Water through the fill valves.</summary>
    public static readonly Observable MakeUpWater = new("makeUpWater", Units.LitrePerHour, ReadDuring.Load, 5);

    /// <summary>Water to the drain.</summary>
    public static readonly Observable DrainWater = new("drainWater", Units.LitrePerHour, ReadDuring.Load, 15);

    /// <summary>Water thrown onto the floor.</summary>
    public static readonly Observable FloorWater = new("floorWater", Units.LitrePerHour, ReadDuring.Load, 2);

    /// <summary>Mean power of the wash tank's heater.</summary>
    public static readonly Observable WashHeaterPower = new("washHeaterPower", Units.Kilowatt, ReadDuring.Load, 0.5);

    /// <summary>Mean power of the pumped-rinse tank's heater.</summary>
    public static readonly Observable RinseHeaterPower = new("rinseHeaterPower", Units.Kilowatt, ReadDuring.Load, 0.5);

    /// <summary>Mean power of the booster.</summary>
    public static readonly Observable BoosterPower = new("boosterPower", Units.Kilowatt, ReadDuring.Load, 0.4);

    /// <summary>Pressure at the wash arm.</summary>
    public static readonly Observable WashArmPressure = new("washArmPressure", Units.Psi, ReadDuring.Load, 0.2);

    /// <summary>Water in the wash tank against full.</summary>
    public static readonly Observable WashTankLevel = new("washTankLevel", Units.Percent, ReadDuring.Load, 3);

    /// <summary>Detergent in the wash tank.</summary>
    public static readonly Observable WashDetergent = new("washDetergent", Units.GramPerLitre, ReadDuring.Load, 0.05);

    /// <summary>Detergent fed for each rack.</summary>
    public static readonly Observable DetergentPerRack = new("detergentPerRack", Units.Gram, ReadDuring.Load, 0.25);

    /// <summary>Detergent in the pumped-rinse tank.</summary>
    public static readonly Observable RinseTankDetergent = new("rinseTankDetergent", Units.GramPerLitre, ReadDuring.Load, 0.05);

    /// <summary>Rinse additive in the water left on the ware.</summary>
    public static readonly Observable AdditiveOnWare = new("additiveOnWare", Units.MilligramPerLitre, ReadDuring.Load, 3);

    /// <summary>Sanitizer in the water left on the ware.</summary>
    public static readonly Observable SanitizerOnWare = new("sanitizerOnWare", Units.MilligramPerLitre, ReadDuring.Load, 3);

    /// <summary>Soil in the wash tank.</summary>
    public static readonly Observable WashSoil = new("washSoil", Units.GramPerLitre, ReadDuring.Load, 0.05);

    /// <summary>Hottest the surface of a piece gets.</summary>
    public static readonly Observable PlatePeakTemperature = new("platePeakTemperature", Units.Fahrenheit, ReadDuring.Load, 1);

    /// <summary>Heat unit equivalents of a piece.</summary>
    public static readonly Observable PlateHeatUnits = new("plateHeatUnits", Units.HeatUnit, ReadDuring.Load, 300);

    /// <summary>A0 of a piece.</summary>
    public static readonly Observable PlateEquivalentTime = new("plateEquivalentTime", Units.A0Second, ReadDuring.Load, 0.5);

    /// <summary>Mean temperature of a piece 30 s after it came out.</summary>
    public static readonly Observable WareExitTemperature = new("wareExitTemperature", Units.Fahrenheit, ReadDuring.Load, 1.5);

    /// <summary>Index of soil left: a teaching number, never cleanliness.</summary>
    public static readonly Observable SoilLeft = new("soilLeft", Units.Percent, ReadDuring.Load, 0.2);

    /// <summary>Detergent in the water left on the ware.</summary>
    public static readonly Observable DetergentOnWare = new("detergentOnWare", Units.MilligramPerLitre, ReadDuring.Load, 3);

    /// <summary>Heat to the air of the room or the vent.</summary>
    public static readonly Observable VentHeat = new("ventHeat", Units.Kilowatt, ReadDuring.Load, 0.4);

    /// <summary>Wash tank at full rate.</summary>
    public static readonly Observable WashTankFullRate = new("washTankFullRate", Units.Fahrenheit, ReadDuring.FullRate, 1.5);

    /// <summary>Final rinse at full rate.</summary>
    public static readonly Observable FinalRinseFullRate = new("finalRinseFullRate", Units.Fahrenheit, ReadDuring.FullRate, 1);

    /// <summary>Racks an hour that come out.</summary>
    public static readonly Observable RacksPerHour = new("racksPerHour", Units.One, ReadDuring.Load, 1);

    /// <summary>All of them, in the order they are shown.</summary>
    public static IReadOnlyList<Observable> All { get; } =
    [
        FillTime,
        HeatUpTime,
        IdleTankPower,
        IdleBoosterPower,
        IdleWater,
        WashTankTemperature,
        WashGaugeTemperature,
        RinseTankTemperature,
        PrewashTankTemperature,
        FinalRinseTemperature,
        FinalRinseLowest,
        FinalRinseGaugeTemperature,
        FinalRinsePressure,
        RinseVolumePerRack,
        MakeUpWater,
        DrainWater,
        FloorWater,
        WashHeaterPower,
        RinseHeaterPower,
        BoosterPower,
        WashArmPressure,
        WashTankLevel,
        WashDetergent,
        DetergentPerRack,
        RinseTankDetergent,
        AdditiveOnWare,
        SanitizerOnWare,
        WashSoil,
        PlatePeakTemperature,
        PlateHeatUnits,
        PlateEquivalentTime,
        WareExitTemperature,
        SoilLeft,
        DetergentOnWare,
        VentHeat,
        WashTankFullRate,
        FinalRinseFullRate,
        RacksPerHour,
    ];
}

/// <summary>Why an observable has no value.</summary>
public enum Absence
{
    /// <summary>It has one.</summary>
    None,

    /// <summary>It never comes to it.</summary>
    Never,

    /// <summary>Nothing of the kind happens.</summary>
    Nothing,
}

/// <summary>An observable as computed.</summary>
/// <param name="Observable">What.</param>
/// <param name="Value">Value in its unit; null where there is none.</param>
/// <param name="Absence">Why there is none.</param>
public sealed record Observed(Observable Observable, Amount? Value, Absence Absence = Absence.None);
