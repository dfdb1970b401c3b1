using Rinsewright.Engine.Quantities;
using Rinsewright.Engine.Records;
using Rinsewright.Engine.Visits;
using Rinsewright.Knowledge;
using static Rinsewright.Engine.Tests.Visits.InventedVisit;

namespace Rinsewright.Engine.Tests.Visits;

/// <summary>What a visit warns of, which readings it says cannot both be true, and what it tells the kitchen of a cause.</summary>
public sealed class VisitWarningTests
{
    private const string OnWare = "rd-ware-surface-temp";
    private const string BoosterOutlet = "rd-booster-out-temp";
    private const string Overdue = "visit.warn.calibration-overdue";
    private const string Late = "visit.warn.found-late";
    private const string Fault = "booster-element-failed";

    private static VisitReading Pressure => Found("rd-rinse-pressure", new Amount(20, Units.Psi)) with { Instrument = "gauge" };

    private static object Value(Statement says, string name) => says.Values.Single(v => v.Name == name).Value;

    private static VisitReading Found(string kind, Amount value, double minute = 5) => Read(kind, value, VisitMoment.AsFound, minute);

    private static Visit Only(params VisitReading[] readings) => Conveyor() with { Photos = [], Readings = readings };

    private static string Said(VisitResult result) => string.Join(' ', result.Clashes.Select(c => c.Says.Key));

    private static string Kinds(VisitResult result) =>
        string.Join(' ', result.Clashes.SelectMany(c => c.Readings).Select(p => result.Readings[p].Reading.Kind));

    private static IReadOnlyList<Statement> Carrying(Instrument instrument)
    {
        var carried = new Dictionary<string, Instrument>(StringComparer.Ordinal) { ["probe"] = instrument };
        // Half past eleven at night at the kitchen, when it is the next day in Greenwich already: the kitchen's day counts.
        var night = new DateTimeOffset(2026, 11, 24, 23, 30, 0, TimeSpan.FromHours(-7));
        return Judge(Only() with { Instruments = carried, Began = night }).Warnings;
    }

    /// <summary>Overdue is the day after the due day; on the day itself it is still good (common practice, no source).</summary>
    [Theory]
    [InlineData(-1, true)]
    [InlineData(0, false)]
    [InlineData(1, false)]
    [InlineData(400, false)]
    [InlineData(null, false)]
    public void An_instrument_is_overdue_from_the_day_after_it_was_due(int? days, bool said)
    {
        DateOnly? due = days is { } d ? new DateOnly(2026, 11, 24).AddDays(d) : null;
        var warnings = Carrying(new Instrument("Probe no. 4", CalibratedOn: new DateOnly(2025, 6, 2), CalibrationDue: due));

        Assert.Equal(said ? Overdue : "", string.Join(' ', warnings.Select(w => w.Key)));
    }

    /// <summary>Whoever reads it has to know which instrument, and since when.</summary>
    [Fact]
    public void The_overdue_instrument_is_named_with_the_day_it_was_due()
    {
        var says = Assert.Single(Carrying(new Instrument("Probe no. 4", CalibrationDue: new DateOnly(2026, 11, 3))));

        Assert.Equal(Overdue, says.Key);
        Assert.Equal<object>("Probe no. 4", Value(says, "instrument"));
        Assert.Equal<object>(new DateOnly(2026, 11, 3), Value(says, "date"));
    }

    /// <summary>What nobody knows is not late.</summary>
    [Fact]
    public void An_instrument_of_which_no_day_is_known_is_unknown_and_not_overdue() =>
        Assert.Equal("visit.warn.calibration-unknown", Assert.Single(Carrying(new Instrument("Probe no. 4"))).Key);

    /// <summary>As found is before anything was touched (terms of the folder); the thermostat was set at minute 40.</summary>
    [Theory]
    [InlineData(39, false)]
    [InlineData(41, true)]
    [InlineData(70, true)]
    public void What_was_read_or_photographed_as_found_after_the_first_change_is_said(double minute, bool said)
    {
        var read = Only(Found(BoosterOutlet, Fahrenheit(185), minute)) with { Changes = [Thermostat] };
        var photo = new VisitPhoto(new string('b', 64), VisitMoment.AsFound, At: Morning.AddMinutes(minute));
        var both = Judge(read with { Photos = [photo] }).Warnings.Where(w => w.Key == Late);

        Assert.Equal(said, Judge(read).Warnings.Any(w => w.Key == Late));
        Assert.Equal(said, Judge(read with { Readings = [], Photos = [photo] }).Warnings.Any(w => w.Key == Late));
        Assert.Equal(said ? 2L : 0L, both.Sum(w => (long)Value(w, "count")));
    }

