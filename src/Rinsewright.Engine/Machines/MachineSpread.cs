using Rinsewright.Engine.Quantities;

namespace Rinsewright.Engine.Machines;

/// <summary>Where an observable lies when the figures of a machine are as uncertain as they are.</summary>
/// <param name="Observable">What.</param>
/// <param name="Low">Five of a hundred draws are below.</param>
/// <param name="Middle">Half of them.</param>
/// <param name="High">Five of a hundred are above.</param>
/// <param name="Absent">Share of the draws that have no value: it is never reached, or nothing of the kind happens.</param>
public sealed record Band(Observable Observable, Amount Low, Amount Middle, Amount High, double Absent);

/// <summary>Bands of a machine.</summary>
/// <param name="Scenario">What it goes through.</param>
/// <param name="Seed">Seed of the draws; the same seed gives the same bands.</param>
/// <param name="Draws">Draws.</param>
/// <param name="Bands">Bands in the order observables are shown; those without a value in any draw are missing.</param>
public sealed record MachineBands(Scenario Scenario, ulong Seed, int Draws, IReadOnlyList<Band> Bands)
{
    /// <summary>The band of an observable; null where there is none.</summary>
    public Band? Of(string id)
    {
        foreach (var band in Bands)
        {
            if (band.Observable.Id == id)
            {
                return band;
            }
        }

        return null;
    }
}

/// <summary>A range of draws, to be put together with others of the same machine, scenario and seed.</summary>
public sealed class SpreadDraws
{
    internal SpreadDraws(Scenario scenario, ulong seed, int first, int count, double[][] values)
    {
        Scenario = scenario;
        Seed = seed;
        First = first;
        Count = count;
        Values = values;
    }

    /// <summary>What the machine goes through.</summary>
    public Scenario Scenario { get; }

    /// <summary>Seed.</summary>
    public ulong Seed { get; }

    /// <summary>First draw.</summary>
    public int First { get; }

    /// <summary>Number of draws.</summary>
    public int Count { get; }

    // By observable in the order of Observables.All, then by draw; NaN where there is no value.
    internal double[][] Values { get; }
}

/// <summary>
/// How far what a machine reads may lie from what the model says, because its figures are not known exactly: typical ones by what is usual of their kind, measured ones by their own
/// uncertainty. Figures are drawn by place from a seed, so the same seed gives the same bands, however the draws are split among callers. Equations U1 to U3. What the model leaves out is not
/// in the bands.
/// </summary>
public static class MachineSpread
{
    /// <summary>Draws that bands are usually made of.</summary>
    public const int UsualDraws = 2000;

    /// <summary>Bands of everything a scenario reads.</summary>
    /// <param name="machine">Machine.</param>
    /// <param name="scenario">What it goes through; of a load, its steady state at the largest rate that is read.</param>
    /// <param name="seed">Any number.</param>
    /// <param name="draws">Draws, at least 20.</param>
    /// <param name="faults">Faults, none or several.</param>
    /// <exception cref="ArgumentException">The description does not fit together, or the machine cannot have one of the faults.</exception>
    /// <exception cref="ArgumentOutOfRangeException">Fewer than 20 draws.</exception>
    public static MachineBands Of(
        Machine machine,
        Scenario scenario,
        ulong seed,
        int draws = UsualDraws,
        IReadOnlyList<FaultAtSeverity>? faults = null
    ) => Bands([Draw(machine, scenario, seed, 0, draws, faults)]);

    /// <summary>A range of draws: what a host with several processors gives to each.</summary>
    /// <param name="machine">Machine.</param>
    /// <param name="scenario">What it goes through.</param>
    /// <param name="seed">Any number.</param>
    /// <param name="first">First draw, not negative.</param>
    /// <param name="count">Number of draws, above 0.</param>
    /// <param name="faults">Faults, none or several.</param>
    /// <param name="cancellation">Ends it.</param>
    /// <exception cref="ArgumentException">The description does not fit together, or the machine cannot have one of the faults.</exception>
    /// <exception cref="ArgumentOutOfRangeException">A negative first draw, or no draws.</exception>
    public static SpreadDraws Draw(
        Machine machine,
        Scenario scenario,
        ulong seed,
        int first,
        int count,
        IReadOnlyList<FaultAtSeverity>? faults = null,
        CancellationToken cancellation = default
    ) => Begin(machine, scenario, seed, faults).Draw(first, count, cancellation);

    /// <summary>Makes ready to draw, for a host that draws some at a time.</summary>
    /// <param name="machine">Machine.</param>
    /// <param name="scenario">What it goes through.</param>
    /// <param name="seed">Any number.</param>
    /// <param name="faults">Faults, none or several.</param>
    /// <exception cref="ArgumentException">The description does not fit together, or the machine cannot have one of the faults.</exception>
    public static SpreadRun Begin(Machine machine, Scenario scenario, ulong seed, IReadOnlyList<FaultAtSeverity>? faults = null) =>
        new(machine, scenario, seed, faults ?? []);

    /// <summary>Bands of several ranges together, in any order.</summary>
    /// <param name="parts">Ranges of the same machine, scenario and seed that do not overlap.</param>
    /// <exception cref="ArgumentException">No range, or of another scenario or seed.</exception>
    /// <exception cref="ArgumentOutOfRangeException">Fewer than 20 draws together.</exception>
    public static MachineBands Bands(IReadOnlyList<SpreadDraws> parts)
    {
        if (parts.Count == 0 || parts.Any(p => p.Seed != parts[0].Seed || p.Scenario.Id != parts[0].Scenario.Id))
        {
            throw new ArgumentException("Ranges of one scenario and one seed.", nameof(parts));
        }

        var draws = parts.Sum(p => p.Count);
        ArgumentOutOfRangeException.ThrowIfLessThan(draws, 20, nameof(parts));
        List<Band> bands = [];
        var values = new double[draws];
        for (var k = 0; k < Observables.All.Count; k++)
        {
            var found = 0;
            foreach (var part in parts)
            {
                foreach (var value in part.Values[k])
                {
                    values[found] = value;
                    found += double.IsNaN(value) ? 0 : 1;
                }
            }

            if (found == 0)
            {
                continue;
            }

            var sorted = values.AsSpan(0, found);
            sorted.Sort();
            var observable = Observables.All[k];
            bands.Add(
                new Band(
                    observable,
                    new Amount(Quantile(sorted, 0.05), observable.Unit),
                    new Amount(Quantile(sorted, 0.50), observable.Unit),
                    new Amount(Quantile(sorted, 0.95), observable.Unit),
                    1 - ((double)found / draws)
                )
            );
        }

        return new MachineBands(parts[0].Scenario, parts[0].Seed, draws, bands);
    }

    private static double Quantile(ReadOnlySpan<double> sorted, double share)
    {
        var place = share * (sorted.Length - 1);
        var below = (int)place;
        var above = Math.Min(below + 1, sorted.Length - 1);
        return sorted[below] + ((place - below) * (sorted[above] - sorted[below]));
    }
}
