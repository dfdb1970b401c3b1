using Rinsewright.Engine.Quantities;
using Rinsewright.Engine.Records;

namespace Rinsewright.Engine.Sanitization;

/// <summary>Which limits hold for one machine: the rule set's, with the data plate's in front.</summary>
public static class LimitsInForce
{
    /// <summary>
    /// The limits that apply. A figure on the data plate takes the place of the rule set's figure for the same point, quantity and sense, except
    /// where the rule asks for both (flow pressure: inside the plate's range <i>and</i> the code's).
    /// </summary>
    public static IReadOnlyList<Limit> For(ProofTerms terms)
    {
        var plate = FromPlate(terms.Plate);
        return
        [
            .. plate,
            .. terms
                .Rules.Limits.Where(l => l.AppliesTo(terms.Machine, terms.Method))
                .Where(l => l.BesideDataPlate || !plate.Exists(p => p.Point == l.Point && p.Dimension == l.Dimension && p.Sense == l.Sense))
                .OrderBy(l => l.Force),
        ];
    }

    private static List<Limit> FromPlate(DataPlate? plate)
    {
        var limits = new List<Limit>();
        if (plate is null)
        {
            return limits;
        }

        void Add(string id, MeasuringPoint point, LimitSense sense, Amount? figure)
        {
            if (figure is { } f)
            {
                limits.Add(
                    new Limit(
                        id,
                        point,
                        sense,
                        [f],
                        LimitForce.DataPlate,
                        new Citation("data-plate", "", "Data plate", Basis: Basis.DataPlate),
                        [],
                        []
                    )
                );
            }
        }

        Add("plate-wash", MeasuringPoint.WashTank, LimitSense.Minimum, plate.WashMinimum);
        Add("plate-pumped-rinse", MeasuringPoint.PumpedRinseTank, LimitSense.Minimum, plate.PumpedRinseMinimum);
        Add("plate-final-rinse", MeasuringPoint.FinalRinseManifold, LimitSense.Minimum, plate.FinalRinseMinimum);
        Add("plate-final-rinse-maximum", MeasuringPoint.FinalRinseManifold, LimitSense.Maximum, plate.FinalRinseMaximum);
        Add("plate-flow-pressure-minimum", MeasuringPoint.FinalRinseLine, LimitSense.Minimum, plate.PressureMinimum);
        Add("plate-flow-pressure-maximum", MeasuringPoint.FinalRinseLine, LimitSense.Maximum, plate.PressureMaximum);
        Add("plate-sanitizer-minimum", MeasuringPoint.SanitizingSolution, LimitSense.Minimum, plate.SanitizerMinimum);
        Add("plate-sanitizer-maximum", MeasuringPoint.SanitizingSolution, LimitSense.Maximum, plate.SanitizerMaximum);
        return limits;
    }
}
