using CsCheck;
using Rinsewright.Engine.Heat;

namespace Rinsewright.Engine.Tests.Heat;

/// <summary>What must hold for every slab and every pass.</summary>
public sealed class ConductionLaws
{
    private static readonly Gen<Material> Materials = Gen.Int[0, Material.All.Count - 1].Select(i => Material.All[i]);
    private static readonly Gen<double> Coefficient = Gen.Double[1, 20000];

    private static readonly Gen<(Slab Slab, double Seconds)> Slabs = Gen.Select(
            Materials,
            Gen.Double[0.0005, 0.02],
            Gen.Int[1, 12],
            Coefficient,
            Coefficient,
            Gen.Double[0.01, 60]
        )
        .Select((m, d, n, l, r, s) => (new Slab(m, d, n, l, r), s));

    private static readonly Gen<PlatePhase[]> Phases = Gen.Select(Gen.Double[0, 4000], Gen.Double[15, 95], Gen.Double[0.1, 30])
        .Select((h, t, s) => new PlatePhase(h, t, s))
        .Array[1, 6];

    [Fact]
    public void No_cell_leaves_what_start_and_fluids_span() =>
        Gen.Select(Slabs, Gen.Double[0, 100].Array[12, 12], Gen.Double[0, 100], Gen.Double[0, 100])
            .Sample(
                (x, start, left, right) =>
                {
                    var cells = start[..x.Slab.Cells];
                    double low = Math.Min(cells.Min(), Math.Min(left, right)),
                        high = Math.Max(cells.Max(), Math.Max(left, right));
                    new SlabPropagator(x.Slab, x.Seconds).Step(cells, left, right);
                    return cells.All(t => t >= low - 1e-9 && t <= high + 1e-9);
                }
            );

    [Fact]
    public void Half_a_plate_is_a_plate_with_the_same_on_both_faces() =>
        Gen.Select(Materials, Gen.Double[0.001, 0.02], Gen.Int[1, 8], Coefficient, Gen.Double[0.05, 30])
            .Sample(
                (material, thickness, half, h, seconds) =>
                {
                    var whole = Filled(2 * half, 24);
                    var part = Filled(half, 24);
                    new SlabPropagator(new Slab(material, thickness, 2 * half, h, h), seconds).Step(whole, 70, 70);
                    new SlabPropagator(Slab.Symmetric(material, thickness, 2 * half, h), seconds).Step(part, 70, 0);
                    return Enumerable.Range(0, half).All(i => Near(whole[i], part[i]) && Near(whole[i], whole[(2 * half) - 1 - i]));
                }
            );

    [Fact]
    public void An_insulated_plate_keeps_its_heat() =>
        Gen.Select(Materials, Gen.Double[0.001, 0.02], Gen.Double[0, 100].Array[2, 12], Gen.Double[0.05, 300])
            .Sample(
                (material, thickness, cells, seconds) =>
                {
                    var before = cells.Average();
                    var slab = new Slab(material, thickness, cells.Length, 0, 0);
                    new SlabPropagator(slab, seconds).Step(cells, 500, -500);
                    // The exponential of a matrix keeps the rounding of its argument: as many times the last bit of a figure as cells relax in the step.
                    var relaxed = 4 * slab.Between / slab.CellCapacity * seconds;
                    return Math.Abs(before - cells.Average()) <= 1e-9 + (Math.BitIncrement(100.0) - 100) * relaxed;
                }
            );

    [Fact]
    public void Two_steps_are_one_step_of_both_lengths() =>
        Gen.Select(Slabs, Gen.Double[0.01, 60], Gen.Double[0, 100])
            .Sample(
                (x, more, fluid) =>
                {
                    var apart = Filled(x.Slab.Cells, 24);
                    var together = Filled(x.Slab.Cells, 24);
                    new SlabPropagator(x.Slab, x.Seconds).Step(apart, fluid, 60);
                    new SlabPropagator(x.Slab, more).Step(apart, fluid, 60);
                    new SlabPropagator(x.Slab, x.Seconds + more).Step(together, fluid, 60);
                    return apart.Zip(together).All(t => Math.Abs(t.First - t.Second) < 1e-8);
                }
            );

