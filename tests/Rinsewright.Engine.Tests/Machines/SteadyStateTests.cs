using Rinsewright.Engine.Machines;
using Rinsewright.Engine.Quantities;

namespace Rinsewright.Engine.Tests.Machines;

/// <summary>The reading at once against the stepped run, trade facts in their direction, and ranges of published use.</summary>
public sealed class SteadyStateTests
{
    [Theory] // the same machine read both ways; tolerance: what gauges and eyes tell, or the thermostat's band
    [InlineData(MachineKind.RackConveyorOneTank, 150)]
    [InlineData(MachineKind.RackConveyorTwoTank, 150)]
    [InlineData(MachineKind.DoorHotWater, 51)]
    [InlineData(MachineKind.DoorChemical, 30)]
    [InlineData(MachineKind.Undercounter, 20)]
    public void A_settled_reading_is_that_of_a_long_run(MachineKind kind, double racks)
    {
        var machine = TypicalMachines.Of(kind);
        var quick = SteadyState.Of(machine, racks);
        var run = MachineRun.Run(machine, Scenario.Steady(racks), null, new RunOptions(SeriesEvery: 0), null, Token);
        foreach (var observed in run.Observables)
        {
            if (observed.Value is not { } value || observed.Observable == Observables.SoilLeft)
            {
                continue;
            }

            var now = quick.Of(observed.Observable.Id)!.Value!.Value.Value;
            var tolerance = Tolerance(observed.Observable, value.Value);
            Assert.True(Math.Abs(now - value.Value) <= tolerance, $"{observed.Observable.Id}: {now} at once, {value.Value} stepped");
        }
    }

    [Theory]
    [InlineData(MachineKind.RackConveyorTwoTank, 1)]
    [InlineData(MachineKind.DoorHotWater, 8)]
    [InlineData(MachineKind.DoorChemical, 8)]
    public void A_reading_comes_in_parts(MachineKind kind, int waits)
    {
        var machine = TypicalMachines.Of(kind);
        var parts = SteadyState.InParts(machine, 25).ToList();

        Assert.Equal(waits, parts.Count(p => p is null));
        Assert.NotNull(parts[^1]);
        Assert.Throws<ArgumentOutOfRangeException>(() => SteadyState.InParts(machine, 0));
        Assert.Equal(waits + 1, WhatIf.InParts(new Situation(machine, 25)).Count());
    }

    [Theory] // in parts is not otherwise: four cycles and four more, each in one go
    [InlineData(MachineKind.DoorHotWater, 25)]
    [InlineData(MachineKind.Undercounter, 15)]
    public void Cycles_one_by_one_are_cycles_in_one_go(MachineKind kind, double racksPerHour)
    {
        var machine = TypicalMachines.Of(kind);
        var p = ModelParameters.From(machine);
        var balance = new SteadySolver(p.Tanks.Length).Solve(p, racksPerHour / 3600);
        var solutes = new SteadySolutes(p.Tanks.Length);
        solutes.Solve(p, balance);
        var simulation = new Simulation(p);
        simulation.Settle(balance, solutes);
        var stepper = new Stepper(simulation, 0.25) { Waiting = 3 };
        stepper.Go(4 * 3600 / racksPerHour, racksPerHour / 3600);
        var meter = new Meter(p.Tanks.Length);
        stepper.Go(4 * 3600 / racksPerHour, racksPerHour / 3600, null, meter);
        var readout = new Readout();
        readout.Load(p, meter);

        var reading = SteadyState.Of(machine, racksPerHour);
        foreach (var observed in readout.InOrder().Where(o => o.Value is not null))
        {
            Relative.Equal(observed.Value!.Value.Value, reading.Of(observed.Observable.Id)!.Value!.Value.Value, 1e-9);
        }
    }

    [Fact] // trade fact, common practice, no source: a missing drain seal loses tank water, and running readings do not show it
    public void A_missing_drain_seal_shows_idle_and_hides_under_load()
    {
        var (was, now) = TwoTank("drain-seal-missing");

        Assert.True(Gain(was, now, Observables.IdleWater) > 100);
        Assert.True(Gain(was, now, Observables.IdleTankPower) > 1);
        Assert.True(Math.Abs(Gain(was, now, Observables.WashTankTemperature)) < 1.5);
        Assert.True(Math.Abs(Gain(was, now, Observables.MakeUpWater)) < 5);
    }

    [Fact] // trade fact, common practice, no source
    public void Open_deflector_flaps_lose_tank_water()
    {
        var (was, now) = TwoTank("deflector-flap-off");

        Assert.True(Gain(was, now, Observables.MakeUpWater) > 50);
        Assert.True(Gain(was, now, Observables.DrainWater) > 50);
    }

    [Fact] // trade fact, common practice, no source
    public void An_open_end_cap_throws_water_out_and_starves_the_other_jets()
    {
        var (was, now) = TwoTank("wash-endcap-missing");

        Assert.True(Gain(was, now, Observables.FloorWater) > 50);
        Assert.True(Gain(was, now, Observables.WashArmPressure) < -0.5);
    }

