using Rinsewright.Engine.Quantities;

namespace Rinsewright.Engine.Machines;

/// <summary>
/// Moves what a quick reading of a machine with doors gives to what stepping through cycles gives: its tanks swing within a cycle, which a balance of means does not see and few coarse cycles see
/// badly. The difference is taken from the machine as described and is the same for every other: temperatures, pressures and levels are moved by it, all else is multiplied.
/// </summary>
internal sealed class CycleAnchor
{
    private readonly double[] shift = new double[Observables.All.Count];
    private readonly double[] factor = new double[Observables.All.Count];

    /// <summary>Between two ways of reading the same machine.</summary>
    /// <param name="quick">As the quick one gives it.</param>
    /// <param name="stepped">As stepping gives it.</param>
    public CycleAnchor(IReadOnlyList<Observed> quick, IReadOnlyList<Observed> stepped)
    {
        var (from, to) = (Row(quick), Row(stepped));
        for (var k = 0; k < factor.Length; k++)
        {
            var moves = Observables.All[k].Dimension is Dimension.Temperature or Dimension.GaugePressure or Dimension.Ratio;
            double a = from[k],
                b = to[k];
            factor[k] = !moves && a > 0 && b > 0 ? b / a : 1;
            shift[k] = moves && double.IsFinite(b - a) ? b - a : 0;
        }
    }

    /// <summary>Moves a column.</summary>
    public void Move(double[][] values, int column)
    {
        for (var k = 0; k < factor.Length; k++)
        {
            values[k][column] = (values[k][column] * factor[k]) + shift[k];
        }
    }

    /// <summary>Moves a quick reading of another machine.</summary>
    public IReadOnlyList<Observed> Moved(IReadOnlyList<Observed> quick) =>
        [
            .. quick.Select(o =>
                o.Value is { } value && Readout.PlaceOf(o.Observable) is var k
                    ? o with
                    {
                        Value = new Amount((value.Value * factor[k]) + shift[k], value.Unit),
                    }
                    : o
            ),
        ];

    /// <summary>Reads a machine with doors through cycles, from its balance.</summary>
    /// <param name="readout">Receives it.</param>
    /// <param name="p">Machine.</param>
    /// <param name="balance">Where it starts.</param>
    /// <param name="racks">Racks a second asked for.</param>
    /// <param name="settle">Cycles until nothing but the cycle itself swings.</param>
    /// <param name="read">Cycles that are read.</param>
    public static void Step(Readout readout, ModelParameters p, SteadySolution balance, double racks, int settle, int read)
    {
        var simulation = new Simulation(p);
        // Soil and detergent start where they settle, as SteadyReader has them: cycles alone would take an hour to get there.
        var solutes = new SteadySolutes(p.Tanks.Length);
        solutes.Solve(p, balance);
        simulation.Settle(balance, balance.Tanks[p.Wash].Out > 0 ? solutes : null);
        var stepper = new Stepper(simulation, Stepper.UsualStep(p));
        var interval = 1 / Math.Min(racks, Duties.MostRacks(p));
        stepper.Go(settle * interval, racks);
        var meter = new Meter(p.Tanks.Length);
        stepper.Go(read * interval, racks, null, meter);
        readout.Load(p, meter);
    }

    private static double[] Row(IReadOnlyList<Observed> read)
    {
        var row = new double[Observables.All.Count];
        Array.Fill(row, double.NaN);
        foreach (var observed in read)
        {
            row[Readout.PlaceOf(observed.Observable)] = observed.Value?.Value ?? double.NaN;
        }

        return row;
    }
}
