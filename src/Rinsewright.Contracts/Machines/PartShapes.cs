using System.Text.Json;
using Rinsewright.Engine.Machines;
using Rinsewright.Engine.Quantities;

namespace Rinsewright.Contracts.Machines;

/// <summary>Members of tank, rinse, booster, supply, conveyor and cycle.</summary>
internal static class PartShapes
{
    private static readonly Bounds Flow = Bounds.Positive(0.1, Units.CubicMetrePerSecond);
    private static readonly Bounds Air = Bounds.NotNegative(1, Units.KilogramPerSecond);
    private static readonly Bounds Loss = Bounds.NotNegative(1000, Units.WattPerKelvin);
    private static readonly Bounds Metal = Bounds.NotNegative(10_000, Units.KilojoulePerKelvin);
    private static readonly Bounds Transfer = Bounds.Positive(100_000, Units.WattPerSquareMetreKelvin);
    private static readonly Bounds Pressure = Bounds.Positive(1000, Units.Kilopascal);
    private static readonly Bounds Voltage = Bounds.Between(90, 700, Units.Volt);
    private static readonly Bounds Phase = Bounds.NotNegative(3600, Units.Second);
    private static readonly Bounds Run = Bounds.Positive(3600, Units.Second);

    private static readonly Shape<Heater> HeaterShape = new(
        "heater",
        new WordMember<Heater, HeaterKind>("kind", h => h.Kind, (h, w) => h with { Kind = w }),
        new OptionalFigureMember<Heater, Power>(
            "rated",
            Bounds.Positive(1000, Units.Kilowatt),
            h => h.Rated,
            (h, f) => h with { Rated = f }
        ),
        new WordMember<Heater, Connection>("connection", h => h.Connection, (h, w) => h with { Connection = w }),
        new OptionalFigureMember<Heater, ElectricPotential>(
            "ratedVoltage",
            Voltage,
            h => h.RatedVoltage,
            (h, f) => h with { RatedVoltage = f }
        ),
        new OptionalFigureMember<Heater, HeatConductance>(
            "coil",
            Bounds.Positive(100_000, Units.WattPerKelvin),
            h => h.Coil,
            (h, f) => h with { Coil = f }
        ),
        new OptionalFigureMember<Heater, Temperature>(
            "steam",
            Bounds.Between(100, 200, Units.Celsius),
            h => h.Steam,
            (h, f) => h with { Steam = f }
        )
    );

    private static readonly Shape<Thermostat> ThermostatShape = new(
        "thermostat",
        new FigureMember<Thermostat, Temperature>("setPoint", Bounds.Water, t => t.SetPoint, (t, f) => t with { SetPoint = f }),
        new FigureMember<Thermostat, TemperatureDifference>(
            "band",
            Bounds.Positive(50, Units.CelsiusDifference),
            t => t.Band,
            (t, f) => t with { Band = f }
        )
    );

    private static readonly Shape<Fill> FillShape = new(
        "fill",
        new FigureMember<Fill, VolumeFlow>("flow", Flow, f => f.Flow, (f, x) => f with { Flow = x }),
        new FigureMember<Fill, Ratio>("closes", Bounds.PartOfWhole, f => f.Closes, (f, x) => f with { Closes = x }),
        new FigureMember<Fill, Ratio>("opens", Bounds.PartOfWhole, f => f.Opens, (f, x) => f with { Opens = x }),
        new FigureMember<Fill, Ratio>("lowWater", Bounds.PartOfWhole, f => f.LowWater, (f, x) => f with { LowWater = x })
    );

    private static readonly Shape<Pump> PumpShape = new(
        "pump",
        new FigureMember<Pump, VolumeFlow>("flow", Flow, p => p.Flow, (p, f) => p with { Flow = f }),
        new FigureMember<Pump, GaugePressure>("armPressure", Pressure, p => p.ArmPressure, (p, f) => p with { ArmPressure = f }),
        new FigureMember<Pump, Power>(
            "heatToWater",
            Bounds.NotNegative(50, Units.Kilowatt),
            p => p.HeatToWater,
            (p, f) => p with { HeatToWater = f }
        ),
        new FigureMember<Pump, HeatTransferCoefficient>("transfer", Transfer, p => p.Transfer, (p, f) => p with { Transfer = f }),
        new OptionalFigureMember<Pump, Ratio>("cross", Bounds.Between(0, 0.5, Units.One), p => p.Cross, (p, f) => p with { Cross = f })
    );

