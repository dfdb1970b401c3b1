using Rinsewright.Engine.Numerics;

namespace Rinsewright.Engine.Tests.Numerics;

/// <summary>Moments and tails of the standard normal distribution (tables); allowances are four standard errors of the sample.</summary>
public sealed class CounterNormalTests
{
    private const int Rows = 40_000;

    [Theory]
    [InlineData(1)]
    [InlineData(20261125)]
    [InlineData(ulong.MaxValue)]
    public void It_is_normal(ulong seed)
    {
        var source = new CounterNormal(seed);
        double sum = 0,
            squares = 0,
            neighbours = 0,
            tail = 0;
        for (var i = 0; i < Rows; i++)
        {
            var x = source.At(i, 3);
            sum += x;
            squares += x * x;
            neighbours += x * (source.At(i, 4) + source.At(i + 1, 3));
            tail += x > 1.6449 ? 1 : 0;
        }

        Assert.Equal(0, sum / Rows, 4 / Math.Sqrt(Rows));
        Assert.Equal(1, squares / Rows, 4 * Math.Sqrt(2.0 / Rows));
        Assert.Equal(0, neighbours / Rows, 4 * Math.Sqrt(2.0 / Rows));
        Assert.Equal(0.05, tail / Rows, 4 * Math.Sqrt(0.05 * 0.95 / Rows));
    }

    [Fact]
    public void A_place_keeps_its_number_and_a_seed_its_table()
    {
        Assert.Equal(new CounterNormal(7).At(123, 4), new CounterNormal(7).At(123, 4));
        Assert.NotEqual(new CounterNormal(7).At(123, 4), new CounterNormal(8).At(123, 4));
        Assert.NotEqual(new CounterNormal(7).At(4, 123), new CounterNormal(7).At(123, 4));
    }
}
