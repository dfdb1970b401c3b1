using Rinsewright.Engine.Records;

namespace Rinsewright.Engine.Sanitization;

/// <summary>A set of limits with its provenance: what is in force at a place.</summary>
/// <param name="Id">Short id, for example <c>fda-food-code</c>.</param>
/// <param name="Title">Title people know.</param>
/// <param name="Jurisdiction">Where it is in force.</param>
/// <param name="Edition">Edition or date of the text.</param>
/// <param name="BasedOn">Id of the set it adopts; null where it stands alone.</param>
/// <param name="Limits">Its limits.</param>
/// <param name="Remarks">Differences on record and warnings about the text, in words as data.</param>
public sealed record RuleSet(
    string Id,
    string Title,
    string Jurisdiction,
    string Edition,
    string? BasedOn,
    IReadOnlyList<Limit> Limits,
    IReadOnlyList<string> Remarks
);
