using Rinsewright.Engine.Quantities;
using Rinsewright.Engine.Water;

namespace Rinsewright.Engine.Machines;

/// <summary>
/// Which figures of a machine are not known exactly, and by how much. Spread from a design study of the model (estimates, no source): spray transfer 30 %, air through
/// zones 40 %, shell loss 25 %, heaters 4 %, flows 6 %, set points 1 K, supply 1.5 K, ware in 3 K, thickness 10 %, speed 3 %; volumes 3 %, pressures 5 %, room 1 K are added here.
/// </summary>
internal static class UncertainFigures
{
    private static readonly Scatter Content = new(true, 0.03, 0.03);
    private static readonly Scatter Shell = new(true, 0.25, 0.6);
    private static readonly Scatter Air = new(true, 0.40, 0.40);
    private static readonly Scatter Heat = new(true, 0.04, 0.6);
    private static readonly Scatter Flow = new(true, 0.06, 0.8);
    private static readonly Scatter Pressure = new(true, 0.05, 0.8);
    private static readonly Scatter Transfer = new(true, 0.30, 0.30);
    private static readonly Scatter SetPoint = new(false, 1, 8);
    private static readonly Scatter Supply = new(false, 1.5, 15);
    private static readonly Scatter Room = new(false, 1, 8);
    private static readonly Scatter WareIn = new(false, 3, 10);
    private static readonly Scatter Thickness = new(true, 0.10, 0.10);
    private static readonly Scatter Travel = new(true, 0.03, 0.3);

    /// <summary>The figures a machine has.</summary>
    public static IReadOnlyList<UncertainFigure> Of(Machine machine)
    {
        List<UncertainFigure> figures = [];
        for (var i = 0; i < machine.Tanks.Count; i++)
        {
            figures.AddRange(OfTank(i, machine.Tanks[i].Id));
        }

        figures.AddRange(OfRinse());
        figures.AddRange(OfBooster());
        figures.AddRange(OfRest());
        figures.RemoveAll(f => f.Written(machine) is null);
        return figures;
    }

    private static IEnumerable<UncertainFigure> OfTank(int i, string id)
    {
        UncertainFigure<T> Figure<T>(
            string name,
            Scatter scatter,
            Func<Tank, Figure<T>?> get,
            Func<Tank, Figure<T>, Tank> set,
            Func<TankParameters, double, TankParameters> change
        )
            where T : struct, IQuantity<T> =>
            new(
                $"{id}.{name}",
                scatter,
                m => get(m.Tanks[i]),
                (m, f) => With(m, i, t => set(t, f)),
                (p, x) => p.WithTank(i, t => change(t, x))
            );

        yield return Figure<Volume>(
            "capacity",
            Content,
            t => t.Capacity,
            (t, f) => t with { Capacity = f },
            (t, x) => t with { Full = t.Full * x, Closes = t.Closes * x, Opens = t.Opens * x, LowWater = t.LowWater * x }
        );
        yield return Figure<HeatConductance>(
            "shellLoss",
            Shell,
            t => t.ShellLoss,
            (t, f) => t with { ShellLoss = f },
            (t, x) => t with { Shell = t.Shell * x }
        );
        yield return Figure<Power>(
            "heater",
            Heat,
            t => t.Heater?.Rated,
            (t, f) => t with { Heater = t.Heater! with { Rated = f } },
            (t, x) => t with { Heater = t.Heater! with { Power = t.Heater.Power * x } }
        );
        yield return Figure<HeatConductance>(
            "coil",
            Heat,
            t => t.Heater?.Coil,
            (t, f) => t with { Heater = t.Heater! with { Coil = f } },
            (t, x) => t with { Heater = t.Heater! with { Coil = t.Heater.Coil * x } }
        );
        yield return Figure<Temperature>(
            "setPoint",
            SetPoint,
            t => t.Thermostat?.SetPoint,
            (t, f) => t with { Thermostat = t.Thermostat! with { SetPoint = f } },
            (t, x) => t with { Heater = t.Heater! with { SetPoint = t.Heater.SetPoint + x } }
        );
        yield return Figure<VolumeFlow>(
            "fill",
            Flow,
            t => t.Fill?.Flow,
            (t, f) => t with { Fill = t.Fill! with { Flow = f } },
            (t, x) => t with { FillFlow = t.FillFlow * x }
        );
        yield return Figure<GaugePressure>(
            "armPressure",
            Pressure,
            t => t.Pump.ArmPressure,
            (t, f) => t with { Pump = t.Pump with { ArmPressure = f } },
            (t, x) => t with { Pump = t.Pump with { Circuit = t.Pump.Circuit.AtPressure(x) } }
        );
        yield return Figure<HeatTransferCoefficient>(
            "transfer",
            Transfer,
            t => t.Pump.Transfer,
            (t, f) => t with { Pump = t.Pump with { Transfer = f } },
            (t, x) => t with { Pump = t.Pump with { Transfer = t.Pump.Transfer * x } }
        );
        yield return Figure<MassFlow>(
            "airRunning",
            Air,
            t => t.AirRunning,
            (t, f) => t with { AirRunning = f },
            (t, x) => t with { AirRunning = t.AirRunning * x }
        );
        yield return Figure<MassFlow>(
            "airIdle",
            Air,
            t => t.AirIdle,
            (t, f) => t with { AirIdle = f },
            (t, x) => t with { AirIdle = t.AirIdle * x }
        );
    }

