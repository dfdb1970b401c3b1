using CsCheck;
using Rinsewright.Engine.Machines;
using Rinsewright.Engine.Quantities;
using Rinsewright.Engine.Records;
using Rinsewright.Engine.Tests.Numerics;
using Rinsewright.Engine.Visits;
using Rinsewright.Knowledge;
using static Rinsewright.Engine.Tests.Visits.InventedVisit;

namespace Rinsewright.Engine.Tests.Visits;

/// <summary>A log the crew keeps (V14 to V17). Expected counts are made by hand; chances by Simpson's rule and by listing every outcome; how often honest logs are suspected by drawing them.</summary>
public sealed class CrewLogTests
{
    private static readonly DateOnly Yesterday = new(2026, 11, 23);

    // A three-shift log of the final rinse gauge under load; values by day and shift, null where nothing is written.
    private static CrewLog Log(Func<int, int, double?> value, int days = 14, int shifts = 3, bool whole = true) =>
        new("rd-final-rinse-temp", Units.Fahrenheit, Yesterday, days, shifts)
        {
            State = OperatingState.Load,
            Whole = whole,
            Entries =
            [
                .. from day in Enumerable.Range(0, days)
                from shift in Enumerable.Range(1, shifts)
                let v = value(day, shift)
                where v is not null
                select new CrewEntry(Yesterday.AddDays(day + 1 - days), shift, v.Value),
            ],
        };

    private static JudgedCrewLog Of(CrewLog log, Visit? visit = null) =>
        Judge((visit ?? Conveyor()) with { CrewLogs = [log] }).CrewLogs.Single();

    private static bool Says(JudgedCrewLog log, string key) => log.Says.Any(s => s.Key == key);

    // Deviation from reading to reading as V15 has it: a third of the band, by the table's 90 % of a normal within 1.644854 deviations, and the booster's thermostat of 3 °F, whose variance is 3²/12.
    private static double Spread()
    {
        var band = OwnBands
            .Of(TypicalMachines.Of(MachineKind.RackConveyorTwoTank))
            .Find(VisitReadingKinds.Find("rd-final-rinse-temp")!, OperatingState.Load)!;
        var third = (band.High.In(Units.Fahrenheit).Value - band.Low.In(Units.Fahrenheit).Value) / (2 * 1.644854) / 3;
        return Math.Sqrt((third * third) + 0.75);
    }

    // Readings of a gauge divided by 2 °F that wander by 6 °F or so: what a kitchen that reads writes.
    private static double Wandering(int day, int shift) => 184 + (2 * (((day * 5) + (shift * 3)) % 7 % 4));

    [Fact]
    public void Missing_entries_are_counted_by_shift_and_closed_days_are_not()
    {
        // 14 days, two of them closed, 3 shifts: 36 entries. Missing: shift 3 on 4 open days, shift 1 on one.
        var closed = (DateOnly[])[Yesterday.AddDays(-13), Yesterday.AddDays(-6)];
        var log = Log(
            (day, shift) => day is 0 or 7 || (shift, day) is (3, 1) or (3, 2) or (3, 3) or (3, 10) or (1, 11) ? null : Wandering(day, shift)
        ) with
        {
            Closed = closed,
        };
        var judged = Of(log);

        Assert.Equal((36, 5), (judged.Expected, judged.Missing));
        Assert.Equal([1, 0, 4], judged.MissingByShift);
        var said = judged.Says.Single(s => s.Key == "visit.log.missing-shift");
        Assert.Equal([5L, 36L, 3L, 4L, 12L], said.Values.Select(v => v.Value).Cast<long>());
        Assert.True(judged.Gaps);
    }

    [Fact]
    public void What_was_not_copied_yet_is_not_missing()
    {
        // Copied from the third day to the sixth, one shift of the fourth left blank.
        double? Value(int day, int shift) => day is < 2 or > 5 || (day, shift) == (3, 2) ? null : Wandering(day, shift);

        var begun = Of(Log(Value, whole: false));
        Assert.Equal((12, 1), (begun.Expected, begun.Missing));
        var whole = Of(Log(Value));
        Assert.Equal((42, 31), (whole.Expected, whole.Missing));
        var empty = Of(Log((_, _) => null, whole: false));
        Assert.Equal((0, 0, false), (empty.Expected, empty.Missing, empty.Gaps));
        Assert.True(Says(empty, "visit.log.empty"));
        // A paper with nothing on it at all was looked at.
        Assert.Equal(42, Of(Log((_, _) => null)).Missing);
    }

