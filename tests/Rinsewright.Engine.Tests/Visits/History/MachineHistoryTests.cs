using Rinsewright.Engine.Quantities;
using Rinsewright.Engine.Records;
using Rinsewright.Engine.Sanitization;
using Rinsewright.Engine.Visits;
using Rinsewright.Engine.Visits.History;
using Rinsewright.Knowledge;
using static Rinsewright.Engine.Tests.Visits.History.InventedHistory;
using static Rinsewright.Engine.Tests.Visits.InventedVisit;

namespace Rinsewright.Engine.Tests.Visits.History;

/// <summary>What many visits tell together; every expected figure by arithmetic, stated beside it.</summary>
public sealed class MachineHistoryTests
{
    [Fact] // 192 - 2 × i each 30 days: a fifteenth of a degree a day, every pair alike
    public void A_reading_that_falls_evenly_drifts_to_its_limit()
    {
        var series = Series(Rinse(192, 190, 188, 186, 184));

        Assert.Equal(TrendKind.Falling, series.Trend.Kind);
        Assert.Equal(-2.0 / 30, series.Trend.PerDay!.Value, 12);
        var forecast = series.Forecast!;
        Assert.Equal((ForecastKind.Between, 180.0), (forecast.Kind, forecast.Figure.Value));
        // 4 °F to go from 184 on day 120, the probe ±1 °F: 45 to 75 days at a fifteenth a day.
        var last = DateOnly.FromDateTime(Morning.DateTime).AddDays(120);
        Assert.Equal((last.AddDays(45), last.AddDays(75)), (forecast.Earliest!.Value, forecast.Latest!.Value));
        Assert.Equal(last.AddDays(240), forecast.Until); // twice the 120 days watched
        Assert.Equal("final-rinse", forecast.Rule!.Id);
    }

    [Fact]
    public void Four_are_too_few_and_five_that_waver_show_none()
    {
        var few = Series(Rinse(192, 190, 188, 186)).Trend;
        Assert.Equal((TrendKind.TooFew, 4, 5, null), (few.Kind, few.Count, few.Needs, few.PerDay));
        var waver = Series(Rinse(190, 192, 189, 191, 190));
        Assert.Equal((TrendKind.None, null), (waver.Trend.Kind, waver.Forecast));
    }

    [Fact] // 0.2 °F in 120 days, the probe ±1 °F
    public void Less_than_the_instrument_may_be_off_is_no_drift()
    {
        var series = Series(Rinse(190.2, 190.15, 190.1, 190.05, 190));
        Assert.Equal((TrendKind.Small, false, null), (series.Trend.Kind, series.Trend.Drifts, series.Forecast));
    }

    [Fact] // 187 to 180 at 0.0033 a day: 2100 days, 1800 with the probe 1 °F off, past twice the 480 watched
    public void Far_off_is_no_date()
    {
        var slow = Of(Enumerable.Range(0, 5).Select(i => On(120 * i, 188.6 - (0.4 * i))));
        var forecast = Series(slow).Forecast!;
        Assert.Equal((ForecastKind.FarOff, null, null), (forecast.Kind, forecast.Earliest, forecast.Latest));
    }

    [Fact]
    public void Below_the_limit_it_is_there()
    {
        var forecast = Series(Rinse(188, 186, 184, 181, 178)).Forecast!;
        Assert.Equal((ForecastKind.There, null), (forecast.Kind, forecast.Earliest));
    }

    [Fact]
    public void A_change_starts_a_new_segment_with_what_was_left()
    {
        var repaired = On(120, 184) with
        {
            Readings = [At(120, 184), At(120, 192, moment: VisitMoment.AsLeft)],
            Changes = [new VisitChange(ChangeKind.Cleaned, "Booster delimed", [AcceptanceArea.Heat])],
        };
        var history = Of([On(0, 192), On(30, 190), On(60, 188), On(90, 186), repaired, On(150, 191), On(180, 192)]);
        var series = Series(history);

        Assert.Equal([5, 3], series.Segments.Select(s => s.Points.Count));
        Assert.Equal([TrendKind.Falling, TrendKind.TooFew], series.Segments.Select(s => s.Trend.Kind));
        Assert.Equal("Booster delimed", Assert.Single(series.Breaks).What);
        Assert.Empty(series.Steps);
        Assert.Null(series.Forecast);
    }

