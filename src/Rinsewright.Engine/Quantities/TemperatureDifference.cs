namespace Rinsewright.Engine.Quantities;

/// <summary>The difference of two temperatures; never a point on a scale. SI unit K. <c>default</c> is no difference.</summary>
public readonly record struct TemperatureDifference : IQuantity<TemperatureDifference>
{
    private readonly double si;

    private TemperatureDifference(double si) => this.si = Guard.Finite(si, nameof(TemperatureDifference));

    /// <inheritdoc/>
    public static Dimension Dimension => Dimension.TemperatureDifference;

    /// <summary>Value in °C (the same as K).</summary>
    public double InCelsius => Units.CelsiusDifference.FromSI(si);

    /// <summary>Value in °F.</summary>
    public double InFahrenheit => Units.FahrenheitDifference.FromSI(si);

    /// <summary>From °C (the same as K).</summary>
    public static TemperatureDifference FromCelsius(double value) => new(Units.CelsiusDifference.ToSI(value));

    /// <summary>From °F.</summary>
    public static TemperatureDifference FromFahrenheit(double value) => new(Units.FahrenheitDifference.ToSI(value));

    /// <inheritdoc/>
    public static TemperatureDifference From(Amount amount) => new(Guard.Measures(amount, Dimension));

    /// <inheritdoc/>
    public Amount In(Unit unit) => Guard.In(si, unit, Dimension);

    /// <summary>Sum.</summary>
    public static TemperatureDifference operator +(TemperatureDifference left, TemperatureDifference right) => new(left.si + right.si);

    /// <summary>Difference.</summary>
    public static TemperatureDifference operator -(TemperatureDifference left, TemperatureDifference right) => new(left.si - right.si);

    /// <summary>The opposite difference.</summary>
    public static TemperatureDifference operator -(TemperatureDifference value) => new(-value.si);

    /// <summary>Multiple.</summary>
    public static TemperatureDifference operator *(TemperatureDifference left, double right) => new(left.si * right);

    /// <summary>Multiple.</summary>
    public static TemperatureDifference operator *(double left, TemperatureDifference right) => new(left * right.si);

    /// <summary>Part.</summary>
    public static TemperatureDifference operator /(TemperatureDifference left, double right) => new(left.si / right);

    /// <summary>How many times the one goes into the other.</summary>
    public static Ratio operator /(TemperatureDifference left, TemperatureDifference right) => Ratio.FromFraction(left.si / right.si);

    /// <summary>Less.</summary>
    public static bool operator <(TemperatureDifference left, TemperatureDifference right) => left.si < right.si;

    /// <summary>More.</summary>
    public static bool operator >(TemperatureDifference left, TemperatureDifference right) => left.si > right.si;

    /// <summary>Less or the same.</summary>
    public static bool operator <=(TemperatureDifference left, TemperatureDifference right) => left.si <= right.si;

    /// <summary>More or the same.</summary>
    public static bool operator >=(TemperatureDifference left, TemperatureDifference right) => left.si >= right.si;

    /// <inheritdoc/>
    public int CompareTo(TemperatureDifference other) => si.CompareTo(other.si);

    /// <summary>For logs and tests, in the invariant culture.</summary>
    public override string ToString() => In(Units.CelsiusDifference).ToString();
}
