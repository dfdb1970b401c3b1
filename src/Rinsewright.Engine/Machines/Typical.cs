using Rinsewright.Engine.Quantities;

namespace Rinsewright.Engine.Machines;

/// <summary>Typical figures in the units the trade writes them in.</summary>
internal static class Typical
{
    internal static Figure<Length> Metre(double value) => new(new Amount(value, Units.Metre));

    internal static Figure<Length> Millimetre(double value) => new(new Amount(value, Units.Millimetre));

    internal static Figure<Area> SquareMetre(double value) => new(new Amount(value, Units.SquareMetre));

    internal static Figure<Volume> Gallon(double value) => new(new Amount(value, Units.Gallon));

    internal static Figure<VolumeFlow> GallonPerMinute(double value) => new(new Amount(value, Units.GallonPerMinute));

    internal static Figure<MassFlow> GramPerSecond(double value) => new(new Amount(value, Units.GramPerSecond));

    internal static Figure<Mass> Kilogram(double value) => new(new Amount(value, Units.Kilogram));

    internal static Figure<Mass> Gram(double value) => new(new Amount(value, Units.Gram));

    internal static Figure<MassConcentration> GramPerLitre(double value) => new(new Amount(value, Units.GramPerLitre));

    internal static Figure<MassConcentration> MilligramPerLitre(double value) => new(new Amount(value, Units.MilligramPerLitre));

    internal static Figure<GaugePressure> Psi(double value) => new(new Amount(value, Units.Psi));

    internal static Figure<GaugePressure> Kilopascal(double value) => new(new Amount(value, Units.Kilopascal));

    internal static Figure<Temperature> Fahrenheit(double value) => new(new Amount(value, Units.Fahrenheit));

    internal static Figure<Temperature> Celsius(double value) => new(new Amount(value, Units.Celsius));

    internal static Figure<TemperatureDifference> FahrenheitDifference(double value) => new(new Amount(value, Units.FahrenheitDifference));

    internal static Figure<Power> Kilowatt(double value) => new(new Amount(value, Units.Kilowatt));

    internal static Figure<Power> Watt(double value) => new(new Amount(value, Units.Watt));

    internal static Figure<ElectricPotential> Volt(double value) => new(new Amount(value, Units.Volt));

    internal static Figure<HeatConductance> WattPerKelvin(double value) => new(new Amount(value, Units.WattPerKelvin));

    internal static Figure<HeatCapacity> KilojoulePerKelvin(double value) => new(new Amount(value, Units.KilojoulePerKelvin));

    internal static Figure<HeatTransferCoefficient> WattPerSquareMetreKelvin(double value) =>
        new(new Amount(value, Units.WattPerSquareMetreKelvin));

    internal static Figure<Ratio> Share(double value) => new(new Amount(value, Units.One));

    internal static Figure<Ratio> Percent(double value) => new(new Amount(value, Units.Percent));

    internal static Figure<Speed> MetrePerSecond(double value) => new(new Amount(value, Units.MetrePerSecond));

    internal static Figure<Duration> Second(double value) => new(new Amount(value, Units.Second));
}
