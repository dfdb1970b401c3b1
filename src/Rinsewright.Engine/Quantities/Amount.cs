using System.Globalization;

namespace Rinsewright.Engine.Quantities;

/// <summary>
/// A value as somebody wrote it, with the unit it was written in. Readings and printed limits stay amounts, because a limit printed
/// in two rounded units is judged in the unit of the reading; computing uses the quantity types.
/// </summary>
/// <param name="Value">Finite number, in <paramref name="Unit"/>.</param>
/// <param name="Unit">The unit it was written in.</param>
public readonly record struct Amount(double Value, Unit Unit)
{
    /// <summary>The value in the SI unit of its dimension.</summary>
    public double SI => Unit.ToSI(Value);

    /// <summary>The same amount written in another unit of the same dimension.</summary>
    /// <exception cref="ArgumentException">The units measure different things.</exception>
    public Amount In(Unit unit) =>
        unit == Unit ? this
        : unit.Dimension == Unit.Dimension ? new Amount(unit.FromSI(SI), unit)
        : throw new ArgumentException($"{Unit.Ucum} measures {Unit.Dimension}, {unit.Ucum} measures {unit.Dimension}.", nameof(unit));

    /// <summary>Number, no-break space, symbol, in the invariant culture; for logs and tests. Screens use their own words.</summary>
    public override string ToString() => $"{Value.ToString("0.######", CultureInfo.InvariantCulture)} {Unit.Symbol}";
}
