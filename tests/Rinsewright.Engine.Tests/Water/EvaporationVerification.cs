using Rinsewright.Engine.Water;

namespace Rinsewright.Engine.Tests.Water;

/// <summary>Rows CHV120 to CHV124 of the check list: vapour off a tank and out of a stack.</summary>
public sealed class EvaporationVerification
{
    [Fact] // CHV120, opened: the printed equation in inches of mercury and Btu turned into SI; handbooks quote 0.089 and 0.0782
    public void Constants_of_the_open_surface()
    {
        Assert.Equal(0.0885, Evaporation.Still, 0.0005);
        Assert.Equal(0.0779, Evaporation.ForSpeed, 0.0005);
    }

    [Theory] // CHV121 and the table beside it, computed by another program: air of 25 °C and 60 %, 0.1 m/s; kg/(h m²) and W/m²
    [InlineData(50, 1.53, 1012)]
    [InlineData(60, 2.67, 1747)]
    [InlineData(65, 3.44, 2240)]
    [InlineData(70, 4.38, 2837)]
    public void Tank_open_to_the_room(double celsius, double kilograms, double watts)
    {
        var latent = Evaporation.LatentAt(celsius);
        var rate = Evaporation.OpenSurface(celsius, new RoomAir(25, 0.6), 0.1, latent);

        Relative.Equal(kilograms, 3600 * rate, 0.01);
        Relative.Equal(watts, 1000 * rate * latent, 0.01);
    }

    [Theory] // CHV123 and its text, computed by another program: m³/h, °C; kg/h, kW of it latent
    [InlineData(300, 45, 16.6, 11.5)]
    [InlineData(150, 60, 18.2, 12.6)]
    public void Out_of_the_stack(double flow, double celsius, double kilograms, double latent)
    {
        var (vapour, heat) = Evaporation.Exhaust(flow / 3600, celsius, new RoomAir(25, 0.5));

        Relative.Equal(kilograms, 3600 * vapour, 0.01);
        Relative.Equal(latent, vapour * Evaporation.Latent, 0.01);
        Assert.True(heat > 1000 * latent);
    }

    [Fact] // CHV123, its text: 13.7 kW in all
    public void All_the_heat_out_of_the_stack() =>
        Relative.Equal(13.7e3, Evaporation.Exhaust(300.0 / 3600, 45, new RoomAir(25, 0.5)).Heat, 0.02);

    [Fact] // CHV124
    public void Humidity()
    {
        Assert.Equal(0.01190, new RoomAir(25, 0.6).Humidity, 1e-4);
        Relative.Equal(0.08634, MoistAir.SaturatedHumidity(50), 0.005); // our vapour pressure is within 0.4 % of steam tables (W1)
    }

    [Theory] // Steam tables, from memory: kJ/kg
    [InlineData(25, 2441.7)]
    [InlineData(60, 2357.7)]
    [InlineData(90, 2282.5)]
    public void Latent_heat(double celsius, double kilojoules) => Relative.Equal(kilojoules, Evaporation.LatentAt(celsius), 0.003);
}
