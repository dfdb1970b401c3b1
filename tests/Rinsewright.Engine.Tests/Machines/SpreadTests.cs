using System.Numerics;
using Rinsewright.Engine.Heat;
using Rinsewright.Engine.Machines;

namespace Rinsewright.Engine.Tests.Machines;

/// <summary>The kernels that take several machines side by side against those that take one, and the bands against a study of 600 draws (check list, section 7).</summary>
public sealed class SpreadTests
{
    private static readonly Machine TwoTank = TypicalMachines.Of(MachineKind.RackConveyorTwoTank);

    public static TheoryData<MachineKind> Kinds => [.. Enum.GetValues<MachineKind>()];

    // Idle, a light load, a heavy one, as many as fit: heaters that hold, that give all, that are off.
    [Theory]
    [MemberData(nameof(Kinds))]
    public void Side_by_side_is_the_same_as_one_at_a_time(MachineKind kind)
    {
        var run = new SpreadRun(TypicalMachines.Of(kind), Scenario.HeatUp(), 5, []);
        var tanks = run.Machine(0).Tanks.Length;
        var lanes = new SteadyLanes(tanks);
        var scalar = new SteadySolver(tanks);
        for (var first = 0; first < 64; first += Vector<double>.Count)
        {
            var machines = Enumerable.Range(first, Vector<double>.Count).Select(run.Machine).ToArray();
            foreach (var share in new[] { 0, 0.3, 0.8, 1e6 })
            {
                var racks = share * Duties.MostRacks(machines[0]);
                lanes.Solve(machines, racks);
                for (var lane = 0; lane < machines.Length; lane++)
                {
                    AssertSame(scalar.Solve(machines[lane], racks), lanes.Lane(lane));
                }
            }
        }
    }

    [Fact]
    public void Faults_go_side_by_side_too()
    {
        foreach (var fault in MachineFaults.Of(TwoTank))
        {
            var run = new SpreadRun(TwoTank, Scenario.HeatUp(), 9, [new FaultAtSeverity(fault, 1)]);
            var lanes = new SteadyLanes(2);
            var scalar = new SteadySolver(2);
            var machines = Enumerable.Range(0, Vector<double>.Count).Select(run.Machine).ToArray();
            foreach (var racks in new[] { 0, 150 / 3600.0 })
            {
                lanes.Solve(machines, racks);
                for (var lane = 0; lane < machines.Length; lane++)
                {
                    AssertSame(scalar.Solve(machines[lane], racks), lanes.Lane(lane), fault.Id);
                }
            }
        }
    }

    [Theory]
    [MemberData(nameof(Kinds))]
    public void A_cold_start_side_by_side_takes_the_time_of_the_stepped_one(MachineKind kind)
    {
        var run = new SpreadRun(TypicalMachines.Of(kind), Scenario.HeatUp(), 5, []);
        var lanes = new HeatUpLanes(run.Machine(0).Tanks.Length);
        var machines = Enumerable.Range(0, Vector<double>.Count).Select(run.Machine).ToArray();
        lanes.Run(machines);
        for (var lane = 0; lane < machines.Length; lane++)
        {
            var (fill, heat) = new Stepper(new Simulation(machines[lane]), 1).ColdStart(4 * 3600);

            Assert.Equal(fill, lanes.FillTime[lane]);
            Assert.Equal(heat, lanes.HeatTime[lane]);
        }
    }

    // The scalar pass is exact in time; the other takes a rule of second order at the same substeps.
    [Theory]
    [InlineData("ceramic", 0.0059)]
    [InlineData("steel", 0.001)]
    [InlineData("glass", 0.0025)]
    [InlineData("polycarbonate", 0.003)]
    public void A_plate_side_by_side_is_close_to_the_exact_one(string material, double thickness)
    {
        var p = ModelParameters.From(TwoTank);
        p = p with { Ware = p.Ware with { Material = Material.Find(material)!, Thickness = thickness } };
        var machines = Enumerable.Repeat(p, Vector<double>.Count).ToArray();
        var lanes = new SteadyLanes(2);
        lanes.Solve(machines, 150 / 3600.0);
        var phases = new PlatePhase[PlateWay.Most];
        var count = PlateWay.Phases(p, lanes.Lane(0), phases);
        var steps = phases.Take(count).Select(f => (int)Math.Ceiling((f.Seconds / PlatePass.UsualSubstep) - 1e-9)).ToArray();
        var exact = new PlatePass().Run(p.Ware.Material, thickness, p.Ware.In, phases.AsSpan(0, count));
        var plate = new PlateLanes();
        plate.Run(machines, lanes, steps);

        Assert.Equal(exact.Peak, plate.Lane(0).Peak, 0.02);
        Relative.Equal(exact.HeatUnits, plate.Lane(0).HeatUnits, 0.002);
        Relative.Equal(exact.A0, plate.Lane(0).A0, 0.002);
        Assert.Equal(exact.Mean, plate.Lane(0).Mean, 0.02);
    }

