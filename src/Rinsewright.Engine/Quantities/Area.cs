namespace Rinsewright.Engine.Quantities;

/// <summary>Area, as of a belt or a heating surface. SI unit m². <c>default</c> is 0 m².</summary>
public readonly record struct Area : IQuantity<Area>
{
    private readonly double si;

    private Area(double si) => this.si = Guard.Finite(si, nameof(Area));

    /// <inheritdoc/>
    public static Dimension Dimension => Dimension.Area;

    /// <summary>Value in m².</summary>
    public double InSquareMetre => Units.SquareMetre.FromSI(si);

    /// <summary>Value in in².</summary>
    public double InSquareInch => Units.SquareInch.FromSI(si);

    /// <summary>Value in ft².</summary>
    public double InSquareFoot => Units.SquareFoot.FromSI(si);

    /// <summary>From m².</summary>
    public static Area FromSquareMetre(double value) => new(Units.SquareMetre.ToSI(value));

    /// <summary>From in².</summary>
    public static Area FromSquareInch(double value) => new(Units.SquareInch.ToSI(value));

    /// <summary>From ft².</summary>
    public static Area FromSquareFoot(double value) => new(Units.SquareFoot.ToSI(value));

    /// <inheritdoc/>
    public static Area From(Amount amount) => new(Guard.Measures(amount, Dimension));

    /// <inheritdoc/>
    public Amount In(Unit unit) => Guard.In(si, unit, Dimension);

    /// <summary>Sum.</summary>
    public static Area operator +(Area left, Area right) => new(left.si + right.si);

    /// <summary>Difference.</summary>
    public static Area operator -(Area left, Area right) => new(left.si - right.si);

    /// <summary>Multiple.</summary>
    public static Area operator *(Area left, double right) => new(left.si * right);

    /// <summary>Multiple.</summary>
    public static Area operator *(double left, Area right) => new(left * right.si);

    /// <summary>Part.</summary>
    public static Area operator /(Area left, double right) => new(left.si / right);

    /// <summary>How many times the one goes into the other.</summary>
    public static Ratio operator /(Area left, Area right) => Ratio.FromFraction(left.si / right.si);

    /// <summary>Volume of a prism.</summary>
    public static Volume operator *(Area left, Length right) => Volume.FromCubicMetre(left.si * right.InMetre);

    /// <summary>Other side of a rectangle.</summary>
    public static Length operator /(Area left, Length right) => Length.FromMetre(left.si / right.InMetre);

    /// <summary>Less.</summary>
    public static bool operator <(Area left, Area right) => left.si < right.si;

    /// <summary>More.</summary>
    public static bool operator >(Area left, Area right) => left.si > right.si;

    /// <summary>Less or the same.</summary>
    public static bool operator <=(Area left, Area right) => left.si <= right.si;

    /// <summary>More or the same.</summary>
    public static bool operator >=(Area left, Area right) => left.si >= right.si;

    /// <inheritdoc/>
    public int CompareTo(Area other) => si.CompareTo(other.si);

    /// <summary>For logs and tests, in the invariant culture.</summary>
    public override string ToString() => In(Units.SquareMetre).ToString();
}
