using CsCheck;
using Rinsewright.Engine.Numerics;
using Rinsewright.Engine.Quantities;
using Rinsewright.Engine.Records;
using Rinsewright.Engine.Sanitization;
using Rinsewright.Engine.Visits;
using Rinsewright.Engine.Visits.History;
using static Rinsewright.Engine.Tests.Visits.History.InventedHistory;
using static Rinsewright.Engine.Tests.Visits.InventedVisit;

namespace Rinsewright.Engine.Tests.Visits.History;

/// <summary>What holds of every history, whatever is in it.</summary>
public sealed class HistoryLaws
{
    private const int Times = 40;

    // Up to nine visits on distinct days; some find a fault, set something, or read nothing.
    private static readonly Gen<Visit[]> Some = Gen.Select(Gen.Int[1, 60], Gen.Double[175, 196], Gen.Int[0, 9])
        .Array[1, 9]
        .Select(all =>
        {
            var day = 0;
            return all.Select(v =>
                {
                    day += v.Item1;
                    var visit = On(day, v.Item3 == 0 ? null : Math.Round(v.Item2, 1));
                    return v.Item3 switch
                    {
                        1 => visit with
                        {
                            Changes = [new VisitChange(ChangeKind.Set, "Booster set", [AcceptanceArea.Heat])],
                            Readings = [.. visit.Readings, At(day, 190, moment: VisitMoment.AsLeft)],
                        },
                        2 => visit with { Findings = [new VisitFinding("chk-wet-wiring", true, VisitMoment.AsFound)] },
                        3 => visit with { Findings = [new VisitFinding("chk-wet-wiring", false, VisitMoment.AsFound)] },
                        4 => visit with { PartsUsed = [new PartUse("Gasket", 1, v.Item1 % 2 == 0 ? PartWhere.Ordered : PartWhere.Fitted)] },
                        _ => visit,
                    };
                })
                .ToArray();
        });

    [Fact]
    public void Order_in_which_visits_are_handed_over_decides_nothing() =>
        Gen.Select(Some, Gen.Int[1, 1000])
            .Sample(
                (visits, seed) =>
                    Assert.Equal(Told(Of(visits)), Told(Of(visits.OrderBy(v => (v.Began.Ticks / 7 * 31) ^ seed).ThenBy(v => v.Began)))),
                iter: Times,
                threads: 1
            );

    [Fact]
    public void A_visit_that_read_something_else_changes_no_other_series() =>
        Gen.Select(Some, Gen.Int[0, 400])
            .Sample(
                (visits, day) =>
                {
                    var other = On(day, 20, "rd-rinse-pressure", Units.Psi) with { Began = Morning.AddDays(day).AddHours(5) };
                    var (one, both) = (Of(visits), Of([.. visits, other]));
                    foreach (var series in one.Series)
                    {
                        var same = both.Series.Single(s => s.Kind == series.Kind && s.State == series.State);
                        Assert.Equal(series.Points.Select(Figure), same.Points.Select(Figure));
                        Assert.Equal(series.Segments.Select(s => s.Trend), same.Segments.Select(s => s.Trend));
                        Assert.Equal(series.Forecast, same.Forecast);
                    }

                    Assert.Equal(one.Findings.Select(f => (f.Id, f.Open, f.Days)), both.Findings.Select(f => (f.Id, f.Open, f.Days)));
                },
                iter: Times,
                threads: 1
            );

    [Fact]
    public void Moving_everything_in_time_leaves_the_slopes() =>
        Gen.Select(Some, Gen.Int[-2000, 2000])
            .Sample(
                (visits, days) =>
                {
                    var moved = visits.Select(v =>
                        v with
                        {
                            Began = v.Began.AddDays(days),
                            Readings = [.. v.Readings.Select(r => r with { At = r.At!.Value.AddDays(days) })],
                        }
                    );
                    var (one, other) = (Of(visits), Of(moved, Today.AddDays(days)));
                    Assert.Equal(
                        one.Series.SelectMany(s => s.Segments).Select(s => s.Trend),
                        other.Series.SelectMany(s => s.Segments).Select(s => s.Trend)
                    );
                    Assert.Equal(
                        one.Series.Select(s => (s.Forecast?.Kind, s.Forecast?.Earliest?.AddDays(days))),
                        other.Series.Select(s => (s.Forecast?.Kind, s.Forecast?.Earliest))
                    );
                },
                iter: Times,
                threads: 1
            );

