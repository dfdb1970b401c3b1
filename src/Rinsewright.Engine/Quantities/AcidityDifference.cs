namespace Rinsewright.Engine.Quantities;

/// <summary>The difference of two acidities on the pH scale, as of water that ran off ware and the water supplied; never a pH itself. <c>default</c> is no difference.</summary>
public readonly record struct AcidityDifference : IQuantity<AcidityDifference>
{
    private readonly double si;

    private AcidityDifference(double si) => this.si = Guard.Finite(si, nameof(AcidityDifference));

    /// <inheritdoc/>
    public static Dimension Dimension => Dimension.AcidityDifference;

    /// <summary>Value in pH.</summary>
    public double InPH => Units.PHDifference.FromSI(si);

    /// <summary>From pH.</summary>
    public static AcidityDifference FromPH(double value) => new(Units.PHDifference.ToSI(value));

    /// <inheritdoc/>
    public static AcidityDifference From(Amount amount) => new(Guard.Measures(amount, Dimension));

    /// <inheritdoc/>
    public Amount In(Unit unit) => Guard.In(si, unit, Dimension);

    /// <summary>Sum.</summary>
    public static AcidityDifference operator +(AcidityDifference left, AcidityDifference right) => new(left.si + right.si);

    /// <summary>Difference.</summary>
    public static AcidityDifference operator -(AcidityDifference left, AcidityDifference right) => new(left.si - right.si);

    /// <summary>The opposite difference.</summary>
    public static AcidityDifference operator -(AcidityDifference value) => new(-value.si);

    /// <summary>Less.</summary>
    public static bool operator <(AcidityDifference left, AcidityDifference right) => left.si < right.si;

    /// <summary>More.</summary>
    public static bool operator >(AcidityDifference left, AcidityDifference right) => left.si > right.si;

    /// <summary>Less or the same.</summary>
    public static bool operator <=(AcidityDifference left, AcidityDifference right) => left.si <= right.si;

    /// <summary>More or the same.</summary>
    public static bool operator >=(AcidityDifference left, AcidityDifference right) => left.si >= right.si;

    /// <inheritdoc/>
    public int CompareTo(AcidityDifference other) => si.CompareTo(other.si);

    /// <summary>For logs and tests, in the invariant culture.</summary>
    public override string ToString() => In(Units.PHDifference).ToString();
}
