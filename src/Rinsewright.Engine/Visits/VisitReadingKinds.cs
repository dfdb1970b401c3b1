using Rinsewright.Engine.Knowledge;
using Rinsewright.Engine.Machines;
using Rinsewright.Engine.Quantities;
using Rinsewright.Engine.Records;
using Rinsewright.Engine.Sanitization;

namespace Rinsewright.Engine.Visits;

/// <summary>How a reading of the knowledge is typed, and what it is held against.</summary>
/// <param name="Id">Id, <c>rd-</c> of the knowledge or of <see cref="VisitReadingKinds.Own"/>.</param>
/// <param name="Unit">Unit of the trade; any of its dimension is taken.</param>
/// <param name="Area">Part of the acceptance test it belongs to; null for none.</param>
/// <param name="Point">Place whose limits apply; <see cref="MeasuringPoint.Unknown"/> where no rule speaks of it.</param>
/// <param name="UsualScale">What a figure of the knowledge is multiplied with to be in <paramref name="Unit"/>.</param>
public sealed record VisitReadingKind(
    string Id,
    Unit Unit,
    AcceptanceArea? Area = null,
    MeasuringPoint Point = MeasuringPoint.Unknown,
    double UsualScale = 1
)
{
    /// <summary>What the model reads under load; null where it does not.</summary>
    public Observable? UnderLoad { get; init; }

    /// <summary>What the model reads without racks.</summary>
    public Observable? WithoutRacks { get; init; }

    /// <summary>What the model reads from cold.</summary>
    public Observable? FromCold { get; init; }

    /// <summary>Kind of reading that a contradiction is looked for with.</summary>
    public ReadingKind? Figure { get; init; }

    /// <summary>Duty of the tank it belongs to; null for none.</summary>
    public TankDuty? Tank { get; init; }
}

/// <summary>The readings of a visit.</summary>
public static class VisitReadingKinds
{
    /// <summary>Readings of the sanitizing solution that the knowledge has no id for: its pH and its contact time.</summary>
    public static IReadOnlyList<string> Own { get; } = ["sanitizer-ph", "sanitizer-contact-time"];

    private static readonly VisitReadingKind[] Kinds =
    [
        Tank("rd-wash-temp", TankDuty.Wash, MeasuringPoint.WashTank, Observables.WashTankTemperature),
        Tank("rd-power-rinse-temp", TankDuty.PumpedRinse, MeasuringPoint.PumpedRinseTank, Observables.RinseTankTemperature),
        Tank("rd-prewash-temp", TankDuty.Prewash, MeasuringPoint.Unknown, Observables.PrewashTankTemperature),
        new("rd-final-rinse-temp", Units.Fahrenheit, AcceptanceArea.Heat, MeasuringPoint.FinalRinseManifold)
        {
            UnderLoad = Observables.FinalRinseTemperature,
            Figure = ReadingKinds.FinalRinseTemperature,
        },
        new("rd-ware-surface-temp", Units.Fahrenheit, AcceptanceArea.Heat, MeasuringPoint.WareSurface)
        {
            UnderLoad = Observables.PlatePeakTemperature,
        },
        new("rd-booster-out-temp", Units.Fahrenheit, AcceptanceArea.Heat),
        new("rd-incoming-temp", Units.Fahrenheit, AcceptanceArea.Heat, MeasuringPoint.WaterSupply)
        {
            Figure = ReadingKinds.SupplyTemperature,
        },
        new("rd-rinse-pressure", Units.Psi, AcceptanceArea.Pressure, MeasuringPoint.FinalRinseLine)
        {
            UnderLoad = Observables.FinalRinsePressure,
            Figure = ReadingKinds.RinsePressure,
        },
        new("rd-static-pressure", Units.Psi),
        new("rd-rinse-volume", Units.Gallon, AcceptanceArea.Pressure)
        {
            UnderLoad = Observables.RinseVolumePerRack,
            Figure = ReadingKinds.RinseVolumePerRack,
        },
        new("rd-rinse-time", Units.Second, AcceptanceArea.Timing),
        new("rd-wash-time", Units.Second, AcceptanceArea.Timing),
        new("rd-conveyor-speed", Units.FootPerMinute, AcceptanceArea.Timing) { Figure = ReadingKinds.ConveyorSpeed },
        new("rd-tank-level", Units.Inch),
        new("rd-heat-up-time", Units.Minute) { FromCold = Observables.HeatUpTime },
        new("rd-temp-drop-10-racks", Units.FahrenheitDifference),
        // A per cent by weight and volume is 10 g/L.
        new("rd-detergent", Units.GramPerLitre, AcceptanceArea.Chemistry, UsualScale: 10),
        new("rd-rinse-additive", Units.Millilitre, AcceptanceArea.Chemistry),
        new("rd-sanitizer", Units.MilligramPerLitre, AcceptanceArea.Chemistry, MeasuringPoint.SanitizingSolution),
        new("rd-carryover-ph", Units.PHDifference),
        new("rd-power-rinse-alkalinity", Units.Percent),
        new("rd-hardness", Units.GrainPerGallon),
        new("rd-softened-hardness", Units.GrainPerGallon),
        new("rd-tds", Units.MilligramPerLitre),
        new("rd-iron", Units.MilligramPerLitre),
        new("rd-heater-amps", Units.Percent),
        new("rd-booster-amps", Units.Percent),
        new("rd-voltage", Units.Percent),
        new("rd-pump-amps", Units.Percent),
        new("rd-drive-amps", Units.Percent),
        new("rd-wash-gauge-error", Units.FahrenheitDifference),
        new("rd-rinse-gauge-error", Units.FahrenheitDifference),
        new("rd-pressure-gauge-error", Units.Psi),
        new("rd-drain-time", Units.Minute),
        new("rd-water-change-racks", Units.Hour),
        new("rd-steam-pressure", Units.Psi),
        new("sanitizer-ph", Units.PH, AcceptanceArea.Chemistry, MeasuringPoint.SanitizingSolution),
        new("sanitizer-contact-time", Units.Second, AcceptanceArea.Timing, MeasuringPoint.SanitizingSolution),
    ];

