using Rinsewright.Engine.Quantities;
using Rinsewright.Engine.Records;
using Rinsewright.Engine.Sanitization;
using Xunit;

namespace Rinsewright.Engine.Tests.Sanitization;

public class SanitizationProofTests
{
    private static readonly RuleSet Code = RuleSets.Find(RuleSets.DefaultId)!;
    private static readonly Instrument Good = new("logger 2", new Amount(0.3, Units.CelsiusDifference));

    private static ProofTerms Terms(Instrument? instrument = null, RuleSet? rules = null, DataPlate? plate = null) =>
        new(MachineType.MultitankConveyor, SanitizingMethod.HotWater, rules ?? Code, plate, Instrument: instrument);

    private static Proof Prove(
        Trace trace,
        ProofTerms terms,
        MeasuringPoint role = MeasuringPoint.WareSurface,
        params Reading[] readings
    ) => SanitizationProof.Prove(terms, [(trace, role)], readings, []);

    private static Reading Read(MeasuringPoint point, double value, Unit unit) => new(point, new Amount(value, unit), ReadingMethod.Probe);

    [Fact]
    public void A_hot_pass_is_proven_by_dose_and_by_peak_apart()
    {
        var proof = Prove(new Surface().Counter(60).TwoTankPass().Counter(300).Trace(), Terms(Good));
        var pass = Assert.Single(proof.Channels[0].Passes);
        Assert.Equal(["peak", "heat-dose"], pass.Checks.Select(c => c.Id));
        Assert.All(pass.Checks, c => Assert.Equal(Outcome.Proven, c.Outcome));
        Assert.Equal(Outcome.Proven, proof.Verdict.Outcome);
        Assert.Equal(["zone.wash", "zone.pumped-rinse", "zone.final-rinse"], pass.Zones.Select(z => z.Name));
    }

    [Fact]
    public void A_short_hot_peak_passes_the_peak_and_fails_the_dose()
    {
        // Touches 73 °C for a moment: one second at 160 °F is worth 92 of the 3600 units (hue-history-2009).
        var proof = Prove(new Surface(0.5).Counter(60).In(66, 8, 15).In(86, 4, 3.5).In(20, 20, 60).Counter(200).Trace(), Terms(Good));
        var pass = Assert.Single(proof.Channels[0].Passes);
        Assert.Equal(Outcome.Proven, pass.Checks.Single(c => c.Id == "peak").Outcome);
        Assert.Equal(Outcome.NotProven, pass.Checks.Single(c => c.Id == "heat-dose").Outcome);
        Assert.Equal(Outcome.NotProven, proof.Verdict.Outcome);
    }

    [Fact]
    public void Without_a_stated_accuracy_the_worst_allowed_is_taken_and_may_leave_it_open()
    {
        var trace = new Surface().Counter(60).In(68, 9, 18).In(60, 30, 4).In(72, 7, 14).In(66, 30, 3).In(74, 5, 12).Counter(300).Trace();
        Assert.Equal(Outcome.Proven, Prove(trace, Terms(Good)).Verdict.Outcome);
        var open = Prove(trace, Terms());
        Assert.Equal(Outcome.Undetermined, open.Verdict.Outcome);
        Assert.Contains(open.Verdict.WouldSettle, s => s.Key == "proof.settle-calibrated");
    }

    [Fact]
    public void One_sample_a_minute_is_never_judged()
    {
        var surface = new Surface(60).Counter(180);
        var proof = Prove(surface.In(85, 20, 900).Counter(900).Trace(), Terms(Good));
        Assert.All(proof.Channels[0].Passes, p => Assert.Equal(Outcome.Undetermined, p.Verdict.Outcome));
        Assert.Contains(proof.Channels[0].Notes, n => n.Key == "proof.note-coarse");
        Assert.Equal(Outcome.Undetermined, proof.Verdict.Outcome);
    }

