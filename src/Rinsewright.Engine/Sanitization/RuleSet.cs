using Rinsewright.Engine.Quantities;
using Rinsewright.Engine.Records;

namespace Rinsewright.Engine.Sanitization;

/// <summary>A set of limits with its provenance: what is in force at a place.</summary>
/// <param name="Id">Short id, for example <c>fda-food-code</c>.</param>
/// <param name="Title">Title people know.</param>
/// <param name="Jurisdiction">Where it is in force.</param>
/// <param name="Edition">Edition or date of the text.</param>
/// <param name="BasedOn">Id of the set it adopts; null where it stands alone.</param>
/// <param name="Limits">Its limits.</param>
/// <param name="Sanitizers">Rows of its sanitizer table.</param>
/// <param name="Contact">Its contact times.</param>
/// <param name="Instruments">What it asks of instruments.</param>
/// <param name="Remarks">Differences on record and warnings about the text, in words as data.</param>
public sealed record RuleSet(
    string Id,
    string Title,
    string Jurisdiction,
    string Edition,
    string? BasedOn,
    IReadOnlyList<Limit> Limits,
    IReadOnlyList<SanitizerRow> Sanitizers,
    IReadOnlyList<ContactTime> Contact,
    IReadOnlyList<InstrumentRule> Instruments,
    IReadOnlyList<string> Remarks
)
{
    /// <summary>What it asks of washing and sanitizing by hand, in a sink; empty where it says nothing.</summary>
    public IReadOnlyList<HandRule> ByHand { get; init; } = [];
}

/// <summary>A step of washing by hand that a rule limits.</summary>
public enum HandStep
{
    /// <summary>Washing with detergent.</summary>
    Wash,

    /// <summary>Sanitizing by immersion.</summary>
    Sanitize,
}

/// <summary>What a rule asks of one step by hand. Of a sanitizer it stands in front of the set's table.</summary>
/// <param name="Step">Step.</param>
/// <param name="Method">How it sanitizes; null of the wash.</param>
/// <param name="Minimum">Least strength; null where the set's table or the label says it.</param>
/// <param name="TemperatureMinimum">Least temperature, in every unit printed; empty where the set's table says it.</param>
/// <param name="Least">Least time under the surface; null where the set's contact times say it.</param>
/// <param name="Citation">Where it is printed.</param>
public sealed record HandRule(
    HandStep Step,
    SanitizingMethod? Method,
    Amount? Minimum,
    IReadOnlyList<Amount> TemperatureMinimum,
    Amount? Least,
    Citation Citation
);

/// <summary>One row of a sanitizer table: a concentration range at an acidity, and the temperature it needs.</summary>
/// <param name="Method">Sanitizer.</param>
/// <param name="Minimum">Least concentration of the row; null where the product's label says it.</param>
/// <param name="Below">Concentration at which the next row starts; null for the last row.</param>
/// <param name="AcidityMaximum">Highest pH of the row; null where the table names none.</param>
/// <param name="TemperatureMinimum">Least temperature, in every unit printed.</param>
/// <param name="HardnessMaximum">Hardest water, in every unit printed; empty where the table names none.</param>
/// <param name="Citation">Where it is printed.</param>
public sealed record SanitizerRow(
    SanitizingMethod Method,
    Amount? Minimum,
    Amount? Below,
    double? AcidityMaximum,
    IReadOnlyList<Amount> TemperatureMinimum,
    IReadOnlyList<Amount> HardnessMaximum,
    Citation Citation
);

/// <summary>A contact time and the conditions it is good for.</summary>
/// <param name="Method">Sanitizer.</param>
/// <param name="Least">Least contact time.</param>
/// <param name="Minimum">Least concentration it is good for; null for any.</param>
/// <param name="AcidityMaximum">Highest pH it is good for; null for any.</param>
/// <param name="TemperatureMinimum">Least temperature it is good for, in every unit printed; empty for any.</param>
/// <param name="Citation">Where it is printed.</param>
public sealed record ContactTime(
    SanitizingMethod Method,
    Amount Least,
    Amount? Minimum,
    double? AcidityMaximum,
    IReadOnlyList<Amount> TemperatureMinimum,
    Citation Citation
);

/// <summary>What of an instrument a rule limits.</summary>
public enum InstrumentAspect
{
    /// <summary>Half-width ± of its error.</summary>
    Uncertainty,

    /// <summary>Smallest step it shows.</summary>
    Division,
}

/// <summary>What a rule asks of an instrument.</summary>
/// <param name="Measures">What the instrument reads.</param>
/// <param name="Aspect">What is limited.</param>
/// <param name="Maximum">The most allowed, in every unit printed.</param>
/// <param name="Citation">Where it is printed.</param>
public sealed record InstrumentRule(Dimension Measures, InstrumentAspect Aspect, IReadOnlyList<Amount> Maximum, Citation Citation);