    [Theory] // A change of chemistry does not move the heat; one that names no area may; a fitted part without a change may
    [InlineData("Chemistry", 1)]
    [InlineData("Heat", 2)]
    [InlineData("", 2)]
    [InlineData("part", 2)]
    public void Only_what_may_touch_a_reading_parts_it(string what, int segments)
    {
        var touched = On(30, 190);
        touched =
            what == "part"
                ? touched with
                {
                    PartsUsed = [new PartUse("Gasket", 1, PartWhere.Fitted)],
                }
                : touched with
                {
                    Changes = [new VisitChange(ChangeKind.Set, "something", what.Length == 0 ? [] : [Enum.Parse<AcceptanceArea>(what)])],
                };
        var series = Series(Of([On(0, 190), touched, On(60, 190)]));
        Assert.Equal(segments, series.Segments.Count);
    }

    [Fact] // 190 to 180: 10 °F, more than twice the probe's 1 °F and 1.5 °F that gauges tell
    public void A_jump_with_nothing_on_record_is_a_step()
    {
        var series = Series(Rinse(190, 190, 180, 180));
        var step = Assert.Single(series.Steps);
        Assert.Equal((190.0, 180.0), (series.Points[step.From].Value.Value, series.Points[step.To].Value.Value));
        var explained = Of([
            On(0, 190),
            On(30, 180) with
            {
                Cause = new VisitCause("booster-scaled", CauseKnown.Confirmed, CauseOwner.Machine),
            },
        ]);
        Assert.Empty(Series(explained).Steps);
    }

    [Fact]
    public void Racks_are_their_median_with_the_verdict_of_the_worst()
    {
        var visit = On(0, null) with { Readings = [At(0, 188), At(0, 176), At(0, 186)] };
        var point = Assert.Single(Series(Of([visit])).Points);
        Assert.Equal((186.0, 176.0, 188.0, 3), (point.Value.Value, point.Low.Value, point.High.Value, point.Count));
        Assert.Equal(ReadingStatus.OutOfRange, point.Status);
        Assert.Equal((180.0, 194.0), (point.LeastLimit!.Figure.Value, point.MostLimit!.Figure.Value)); // Food Code 4-501.112
    }

    [Fact]
    public void The_machines_own_gauge_is_shown_and_is_no_trend()
    {
        var visits = Enumerable
            .Range(0, 6)
            .Select(i =>
                On(30 * i, null) with
                {
                    Readings = [At(30 * i, 195 - (3 * i)) with { Method = ReadingMethod.MachineGauge, Instrument = null }],
                }
            );
        var series = Series(Of(visits));
        Assert.Equal(6, series.Points.Count);
        Assert.Equal((TrendKind.TooFew, 0), (series.Trend.Kind, series.Trend.Count));
    }

    [Fact]
    public void A_danger_is_open_until_it_was_looked_for_and_gone()
    {
        VisitFinding Wet(bool found, VisitMoment moment = VisitMoment.AsFound) => new("chk-wet-wiring", found, moment);
        var open = Of([On(0, 190) with { Findings = [Wet(true)] }, On(30, 190)], DateOnly.FromDateTime(Morning.DateTime).AddDays(40));
        var finding = Assert.Single(open.Findings);
        Assert.Equal((FollowedKind.Danger, true, 0, 40), (finding.Kind, finding.Open, finding.Opened, finding.Days));

        var closed = Of([
            On(0, 190) with
            {
                Findings = [Wet(true)],
            },
            On(30, 190),
            On(60, 190) with
            {
                Findings = [Wet(false)],
            },
            On(90, 190) with
            {
                Findings = [Wet(true), Wet(false, VisitMoment.AsLeft)],
            },
        ]);
        Assert.Equal([(3, 3, 0), (0, 2, 60)], closed.Findings.Select(f => (f.Opened, f.Closed!.Value, f.Days)));
    }

