using Rinsewright.Engine.Machines;
using Rinsewright.Engine.Quantities;

namespace Rinsewright.Contracts.Machines;

/// <summary>One figure of a machine, whatever it measures, for lists and forms.</summary>
/// <param name="Path">Its place in the machine file, for example <c>tanks.wash.capacity</c>.</param>
/// <param name="Word">Key of its name in the language files.</param>
/// <param name="Dimension">What it measures.</param>
/// <param name="Written">Value and unit as written; null where an optional figure is absent.</param>
/// <param name="Basis">Where it comes from; typical where absent.</param>
/// <param name="Source">The reading or place it was taken from.</param>
/// <param name="On">Day of the reading.</param>
public sealed record FigureView(
    string Path,
    string Word,
    Dimension Dimension,
    Amount? Written,
    Provenance Basis,
    string? Source = null,
    DateOnly? On = null
);
