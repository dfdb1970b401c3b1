using Rinsewright.Engine.Heat;
using Rinsewright.Engine.Quantities;
using Rinsewright.Engine.Water;

namespace Rinsewright.Engine.Machines;

internal sealed partial record ModelParameters
{
    /// <summary>The description as plain numbers.</summary>
    /// <exception cref="ArgumentException">The description names a tank or material that it does not have, or lacks both conveyor and cycle.</exception>
    public static ModelParameters From(Machine machine)
    {
        var tanks = new TankParameters[machine.Tanks.Count];
        for (var i = 0; i < tanks.Length; i++)
        {
            tanks[i] = TankOf(machine, machine.Tanks[i]);
        }

        var wash = Array.FindIndex(tanks, t => t.Duty == TankDuty.Wash);
        return new ModelParameters
        {
            Kind = machine.Kind,
            Sanitizing = machine.Sanitizing,
            Tanks = tanks,
            Wash = wash >= 0 ? wash : throw new ArgumentException("No tank of the machine washes.", nameof(machine)),
            Rinse = machine.FinalRinse is { } rinse ? RinseOf(machine, rinse) : null,
            Booster = machine.Booster is { } booster ? BoosterOf(machine, booster) : null,
            Travel = TravelOf(machine),
            Ware = WareOf(machine),
            Feed = FeedOf(machine),
            SupplyTemperature = machine.Supply.Water.Value.InCelsius,
            RoomTemperature = machine.Supply.Room.Value.InCelsius,
            RoomHumidity = machine.Supply.Humidity.Value.InFraction,
        };
    }

    private static TankParameters TankOf(Machine machine, Tank tank)
    {
        var full = Kilogram(tank.Capacity);
        var zone = Zone(machine, z => z.Tank == tank.Id);
        return new TankParameters
        {
            Id = tank.Id,
            Duty = tank.Duty,
            Full = full,
            Surface = tank.Surface.Value.InSquareMetre,
            Shell = tank.ShellLoss.Value.InWattPerKelvin,
            Metal = tank.Metal.Value.InJoulePerKelvin,
            Heater = tank is { Heater: { } heater, Thermostat: { } thermostat } ? HeaterOf(machine, heater, thermostat) : null,
            FillFlow = tank.Fill is { } fill ? KilogramPerSecond(fill.Flow) : 0,
            Closes = (tank.Fill?.Closes.Value.InFraction ?? 0) * full,
            Opens = (tank.Fill?.Opens.Value.InFraction ?? 0) * full,
            LowWater = (tank.Fill?.LowWater.Value.InFraction ?? 0) * full,
            SpillsTo = tank.SpillsTo is null ? -1 : Index(machine, tank.SpillsTo),
            Pump = new PumpParameters
            {
                Circuit = SprayCircuit.FromNominal(
                    tank.Pump.Flow.Value.InCubicMetrePerSecond,
                    tank.Pump.ArmPressure.Value.InKilopascal * 1000
                ),
                Heat = tank.Pump.HeatToWater.Value.InWatt,
                Transfer = tank.Pump.Transfer.Value.InWattPerSquareMetreKelvin,
                Cross = tank.Pump.Cross?.Value.InFraction ?? 0,
            },
            AirRunning = tank.AirRunning.Value.InKilogramPerSecond,
            AirIdle = tank.AirIdle.Value.InKilogramPerSecond,
            ZoneFrom = zone?.From.Value.InMetre ?? 0,
            ZoneTo = zone?.To.Value.InMetre ?? 0,
        };
    }

    private static HeaterParameters HeaterOf(Machine machine, Heater heater, Thermostat thermostat) =>
        new()
        {
            Power = (heater.Rated?.Value.InWatt ?? 0) * VoltageShare(machine.Supply, heater),
            Coil = heater.Kind == HeaterKind.SteamCoil ? heater.Coil?.Value.InWattPerKelvin ?? 0 : 0,
            Steam = heater.Steam?.Value.InCelsius ?? 0,
            Burns = heater.Kind != HeaterKind.Electric,
            SetPoint = thermostat.SetPoint.Value.InCelsius,
            Band = thermostat.Band.Value.InCelsius,
        };

    // A resistance gives heat with the square of the voltage.
    private static double VoltageShare(Supply supply, Heater heater)
    {
        if (heater is not { Kind: HeaterKind.Electric, RatedVoltage: { } rated })
        {
            return 1;
        }

        var share = supply.Voltage.Value.InVolt / rated.Value.InVolt;
        return share * share;
    }

