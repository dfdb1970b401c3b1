using Rinsewright.Engine.Numerics;

namespace Rinsewright.Engine.Tests.Numerics;

/// <summary>Shares of a normal distribution against the printed tables of its areas (2P(x) − 1 of the usual tables, from memory), and against a sum over small steps.</summary>
public sealed class NormalShareTests
{
    [Theory]
    [InlineData(0, 0)]
    [InlineData(0.5, 0.3829249)]
    [InlineData(1, 0.6826895)]
    [InlineData(1.5, 0.8663856)]
    [InlineData(2, 0.9544997)]
    [InlineData(3, 0.9973002)]
    [InlineData(12, 1)]
    public void It_is_the_table(double deviations, double share) => Assert.Equal(share, NormalShare.Within(deviations), 7);

    [Fact]
    public void It_is_the_area_below_the_curve()
    {
        for (var x = 0.05; x < 8.9; x += 0.37)
        {
            Assert.Equal(Area(x), NormalShare.Within(x), 9);
        }
    }

    /// <summary>The same by Simpson's rule.</summary>
    internal static double Area(double deviations)
    {
        const int Parts = 4000;
        var h = deviations / Parts;
        double sum = 0;
        for (var i = 0; i <= Parts; i++)
        {
            var weight =
                i is 0 or Parts ? 1
                : i % 2 == 1 ? 4
                : 2;
            sum += weight * Math.Exp(-i * h * i * h / 2);
        }

        return 2 * sum * h / 3 / Math.Sqrt(2 * Math.PI);
    }
}
