using Rinsewright.Engine.Heat;

namespace Rinsewright.Engine.Tests.Heat;

/// <summary>Rows R26 to R28 of the check list: how fast the errors fall. Ceramic 5.9 mm, 1900 W/(m² K), 5 s; start 1, fluid 0.</summary>
public sealed class ConvergenceVerification
{
    private static readonly double Exact = new PlaneWall(1900 * 0.00295 / 1.5).Mean(6.25e-7 * 5 / (0.00295 * 0.00295));

    [Fact] // R26
    public void Cells_are_second_order()
    {
        int[] counts = [4, 8, 16, 32, 64];
        double[] printed = [2.580e-2, 6.408e-3, 1.599e-3, 3.996e-4, 9.990e-5];
        var errors = counts.Select(n => Math.Abs(Mean(n) - Exact)).ToArray();

        Assert.All(errors.Zip(printed), e => Relative.Equal(e.Second, e.First, 1e-3));
        Assert.All(errors.Zip(errors.Skip(1)), e => Assert.Equal(2.00, Math.Log2(e.First / e.Second), 0.02));
    }

    [Fact] // R27
    public void Backward_Euler_is_first_order_in_time()
    {
        double[] steps = [1, 0.5, 0.25, 0.125],
            printed = [1.689e-2, 8.562e-3, 4.310e-3, 2.162e-3];
        var errors = steps.Select(dt => TimeError(1, dt)).ToArray();

        Assert.All(errors.Zip(printed), e => Relative.Equal(e.Second, e.First, 1e-3));
        Assert.All(errors.Zip(errors.Skip(1)), e => Assert.Equal(1.0, Math.Log2(e.First / e.Second), 0.03));
    }

    [Fact] // R28; the coarsest step still feels the sudden start, so the first ratio is lower
    public void Crank_Nicolson_is_second_order_in_time()
    {
        double[] steps = [0.25, 0.125, 0.0625],
            printed = [2.29e-5, 6.83e-6, 1.71e-6];
        var errors = steps.Select(dt => TimeError(0.5, dt)).ToArray();

        Assert.All(errors.Zip(printed), e => Relative.Equal(e.Second, e.First, 3e-3));
        Assert.Equal(2.0, Math.Log2(errors[1] / errors[2]), 0.02);
    }

    [Fact] // exact in time: one step of 5 s or five hundred give the same
    public void The_propagator_has_no_error_in_time()
    {
        var slab = Slab.Symmetric(Material.Ceramic, 0.0059, 64, 1900);
        var whole = Run(new SlabPropagator(slab, 5), 1);
        var cut = Run(new SlabPropagator(slab, 0.01), 500);

        Assert.All(whole.Zip(cut), t => Assert.Equal(t.First, t.Second, 1e-12));

        static double[] Run(SlabPropagator step, int times)
        {
            var cells = new double[32];
            cells.AsSpan().Fill(1);
            for (var i = 0; i < times; i++)
            {
                step.Step(cells, 0, 0);
            }

            return cells;
        }
    }

    private static double Mean(int n)
    {
        var cells = new double[n / 2];
        cells.AsSpan().Fill(1);
        new SlabPropagator(Slab.Symmetric(Material.Ceramic, 0.0059, n, 1900), 5).Step(cells, 0, 0);
        return SlabPropagator.Mean(cells);
    }

    private static double TimeError(double theta, double dt)
    {
        var slab = Slab.Symmetric(Material.Ceramic, 0.0059, 64, 1900);
        var cells = new double[32];
        cells.AsSpan().Fill(1);
        for (var i = 0; i < (int)Math.Round(5 / dt); i++)
        {
            ImplicitSlab.Step(slab, theta, dt, cells, 0, 0);
        }

        return Math.Abs(SlabPropagator.Mean(cells) - Mean(64));
    }
}
