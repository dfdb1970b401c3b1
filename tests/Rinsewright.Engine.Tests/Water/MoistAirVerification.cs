using CsCheck;
using Rinsewright.Engine.Water;

namespace Rinsewright.Engine.Tests.Water;

/// <summary>Rows R35 to R37 of the check list: closed forms evaluated by another program; steam tables from memory beside them.</summary>
public sealed class MoistAirVerification
{
    private static readonly RoomAir Room = new(24, 0.5);

    [Theory] // R35
    [InlineData(20, 2329.57, 2339)]
    [InlineData(40, 7358.42, 7384)]
    [InlineData(60, 19870.1, 19946)]
    [InlineData(80, 47267.0, 47414)]
    public void Saturation_pressure(double celsius, double formula, double steamTable)
    {
        Relative.Equal(formula, MoistAir.SaturationPressure(celsius), 1e-5);
        Relative.Equal(steamTable, MoistAir.SaturationPressure(celsius), 0.0045);
    }

    [Fact] // R36
    public void Saturated_air_at_49_degrees()
    {
        Relative.Equal(0.0812585, MoistAir.SaturatedHumidity(49), 1e-5);
        Relative.Equal(259927, MoistAir.Enthalpy(49, MoistAir.SaturatedHumidity(49)), 1e-5);
    }

    [Fact] // start of the regression run: 24 °C, 50 %
    public void Air_of_the_room()
    {
        Relative.Equal(0.0092648, Room.Humidity, 1e-5);
        Relative.Equal(47729, Room.Enthalpy, 1e-4);
    }

    [Fact] // R37
    public void Idle_vent_of_the_one_tank_machine()
    {
        var vent = VentExchange.Of(1.2e-3, 0.6, 74.444, Room);

        Relative.Equal(349.88, vent.Heat, 1e-4);
        Relative.Equal(0.43267, vent.Evaporation * 3600, 1e-4);
    }

    [Fact]
    public void Slopes_are_those_of_the_curves() =>
        Gen.Double[5, 95]
            .Sample(t =>
            {
                const double Step = 1e-4;
                Near(MoistAir.SaturationPressure, MoistAir.SaturationPressureSlope(t));
                Near(MoistAir.SaturatedHumidity, MoistAir.SaturatedHumiditySlope(t));
                Near(x => MoistAir.Enthalpy(x, MoistAir.SaturatedHumidity(x)), MoistAir.SaturatedEnthalpySlope(t));
                Near(x => VentExchange.Of(8e-3, 0.6, x, Room).Heat, VentExchange.Of(8e-3, 0.6, t, Room).HeatPerKelvin);

                void Near(Func<double, double> curve, double slope) =>
                    Relative.Equal((curve(t + Step) - curve(t - Step)) / (2 * Step), slope, 1e-6);
            });
}
