namespace Rinsewright.Engine.Quantities;

/// <summary>Accumulated equivalent time at 80 °C with z = 10 °C (A0). SI unit s. <c>default</c> is no dose.</summary>
public readonly record struct EquivalentTime : IQuantity<EquivalentTime>
{
    private readonly double si;

    private EquivalentTime(double si) => this.si = Guard.Finite(si, nameof(EquivalentTime));

    /// <inheritdoc/>
    public static Dimension Dimension => Dimension.EquivalentTime;

    /// <summary>Value in s at 80 °C.</summary>
    public double InSecond => Units.A0Second.FromSI(si);

    /// <summary>From s at 80 °C.</summary>
    public static EquivalentTime FromSecond(double value) => new(Units.A0Second.ToSI(value));

    /// <inheritdoc/>
    public static EquivalentTime From(Amount amount) => new(Guard.Measures(amount, Dimension));

    /// <inheritdoc/>
    public Amount In(Unit unit) => Guard.In(si, unit, Dimension);

    /// <summary>Sum.</summary>
    public static EquivalentTime operator +(EquivalentTime left, EquivalentTime right) => new(left.si + right.si);

    /// <summary>Difference.</summary>
    public static EquivalentTime operator -(EquivalentTime left, EquivalentTime right) => new(left.si - right.si);

    /// <summary>Less.</summary>
    public static bool operator <(EquivalentTime left, EquivalentTime right) => left.si < right.si;

    /// <summary>More.</summary>
    public static bool operator >(EquivalentTime left, EquivalentTime right) => left.si > right.si;

    /// <summary>Less or the same.</summary>
    public static bool operator <=(EquivalentTime left, EquivalentTime right) => left.si <= right.si;

    /// <summary>More or the same.</summary>
    public static bool operator >=(EquivalentTime left, EquivalentTime right) => left.si >= right.si;

    /// <inheritdoc/>
    public int CompareTo(EquivalentTime other) => si.CompareTo(other.si);

    /// <summary>For logs and tests, in the invariant culture.</summary>
    public override string ToString() => In(Units.A0Second).ToString();
}
