using Rinsewright.Engine.Machines;
using Rinsewright.Engine.Quantities;

namespace Rinsewright.Engine.Bench;

/// <summary>What a tool need not ask because the machine's site has said it: racks a day and prices.</summary>
public static class SiteFigures
{
    /// <summary>
    /// Figures of the site that the tool asks for, each inside the range of its field; what nobody has said, or what the site prices by another measure
    /// (rinse additive and sanitizer by mass, where the tool asks by litre), is left out.
    /// </summary>
    /// <param name="tool">Tool.</param>
    /// <param name="machine">Machine: energy costs what its heater burns.</param>
    /// <param name="tariff">What the site pays.</param>
    /// <param name="use">How the machine is used on a day; null where nobody has said.</param>
    public static IReadOnlyList<KeyValuePair<string, Amount>> For(BenchTool tool, Machine machine, Tariff tariff, DayOfUse? use)
    {
        var said = new List<KeyValuePair<string, Amount>>();
        foreach (var field in tool.Fields)
        {
            double? value = field.Id switch
            {
                "racksPerDay" => use?.Racks,
                "detergentPrice" => tariff.DetergentPerKilogram,
                "waterPrice" => tariff.WaterPerCubicMetre,
                "energyPrice" => Energy(tool, machine, tariff),
                _ => null,
            };
            if (value is { } v && new Amount(v, Units.One) is var amount && BenchProblem.Of(field, amount) is null)
            {
                said.Add(new(field.Id, amount));
            }
        }

        return said;
    }

    // Heat of the rinse water comes from the booster where there is one; heat a vent carries away comes from the tank's own heater.
    private static double? Energy(BenchTool tool, Machine machine, Tariff tariff)
    {
        var tank = MachineFigures.Wash(machine).Heater;
        var heater = tool.Id == "vent-loss" ? tank : machine.Booster?.Heater ?? tank;
        return heater?.Kind switch
        {
            null => null,
            HeaterKind.Electric => tariff.ElectricityPerKilowattHour,
            _ => tariff.FuelPerKilowattHour,
        };
    }
}