    [Theory]
    [InlineData(MeasuringPoint.FinalRinseManifold)]
    [InlineData(MeasuringPoint.WashTank)]
    [InlineData(MeasuringPoint.Air)]
    public void A_trace_of_water_or_air_never_proves_ware(MeasuringPoint role)
    {
        var proof = Prove(new Surface().Counter(60).TwoTankPass().Counter(60).Trace(), Terms(Good), role);
        Assert.Equal(Outcome.Undetermined, proof.Verdict.Outcome);
        Assert.Empty(proof.Channels[0].Passes);
        Assert.Contains(proof.Verdict.Because, b => b.Key == "proof.water-never-proves-ware");
    }

    [Fact]
    public void A_cold_final_rinse_reading_is_not_excused_by_a_good_dose()
    {
        var proof = Prove(
            new Surface().Counter(60).TwoTankPass().Counter(300).Trace(),
            Terms(Good),
            MeasuringPoint.WareSurface,
            Read(MeasuringPoint.FinalRinseManifold, 177.2, Units.Fahrenheit)
        );
        Assert.Equal(Outcome.NotProven, proof.Verdict.Outcome);
    }

    [Fact]
    public void Points_nobody_read_are_listed_as_not_read()
    {
        var proof = Prove(new Surface().Counter(60).TwoTankPass().Counter(300).Trace(), Terms(Good));
        Assert.Contains(proof.Checks, c => c.Id == "final-rinse-manifold-temperature" && c.Status == ReadingStatus.NotRead);
        Assert.Contains(proof.Checks, c => c.Id == "final-rinse-line-gauge-pressure" && c.Status == ReadingStatus.NotRead);
    }

    [Theory] // 4-703.11(B), wac-246-215: 160 °F (71 °C) on an irreversible indicator
    [InlineData(160, true, Outcome.Proven)]
    [InlineData(160, false, Outcome.NotProven)]
    [InlineData(180, true, Outcome.Proven)]
    [InlineData(180, false, Outcome.Undetermined)]
    [InlineData(150, true, Outcome.Undetermined)]
    [InlineData(150, false, Outcome.NotProven)]
    public void Label_shows_what_its_own_temperature_can_show(double labelF, bool reached, Outcome expected)
    {
        var reading = new Reading(
            MeasuringPoint.WareSurface,
            new Amount(labelF, Units.Fahrenheit),
            ReadingMethod.IrreversibleLabel,
            Reached: reached
        );
        Assert.Equal(expected, SanitizationProof.Prove(Terms(), [], [reading], []).Verdict.Outcome);
    }

    [Fact]
    public void Water_readings_alone_leave_the_ware_undetermined()
    {
        var proof = SanitizationProof.Prove(
            Terms(),
            [],
            [Read(MeasuringPoint.WashTank, 155, Units.Fahrenheit), Read(MeasuringPoint.FinalRinseManifold, 185, Units.Fahrenheit)],
            []
        );
        Assert.Equal(Outcome.Undetermined, proof.Verdict.Outcome);
    }

    [Theory] // Working bands of the trade: common practice, no source
    [InlineData(MeasuringPoint.WashTank, 163, ReadingStatus.NearLimit)]
    [InlineData(MeasuringPoint.WashTank, 155, ReadingStatus.InRange)]
    [InlineData(MeasuringPoint.PumpedRinseTank, 158, ReadingStatus.NearLimit)]
    [InlineData(MeasuringPoint.PumpedRinseTank, 164.1, ReadingStatus.InRange)]
    [InlineData(MeasuringPoint.FinalRinseManifold, 192, ReadingStatus.NearLimit)]
    [InlineData(MeasuringPoint.FinalRinseManifold, 196, ReadingStatus.OutOfRange)]
    public void Inside_the_code_but_outside_the_band_is_near_limit_with_the_reason(
        MeasuringPoint point,
        double valueF,
        ReadingStatus expected
    )
    {
        var check = ReadingJudgement.Judge(Read(point, valueF, Units.Fahrenheit), LimitsInForce.For(Terms()), Code.Instruments);
        Assert.Equal(expected, check.Status);
        Assert.Equal(expected == ReadingStatus.NearLimit, check.Because.Key.StartsWith("proof.reading-unusual", StringComparison.Ordinal));
    }