    [Fact] // trade fact, common practice, no source
    public void A_blocked_strainer_weakens_its_own_spray()
    {
        var (was, now) = TwoTank("intake-strainer-clogged");

        Assert.True(Gain(was, now, Observables.WashArmPressure) < -1);
        Assert.Equal(was.Number(Observables.FinalRinsePressure), now.Number(Observables.FinalRinsePressure), 1e-9);
    }

    [Theory] // trade fact, common practice, no source
    [InlineData("rinse-switch-stuck-on")]
    [InlineData("wash-switch-held-on")]
    public void A_jammed_switch_keeps_it_running(string fault)
    {
        var (was, now) = TwoTank(fault);

        Assert.True(fault[0] == 'r' ? Gain(was, now, Observables.IdleWater) > 500 : Gain(was, now, Observables.IdleTankPower) > 0.5);
    }

    [Fact] // common-practice bands, no source: wash 150 to 160 °F, rinse tank 160 to 170 °F, final rinse 180 to 190 °F
    public void The_typical_two_tank_machine_is_in_the_usual_bands()
    {
        var r = SteadyState.Of(TypicalMachines.Of(MachineKind.RackConveyorTwoTank), 150);

        Assert.InRange(r.Number(Observables.WashTankTemperature), 150, 160.001);
        Assert.InRange(r.Number(Observables.RinseTankTemperature), 160, 170);
        Assert.InRange(r.Number(Observables.FinalRinseTemperature), 180, 190);
    }

    // Most that the tank heaters of an efficient machine may take idle, kW [energy-star-2007], and gallons an hour of final rinse at full rate [ashrae-2023-table-15].
    [Theory]
    [InlineData(MachineKind.Undercounter, 0.90, 19, 51)]
    [InlineData(MachineKind.DoorHotWater, 1.0, 28, 92)]
    [InlineData(MachineKind.DoorChemical, 0.6, 33, 68)]
    [InlineData(MachineKind.RackConveyorOneTank, 2.0, 44, 290)]
    [InlineData(MachineKind.RackConveyorTwoTank, 2.6, 44, 290)]
    [InlineData(MachineKind.RackConveyorThreeTank, 2.6, 44, 290)]
    [InlineData(MachineKind.Flight, 2.6, 57, 360)]
    public void Typical_machines_use_what_such_machines_use(MachineKind kind, double idleKilowatt, double least, double most)
    {
        var side = WhatIf.Of(new Situation(TypicalMachines.Of(kind), 1000));
        var racks = side.Reading.Number(Observables.RacksPerHour);

        Assert.InRange(side.Reading.Number(Observables.IdleTankPower), 0.1, idleKilowatt);
        Assert.InRange(side.PerRack.WaterLitre * racks / 3.785411784, least, most);
    }

    // Water of a rack, gal [energy-star-2007]: the hot door and undercounter machines keep the limit of an efficient machine. The others do not: conveyors in the field take 691 gal/h where efficient
    // ones take 261 (a study of 18 machines, second-hand), and typical machines stand for those in the field.
    [Theory]
    [InlineData(MachineKind.Undercounter, 1.00)]
    [InlineData(MachineKind.DoorHotWater, 0.95)]
    [InlineData(MachineKind.RackConveyorOneTank, 0.70 * 691 / 261)]
    [InlineData(MachineKind.RackConveyorTwoTank, 0.54 * 691 / 261)]
    [InlineData(MachineKind.RackConveyorThreeTank, 0.54 * 691 / 261)]
    [InlineData(MachineKind.DoorChemical, 1.18 * 691 / 261)]
    public void Water_of_a_rack_is_that_of_the_field_at_the_most(MachineKind kind, double gallons) =>
        Assert.InRange(WhatIf.Of(new Situation(TypicalMachines.Of(kind), 1000)).PerRack.WaterLitre / 3.785411784, 0.3 * gallons, gallons);

    // Heat to the room of an unhooded hot-water conveyor, 152 W for 100 dishes an hour [ashrae-2001-29]: with 10 plates a rack 2.3 kW at 150 racks an hour, with 25 dishes 5.7 kW. Right order, a factor
    // of two uncertain.
    [Theory]
    [InlineData(MachineKind.RackConveyorOneTank, 150)]
    [InlineData(MachineKind.RackConveyorTwoTank, 150)]
    [InlineData(MachineKind.RackConveyorThreeTank, 150)]
    [InlineData(MachineKind.Flight, 150)]
    public void Room_load_is_of_the_order_of_the_handbook(MachineKind kind, double racks)
    {
        var p = Typicals.Of(kind);
        var s = p.Steady(racks);
        var shells = p.Tanks.Select((t, i) => t.Shell * (s.Tanks[i].Celsius - p.RoomTemperature)).Sum();

        Assert.InRange((s.Vent + shells) / 1000, 1.52 * racks * 10 / 1000 / 2, 1.52 * racks * 25 / 1000 * 2);
    }

