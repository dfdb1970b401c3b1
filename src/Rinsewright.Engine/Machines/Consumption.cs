namespace Rinsewright.Engine.Machines;

/// <summary>What a machine takes from the building at one load. Time means.</summary>
/// <param name="WaterLitrePerHour">Water through fill and rinse valves, at supply temperature.</param>
/// <param name="ElectricKilowatt">Electric heaters and pumps.</param>
/// <param name="FuelKilowatt">Heat of steam coils and gas burners to the water.</param>
/// <param name="DetergentGramPerHour">Detergent.</param>
/// <param name="RinseAdditiveGramPerHour">Rinse additive.</param>
/// <param name="SanitizerGramPerHour">Sanitizer, as the substance that counts (chlorine), not as the product.</param>
public sealed record Consumption(
    double WaterLitrePerHour,
    double ElectricKilowatt,
    double FuelKilowatt,
    double DetergentGramPerHour,
    double RinseAdditiveGramPerHour,
    double SanitizerGramPerHour
)
{
    /// <summary>Changed by as much as one way of reading a machine differs from another.</summary>
    internal Consumption Moved(Consumption from, Consumption to)
    {
        static double By(double value, double was, double now) => was > 0 ? value * now / was : value;
        return new Consumption(
            By(WaterLitrePerHour, from.WaterLitrePerHour, to.WaterLitrePerHour),
            By(ElectricKilowatt, from.ElectricKilowatt, to.ElectricKilowatt),
            By(FuelKilowatt, from.FuelKilowatt, to.FuelKilowatt),
            By(DetergentGramPerHour, from.DetergentGramPerHour, to.DetergentGramPerHour),
            By(RinseAdditiveGramPerHour, from.RinseAdditiveGramPerHour, to.RinseAdditiveGramPerHour),
            By(SanitizerGramPerHour, from.SanitizerGramPerHour, to.SanitizerGramPerHour)
        );
    }

    internal static Consumption Of(ModelParameters p, SteadySolution s, double detergent)
    {
        double water = s.MeanRinse,
            fill = 0,
            electric = 0,
            fuel = 0;
        for (var i = 0; i < s.Tanks.Length; i++)
        {
            ref readonly var t = ref s.Tanks[i];
            water += t.Fill;
            fill += i == p.Wash ? t.Fill : 0;
            electric += t.PumpHeat;
            Heat(p.Tanks[i].Heater, t.Power, ref electric, ref fuel);
        }

        Heat(p.Booster?.Heater, s.BoosterPower, ref electric, ref fuel);
        var treated = p.Rinse is null ? fill : s.MeanRinse;
        return Of(p, water, electric, fuel, detergent, treated);
    }

    internal static Consumption Of(ModelParameters p, Meter m)
    {
        double electric = m.PumpHeat / m.Seconds,
            fuel = 0;
        for (var i = 0; i < m.Heater.Length; i++)
        {
            Heat(p.Tanks[i].Heater, m.Heater[i] / m.Seconds, ref electric, ref fuel);
        }

        Heat(p.Booster?.Heater, m.Booster / m.Seconds, ref electric, ref fuel);
        var treated = (p.Rinse is null ? m.Fill : m.Rinse) / m.Seconds;
        return Of(p, (m.Fill + m.Rinse) / m.Seconds, electric, fuel, m.Detergent / m.Seconds, treated);
    }

    // Flows in kg/s, powers in W; additive and sanitizer go with the water they are fed into.
    private static Consumption Of(ModelParameters p, double water, double electric, double fuel, double detergent, double treated) =>
        new(
            water * 3.6e6 / Water.LiquidWater.Density,
            electric / 1000,
            fuel / 1000,
            detergent * 3.6e6,
            treated * p.Feed.Additive * 3.6e6,
            treated * p.Feed.Sanitizer * 3.6e6
        );

    private static void Heat(HeaterParameters? heater, double power, ref double electric, ref double fuel)
    {
        if (heater is { Burns: true })
        {
            fuel += power;
        }
        else
        {
            electric += power;
        }
    }
}
