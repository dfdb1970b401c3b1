using Rinsewright.Engine.Numerics;

namespace Rinsewright.Engine.Tests.Numerics;

/// <summary>
/// Slope, interval and chance of readings over time, against a printed example, against a by-hand example, and against figures of a separate program (Python: all orders listed for the chances; the
/// interval as every slope whose residuals show no trend by that list).
/// </summary>
public sealed class KendallTrendTests
{
    private const double OneInTwenty = 0.05;

    [Fact] // sen-1968, the example of the paper: slope 4, interval 3.71 to 4.38, reached with |S| up to 13 inside
    public void The_example_of_the_paper()
    {
        var trend = KendallTrend.Of([1, 2, 3, 4, 10, 12, 18], [9, 15, 19, 20, 45, 55, 78], OneInTwenty)!;

        Assert.Equal(4, trend.Slope, 12);
        Assert.Equal((3.71, 4.38), (Math.Round(trend.Low, 2), Math.Round(trend.High, 2)));
        Assert.True(trend.Moves);
    }

    [Fact] // The same data at a risk of 0.07; separate program
    public void A_greater_risk_makes_the_interval_narrower()
    {
        var trend = KendallTrend.Of([1, 2, 3, 4, 10, 12, 18], [9, 15, 19, 20, 45, 55, 78], 0.07)!;
        Assert.Equal((3.75, 4.1818), (trend.Low, Math.Round(trend.High, 4)));
    }

    [Fact] // mann-kendall-by-hand: S = 54 of 91 pairs, one of them alike; Z = 2.906, two-sided 0.0037
    public void The_example_by_hand()
    {
        double[] values = [12.9, 14.8, 13.2, 15.7, 13.8, 15.6, 12.9, 11.0, 17.3, 15.9, 19.0, 18.3, 20.1, 21.7];
        var trend = KendallTrend.Of([.. Enumerable.Range(0, 14).Select(i => (double)i)], values, OneInTwenty)!;

        Assert.Equal(54, trend.Score);
        Assert.InRange(trend.Chance, 0.002, 0.0045); // exact against a normal approximation
        Assert.True(trend.Low > 0);
    }

    [Theory] // Separate program
    [InlineData(
        new double[] { 0, 31, 58, 90, 119, 150, 183, 211 },
        new[] { 184.1, 184.6, 183.2, 182.9, 183.0001, 181.7, 181.2, 180.9 },
        -24,
        0.00173611,
        -0.016,
        -0.02282717,
        -0.01071429
    )]
    [InlineData(
        new double[] { 0, 28, 61, 92, 121, 150 },
        new[] { 20.2, 19.1, 19.6, 20.4, 18.9, 19.9 },
        -1,
        1.0,
        -0.002,
        -0.03928571,
        0.02580645
    )]
    [InlineData(new double[] { 1, 2, 3, 4, 5 }, new[] { 1.26, 1.27, 1.12, 1.16, 1.03 }, -6, 0.23333333, -0.05625, -0.15, 0.04)]
    public void Figures_of_another_program(double[] times, double[] values, int score, double chance, double slope, double low, double high)
    {
        var trend = KendallTrend.Of(times, values, OneInTwenty)!;

        Assert.Equal(score, trend.Score);
        Assert.Equal(chance, trend.Chance, 7);
        Assert.Equal(slope, trend.Slope, 7);
        Assert.Equal(low, trend.Low, 7);
        Assert.Equal(high, trend.High, 7);
    }

    [Theory] // Separate program: all n! orders listed
    [InlineData(4, 6, 0.08333)]
    [InlineData(5, 8, 0.08333)]
    [InlineData(5, 10, 0.01667)]
    [InlineData(6, 11, 0.05556)]
    [InlineData(6, 13, 0.01667)]
    [InlineData(7, 13, 0.06905)]
    [InlineData(7, 15, 0.03016)]
    [InlineData(8, 16, 0.06101)]
    [InlineData(8, 18, 0.03115)]
    [InlineData(8, 28, 0.00005)]
    public void Chances_are_counted(int count, int score, double chance) => Assert.Equal(chance, KendallTrend.ChanceOf(count, score), 5);

    [Fact] // 2 / 4! is more than 1 in 20, 2 / 5! is less
    public void Fewer_than_five_show_nothing()
    {
        Assert.Equal(5, KendallTrend.Least(OneInTwenty));
        var four = KendallTrend.Of([0, 1, 2, 3], [1, 2, 3, 4], OneInTwenty)!;
        Assert.Equal((double.NegativeInfinity, double.PositiveInfinity, false), (four.Low, four.High, four.Moves));
        Assert.True(KendallTrend.Of([0, 1, 2, 3, 4], [1, 2, 3, 4, 5], OneInTwenty)!.Moves);
        Assert.Null(KendallTrend.Of([0], [1], OneInTwenty));
    }

    [Fact]
    public void Two_readings_at_one_time_are_refused() =>
        Assert.Throws<ArgumentException>(() => KendallTrend.Of([0, 0], [1, 2], OneInTwenty));

    [Fact] // 100 + 0.5 × 7 by arithmetic; the wild one does not move it
    public void The_level_of_a_line_does_not_follow_a_wild_reading() =>
        Assert.Equal(103.5, KendallTrend.LevelAt([0, 1, 2, 3, 4], [100, 100.5, 150, 101.5, 102], 0.5, 7), 12);
}
