using Rinsewright.Contracts.Records;
using Rinsewright.Contracts.Sanitization;
using Rinsewright.Engine.Quantities;
using Rinsewright.Engine.Records;

namespace Rinsewright.Client.Sanitization;

/// <summary>One figure of the data plate and the place it is about.</summary>
public sealed record PlateField(
    string Id,
    Unit Us,
    Unit Si,
    MeasuringPoint Point,
    Func<DataPlateDto, AmountDto?> Get,
    Func<DataPlateDto, AmountDto?, DataPlateDto> Set
)
{
    private static readonly IReadOnlyList<PlateField> Water =
    [
        Temperature("plate-wash", MeasuringPoint.WashTank, p => p.WashMinimum, (p, v) => p with { WashMinimum = v }),
        Temperature(
            "plate-pumped-rinse",
            MeasuringPoint.PumpedRinseTank,
            p => p.PumpedRinseMinimum,
            (p, v) => p with { PumpedRinseMinimum = v }
        ),
        Temperature(
            "plate-final-rinse",
            MeasuringPoint.FinalRinseManifold,
            p => p.FinalRinseMinimum,
            (p, v) => p with { FinalRinseMinimum = v }
        ),
        Temperature(
            "plate-final-rinse-most",
            MeasuringPoint.FinalRinseManifold,
            p => p.FinalRinseMaximum,
            (p, v) => p with { FinalRinseMaximum = v }
        ),
        new(
            "plate-pressure-least",
            Units.Psi,
            Units.Kilopascal,
            MeasuringPoint.FinalRinseLine,
            p => p.PressureMinimum,
            (p, v) => p with { PressureMinimum = v }
        ),
        new(
            "plate-pressure-most",
            Units.Psi,
            Units.Kilopascal,
            MeasuringPoint.FinalRinseLine,
            p => p.PressureMaximum,
            (p, v) => p with { PressureMaximum = v }
        ),
    ];

    private static readonly IReadOnlyList<PlateField> Chemical =
    [
        new(
            "plate-sanitizer-least",
            Units.MilligramPerLitre,
            Units.MilligramPerLitre,
            MeasuringPoint.SanitizingSolution,
            p => p.SanitizerMinimum,
            (p, v) => p with { SanitizerMinimum = v }
        ),
        new(
            "plate-sanitizer-most",
            Units.MilligramPerLitre,
            Units.MilligramPerLitre,
            MeasuringPoint.SanitizingSolution,
            p => p.SanitizerMaximum,
            (p, v) => p with { SanitizerMaximum = v }
        ),
    ];

    /// <summary>The figures that a plate of this machine and method carries.</summary>
    public static IReadOnlyList<PlateField> For(ProofRequest request)
    {
        var water = Water.Where(f => f.Id != "plate-pumped-rinse" || request.Machine == "multitankConveyor");
        return request.Method == "hotWater" ? [.. water] : [.. water, .. Chemical];
    }

    private static PlateField Temperature(
        string id,
        MeasuringPoint point,
        Func<DataPlateDto, AmountDto?> get,
        Func<DataPlateDto, AmountDto?, DataPlateDto> set
    ) => new(id, Units.Fahrenheit, Units.Celsius, point, get, set);
}
