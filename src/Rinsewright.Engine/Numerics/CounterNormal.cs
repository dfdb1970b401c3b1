namespace Rinsewright.Engine.Numerics;

/// <summary>
/// Normal random numbers that are looked up by place instead of drawn in turn: the same seed, row and column give the same number, in whatever order and by however many
/// callers they are asked for. Equations N1 and N2 of this folder's README.
/// </summary>
/// <param name="seed">Any number; another one gives another table.</param>
internal readonly struct CounterNormal(ulong seed)
{
    private const ulong Golden = 0x9E3779B97F4A7C15;
    private const double Step = 1.0 / (1UL << 53);

    /// <summary>The number at a place, mean 0 and standard deviation 1.</summary>
    /// <param name="row">Draw, not negative.</param>
    /// <param name="column">What is drawn, not negative.</param>
    public double At(int row, int column)
    {
        var place = ((ulong)(uint)row << 32) | (uint)column;
        var first = Mix(Mix(seed + Golden) ^ (place * Golden));
        var second = Mix(first + Golden);
        // Uniform in (0, 1]: the logarithm needs more than 0.
        double u = ((first >> 11) + 1) * Step,
            v = (second >> 11) * Step;
        return Math.Sqrt(-2 * Math.Log(u)) * Math.Cos(2 * Math.PI * v);
    }

    // The finishing steps of SplitMix64.
    private static ulong Mix(ulong x)
    {
        x = (x ^ (x >> 30)) * 0xBF58476D1CE4E5B9;
        x = (x ^ (x >> 27)) * 0x94D049BB133111EB;
        return x ^ (x >> 31);
    }
}
