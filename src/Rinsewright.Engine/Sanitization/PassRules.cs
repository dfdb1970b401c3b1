namespace Rinsewright.Engine.Sanitization;

/// <summary>
/// Working values of the pass finder. All are ours, chosen from how ware heats and cools (a plate in air loses at most about half a degree a second,
/// spray moves it by several), not from a standard; the README says how each was chosen.
/// </summary>
/// <param name="Reversal">Fall and rise, °C, that parts two passes.</param>
/// <param name="Rise">Rise above the preceding low, °C, that makes a pass.</param>
/// <param name="WaterSlope">Rise, °C/s, that only water can make; slower is drift.</param>
/// <param name="WarmPeak">Peak, °C, below which nothing is called a pass.</param>
/// <param name="QuickFall">A fall shorter than this, s, happens inside the machine (colder spray, gap between zones).</param>
/// <param name="Cooling">Longest cooling after the peak, s, that still counts to the pass.</param>
/// <param name="Longest">Longest pass, s; a longer stay in the machine is no pass as run every day.</param>
/// <param name="CoarsestInterval">Sampling interval, s, above which a rinse of 10 to 12 s cannot be judged.</param>
/// <param name="FineInterval">Sampling interval, s, up to which a missed peak is ruled out.</param>
public sealed record PassRules(
    double Reversal = 3,
    double Rise = 6,
    double WaterSlope = 0.4,
    double WarmPeak = 40,
    double QuickFall = 12,
    double Cooling = 120,
    double Longest = 900,
    double CoarsestInterval = 10,
    double FineInterval = 5
)
{
    /// <summary>The values used everywhere.</summary>
    public static PassRules Default { get; } = new();
}