    /// <summary>A logger that rode after the first change shows no machine as it was found; whose clock is off, by its clock nothing is said.</summary>
    [Theory]
    [InlineData(-1, false, false)]
    [InlineData(1, false, true)]
    [InlineData(1, true, false)]
    public void A_logger_that_rode_after_the_first_change_is_late(int minutes, bool clockOff, bool said)
    {
        var rode = new CountedProof(
            "plate.csv",
            VisitMoment.AsFound,
            Engine.Sanitization.Outcome.Proven,
            3,
            Engine.Sanitization.MachineType.MultitankConveyor,
            Engine.Sanitization.SanitizingMethod.HotWater,
            Rules.Id
        )
        {
            At = Thermostat.At!.Value.AddMinutes(minutes),
            ClockOff = clockOff,
        };

        var late = Judge(Only() with { Changes = [Thermostat], Proofs = [rode] }).Warnings.Where(w => w.Key == Late);

        Assert.Equal(said ? 1L : 0L, late.Sum(w => (long)Value(w, "count")));
    }

    /// <summary>Of several changes the first counts, whatever the order they are written in; one without a time hides none.</summary>
    [Fact]
    public void The_first_change_counts_in_whatever_order_they_were_written()
    {
        var untimed = Thermostat with { At = null };
        var later = Thermostat with { At = Morning.AddMinutes(60) };
        var read = Only(Found(BoosterOutlet, Fahrenheit(185), 50));

        Assert.Contains(Judge(read with { Changes = [untimed, later, Thermostat] }).Warnings, w => w.Key == Late);
        Assert.DoesNotContain(Judge(read with { Changes = [untimed, later] }).Warnings, w => w.Key == Late);
    }

    /// <summary>Nothing changed, nothing read, or not said to be as found: then nothing is late.</summary>
    [Theory]
    [InlineData("no change")]
    [InlineData("no time of the change")]
    [InlineData("as left")]
    [InlineData("between")]
    [InlineData("not read")]
    public void Nothing_else_is_found_late(string which)
    {
        var read = Found(BoosterOutlet, Fahrenheit(185), 50);
        var visit = Only(read) with { Changes = [Thermostat] };
        Assert.Contains(Judge(visit).Warnings, w => w.Key == Late);
        var other = which switch
        {
            "no change" => visit with { Changes = [] },
            "no time of the change" => visit with { Changes = [Thermostat with { At = null }] },
            "as left" => visit with { Readings = [read with { Moment = VisitMoment.AsLeft }] },
            "between" => visit with { Readings = [read with { Moment = VisitMoment.Between }] },
            _ => visit with { Readings = [read with { Value = null }] },
        };

        Assert.DoesNotContain(Judge(other).Warnings, w => w.Key == Late);
    }

    private static Visit WithWare(VisitReading ware) =>
        Conveyor() with
        {
            Readings = [.. Conveyor().Readings.Where(r => r.Kind != OnWare), ware],
        };

    /// <summary>Second law of thermodynamics: waters of 160, 168 and 188 °F warm nothing above 188 °F. Every probe may be off by 1 °F, so that 189.5 may be 188.5 in both.</summary>
    [Theory]
    [InlineData(166, false)]
    [InlineData(188, false)]
    [InlineData(189.5, false)]
    [InlineData(200, true)]
    public void Ware_hotter_than_the_hottest_water_cannot_be(double fahrenheit, bool said)
    {
        var result = Judge(WithWare(Found(OnWare, Fahrenheit(fahrenheit), 20)));

        Assert.Equal(said ? "visit.clash.ware-hotter" : "", Said(result));
        Assert.Equal(said ? $"rd-final-rinse-temp {OnWare}" : "", Kinds(result));
        Assert.All(result.Clashes, c => Assert.Equal<object>(Fahrenheit(fahrenheit), Value(c.Says, "ware")));
        Assert.All(result.Clashes, c => Assert.Equal<object>(Fahrenheit(188), Value(c.Says, "water")));
    }

