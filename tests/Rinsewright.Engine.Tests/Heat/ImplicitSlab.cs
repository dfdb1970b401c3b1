using Rinsewright.Engine.Heat;

namespace Rinsewright.Engine.Tests.Heat;

/// <summary>Two other ways to step the same cells, by elimination in a tridiagonal system: backward Euler (θ = 1) and Crank-Nicolson (θ = ½). They say how good "exact in time" is.</summary>
internal static class ImplicitSlab
{
    public static void Step(in Slab slab, double theta, double seconds, double[] cells, double left, double right)
    {
        var n = slab.Cells;
        double capacity = slab.CellCapacity / seconds,
            between = slab.Between;
        var below = new double[n];
        var middle = new double[n];
        var above = new double[n];
        var known = new double[n];
        for (var i = 0; i < n; i++)
        {
            double toLeft = i == 0 ? slab.LeftFace : between,
                toRight = i == n - 1 ? slab.RightFace : between,
                leftNow = i == 0 ? left : cells[i - 1],
                rightNow = i == n - 1 ? right : cells[i + 1];
            below[i] = i == 0 ? 0 : -theta * toLeft;
            above[i] = i == n - 1 ? 0 : -theta * toRight;
            middle[i] = capacity + (theta * (toLeft + toRight));
            known[i] =
                (capacity * cells[i])
                + ((1 - theta) * ((toLeft * (leftNow - cells[i])) + (toRight * (rightNow - cells[i]))))
                + (i == 0 ? theta * toLeft * left : 0)
                + (i == n - 1 ? theta * toRight * right : 0);
        }

        for (var i = 1; i < n; i++)
        {
            var factor = below[i] / middle[i - 1];
            middle[i] -= factor * above[i - 1];
            known[i] -= factor * known[i - 1];
        }

        cells[n - 1] = known[n - 1] / middle[n - 1];
        for (var i = n - 2; i >= 0; i--)
        {
            cells[i] = (known[i] - (above[i] * cells[i + 1])) / middle[i];
        }
    }
}
