namespace Rinsewright.Engine.Quantities;

/// <summary>A temperature on a scale. <c>default</c> is 0 K, a legal value: a missing reading is absent, never a default one.</summary>
public readonly record struct Temperature
{
    private readonly double kelvin;

    private Temperature(double kelvin) => this.kelvin = kelvin;

    /// <summary>Value in K.</summary>
    public double InKelvin => kelvin;

    /// <summary>Value in °C.</summary>
    public double InCelsius => Units.Celsius.FromSI(kelvin);

    /// <summary>Value in °F.</summary>
    public double InFahrenheit => Units.Fahrenheit.FromSI(kelvin);

    /// <summary>From °C.</summary>
    public static Temperature FromCelsius(double value) => new(Units.Celsius.ToSI(value));

    /// <summary>From °F.</summary>
    public static Temperature FromFahrenheit(double value) => new(Units.Fahrenheit.ToSI(value));
}