    // A tenth of a degree Fahrenheit is never within rounding of a limit printed twice (180 °F, 82 °C is 179.6 °F): those between are left out.
    [Fact]
    public void Unit_of_entry_leaves_verdicts_and_trends() =>
        Some.Where(all => all.All(v => v.Readings.All(r => r.Value!.Value.Value is < 179 or > 181 and < 193.5 or > 194.5)))
            .Sample(
                visits =>
                {
                    var turned = visits.Select(v =>
                        v with
                        {
                            Readings =
                            [
                                .. v.Readings.Select(
                                    (r, i) => (i + v.Began.Day) % 2 == 0 ? r with { Value = r.Value!.Value.In(Units.Celsius) } : r
                                ),
                            ],
                        }
                    );
                    var (one, other) = (Of(visits), Of(turned));
                    foreach (var (a, b) in one.Series.Zip(other.Series))
                    {
                        Assert.Equal(a.Points.Select(p => (p.Status, p.Band)), b.Points.Select(p => (p.Status, p.Band)));
                        Assert.Equal(
                            a.Segments.Select(s => (s.Trend.Kind, s.Trend.Count)),
                            b.Segments.Select(s => (s.Trend.Kind, s.Trend.Count))
                        );
                        Assert.All(a.Segments.Zip(b.Segments), s => Assert.Equal(s.First.Trend.PerDay ?? 0, s.Second.Trend.PerDay ?? 0, 7));
                        Assert.Equal(a.Steps, b.Steps);
                        Assert.Equal(a.Forecast?.Kind, b.Forecast?.Kind);
                    }
                },
                iter: Times,
                threads: 1
            );

    [Fact]
    public void What_is_open_was_opened_and_what_is_closed_was_closed_later() =>
        Some.Sample(
            visits =>
            {
                var history = Of(visits);
                Assert.All(history.Findings, f => Assert.True(f.Days >= 0 && (f.Closed is not { } c || c >= f.Opened)));
                Assert.True(history.Findings.Count(f => f.Id == "chk-wet-wiring" && f.Open) <= 1);
                Assert.All(
                    history.Series,
                    s => Assert.Equal(s.Segments.SelectMany(x => x.Points).Distinct().Count(), s.Segments.Sum(x => x.Points.Count))
                );
            },
            iter: Times,
            threads: 1
        );

    [Theory] // Noise as it is, and rounded so that many are alike; the bound is four standard errors over the rate that is stated
    [InlineData(5, 0)]
    [InlineData(8, 0)]
    [InlineData(12, 0)]
    [InlineData(8, 1)]
    [InlineData(20, 1)]
    public void What_stands_still_is_said_to_drift_no_more_often_than_stated(int count, int rounded)
    {
        const int Series = 4000;
        var noise = new CounterNormal(20261126);
        var said = 0;
        for (var s = 0; s < Series; s++)
        {
            var run = Enumerable
                .Range(0, count)
                .Select(i => Still(i, 190 + (rounded > 0 ? Math.Round(noise.At(s, i) / rounded) : noise.At(s, i))))
                .ToList();
            said += SeriesTrends.Of(run).Kind is TrendKind.Rising or TrendKind.Falling or TrendKind.Small ? 1 : 0;
        }

        var most = SeriesTrends.Risk + (4 * Math.Sqrt(SeriesTrends.Risk * (1 - SeriesTrends.Risk) / Series));
        Assert.InRange((double)said / Series, 0, most);
        Assert.True(said > 0, "no series at all was said to drift: the test is blind");
    }

    [Fact] // A drift of a degree a month under noise of half a degree, eight visits: seldom missed
    public void What_drifts_is_seen()
    {
        const int Series = 500;
        var noise = new CounterNormal(7);
        var seen = Enumerable
            .Range(0, Series)
            .Count(s =>
                SeriesTrends.Of([.. Enumerable.Range(0, 8).Select(i => Still(i, 190 - i + (0.5 * noise.At(s, i))))]).Kind
                == TrendKind.Falling
            );
        Assert.True(seen > 0.95 * Series, $"{seen} of {Series}");
    }

    private static HistoryPoint Still(int month, double value)
    {
        var amount = Fahrenheit(value);
        return new HistoryPoint(
            month,
            Morning.AddDays(30 * month),
            VisitMoment.AsFound,
            amount,
            1,
            amount,
            amount,
            ReadingMethod.Probe,
            null,
            null,
            null,
            null,
            null,
            ReadingStatus.NoLimit,
            BandStanding.NoBand
        );
    }

    private static (DateTimeOffset, VisitMoment, Amount, ReadingStatus, BandStanding) Figure(HistoryPoint p) =>
        (p.At, p.Moment, p.Value, p.Status, p.Band);

    private static string Told(MachineHistory h) =>
        string.Join(
            '\n',
            (string[])
                [
                    .. h.Visits.Select(v => v.Id),
                    .. h.Series.SelectMany(s => s.Points.Select(p => $"{s.Kind} {Figure(p)}")),
                    .. h.Series.SelectMany(s => s.Segments.Select(x => $"{string.Join(',', x.Points)} {x.Trend}")),
                    .. h.Series.SelectMany(s => s.Breaks.Select(b => b.ToString())),
                    .. h.Series.Select(s => $"{s.Forecast?.Kind} {s.Forecast?.Earliest} {s.Forecast?.Latest}"),
                    .. h.Findings.Select(f => f.ToString()),
                    .. h.Owed.Select(o => o.ToString()),
                    .. h.Lives.Select(l => l.ToString()),
                    .. h.ChangedSinceLast.Select(c => c.Key),
                ]
        );
}
