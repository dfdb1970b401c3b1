using Rinsewright.Contracts.Records;
using Rinsewright.Engine.Machines;
using Rinsewright.Engine.Quantities;
using Rinsewright.Engine.Records;
using Rinsewright.Engine.Sanitization;

namespace Rinsewright.Contracts.Sanitization;

/// <summary>What a person set, as the engine's terms.</summary>
public static class ProofTermsMapping
{
    /// <summary>The readings typed into a request.</summary>
    /// <exception cref="ContractException">A field is not known; the message says which and what is allowed.</exception>
    public static IReadOnlyList<Reading> TypedReadings(this ProofRequest request) =>
        [.. (request.Readings ?? []).Select((r, i) => Wire.To(r, $"readings[{i}]"))];

    /// <summary>The engine's terms of a request.</summary>
    /// <exception cref="ContractException">A field is not known; the message says which and what is allowed.</exception>
    /// <exception cref="RuleSetException">The service's own rule set cannot be used.</exception>
    public static ProofTerms Terms(this ProofRequest request)
    {
        var rules = request.RuleSetJson is { } json
            ? RuleSets.Parse(json)
            : RuleSets.Find(request.RuleSet)
                ?? throw new ContractException(
                    "ruleSet",
                    $"'{request.RuleSet}' is not known; use one of {string.Join(", ", RuleSets.BuiltIn.Select(r => r.Id))}"
                );
        return new ProofTerms(
            Wire.Parse<MachineType>(request.Machine, "machine"),
            Wire.Parse<SanitizingMethod>(request.Method, "method"),
            rules,
            request.Plate is { } p ? Plate(p) : null,
            request.Label is { } l ? Label(l) : null,
            request.Instrument is { } i ? Wire.To(i, "instrument") : null
        );
    }

    /// <summary>What is asked of a proof on a machine that is described: its kind, its sanitizing and its plate.</summary>
    /// <param name="request">The request otherwise.</param>
    /// <param name="machine">The machine.</param>
    /// <param name="ruleSet">Id of the built-in rules in force at its kitchen; null or unknown for those of the request.</param>
    public static ProofRequest For(this ProofRequest request, Machine machine, string? ruleSet) =>
        request with
        {
            Machine = Wire.Name(LimitCheck.TypeOf(machine.Kind)),
            Method = Wire.Name(machine.Sanitizing),
            RuleSet = ruleSet is { } id && RuleSets.Find(id) is not null ? id : request.RuleSet,
            Plate = machine.Plate is { } plate && plate != new DataPlate() ? Plate(plate) : request.Plate,
        };

    private static DataPlateDto Plate(DataPlate p) =>
        new(
            Of(p.WashMinimum),
            Of(p.PumpedRinseMinimum),
            Of(p.FinalRinseMinimum),
            Of(p.FinalRinseMaximum),
            Of(p.PressureMinimum),
            Of(p.PressureMaximum),
            Of(p.SanitizerMinimum),
            Of(p.SanitizerMaximum)
        );

    private static AmountDto? Of(Amount? amount) => amount is { } a ? Wire.From(a) : null;

    private static DataPlate Plate(DataPlateDto p) =>
        new(
            At(MeasuringPoint.WashTank, p.WashMinimum, "plate.washMinimum"),
            At(MeasuringPoint.PumpedRinseTank, p.PumpedRinseMinimum, "plate.pumpedRinseMinimum"),
            At(MeasuringPoint.FinalRinseManifold, p.FinalRinseMinimum, "plate.finalRinseMinimum"),
            At(MeasuringPoint.FinalRinseManifold, p.FinalRinseMaximum, "plate.finalRinseMaximum"),
            At(MeasuringPoint.FinalRinseLine, p.PressureMinimum, "plate.pressureMinimum"),
            At(MeasuringPoint.FinalRinseLine, p.PressureMaximum, "plate.pressureMaximum"),
            At(MeasuringPoint.SanitizingSolution, p.SanitizerMinimum, "plate.sanitizerMinimum"),
            At(MeasuringPoint.SanitizingSolution, p.SanitizerMaximum, "plate.sanitizerMaximum")
        );

    private static SanitizerLabel Label(SanitizerLabelDto l) =>
        new(
            At(MeasuringPoint.SanitizingSolution, l.Minimum, "label.minimum"),
            At(MeasuringPoint.SanitizingSolution, l.Maximum, "label.maximum"),
            At(MeasuringPoint.SanitizingSolution, l.WaterHardnessMaximum, "label.waterHardnessMaximum"),
            At(MeasuringPoint.SanitizingSolution, l.TemperatureMinimum, "label.temperatureMinimum"),
            At(MeasuringPoint.SanitizingSolution, l.ContactTimeMinimum, "label.contactTimeMinimum"),
            At(MeasuringPoint.SanitizingSolution, l.AcidityMaximum, "label.acidityMaximum")
        );

    private static Amount? At(MeasuringPoint point, AmountDto? amount, string field) =>
        amount is null ? null : Wire.To(amount, point, field);
}
