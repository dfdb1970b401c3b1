using Rinsewright.Engine.Quantities;

namespace Rinsewright.Engine.Machines;

/// <summary>
/// Moves what a balance gives to what stepping through cycles gives, for machines with doors: their tanks swing within a cycle, which a balance of means does not see. The difference is taken from
/// the machine as described and is the same in every draw: temperatures, pressures and levels are moved by it, all else is multiplied.
/// </summary>
internal sealed class CycleAnchor
{
    private readonly double[] shift = new double[Observables.All.Count];
    private readonly double[] factor = new double[Observables.All.Count];

    public CycleAnchor(Readout balance, Readout stepped)
    {
        var (from, to) = (Row(balance), Row(stepped));
        for (var k = 0; k < factor.Length; k++)
        {
            var moves = Observables.All[k].Dimension is Dimension.Temperature or Dimension.GaugePressure or Dimension.Ratio;
            double a = from[k][0],
                b = to[k][0];
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

    private static double[][] Row(Readout readout)
    {
        var row = new double[Observables.All.Count][];
        for (var k = 0; k < row.Length; k++)
        {
            row[k] = [double.NaN];
        }

        readout.WriteTo(row, 0);
        return row;
    }
}
