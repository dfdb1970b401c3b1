using Rinsewright.Engine.Heat;
using Rinsewright.Engine.Quantities;
using Rinsewright.Engine.Water;

namespace Rinsewright.Engine.Machines;

/// <summary>What a machine gives for each kind of reading. The steady model for what is read hot; heat-up and cooling by the time the heat balance takes. Equation K16.</summary>
/// <param name="tanks">Tanks of the machines.</param>
internal sealed class ReadingModel(int tanks)
{
    // Parts of a change of temperature over which the balance is summed (Simpson): the steam to the air curves the loss.
    private const int Parts = 8;

    // In place of a time that never comes to an end, s.
    private const double Never = 1e7;

    private readonly SteadySolver solver = new(tanks);
    private ModelParameters? solved;
    private double solvedRacks;

    /// <summary>What the machine gives, in SI with °C.</summary>
    public double Expected(ModelParameters p, UsableReading reading)
    {
        var id = reading.Kind.Id;
        var tank = reading.Tank >= 0 ? p.Tanks[reading.Tank] : null;
        var heater = reading.Tank == UsableReading.OfBooster ? p.Booster?.Heater : tank?.Heater;
        return id switch
        {
            "heatUpTime" => ChangeTime(p, tank!, reading, heated: true),
            "coolingTime" => ChangeTime(p, tank!, reading, heated: false),
            "idleHeaterDuty" => Duty(Steady(p, 0).Tanks[reading.Tank].Power, heater!),
            "loadHeaterDuty" => reading.Tank == UsableReading.OfBooster
                ? Duty(Steady(p, reading.Racks).BoosterPower, heater!)
                : Duty(Steady(p, reading.Racks).Tanks[reading.Tank].Power, heater!),
            "fillTime" => tank!.Closes / tank.FillFlow,
            "rinseVolumePerRack" => p.Rinse!.Running.Flow * Duties.SecondsOfRinse(p) / LiquidWater.Density,
            "rinsePressure" => p.Rinse!.Running.Pressure,
            "supplyTemperature" => p.SupplyTemperature,
            "roomTemperature" => p.RoomTemperature,
            "wareTemperature" => p.Ware.In,
            "conveyorSpeed" => Duties.Speed(p),
            "cutOut" => heater!.SetPoint - heater.SensorOffset + (heater.Band / 2),
            "cutIn" => heater!.SetPoint - heater.SensorOffset - (heater.Band / 2),
            "tankTemperature" => Steady(p, reading.Racks).Tanks[reading.Tank].Celsius,
            "finalRinseTemperature" => Steady(p, reading.Racks).Booster,
            "heaterPower" => heater!.HeatAt(heater.SetPoint),
            _ => throw new ArgumentException($"{id} is not estimated by the model.", nameof(reading)),
        };
    }

    /// <summary>In the unit of the reading's kind.</summary>
    public static Amount InUnit(UsableReading reading, double value)
    {
        var unit = reading.Kind.Unit;
        return new Amount(unit.FromSI(unit.Dimension == Dimension.Temperature ? Units.Celsius.ToSI(value) : value), unit);
    }

    /// <summary>Steady state, remembered until machine or rate is another.</summary>
    public SteadySolution Steady(ModelParameters p, double racks)
    {
        if (!ReferenceEquals(p, solved) || racks != solvedRacks)
        {
            solver.Solve(p, racks);
            solved = p;
            solvedRacks = racks;
        }

        return solver.Solution;
    }

    private static double Duty(double power, HeaterParameters heater) => power / heater.HeatAt(heater.SetPoint - heater.SensorOffset);

    // ∫ C dT / (what the heater gives less what is lost), with the water at the level the float leaves.
    private static double ChangeTime(ModelParameters p, TankParameters tank, UsableReading reading, bool heated)
    {
        var room = new RoomAir(p.RoomTemperature, p.RoomHumidity);
        var mass = tank.FillFlow > 0 ? tank.Closes : tank.Full;
        var capacity = (mass * LiquidWater.HeatCapacity) + tank.Metal;
        double step = (reading.To - reading.From) / Parts,
            sum = 0;
        for (var i = 0; i <= Parts; i++)
        {
            var celsius = reading.From + (i * step);
            var vent = VentExchange.Of(p.AirFactor * tank.AirIdle, p.AirApproach, celsius, room).Heat;
            var gain = (heated ? tank.Heater!.HeatAt(celsius) : 0) - (tank.Shell * (celsius - p.RoomTemperature)) - vent;
            if (gain * step <= 0)
            {
                return Never;
            }

            sum += (i is 0 or Parts ? 1 : 2 + (2 * (i % 2))) / gain;
        }

        return capacity * step / 3 * sum;
    }
}
