using Rinsewright.Engine.Quantities;
using Rinsewright.Engine.Water;

namespace Rinsewright.Engine.Tests.Water;

/// <summary>Rows CHV104 to CHV119 of the check list: openings, pipes, drains.</summary>
public sealed class OpeningsVerification
{
    private const double Gpm = 6.30902e-5;
    private const double Psi = 6894.757293;
    private const double LitrePerMinute = 1e-3 / 60;

    [Fact] // CHV109: 4 mm, Cd 0.80, 20 psi
    public void Nozzle()
    {
        var flow = Openings.Nozzle(0.80, 0.004, 20 * Psi, 998.2);

        Assert.Equal(10.03, flow / LitrePerMinute, 0.02);
        Assert.Equal(2.65, flow / Gpm, 0.01);
    }

    [Fact] // CHV106: fire-protection constant, 29.84 gpm for one inch at one psi
    public void Orifice_constant() => Assert.Equal(29.84, Openings.Nozzle(1, 0.0254, Psi, 998.9) / Gpm, 0.02);

    [Theory] // CHV108 and its text
    [InlineData(4.5, 28, 3.80)]
    [InlineData(3.9, 16, 4.36)]
    public void Flow_referred_to_20_psi(double gpm, double psi, double at20) => Assert.Equal(at20, Openings.AtPressure(gpm, psi, 20), 0.01);

    [Theory] // CHV115, computed by another program
    [InlineData(0.040, 0.0005, 0.5e5, 22.8)]
    [InlineData(0.025, 0.001, 0.6e5, 31.2)]
    public void Gap(double diameter, double gap, double pressure, double litres) =>
        Assert.Equal(litres, Openings.Gap(diameter, gap, 0.005, pressure, 985, 5e-4) / LitrePerMinute, 0.1);

    [Theory] // CHV114 and its text
    [InlineData(0.005, 5.9)]
    [InlineData(0.010, 16.7)]
    [InlineData(0.015, 30.7)]
    public void Standpipe(double head, double litres) => Assert.Equal(litres, Openings.Standpipe(0.05, head) / LitrePerMinute, 0.1);

    [Fact] // Closed form: the two meet at 3/8 of the diameter
    public void Standpipe_drowns_at_three_eighths()
    {
        const double D = 0.05;
        var below = Openings.Standpipe(D, 0.37 * D) / Math.Pow(0.37 * D, 1.5);
        var above = Openings.Standpipe(D, 0.38 * D) / Math.Sqrt(0.38 * D);

        Relative.Equal(Openings.Standpipe(D, 0.2 * D) / Math.Pow(0.2 * D, 1.5), below, 1e-12);
        Relative.Equal(Openings.Standpipe(D, D) / Math.Sqrt(D), above, 1e-12);
    }

    [Fact] // Its text: 0.3 m, 20 mm without contraction, 93.7 L/min is 1.84 · 0.3 · 0.02^1.5
    public void Rim() => Assert.Equal(93.7, Openings.Rim(0.3, 0.02, 0) / LitrePerMinute, 0.1);

    [Theory] // CHV110 and CHV111, and its text
    [InlineData(0.25, 0.038, 0.25, 83.0, 0.1)]
    [InlineData(1, 0.010, 1, 9583, 1)]
    [InlineData(0.3, 0.025, 0.2, 206, 0.5)]
    public void Drain_time(double surface, double diameter, double depth, double seconds, double within) =>
        Assert.Equal(seconds, Openings.DrainTime(surface, diameter, depth), within);

    [Fact] // By hand: 40 nozzles, 4 gpm at 20 psi new; 3 gpm at 20 psi is a quarter closed
    public void Plugged_nozzles()
    {
        Assert.Equal(10, Openings.PluggedAt(40, 3, 20, 4, 20), 1e-9);
        // 3.49 gpm at 27.1 psi: a quarter closed behind line resistance, computed by another program.
        Assert.Equal(0.25 * 40, Openings.PluggedAt(40, 3.49, 27.1, 4, 20), 0.1);
    }

    [Fact] // CHV104, opened: doc examples of an open fluid library
    public void Friction()
    {
        Assert.Equal(0.0185138661, Pipe.FrictionFactor(1e5, 1e-4), 1e-10);
        Assert.Equal(0.0182650530, Pipe.Haaland(1e5, 1e-4), 1e-10);
    }