    internal static readonly Shape<Tank> Tank = new(
        "tank",
        new FigureMember<Tank, Length>("from", Bounds.Place, t => t.From, (t, f) => t with { From = f }),
        new FigureMember<Tank, Length>("to", Bounds.Place, t => t.To, (t, f) => t with { To = f }),
        new FigureMember<Tank, Volume>(
            "capacity",
            Bounds.Positive(3, Units.CubicMetre),
            t => t.Capacity,
            (t, f) => t with { Capacity = f }
        ),
        new FigureMember<Tank, Area>("surface", Bounds.Positive(10, Units.SquareMetre), t => t.Surface, (t, f) => t with { Surface = f }),
        new FigureMember<Tank, HeatConductance>("shellLoss", Loss, t => t.ShellLoss, (t, f) => t with { ShellLoss = f }),
        new FigureMember<Tank, HeatCapacity>("metal", Metal, t => t.Metal, (t, f) => t with { Metal = f }),
        new PartMember<Tank, Heater>(
            "heater",
            HeaterShape,
            t => t.Heater,
            (t, p) => t with { Heater = p },
            () => Wash.Heater!,
            optional: true,
            Adapt
        ),
        new PartMember<Tank, Thermostat>(
            "thermostat",
            ThermostatShape,
            t => t.Thermostat,
            (t, p) => t with { Thermostat = p },
            () => Wash.Thermostat!,
            optional: true
        ),
        new PartMember<Tank, Fill>("fill", FillShape, t => t.Fill, (t, p) => t with { Fill = p }, () => Wash.Fill!, optional: true),
        new PartMember<Tank, Pump>("pump", PumpShape, t => t.Pump, (t, p) => t with { Pump = p! }),
        new FigureMember<Tank, MassFlow>("airRunning", Air, t => t.AirRunning, (t, f) => t with { AirRunning = f }),
        new FigureMember<Tank, MassFlow>("airIdle", Air, t => t.AirIdle, (t, f) => t with { AirIdle = f }),
        new TextMember<Tank>("spillsTo", t => t.SpillsTo, (t, x) => t with { SpillsTo = x })
    );

    internal static readonly Shape<SprayZone> Zone = new(
        "zone",
        new FigureMember<SprayZone, Length>("from", Bounds.Place, z => z.From, (z, f) => z with { From = f }),
        new FigureMember<SprayZone, Length>("to", Bounds.Place, z => z.To, (z, f) => z with { To = f }),
        new WordMember<SprayZone, SprayKind>("spray", z => z.Spray, (z, w) => z with { Spray = w }),
        new TextMember<SprayZone>("tank", z => z.Tank, (z, x) => z with { Tank = x }),
        new OptionalFigureMember<SprayZone, Length>("switchFrom", Bounds.Place, z => z.SwitchFrom, (z, f) => z with { SwitchFrom = f }),
        new OptionalFigureMember<SprayZone, Length>("switchTo", Bounds.Place, z => z.SwitchTo, (z, f) => z with { SwitchTo = f })
    );

    internal static readonly Shape<FinalRinse> Rinse = new(
        "finalRinse",
        new FigureMember<FinalRinse, VolumeFlow>("flow", Flow, r => r.Flow, (r, f) => r with { Flow = f }),
        new FigureMember<FinalRinse, GaugePressure>("pressure", Pressure, r => r.Pressure, (r, f) => r with { Pressure = f }),
        new FigureMember<FinalRinse, Ratio>("hit", Bounds.PartOfWhole, r => r.Hit, (r, f) => r with { Hit = f }),
        new FigureMember<FinalRinse, HeatTransferCoefficient>("transfer", Transfer, r => r.Transfer, (r, f) => r with { Transfer = f }),
        new FigureMember<FinalRinse, MassFlow>("air", Air, r => r.Air, (r, f) => r with { Air = f }),
        new FigureMember<FinalRinse, Ratio>("captured", Bounds.Share, r => r.Captured, (r, f) => r with { Captured = f })
    );

