using CsCheck;
using Rinsewright.Engine.Machines;

namespace Rinsewright.Engine.Tests.Machines;

/// <summary>What must hold for any machine of a kind, whatever its figures.</summary>
public sealed class ModelLaws
{
    private static readonly MachineKind[] Conveyors =
    [
        MachineKind.RackConveyorOneTank,
        MachineKind.RackConveyorTwoTank,
        MachineKind.RackConveyorThreeTank,
    ];

    // A machine of a kind with figures a technician may meet, and racks an hour.
    private static readonly Gen<(ModelParameters P, double Racks)> AnyConveyor =
        from kind in Gen.Int[0, Conveyors.Length - 1].Select(i => Conveyors[i])
        from supply in Gen.Double[35, 70]
        from room in Gen.Double[15, 38]
        from pressure in Gen.Double[8, 35]
        from heat in Gen.Double[0.3, 1.2]
        from booster in Gen.Double[0.3, 1.2]
        from pieces in Gen.Double[4, 25]
        from racks in Gen.Double[10, 230]
        select (Made(Typicals.Of(kind), supply, room, pressure, heat, booster, pieces), racks);

    [Fact]
    public void A_hotter_supply_never_lowers_a_tank_or_the_final_rinse() =>
        AnyConveyor
            .Select(Gen.Double[0.1, 20])
            .Sample((any, more) => Rises(any, any.P with { SupplyTemperature = any.P.SupplyTemperature + more }));

    [Fact]
    public void A_hotter_supply_never_lowers_a_tank_that_gives_no_steam() =>
        AnyConveyor
            .Select(Gen.Double[0.1, 20])
            .Sample(
                (any, more) =>
                {
                    var still = any.P with { AirFactor = 0 };
                    Rises((still, any.Racks), still with { SupplyTemperature = still.SupplyTemperature + more });
                }
            );

    [Fact]
    public void A_stronger_heater_never_lowers_a_tank() =>
        AnyConveyor
            .Select(Gen.Double[1.01, 2])
            .Sample(
                (any, more) =>
                    Rises(any, any.P.WithTanks(t => t with { Heater = t.Heater is { } h ? h with { Power = h.Power * more } : null }))
            );

    [Fact] // with steam the law does not hold: warmer air that goes the same share of the way to the water leaves warmer, and carries more
    public void A_warmer_room_never_cools_a_tank_that_gives_no_steam() =>
        AnyConveyor
            .Select(Gen.Double[0.1, 8])
            .Sample(
                (any, more) =>
                {
                    var still = any.P with { AirFactor = 0 };
                    Rises((still, any.Racks), still with { RoomTemperature = still.RoomTemperature + more });
                }
            );

    [Fact] // plates that come hot from one tank into a colder rinse warm what falls into the next tank: the law is of a rinse as hot as the tanks
    public void More_plates_never_heat_a_tank_under_a_hot_rinse() =>
        AnyConveyor
            .Select(Gen.Double[1.01, 2])
            .Where((any, _) => any.P.Steady(any.Racks) is var few && few.Tanks.All(t => t.Celsius <= few.Booster))
            .Sample(
                (any, more) =>
                    Rises((any.P with { Ware = any.P.Ware with { Pieces = any.P.Ware.Pieces * more } }, any.Racks), any.P, sameRinse: true),
                iter: 400
            );

    [Fact]
    public void More_pressure_never_lowers_the_rinse_flow() =>
        AnyConveyor
            .Select(Gen.Double[1, 3])
            .Sample(
                (any, more) =>
                {
                    var rinse = any.P.Rinse!;
                    Assert.True((rinse with { Regulator = rinse.Regulator * more }).Running.Flow >= rinse.Running.Flow);
                    Assert.True((rinse with { Static = rinse.Static * more }).Running.Flow >= rinse.Running.Flow);
                    Assert.True((rinse with { Line = rinse.Line * more }).Running.Flow <= rinse.Running.Flow);
                }
            );

    [Fact]
    public void A_faster_belt_never_gives_a_plate_more_heat_units() =>
        AnyConveyor
            .Select(Gen.Double[1.01, 1.5])
            .Sample(
                (any, more) =>
                {
                    // At a rate that fits both, with tanks and rinse that hold.
                    var p = any.P.WithTanks(t => t with { Heater = t.Heater is { } h ? h with { Power = 1e5 } : null });
                    p = p with { Booster = p.Booster! with { Heater = p.Booster.Heater with { Power = 1e5 } } };
                    var racks = Math.Min(any.Racks, 120);
                    var slow = HeatUnits(p, racks);
                    var fast = HeatUnits(p with { Travel = p.Travel with { SpeedFactor = more } }, racks);
                    Assert.True(fast <= slow * (1 + 1e-6), $"{slow} to {fast}");
                }
            );

