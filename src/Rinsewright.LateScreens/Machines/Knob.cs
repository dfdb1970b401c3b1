using Rinsewright.Contracts.Records;
using Rinsewright.Drawing;
using Rinsewright.Engine.Machines;
using Rinsewright.Engine.Quantities;

namespace Rinsewright.Client.Machines;

/// <summary>Ends and step of a slider.</summary>
/// <param name="Unit">Unit.</param>
/// <param name="Least">Least.</param>
/// <param name="Most">Greatest.</param>
/// <param name="Step">Step.</param>
public sealed record KnobRange(Unit Unit, double Least, double Most, double Step);

/// <summary>A figure of the machine that a what-if may change.</summary>
/// <param name="Id">Its name, for words and for tests.</param>
/// <param name="Us">Slider in US units.</param>
/// <param name="Si">Slider in SI units.</param>
/// <param name="Read">The figure; null where the machine has none.</param>
/// <param name="Set">The machine with another figure. It counts as typical: a what-if makes nothing known.</param>
public sealed record Knob(string Id, KnobRange Us, KnobRange Si, Func<Machine, Amount?> Read, Func<Machine, Amount, Machine> Set)
{
    /// <summary>Every knob, what a technician turns first at the top.</summary>
    public static IReadOnlyList<Knob> All { get; } =
    [
        new(
            "pressure",
            new(Units.Psi, 4, 45, 1),
            new(Units.Kilopascal, 30, 310, 5),
            m => m.FinalRinse?.Pressure.Written,
            (m, v) => m with { FinalRinse = m.FinalRinse!.TurnedTo(Of<GaugePressure>(v)) }
        ),
        new(
            "water",
            new(Units.Fahrenheit, 50, 180, 1),
            new(Units.Celsius, 10, 82, 1),
            m => m.Supply.Water.Written,
            (m, v) => m with { Supply = m.Supply with { Water = Of<Temperature>(v) } }
        ),
        new(
            "speed",
            new(Units.FootPerMinute, 3, 12, 0.1),
            new(Units.MetrePerMinute, 1, 3.6, 0.05),
            m => m.Conveyor?.Speed.Written,
            (m, v) => m with { Conveyor = m.Conveyor! with { Speed = Of<Speed>(v) } }
        ),
        new(
            "wash-time",
            new(Units.Second, 10, 180, 1),
            new(Units.Second, 10, 180, 1),
            m => m.Cycle?.Wash.Written,
            (m, v) => m with { Cycle = m.Cycle! with { Wash = Of<Duration>(v) } }
        ),
        new(
            "rinse-time",
            new(Units.Second, 3, 40, 1),
            new(Units.Second, 3, 40, 1),
            m => m.Cycle?.Rinse.Written,
            (m, v) => m with { Cycle = m.Cycle! with { Rinse = Of<Duration>(v) } }
        ),
        new(
            "wash-heater",
            new(Units.Kilowatt, 0, 40, 0.5),
            new(Units.Kilowatt, 0, 40, 0.5),
            m => Wash(m).Heater?.Rated?.Written,
            (m, v) => WithWash(m, t => t with { Heater = t.Heater! with { Rated = Of<Power>(v) } })
        ),
        new(
            "wash-set",
            new(Units.Fahrenheit, 110, 185, 1),
            new(Units.Celsius, 43, 85, 1),
            m => Wash(m).Thermostat?.SetPoint.Written,
            (m, v) => WithWash(m, t => t with { Thermostat = t.Thermostat! with { SetPoint = Of<Temperature>(v) } })
        ),
        new(
            "booster",
            new(Units.Kilowatt, 0, 60, 0.5),
            new(Units.Kilowatt, 0, 60, 0.5),
            m => m.Booster?.Heater.Rated?.Written,
            (m, v) => m with { Booster = m.Booster! with { Heater = m.Booster.Heater with { Rated = Of<Power>(v) } } }
        ),
        new(
            "voltage",
            new(Units.Volt, 180, 500, 1),
            new(Units.Volt, 180, 500, 1),
            m => m.Supply.Voltage.Written,
            (m, v) => m with { Supply = m.Supply with { Voltage = Of<ElectricPotential>(v) } }
        ),
        new(
            "plates",
            new(Units.One, 1, 36, 1),
            new(Units.One, 1, 36, 1),
            m => new Amount(m.Ware.Pieces, Units.One),
            (m, v) => m with { Ware = m.Ware with { Pieces = (int)Math.Round(v.Value) } }
        ),
    ];

    /// <summary>The slider in the units shown.</summary>
    public KnobRange In(UnitDisplay units, Machine machine) =>
        units switch
        {
            UnitDisplay.Us => Us,
            UnitDisplay.Si => Si,
            _ => Read(machine)?.Unit == Si.Unit ? Si : Us,
        };

    private static Figure<T> Of<T>(Amount written)
        where T : struct, IQuantity<T> => new(written);

    private static Tank Wash(Machine m) => m.Tanks.First(t => t.Duty == TankDuty.Wash);

    private static Machine WithWash(Machine m, Func<Tank, Tank> change) =>
        m with
        {
            Tanks = [.. m.Tanks.Select(t => t.Duty == TankDuty.Wash ? change(t) : t)],
        };
}