    internal static readonly Shape<Booster> Booster = new(
        "booster",
        new FigureMember<Booster, Volume>(
            "capacity",
            Bounds.Positive(1, Units.CubicMetre),
            b => b.Capacity,
            (b, f) => b with { Capacity = f }
        ),
        new PartMember<Booster, Heater>("heater", HeaterShape, b => b.Heater, (b, p) => b with { Heater = p! }, adapt: Adapt),
        new PartMember<Booster, Thermostat>("thermostat", ThermostatShape, b => b.Thermostat, (b, p) => b with { Thermostat = p! }),
        new FigureMember<Booster, HeatConductance>("shellLoss", Loss, b => b.ShellLoss, (b, f) => b with { ShellLoss = f }),
        new FigureMember<Booster, HeatCapacity>("metal", Metal, b => b.Metal, (b, f) => b with { Metal = f }),
        new FigureMember<Booster, Length>("at", Bounds.Place, b => b.At, (b, f) => b with { At = f }),
        new FigureMember<Booster, Length>("width", Bounds.Positive(5, Units.Metre), b => b.Width, (b, f) => b with { Width = f })
    );

    internal static readonly Shape<Supply> Supply = new(
        "supply",
        new FigureMember<Supply, Temperature>("water", Bounds.Water, s => s.Water, (s, f) => s with { Water = f }),
        new FigureMember<Supply, GaugePressure>("staticPressure", Pressure, s => s.StaticPressure, (s, f) => s with { StaticPressure = f }),
        new FigureMember<Supply, ElectricPotential>("voltage", Voltage, s => s.Voltage, (s, f) => s with { Voltage = f }),
        new FigureMember<Supply, Temperature>("room", Bounds.Between(0, 60, Units.Celsius), s => s.Room, (s, f) => s with { Room = f }),
        new FigureMember<Supply, Ratio>("humidity", Bounds.Share, s => s.Humidity, (s, f) => s with { Humidity = f })
    );

    internal static readonly Shape<Conveyor> Conveyor = new(
        "conveyor",
        new FigureMember<Conveyor, Speed>("speed", Bounds.Positive(1, Units.MetrePerSecond), c => c.Speed, (c, f) => c with { Speed = f }),
        new FigureMember<Conveyor, Duration>("hold", Phase, c => c.Hold, (c, f) => c with { Hold = f })
    );

    internal static readonly Shape<DoorCycle> Cycle = new(
        "cycle",
        new FigureMember<DoorCycle, Duration>("wash", Run, c => c.Wash, (c, f) => c with { Wash = f }),
        new FigureMember<DoorCycle, Duration>("dwell", Phase, c => c.Dwell, (c, f) => c with { Dwell = f }),
        new OptionalFigureMember<DoorCycle, Duration>("refill", Run, c => c.Refill, (c, f) => c with { Refill = f }),
        new FigureMember<DoorCycle, Duration>("rinse", Run, c => c.Rinse, (c, f) => c with { Rinse = f }),
        new FigureMember<DoorCycle, Duration>("end", Phase, c => c.End, (c, f) => c with { End = f }),
        new FigureMember<DoorCycle, Duration>("load", Run, c => c.Load, (c, f) => c with { Load = f }),
        new FigureMember<DoorCycle, MassFlow>("airOpen", Air, c => c.AirOpen, (c, f) => c with { AirOpen = f }),
        new OptionalFigureMember<DoorCycle, Area>(
            "dumpOpening",
            Bounds.Positive(0.1, Units.SquareMetre),
            c => c.DumpOpening,
            (c, f) => c with { DumpOpening = f }
        )
    );

    private static Tank Wash => TypicalMachines.Of(MachineKind.RackConveyorTwoTank).Tanks[0];

    // A steam coil has no rated heat, a burner no voltage: what the former kind had and the new one has not is taken away before the file is read.
    private static Heater Adapt(JsonElement element, Heater former)
    {
        if (
            !element.TryGetProperty("kind", out var kind)
            || kind.ValueKind != JsonValueKind.String
            || kind.ValueEquals(Wire.Name(former.Kind))
        )
        {
            return former;
        }

        return kind.GetString() switch
        {
            "steamCoil" => new Heater
            {
                Kind = HeaterKind.SteamCoil,
                Coil = new Figure<HeatConductance>(new Amount(450, Units.WattPerKelvin)),
                Steam = new Figure<Temperature>(new Amount(115, Units.Celsius)),
            },
            "gas" => new Heater { Kind = HeaterKind.Gas, Rated = former.Rated ?? Wash.Heater!.Rated },
            _ => Wash.Heater! with { Rated = former.Rated ?? Wash.Heater!.Rated },
        };
    }
}
