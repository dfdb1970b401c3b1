using Rinsewright.Engine.Machines;
using Rinsewright.Engine.Quantities;

namespace Rinsewright.Engine.Tests.Machines;

/// <summary>
/// Calibration on machines whose true figures are known because a test made them: recovered, covered by the intervals as often as said, contradictions told. No expected
/// value comes from the estimate itself; printed readings are those of another program (check list, section 4).
/// </summary>
public sealed class CalibrationTests
{
    private static readonly DateOnly Day = new(2026, 11, 20);
    private static readonly Machine TwoTank = TypicalMachines.Of(MachineKind.RackConveyorTwoTank);

    private static MachineReading Read(ReadingKind kind, double value, Unit unit, string? part = null) =>
        new(kind.Id, new Amount(value, unit), Day) { Part = part };

    private static MachineReading HeatUp(double seconds) =>
        Read(ReadingKinds.HeatUpTime, seconds, Units.Second, "wash") with
        {
            From = new Amount(62, Units.Celsius),
            To = new Amount(69, Units.Celsius),
        };

    private static CalibratedFigure Of(CalibrationResult result, string id) => result.Figures.Single(f => f.Id == id);

    // Section 4, formula 1: readings printed for a whole heater, one with an element open and one with a line lost.
    [Theory]
    [InlineData(136, 18)]
    [InlineData(209, 12)]
    [InlineData(286, 9)]
    public void A_heat_up_tells_the_power_of_the_heater(double seconds, double kilowatt)
    {
        var heater = Of(MachineCalibration.From(TwoTank, [HeatUp(seconds)]), "wash.heater");

        Assert.True(heater.Told);
        Assert.InRange(kilowatt, heater.Low.Value, heater.High.Value);
        // That the tank was full to the overflow and not to the float is 3 % of the water.
        Relative.Equal(kilowatt, heater.Value.Value, 0.04);
    }

    // Section 4, formula 6: nozzles limed, or the pressure low; only both readings together part them.
    [Theory]
    [InlineData(0.888, 20, 1.00)]
    [InlineData(0.533, 20, 0.60)]
    [InlineData(0.562, 8, 1.00)]
    public void Volume_and_pressure_part_the_nozzles_from_the_regulator(double gallons, double psi, double coefficient)
    {
        var result = MachineCalibration.From(
            TwoTank,
            [Read(ReadingKinds.RinseVolumePerRack, gallons, Units.Gallon), Read(ReadingKinds.RinsePressure, psi, Units.Psi)]
        );
        var rinse = result.Machine.FinalRinse!;
        var k = rinse.Flow.Value.InCubicMetrePerSecond / Math.Sqrt(rinse.Pressure.Value.InKilopascal);
        var typical = TwoTank.FinalRinse!.Flow.Value.InCubicMetrePerSecond / Math.Sqrt(TwoTank.FinalRinse.Pressure.Value.InKilopascal);

        Assert.Empty(result.Contradictions);
        Relative.Equal(psi, rinse.Pressure.Written.Value, 0.03);
        Relative.Equal(coefficient, k / typical, 0.03);
    }

    // Row R54 and R54a: shares of power and of line current; 18 kW at 208 V three-phase is 49.96 A.
    [Theory]
    [InlineData(1, 1, 1, 1)]
    [InlineData(0.8660, 0.8660, 0, 0.5)]
    [InlineData(0, 0.8660, 0.8660, 0.5)]
    [InlineData(1, 0.5774, 0.5774, 0.66667)]
    public void Currents_of_the_lines_tell_what_is_missing(double a, double b, double c, double share)
    {
        const double Healthy = 49.96;
        var result = MachineCalibration.From(
            TwoTank,
            [
                Read(ReadingKinds.LineCurrentA, a * Healthy, Units.Ampere, "wash"),
                Read(ReadingKinds.LineCurrentB, b * Healthy, Units.Ampere, "wash"),
                Read(ReadingKinds.LineCurrentC, c * Healthy, Units.Ampere, "wash"),
            ]
        );
        var heater = Of(result, "wash.heater");

        Assert.InRange(share, heater.Low.Value / 18, heater.High.Value / 18);
        Assert.Equal([0, 1, 2], heater.Readings);
    }

    // Section 4, formula 3: 24.99 mm in 60 s is an opening of 0.60 cm²; 5.13 mm 0.12 cm².
    [Theory]
    [InlineData(24.99, 0.600)]
    [InlineData(5.13, 0.1205)]
    public void A_falling_level_tells_the_leak(double millimetres, double squareCentimetres)
    {
        var drop = Read(ReadingKinds.LevelDrop, millimetres, Units.Millimetre, "wash") with { Over = new Amount(60, Units.Second) };
        var leak = Of(MachineCalibration.From(TwoTank, [drop]), "wash.leak");

        Assert.True(leak.Told);
        Relative.Equal(squareCentimetres, leak.Value.Value, 0.003);
        Assert.InRange(squareCentimetres, leak.Low.Value, leak.High.Value);
    }