    /// <summary>A water nobody read may have been the hot one.</summary>
    [Theory]
    [InlineData("rd-wash-temp")]
    [InlineData("rd-power-rinse-temp")]
    [InlineData("rd-final-rinse-temp")]
    public void Ware_is_held_against_the_waters_only_where_all_were_read(string water)
    {
        var visit = WithWare(Found(OnWare, Fahrenheit(200), 20));
        var without = visit with { Readings = [.. visit.Readings.Where(r => r.Kind != water)] };

        Assert.DoesNotContain(Judge(without).Clashes, c => c.Says.Key == "visit.clash.ware-hotter");
    }

    /// <summary>A label of 200 °F that turned was that hot; one that did not turn says only that the ware stayed below (definition of a label).</summary>
    [Theory]
    [InlineData(true)]
    [InlineData(false)]
    public void A_label_speaks_only_where_it_turned(bool turned)
    {
        var read = Found(OnWare, Fahrenheit(200), 20);
        var label = read with { Method = ReadingMethod.IrreversibleLabel, Instrument = null, Reached = turned };

        Assert.Equal(turned ? "visit.clash.ware-hotter" : "", Said(Judge(WithWare(label))));
    }

    // Two probes at the outlet of the booster, each off by 3 °F at most.
    private static Visit TwoProbes(VisitReading one, VisitReading other)
    {
        var three = new Amount(3, Units.FahrenheitDifference);
        var probes = new Dictionary<string, Instrument>(StringComparer.Ordinal)
        {
            ["probe"] = new("Probe no. 4", three),
            ["other"] = new("Probe no. 5", three),
        };
        return Only(one, other) with { Instruments = probes };
    }

    /// <summary>Arithmetic: 180 ± 3 and 185 ± 3 meet at 182.5, 180 ± 3 and 200 ± 3 nowhere; 84 °C is 183.2 °F and 95 °C is 203 °F.</summary>
    [Theory]
    [InlineData(185, "[degF]", false)]
    [InlineData(200, "[degF]", true)]
    [InlineData(160, "[degF]", true)]
    [InlineData(84, "Cel", false)]
    [InlineData(95, "Cel", true)]
    public void Two_instruments_further_apart_than_both_may_be_off_cannot_both_be_right(double value, string unit, bool said)
    {
        var other = Found(BoosterOutlet, new Amount(value, Units.Find(unit)!), 6) with { Instrument = "other" };
        var result = Judge(TwoProbes(Found(BoosterOutlet, Fahrenheit(180)), other));

        Assert.Equal(said ? "visit.clash.instruments" : "", Said(result));
        Assert.All(result.Clashes, c => Assert.Equal<object>(Fahrenheit(180), Value(c.Says, "one")));
        Assert.All(result.Clashes, c => Assert.Equal<object>(other.Value!.Value, Value(c.Says, "other")));
        Assert.All(result.Clashes, c => Assert.Equal(["probe", "other"], c.Readings.Select(p => result.Readings[p].Reading.Instrument)));
    }

    /// <summary>20 °F apart is no contradiction between two times, or where nobody knows what an instrument may be off (V7, arithmetic).</summary>
    [Theory]
    [InlineData("same instrument")]
    [InlineData("another state")]
    [InlineData("another moment")]
    [InlineData("accuracy unknown")]
    public void Readings_that_are_not_of_one_water_by_two_known_instruments_may_differ(string which)
    {
        var one = Found(BoosterOutlet, Fahrenheit(180));
        var other = Found(BoosterOutlet, Fahrenheit(200), 6) with { Instrument = "other" };
        Assert.Single(Judge(TwoProbes(one, other)).Clashes);
        var changed = which switch
        {
            "same instrument" => other with { Instrument = "probe" },
            "another state" => other with { State = OperatingState.Idle },
            "another moment" => other with { Moment = VisitMoment.AsLeft },
            _ => other with { Instrument = "nobody's" },
        };

        Assert.Empty(Judge(TwoProbes(one, changed)).Clashes);
    }