    [Fact]
    public void What_cannot_be_read_is_said_with_its_line_and_is_not_missing()
    {
        // Of 42 fields one is blank (shift 2 of the fourth day) and two hold what is no number.
        var log = Log((day, shift) => (day, shift) is (3, 2) or (5, 1) or (13, 3) ? null : Wandering(day, shift)) with
        {
            Unread =
            [
                new UnreadEntry(Yesterday, 3, "1800"),
                new UnreadEntry(Yesterday.AddDays(-8), 1, "18?"),
                new UnreadEntry(Yesterday.AddDays(-20), 1, "of another month"),
            ],
        };
        var judged = Of(log);

        Assert.Equal((42, 1), (judged.Expected, judged.Missing));
        Assert.Equal([0, 1, 0], judged.MissingByShift);
        var said = judged.Says.Where(s => s.Key == "visit.log.unread").ToList();
        Assert.Equal(2, said.Count);
        // 14 days to the 23rd: the first line is the 10th, so the 15th is the sixth.
        Assert.Equal([6L, new DateOnly(2026, 11, 15), 1L, "18?", new Amount(182, Units.Fahrenheit)], said[0].Values.Select(v => v.Value));
        Assert.Equal([14L, new DateOnly(2026, 11, 23), 3L, "1800"], said[1].Values.SkipLast(1).Select(v => v.Value));
        Assert.DoesNotContain(judged.Because, s => s.Key == "visit.log.unread");
        var lacking = Judge(Conveyor() with { CrewLogs = [log] }).Missing.Single(m => m.Says.Key == "visit.missing.crew-unread");
        Assert.Equal((false, 2L), (lacking.Blocks, lacking.Says.Values.Single().Value));

        // Where not all is copied it counts as copied: from the day of the one to the day of the other, three shifts each, four written.
        var begun = Of(Log((day, shift) => day == 8 ? 184 : null, whole: false) with { Unread = [new(Yesterday.AddDays(-3), 2, "18?")] });
        Assert.Equal((9, 5), (begun.Expected, begun.Missing));
    }

    [Fact]
    public void Fewer_days_keep_what_was_copied_of_more()
    {
        var log = Log(Wandering_) with { Days = 7 };

        Assert.Equal((21, 0), (Of(log).Expected, Of(log).Missing));
        Assert.Equal(42, log.Entries.Count);

        static double? Wandering_(int day, int shift) => Wandering(day, shift);
    }

    [Fact]
    public void The_same_number_at_every_hour_is_likely_not_read()
    {
        var judged = Of(Log((_, _) => 182));

        Assert.Equal((182, 42, 42, null), (judged.Same!.Value.Value, judged.Same.Count, judged.Same.Of, judged.Same.Shift));
        // 182 is a multiple of 2, and a gauge may be divided by 2 °F at most (FDA 4-204.112).
        Assert.Equal(new Amount(2, Units.Fahrenheit), judged.Same.Step);
        var expected = Math.Pow(NormalShareTests.Area(1 / Spread()), 41);
        Assert.InRange(judged.Same.Chance!.Value, expected * 0.999, expected * 1.001);
        Assert.True(judged.Same.Likely && judged.Gaps);
        Assert.Contains(
            Judge(Conveyor() with { CrewLogs = [judged.Log] }).Because,
            b => b is { Key: "visit.log.of", Values: [_, { Value: Statement { Key: "visit.log.same" } }] }
        );
    }

    [Fact]
    public void A_round_number_alone_does_not_pass_for_a_coarse_gauge()
    {
        // 180 is a multiple of 10 as well; nothing else in the log shows that they round to tens.
        Assert.Equal(2, Of(Log((_, _) => 180)).Same!.Step.Value);
        // Here it does.
        var tens = Of(Log((day, _) => day % 3 == 0 ? 190 : 180)).Same!;
        Assert.Equal(10, tens.Step.Value);
        Assert.False(tens.Likely);
    }

    [Fact]
    public void One_shift_that_writes_the_same_is_found_among_the_others()
    {
        var judged = Of(Log((day, shift) => shift == 2 ? 183 : Wandering(day, shift) + (day % 2)));

        Assert.Equal((2, 14, 14), (judged.Same!.Shift, judged.Same.Count, judged.Same.Of));
        Assert.True(Says(judged, "visit.log.same-shift"));
        // Three shifts were looked at: three times the chance of one, read to 1 °F.
        var expected = 3 * Math.Pow(NormalShareTests.Area(0.5 / Spread()), 13);
        Assert.InRange(judged.Same.Chance!.Value, expected * 0.999, expected * 1.001);
    }

    [Theory] // By hand: 0.5^4; C(6,5) 0.1^4; C(4,2) 0.5 is more than 1
    [InlineData(5, 5, 0.5, 0.0625)]
    [InlineData(6, 5, 0.1, 0.0006)]
    [InlineData(4, 2, 0.5, 1)]
    public void The_chance_is_the_one_by_hand(int n, int k, double p, double chance) =>
        Assert.Equal(chance, CrewLogJudgement.Chance(n, k, p), 12);

