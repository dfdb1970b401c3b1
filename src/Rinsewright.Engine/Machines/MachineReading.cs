using Rinsewright.Engine.Quantities;

namespace Rinsewright.Engine.Machines;

/// <summary>Something read on a machine to learn its figures. What each kind needs stands in <see cref="ReadingKinds"/>.</summary>
/// <param name="Kind">Id of its kind.</param>
/// <param name="Value">What was read, in a unit of the kind's dimension.</param>
/// <param name="On">Day.</param>
public sealed record MachineReading(string Kind, Amount Value, DateOnly On)
{
    /// <summary>Id of the tank, or <c>booster</c>; null where the kind belongs to no part.</summary>
    public string? Part { get; init; }

    /// <summary>Temperature at the start, of kinds that time a change.</summary>
    public Amount? From { get; init; }

    /// <summary>Temperature at the end.</summary>
    public Amount? To { get; init; }

    /// <summary>Time it took, of kinds that read a change over a time.</summary>
    public Amount? Over { get; init; }

    /// <summary>Racks an hour while it was read, of kinds read under load.</summary>
    public double? RacksPerHour { get; init; }

    /// <summary>Half-width ± within which the true value lies nineteen times of twenty, in steps of the unit of <see cref="Value"/>, above 0; null for the usual of its kind.</summary>
    public double? Uncertainty { get; init; }
}

/// <summary>Which parts a kind of reading belongs to.</summary>
public enum ReadingPart
{
    /// <summary>None: the machine or the building.</summary>
    None,

    /// <summary>A tank.</summary>
    Tank,

    /// <summary>A tank with a fill valve.</summary>
    FilledTank,

    /// <summary>A tank with a heater.</summary>
    HeatedTank,

    /// <summary>A tank with a heater, or the booster.</summary>
    Heater,
}

/// <summary>A kind of reading.</summary>
/// <param name="Id">Id, stable, in files and on the command line.</param>
/// <param name="Unit">Unit of the trade; any of the same dimension is taken.</param>
/// <param name="Uncertainty">Usual half-width ±, in that unit; a share of the value where <paramref name="Proportional"/>.</param>
/// <param name="Proportional">Whether the uncertainty is a share of the value.</param>
/// <param name="Part">Which parts it belongs to.</param>
/// <param name="NeedsChange">Whether <see cref="MachineReading.From"/> and <see cref="MachineReading.To"/> are needed.</param>
/// <param name="NeedsTime">Whether <see cref="MachineReading.Over"/> is needed.</param>
/// <param name="NeedsRate">Whether <see cref="MachineReading.RacksPerHour"/> is needed.</param>
public sealed record ReadingKind(
    string Id,
    Unit Unit,
    double Uncertainty,
    bool Proportional = false,
    ReadingPart Part = ReadingPart.None,
    bool NeedsChange = false,
    bool NeedsTime = false,
    bool NeedsRate = false
)
{
    /// <summary>Usual standard uncertainty, half of ±: a share, or in SI.</summary>
    internal double Sigma => Uncertainty / 2 * (Proportional ? 1 : Unit.Numerator / Unit.Denominator);
}

/// <summary>
/// The kinds of reading that figures are estimated from. Usual uncertainties are those of a service thermometer, a stop watch, a bucket and a clamp meter
/// (estimates, no source).
/// </summary>
public static class ReadingKinds
{
    /// <summary>Time a heater takes to bring its tank from one temperature to another; float satisfied, no pump, no water moving.</summary>
    public static readonly ReadingKind HeatUpTime = new(
        "heatUpTime",
        Units.Second,
        0.08,
        Proportional: true,
        Part: ReadingPart.HeatedTank,
        NeedsChange: true
    );

    /// <summary>Time a tank takes to cool from one temperature to another, everything off, water in.</summary>
    public static readonly ReadingKind CoolingTime = new(
        "coolingTime",
        Units.Second,
        0.08,
        Proportional: true,
        Part: ReadingPart.Tank,
        NeedsChange: true
    );

    /// <summary>Share of the time a tank's heater is on, hot and without racks.</summary>
    public static readonly ReadingKind IdleHeaterDuty = new(
        "idleHeaterDuty",
        Units.Percent,
        0.1,
        Proportional: true,
        Part: ReadingPart.HeatedTank
    );

    /// <summary>Share of the time a tank's fill runs, hot and without racks: what a leak takes.</summary>
    public static readonly ReadingKind IdleFillDuty = new("idleFillDuty", Units.Percent, 2, Part: ReadingPart.FilledTank);

