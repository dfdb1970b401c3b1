using Rinsewright.Engine.Water;

namespace Rinsewright.Engine.Tests.Water;

/// <summary>Verification tables of the formulations [iapws-sr6-08] Table 8, [iapws-if97] Table 35; rows CHV001 to CHV015 and CHV021 of the check list, opened.</summary>
public sealed class WaterPropertiesVerification
{
    [Theory]
    [InlineData(260, 997.06836, 4.30017472, 3058.36075, 0.51562801, 93.455835)]
    [InlineData(298.15, 997.047013, 4.18144618, 889.996774, 0.606502308, 78.375218)]
    [InlineData(375, 957.00971, 4.21774697, 276.207245, 0.677913788, 55.266199)]
    public void Liquid_at_one_bar(
        double kelvin,
        double density,
        double capacity,
        double viscosity,
        double conductivity,
        double permittivity
    )
    {
        var t = kelvin - 273.15;

        Relative.Equal(density, WaterProperties.Density(t), 1e-8);
        Relative.Equal(capacity, WaterProperties.HeatCapacity(t), 1e-8);
        Relative.Equal(viscosity, 1e6 * WaterProperties.Viscosity(t), 1e-8);
        Relative.Equal(conductivity, WaterProperties.HeatConductivity(t), 1e-8);
        Relative.Equal(permittivity, WaterProperties.Permittivity(t), 1e-7);
    }

    [Fact] // CHV021
    public void Vapour_pressure() => Relative.Equal(3536.58941, WaterProperties.SaturationPressure(26.85), 1e-8);

    [Theory] // Steam table, 0.1 MPa and saturation: 60, 80 and 90 degC, computed by another program
    [InlineData(60, 983.20, 4.185, 466.0, 0.6510, 19946)]
    [InlineData(80, 971.79, 4.197, 354.1, 0.6670, 47415)]
    [InlineData(90, 965.31, 4.205, 314.2, 0.6728, 70182)]
    public void Table(double t, double density, double capacity, double viscosity, double conductivity, double pressure)
    {
        Assert.Equal(density, WaterProperties.Density(t), 0.005);
        Assert.Equal(capacity, WaterProperties.HeatCapacity(t), 0.0005);
        Assert.Equal(viscosity, 1e6 * WaterProperties.Viscosity(t), 0.1); // the table is of the full formulation
        Assert.Equal(conductivity, WaterProperties.HeatConductivity(t), 0.00005);
        Assert.Equal(pressure, WaterProperties.SaturationPressure(t), 0.5);
    }
}
