using Rinsewright.Engine.Heat;

namespace Rinsewright.Engine.Tests.Heat;

/// <summary>
/// Rows R01 to R24 of the check list. The closed forms are first held against the published figures, then the slab against the closed forms. R10 and R11 stand in
/// conduction-worked-examples, R13 in yovanovich-plane-wall; the others were evaluated by another program.
/// </summary>
public sealed class ConductionVerification
{
    private const double Alpha = 6.25e-7;

    [Theory] // R01 to R08
    [InlineData(0.01, 0.099834, 1.001661)]
    [InlineData(0.1, 0.311053, 1.016094)]
    [InlineData(0.5, 0.653271, 1.070128)]
    [InlineData(1, 0.860334, 1.119132)]
    [InlineData(2, 1.076874, 1.178456)]
    [InlineData(5, 1.313838, 1.240249)]
    [InlineData(10, 1.428870, 1.261963)]
    [InlineData(100, 1.555245, 1.273088)]
    public void First_term(double biot, double root, double factor)
    {
        Relative.Equal(root, new PlaneWall(biot).FirstRoot, 1e-5);
        Relative.Equal(factor, new PlaneWall(biot).FirstFactor, 1e-5);
    }

    [Fact] // R09
    public void Series_at_Biot_1()
    {
        var wall = new PlaneWall(1);

        Relative.Equal(0.772526, wall.At(0, 0.5), 1e-5);
        Relative.Equal(0.504522, wall.At(1, 0.5), 1e-5);
        Relative.Equal(0.681105, wall.Mean(0.5), 1e-5);
        Relative.Equal(0.772956, wall.At(0, 0.5, terms: 1), 1e-5);
        Relative.Equal(0.504110, wall.At(1, 0.5, terms: 1), 1e-5);
    }

    [Fact] // R10: pipeline wall of 1 m diameter; the slab against the book, 1 % for its rounded factors
    public void Pipeline_wall()
    {
        var pipe = new Material("pipe", 63.9, 63.9 / 18.8e-6, 1, 0.04, 0.04);
        var cells = Started(pipe, 0.08, 64, 500, -20, 60, 480, out var step);

        Relative.Equal(42.92, cells[^1], 0.01);
        Assert.Equal(43.02, cells[^1], 0.02);
        Relative.Equal(-7362, 500 * (step.LeftSurface(cells, 60) - 60), 0.01);
        Relative.Equal(-7318, 500 * (step.LeftSurface(cells, 60) - 60), 0.002);
        Relative.Equal(-2.72e7, -Math.PI * 0.04 * pipe.HeatPerVolume * (SlabPropagator.Mean(cells) + 20), 0.01);
        Relative.Equal(-2.726e7, -Math.PI * 0.04 * pipe.HeatPerVolume * (SlabPropagator.Mean(cells) + 20), 0.001);
    }

    [Fact] // R11: bead with a time constant of 1 s, 25 to 199 °C in gas of 200 °C; its diameter 6hτ/(ρc)
    public void Thermocouple_bead()
    {
        const double Diameter = 7.06e-4;
        var bead = new LumpedHeat(8500 * 400 * Math.PI * Diameter * Diameter * Diameter / 6, 400 * Math.PI * Diameter * Diameter, 200);

        Relative.Equal(1, bead.Capacity / bead.Loss, 0.002);
        Relative.Equal(5.165, bead.SecondsBetween(25, 199, 0)!.Value, 0.002);
    }

    [Fact] // R12: soil of 20 °C under a surface of −15 °C, 60 days: 0 °C at 0.677 m. The printed 0.92 of the worked examples rests on a slip.
    public void Frost_in_soil()
    {
        Assert.Equal(15.0 / 35, ErrorFunction.Erf(0.40019), 1e-5);
        var soil = new Material("soil", 0.52, 2050, 1840, 3, 3);
        var step = new SlabPropagator(new Slab(soil, 4, 200, 1e6, 0), 60 * 86400.0);
        var cells = new double[200];
        cells.AsSpan().Fill(20);
        step.Step(cells, -15, 0);

        var above = Array.FindLastIndex(cells, t => t < 0);
        var depth = step.Slab.CellWidth * (above + 0.5 + (cells[above] / (cells[above] - cells[above + 1])));
        Relative.Equal(0.677, depth, 0.005);
    }

    [Fact] // R13
    public void Plane_wall_example()
    {
        var wall = new PlaneWall(0.5);

        Relative.Equal(0.641249, wall.At(0, 1.2), 1e-5);
        Relative.Equal(0.509216, wall.At(1, 1.2), 1e-5);
        Relative.Equal(0.596602, wall.Mean(1.2), 1e-5);
        Relative.Equal(0.65410, wall.FirstRoot, 0.002); // the note's approximate root
        Relative.Equal(0.64052, wall.At(0, 1.2, terms: 1), 0.002);
        var cells = Started(new Material("wall", 20, 20 / 2e-5, 1, 0.1, 0.1), 0.2, 64, 100, 1, 0, 600, out var step);
        Relative.Equal(0.509216, step.LeftSurface(cells, 0), 2e-4);
        Relative.Equal(0.596602, SlabPropagator.Mean(cells), 2e-4);
    }