    [Fact] // heat gained against heat passed by the faces, summed over short steps with the mean of both ends
    public void Heat_gained_is_heat_passed() =>
        Gen.Select(Materials, Gen.Double[0.002, 0.01], Gen.Double[50, 3000], Gen.Double[50, 3000], Gen.Double[30, 90])
            .Sample(
                (material, thickness, l, r, left) =>
                {
                    var slab = new Slab(material, thickness, 4, l, r);
                    var rate = (slab.LeftFace + slab.RightFace + (2 * slab.Between)) / slab.CellCapacity;
                    var dt = 0.02 / rate;
                    var step = new SlabPropagator(slab, dt);
                    var cells = Filled(4, 24);
                    double passed = 0,
                        through = 0;
                    for (var i = 0; i < 400; i++)
                    {
                        Pass();
                        step.Step(cells, left, 20);
                        Pass();
                    }

                    // The mean of both ends errs in proportion to what went through each face; where it goes in at one and out at the other the sum of both can be next to nothing.
                    return Math.Abs(passed - (slab.CellCapacity * cells.Sum(t => t - 24))) < 1e-3 * Math.Max(through, 1);

                    void Pass()
                    {
                        var (one, other) = (slab.LeftFace * (left - cells[0]), slab.RightFace * (20 - cells[^1]));
                        passed += dt / 2 * (one + other);
                        through += dt / 2 * (Math.Abs(one) + Math.Abs(other));
                    }
                }
            );

    [Fact]
    public void Hotter_water_never_gives_a_lower_peak_or_dose() =>
        Gen.Select(Materials, Gen.Double[0.001, 0.01], Phases, Gen.Int[0, 5], Gen.Double[0, 15])
            .Sample(
                (material, thickness, phases, which, hotter) =>
                {
                    var pass = new PlatePass(8);
                    var now = pass.Run(material, thickness, 24, phases);
                    var p = which % phases.Length;
                    phases[p] = phases[p] with { Fluid = phases[p].Fluid + hotter };
                    var then = pass.Run(material, thickness, 24, phases);
                    return then.Peak >= now.Peak - 1e-9
                        && then.HeatUnits >= now.HeatUnits * (1 - 1e-9)
                        && then.A0 >= now.A0 * (1 - 1e-9)
                        && then.Mean >= now.Mean - 1e-9;
                }
            );

    [Fact]
    public void A_pass_does_not_depend_on_what_was_run_before() =>
        Gen.Select(Materials, Materials, Phases, Phases)
            .Sample(
                (a, b, first, second) =>
                {
                    var used = new PlatePass(8);
                    used.Run(a, 0.003, 24, first);
                    return used.Run(b, 0.005, 24, second) == new PlatePass(8).Run(b, 0.005, 24, second);
                }
            );

    [Fact] // up to Biot 4, the usual plate in a usual spray, within 0.04; up to Biot 8 within 0.065
    public void Mean_rule_is_near_the_mean_of_ceramic() =>
        Gen.Select(Gen.Double[0.005, 0.008], Gen.Double[500, 3000], Gen.Double[0.5, 40])
            .Sample(
                (thickness, h, seconds) =>
                {
                    var half = thickness / 2;
                    var exact = new PlaneWall(h * half / 1.5, 60).Mean(6.25e-7 * seconds / (half * half));
                    return Math.Abs(exact - Math.Exp(-seconds / Material.Ceramic.MeanTimeConstant(half, h)))
                        < (h * half / 1.5 <= 3.9 ? 0.04 : 0.065);
                }
            );

    private static double[] Filled(int n, double value)
    {
        var cells = new double[n];
        cells.AsSpan().Fill(value);
        return cells;
    }

    private static bool Near(double a, double b) => Math.Abs(a - b) < 1e-9;
}
