using Rinsewright.Contracts.Language;
using Rinsewright.Contracts.Records;
using Rinsewright.Contracts.Sanitization;
using Rinsewright.Drawing;
using Xunit;

namespace Rinsewright.Drawing.Tests;

public sealed class ProofChartTests
{
    private static readonly Words English = Words.For("en");

    // 82 °C is 179.6 °F exactly (°F = °C × 9/5 + 32); the code prints 180 °F beside it, but a reading in °C was judged against 82 °C.
    [Fact]
    public void A_limit_is_shown_as_the_one_the_reading_was_judged_by()
    {
        Assert.Equal(179.6, Shown.LimitFor(InventedProof.RinseLimit, "Cel", UnitDisplay.Us).Value, 1e-9);
        Assert.Equal(180, Shown.LimitFor(InventedProof.RinseLimit, "[degF]", UnitDisplay.Us).Value);
        Assert.Equal(82, Shown.LimitFor(InventedProof.RinseLimit, "Cel", UnitDisplay.AsRead).Value);
    }

    // 15 psi is 103.42 kPa: 15 × 6.894757 (NIST SP 811, table B.8).
    [Fact]
    public void A_limit_printed_in_one_unit_is_converted_exactly() =>
        Assert.Equal(103.42, Shown.LimitFor(InventedProof.PressureLimit, "kPa", UnitDisplay.AsRead).Value, 0.01);

    [Fact]
    public void The_text_alternative_has_the_values_and_the_verdict()
    {
        var report = InventedProof.Report();
        var says = ProofChart.Draw(report, report.Passes[0], ChartSize.Phone, English, UnitDisplay.AsRead).Description;
        var pass = report.Passes[0];
        Assert.Contains("13:35:40", says, StringComparison.Ordinal);
        Assert.Contains(English.Show(pass.Peak), says, StringComparison.Ordinal);
        Assert.Contains(English.Number(pass.HeatUnits.Low, 0), says, StringComparison.Ordinal);
        Assert.Contains("plate, at least 160\u00a0°F", says, StringComparison.Ordinal);
        Assert.Contains("pumped rinse: up to 163.6\u00a0°F", says, StringComparison.Ordinal);
        Assert.EndsWith("This pass: proven.", says, StringComparison.Ordinal);
    }

    [Fact]
    public void A_hole_parts_the_line_and_a_suspect_stretch_is_hatched()
    {
        var whole = Lines(InventedProof.Report([0], "proven"));
        var start = InventedProof.Report([0], "proven").Passes[0].StartSeconds;
        var holed = InventedProof.Report([0], "proven", [], new MarkDto("gap", start + 30, start + 31, 1, null, ""));
        var frozen = InventedProof.Report([0], "proven", [], new MarkDto("frozen", start + 30, start + 36, 6, null, ""));
        Assert.Equal(1, whole);
        Assert.Equal(2, Lines(holed));
        Assert.Equal(1, Lines(frozen));
        Assert.Contains(Draw(frozen).Marks, m => m is SceneGroup { Style: "marked" } g && g.Marks[0] is SceneHatch);

        static Scene Draw(ProofReport r) => ProofChart.Draw(r, r.Passes[0], ChartSize.Phone, English, UnitDisplay.AsRead);
        static int Lines(ProofReport r) =>
            Draw(r).Marks.OfType<SceneLine>().Count(l => l.Style == "read" && l.Points.All(p => p.Y < Draw(r).Plots[1].Top));
    }

    [Fact]
    public void A_bound_far_above_the_plot_is_drawn_open()
    {
        var report = InventedProof.Report([0], "undetermined");
        var pass = report.Passes[0] with { HeatUnits = new BoundedDto(5000, 900, 60000) };
        var closed = ProofChart.Draw(report, report.Passes[0], ChartSize.Phone, English, UnitDisplay.AsRead);
        var open = ProofChart.Draw(report, pass, ChartSize.Phone, English, UnitDisplay.AsRead);
        Assert.Single(closed.Marks.OfType<SceneLine>(), l => l.Style == "brk");
        Assert.Equal(2, open.Marks.OfType<SceneLine>().Count(l => l.Style == "brk"));
        Assert.Contains(open.Marks.OfType<SceneText>(), t => t.Text.Contains("60,000", StringComparison.Ordinal));
    }

    [Fact]
    public void A_pass_without_its_curve_still_says_its_values()
    {
        var report = InventedProof.Report([0], "proven");
        var pass = report.Passes[0] with { Curve = new CurveDto([], [], []) };
        var scene = ProofChart.Draw(report, pass, ChartSize.Phone, English, UnitDisplay.AsRead);
        Assert.Contains(English.Show(pass.Peak), scene.Description, StringComparison.Ordinal);
    }

    [Fact]
    public void A_touch_is_turned_into_seconds_and_back()
    {
        var report = InventedProof.Report([0], "proven");
        var plot = ProofChart.Draw(report, report.Passes[0], ChartSize.Phone, English, UnitDisplay.AsRead).Plots[0];
        Assert.Equal(20, plot.SecondsAt(plot.X(20)), 1e-9);
        Assert.Equal(plot.FromSeconds, plot.SecondsAt(-100));
        Assert.Equal(plot.ToSeconds, plot.SecondsAt(10_000));
    }

    [Fact]
    public void The_rules_for_the_browser_know_every_style()
    {
        var css = SceneStyles.Css();
        Assert.All(SceneStyles.All, s => Assert.Contains($".{s.Name} {{", css, StringComparison.Ordinal));
    }

    // SI and US in one drawing never mix: no °F anywhere in a drawing in SI.
    [Fact]
    public void One_figure_has_one_system_of_units()
    {
        var report = InventedProof.Report([0, 1], "notProven", [InventedProof.RinseReading()]);
        var svg = SvgWriter.Write(ProofChart.Draw(report, report.Passes[0], ChartSize.Desk, English, UnitDisplay.Si));
        Assert.DoesNotContain("°F", svg, StringComparison.Ordinal);
        Assert.Contains("80.7", svg, StringComparison.Ordinal); // 177.2 °F = 80.67 °C
    }
}
