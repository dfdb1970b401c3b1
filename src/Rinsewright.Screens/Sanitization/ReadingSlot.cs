using Rinsewright.Contracts.Records;
using Rinsewright.Contracts.Sanitization;
using Rinsewright.Engine.Quantities;
using Rinsewright.Engine.Records;
using Rinsewright.Engine.Sanitization;

namespace Rinsewright.Client.Sanitization;

/// <summary>A reading that can be typed in: where, of what, how, and the caution that stands beside it.</summary>
/// <param name="Id">Id of the slot and of its field.</param>
/// <param name="Point">Where.</param>
/// <param name="Us">Unit typed in US customary.</param>
/// <param name="Si">Unit typed in SI.</param>
/// <param name="Methods">Ways it is read, the usual one first.</param>
/// <param name="Caution">Hazard at this step: <c>scald</c>, <c>glass</c>, <c>acid-chlorine</c>, <c>moving-part</c>; null for none.</param>
public sealed record ReadingSlot(string Id, MeasuringPoint Point, Unit Us, Unit Si, IReadOnlyList<ReadingMethod> Methods, string? Caution)
{
    private static readonly IReadOnlyList<ReadingMethod> Thermometer = [ReadingMethod.Probe, ReadingMethod.MachineGauge];
    private static readonly IReadOnlyList<ReadingMethod> Chemistry = [ReadingMethod.Strip, ReadingMethod.TestKit];

    /// <summary>The irreversible label on the ware.</summary>
    public static readonly ReadingSlot Label = Temperature("label", MeasuringPoint.WareSurface, [ReadingMethod.IrreversibleLabel], "label");

    /// <summary>The thermometer that keeps its highest value, sent through with the ware.</summary>
    public static readonly ReadingSlot Maximum = Temperature(
        "maximum",
        MeasuringPoint.WareSurface,
        [ReadingMethod.MaximumThermometer],
        "glass"
    );

    /// <summary>Temperatures and the flow pressure of the machine.</summary>
    public static readonly IReadOnlyList<ReadingSlot> Machine =
    [
        Temperature("wash", MeasuringPoint.WashTank, Thermometer, "caustic"),
        Temperature("pumped-rinse", MeasuringPoint.PumpedRinseTank, Thermometer, null),
        Temperature("final-rinse", MeasuringPoint.FinalRinseManifold, Thermometer, "scald"),
        new("flow-pressure", MeasuringPoint.FinalRinseLine, Units.Psi, Units.Kilopascal, [ReadingMethod.MachineGauge], "pressure"),
    ];

    /// <summary>The sanitizing solution.</summary>
    public static readonly IReadOnlyList<ReadingSlot> Solution =
    [
        One("strength", MeasuringPoint.SanitizingSolution, Units.MilligramPerLitre, Chemistry, "strip"),
        One("acidity", MeasuringPoint.SanitizingSolution, Units.PH, Chemistry, null),
        Temperature("solution-temperature", MeasuringPoint.SanitizingSolution, Thermometer, null),
        One("hardness", MeasuringPoint.SanitizingSolution, Units.HardnessMilligramPerLitre, Chemistry, null),
        One("contact-time", MeasuringPoint.SanitizingSolution, Units.Second, [ReadingMethod.Stopwatch], null),
    ];

    /// <summary>Slots of a machine and a method: no pumped rinse where there is no such tank, hardness for quats alone.</summary>
    public static IReadOnlyList<ReadingSlot> For(ProofRequest request)
    {
        var machine = Machine.Where(s => s.Id != "pumped-rinse" || request.Machine == "multitankConveyor");
        return request.Method == "hotWater"
            ? [.. machine]
            : [.. machine, .. Solution.Where(s => s.Id != "hardness" || request.Method == "quaternaryAmmonium")];
    }

    /// <summary>The reading typed into this slot; null where there is none.</summary>
    public ReadingDto? In(ProofRequest request) => request.Readings?.FirstOrDefault(Holds);

    /// <summary>The request with this slot's reading put, or taken away.</summary>
    public ProofRequest Put(ProofRequest request, ReadingDto? reading)
    {
        var readings = (request.Readings ?? []).ToList();
        var at = readings.FindIndex(Holds);
        if (at >= 0 && reading is not null)
        {
            readings[at] = reading;
        }
        else if (at >= 0)
        {
            readings.RemoveAt(at);
        }
        else if (reading is not null)
        {
            readings.Add(reading);
        }

        return request with
        {
            Readings = readings,
        };
    }

    /// <summary>How the reading stands against the limits in force, said at once; null where nothing is typed or only the whole proof can say.</summary>
    public CheckDto? Judge(ProofRequest request, ProofReport report) =>
        In(request) is { } mine
            ? report.Checks.FirstOrDefault(c =>
                c.Reading is { } r && r.Point == mine.Point && r.Method == mine.Method && r.Value == mine.Value
            )
            : null;

    private bool Holds(ReadingDto r) =>
        r.Point == Contracts.Wire.Name(Point)
        && Units.Find(r.Value.Unit)?.Dimension == Us.Dimension
        && Methods.Any(m => r.Method == Contracts.Wire.Name(m));

    private static ReadingSlot Temperature(string id, MeasuringPoint point, IReadOnlyList<ReadingMethod> methods, string? caution) =>
        new(id, point, Units.Fahrenheit, Units.Celsius, methods, caution);

    private static ReadingSlot One(string id, MeasuringPoint point, Unit unit, IReadOnlyList<ReadingMethod> methods, string? caution) =>
        new(id, point, unit, unit, methods, caution);
}