    [Fact]
    public void No_outcome_is_more_likely_than_the_chance_says()
    {
        // Three cells, the fullest 0.5; all 3^7 logs of seven entries listed.
        double[] cells = [0.5, 0.3, 0.2];
        for (var k = 4; k <= 7; k++)
        {
            double sum = 0;
            for (var code = 0; code < 2187; code++)
            {
                var log = Enumerable.Range(0, 7).Select(i => code / (int)Math.Pow(3, i) % 3).ToList();
                if (log.GroupBy(c => c).Max(g => g.Count()) >= k)
                {
                    sum += log.Aggregate(1.0, (p, c) => p * cells[c]);
                }
            }

            Assert.True(sum <= CrewLogJudgement.Chance(7, k, 0.5), $"{k}: {sum}");
        }
    }

    [Fact]
    public void Honest_readings_are_hardly_ever_suspected()
    {
        // 500 logs of readings that really vary by the spread of V15, on gauges divided by 1 and by 2 °F, the most the rule allows. Each log is looked at as a whole and by three shifts: at most 2 of 100 (10).
        var (spread, random, suspected) = (Spread(), new Random(20261124), 0);
        var bands = OwnBands.Of(TypicalMachines.Of(MachineKind.RackConveyorTwoTank));
        for (var i = 0; i < 500; i++)
        {
            double step = 1 + (i % 2);
            var centre = 182 + (8 * random.NextDouble());
            var log = Log((_, _) => Math.Round((centre + (spread * Normal())) / step) * step, days: 5);
            var judged = VisitJudgement.Judge(Conveyor() with { CrewLogs = [log], Readings = [] }, BuiltInKnowledge.Trade, Rules, bands);
            suspected += judged.CrewLogs[0].Same!.Likely ? 1 : 0;
        }

        Assert.InRange(suspected, 0, 10);

        double Normal() => Enumerable.Range(0, 12).Sum(_ => random.NextDouble()) - 6;
    }

    [Fact]
    public void Where_nothing_is_known_of_how_readings_vary_it_stays_undetermined()
    {
        var strips = Log((_, _) => 100) with { Kind = "rd-sanitizer", Unit = Units.MilligramPerLitre };
        var judged = Of(strips, Door());

        Assert.Null(judged.Same!.Chance);
        Assert.False(judged.Same.Likely || judged.Gaps);
        Assert.True(Says(judged, "visit.log.same-unknown"));
        // Nor where nobody said what the machine does meanwhile.
        Assert.Null(Of(Log((_, _) => 182) with { State = OperatingState.Unknown }).Same!.Chance);
        // Four entries are too few to compare.
        Assert.Null(Of(Log((day, _) => day < 4 ? 182 : null, shifts: 1)).Same);
    }

    [Fact]
    public void Values_outside_a_limit_count_until_it_is_written_what_was_done()
    {
        // The door machine's plate asks 120 °F in the wash and 50 mg/L: 118 twice, 112 once of fifteen.
        CrewLog Wash(bool? written)
        {
            var log = Log(
                (day, shift) =>
                    (day, shift) is (2, 1) or (4, 3) ? 118
                    : (day, shift) is (3, 2) ? 112
                    : 124 + ((day + shift) % 5),
                days: 5
            );
            return log with
            {
                Kind = "rd-wash-temp",
                Entries = [.. log.Entries.Select(e => e.Value < 120 ? e with { ActionWritten = written } : e)],
            };
        }

        foreach (var (written, key) in ((bool?, string)[])[(false, "silent"), (null, "open"), (true, "written")])
        {
            var judged = Of(Wash(written), Door());
            Assert.Equal(3, judged.Outside!.Count);
            var said = judged.Says.Single(s => s.Key.StartsWith("visit.log.outside", StringComparison.Ordinal));
            Assert.Equal("visit.log.outside-" + key, said.Key);
            Assert.Equal([3L, Fahrenheit(120), Fahrenheit(112), new DateOnly(2026, 11, 22), 2L], said.Values.Select(v => v.Value));
            Assert.Equal(written is not true, judged.Because.Contains(said));
        }

        var strips = Log((day, _) => day == 1 ? 25 : 100, days: 5) with { Kind = "rd-sanitizer", Unit = Units.MilligramPerLitre };
        Assert.Equal(3, Of(strips, Door()).Outside!.Count);
        // No rule speaks of the water that comes in.
        Assert.Null(Of(Log((_, _) => 110) with { Kind = "rd-incoming-temp" }).Outside);
    }

