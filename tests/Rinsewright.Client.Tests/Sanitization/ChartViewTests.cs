using Rinsewright.Client.Sanitization;
using Xunit;

namespace Rinsewright.Client.Tests.Sanitization;

/// <summary>What of a pass is in view.</summary>
public sealed class ChartViewTests
{
    private static readonly double[] Seconds = [0, 1, 2, 5, 10, 60];

    /// <summary>The time under the finger stays under the finger.</summary>
    [Fact]
    public void Zooming_keeps_the_place()
    {
        var view = ChartView.Whole(60).Zoom(2, 15);
        Assert.Equal((7.5, 37.5), (view.From, view.To));
        Assert.True(view.Zoomed);
    }

    /// <summary>The view never leaves the pass and never gets narrower than the least stretch.</summary>
    [Fact]
    public void The_view_stays_inside_the_pass()
    {
        var view = ChartView.Whole(60).Zoom(3, 0).Pan(-100);
        Assert.Equal(0, view.From);
        Assert.Equal(60, view.Pan(1000).To);
        Assert.Equal(ChartView.Least, ChartView.Whole(60).Zoom(1000, 30) is var z ? z.To - z.From : 0, 9);
        Assert.False(view.Zoom(0.001, 30).Zoomed);
    }

    /// <summary>Moving the reading line out of view takes the view along.</summary>
    [Fact]
    public void The_view_follows_the_reading_line()
    {
        var view = ChartView.Whole(60).Zoom(6, 0).At(5, Seconds);
        Assert.InRange(60, view.From, view.To);
        Assert.Equal(5, view.At(99, Seconds).Cursor);
    }

    /// <summary>The nearest sample.</summary>
    [Theory]
    [InlineData(-3, 0)]
    [InlineData(1.4, 1)]
    [InlineData(3.6, 3)]
    [InlineData(500, 5)]
    public void The_nearest_sample_is_found(double at, int expected) => Assert.Equal(expected, ChartView.Nearest(Seconds, at));
}
