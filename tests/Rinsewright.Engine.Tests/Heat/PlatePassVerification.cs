using Rinsewright.Engine.Heat;

namespace Rinsewright.Engine.Tests.Heat;

/// <summary>Rows R25, R29 to R34 and R71 of the check list, computed by another program; the dose rows rest on hue-history-2009 and iso-15883-1.</summary>
public sealed class PlatePassVerification
{
    private static readonly DoseRate Capped = DoseRate.HeatUnits(165, 143);

    // Wash, gap, rinse, gap, final, exit, room air.
    private static readonly PlatePhase[] CheckCase =
    [
        new(1900, 70, 18),
        new(30, 52, 3),
        new(1900, 73, 14),
        new(30, 52, 3),
        new(850, 80, 5.5),
        new(30, 52, 3),
        new(80, 24, 30),
    ];

    public static TheoryData<string, double, int, double, double, double, double, double> Plates() =>
        [
            .. Published
                .Rows("Heat", "plate-pass.csv")
                .Select(r =>
                    (
                        r["material"],
                        r.Number("mm"),
                        (int)r.Number("cells"),
                        r.Number("substep_s"),
                        r.Number("peak_c"),
                        r.Number("hue"),
                        r.Number("a0_s"),
                        r.Number("mean_c")
                    )
                ),
        ];

    [Theory] // R71
    [MemberData(nameof(Plates))]
    public void Check_case(string material, double mm, int cells, double substep, double peak, double hue, double a0, double mean)
    {
        var plate = new PlatePass(cells).Run(Material.Find(material)!, mm / 1000, 24, CheckCase, substep);

        Relative.Equal(peak, plate.Peak, 1e-5);
        Relative.Equal(hue, plate.HeatUnits, 1e-4);
        Relative.Equal(a0, plate.A0, 1e-4);
        Relative.Equal(mean, plate.Mean, 1e-5);
    }

    [Fact] // R71, second line: surface at the end of each phase
    public void Surface_at_the_end_of_each_phase()
    {
        double[] printed = [67.619, 64.154, 72.280, 70.761, 76.392, 73.719, 58.369];
        var curve = new PlateCurve();
        new PlatePass(128).Run(Material.Ceramic, 0.0059, 24, CheckCase, 0.02, curve);

        for (var p = 0; p < printed.Length; p++)
        {
            Assert.Equal(printed[p], curve.Surface[curve.Phase.ToList().LastIndexOf(p)], 0.0006);
        }

        Assert.Equal(76.5, curve.Seconds[^1], 1e-9);
        Relative.Equal(5243.42, curve.HeatUnits[^1], 1e-4);
    }

    [Fact] // R71, third line: faces 1900 and 900, 70 °C, 18 s
    public void Unequal_faces()
    {
        var cells = new double[64];
        cells.AsSpan().Fill(24);
        var step = new SlabPropagator(new Slab(Material.Ceramic, 0.0059, 64, 1900, 900), 18);
        step.Step(cells, 70, 70);

        Assert.Equal(66.992, step.LeftSurface(cells, 70), 0.0006);
        Assert.Equal(64.420, step.RightSurface(cells, 70), 0.0006);
        Assert.Equal(61.838, SlabPropagator.Mean(cells), 0.0006);
    }

    [Fact] // R25: 6 mm, 70 °C at 800 against 24 °C at 2000: 8000 W/m², faces 60.0 and 28.0 °C
    public void Two_fluids_settle_to_a_straight_line()
    {
        var cells = new double[6];
        var step = new SlabPropagator(new Slab(Material.Ceramic, 0.006, 6, 800, 2000), 3600);
        step.Step(cells, 70, 24);

        Assert.Equal(60.0, step.LeftSurface(cells, 70), 1e-9);
        Assert.Equal(28.0, step.RightSurface(cells, 24), 1e-9);
        Assert.Equal(8000, step.Slab.LeftFace * (70 - cells[0]), 1e-6);
    }

    [Theory] // R29
    [InlineData(143, 1.0001)]
    [InlineData(150, 6.4357)]
    [InlineData(155, 24.330)]
    [InlineData(160, 91.981)]
    [InlineData(161, 120.007)]
    [InlineData(165, 347.735)]
    public void Heat_units_per_second(double fahrenheit, double rate) => Relative.Equal(rate, Capped.At(fahrenheit), 1e-4);

    [Theory] // R30
    [InlineData(150, 559.4)]
    [InlineData(155, 147.96)]
    [InlineData(160, 39.14)]
    [InlineData(165, 10.353)]
    public void Seconds_to_3600(double fahrenheit, double seconds) => Relative.Equal(seconds, 3600 / Capped.At(fahrenheit), 1e-4);

    [Fact] // R31
    public void Anchors()
    {
        Relative.Equal(1800.1, Capped.Over(161, 161, 15), 1e-4);
        Relative.Equal(1800.1, Capped.Over(143, 143, 1800), 1e-4);
    }

    [Fact] // R32
    public void Ramp_over_the_cap() => Relative.Equal(1510.945, Capped.Over(150, 170, 10), 1e-6);

    [Fact] // R33: 60 to 85 °C in 25 s, floor 65 °C
    public void Ramp_over_the_floor() => Relative.Equal(13.59626, DoseRate.A0(149).Over(140, 185, 25), 1e-6);

    [Theory] // R34
    [InlineData(176, 60, 60)]
    [InlineData(194, 60, 600)]
    [InlineData(158, 600, 60)]
    [InlineData(160, 30, 3.87465)]
    public void A0_of_a_hold(double fahrenheit, double seconds, double a0) =>
        Relative.Equal(a0, DoseRate.A0(null).Over(fahrenheit, fahrenheit, seconds), 1e-5);
}