    [Fact]
    public void The_same_seed_gives_the_same_bands_however_the_draws_are_split()
    {
        var scenario = Scenario.Steady(150);
        var whole = MachineSpread.Of(TwoTank, scenario, 11, 200);
        var split = MachineSpread.Bands([
            MachineSpread.Draw(TwoTank, scenario, 11, 101, 99, cancellation: TestContext.Current.CancellationToken),
            MachineSpread.Draw(TwoTank, scenario, 11, 0, 3, cancellation: TestContext.Current.CancellationToken),
            MachineSpread.Draw(TwoTank, scenario, 11, 3, 98, cancellation: TestContext.Current.CancellationToken),
        ]);

        Assert.Equal(whole.Bands, split.Bands);
        Assert.NotEqual(whole.Bands, MachineSpread.Of(TwoTank, scenario, 12, 200).Bands);
    }

    // What a screen does: some at a time, from one run.
    [Theory]
    [InlineData(MachineKind.RackConveyorTwoTank)]
    [InlineData(MachineKind.DoorHotWater)]
    [InlineData(MachineKind.DoorChemical)]
    public void Bands_drawn_a_few_at_a_time_are_those_drawn_at_once(MachineKind kind)
    {
        var machine = TypicalMachines.Of(kind);
        var scenario = Scenario.Steady(30);
        var run = MachineSpread.Begin(machine, scenario, 7);
        var parts = Enumerable.Range(0, 40).Select(n => run.Draw(n, 1, TestContext.Current.CancellationToken)).ToList();

        Assert.Equal(MachineSpread.Of(machine, scenario, 7, 40).Bands, MachineSpread.Bands(parts).Bands);
        Assert.Throws<ArgumentOutOfRangeException>(() => run.Draw(-1, 1, TestContext.Current.CancellationToken));
        Assert.Throws<ArgumentOutOfRangeException>(() => run.Draw(0, 0, TestContext.Current.CancellationToken));
    }

    // Every draw stepped through twelve fine cycles, against what its band is made of: few cycles where it dumps, else a balance moved by what one stepped machine differs by. Each end within a quarter
    // of the width, or within half of what gauges and eyes tell. A dose grows so fast with temperature that the balance leaves its upper end open by two fifths of the width.
    [Theory]
    [InlineData(MachineKind.DoorChemical, 25)]
    [InlineData(MachineKind.DoorChemical, 37)]
    [InlineData(MachineKind.DoorHotWater, 25)]
    [InlineData(MachineKind.Undercounter, 15)]
    public void Bands_of_a_machine_with_doors_are_those_of_draws_stepped_one_by_one(MachineKind kind, double rate)
    {
        const int Draws = 100;
        var machine = TypicalMachines.Of(kind);
        var run = MachineSpread.Begin(machine, Scenario.Steady(rate), 1);
        var bands = MachineSpread.Bands([run.Draw(0, Draws, TestContext.Current.CancellationToken)]);
        var reader = new SteadyReader(1);
        var fine = Enumerable
            .Range(0, Draws)
            .Select(n => reader.Read(run.Machine(n), rate, new CyclesStepped(8, 4, 0.25, 1, 1, 0)))
            .ToList();
        foreach (var band in bands.Bands)
        {
            var id = band.Observable.Id;
            var values = fine.Select(r => r.Of(id)?.Value?.Value ?? double.NaN).Where(double.IsFinite).Order().ToArray();
            double low = Quantile(values, 0.05),
                high = Quantile(values, 0.95),
                slack = Math.Max(0.25 * (high - low), 0.5 * band.Observable.Threshold),
                above = band.Observable == Observables.PlateHeatUnits ? Math.Max(slack, 0.4 * (high - low)) : slack;

            Assert.True(
                Math.Abs(band.Low.Value - low) <= slack && Math.Abs(band.High.Value - high) <= above,
                $"{id}: {band.Low.Value} to {band.High.Value}, stepped {low} to {high}"
            );
        }
    }

