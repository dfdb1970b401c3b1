namespace Rinsewright.Engine.Tests;

/// <summary>Comparison by share of the expected value, as the check rows give their tolerances.</summary>
internal static class Relative
{
    public static void Equal(double expected, double actual, double share) => Assert.Equal(expected, actual, Math.Abs(expected) * share);
}
