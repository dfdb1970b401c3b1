namespace Rinsewright.Engine.Numerics;

/// <summary>Shares of a normal distribution (equation N7).</summary>
internal static class NormalShare
{
    // Beyond this nothing of a double is left outside.
    private const double Far = 9;

    /// <summary>Share within so many standard deviations of the middle, on either side.</summary>
    /// <param name="deviations">Half-width in standard deviations, 0 or more.</param>
    public static double Within(double deviations)
    {
        if (deviations >= Far)
        {
            return 1;
        }

        // Every term is positive, so nothing cancels.
        double term = deviations,
            sum = deviations;
        for (var n = 1; term > sum * 1e-17; n++)
        {
            term *= deviations * deviations / ((2 * n) + 1);
            sum += term;
        }

        return Math.Min(1, Math.Sqrt(2 / Math.PI) * Math.Exp(-deviations * deviations / 2) * sum);
    }
}
