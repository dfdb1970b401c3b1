using Rinsewright.Engine.Water;

namespace Rinsewright.Engine.Machines;

/// <summary>Sums over a stretch of a stepped run, from which the observables of that stretch follow.</summary>
internal sealed class Meter(int tanks)
{
    private readonly double[] tankCelsius = new double[tanks];
    private readonly double[] tankShare = new double[tanks];

    /// <summary>Length, s.</summary>
    public double Seconds { get; private set; }

    /// <summary>Heat of each tank's heater, J.</summary>
    public double[] Heater { get; } = new double[tanks];

    /// <summary>Heat of the booster, J.</summary>
    public double Booster { get; private set; }

    /// <summary>Heat of the pumps to the water, J.</summary>
    public double PumpHeat { get; private set; }

    /// <summary>Heat to the air, J.</summary>
    public double Vent { get; private set; }

    /// <summary>Through the fill valves, kg.</summary>
    public double Fill { get; private set; }

    /// <summary>Through the rinse valve, kg.</summary>
    public double Rinse { get; private set; }

    /// <summary>To the drain, kg.</summary>
    public double Drain { get; private set; }

    /// <summary>To the floor, kg.</summary>
    public double Floor { get; private set; }

    /// <summary>Detergent fed, kg.</summary>
    public double Detergent { get; private set; }

    /// <summary>Seconds the final rinse sprayed.</summary>
    public double RinseSeconds { get; private set; }

    /// <summary>Its temperature at the booster's outlet over that time, K s.</summary>
    public double RinseCelsius { get; private set; }

    /// <summary>Coldest it was while spraying, °C.</summary>
    public double RinseColdest { get; private set; } = double.PositiveInfinity;

    /// <summary>Seconds the wash pump ran.</summary>
    public double WashSeconds { get; private set; }

    /// <summary>Arm pressure over that time, Pa s.</summary>
    public double ArmPressure { get; private set; }

    /// <summary>Water in the wash tank over time, kg s.</summary>
    public double WashMass { get; private set; }

    /// <summary>Soil in the wash tank over time, s.</summary>
    public double WashSoil { get; private set; }

    /// <summary>Groups of ware that left.</summary>
    public int Groups { get; private set; }

    /// <summary>Sums over those groups: peak, heat units, A0, mean temperature, soil, detergent and additive and sanitizer of the film.</summary>
    public double[] Ware { get; } = new double[8];

    /// <summary>Takes a step that was made.</summary>
    public void Take(Simulation s, double dt)
    {
        var p = s.Parameters;
        Seconds += dt;
        Booster += dt * s.BoosterPower;
        Vent += dt * s.RinseVent;
        Rinse += dt * s.RinseFlow;
        Drain += dt * s.Bypassed;
        Detergent += s.Dosing ? dt * p.Feed.Rate : 0;
        for (var i = 0; i < Heater.Length; i++)
        {
            var t = s.Tanks[i];
            Heater[i] += dt * t.Power;
            PumpHeat += t.Spray.Total > 0 ? dt * p.Tanks[i].Pump.Heat : 0;
            Vent += dt * t.Vent;
            Fill += dt * t.Fill;
            Floor += dt * t.Floor;
            Drain += dt * (t.Leak + t.Drained + (p.Tanks[i].SpillsTo < 0 ? t.Overflow : 0));
            tankCelsius[i] += dt * t.Celsius;
            tankShare[i] += dt * s.Share(i, Solute.Detergent);
        }

        var wash = s.Tanks[p.Wash];
        WashMass += dt * wash.Mass;
        WashSoil += dt * s.Share(p.Wash, Solute.Soil);
        if (wash.Pumps)
        {
            WashSeconds += dt;
            ArmPressure += dt * wash.Spray.ArmPressure;
        }

        if (s.Rinsing)
        {
            RinseSeconds += dt;
            RinseCelsius += dt * s.Booster;
            RinseColdest = Math.Min(RinseColdest, s.Booster);
        }
    }

    /// <summary>Takes a group that left.</summary>
    public void Take(WareGroup group)
    {
        Groups++;
        Ware[0] += group.Peak;
        Ware[1] += group.HeatUnits;
        Ware[2] += group.A0;
        Ware[3] += group.Mean;
        Ware[4] += group.Soil;
        Ware[5] += group.FilmShare[Solute.Detergent];
        Ware[6] += group.FilmShare[Solute.Additive];
        Ware[7] += group.FilmShare[Solute.Sanitizer];
    }

    /// <summary>Mean temperature of a tank, °C.</summary>
    public double Celsius(int tank) => tankCelsius[tank] / Seconds;

    /// <summary>Mean detergent in a tank, kg/kg.</summary>
    public double DetergentIn(int tank) => tankShare[tank] / Seconds;

    /// <summary>Mean power of all tank heaters, W.</summary>
    public double TankPower
    {
        get
        {
            double sum = 0;
            foreach (var heat in Heater)
            {
                sum += heat;
            }

            return sum / Seconds;
        }
    }

    /// <summary>Litres an hour of a mass in kg over the stretch.</summary>
    public double LitrePerHour(double mass) => mass / Seconds * 3600 * 1000 / LiquidWater.Density;
}
