using Rinsewright.Engine.Quantities;
using Rinsewright.Engine.Sanitization;
using static Rinsewright.Engine.Machines.Typical;

namespace Rinsewright.Engine.Machines;

public static partial class TypicalMachines
{
    // A prewash in front moves everything behind it by this much, in mm.
    private const double PrewashLength = 550;

    private static Machine OneTank() =>
        new()
        {
            Kind = MachineKind.RackConveyorOneTank,
            Sanitizing = SanitizingMethod.HotWater,
            Length = Millimetre(1118),
            Tanks =
            [
                new Tank
                {
                    Id = "wash",
                    Duty = TankDuty.Wash,
                    From = Millimetre(45),
                    To = Millimetre(1073),
                    Capacity = Gallon(18),
                    Surface = SquareMetre(0.3),
                    ShellLoss = WattPerKelvin(18),
                    Metal = KilojoulePerKelvin(45),
                    Heater = Elements(18),
                    Thermostat = Set(166, 4),
                    Fill = Valve(6),
                    Pump = PumpOf(165, 800, 2000),
                    AirRunning = GramPerSecond(8),
                    AirIdle = GramPerSecond(1.2),
                },
            ],
            Zones =
            [
                Zone("wash", Millimetre(120), Millimetre(700), SprayKind.Arms, "wash"),
                Zone("final-rinse", Millimetre(820), Millimetre(1000), SprayKind.Fresh, null) with
                {
                    SwitchFrom = Millimetre(800),
                    SwitchTo = Millimetre(920),
                },
            ],
            FinalRinse = Fresh(2.6, hit: 0.6, air: 4),
            Booster = ConveyorBooster(18),
            Supply = Building(),
            Conveyor = new Conveyor(MetrePerSecond(0.0284), Second(60)),
            LoadTable = Millimetre(380),
            UnloadTable = Millimetre(430),
            Curtains =
            [
                new Curtain("load", Millimetre(62), Long: true),
                new Curtain("wash-rinse", Millimetre(752), Long: true),
                new Curtain("unload", Millimetre(1066), Long: false),
            ],
            Vents = [Millimetre(118)],
            Feeders = [Detergent(1), Additive],
            Ware = Plates(),
        };

    private static Machine TwoTank() => Chain(MachineKind.RackConveyorTwoTank, 0);

    // Prewash: volume, pump and place are estimates; its surface, shell and metal are those of the rinse tank of the same volume, its pump heat is in
    // proportion to its flow. Nothing cools it, so it runs hotter than the 90 to 120 degF that practice wants; a real machine adds cold water there.
    private static Machine ThreeTank() =>
        Chain(MachineKind.RackConveyorThreeTank, PrewashLength) is var rest && rest.Tanks is [var wash, var rinse]
            ? rest with
            {
                Tanks =
                [
                    new Tank
                    {
                        Id = "prewash",
                        Duty = TankDuty.Prewash,
                        From = Millimetre(45),
                        To = Millimetre(PrewashLength + 45),
                        Capacity = Gallon(15),
                        Surface = SquareMetre(0.26),
                        ShellLoss = WattPerKelvin(15),
                        Metal = KilojoulePerKelvin(40),
                        Pump = PumpOf(110, 500, 2000, crossPercent: 0.05),
                        AirRunning = GramPerSecond(6),
                        AirIdle = GramPerSecond(1.2),
                    },
                    wash with
                    {
                        SpillsTo = "prewash",
                    },
                    rinse,
                ],
                Zones = [Zone("prewash", Millimetre(150), Millimetre(550), SprayKind.Arms, "prewash"), .. rest.Zones],
                Curtains =
                [
                    new Curtain("load", Millimetre(62), Long: true),
                    new Curtain("prewash-wash", Millimetre(PrewashLength + 45), Long: true),
                    .. rest.Curtains.Skip(1),
                ],
                Vents = [Millimetre(118), .. rest.Vents.Skip(1)],
            }
            : throw new InvalidOperationException("the chain has two tanks");

    // The same chain with a belt instead of racks: it rinses while the belt moves. The open belt at both ends is an estimate.
    private static Machine Flight()
    {
        var rack = ThreeTank();
        return rack with
        {
            Kind = MachineKind.Flight,
            Zones = [.. rack.Zones.Select(z => z with { SwitchFrom = null, SwitchTo = null })],
            LoadTable = Millimetre(1200),
            UnloadTable = Millimetre(1800),
            Ware = rack.Ware with { RackMass = Kilogram(0), RackArea = SquareMetre(0) },
        };
    }

    // Wash and pumped-rinse tank with the final rinse, everything moved by the length of what stands in front.
    private static Machine Chain(MachineKind kind, double shift)
    {
        Figure<Length> At(double millimetre) => Millimetre(millimetre + shift);
        return new Machine
        {
            Kind = kind,
            Sanitizing = SanitizingMethod.HotWater,
            Length = At(1680),
            Tanks =
            [
                new Tank
                {
                    Id = "wash",
                    Duty = TankDuty.Wash,
                    From = At(45),
                    To = At(800),
                    Capacity = Gallon(18.5),
                    Surface = SquareMetre(0.3),
                    ShellLoss = WattPerKelvin(15),
                    Metal = KilojoulePerKelvin(45),
                    Heater = Elements(18),
                    Thermostat = Set(160, 4),
                    Fill = Valve(6),
                    Pump = PumpOf(165, 800, 2000, crossPercent: 0.05),
                    AirRunning = GramPerSecond(8),
                    AirIdle = GramPerSecond(1.2),
                },
                new Tank
                {
                    Id = "rinse",
                    Duty = TankDuty.PumpedRinse,
                    From = At(800),
                    To = At(1631),
                    Capacity = Gallon(15),
                    Surface = SquareMetre(0.26),
                    ShellLoss = WattPerKelvin(15),
                    Metal = KilojoulePerKelvin(40),
                    Heater = Elements(15),
                    Thermostat = Set(165, 4),
                    Fill = Valve(6),
                    Pump = PumpOf(140, 650, 2000),
                    AirRunning = GramPerSecond(6),
                    AirIdle = GramPerSecond(1.2),
                    SpillsTo = "wash",
                },
            ],
            Zones =
            [
                Zone("wash", At(150), At(750), SprayKind.Arms, "wash"),
                Zone("power-rinse", At(850), At(1310), SprayKind.Arms, "rinse"),
                Zone("final-rinse", At(1400), At(1580), SprayKind.Fresh, null) with
                {
                    SwitchFrom = At(1380),
                    SwitchTo = At(1500),
                },
            ],
            FinalRinse = Fresh(2.8, hit: 0.6, air: 4),
            Booster = ConveyorBooster(24),
            Supply = Building(),
            Conveyor = new Conveyor(MetrePerSecond(0.033), Second(60)),
            LoadTable = Millimetre(380),
            UnloadTable = Millimetre(430),
            Curtains =
            [
                new Curtain("load", At(62), Long: true),
                new Curtain("wash-rinse", At(800), Long: true),
                new Curtain("rinse-final", At(1355), Long: false),
                new Curtain("unload", At(1626), Long: true),
            ],
            Vents = [At(118), At(1590)],
            Feeders = [Detergent(1), Additive],
            Ware = Plates(),
        };
    }

    private static Booster ConveyorBooster(double kilowatt) =>
        new()
        {
            Capacity = Gallon(3.5),
            Heater = Elements(kilowatt),
            Thermostat = Set(185, 3),
            ShellLoss = WattPerKelvin(2),
            Metal = KilojoulePerKelvin(5),
            At = Millimetre(170),
            Width = Millimetre(250),
        };
}
