namespace Rinsewright.Engine.Numerics;

/// <summary>
/// The slope of readings over time that neither a wild reading nor the form of the noise upsets: the median of the slopes of all pairs, with the interval that Kendall's test gives it. Equations N3 to N6
/// of this folder's README.
/// </summary>
/// <param name="Slope">Median of the slopes of all pairs, per unit of time.</param>
/// <param name="Low">Lower end of the interval; negative infinity where there are too few readings for one.</param>
/// <param name="High">Upper end of the interval; positive infinity likewise.</param>
/// <param name="Score">Kendall's S: pairs that rise less pairs that fall.</param>
/// <param name="Chance">Chance of a score at least as far from 0 where nothing moves, 0 to 1.</param>
/// <param name="Count">Readings.</param>
internal sealed record KendallTrend(double Slope, double Low, double High, int Score, double Chance, int Count)
{
    /// <summary>Whether the interval leaves out 0.</summary>
    public bool Moves => Low > 0 || High < 0;

    /// <summary>Trend of readings at distinct times; null for fewer than two.</summary>
    /// <param name="times">Times, in any order, no two alike.</param>
    /// <param name="values">Values, one for each time.</param>
    /// <param name="risk">Chance, 0 to 1, of an interval that leaves out the true slope; it is never more.</param>
    /// <exception cref="ArgumentException">Two times are alike, or there are not as many values as times.</exception>
    public static KendallTrend? Of(ReadOnlySpan<double> times, ReadOnlySpan<double> values, double risk)
    {
        if (times.Length != values.Length)
        {
            throw new ArgumentException("Every time has one value.", nameof(values));
        }

        var n = times.Length;
        if (n < 2)
        {
            return null;
        }

        var slopes = new double[n * (n - 1) / 2];
        var (score, next) = (0, 0);
        for (var i = 0; i < n; i++)
        {
            for (var j = i + 1; j < n; j++)
            {
                var apart = times[j] - times[i];
                if (apart == 0)
                {
                    throw new ArgumentException("Two readings at one time have no slope.", nameof(times));
                }

                slopes[next] = (values[j] - values[i]) / apart;
                score += Math.Sign(slopes[next++]);
            }
        }

        Array.Sort(slopes);
        // The least score that chance alone reaches too seldom; below it slopes are not told from 0, so as many pairs stay outside the interval at either end.
        var cut = Cut(n, risk);
        var outside = cut is { } c ? (slopes.Length - (c - 2)) / 2 : 0;
        return new KendallTrend(
            Median(slopes),
            outside > 0 ? slopes[outside - 1] : double.NegativeInfinity,
            outside > 0 ? slopes[^outside] : double.PositiveInfinity,
            score,
            ChanceOf(n, Math.Abs(score)),
            n
        );
    }

    /// <summary>Fewest readings that can show a trend at all at a risk: below it even readings that all rise may be chance.</summary>
    public static int Least(double risk)
    {
        var n = 2;
        while (Cut(n, risk) is null)
        {
            n++;
        }

        return n;
    }

    /// <summary>Value of the line with a slope at a time: the median of what each reading says of it.</summary>
    public static double LevelAt(ReadOnlySpan<double> times, ReadOnlySpan<double> values, double slope, double at)
    {
        var levels = new double[times.Length];
        for (var i = 0; i < levels.Length; i++)
        {
            levels[i] = values[i] + (slope * (at - times[i]));
        }

        Array.Sort(levels);
        return Median(levels);
    }

    /// <summary>Chance of a score at least this far from 0 among readings that do not move, no two alike; where some are alike it is too high rather than too low.</summary>
    internal static double ChanceOf(int count, int score)
    {
        var pairs = count * (count - 1) / 2;
        if (score <= 0)
        {
            return 1;
        }

        // S = pairs − 2 × pairs that fall; two values alike put it between two of these, and the nearer to 0 is taken.
        score -= (pairs - score) & 1;
        var sum = 0.0;
        var shares = Shares(count);
        for (var falling = 0; pairs - (2 * falling) >= score; falling++)
        {
            sum += shares[falling];
        }

        return Math.Min(1, 2 * sum);
    }

    private static int? Cut(int count, double risk)
    {
        var pairs = count * (count - 1) / 2;
        var shares = Shares(count);
        var sum = 0.0;
        int? cut = null;
        for (var falling = 0; (2 * falling) < pairs; falling++)
        {
            sum += 2 * shares[falling];
            if (sum > risk)
            {
                break;
            }

            cut = pairs - (2 * falling);
        }

        return cut;
    }

    // Of all orders of n readings, the share with so many pairs that fall: one more reading falls below 0 to n − 1 of those before it, each as likely.
    private static double[] Shares(int count)
    {
        double[] shares = [1];
        for (var n = 2; n <= count; n++)
        {
            var more = new double[shares.Length + n - 1];
            for (var i = 0; i < shares.Length; i++)
            {
                for (var k = 0; k < n; k++)
                {
                    more[i + k] += shares[i] / n;
                }
            }

            shares = more;
        }

        return shares;
    }

    private static double Median(double[] sorted) =>
        sorted.Length % 2 == 1 ? sorted[sorted.Length / 2] : (sorted[(sorted.Length / 2) - 1] + sorted[sorted.Length / 2]) / 2;
}
