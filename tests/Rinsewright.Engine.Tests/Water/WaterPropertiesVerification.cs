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

    [Fact] // CHV022, opened: [iapws-if97] Table 36
    public void Boiling_point() => Relative.Equal(372.755919, WaterProperties.SaturationTemperature(1e5) + 273.15, 1e-8);

    [Theory] // CHV023 to CHV025, CHV027, opened: another formulation (Wagner; IAPWS-95) of the same water, 0.02 % of IF97
    [InlineData(273.16, 611.657)]
    [InlineData(275, 698.451167)]
    [InlineData(373.1243, 101325)]
    public void Vapour_pressure_of_other_formulations(double kelvin, double pascal)
    {
        Relative.Equal(pascal, WaterProperties.SaturationPressure(kelvin - 273.15), 2e-4);
        Assert.Equal(kelvin, WaterProperties.SaturationTemperature(pascal) + 273.15, 0.01);
    }

    [Theory] // CHV025 and CHV027, opened: saturated liquid; CHV031 and CHV032, opened, CHV033, computed: Kell 1975
    [InlineData(373.1243, 958.365, 2e-5)]
    [InlineData(275, 999.887406, 6e-5)] // saturated at 0.7 kPa, ours at 100 kPa: compressed by 5·10⁻⁵
    [InlineData(298.15, 997.0448954, 5e-6)]
    [InlineData(323.15, 988.0362916, 1e-5)]
    [InlineData(355.372, 970.401, 2e-5)]
    public void Density_of_other_formulations(double kelvin, double density, double within) =>
        Relative.Equal(density, WaterProperties.Density(kelvin - 273.15), within);

    [Theory] // CHV026 and CHV028, opened: heat of the saturated liquid from 0.01 °C on, kJ/kg
    [InlineData(275, 7.75972201, 0.01)]
    [InlineData(373.1243, 419.05, 0.1)]
    public void Heat_capacity_adds_up_to_the_published_heat(double kelvin, double kilojoules, double within)
    {
        const int Steps = 2000;
        var (from, to) = (0.01, kelvin - 273.15);
        var sum = 0.0;
        for (var i = 0; i < Steps; i++)
        {
            sum += WaterProperties.HeatCapacity(from + ((i + 0.5) * (to - from) / Steps)) * (to - from) / Steps;
        }

        Assert.Equal(kilojoules, sum, within);
    }

    [Fact] // CHV016, opened: viscosity of the full formulation at 998 kg/m³; CHV019 likewise for heat conductivity. Ours are at 0.1 MPa (997.05 kg/m³)
    public void Transport_of_the_full_formulation()
    {
        Relative.Equal(889.735100, 1e6 * WaterProperties.Viscosity(25), 5e-4);
        Relative.Equal(0.607712868, WaterProperties.HeatConductivity(25), 2.5e-3);
    }

    [Theory] // CHV016 to CHV020, opened: [iapws-r12-08] Table 4, [iapws-r15-11] Table 4
    [InlineData(998, 298.15, 889.735100, 607.712868)]
    [InlineData(1200, 298.15, 1437.649467, 799.038144)]
    [InlineData(1000, 373.15, 307.883622, null)]
    public void The_second_opinion_is_the_published_one(double density, double kelvin, double viscosity, double? conductivity)
    {
        Relative.Equal(viscosity, FullFormulation.Viscosity(density, kelvin), 1e-8);
        if (conductivity is { } expected)
        {
            Relative.Equal(expected, FullFormulation.HeatConductivity(density, kelvin), 1e-8);
        }
    }

    [Fact] // The release for one bar keeps within 1 % of the full one; its critical term, left out here, is below 0.5 % of liquid water
    public void Liquid_water_is_what_the_full_formulation_says()
    {
        for (var t = 1; t <= 99; t++)
        {
            var density = WaterProperties.Density(t);
            Relative.Equal(FullFormulation.Viscosity(density, t + 273.15), 1e6 * WaterProperties.Viscosity(t), 2e-3);
            Relative.Equal(FullFormulation.HeatConductivity(density, t + 273.15), 1000 * WaterProperties.HeatConductivity(t), 5e-3);
        }
    }
}