    [Theory] // CHV105, computed by another program
    [InlineData(1e4, 0, 0.030883)]
    [InlineData(1e5, 1e-3, 0.022175)]
    [InlineData(1e6, 1e-4, 0.013441)]
    public void Colebrook(double reynolds, double roughness, double friction) =>
        Assert.Equal(friction, Pipe.FrictionFactor(reynolds, roughness), 1e-6);

    [Fact] // CHV103: TP-410 solved problem 7-1 prints Re 100600 and f 0.0179; accurate properties give 101023 and 0.01811
    public void Plastic_pipe()
    {
        var flow = new Pipe(0.05247, 1, 1.5e-6).At(200 * LitrePerMinute, 30);

        Relative.Equal(101023, flow.Reynolds, 0.001);
        Relative.Equal(0.01811, flow.Friction, 0.002);
        Relative.Equal(100600, flow.Reynolds, 0.01);
        Relative.Equal(0.0179, flow.Friction, 0.02);
    }

    [Fact] // CHV118
    public void Copper_line()
    {
        var flow = new Pipe(0.01384, 10, 1.5e-6).At(15 * LitrePerMinute, 60);

        Relative.Equal(0.02141, flow.Friction, 0.005);
        Relative.Equal(21.0e3, flow.Loss, 0.005);
        Assert.Equal(1.66, flow.Speed, 0.005);
    }

    [Fact] // CHV117; CHV116: 244.6 m for 1200 m/s and 2 m/s, opened
    public void Water_hammer()
    {
        var wave = Pipe.WaveSpeed(0.01384, 0.001016, 117e9, 998.2);

        Assert.Equal(1322, wave, 1.0);
        Assert.Equal(1320e3, Pipe.Surge(wave, 1, 998.2), 1000.0);
        Assert.Equal(244.6, Pipe.Surge(1200, 2, 1000) / (1000 * 9.81), 0.1);
    }

    [Fact] // CHV088 to CHV091
    public void Softener()
    {
        var salt = MassConcentration.FromGramPerLitre(6 * 453.59237 / 28.316846592);
        var foot = Volume.FromLitre(28.316846592);
        var plan = new Engine.Water.Softener(foot, salt).Plan(
            Hardness.FromGrainPerGallon(18),
            MassConcentration.FromMilligramPerLitre(1.5),
            Volume.FromGallon(4 * 60)
        )!;

        Relative.Equal(5040, plan.Daily.InGram / 0.06479891, 1e-3); // CHV088, opened
        Relative.Equal(20000, plan.Capacity.InGram / 0.06479891, 1e-9); // CHV089, opened
        var second = new Engine.Water.Softener(foot, salt).Plan(Hardness.FromGrainPerGallon(15), default, Volume.FromGallon(400))!;
        Assert.Equal(3.3, second.Interval.InSecond / 86400, 0.05); // CHV089, opened
        Relative.Equal(7.86 * 15, second.SodiumAdded.InMilligramPerLitre, 1e-3); // 7.86 mg/L for each gpg, closed form
        var kitchen = new Engine.Water.Softener(2 * foot, salt * (8.0 / 6)).Plan(
            Hardness.FromGrainPerGallon(20),
            default,
            Volume.FromGallon(600)
        )!;
        Assert.Equal(4.0, kitchen.Interval.InSecond / 86400, 0.01);
        Assert.Equal(16, kitchen.SaltEach.InKilogram / 0.45359237, 0.01);
    }

    [Theory] // CHV090 (answer computed from opened inputs) and CHV091 (textbook, from memory)
    [InlineData(100, 245, 0.408)]
    [InlineData(85, 280, 0.304)]
    public void Bypass(double target, double raw, double share) =>
        Assert.Equal(
            share,
            Engine
                .Water.Softener.BypassFor(Hardness.FromMilligramPerLitre(target), default, Hardness.FromMilligramPerLitre(raw))
                .InFraction,
            0.0005
        );

    [Fact]
    public void Softener_outside_its_table_is_not_known() =>
        Assert.Null(new Engine.Water.Softener(Volume.FromLitre(28), MassConcentration.FromGramPerLitre(20)).Capacity());
}
