using Rinsewright.Engine.Quantities;
using Rinsewright.Engine.Records;
using Rinsewright.Engine.Sanitization;
using Rinsewright.Engine.Visits;
using Rinsewright.Engine.Visits.History;
using static Rinsewright.Engine.Tests.Visits.History.InventedHistory;
using static Rinsewright.Engine.Tests.Visits.InventedVisit;

namespace Rinsewright.Engine.Tests.Visits.History;

/// <summary>What the crew wrote, over time (H9); every expected figure by arithmetic, stated beside it.</summary>
public sealed class CrewSeriesTests
{
    // A visit so many days after the first, with a log of the final rinse of the days before it: three shifts around the value of the day, counted from the first visit.
    private static Visit Copied(int day, Func<int, double> value, int days = 14, Unit? unit = null)
    {
        var until = DateOnly.FromDateTime(Morning.DateTime).AddDays(day - 1);
        return On(day, 190) with
        {
            CrewLogs =
            [
                new CrewLog("rd-final-rinse-temp", unit ?? Units.Fahrenheit, until, days, 3)
                {
                    State = OperatingState.Load,
                    Whole = true,
                    Entries =
                    [
                        .. from back in Enumerable.Range(0, days)
                        from shift in Enumerable.Range(1, 3)
                        select new CrewEntry(until.AddDays(-back), shift, value(day - 1 - back) + (2 * (shift - 2))),
                    ],
                },
            ],
        };
    }

    private static DateOnly Day(int day) => DateOnly.FromDateTime(Morning.DateTime).AddDays(day);

    [Fact] // 197 - 0.5 a day for 14 days: 190.5 on the last. The gauge may be off 3 °F (rd-wash-gauge-error), less than the 6.5 it moved
    public void A_log_that_falls_drifts_to_its_limit_and_stands_beside_the_readings()
    {
        var history = Of([Copied(0, d => 190.5 - (0.5 * (d + 1)))]);
        var series = Assert.Single(history.CrewLogs);

        Assert.True(series.ByCrew);
        Assert.Equal((14, TrendKind.Falling), (series.Points.Count, series.Trend.Kind));
        Assert.Equal(-0.5, series.Trend.PerDay!.Value, 12);
        var last = series.Points[^1];
        Assert.Equal((190.5, 3, 188.5, 192.5), (last.Value.Value, last.Count, last.Low.Value, last.High.Value));
        Assert.Equal((3.0, 180.0, ReadingStatus.InRange), (last.Off!.Value, last.LeastLimit!.Figure.Value, last.Status));
        Assert.Equal(Day(-1), DateOnly.FromDateTime(last.At.DateTime));
        Assert.NotNull(last.Own);
        // 10.5 °F to go at half a degree a day, 3 °F either way: 15 to 27 days; told as far as 26, twice the 13 watched.
        Assert.Equal((ForecastKind.NotBefore, Day(14)), (series.Forecast!.Kind, series.Forecast.Earliest!.Value));
        // What was measured is not mixed with it.
        Assert.Equal(190, Assert.Single(Series(history).Points).Value.Value);
    }

    [Fact]
    public void A_day_outside_its_limit_is_said_and_the_band_is_that_of_the_machine()
    {
        var points = Assert.Single(Of([Copied(0, d => d == -3 ? 181 : 190, days: 5)]).CrewLogs).Points;

        // 179, 181 and 183 on the third day from the end: one misses 180.
        Assert.Equal(
            [ReadingStatus.InRange, ReadingStatus.InRange, ReadingStatus.OutOfRange, ReadingStatus.InRange, ReadingStatus.InRange],
            points.Select(p => p.Status)
        );
        Assert.All(
            points,
            p =>
                Assert.Equal(
                    p.Value.Value < p.Own!.Low.Value ? BandStanding.Below
                        : p.Value.Value > p.Own.High.Value ? BandStanding.Above
                        : BandStanding.Inside,
                    p.Band
                )
        );
    }

    [Fact]
    public void Of_a_day_two_visits_copied_the_later_copy_counts()
    {
        var series = Assert.Single(Of([Copied(7, _ => 190), Copied(0, _ => 186)]).CrewLogs);

        // 14 days before the first visit and the 7 after it; the second copied 14, seven of them again.
        Assert.Equal(21, series.Points.Count);
        Assert.Equal([.. Enumerable.Repeat(186.0, 7), .. Enumerable.Repeat(190.0, 14)], series.Points.Select(p => p.Value.Value));
    }

    [Fact]
    public void A_change_parts_it_and_its_own_day_belongs_to_neither_side()
    {
        var delimed = On(0, 184) with { Changes = [new VisitChange(ChangeKind.Cleaned, "Booster delimed", [AcceptanceArea.Heat])] };
        var series = Assert.Single(Of([delimed, Copied(7, d => d < 0 ? 184 : 190)]).CrewLogs);

        // Seven days before the change, its day, six after it.
        Assert.Equal(14, series.Points.Count);
        Assert.Equal([7, 6], series.Segments.Select(s => s.Points.Count));
        Assert.Equal(Day(0), DateOnly.FromDateTime(series.Points[7].At.DateTime));
        Assert.DoesNotContain(series.Segments, s => s.Points.Contains(7));
        Assert.Equal("Booster delimed", Assert.Single(series.Breaks).What);
    }

    [Fact]
    public void Many_days_are_taken_by_the_week()
    {
        var history = Of(Enumerable.Range(0, 8).Select(i => Copied(14 * i, d => 190 + (d % 3))));
        var series = Assert.Single(history.CrewLogs);

        // 112 days are 16 weeks, or parts of 17.
        Assert.InRange(series.Points.Count, 16, 17);
        Assert.Equal(112 * 3, series.Points.Sum(p => p.Count));
        Assert.Equal(series.Points.Count, series.Segments.Single().Points.Count);
    }

    [Fact] // 82 to 90 °C and 180 to 194 °F are the same temperatures
    public void A_paper_in_the_other_unit_comes_into_the_unit_of_the_series()
    {
        var celsius = Assert.Single(Of([Copied(0, _ => 90, unit: Units.Celsius)]).CrewLogs);

        Assert.Equal((Units.Fahrenheit, 194.0), (celsius.Unit, celsius.Points[0].Value.Value));
        Assert.Equal((190.4, 197.6), (celsius.Points[0].Low.Value, celsius.Points[0].High.Value)); // 88 and 92 °C
        Assert.Equal(3.0, celsius.Points[0].Off!.Value, 9);
    }

    [Fact]
    public void What_cannot_be_read_is_no_point()
    {
        var visit = Copied(0, _ => 190, days: 3);
        visit = visit with { CrewLogs = [visit.CrewLogs[0] with { Entries = [], Unread = [new UnreadEntry(Day(-1), 1, "18?")] }] };
        Assert.Empty(Of([visit]).CrewLogs);
    }
}
