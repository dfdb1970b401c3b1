using System.Numerics;

namespace Rinsewright.Engine.Heat;

/// <summary>
/// A step of a <see cref="Slab"/> without error in time, for fluids that keep their temperature and coefficient over the step. Equation H5: T' = Φ T + a·T_left + b·T_right with
/// Φ = exp(A Δt). Building it costs some matrix products; using it, one.
/// </summary>
internal sealed class SlabPropagator
{
    private readonly int most;
    private readonly double[] step;
    private readonly double[] columns;
    private readonly double[] next;
    private readonly double[] left;
    private readonly double[] right;
    private readonly double[] power;
    private readonly double[] sum;
    private double leftWeight;
    private double rightWeight;

    /// <summary>A propagator with room for a number of cells. Nothing is set yet.</summary>
    public SlabPropagator(int mostCells)
    {
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(mostCells);
        most = mostCells;
        step = new double[most * most];
        columns = new double[most * most];
        next = new double[most];
        power = new double[most * most];
        sum = new double[most * most];
        left = new double[most];
        right = new double[most];
    }

    /// <summary>A propagator of a slab over a step in s.</summary>
    public SlabPropagator(in Slab slab, double seconds)
        : this(slab.Cells) => Set(slab, seconds);

    /// <summary>Slab it steps.</summary>
    public Slab Slab { get; private set; }

    /// <summary>Length of its step, s.</summary>
    public double Seconds { get; private set; }

    /// <summary>Makes it the propagator of another slab or step. Allocates nothing.</summary>
    /// <param name="slab">Slab, with no more cells than there is room for.</param>
    /// <param name="seconds">Step, s, not negative.</param>
    public void Set(in Slab slab, double seconds)
    {
        if (slab.Cells > most)
        {
            throw new ArgumentOutOfRangeException(nameof(slab), slab.Cells, $"At most {most} cells.");
        }

        ArgumentOutOfRangeException.ThrowIfNegative(seconds);
        Slab = slab;
        Seconds = seconds;
        var n = slab.Cells;
        slab.WriteMatrix(step);
        MatrixExponential.Of(step.AsSpan(0, n * n), n, seconds, power, sum);
        WriteFluids(slab, n);
        (leftWeight, rightWeight) = (slab.LeftWeight, slab.RightWeight);
        for (var i = 0; i < n; i++)
        {
            for (var j = 0; j < n; j++)
            {
                columns[(j * n) + i] = step[(i * n) + j];
            }
        }
    }

    /// <summary>Steps the cells.</summary>
    /// <param name="cells">Temperatures, °C, replaced by those after the step.</param>
    /// <param name="leftFluid">Fluid at the left face, °C.</param>
    /// <param name="rightFluid">Fluid at the right face, °C; of no effect where that face is insulated.</param>
    public void Step(Span<double> cells, double leftFluid, double rightFluid)
    {
        var n = Slab.Cells;
        cells = cells[..n];
        var i = 0;
        // Several cells at a time, each added up in the same order as one alone: the digits do not depend on how many.
        for (; i <= n - Vector<double>.Count; i += Vector<double>.Count)
        {
            var t = (new Vector<double>(left, i) * leftFluid) + (new Vector<double>(right, i) * rightFluid);
            for (var j = 0; j < cells.Length; j++)
            {
                t += new Vector<double>(columns, (j * n) + i) * cells[j];
            }

            t.CopyTo(next, i);
        }

        for (; i < n; i++)
        {
            var t = (left[i] * leftFluid) + (right[i] * rightFluid);
            for (var j = 0; j < cells.Length; j++)
            {
                t += columns[(j * n) + i] * cells[j];
            }

            next[i] = t;
        }

        next.AsSpan(0, n).CopyTo(cells);
    }

    /// <summary>Temperature of the left face, °C.</summary>
    public double LeftSurface(ReadOnlySpan<double> cells, double leftFluid) => (leftWeight * cells[0]) + ((1 - leftWeight) * leftFluid);

    /// <summary>Temperature of the right face, °C; of an insulated one, that of the last cell.</summary>
    public double RightSurface(ReadOnlySpan<double> cells, double rightFluid) =>
        (rightWeight * cells[Slab.Cells - 1]) + ((1 - rightWeight) * rightFluid);

    /// <summary>Mean of the cells, °C.</summary>
    public static double Mean(ReadOnlySpan<double> cells)
    {
        double total = 0;
        foreach (var cell in cells)
        {
            total += cell;
        }

        return total / cells.Length;
    }

    // With one fluid at 1 and the other at 0 the slab settles to a straight line s; what a step adds from that fluid is (1 − Φ) s.
    private void WriteFluids(in Slab slab, int n)
    {
        Array.Clear(left, 0, n);
        Array.Clear(right, 0, n);
        double l = slab.LeftFace,
            r = slab.RightFace;
        if (l <= 0 && r <= 0)
        {
            return;
        }

        Span<double> settled = stackalloc double[n];
        if (r <= 0 || l <= 0)
        {
            settled.Fill(l > 0 ? 1 : 0);
        }
        else
        {
            var flux = 1 / ((1 / l) + (1 / r) + ((n - 1) / slab.Between));
            for (var i = 0; i < n; i++)
            {
                settled[i] = 1 - (flux * ((1 / l) + (i / slab.Between)));
            }
        }

        for (var i = 0; i < n; i++)
        {
            double a = settled[i],
                b = 1 - settled[i];
            for (var j = 0; j < n; j++)
            {
                a -= step[(i * n) + j] * settled[j];
                b -= step[(i * n) + j] * (1 - settled[j]);
            }

            left[i] = a;
            right[i] = b;
        }
    }
}