    [Fact]
    public void The_data_plate_overrides_the_code_and_adds_to_its_pressure()
    {
        var plate = new DataPlate(
            FinalRinseMinimum: new Amount(185, Units.Fahrenheit),
            PressureMinimum: new Amount(10, Units.Psi),
            PressureMaximum: new Amount(20, Units.Psi)
        );
        var limits = LimitsInForce.For(Terms(plate: plate));
        Check Judge(MeasuringPoint p, double v, Unit u) => ReadingJudgement.Judge(Read(p, v, u), limits, []);
        Assert.Equal(LimitForce.DataPlate, Judge(MeasuringPoint.FinalRinseManifold, 182, Units.Fahrenheit).Limit!.Force);
        Assert.Equal(Outcome.NotProven, Judge(MeasuringPoint.FinalRinseManifold, 182, Units.Fahrenheit).Outcome);
        Assert.Equal(Outcome.NotProven, Judge(MeasuringPoint.FinalRinseLine, 22, Units.Psi).Outcome);
        Assert.Equal(Outcome.NotProven, Judge(MeasuringPoint.FinalRinseLine, 4, Units.Psi).Outcome);
        Assert.Equal(Outcome.Proven, Judge(MeasuringPoint.FinalRinseLine, 12, Units.Psi).Outcome);
    }

    [Fact]
    public void An_open_question_of_the_reader_keeps_it_from_being_proven()
    {
        var trace = new Surface().Counter(60).TwoTankPass().Counter(300).Trace();
        var proof = SanitizationProof.Prove(
            Terms(Good),
            [(trace, MeasuringPoint.WareSurface)],
            [],
            [Statement.Of("files.date-order-open")]
        );
        Assert.Equal(Outcome.Undetermined, proof.Verdict.Outcome);
    }

    [Fact] // fsanz-cleaning: 77 °C for 30 s
    public void A_hold_needs_its_time_at_its_temperature()
    {
        var rules = RuleSets.Find("au-fsanz")!;
        Outcome Of(double seconds) =>
            Prove(new Surface().Counter(60).In(80, 4, seconds).In(22, 30, 60).Counter(60).Trace(), Terms(Good, rules)).Verdict.Outcome;
        Assert.Equal(Outcome.NotProven, Of(25));
        Assert.Equal(Outcome.Proven, Of(60));
    }

    [Fact]
    public void A_strip_past_its_date_proves_nothing()
    {
        var reading = new Reading(
            MeasuringPoint.WareSurface,
            new Amount(160, Units.Fahrenheit),
            ReadingMethod.IrreversibleLabel,
            Reached: true,
            At: new DateTimeOffset(2031, 5, 2, 9, 0, 0, TimeSpan.Zero),
            Expires: new DateOnly(2031, 4, 30)
        );
        Assert.Equal(Outcome.Undetermined, SanitizationProof.Prove(Terms(), [], [reading], []).Verdict.Outcome);
    }

    [Theory] // 4-703.11(B): 160 °F, 71 °C; 4-203.12: ±3 °F, ±1.5 °C where the accuracy is not stated (cdc-vsp-2018)
    [InlineData(160, "[degF]", null, Outcome.Undetermined, ReadingStatus.NearLimit)]
    [InlineData(163, "[degF]", null, Outcome.Proven, ReadingStatus.InRange)]
    [InlineData(158, "[degF]", null, Outcome.Undetermined, ReadingStatus.Open)]
    [InlineData(156, "[degF]", null, Outcome.NotProven, ReadingStatus.OutOfRange)]
    [InlineData(72, "Cel", null, Outcome.Undetermined, ReadingStatus.NearLimit)]
    [InlineData(73, "Cel", null, Outcome.Proven, ReadingStatus.InRange)]
    [InlineData(161, "[degF]", 1.0, Outcome.Proven, ReadingStatus.InRange)]
    [InlineData(160.5, "[degF]", 1.0, Outcome.Undetermined, ReadingStatus.NearLimit)]
    public void A_thermometer_sent_through_is_proven_by_its_lower_bound_as_a_logger_is(
        double value,
        string unit,
        double? accuracyF,
        Outcome outcome,
        ReadingStatus status
    )
    {
        var instrument = accuracyF is { } a ? new Instrument("max no. 1", new Amount(a, Units.FahrenheitDifference)) : null;
        var reading = new Reading(
            MeasuringPoint.WareSurface,
            new Amount(value, Units.Find(unit)!),
            ReadingMethod.MaximumThermometer,
            instrument
        );
        var proof = SanitizationProof.Prove(Terms(), [], [reading], []);
        Assert.Equal(outcome, proof.Verdict.Outcome);
        Assert.Equal(status, proof.Checks.Single(c => c.Reading is not null).Status);
    }

