using Rinsewright.Engine.Sanitization;
using static Rinsewright.Engine.Machines.Typical;

namespace Rinsewright.Engine.Machines;

public static partial class TypicalMachines
{
    private static Machine DoorHotWater() =>
        new()
        {
            Kind = MachineKind.DoorHotWater,
            Sanitizing = SanitizingMethod.HotWater,
            Length = Millimetre(640),
            Tanks =
            [
                new Tank
                {
                    Id = "wash",
                    Duty = TankDuty.Wash,
                    From = Millimetre(20),
                    To = Millimetre(620),
                    Capacity = Gallon(10),
                    Surface = SquareMetre(0.25),
                    ShellLoss = WattPerKelvin(9),
                    Metal = KilojoulePerKelvin(25),
                    Heater = Elements(6),
                    Thermostat = Set(158, 4),
                    Fill = Valve(6),
                    Pump = PumpOf(150, 700, 2000),
                    AirRunning = GramPerSecond(6),
                    AirIdle = GramPerSecond(0.8),
                },
            ],
            Zones =
            [
                Zone("wash", Millimetre(50), Millimetre(590), SprayKind.Rotors, "wash"),
                Zone("final-rinse", Millimetre(50), Millimetre(590), SprayKind.Fresh, null),
            ],
            FinalRinse = Fresh(5, hit: 0.5, air: 6),
            Booster = new Booster
            {
                Capacity = Gallon(4.5),
                Heater = Elements(7),
                Thermostat = Set(186, 3),
                ShellLoss = WattPerKelvin(1.8),
                Metal = KilojoulePerKelvin(5),
                At = Millimetre(170),
                Width = Millimetre(250),
            },
            Supply = Building(),
            Cycle = new DoorCycle(Second(45), Second(3), null, Second(11), Second(3), Second(8)) { AirOpen = GramPerSecond(8) },
            LoadTable = Millimetre(380),
            UnloadTable = Millimetre(430),
            Feeders = [Detergent(1), Additive],
            Ware = Plates(),
        };

    private static Machine Undercounter() =>
        new()
        {
            Kind = MachineKind.Undercounter,
            Sanitizing = SanitizingMethod.HotWater,
            Length = Millimetre(600),
            Tanks =
            [
                new Tank
                {
                    Id = "wash",
                    Duty = TankDuty.Wash,
                    From = Millimetre(20),
                    To = Millimetre(580),
                    Capacity = Gallon(3.5),
                    Surface = SquareMetre(0.16),
                    ShellLoss = WattPerKelvin(6),
                    Metal = KilojoulePerKelvin(12),
                    Heater = Elements(3, Connection.SinglePhase),
                    Thermostat = Set(158, 4),
                    Fill = Valve(4),
                    Pump = PumpOf(60, 450, 1800),
                    AirRunning = GramPerSecond(3),
                    AirIdle = GramPerSecond(0.5),
                },
            ],
            Zones =
            [
                Zone("wash", Millimetre(50), Millimetre(560), SprayKind.Rotors, "wash"),
                Zone("final-rinse", Millimetre(50), Millimetre(560), SprayKind.Fresh, null),
            ],
            FinalRinse = Fresh(4, hit: 0.5, air: 5),
            Booster = new Booster
            {
                Capacity = Gallon(3),
                Heater = Elements(4.5, Connection.SinglePhase),
                Thermostat = Set(190, 3),
                ShellLoss = WattPerKelvin(1.2),
                Metal = KilojoulePerKelvin(4),
                At = Millimetre(120),
                Width = Millimetre(210),
            },
            Supply = Building(),
            Cycle = new DoorCycle(Second(105), Second(4), null, Second(12), Second(4), Second(25)) { AirOpen = GramPerSecond(5) },
            Feeders = [Detergent(1), Additive],
            Ware = Plates(),
        };

    // The chamber is drawn as that of the hot-water door machine, the sump narrower after its surface; both estimates.
    private static Machine DoorChemical() =>
        new()
        {
            Kind = MachineKind.DoorChemical,
            Sanitizing = SanitizingMethod.Chlorine,
            Length = Millimetre(640),
            Tanks =
            [
                new Tank
                {
                    Id = "wash",
                    Duty = TankDuty.Wash,
                    From = Millimetre(110),
                    To = Millimetre(530),
                    Capacity = Gallon(1.7),
                    Surface = SquareMetre(0.06),
                    ShellLoss = WattPerKelvin(6),
                    Metal = KilojoulePerKelvin(20),
                    Heater = Elements(1.5, Connection.SinglePhase),
                    Thermostat = Set(126, 4),
                    Fill = Valve(5, lowWater: 0.3),
                    Pump = PumpOf(45, 450, 1500),
                    AirRunning = GramPerSecond(4),
                    AirIdle = GramPerSecond(0.5),
                },
            ],
            Zones = [Zone("wash", Millimetre(50), Millimetre(590), SprayKind.Rotors, "wash")],
            Supply = Building(),
            Cycle = new DoorCycle(Second(45), Second(8), Second(21), Second(20), Second(2), Second(8))
            {
                AirOpen = GramPerSecond(5),
                DumpOpening = SquareMetre(1.2e-3),
            },
            LoadTable = Millimetre(380),
            UnloadTable = Millimetre(430),
            Feeders =
            [
                Detergent(3),
                new Feeder(FedProduct.RinseAdditive, MilligramPerLitre(120), Tank: "wash"),
                new Feeder(FedProduct.Sanitizer, MilligramPerLitre(75), Tank: "wash"),
            ],
            Ware = Plates(inCelsius: 30),
        };
}
