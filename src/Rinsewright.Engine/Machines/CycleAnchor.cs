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
