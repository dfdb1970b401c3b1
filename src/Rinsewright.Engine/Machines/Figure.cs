using Rinsewright.Engine.Quantities;

namespace Rinsewright.Engine.Machines;

/// <summary>Where a figure of a machine comes from, strongest first.</summary>
public enum Provenance
{
    /// <summary>Read on this machine, with date and reading.</summary>
    Measured,

    /// <summary>Printed on its data plate.</summary>
    DataPlate,

    /// <summary>Typical of its kind: nobody has looked. Shown as such wherever it is used.</summary>
    Typical,
}

/// <summary>One figure of a machine as it was written, with where it comes from.</summary>
/// <typeparam name="T">What it measures.</typeparam>
/// <param name="Written">Value and unit as written; kept, so that a file gives back what was typed.</param>
/// <param name="Basis">Where it comes from.</param>
/// <param name="Source">The reading or place it was taken from, in the words of whoever wrote it; null where nothing was said.</param>
/// <param name="On">Day of the reading; null where not measured.</param>
/// <param name="Uncertainty">
/// Half-width ± within which the true value lies nineteen times of twenty, in steps of the unit as written, above 0: 3 of 166 °F is ± 3 °F; null for
/// what is usual of its kind.
/// </param>
public readonly record struct Figure<T>(
    Amount Written,
    Provenance Basis = Provenance.Typical,
    string? Source = null,
    DateOnly? On = null,
    double? Uncertainty = null
)
    where T : struct, IQuantity<T>
{
    /// <summary>The figure as a quantity.</summary>
    /// <exception cref="ArgumentException">The unit measures something else.</exception>
    /// <exception cref="ArgumentOutOfRangeException">Below the least there can be.</exception>
    public T Value => T.From(Written);
}
