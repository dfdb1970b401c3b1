using Rinsewright.Engine.Sanitization;

namespace Rinsewright.Contracts.Sanitization;

/// <summary>What a person set, as the engine's terms.</summary>
public static class ProofTermsMapping
{
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

    private static DataPlate Plate(DataPlateDto p) =>
        new(
            Wire.ToOptional(p.WashMinimum, "plate.washMinimum"),
            Wire.ToOptional(p.PumpedRinseMinimum, "plate.pumpedRinseMinimum"),
            Wire.ToOptional(p.FinalRinseMinimum, "plate.finalRinseMinimum"),
            Wire.ToOptional(p.FinalRinseMaximum, "plate.finalRinseMaximum"),
            Wire.ToOptional(p.PressureMinimum, "plate.pressureMinimum"),
            Wire.ToOptional(p.PressureMaximum, "plate.pressureMaximum"),
            Wire.ToOptional(p.SanitizerMinimum, "plate.sanitizerMinimum"),
            Wire.ToOptional(p.SanitizerMaximum, "plate.sanitizerMaximum")
        );

    private static SanitizerLabel Label(SanitizerLabelDto l) =>
        new(
            Wire.ToOptional(l.Minimum, "label.minimum"),
            Wire.ToOptional(l.Maximum, "label.maximum"),
            Wire.ToOptional(l.WaterHardnessMaximum, "label.waterHardnessMaximum"),
            Wire.ToOptional(l.TemperatureMinimum, "label.temperatureMinimum"),
            Wire.ToOptional(l.ContactTimeMinimum, "label.contactTimeMinimum"),
            Wire.ToOptional(l.AcidityMaximum, "label.acidityMaximum")
        );
}