    /// <summary>How far the level of a full tank falls in a time, fill shut, no pump.</summary>
    public static readonly ReadingKind LevelDrop = new("levelDrop", Units.Millimetre, 3, Part: ReadingPart.Tank, NeedsTime: true);

    /// <summary>Time to fill an empty tank until its float shuts the valve.</summary>
    public static readonly ReadingKind FillTime = new("fillTime", Units.Second, 0.06, Proportional: true, Part: ReadingPart.FilledTank);

    /// <summary>Final rinse one rack takes that comes alone.</summary>
    public static readonly ReadingKind RinseVolumePerRack = new("rinseVolumePerRack", Units.Gallon, 0.06, Proportional: true);

    /// <summary>Flow pressure at the rinse arm.</summary>
    public static readonly ReadingKind RinsePressure = new("rinsePressure", Units.Psi, 1.4);

    /// <summary>Water from the building.</summary>
    public static readonly ReadingKind SupplyTemperature = new("supplyTemperature", Units.Fahrenheit, 2);

    /// <summary>Room air.</summary>
    public static readonly ReadingKind RoomTemperature = new("roomTemperature", Units.Fahrenheit, 3);

    /// <summary>Ware as it comes in.</summary>
    public static readonly ReadingKind WareTemperature = new("wareTemperature", Units.Fahrenheit, 4);

    /// <summary>Speed of the conveyor, from the time a rack takes over a marked length.</summary>
    public static readonly ReadingKind ConveyorSpeed = new("conveyorSpeed", Units.FootPerMinute, 0.02, Proportional: true);

    /// <summary>Water temperature at which a heater goes off.</summary>
    public static readonly ReadingKind CutOut = new("cutOut", Units.Fahrenheit, 2, Part: ReadingPart.Heater);

    /// <summary>Water temperature at which it comes on again.</summary>
    public static readonly ReadingKind CutIn = new("cutIn", Units.Fahrenheit, 2, Part: ReadingPart.Heater);

    /// <summary>Mean temperature of a tank at a steady load.</summary>
    public static readonly ReadingKind TankTemperature = new(
        "tankTemperature",
        Units.Fahrenheit,
        3,
        Part: ReadingPart.Tank,
        NeedsRate: true
    );

    /// <summary>Final rinse at the manifold at a steady load.</summary>
    public static readonly ReadingKind FinalRinseTemperature = new("finalRinseTemperature", Units.Fahrenheit, 3, NeedsRate: true);

    /// <summary>Share of the time a heater is on at a steady load.</summary>
    public static readonly ReadingKind LoadHeaterDuty = new("loadHeaterDuty", Units.Percent, 6, Part: ReadingPart.Heater, NeedsRate: true);

    /// <summary>Power of a heater while it is on, by a meter. Live electrical work: for a licensed electrician.</summary>
    public static readonly ReadingKind HeaterPower = new("heaterPower", Units.Kilowatt, 0.04, Proportional: true, Part: ReadingPart.Heater);

    /// <summary>Current of the first line of an electric heater while it is on. Live electrical work: for a licensed electrician.</summary>
    public static readonly ReadingKind LineCurrentA = Current("lineCurrentA");

    /// <summary>Current of the second line.</summary>
    public static readonly ReadingKind LineCurrentB = Current("lineCurrentB");

    /// <summary>Current of the third line.</summary>
    public static readonly ReadingKind LineCurrentC = Current("lineCurrentC");

    /// <summary>All kinds, in the order in which they are best taken.</summary>
    public static IReadOnlyList<ReadingKind> All { get; } =
    [
        SupplyTemperature,
        RoomTemperature,
        FillTime,
        HeatUpTime,
        LineCurrentA,
        LineCurrentB,
        LineCurrentC,
        HeaterPower,
        CutOut,
        CutIn,
        IdleHeaterDuty,
        IdleFillDuty,
        LevelDrop,
        CoolingTime,
        RinsePressure,
        RinseVolumePerRack,
        ConveyorSpeed,
        WareTemperature,
        TankTemperature,
        FinalRinseTemperature,
        LoadHeaterDuty,
    ];

    /// <summary>The kind with this id; null where there is none.</summary>
    public static ReadingKind? Find(string id)
    {
        foreach (var kind in All)
        {
            if (kind.Id == id)
            {
                return kind;
            }
        }

        return null;
    }

    private static ReadingKind Current(string id) => new(id, Units.Ampere, 0.06, Proportional: true, Part: ReadingPart.Heater);
}
