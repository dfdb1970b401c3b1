namespace Rinsewright.Engine.Quantities;

/// <summary>Electric current. SI unit A. Reading it on live parts is work for a licensed person. <c>default</c> is 0 A.</summary>
public readonly record struct ElectricCurrent : IQuantity<ElectricCurrent>
{
    private readonly double si;

    private ElectricCurrent(double si) => this.si = Guard.Finite(si, nameof(ElectricCurrent));

    /// <inheritdoc/>
    public static Dimension Dimension => Dimension.ElectricCurrent;

    /// <summary>Value in A.</summary>
    public double InAmpere => Units.Ampere.FromSI(si);

    /// <summary>Value in mA.</summary>
    public double InMilliampere => Units.Milliampere.FromSI(si);

    /// <summary>From A.</summary>
    public static ElectricCurrent FromAmpere(double value) => new(Units.Ampere.ToSI(value));

    /// <summary>From mA.</summary>
    public static ElectricCurrent FromMilliampere(double value) => new(Units.Milliampere.ToSI(value));

    /// <inheritdoc/>
    public static ElectricCurrent From(Amount amount) => new(Guard.Measures(amount, Dimension));

    /// <inheritdoc/>
    public Amount In(Unit unit) => Guard.In(si, unit, Dimension);

    /// <summary>Sum.</summary>
    public static ElectricCurrent operator +(ElectricCurrent left, ElectricCurrent right) => new(left.si + right.si);

    /// <summary>Difference.</summary>
    public static ElectricCurrent operator -(ElectricCurrent left, ElectricCurrent right) => new(left.si - right.si);

    /// <summary>Multiple.</summary>
    public static ElectricCurrent operator *(ElectricCurrent left, double right) => new(left.si * right);

    /// <summary>Multiple.</summary>
    public static ElectricCurrent operator *(double left, ElectricCurrent right) => new(left * right.si);

    /// <summary>Part.</summary>
    public static ElectricCurrent operator /(ElectricCurrent left, double right) => new(left.si / right);

    /// <summary>How many times the one goes into the other.</summary>
    public static Ratio operator /(ElectricCurrent left, ElectricCurrent right) => Ratio.FromFraction(left.si / right.si);

    /// <summary>Less.</summary>
    public static bool operator <(ElectricCurrent left, ElectricCurrent right) => left.si < right.si;

    /// <summary>More.</summary>
    public static bool operator >(ElectricCurrent left, ElectricCurrent right) => left.si > right.si;

    /// <summary>Less or the same.</summary>
    public static bool operator <=(ElectricCurrent left, ElectricCurrent right) => left.si <= right.si;

    /// <summary>More or the same.</summary>
    public static bool operator >=(ElectricCurrent left, ElectricCurrent right) => left.si >= right.si;

    /// <inheritdoc/>
    public int CompareTo(ElectricCurrent other) => si.CompareTo(other.si);

    /// <summary>For logs and tests, in the invariant culture.</summary>
    public override string ToString() => In(Units.Ampere).ToString();
}