    [Theory] // The probe read 188 °F ± 1, the knowledge gives a gauge ± 3: apart from beyond 4 on
    [InlineData(182, "visit.log.middle-low")]
    [InlineData(185, "visit.log.middle-agrees")]
    [InlineData(191, "visit.log.middle-agrees")]
    [InlineData(194, "visit.log.middle-high")]
    public void The_middle_is_held_against_what_was_read(double middle, string key)
    {
        // Half above, half below, one in the middle.
        var judged = Of(Log((day, _) => middle + day - 2, days: 5));

        Assert.Equal((middle, 188.0), (judged.Middle!.Middle.Value, judged.Middle.Read.Value));
        Assert.Equal(4, judged.Middle.MayDiffer.Value, 9);
        Assert.True(Says(judged, key));
    }

    [Fact]
    public void Not_read_today_is_said_and_proves_nothing()
    {
        var unread = Conveyor() with { Readings = [.. Conveyor().Readings.Where(r => r.Kind != "rd-final-rinse-temp")] };
        var judged = Of(Log((day, shift) => Wandering(day, shift)), unread);

        Assert.Null(judged.Middle);
        Assert.True(Says(judged, "visit.log.middle-not-read"));
        // The machine's own gauge is what is in doubt.
        var gauge = Conveyor() with
        {
            Readings = [.. Conveyor().Readings.Select(r => r with { Method = ReadingMethod.MachineGauge })],
        };
        Assert.Null(Of(Log((day, shift) => Wandering(day, shift)), gauge).Middle);
    }

    [Fact]
    public void A_log_nobody_looked_at_is_said_and_a_lesson_goes_once_it_was_given()
    {
        Assert.Contains(Judge(Conveyor()).Missing, m => m is { Says.Key: "visit.missing.crew-log", Blocks: false });
        var looked = Conveyor() with { CrewLogs = [Log((_, _) => 182)] };
        Assert.DoesNotContain(Judge(looked).Missing, m => m.Says.Key == "visit.missing.crew-log");
        Assert.True(Says(Of(Log((_, _) => 182)), "visit.log.teach"));
        Assert.False(
            Says(
                Of(Log((_, _) => 182), Conveyor() with { Training = [new Training(CrewLogJudgement.Lesson, ["Ana"], true)] }),
                "visit.log.teach"
            )
        );
    }

    private static readonly Gen<CrewLog> Some = Gen.Select(Gen.Int[1, 14], Gen.Int[1, 4], Gen.Bool, Gen.Int[0, 9].Array[56])
        .Select(
            (days, shifts, whole, codes) =>
                Log((day, shift) => codes[(day * 4) + shift - 1] is > 1 and var c ? 178 + c : null, days, shifts, whole)
        );

    [Fact]
    public void A_log_never_improves_how_a_machine_stands_and_its_order_decides_nothing()
    {
        var without = Judge(Conveyor());
        Gen.Select(Some, Gen.Int[0, 100])
            .Sample(
                (log, turn) =>
                {
                    var with = Judge(Conveyor() with { CrewLogs = [log] });
                    Assert.True(with.Standing <= without.Standing);
                    var turned = log with
                    {
                        Entries =
                        [
                            .. log.Entries.Skip(turn % (log.Entries.Count + 1)),
                            .. log.Entries.Take(turn % (log.Entries.Count + 1)),
                        ],
                    };
                    var again = Judge(Conveyor() with { CrewLogs = [turned] });
                    Assert.Equal(Told(with), Told(again));
                },
                iter: 60,
                threads: 1
            );

        static string Told(VisitResult result) =>
            string.Join('\n', result.CrewLogs[0].Says.Select(s => s.Key + string.Join('|', s.Values.Select(v => v.Value))));
    }

    [Fact]
    public void Filling_a_blank_never_adds_to_what_is_missing_of_a_whole_log()
    {
        Gen.Select(Some, Gen.Int[0, 13], Gen.Int[1, 4])
            .Sample(
                (log, day, shift) =>
                {
                    var whole = log with { Whole = true };
                    var (on, in_) = (whole.From.AddDays(day % log.Days), 1 + (shift % log.ShiftsPerDay));
                    var filled = whole with
                    {
                        Entries = [.. whole.Entries.Where(e => (e.On, e.Shift) != (on, in_)), new CrewEntry(on, in_, 186)],
                    };
                    var (before, after) = (Of(whole), Of(filled));
                    Assert.Equal(before.Missing - (whole.Entries.Any(e => (e.On, e.Shift) == (on, in_)) ? 0 : 1), after.Missing);
                    Assert.Equal(before.Expected, after.Expected);
                    Assert.InRange(after.Same?.Chance ?? 0, 0, 1);
                },
                iter: 60,
                threads: 1
            );
    }
}
