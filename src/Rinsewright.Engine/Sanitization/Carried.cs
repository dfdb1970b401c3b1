using Rinsewright.Engine.Records;

namespace Rinsewright.Engine.Sanitization;

/// <summary>A proof made before, carried into another as evidence beside its readings.</summary>
/// <param name="Outcome">What it proves.</param>
/// <param name="Because">In a sentence.</param>
/// <param name="ShowsWare">Whether it shows the surface of the ware.</param>
internal sealed record Carried(Outcome Outcome, Statement Because, bool ShowsWare);