    /// <summary>All of them. What the knowledge reads without a unit of ours (insulation, draught, gas pressure) is entered as a finding.</summary>
    public static IReadOnlyList<VisitReadingKind> All => Kinds;

    /// <summary>The kind with this id; null where there is none.</summary>
    public static VisitReadingKind? Find(string id) => Array.Find(Kinds, k => k.Id == id);

    /// <summary>Place whose limits apply on a machine: the final rinse of a chemical machine is its sanitizing solution.</summary>
    public static MeasuringPoint PointOn(VisitReadingKind kind, Machine machine) =>
        kind.Id == "rd-final-rinse-temp" && machine.Sanitizing != SanitizingMethod.HotWater
            ? MeasuringPoint.SanitizingSolution
            : kind.Point;

    /// <summary>
    /// The readings a whole visit takes on this machine, in the order of its stations; those of stations that are for a doubt only (recovery, electrical) are
    /// taken where the doubt is.
    /// </summary>
    public static IReadOnlyList<string> Usual(TradeKnowledge knowledge, Machine machine)
    {
        var type = PartOrder.TypeOf(machine.Kind);
        var chemical = machine.Sanitizing != SanitizingMethod.HotWater;
        var known = knowledge.Observables.Readings.ToDictionary(r => r.Id, StringComparer.Ordinal);
        return
        [
            .. knowledge
                .Visit.Stations.Where(s => s.Id is not ("sv-recovery" or "sv-electrical"))
                .OrderBy(s => s.Order)
                .SelectMany(s => s.Uses)
                .Distinct(StringComparer.Ordinal)
                .Where(id => known.TryGetValue(id, out var r) && knowledge.Fits(r.Machines, type))
                .Where(id => known[id].Sanitizing is not { } mode || mode == (chemical ? "chemical" : "hot"))
                .Where(id => Find(id) is { } kind && Has(kind, machine)),
        ];
    }

    /// <summary>Whether a machine has what a kind reads.</summary>
    internal static bool Has(VisitReadingKind kind, Machine machine) =>
        (kind.Tank is not { } duty || machine.Tanks.Any(t => t.Duty == duty))
        && (machine.FinalRinse is not null || kind.Id is not ("rd-rinse-pressure" or "rd-rinse-volume"))
        && (machine.Booster is not null || kind.Id is not ("rd-booster-out-temp" or "rd-booster-amps"))
        && (kind.Id != "rd-rinse-additive" || machine.Feeders.Any(f => f.Product == FedProduct.RinseAdditive));

    private static VisitReadingKind Tank(string id, TankDuty duty, MeasuringPoint point, Observable observable) =>
        new(id, Units.Fahrenheit, AcceptanceArea.Heat, point)
        {
            UnderLoad = observable,
            WithoutRacks = observable,
            Figure = ReadingKinds.TankTemperature,
            Tank = duty,
        };
}