    [Fact]
    public void Parts_are_owed_until_they_are_fitted_and_last_from_one_to_the_next()
    {
        PartUse Curtain(PartWhere where, DateOnly? on = null) => new("Long curtain", 2, where, on);
        var day = DateOnly.FromDateTime(Morning.DateTime);
        var visits = (Visit[])
            [
                On(0, 190) with
                {
                    PartsUsed = [Curtain(PartWhere.Fitted)],
                },
                On(200, 190) with
                {
                    PartsUsed = [Curtain(PartWhere.Ordered, day.AddDays(210))],
                },
                On(230, 190) with
                {
                    PartsUsed = [Curtain(PartWhere.OnSite)],
                },
            ];
        var owed = Assert.Single(Of(visits, day.AddDays(240)).Owed);
        Assert.Equal((PartWhere.OnSite, 1, 40, false), (owed.Where, owed.Since, owed.Days, owed.Late));
        Assert.True(Assert.Single(Of(visits[..2], day.AddDays(240)).Owed).Late);

        var fitted = Of(
            [.. visits, On(300, 190) with { PartsUsed = [new PartUse("long  curtain", 2, PartWhere.Fitted)] }],
            day.AddDays(310)
        );
        Assert.Empty(fitted.Owed);
        Assert.Equal([(0, 3, 300), (3, null, 10)], fitted.Lives.Select(l => (l.Fitted, l.Replaced, l.Days)));
    }

    [Fact]
    public void A_declined_test_stays_until_it_was_run()
    {
        var declined = ConveyorSet() with { Leaks = [], Declined = [new Declined(AcceptanceArea.Leaks, "no time")] };
        var run = ConveyorSet();
        run = run with
        {
            Began = Morning.AddDays(7),
            Readings = [.. run.Readings.Select(r => r with { At = r.At!.Value.AddDays(7) })],
            Changes = [.. run.Changes.Select(c => c with { At = c.At!.Value.AddDays(7) })],
            Leaks = [new LeakLook(true, VisitMoment.AsLeft, At: Morning.AddDays(7).AddMinutes(80))],
        };
        Assert.Equal([(AcceptanceArea.Leaks, "no time", (int?)1)], Of([declined, run]).Declined.Select(d => (d.Area, d.Because, d.MadeUp)));
        Assert.Null(Assert.Single(Of([declined]).Declined).MadeUp);
    }

    [Fact]
    public void What_changed_is_one_list()
    {
        var last = On(30, 178) with
        {
            Findings = [new VisitFinding("chk-wet-wiring", true, VisitMoment.AsFound)],
            Supplies = [new SupplyCount("Detergent", Engine.Machines.FedProduct.Detergent, 2) { Changed = true, Primed = true }],
        };
        var keys = Of([On(0, 190), last]).ChangedSinceLast.Select(s => s.Key).ToList();
        Assert.Equal(
            [
                "history.changed.standing",
                "history.changed.opened",
                "history.changed.container",
                "history.changed.moved",
                "history.changed.status",
            ],
            keys
        );
        Assert.Empty(Of([last]).ChangedSinceLast);
    }

    [Fact]
    public void Proofs_and_water_stand_in_order_of_time()
    {
        var visit = On(30, 190);
        var history = MachineHistory.Of(
            [new HistoryVisit("a", visit, Judge(visit))],
            BuiltInKnowledge.Trade,
            Today,
            [new HistoryProof("p", Morning.AddDays(40), Outcome.Proven), new HistoryProof("q", Morning.AddDays(1), Outcome.NotProven)],
            [
                new HistoryWater("rd-hardness", new Amount(171.2, Units.HardnessMilligramPerLitre), new DateOnly(2026, 5, 1)),
                new HistoryWater("rd-hardness", new Amount(9, Units.GrainPerGallon), new DateOnly(2026, 1, 1)),
            ]
        );
        Assert.Equal(["q", null, "p"], history.Proofs.Select(p => p.Proof));
        var water = Assert.Single(history.Water);
        Assert.Equal(Units.GrainPerGallon, water.Unit);
        Assert.Equal([9, 10], water.Points.Select(p => Math.Round(p.Value.Value, 2))); // 17.12 mg/L to the grain a gallon
    }
}