    private static double Quantile(double[] sorted, double share)
    {
        var (below, rest) = ((int)(share * (sorted.Length - 1)), (share * (sorted.Length - 1)) % 1);
        return rest > 0 ? ((1 - rest) * sorted[below]) + (rest * sorted[below + 1]) : sorted[below];
    }

    // Section 7, point 2: 5 to 95 % of 600 draws by another program. Its shapes (normal or logarithmic, common or one by one) and the steps of its plate are not printed, and 600 draws leave
    // a tenth of a standard deviation open at each end; so each end may lie a fifth of the printed width off.
    [Theory]
    [InlineData("washTankTemperature", 156.5, 162.6)]
    [InlineData("platePeakTemperature", 168.9, 176.0)]
    [InlineData("plateHeatUnits", 4400, 10900)]
    [InlineData("boosterPower", 12.2, 16.8)]
    [InlineData("idleTankPower", 1.7, 2.8)]
    [InlineData("ventHeat", 3.7, 7.8)]
    public void Bands_of_the_two_tank_machine_are_those_of_the_study(string id, double low, double high)
    {
        var band = MachineSpread.Of(TwoTank, Scenario.Steady(150), 20261125).Of(id)!;

        Assert.Equal(low, band.Low.Value, 0.2 * (high - low));
        Assert.Equal(high, band.High.Value, 0.2 * (high - low));
    }

    // The study solved balances; ours are moved to what stepping through cycles gives, by the printed difference of the two: wash 157.0 for 158, plate 168.4 for 171.3 °F, HUE 5598 for 6719
    // (sections 1.9, 2.4 and 3).
    [Theory]
    [InlineData("washTankTemperature", 152.5, 159.5)]
    [InlineData("platePeakTemperature", 163.9, 171.3)]
    [InlineData("plateHeatUnits", 3333, 7582)]
    public void Bands_of_the_door_machine_are_those_of_the_study(string id, double low, double high)
    {
        var band = MachineSpread.Of(TypicalMachines.Of(MachineKind.DoorHotWater), Scenario.Steady(51), 20261125).Of(id)!;

        Assert.Equal(low, band.Low.Value, 0.2 * (high - low));
        Assert.Equal(high, band.High.Value, 0.2 * (high - low));
    }

    // What the screen prints as expected lies in its band.
    [Theory]
    [MemberData(nameof(Kinds))]
    public void The_settled_machine_lies_in_its_bands(MachineKind kind)
    {
        var machine = TypicalMachines.Of(kind);
        var rate = 0.7 * 3600 * Duties.MostRacks(ModelParameters.From(machine));
        var bands = MachineSpread.Of(machine, Scenario.Steady(rate), 3, 100);
        foreach (var observed in SteadyState.Of(machine, rate).Observables)
        {
            if (observed.Value is { } value && bands.Of(observed.Observable.Id) is { } band)
            {
                // A tenth of the threshold for what has no spread at all: machines with doors are stepped here, their bands are of balances.
                var slack = 0.1 * observed.Observable.Threshold;
                Assert.True(
                    value.Value >= band.Low.Value - slack && value.Value <= band.High.Value + slack,
                    $"{observed.Observable.Id}: {band.Low} {value} {band.High}"
                );
            }
        }
    }

    [Fact]
    public void At_full_rate_the_wash_may_sag_far()
    {
        var band = MachineSpread.Of(TwoTank, Scenario.Steady(150), 20261125).Of("washTankFullRate")!;

        Assert.Equal(145, band.Low.Value, 2.0);
        Assert.Equal(155, band.High.Value, 2.0);
    }

    [Theory]
    [MemberData(nameof(Kinds))]
    public void Every_observable_of_a_settled_machine_has_a_band(MachineKind kind)
    {
        var machine = TypicalMachines.Of(kind);
        var rate = 0.7 * 3600 * Duties.MostRacks(ModelParameters.From(machine));
        var bands = MachineSpread.Of(machine, Scenario.Steady(rate), 3, 100);
        foreach (var observed in SteadyState.Of(machine, rate).Observables.Where(o => o.Value is not null))
        {
            var band = bands.Of(observed.Observable.Id);
            Assert.True(band is not null || observed.Observable == Observables.SanitizerOnWare, observed.Observable.Id);
            Assert.True(band is null || (band.Low.Value <= band.Middle.Value && band.Middle.Value <= band.High.Value));
        }
    }