    /// <summary>
    /// Heat balance: ten plates of 0.58 kg (1 kJ/(kg·K), [porcelain-properties] for the density) and a rack of 1.6 kg (1.9 kJ/(kg·K), from memory) take 8.8 kJ for each kelvin. From 24 °C to 200 °F,
    /// 231 an hour, that is 39 kW; to 160 °F, 60 an hour, 7 kW. The element gives 18 kW. Without racks, or at a load nobody named, it may be; a gauge of the machine is in doubt itself.
    /// </summary>
    [Theory]
    [InlineData(200, 231, ReadingMethod.Probe, OperatingState.Load, true)]
    [InlineData(160, 60, ReadingMethod.Probe, OperatingState.Load, false)]
    [InlineData(200, 231, ReadingMethod.Probe, OperatingState.Idle, false)]
    [InlineData(200, 231, ReadingMethod.Probe, OperatingState.Unknown, false)]
    [InlineData(200, 231, ReadingMethod.MachineGauge, OperatingState.Load, false)]
    public void A_wash_too_hot_for_its_heater_cannot_be(double heat, double racks, ReadingMethod method, OperatingState state, bool said)
    {
        var wash = Found("rd-wash-temp", Fahrenheit(heat)) with { RacksPerHour = racks, Method = method, State = state };
        var result = Judge(Only(wash, Pressure, Found("rd-incoming-temp", Fahrenheit(140), 7)));

        Assert.Equal(said ? "visit.clash.heat" : "", Said(result));
        Assert.Equal(said ? "rd-wash-temp" : "", Kinds(result));
    }

    /// <summary>
    /// Heat balance of the booster: 2.8 gal/min for four fifths of the time, from 60 to 188 °F, take 41 kW, and from 140 to 188 °F 15 kW; it gives 24 kW. Cold water alone contradicts nothing.
    /// Of 210 °F it is said already that it is off its own band: the machine is not as described then, and no two readings need to clash (validity of the folder).
    /// </summary>
    [Theory]
    [InlineData(60, 188.0, true)]
    [InlineData(140, 188.0, false)]
    [InlineData(60, null, false)]
    [InlineData(60, 210.0, false)]
    public void Readings_that_no_machine_of_this_description_gives_at_once_are_said(double incoming, double? rinse, bool said)
    {
        var second = rinse is { } r ? Found("rd-final-rinse-temp", Fahrenheit(r), 6) : Pressure;
        var result = Judge(Only(Found("rd-incoming-temp", Fahrenheit(incoming)), second));

        Assert.Equal(said ? "visit.clash.misfit" : "", Said(result));
    }

    private static Visit Complained => Only() with { Complaint = "Plates come out cold." };

    /// <summary>A cause is told with the knowledge's name of the fault and whose it is; how sure it is makes the sentence.</summary>
    [Theory]
    [InlineData(CauseKnown.Confirmed, CauseOwner.Machine, "visit.was.confirmed")]
    [InlineData(CauseKnown.Likely, CauseOwner.Building, "visit.was.likely")]
    public void A_cause_is_told_by_its_name_and_by_how_sure_it_is(CauseKnown known, CauseOwner owner, string key)
    {
        var says = Assert.Single(Judge(Complained with { Cause = new VisitCause(Fault, known, owner) }).Was.Parts);

        Assert.Equal(key, says.Key);
        Assert.Equal<object>(BuiltInKnowledge.Trade.Faults[Fault].Name, Value(says, "cause"));
        Assert.Equal<object>(owner, Value(says, "owner"));
    }

    /// <summary>A complaint without a cause, or with one the knowledge does not have, is unknown; without a complaint nobody asked.</summary>
    [Fact]
    public void A_complaint_without_a_cause_is_said_to_be_unknown()
    {
        var nameless = Complained with { Cause = new VisitCause("no-such-fault", CauseKnown.Confirmed, CauseOwner.Machine) };

        Assert.Equal("visit.was.unknown", Assert.Single(Judge(Complained).Was.Parts).Key);
        Assert.Equal("visit.was.unknown", Assert.Single(Judge(nameless).Was.Parts).Key);
        Assert.Equal("visit.was.routine-not-proved", Assert.Single(Judge(Only()).Was.Parts).Key);
    }
}
