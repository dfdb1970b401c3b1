namespace Rinsewright.Engine.Quantities;

/// <summary>
/// One unit of one dimension. SI value = (value + <see cref="Offset"/>) × <see cref="Numerator"/> / <see cref="Denominator"/>;
/// numerator and denominator are kept apart so that exact definitions stay exact.
/// </summary>
/// <param name="Ucum">UCUM code, used in files and JSON, for example <c>[degF]</c>.</param>
/// <param name="Symbol">What people read, for example <c>°F</c>.</param>
/// <param name="Dimension">What it measures.</param>
/// <param name="Numerator">Factor to SI, upper part.</param>
/// <param name="Denominator">Factor to SI, lower part.</param>
/// <param name="Offset">Added before scaling; nonzero for temperature scales only.</param>
/// <param name="Digits">Decimals that a reading in this unit is sensibly shown with.</param>
/// <param name="Spellings">Other ways in which people and files write it; compared without case and spaces.</param>
public sealed record Unit(
    string Ucum,
    string Symbol,
    Dimension Dimension,
    double Numerator,
    double Denominator = 1,
    double Offset = 0,
    int Digits = 1,
    params string[] Spellings
)
{
    /// <summary>Converts a value in this unit to the SI unit of its dimension.</summary>
    public double ToSI(double value) => (value + Offset) * Numerator / Denominator;

    /// <summary>Converts a value in the SI unit of the dimension to this unit.</summary>
    public double FromSI(double si) => (si * Denominator / Numerator) - Offset;

    /// <summary>The UCUM code.</summary>
    public override string ToString() => Ucum;
}