    [Fact]
    public void Water_and_heat_of_the_steady_state_balance() =>
        AnyConveyor.Sample(any =>
        {
            var s = any.P.Steady(any.Racks);
            double inflow = s.MeanRinse,
                outflow = s.RinseEvaporation + s.Bypassed;
            for (var i = 0; i < s.Tanks.Length; i++)
            {
                ref readonly var t = ref s.Tanks[i];
                inflow += t.Fill;
                outflow += t.Evaporation + t.Leak + t.Floor + t.Drained + (any.P.Tanks[i].SpillsTo < 0 ? t.Overflow : 0);
                Assert.InRange(t.Power, -1e-6, t.Stand == HeaterStand.Off ? 1e-6 : any.P.Tanks[i].Heater!.Power * (1 + 1e-9));
            }

            Relative.Equal(inflow, outflow, 1e-9);
        });

    [Fact] // one and the same machine, once solved and once stepped for hours
    public void The_steady_state_is_where_stepping_goes() =>
        AnyConveyor.Sample(
            any =>
            {
                var s = any.P.Steady(any.Racks);
                var stepper = new Stepper(new Simulation(any.P), 1);
                stepper.Go(2000, 0);
                stepper.Go(5400, s.Duties.Racks);
                var meter = new Meter(s.Tanks.Length);
                stepper.Go(3600, s.Duties.Racks, null, meter);
                for (var i = 0; i < s.Tanks.Length; i++)
                {
                    // Half a thermostat's band, and the rule for the mean of a plate, which is within 0.04 of the exact mean: over the 40 K that a plate is below the water, 1.6 K.
                    // A tank that no thermostat holds hands its own share of that on with its overflow.
                    var band = any.P.Tanks[i].Heater?.Band ?? 0;
                    var handsOn = s.Tanks[(i + 1)..].Count(t => t.Stand != HeaterStand.Holds);
                    Assert.Equal(s.Tanks[i].Celsius, meter.Celsius(i), (band / 2) + (1.6 * (1 + handsOn)));
                }
            },
            iter: 12
        );

    private static ModelParameters Made(
        ModelParameters p,
        double supply,
        double room,
        double pressure,
        double heat,
        double booster,
        double pieces
    ) =>
        p.WithTanks(t => t with { Heater = t.Heater is { } h ? h with { Power = h.Power * heat } : null }) with
        {
            SupplyTemperature = supply,
            RoomTemperature = room,
            Rinse = p.Rinse! with { Regulator = pressure * 6894.757 },
            Booster = p.Booster! with { Heater = p.Booster.Heater with { Power = p.Booster.Heater.Power * booster } },
            Ware = p.Ware with { Pieces = pieces },
        };

    // A hotter rinse steams off more of the water that would have warmed the tanks below. What falls from tank to tank is less by that share,
    // and each tank is a mean of what falls into it, of what ware brings from the tanks before and of the air: less of the first takes none down
    // by more than that share of what lies between the hottest and the coldest water.
    private static double Steamed(SteadySolution was, SteadySolution now)
    {
        var hottest = Math.Max(now.Booster, now.Tanks.Max(t => t.Celsius));
        var share = Math.Max(0, Steam(now) - Steam(was)) / now.Tanks.Min(t => t.Overflow);
        return share * (hottest - was.Tanks.Min(t => t.Celsius));
    }

    private static double Steam(SteadySolution s) => s.RinseEvaporation + s.Tanks.Sum(t => t.Evaporation);

    private static void Rises((ModelParameters P, double Racks) before, ModelParameters after, bool sameRinse = false)
    {
        var was = before.P.Steady(before.Racks);
        var now = after.Steady(before.Racks);
        var slack = before.P.AirFactor > 0 ? Math.Max(1e-6, Steamed(was, now)) : 1e-6;
        for (var i = 0; i < was.Tanks.Length; i++)
        {
            Assert.True(
                now.Tanks[i].Celsius >= was.Tanks[i].Celsius - slack,
                $"Tank {i}: {was.Tanks[i].Celsius} to {now.Tanks[i].Celsius}"
            );
        }

        Assert.True(now.Booster >= was.Booster - 1e-9);
        if (sameRinse)
        {
            Assert.Equal(was.MeanRinse, now.MeanRinse, 1e-12);
        }
    }

    private static double HeatUnits(ModelParameters p, double racks)
    {
        var reader = new SteadyReader(p.Tanks.Length);
        return reader.Pass(p, p.Steady(racks)).HeatUnits;
    }
}
