namespace Rinsewright.Engine.Quantities;

/// <summary>
/// A temperature on a scale: a point, so two of them have a difference but no sum. SI unit K, never below absolute zero. <c>default</c> is 0 K, a
/// legal value: a missing reading is absent, never a default one.
/// </summary>
public readonly record struct Temperature : IQuantity<Temperature>
{
    private readonly double si;

    private Temperature(double si) => this.si = Guard.NotNegative(si, nameof(Temperature));

    /// <inheritdoc/>
    public static Dimension Dimension => Dimension.Temperature;

    /// <summary>Value in K.</summary>
    public double InKelvin => si;

    /// <summary>Value in °C.</summary>
    public double InCelsius => Units.Celsius.FromSI(si);

    /// <summary>Value in °F.</summary>
    public double InFahrenheit => Units.Fahrenheit.FromSI(si);

    /// <summary>From K.</summary>
    public static Temperature FromKelvin(double value) => new(value);

    /// <summary>From °C.</summary>
    public static Temperature FromCelsius(double value) => new(Units.Celsius.ToSI(value));

    /// <summary>From °F.</summary>
    public static Temperature FromFahrenheit(double value) => new(Units.Fahrenheit.ToSI(value));

    /// <inheritdoc/>
    public static Temperature From(Amount amount) => new(Guard.Measures(amount, Dimension));

    /// <inheritdoc/>
    public Amount In(Unit unit) => Guard.In(si, unit, Dimension);

    /// <summary>How much hotter the one is than the other.</summary>
    public static TemperatureDifference operator -(Temperature left, Temperature right) =>
        TemperatureDifference.FromCelsius(left.si - right.si);

    /// <summary>The point that much hotter.</summary>
    public static Temperature operator +(Temperature left, TemperatureDifference right) => new(left.si + right.InCelsius);

    /// <summary>The point that much cooler.</summary>
    public static Temperature operator -(Temperature left, TemperatureDifference right) => new(left.si - right.InCelsius);

    /// <summary>Cooler.</summary>
    public static bool operator <(Temperature left, Temperature right) => left.si < right.si;

    /// <summary>Hotter.</summary>
    public static bool operator >(Temperature left, Temperature right) => left.si > right.si;

    /// <summary>Cooler or the same.</summary>
    public static bool operator <=(Temperature left, Temperature right) => left.si <= right.si;

    /// <summary>Hotter or the same.</summary>
    public static bool operator >=(Temperature left, Temperature right) => left.si >= right.si;

    /// <inheritdoc/>
    public int CompareTo(Temperature other) => si.CompareTo(other.si);

    /// <summary>For logs and tests, in the invariant culture.</summary>
    public override string ToString() => In(Units.Celsius).ToString();
}