    [Fact]
    public void A_level_that_stays_tells_of_no_leak()
    {
        var drop = Read(ReadingKinds.LevelDrop, 0, Units.Millimetre, "wash") with { Over = new Amount(600, Units.Second) };
        var leak = Of(MachineCalibration.From(TwoTank, [drop]), "wash.leak");

        Assert.False(leak.Told);
        Assert.Equal(0, leak.Low.Value);
    }

    [Fact]
    public void Intervals_hold_the_truth_as_often_as_they_say()
    {
        const int Seeds = 60;
        int told = 0,
            held = 0,
            contradicted = 0;
        for (ulong seed = 1; seed <= Seeds; seed++)
        {
            var synthetic = new SyntheticReadings(TwoTank, seed).Visit();
            var result = MachineCalibration.From(TwoTank, synthetic.Readings);
            contradicted += result.Contradictions.Count > 0 ? 1 : 0;
            foreach (var figure in result.Figures.Where(f => f.Told && f.Before is not null))
            {
                told++;
                held += Holds(figure, synthetic.True(figure.Id)) ? 1 : 0;
            }
        }

        // Figures of one machine are not independent, so the allowance is that of half as many.
        var allowance = 3 * Math.Sqrt(0.9 * 0.1 / (told / 2.0));
        Assert.InRange((double)held / told, 0.9 - allowance, 0.9 + allowance);
        Assert.InRange(told, 5 * Seeds, 40 * Seeds);
        Assert.InRange(contradicted, 0, 2);
    }

    [Fact]
    public void Every_interval_holds_the_truth_of_what_no_reading_tells_too()
    {
        const int Seeds = 60;
        int all = 0,
            held = 0;
        for (ulong seed = 1001; seed <= 1000 + Seeds; seed++)
        {
            var synthetic = new SyntheticReadings(TwoTank, seed).Visit();
            foreach (var figure in MachineCalibration.From(TwoTank, synthetic.Readings).Figures.Where(f => f.Before is not null && !f.Told))
            {
                all++;
                held += Holds(figure, synthetic.True(figure.Id)) ? 1 : 0;
            }
        }

        Assert.InRange((double)held / all, 0.87, 0.93);
    }

    public static TheoryData<MachineKind> Kinds => [.. Enum.GetValues<MachineKind>()];

    [Theory]
    [MemberData(nameof(Kinds))]
    public void Every_kind_can_be_calibrated_from_all_that_could_be_read(MachineKind kind)
    {
        var machine = TypicalMachines.Of(kind);
        var synthetic = new SyntheticReadings(machine, 3).TakeAll();
        var result = MachineCalibration.From(machine, synthetic.Readings);
        var told = result.Figures.Where(f => f.Told).ToList();

        Assert.Empty(result.Problems);
        Assert.Empty(result.Contradictions);
        Assert.Equal(synthetic.Readings.Count, result.Fits.Count);
        Assert.InRange(told.Count(f => Holds(f, synthetic.True(f.Id))), 0.7 * told.Count, told.Count);
        Assert.Contains(told, f => f.Id.EndsWith(".heater", StringComparison.Ordinal));
    }

    // The heat-up is not taken from the model of the estimate but stepped second by second; half the heater is gone.
    [Fact]
    public void A_stepped_heat_up_gives_back_the_heater_it_had()
    {
        var p = ModelParameters.From(TwoTank).WithTank(0, t => t with { Heater = t.Heater! with { Share = 0.5 } });
        double from = 0,
            to = 0;
        var simulation = new Simulation(p);
        var stepper = new Stepper(simulation, 0.5)
        {
            Stepped = _ =>
            {
                from = from == 0 && simulation.Tanks[0].Celsius >= 65 ? simulation.Time : from;
                to = to == 0 && simulation.Tanks[0].Celsius >= 70 ? simulation.Time : to;
            },
        };
        stepper.ColdStart(7200);
        var reading = Read(ReadingKinds.HeatUpTime, to - from, Units.Second, "wash") with
        {
            From = new Amount(65, Units.Celsius),
            To = new Amount(70, Units.Celsius),
        };
        var heater = Of(MachineCalibration.From(TwoTank, [reading]), "wash.heater");

        // Steps of half a second at both ends of some 200 s, and the tank a little under the float by evaporation.
        Relative.Equal(0.5, heater.Share!.Value, 0.01);
    }