    private static RinseParameters RinseOf(Machine machine, FinalRinse rinse)
    {
        var zone = Zone(machine, z => z.Spray == SprayKind.Fresh);
        double flow = KilogramPerSecond(rinse.Flow),
            pressure = rinse.Pressure.Value.InKilopascal * 1000;
        return new RinseParameters
        {
            Circuit = RinseCircuit.FromNominal(flow, pressure),
            Nominal = flow,
            Regulator = pressure,
            Static = machine.Supply.StaticPressure.Value.InKilopascal * 1000,
            Hit = rinse.Hit.Value.InFraction,
            Transfer = rinse.Transfer.Value.InWattPerSquareMetreKelvin,
            Air = rinse.Air.Value.InKilogramPerSecond,
            Captured = rinse.Captured.Value.InFraction,
            ZoneFrom = zone?.From.Value.InMetre ?? 0,
            ZoneTo = zone?.To.Value.InMetre ?? 0,
            SwitchFrom = zone?.SwitchFrom?.Value.InMetre ?? 0,
            SwitchTo = zone?.SwitchTo?.Value.InMetre ?? 0,
            WhileMoving = machine.Conveyor is not null && zone?.SwitchFrom is null,
        };
    }

    private static BoosterParameters BoosterOf(Machine machine, Booster booster) =>
        new()
        {
            Capacity = (Kilogram(booster.Capacity) * LiquidWater.HeatCapacity) + booster.Metal.Value.InJoulePerKelvin,
            Shell = booster.ShellLoss.Value.InWattPerKelvin,
            Heater = HeaterOf(machine, booster.Heater, booster.Thermostat),
        };

    private static TravelParameters TravelOf(Machine machine) =>
        (machine.Conveyor, machine.Cycle) switch
        {
            ({ } conveyor, _) => new TravelParameters
            {
                Speed = conveyor.Speed.Value.InMetrePerSecond,
                Hold = conveyor.Hold.Value.InSecond,
                End = machine.Length.Value.InMetre,
            },
            (_, { } cycle) => new TravelParameters
            {
                Cycle = new CycleParameters
                {
                    Wash = cycle.Wash.Value.InSecond,
                    Dwell = cycle.Dwell.Value.InSecond,
                    Refill = cycle.Refill?.Value.InSecond ?? 0,
                    Rinse = cycle.Rinse.Value.InSecond,
                    End = cycle.End.Value.InSecond,
                    Load = cycle.Load.Value.InSecond,
                    AirOpen = cycle.AirOpen.Value.InKilogramPerSecond,
                    Dump = cycle.DumpOpening?.Value.InSquareMetre ?? 0,
                },
            },
            _ => throw new ArgumentException("A machine has a conveyor or a door cycle.", nameof(machine)),
        };

    private static WareParameters WareOf(Machine machine)
    {
        var ware = machine.Ware;
        return new WareParameters
        {
            RackLength = ware.RackLength.Value.InMetre,
            Groups =
                machine.Cycle is not null ? 1
                : machine.Kind == MachineKind.Flight ? 6
                : 3,
            Pieces = ware.Pieces,
            PieceArea = ware.Area.Value.InSquareMetre,
            Thickness = ware.Thickness.Value.InMetre,
            Material =
                Material.Find(ware.Material) ?? throw new ArgumentException($"No material is called {ware.Material}.", nameof(machine)),
            RackMass = ware.RackMass.Value.InKilogram,
            RackArea = ware.RackArea.Value.InSquareMetre,
            RackHalfThickness = ware.RackThickness.Value.InMetre / 2,
            In = ware.In.Value.InCelsius,
            Soil = ware.Soil.Value.InKilogram,
            CarryOver = ware.CarryOver.Value.InKilogram,
        };
    }

    private static FeedParameters FeedOf(Machine machine)
    {
        Feeder? detergent = null,
            additive = null,
            sanitizer = null;
        foreach (var feeder in machine.Feeders)
        {
            _ = feeder.Product switch
            {
                FedProduct.Detergent => detergent = feeder,
                FedProduct.RinseAdditive => additive = feeder,
                _ => sanitizer = feeder,
            };
        }

        return new FeedParameters
        {
            Detergent = Share(detergent?.Strength),
            Needed = Share(detergent?.Strength),
            Band = Share(detergent?.Band),
            Rate = detergent?.Rate?.Value.InKilogramPerSecond ?? 0,
            Additive = Share(additive?.Strength),
            Sanitizer = Share(sanitizer?.Strength),
        };
    }

    private static SprayZone? Zone(Machine machine, Func<SprayZone, bool> which)
    {
        foreach (var zone in machine.Zones)
        {
            if (which(zone))
            {
                return zone;
            }
        }

        return null;
    }

    private static int Index(Machine machine, string tank)
    {
        for (var i = 0; i < machine.Tanks.Count; i++)
        {
            if (machine.Tanks[i].Id == tank)
            {
                return i;
            }
        }

        throw new ArgumentException($"No tank is called {tank}.", nameof(machine));
    }

    private static double Kilogram(Figure<Volume> volume) => volume.Value.InCubicMetre * LiquidWater.Density;

    private static double KilogramPerSecond(Figure<VolumeFlow> flow) => flow.Value.InCubicMetrePerSecond * LiquidWater.Density;

    // A gram in a litre of the cooled sample counts as a gram in a kilogram of water.
    private static double Share(Figure<MassConcentration>? strength) => (strength?.Value.InGramPerLitre ?? 0) / 1000;
}