    [Fact] // R14, R15, R16
    public void Thick_body_in_its_first_seconds()
    {
        Relative.Equal(0.507619, SemiInfinite.Approach(0, 1.5, Alpha, 1500, 1), 1e-6);
        Relative.Equal(0.261112, SemiInfinite.Approach(0.002, 1.5, Alpha, 1500, 5), 2e-6); // printed to six digits
        Relative.Equal(0.507619, 1 - new PlaneWall(50).At(1, Alpha / (0.05 * 0.05)), 1e-6);
    }

    [Theory] // R18, R19, R21 (exact mean), R22, R23, R24: h 1900; −1 where the row gives none
    [InlineData("ceramic", 5.9, 5, 0.698508, 0.222703, 0.531935)]
    [InlineData("ceramic", 5.9, 18.2, 0.159722, 0.050611, 0.121352)]
    [InlineData("steel", 1.0, 2, -1, -1, 0.138755)]
    [InlineData("glass", 2.5, 5, 0.163908, 0.070296, 0.131319)]
    [InlineData("melamine", 3.5, 5, 0.734129, 0.129369, 0.520446)]
    [InlineData("polycarbonate", 3.0, 5, 0.667778, 0.068943, 0.453591)]
    public void Ware_in_spray(string id, double mm, double seconds, double centre, double surface, double mean)
    {
        var material = Material.Find(id)!;
        var half = mm / 2000;
        var wall = new PlaneWall(1900 * half / material.Conductivity);
        var fourier = material.Diffusivity * seconds / (half * half);
        // 1e-5 of the closed form, half of its last printed digit; of a resolved slab 2e-4.
        Held(mean, wall.Mean(fourier), 1e-5);
        var cells = Started(material, mm / 1000, 128, 1900, 1, 0, seconds, out var step);
        Held(mean, SlabPropagator.Mean(cells), 2e-4);
        if (centre > 0)
        {
            Held(centre, wall.At(0, fourier), 1e-5);
            Held(surface, wall.At(1, fourier), 1e-5);
            Held(surface, step.LeftSurface(cells, 0), 4e-4);
        }

        static void Held(double expected, double actual, double share) => Assert.Equal(expected, actual, (expected * share) + 5e-7);
    }

    [Fact] // R17, R20, R21
    public void Numbers_of_the_mean_rule()
    {
        var ceramic = Material.Ceramic;
        Relative.Equal(3.736667, 1900 * 0.00295 / ceramic.Conductivity, 1e-6);
        Relative.Equal(0.359092, ceramic.Diffusivity * 5 / (0.00295 * 0.00295), 1e-6);
        Relative.Equal(8.36765, ceramic.MeanTimeConstant(0.00295, 1900), 1e-5);
        Relative.Equal(0.113603, Math.Exp(-18.2 / ceramic.MeanTimeConstant(0.00295, 1900)), 1e-5);
        Relative.Equal(0.133077, Math.Exp(-1900 * 2 / (Material.Steel.HeatPerVolume * 0.0005)), 1e-5);
    }

    [Theory]
    [InlineData(0.01)]
    [InlineData(0.1)]
    [InlineData(1)]
    [InlineData(10)]
    [InlineData(100)]
    public void Slab_follows_the_series_from_Biot_001_to_100(double biot)
    {
        var wall = new PlaneWall(biot);
        var material = new Material("any", 1, 1, 1, 2, 2); // diffusivity 1, half thickness 1: seconds are Fourier numbers
        foreach (var fourier in new[] { 0.02, 0.1, 0.5, 2 })
        {
            var cells = Started(material, 2, 128, biot, 1, 0, fourier, out var step);
            Assert.Equal(wall.At(1, fourier), step.LeftSurface(cells, 0), 3e-4);
            Assert.Equal(wall.Mean(fourier), SlabPropagator.Mean(cells), 2e-4);
            Assert.Equal(wall.At(1.0 / 128, fourier), cells[^1], 3e-4);
        }
    }

    [Theory]
    [InlineData(100, 5)]
    [InlineData(2000, 1)]
    [InlineData(20000, 1)]
    public void Slab_follows_the_half_space_while_heat_has_not_crossed_it(double coefficient, double seconds)
    {
        var material = Material.Ceramic;
        var step = new SlabPropagator(new Slab(material, 0.02, 200, coefficient, 0), seconds);
        var cells = new double[200];
        step.Step(cells, 1, 0);

        Assert.Equal(SemiInfinite.Approach(0, 1.5, Alpha, coefficient, seconds), step.LeftSurface(cells, 1), 3e-4);
        var place = 20;
        var depth = (place + 0.5) * step.Slab.CellWidth;
        Assert.Equal(SemiInfinite.Approach(depth, 1.5, Alpha, coefficient, seconds), cells[place], 3e-4);
    }

    [Fact] // known values of the function, from memory
    public void Error_function()
    {
        Assert.Equal(0.8427007929497149, ErrorFunction.Erf(1), 1e-15);
        Assert.Equal(0.9953222650189527, ErrorFunction.Erf(2), 1e-15);
        Relative.Equal(2.209049699858544e-5, ErrorFunction.Complement(3), 1e-12);
        Relative.Equal(0.427583576155807, ErrorFunction.ScaledComplement(1), 1e-13);
    }

    private static double[] Started(
        Material material,
        double thickness,
        int cells,
        double coefficient,
        double start,
        double fluid,
        double seconds,
        out SlabPropagator step
    )
    {
        step = new SlabPropagator(Slab.Symmetric(material, thickness, cells, coefficient), seconds);
        var temperatures = new double[cells / 2];
        temperatures.AsSpan().Fill(start);
        step.Step(temperatures, fluid, 0);
        return temperatures;
    }
}
