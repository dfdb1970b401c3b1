namespace Rinsewright.Engine.Water;

/// <summary>Masses of a tank after a step.</summary>
/// <param name="Mass">Water in it, kg.</param>
/// <param name="Leak">Mean flow through the opening, kg/s.</param>
/// <param name="Overflow">Mean flow over the overflow, kg/s.</param>
internal readonly record struct LevelStep(double Mass, double Leak, double Overflow);

/// <summary>
/// An opening in the floor of a tank with upright walls, from a torn seal to an open drain. Equations W10 to W12: the flow goes with the root of the depth, and so with the root of the mass:
/// flow = k · √mass.
/// </summary>
/// <param name="Coefficient">k, kg^½/s; 0 where tight.</param>
internal readonly record struct Outlet(double Coefficient)
{
    /// <summary>Outlet of an effective opening under a water surface, both m².</summary>
    public static Outlet Of(double opening, double surface) =>
        new(opening * Math.Sqrt(2 * LiquidWater.Gravity * LiquidWater.Density / surface));

    /// <summary>Flow at a mass, kg/s.</summary>
    public double FlowAt(double mass) => Coefficient * Math.Sqrt(mass);

    /// <summary>Mass at which the outlet carries away an inflow in kg/s: the level that holds; null where it is tight.</summary>
    public double? MassHolding(double inflow) => Coefficient > 0 ? inflow / Coefficient * (inflow / Coefficient) : null;

    /// <summary>Seconds in which an unfed tank falls from one mass to another, not above it; null where it is tight.</summary>
    public double? SecondsToFall(double from, double to) => Coefficient > 0 ? 2 * (Math.Sqrt(from) - Math.Sqrt(to)) / Coefficient : null;

    /// <summary>Mass left in an unfed tank.</summary>
    public double MassAfter(double mass, double seconds)
    {
        var root = Math.Max(0, Math.Sqrt(mass) - (Coefficient * seconds / 2));
        return root * root;
    }

    /// <summary>One implicit step: never below empty, whatever the step. Equation W12, first order in <paramref name="seconds"/>.</summary>
    /// <param name="mass">Water before, kg.</param>
    /// <param name="gain">Known inflow less known outflow, kg/s.</param>
    /// <param name="full">Water at the overflow, kg.</param>
    /// <param name="seconds">Step, s.</param>
    /// <exception cref="ArgumentOutOfRangeException">More is taken out than there is.</exception>
    public LevelStep Step(double mass, double gain, double full, double seconds)
    {
        var available = mass + (seconds * gain);
        if (available < 0)
        {
            throw new ArgumentOutOfRangeException(nameof(gain), gain, $"Takes more out in {seconds} s than the {mass} kg there are.");
        }

        var half = seconds * Coefficient / 2;
        // √(half² + available) − half, without the cancellation of a wide opening.
        var root = available > 0 ? available / (Math.Sqrt((half * half) + available) + half) : 0;
        var after = root * root;
        var leak = Coefficient * root;
        if (after <= full)
        {
            return new LevelStep(after, leak, 0);
        }

        leak = Coefficient * Math.Sqrt(full);
        return new LevelStep(full, leak, ((available - full) / seconds) - leak);
    }
}
