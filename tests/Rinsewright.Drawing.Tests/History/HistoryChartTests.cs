using CsCheck;
using Rinsewright.Contracts.Language;
using Rinsewright.Contracts.Records;
using Rinsewright.Drawing.History;
using Rinsewright.Engine.Sanitization;
using Rinsewright.Tests.Shared;
using Xunit;

namespace Rinsewright.Drawing.Tests.History;

/// <summary>The chart of a reading over the visits: as accepted, and what holds of every one.</summary>
public sealed class HistoryChartTests
{
    private static readonly HistoryWords English = new(Words.For("en"), UnitDisplay.AsRead);

    private static readonly Gen<(Engine.Visits.History.ReadingSeries Series, double Width, HistoryWords Words)> Some =
        from points in Gen.Select(Gen.Double[1, 200], Gen.Double[120, 200], Gen.Enum<ReadingStatus>()).Array[1, 60]
        from breaks in Gen.Double[0, 900].Array[0, 5]
        from width in Gen.Double[280, 720]
        from spanish in Gen.Bool
        from units in Gen.Enum<UnitDisplay>()
        select (
            InventedSeries.Of([.. Days(points)], [.. breaks.Order()]),
            width,
            new HistoryWords(Words.For(spanish ? "es" : "en"), units)
        );

    [Theory]
    [InlineData("history-phone.svg", "en", UnitDisplay.AsRead, 340)]
    [InlineData("history-paper-es-si.svg", "es", UnitDisplay.Si, 680)]
    public void A_drawing_stays_as_accepted(string name, string language, UnitDisplay units, double width) =>
        Golden.Matches(
            $"tests/Rinsewright.Drawing.Tests/Golden/{name}",
            SvgWriter.Write(
                HistoryChart.Draw(InventedSeries.Rinse(), new HistoryChartSize(width, 200), new HistoryWords(Words.For(language), units)),
                standalone: true
            )
        );

    [Fact]
    public void Whoever_cannot_see_it_loses_nothing()
    {
        var scene = HistoryChart.Draw(InventedSeries.Rinse(), HistoryChartSize.Phone, English);
        foreach (
            var says in (string[])
                [
                    "Falls 0.99\u00a0°F in 30 days, somewhere from 0.72\u00a0°F to 1.4\u00a0°F (5 readings in 122 days).", // 0.033, 0.024, 0.046 a day
                    "between 28\u00a0Dec\u00a02026 and 5\u00a0Jul\u00a02027",
                    "at least 180\u00a0°F",
                    "183 to 193\u00a0°F",
                    "13\u00a0May\u00a02026 as found: 178.4\u00a0°F ± 1, out of range.",
                    "13\u00a0May\u00a02026: Booster delimed.",
                    "Moved from 185.1\u00a0°F (17\u00a0Mar\u00a02026) to 181\u00a0°F (17\u00a0Apr\u00a02026)",
                ]
        )
        {
            Assert.Contains(says, scene.Description, StringComparison.Ordinal);
        }
    }

    [Fact]
    public void What_was_found_before_a_change_is_hollow_and_what_was_left_is_solid()
    {
        var marks = HistoryChart
            .Draw(InventedSeries.Rinse(), HistoryChartSize.Phone, English)
            .Marks.OfType<SceneGroup>()
            .SelectMany(g => g.Marks)
            .OfType<SceneStatus>()
            .ToList();
        Assert.Equal([4], marks.Select((m, i) => (m, i)).Where(m => m.m.Hollow).Select(m => m.i));
        Assert.Equal(
            [StatusShape.Circle, StatusShape.Triangle, StatusShape.Square, StatusShape.Circle],
            marks.Skip(2).Take(4).Select(m => m.Shape)
        );
    }

    [Fact] // °F nowhere in SI; a slope turns by 5/9 without the 32
    public void One_figure_has_one_system_of_units()
    {
        var scene = HistoryChart.Draw(InventedSeries.Rinse(), HistoryChartSize.Phone, new HistoryWords(Words.For("en"), UnitDisplay.Si));
        Assert.DoesNotContain("°F", SvgWriter.Write(scene), StringComparison.Ordinal);
        Assert.Contains("Falls 0.55\u00a0°C in 30 days", scene.Description, StringComparison.Ordinal);
    }

    [Fact]
    public void Everything_lies_inside_and_no_label_covers_another() =>
        Some.Sample(
            s =>
            {
                var scene = HistoryChart.Draw(s.Series, new HistoryChartSize(s.Width, 200), s.Words);
                var labels = scene.Marks.OfType<SceneText>().Select(t => (t.Text, Area: Area(t))).ToList();
                Assert.All(
                    labels,
                    l =>
                        Assert.True(
                            l.Area.Left >= -1 && l.Area.Right <= s.Width + 3 && l.Area.Top >= -1 && l.Area.Bottom <= 201,
                            $"'{l.Text}' {l.Area} at {s.Width}"
                        )
                );
                for (var i = 0; i < labels.Count; i++)
                {
                    for (var k = i + 1; k < labels.Count; k++)
                    {
                        var (a, b) = (labels[i].Area, labels[k].Area);
                        Assert.False(
                            a.Left < b.Right && b.Left < a.Right && a.Top < b.Bottom && b.Top < a.Bottom,
                            $"'{labels[i].Text}' covers '{labels[k].Text}' at {s.Width}"
                        );
                    }
                }

                Assert.All(
                    HistoryChart.Places(s.Series, new HistoryChartSize(s.Width, 200), s.Words),
                    p => Assert.True(p.X >= 0 && p.X <= s.Width && p.Y >= 0 && p.Y <= 200)
                );
                Assert.Equal(s.Series.Points.Count, scene.Marks.OfType<SceneGroup>().Count());
            },
            iter: 400,
            threads: 1
        );

    private static (double Left, double Top, double Right, double Bottom) Area(SceneText t)
    {
        var style = SceneStyles.Find(t.Style);
        var width = TextWidth.Of(t.Text, style.Size ?? 12, style.Weight) / TextWidth.Safety;
        var left =
            t.Anchor == TextAnchor.Start ? t.X
            : t.Anchor == TextAnchor.End ? t.X - width
            : t.X - (width / 2);
        return (left, t.Y - 9, left + width, t.Y + 2);
    }

    private static IEnumerable<(double, double, ReadingStatus)> Days((double Item1, double Item2, ReadingStatus Item3)[] points)
    {
        var day = 0.0;
        foreach (var p in points)
        {
            yield return (day, Math.Round(p.Item2, 1), p.Item3);
            day += p.Item1;
        }
    }
}