    [Fact]
    public void A_tank_just_above_its_limit_by_a_thermometer_without_accuracy_is_near_limit()
    {
        var check = ReadingJudgement.Judge(
            Read(MeasuringPoint.FinalRinseManifold, 181, Units.Fahrenheit),
            LimitsInForce.For(Terms()),
            Code.Instruments
        );
        Assert.Equal((Outcome.Proven, ReadingStatus.NearLimit), (check.Outcome, check.Status));
        Assert.Equal("proof.reading-within-assumed", check.Because.Key);
    }

    [Fact]
    public void Far_from_the_limit_an_open_dose_is_not_near_it()
    {
        var proof = Prove(new Surface(60).Counter(180).In(85, 20, 900).Counter(900).Trace(), Terms(Good));
        Assert.All(proof.Channels[0].Passes.SelectMany(p => p.Checks), c => Assert.Equal(ReadingStatus.Open, c.Status));
        var unlimited = ReadingJudgement.Judge(Read(MeasuringPoint.Air, 30, Units.Celsius), LimitsInForce.For(Terms()), []);
        Assert.Equal(ReadingStatus.NoLimit, unlimited.Status);
    }

    [Fact]
    public void Where_a_slow_logger_shows_no_pass_the_verdict_says_that_it_was_too_slow()
    {
        var proof = Prove(new Surface(60).Counter(600).In(60, 600, 900).Counter(600).Trace(), Terms(Good));
        Assert.Empty(proof.Channels[0].Passes);
        Assert.Equal("proof.note-coarse", proof.Verdict.Because[0].Key);
        Assert.Equal(["proof.settle-sampling"], proof.Verdict.WouldSettle.Select(s => s.Key));
    }

    [Fact]
    public void An_open_question_comes_first_and_no_pass_is_called_proven_beside_it()
    {
        var trace = new Surface().Counter(60).TwoTankPass().Counter(300).Trace();
        var proof = SanitizationProof.Prove(
            Terms(Good),
            [(trace, MeasuringPoint.WareSurface)],
            [],
            [Statement.Of("files.unit-open", ("column", 2L), ("heading", "plate"))]
        );
        Assert.Equal(["files.unit-open", "proof.passes-would-be"], proof.Verdict.Because.Select(b => b.Key));
    }

    [Fact]
    public void With_several_channels_the_pass_is_named_with_its_channel()
    {
        var good = new Surface().Counter(60).TwoTankPass().Counter(300).Trace();
        var cold = new Surface().Counter(60).TwoTankPass(finalC: 60).Counter(300).Trace();
        var other = TraceBuilder.From(
            "rack end",
            cold.Unit,
            [.. Enumerable.Range(0, cold.Count).Select(cold.SecondsAt)],
            [.. Enumerable.Range(0, cold.Count).Select(cold.ValueAt)]
        );
        var proof = SanitizationProof.Prove(Terms(Good), [(good, MeasuringPoint.WareSurface), (other, MeasuringPoint.WareSurface)], [], []);
        Assert.Equal(Outcome.NotProven, proof.Verdict.Outcome);
        Assert.Contains(
            proof.Verdict.Because,
            b => b.Key == "proof.in-pass-of" && b.Values.Any(v => v is { Name: "channel", Value: "rack end" })
        );
    }

    [Fact]
    public void Degrees_that_look_like_the_other_scale_are_asked_about()
    {
        var label = new Reading(
            MeasuringPoint.WareSurface,
            new Amount(71, Units.Fahrenheit),
            ReadingMethod.IrreversibleLabel,
            Reached: true
        );
        var verdict = SanitizationProof.Prove(Terms(), [], [label], []).Verdict;
        Assert.Equal(Outcome.Undetermined, verdict.Outcome);
        Assert.Equal("proof.settle-unit", verdict.WouldSettle[0].Key);
    }
}
