using System.Globalization;
using System.Xml.Linq;
using CsCheck;
using Rinsewright.Contracts.Language;
using Rinsewright.Contracts.Records;
using Rinsewright.Drawing;
using Xunit;

namespace Rinsewright.Drawing.Tests;

/// <summary>What holds for every drawing, whatever is drawn.</summary>
public sealed class SceneLaws
{
    private static readonly Gen<Scene> Scenes =
        from width in Gen.Double[320, 900]
        from offset in Gen.Double[-25, 12]
        from spanish in Gen.Bool
        from units in Gen.Enum<UnitDisplay>()
        from rinse in Gen.Double[150, 196]
        from withRinse in Gen.Bool
        from passes in Gen.Int[1, 30]
        from overview in Gen.Bool
        from windowed in Gen.Bool
        from start in Gen.Double[0, 50]
        select Draw(
            width,
            offset,
            spanish ? "es" : "en",
            units,
            withRinse ? rinse : null,
            passes,
            overview,
            windowed ? new ChartWindow(start, start + 15) : null
        );

    [Fact]
    public void No_label_covers_another() =>
        Scenes.Sample(
            scene =>
            {
                var labels = Texts(scene.Marks).Select(t => (t.Text, Area: AreaOf(t))).ToList();
                for (var i = 0; i < labels.Count; i++)
                {
                    for (var k = i + 1; k < labels.Count; k++)
                    {
                        Assert.False(
                            Meet(labels[i].Area, labels[k].Area),
                            $"'{labels[i].Text}' covers '{labels[k].Text}' at width {scene.Width}"
                        );
                    }
                }
            },
            iter: 400,
            threads: 1
        );

    [Fact]
    public void Every_label_lies_inside_the_drawing() =>
        Scenes.Sample(
            scene =>
                Assert.All(
                    Texts(scene.Marks),
                    t =>
                    {
                        var (left, top, right, bottom) = AreaOf(t);
                        Assert.True(
                            left >= -1 && top >= -1 && right <= scene.Width + 1 && bottom <= scene.Height + 1,
                            $"'{t.Text}' leaves the drawing of {scene.Width}"
                        );
                    }
                ),
            iter: 400,
            threads: 1
        );

    [Fact]
    public void Every_drawing_is_well_formed_and_needs_no_inline_style_or_id() =>
        Scenes.Sample(
            scene =>
            {
                var page = XElement.Parse(SvgWriter.Write(scene));
                Assert.DoesNotContain(page.DescendantsAndSelf().Attributes(), a => a.Name.LocalName is "style" or "id");
                Assert.NotEmpty(page.Element("title")!.Value);
                Assert.NotEmpty(page.Element("desc")!.Value);
                XElement.Parse(SvgWriter.Write(scene, standalone: true));
            },
            iter: 200
        );

    [Fact]
    public void A_decimal_comma_changes_nothing_in_the_numbers_of_the_drawing()
    {
        var before = SvgWriter.Write(Draw(340, 0.3, "en", UnitDisplay.Si, 178.4, 3, false, null));
        var culture = (CultureInfo)CultureInfo.InvariantCulture.Clone();
        culture.NumberFormat.NumberDecimalSeparator = ",";
        culture.NumberFormat.NumberGroupSeparator = ".";
        var was = CultureInfo.CurrentCulture;
        try
        {
            CultureInfo.CurrentCulture = culture;
            Assert.Equal(before, SvgWriter.Write(Draw(340, 0.3, "en", UnitDisplay.Si, 178.4, 3, false, null)));
        }
        finally
        {
            CultureInfo.CurrentCulture = was;
        }
    }

    [Fact]
    public void Hatching_stays_inside_its_rectangle() =>
        Gen.Select(Gen.Double[1, 300], Gen.Double[1, 300], Gen.Double[2, 12])
            .Sample(
                (width, height, step) =>
                    Assert.All(
                        new SceneHatch("suspect", 10, 20, width, height, step).Lines().SelectMany(l => l.Points),
                        p => Assert.True(p.X >= 10 - 1e-9 && p.X <= 10 + width + 1e-9 && p.Y >= 20 - 1e-9 && p.Y <= 20 + height + 1e-9)
                    )
            );

    private static Scene Draw(
        double width,
        double offset,
        string language,
        UnitDisplay units,
        double? rinse,
        int passes,
        bool overview,
        ChartWindow? window
    )
    {
        var report = InventedProof.Report(
            [.. Enumerable.Repeat(offset, passes)],
            "notProven",
            rinse is { } r ? [InventedProof.RinseReading(Math.Round(r, 1))] : []
        );
        var words = Words.For(language);
        return overview
            ? ProofChart.Overview(report, report.Channels[0], new ChartSize(width), words, units, window, 1)
            : ProofChart.Draw(report, report.Passes[0], new ChartSize(width), words, units, window);
    }

    private static IEnumerable<SceneText> Texts(IEnumerable<SceneMark> marks) =>
        marks.SelectMany(m =>
            m switch
            {
                SceneText t => [t],
                SceneGroup g => Texts(g.Marks),
                _ => Enumerable.Empty<SceneText>(),
            }
        );

    // Letters of 12 px: 9 px above the baseline, 2 below; without the safety the drawing itself keeps.
    private static (double Left, double Top, double Right, double Bottom) AreaOf(SceneText t)
    {
        var style = SceneStyles.Find(t.Style);
        var width = TextWidth.Of(t.Text, style.Size ?? 12, style.Weight) / TextWidth.Safety;
        var left = t.Anchor switch
        {
            TextAnchor.End => t.X - width,
            TextAnchor.Middle => t.X - (width / 2),
            _ => t.X,
        };
        return (left, t.Y - 9, left + width, t.Y + 2);
    }

    private static bool Meet(
        (double Left, double Top, double Right, double Bottom) a,
        (double Left, double Top, double Right, double Bottom) b
    ) => a.Left < b.Right && b.Left < a.Right && a.Top < b.Bottom && b.Top < a.Bottom;
}
