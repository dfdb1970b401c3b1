using Rinsewright.Engine.Records;
using Rinsewright.Engine.Sanitization;
using Xunit;

namespace Rinsewright.Engine.Tests.Sanitization;

public class PassFinderTests
{
    private const double Floor = 61.67;

    private static PassFinder.Found Find(Trace trace) => PassFinder.Find(trace, Floor, PassRules.Default);

    [Theory]
    [InlineData(0.5, 0)]
    [InlineData(1, 0.2)]
    [InlineData(2, 0.3)]
    [InlineData(5, 0)]
    public void Five_racks_in_a_row_are_five_passes(double interval, double noise)
    {
        var surface = new Surface(interval, noise).Counter(60);
        for (var i = 0; i < 5; i++)
        {
            surface.TwoTankPass().In(24, 60, 45);
        }

        Assert.Equal(5, Find(surface.Trace()).Passes.Count);
    }

    [Fact]
    public void One_pass_starts_where_the_ware_enters_and_peaks_in_the_final_rinse()
    {
        var trace = new Surface().Counter(120).TwoTankPass().Counter(300).Trace();
        var pass = Assert.Single(Find(trace).Passes);
        Assert.InRange(trace.SecondsAt(pass.First), 116, 122);
        Assert.InRange(trace.SecondsAt(pass.Peak), 120 + 40, 120 + 50);
        Assert.True(
            trace.ValueAt(pass.Last) < Floor || trace.SecondsAt(pass.Last) - trace.SecondsAt(pass.Peak) <= PassRules.Default.Cooling
        );
    }

    [Theory]
    [InlineData(15)]
    [InlineData(40)]
    public void Door_cycles_back_to_back_with_the_plate_left_inside_stay_apart(double open)
    {
        var surface = new Surface(1, 0.1).Counter(30);
        for (var i = 0; i < 4; i++)
        {
            surface.DoorCycle().In(30, 120, open);
        }

        Assert.Equal(4, Find(surface.Trace()).Passes.Count);
    }

    [Fact]
    public void A_logger_left_on_the_counter_makes_no_pass()
    {
        var trace = new Surface(1, 0.2).Counter(1800).Trace();
        var found = Find(trace);
        Assert.Empty(found.Passes);
        Assert.Equal(0, found.Drifts);
    }

    [Fact]
    public void Idle_drift_in_a_warming_machine_is_drift_and_no_pass()
    {
        var found = Find(new Surface(1, 0.1).Counter(60).In(70, 1500, 3600).In(22, 600, 1200).Trace());
        Assert.Empty(found.Passes);
        Assert.Equal(1, found.Drifts);
    }

    [Fact]
    public void A_cold_final_rinse_dips_inside_one_pass()
    {
        var trace = new Surface().Counter(60).In(68, 9, 20).In(60, 30, 4).In(48, 5, 9).In(40, 90, 25).Counter(200).Trace();
        var pass = Assert.Single(Find(trace).Passes);
        Assert.InRange(trace.ValueAt(pass.Peak), 58, 68);
    }

    [Fact]
    public void A_plate_parked_in_the_hot_idle_machine_is_not_counted_beyond_its_cooling()
    {
        var trace = new Surface().Counter(60).TwoTankPass().In(68, 60, 3600).Trace();
        var pass = Assert.Single(Find(trace).Passes);
        Assert.True(trace.SecondsAt(pass.Last) - trace.SecondsAt(pass.Peak) <= PassRules.Default.Cooling);
    }

    [Theory]
    [InlineData(0)]
    [InlineData(1)]
    [InlineData(2)]
    public void Hardly_any_samples_are_no_pass(int count)
    {
        var trace = TraceBuilder.From(
            "t",
            Engine.Quantities.Units.Celsius,
            new double[count]
                .Select((_, i) => (double)i)
                .ToArray(),
            new double[count]
        );
        Assert.Empty(Find(trace).Passes);
    }
}