    // A heater that lost a line and a fill strainer clogged to 0.3, both in one visit.
    [Fact]
    public void Faults_are_found_in_the_figures_they_move()
    {
        for (ulong seed = 1; seed <= 10; seed++)
        {
            var moved = new Dictionary<string, double> { ["wash.heater"] = Math.Log(0.5), ["wash.fill"] = Math.Log(0.3) };
            var synthetic = new SyntheticReadings(TwoTank, seed, moved).Visit();
            var result = MachineCalibration.From(TwoTank, synthetic.Readings);

            Relative.Equal(0.5, Of(result, "wash.heater").Share!.Value, 0.15);
            Relative.Equal(0.3, Of(result, "wash.fill").Share!.Value, 0.12);
            Assert.InRange(Of(result, "booster.heater").Share!.Value, 0.85, 1.15);
            Assert.DoesNotContain(result.Contradictions, c => c.Kind == ContradictionKind.Misfit);
        }
    }

    [Fact]
    public void What_was_told_is_measured_with_day_and_readings_and_the_rest_stays()
    {
        var result = MachineCalibration.From(TwoTank, new SyntheticReadings(TwoTank, 7).Visit().Readings);
        var fill = result.Machine.Tanks[0].Fill!.Flow;

        Assert.Equal(Provenance.Measured, fill.Basis);
        Assert.Equal(Day, fill.On);
        Assert.Contains("wash.fillTime", fill.Source, StringComparison.Ordinal);
        Assert.True(fill.Uncertainty > 0);
        Assert.Equal(Units.GallonPerMinute, fill.Written.Unit);
        Assert.Equal(TwoTank.Tanks[1].Fill, result.Machine.Tanks[1].Fill);
        Assert.All(result.Figures.Where(f => f.Told), f => Assert.NotEmpty(f.Readings));
    }

    [Fact]
    public void Without_readings_all_stays_unknown_and_the_telling_reading_is_named()
    {
        var result = MachineCalibration.From(TwoTank, []);

        Assert.Equal(TwoTank, result.Machine);
        Assert.DoesNotContain(result.Figures, f => f.Told);
        Assert.Contains(result.Unknown, u => u is { Id: "wash.fill", Kind: "fillTime", Part: "wash" });
        Assert.Contains(result.Unknown, u => u is { Id: "supply.water", Kind: "supplyTemperature" });
        Assert.Contains(result.Unknown, u => u is { Id: "wash.leak", Kind: "levelDrop" });
        // Nothing on the list tells how well the rinse water passes its heat.
        Assert.Contains(result.Unknown, u => u is { Id: "finalRinse.transfer", Kind: null });
    }

    // A wash tank at 190 °F at full rate on 18 kW: the racks alone take more.
    [Fact]
    public void A_temperature_no_heater_could_hold_contradicts_the_heat_balance()
    {
        var hot = Read(ReadingKinds.TankTemperature, 190, Units.Fahrenheit, "wash") with { RacksPerHour = 231 };
        var result = MachineCalibration.From(TwoTank, [Read(ReadingKinds.SupplyTemperature, 140, Units.Fahrenheit), hot]);

        var balance = Assert.Single(result.Contradictions, c => c.Kind == ContradictionKind.HeatBalance);
        Assert.Equal([1], balance.Readings);
        Assert.True(balance.Size > 1.25);
    }

    // The same heater read twice: by the clock at half its power and by a meter at the whole.
    [Fact]
    public void Readings_that_cannot_both_be_right_are_named()
    {
        var result = MachineCalibration.From(
            TwoTank,
            [
                Read(ReadingKinds.SupplyTemperature, 140, Units.Fahrenheit),
                HeatUp(286),
                Read(ReadingKinds.HeaterPower, 18, Units.Kilowatt, "wash"),
                Read(ReadingKinds.RinsePressure, 20, Units.Psi),
            ]
        );

        var misfit = Assert.Single(result.Contradictions, c => c.Kind == ContradictionKind.Misfit);
        Assert.Equal([1, 2], misfit.Readings.Order());
    }

    [Theory]
    [InlineData("nosuch", "wash", 10, "unknown-kind")]
    [InlineData("heatUpTime", "wash", 10, "needs-change")]
    [InlineData("fillTime", "prewash", 10, "no-such-part")]
    [InlineData("fillTime", "wash", -1, "impossible")]
    [InlineData("fillTime", "wash", double.NaN, "impossible")]
    [InlineData("lineCurrentA", "wash", 10, "other-dimension")]
    [InlineData("levelDrop", "wash", 10, "other-dimension")]
    public void A_reading_that_cannot_be_used_is_told_and_left_out(string kind, string part, double seconds, string code)
    {
        var result = MachineCalibration.From(
            TwoTank,
            [
                Read(ReadingKinds.SupplyTemperature, 130, Units.Fahrenheit),
                new MachineReading(kind, new Amount(seconds, Units.Second), Day) { Part = part },
            ]
        );

        Assert.Equal(new ReadingProblem(1, code), Assert.Single(result.Problems));
        Assert.True(Of(result, "supply.water").Told);
    }

    private static bool Holds(CalibratedFigure figure, Amount truth) => truth.Value >= figure.Low.Value && truth.Value <= figure.High.Value;
}