    [Fact]
    public void A_calibrated_machine_has_narrower_bands()
    {
        for (ulong seed = 1; seed <= 5; seed++)
        {
            var readings = new SyntheticReadings(TwoTank, seed).Visit().Readings;
            var calibrated = MachineCalibration.From(TwoTank, readings).Machine;
            var before = MachineSpread.Of(TwoTank, Scenario.Steady(150), 1, 400);
            var after = MachineSpread.Of(calibrated, Scenario.Steady(150), 1, 400);
            foreach (var id in new[] { "boosterPower", "rinseVolumePerRack", "fillTime", "drainWater", "finalRinseTemperature" })
            {
                Assert.True(Width(after.Of(id)!) < 0.95 * Width(before.Of(id)!), id);
            }

            Assert.All(after.Bands, b => Assert.True(Width(b) <= 1.35 * Width(before.Of(b.Observable.Id)!), b.Observable.Id));
        }
    }

    // Section 7, point 3 (an estimate): after five readings about 2 °F on tanks, 2 to 3 °F on the plate, 10 % on power and water, a factor 1.5 on HUE. Half-widths of the bands, mean of ten visits.
    [Fact]
    public void Five_readings_bring_the_bands_down_to_what_is_expected_of_them()
    {
        const int Visits = 10;
        double wash = 0,
            plate = 0,
            booster = 0,
            water = 0,
            units = 1;
        for (ulong seed = 1; seed <= Visits; seed++)
        {
            var readings = new SyntheticReadings(TwoTank, seed)
                .Take(ReadingKinds.HeatUpTime, "wash", 50, 68)
                .Take(ReadingKinds.IdleHeaterDuty, "wash")
                .Take(ReadingKinds.RinseVolumePerRack)
                .Take(ReadingKinds.RinsePressure)
                .Take(ReadingKinds.SupplyTemperature)
                .Take(ReadingKinds.TankTemperature, "wash", rate: 150)
                .Readings;
            var bands = MachineSpread.Of(MachineCalibration.From(TwoTank, readings).Machine, Scenario.Steady(150), 1, 400);
            wash += Width(bands.Of("washTankTemperature")!) / 2 / Visits;
            plate += Width(bands.Of("platePeakTemperature")!) / 2 / Visits;
            booster += Width(bands.Of("boosterPower")!) / 2 / bands.Of("boosterPower")!.Middle.Value / Visits;
            water += Width(bands.Of("rinseVolumePerRack")!) / 2 / bands.Of("rinseVolumePerRack")!.Middle.Value / Visits;
            units *= Math.Pow(bands.Of("plateHeatUnits")!.High.Value / bands.Of("plateHeatUnits")!.Low.Value, 0.5 / Visits);
        }

        Assert.InRange(wash, 0.5, 2.5);
        Assert.InRange(plate, 1, 3.5);
        Assert.InRange(booster, 0.03, 0.15);
        Assert.InRange(water, 0.02, 0.10);
        // The estimate says 1.5. Ours is 1.57: HUE hang on the transfer of the sprays, which none of the five readings tells.
        Assert.InRange(units, 1.1, 1.6);
    }

    private static double Width(Band band) => band.High.Value - band.Low.Value;

    private static void AssertSame(SteadySolution expected, SteadySolution actual, string what = "")
    {
        for (var i = 0; i < expected.Tanks.Length; i++)
        {
            ref readonly var e = ref expected.Tanks[i];
            ref readonly var a = ref actual.Tanks[i];
            Assert.True(e.Stand == a.Stand, $"{what}: {e.Stand} {a.Stand}");
            Same(e.Celsius, a.Celsius, what);
            Same(e.Mass, a.Mass, what);
            Same(e.Power, a.Power, what, 1e4);
            Same(e.Overflow, a.Overflow, what);
            Same(e.Fill, a.Fill, what);
            Same(e.Leak, a.Leak, what);
            Same(e.Vent, a.Vent, what, 1e3);
            Same(e.Transfer, a.Transfer, what);
            Same(e.Spray.Total, a.Spray.Total, what);
            Same(e.Spray.ArmPressure, a.Spray.ArmPressure, what);
        }

        Same(expected.Booster, actual.Booster, what);
        Same(expected.BoosterPower, actual.BoosterPower, what, 1e4);
    }

    private static void Same(double expected, double actual, string what, double scale = 1) =>
        Assert.True(Math.Abs(expected - actual) <= 1e-9 * Math.Max(scale, Math.Abs(expected)), $"{what}: {expected:R} {actual:R}");
}