    [Theory] // a machine of any kind is read at once, with nothing missing that it has
    [MemberData(nameof(Typicals.Kinds), MemberType = typeof(Typicals))]
    public void Every_kind_is_read(MachineKind kind)
    {
        var reading = SteadyState.Of(TypicalMachines.Of(kind), 20);

        Assert.Equal(
            [ReadDuring.HeatUp, ReadDuring.Idle, ReadDuring.Load],
            reading.Observables.Select(o => o.Observable.During).Distinct().Where(d => d != ReadDuring.FullRate).Order()
        );
        Assert.All(reading.Observables, o => Assert.True(o.Value is { } v && double.IsFinite(v.Value), o.Observable.Id));
        Assert.True(reading.Load.ElectricKilowatt > reading.StandBy.ElectricKilowatt);
        Assert.True(reading.Load.WaterLitrePerHour > 0);
        Assert.Equal(kind == MachineKind.DoorChemical, reading.Load.SanitizerGramPerHour > 0);
    }

    [Theory]
    [InlineData("heat-up")]
    [InlineData("cold-start")]
    [InlineData("idle")]
    [InlineData("steady")]
    [InlineData("rush")]
    [InlineData("end-of-shift")]
    public void Every_scenario_runs_and_writes_its_course(string id)
    {
        var run = MachineRun.Run(
            TypicalMachines.Of(MachineKind.RackConveyorTwoTank),
            Scenario.Find(id, 150)!,
            null,
            new RunOptions(1, 60),
            null,
            Token
        );

        Assert.NotEmpty(run.Observables);
        Assert.All(run.Series!.Lines, l => Assert.Equal(run.Series.Seconds.Count, l.Values.Count));
        Assert.All(run.Series.Seconds.Zip(run.Series.Seconds.Skip(1)), t => Assert.True(t.Second > t.First));
        var wash = run.Series.Lines.Single(l => l.Id == "washTankTemperature").Values;
        Assert.True(id == "end-of-shift" ? wash[^1] < 150 : wash[^1] > 155, $"{wash[^1]}");
    }

    [Fact] // heat-up starts at the 140 °F of the supply; idle and load hold the set point; there is ware under load only
    public void Each_stage_is_read_for_itself()
    {
        var run = MachineRun.Run(
            TypicalMachines.Of(MachineKind.RackConveyorTwoTank),
            Scenario.Steady(150),
            [MachineFaults.Find("drain-seal-missing")!.At(1)],
            new RunOptions(1, 0),
            null,
            Token
        );
        double Of(int stage, Observable o) => run.Stages[stage].Of(o.Id)!.Value!.Value.Value;

        Assert.Equal([ReadDuring.HeatUp, ReadDuring.Idle, ReadDuring.Load], run.Stages.Select(s => s.During));
        Assert.InRange(Of(0, Observables.WashTankTemperature), 140, 158);
        Assert.InRange(Of(1, Observables.WashTankTemperature), 158, 162);
        Assert.True(Of(1, Observables.MakeUpWater) > 400);
        Assert.True(Of(2, Observables.MakeUpWater) < 5);
        Assert.Null(run.Stages[1].Of("platePeakTemperature")!.Value);
        Assert.Null(run.Stages[1].Of("finalRinseTemperature")!.Value);
        Assert.Equal(run.Number(Observables.PlatePeakTemperature), Of(2, Observables.PlatePeakTemperature));
        Assert.Equal(run.Number(Observables.IdleTankPower), Of(1, Observables.IdleTankPower));
    }

    private static CancellationToken Token => TestContext.Current.CancellationToken;

    private static double Tolerance(Observable observable, double value) =>
        observable.Unit.Dimension switch
        {
            // Half a band of 4 °F, or what shows.
            Dimension.Temperature => 2.2,
            // Edges of the zones fall between steps: 2 % of the dose at half a second, and 16 cells against 8.
            Dimension.HeatUnits or Dimension.EquivalentTime => 0.15 * value,
            // Heaters switch a few times in the stretch that is read.
            Dimension.Power => Math.Max(0.8, 0.1 * value),
            Dimension.MassConcentration => Math.Max(observable.Threshold, 0.1 * value),
            _ => Math.Max(observable.Threshold, 0.05 * value),
        };

    private static (SteadyReading Was, SteadyReading Now) TwoTank(string fault)
    {
        var machine = TypicalMachines.Of(MachineKind.RackConveyorTwoTank);
        return (SteadyState.Of(machine, 150), SteadyState.Of(machine, 150, [MachineFaults.Find(fault)!.At(1)]));
    }

    private static double Gain(SteadyReading was, SteadyReading now, Observable observable) =>
        now.Number(observable) - was.Number(observable);
}
