using Rinsewright.Engine.Quantities;

namespace Rinsewright.Engine.Bench;

/// <summary>Fields that several tools ask for, with what is usual (common practice, no source, unless a README says otherwise).</summary>
internal static class FieldsOf
{
    public static BenchField Number(string id, double? usual, double low, double high, double nudge = 0, bool optional = false) =>
        new(id, Units.One, usual, low, high, nudge, optional);

    public static BenchField Tank(double? gallons = 18.5) => new("tank", Units.Gallon, gallons, 0.5, 500, 1);

    public static BenchField RinsePerRack(double? gallons = 0.89) => new("rinsePerRack", Units.Gallon, gallons, 0.01, 20, 0.1);

    public static BenchField Strength(double? grams = 1.5, bool optional = false) =>
        new("strength", Units.GramPerLitre, grams, 0, 50, 0.1, optional);

    public static BenchField Active() => new("active", Units.Percent, 20, 0.5, 80, 1);

    public static BenchField At(string id, double? fahrenheit, double low = 32, double high = 205, bool optional = false) =>
        new(id, Units.Fahrenheit, fahrenheit, low, high, 1, optional);

    public static BenchField Hardness(bool optional = false) => new("hardness", Units.GrainPerGallon, null, 0, 120, 1, optional);

    public static BenchField Flow(string id, double? gpm, double nudge = 0.1) => new(id, Units.GallonPerMinute, gpm, 0.001, 500, nudge);

    public static BenchField Pressure(string id, double? psi, double low = 0.1) => new(id, Units.Psi, psi, low, 200, 1);

    public static BenchField Power(string id, double? kilowatt, bool optional = false) =>
        new(id, Units.Kilowatt, kilowatt, 0.1, 200, 1, optional);
}
