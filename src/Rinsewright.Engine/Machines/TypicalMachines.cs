using Rinsewright.Engine.Quantities;
using Rinsewright.Engine.Sanitization;
using static Rinsewright.Engine.Machines.Typical;

namespace Rinsewright.Engine.Machines;

/// <summary>
/// A machine of each kind as it usually is, every figure <see cref="Provenance.Typical"/>. A starting point until the plate is read and the machine measured:
/// volumes, pump flows, shell losses, air and film are engineering estimates, no source; set points stand above the code limits [wac-246-215, 04545 to 04560].
/// </summary>
public static partial class TypicalMachines
{
    private static readonly Dictionary<MachineKind, Machine> ByKind = new()
    {
        [MachineKind.Undercounter] = Undercounter(),
        [MachineKind.DoorHotWater] = DoorHotWater(),
        [MachineKind.DoorChemical] = DoorChemical(),
        [MachineKind.RackConveyorOneTank] = OneTank(),
        [MachineKind.RackConveyorTwoTank] = TwoTank(),
        [MachineKind.RackConveyorThreeTank] = ThreeTank(),
        [MachineKind.Flight] = Flight(),
    };

    /// <summary>The typical machine of a kind; always the same one.</summary>
    /// <exception cref="ArgumentOutOfRangeException">No such kind.</exception>
    public static Machine Of(MachineKind kind) =>
        ByKind.TryGetValue(kind, out var machine) ? machine : throw new ArgumentOutOfRangeException(nameof(kind), kind, "no such kind");

    private static Supply Building() =>
        new()
        {
            Water = Fahrenheit(140),
            StaticPressure = Psi(50),
            Voltage = Volt(208),
            Room = Celsius(24),
            Humidity = Share(0.5),
        };

    // Ten plates of 9 in and a plastic rack of 20 in, after the usual test load.
    private static Ware Plates(double inCelsius = 24) =>
        new()
        {
            RackLength = Metre(0.508),
            Pieces = 10,
            Material = "ceramic",
            Thickness = Millimetre(5.9),
            Area = SquareMetre(0.082),
            In = Celsius(inCelsius),
            Soil = Gram(5),
            CarryOver = Kilogram(0.15),
            RackMass = Kilogram(1.6),
            RackArea = SquareMetre(0.6),
            RackThickness = Millimetre(3),
        };

    private static Heater Elements(double kilowatt, Connection connection = Connection.Delta) =>
        new()
        {
            Kind = HeaterKind.Electric,
            Rated = Kilowatt(kilowatt),
            Connection = connection,
            RatedVoltage = Volt(208),
        };

    private static Thermostat Set(double fahrenheit, double band) => new(Fahrenheit(fahrenheit), FahrenheitDifference(band));

    private static Fill Valve(double gallonPerMinute, double lowWater = 0.5) =>
        new(GallonPerMinute(gallonPerMinute), Share(0.97), Share(0.9), Share(lowWater));

    private static Pump PumpOf(double gallonPerMinute, double watt, double transfer, double? crossPercent = null) =>
        new(
            GallonPerMinute(gallonPerMinute),
            Kilopascal(35),
            Watt(watt),
            WattPerSquareMetreKelvin(transfer),
            crossPercent is { } cross ? Percent(cross) : null
        );

    private static FinalRinse Fresh(double gallonPerMinute, double hit, double air) =>
        new()
        {
            Flow = GallonPerMinute(gallonPerMinute),
            Pressure = Psi(20),
            Hit = Share(hit),
            Transfer = WattPerSquareMetreKelvin(3000),
            Air = GramPerSecond(air),
            Captured = Share(1),
        };

    private static Feeder Detergent(double gramPerSecond) =>
        new(FedProduct.Detergent, GramPerLitre(1.5), GramPerLitre(0.1), GramPerSecond(gramPerSecond), "wash");

    private static Feeder Additive => new(FedProduct.RinseAdditive, MilligramPerLitre(120));

    private static SprayZone Zone(string id, Figure<Length> from, Figure<Length> to, SprayKind spray, string? tank) =>
        new()
        {
            Id = id,
            From = from,
            To = to,
            Spray = spray,
            Tank = tank,
        };
}