    private static IEnumerable<UncertainFigure> OfRinse()
    {
        static ModelParameters Rinse(ModelParameters p, Func<RinseParameters, RinseParameters> change) =>
            p with
            {
                Rinse = change(p.Rinse!),
            };

        // The nozzles keep their coefficient when the pressure is another, so the flow that belongs to the pressure goes with its root.
        yield return new UncertainFigure<GaugePressure>(
            "finalRinse.pressure",
            Pressure,
            m => m.FinalRinse?.Pressure,
            (m, f) => m with { FinalRinse = m.FinalRinse! with { Pressure = f, Flow = AtPressure(m.FinalRinse, f) } },
            (p, x) => Rinse(p, r => r with { Regulator = r.Regulator * x, Nominal = r.Nominal * Math.Sqrt(x) })
        );
        yield return new UncertainFigure<VolumeFlow>(
            "finalRinse.flow",
            Flow,
            m => m.FinalRinse?.Flow,
            (m, f) => m with { FinalRinse = m.FinalRinse! with { Flow = f } },
            (p, x) => Rinse(p, r => r with { Circuit = RinseCircuit.FromNominal(r.Circuit.Coefficient * x, 1), Nominal = r.Nominal * x })
        );
        yield return new UncertainFigure<HeatTransferCoefficient>(
            "finalRinse.transfer",
            Transfer,
            m => m.FinalRinse?.Transfer,
            (m, f) => m with { FinalRinse = m.FinalRinse! with { Transfer = f } },
            (p, x) => Rinse(p, r => r with { Transfer = r.Transfer * x })
        );
        yield return new UncertainFigure<MassFlow>(
            "finalRinse.air",
            Air,
            m => m.FinalRinse?.Air,
            (m, f) => m with { FinalRinse = m.FinalRinse! with { Air = f } },
            (p, x) => Rinse(p, r => r with { Air = r.Air * x })
        );
    }

    private static IEnumerable<UncertainFigure> OfBooster()
    {
        static ModelParameters Booster(ModelParameters p, Func<BoosterParameters, BoosterParameters> change) =>
            p with
            {
                Booster = change(p.Booster!),
            };
        static Machine WithBooster(Machine m, Func<Booster, Booster> change) => m with { Booster = change(m.Booster!) };
        static Machine WithHeater(Machine m, Func<Heater, Heater> change) => WithBooster(m, b => b with { Heater = change(b.Heater) });

        yield return new UncertainFigure<Power>(
            "booster.heater",
            Heat,
            m => m.Booster?.Heater.Rated,
            (m, f) => WithHeater(m, h => h with { Rated = f }),
            (p, x) => Booster(p, b => b with { Heater = b.Heater with { Power = b.Heater.Power * x } })
        );
        yield return new UncertainFigure<HeatConductance>(
            "booster.coil",
            Heat,
            m => m.Booster?.Heater.Coil,
            (m, f) => WithHeater(m, h => h with { Coil = f }),
            (p, x) => Booster(p, b => b with { Heater = b.Heater with { Coil = b.Heater.Coil * x } })
        );
        yield return new UncertainFigure<Temperature>(
            "booster.setPoint",
            SetPoint,
            m => m.Booster?.Thermostat.SetPoint,
            (m, f) => WithBooster(m, b => b with { Thermostat = b.Thermostat with { SetPoint = f } }),
            (p, x) => Booster(p, b => b with { Heater = b.Heater with { SetPoint = b.Heater.SetPoint + x } })
        );
        yield return new UncertainFigure<HeatConductance>(
            "booster.shellLoss",
            Shell,
            m => m.Booster?.ShellLoss,
            (m, f) => WithBooster(m, b => b with { ShellLoss = f }),
            (p, x) => Booster(p, b => b with { Shell = b.Shell * x })
        );
    }

    private static IEnumerable<UncertainFigure> OfRest()
    {
        yield return new UncertainFigure<Temperature>(
            "supply.water",
            Supply,
            m => m.Supply.Water,
            (m, f) => m with { Supply = m.Supply with { Water = f } },
            (p, x) => p with { SupplyTemperature = p.SupplyTemperature + x }
        );
        yield return new UncertainFigure<Temperature>(
            "supply.room",
            Room,
            m => m.Supply.Room,
            (m, f) => m with { Supply = m.Supply with { Room = f } },
            (p, x) => p with { RoomTemperature = p.RoomTemperature + x }
        );
        yield return new UncertainFigure<Temperature>(
            "ware.in",
            WareIn,
            m => m.Ware.In,
            (m, f) => m with { Ware = m.Ware with { In = f } },
            (p, x) => p with { Ware = p.Ware with { In = p.Ware.In + x } }
        );
        yield return new UncertainFigure<Length>(
            "ware.thickness",
            Thickness,
            m => m.Ware.Thickness,
            (m, f) => m with { Ware = m.Ware with { Thickness = f } },
            (p, x) => p with { Ware = p.Ware with { Thickness = p.Ware.Thickness * x } }
        );
        yield return new UncertainFigure<Speed>(
            "conveyor.speed",
            Travel,
            m => m.Conveyor?.Speed,
            (m, f) => m with { Conveyor = m.Conveyor! with { Speed = f } },
            (p, x) => p with { Travel = p.Travel with { Speed = p.Travel.Speed * x } }
        );
    }

    private static Figure<VolumeFlow> AtPressure(FinalRinse rinse, Figure<GaugePressure> pressure) =>
        rinse.Flow with
        {
            Written = rinse.Flow.Written with
            {
                Value = rinse.Flow.Written.Value * Math.Sqrt(pressure.Written.SI / rinse.Pressure.Written.SI),
            },
        };

    private static Machine With(Machine machine, int tank, Func<Tank, Tank> change)
    {
        var tanks = new List<Tank>(machine.Tanks);
        tanks[tank] = change(tanks[tank]);
        return machine with { Tanks = tanks };
    }
}
