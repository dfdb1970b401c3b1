using Rinsewright.Engine.Water;

namespace Rinsewright.Engine.Tests.Water;

/// <summary>Rows CHV098 to CHV100 and CHV107 of the check list: solved problems of a handbook of fluid flow, restated in an open notebook, opened.</summary>
public sealed class PumpsVerification
{
    private const double Foot = 0.3048;
    private const double Gpm = 6.30902e-5;
    private const double Psi = 6894.757293;
    private const double PoundPerCubicFoot = 16.018463;

    [Fact] // CHV098: 400 gpm, 126 ft, 17.5 hp at 3500 rpm; at 1700
    public void Slower()
    {
        var (flow, head, power) = Pumps.AtSpeed(400, 126, 17.5, 1700.0 / 3500);

        Assert.Equal(194.3, flow, 0.1);
        Assert.Equal(29.7, head, 0.1);
        Assert.Equal(2.01, power, 0.01);
    }

    [Fact] // CHV099: 5 psig, 60 °F, vapour 0.256 psia, lift of 25 ft, 6 ft lost: 13.89 ft
    public void Suction() =>
        Assert.Equal(13.89, Pumps.SuctionHead(19.7 * Psi, 0.256 * Psi, 62.364 * PoundPerCubicFoot, -25 * Foot, 6 * Foot) / Foot, 0.02);

    [Fact] // CHV100: 700 gpm, 428 ft, 0.707, 62.364 lb/ft³: 107.06 hp
    public void Shaft() =>
        Assert.Equal(107.06, Pumps.ShaftPower(700 * Gpm, 428 * Foot, 62.364 * PoundPerCubicFoot, 0.707) / 745.69987, 0.05);

    [Fact] // CHV107: 1 gpm at 1 psi is 14.416 L/min at 1 bar
    public void Coefficient_in_other_units() => Assert.Equal(14.416, Openings.AtPressure(Gpm, Psi, 1e5) / (1e-3 / 60), 0.001);
}
