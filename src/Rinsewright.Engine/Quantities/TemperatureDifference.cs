namespace Rinsewright.Engine.Quantities;

/// <summary>The difference of two temperatures.</summary>
public readonly record struct TemperatureDifference
{
    private readonly double kelvin;

    private TemperatureDifference(double kelvin) => this.kelvin = kelvin;

    /// <summary>Value in steps of °C.</summary>
    public double InCelsius => kelvin;

    /// <summary>Value in steps of °F.</summary>
    public double InFahrenheit => Units.FahrenheitDifference.FromSI(kelvin);

    /// <summary>From steps of °C.</summary>
    public static TemperatureDifference FromCelsius(double value) => new(value);

    /// <summary>From steps of °F.</summary>
    public static TemperatureDifference FromFahrenheit(double value) => new(Units.FahrenheitDifference.ToSI(value));
}
