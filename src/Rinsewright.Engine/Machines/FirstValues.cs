using Rinsewright.Engine.Heat;
using Rinsewright.Engine.Water;

namespace Rinsewright.Engine.Machines;

/// <summary>Where the least squares begins: one figure from one reading, closed form, and which readings are there to tell which figure.</summary>
internal static class FirstValues
{
    // The figure a kind of reading is there to tell.
    private static string? FigureOf(UsableReading reading, string part) =>
        reading.Kind.Id switch
        {
            "heatUpTime" or "heaterPower" => $"{part}.heater",
            "cutOut" or "cutIn" => $"{part}.setPoint",
            "idleHeaterDuty" or "coolingTime" => $"{part}.shellLoss",
            "fillTime" => $"{part}.fill",
            "rinseVolumePerRack" => "finalRinse.flow",
            "rinsePressure" => "finalRinse.pressure",
            "supplyTemperature" => "supply.water",
            "roomTemperature" => "supply.room",
            "wareTemperature" => "ware.in",
            "conveyorSpeed" => "conveyor.speed",
            _ => null,
        };

    /// <summary>Figures that readings are there to tell, by place.</summary>
    public static List<int> Told(IReadOnlyList<UncertainFigure> figures, IReadOnlyList<UsableReading> readings, ModelParameters p)
    {
        List<int> told = [];
        for (var j = 0; j < figures.Count; j++)
        {
            if (readings.Any(r => FigureOf(r, Part(p, r)) == figures[j].Id) && figures[j].Scatter.Fault > figures[j].Scatter.Typical)
            {
                told.Add(j);
            }
        }

        return told;
    }

    /// <summary>How far a figure is off by its closed form; null where it has none.</summary>
    public static double? Of(UncertainFigure figure, ModelParameters p, IReadOnlyList<UsableReading> readings)
    {
        foreach (var reading in readings)
        {
            if (FigureOf(reading, Part(p, reading)) == figure.Id && Off(p, reading, readings) is { } off && double.IsFinite(off))
            {
                return off;
            }
        }

        return null;
    }

    private static string Part(ModelParameters p, UsableReading reading) => reading.Tank >= 0 ? p.Tanks[reading.Tank].Id : "booster";

    private static double? Off(ModelParameters p, UsableReading reading, IReadOnlyList<UsableReading> readings)
    {
        switch (reading.Kind.Id)
        {
            case "heatUpTime":
                var tank = p.Tanks[reading.Tank];
                var middle = (reading.From + reading.To) / 2;
                var vent = VentExchange.Of(tank.AirIdle, p.AirApproach, middle, new RoomAir(p.RoomTemperature, p.RoomHumidity)).Heat;
                var body = new LumpedHeat((tank.Closes * LiquidWater.HeatCapacity) + tank.Metal, tank.Shell, p.RoomTemperature);
                return Log(FromReadings.HeaterPower(body, reading.From, reading.To, reading.Value, vent), tank.Heater!.HeatAt(middle));
            case "heaterPower":
                var heater = reading.Tank >= 0 ? p.Tanks[reading.Tank].Heater! : p.Booster!.Heater;
                return Log(reading.Value, heater.HeatAt(heater.SetPoint));
            case "fillTime":
                return Log(FromReadings.FillFlow(p.Tanks[reading.Tank].Closes, reading.Value), p.Tanks[reading.Tank].FillFlow);
            case "rinsePressure":
                return Log(reading.Value, p.Rinse!.Regulator);
            case "rinseVolumePerRack":
                var pressure = readings.FirstOrDefault(r => r.Kind == ReadingKinds.RinsePressure)?.Value ?? p.Rinse!.Running.Pressure;
                var coefficient = FromReadings.NozzleCoefficient(reading.Value * LiquidWater.Density, Duties.SecondsOfRinse(p), pressure);
                return Log(coefficient, p.Rinse!.Circuit.Coefficient);
            case "supplyTemperature":
                return reading.Value - p.SupplyTemperature;
            case "roomTemperature":
                return reading.Value - p.RoomTemperature;
            case "wareTemperature":
                return reading.Value - p.Ware.In;
            case "conveyorSpeed":
                return Log(reading.Value, p.Travel.Speed);
            default:
                return null;
        }
    }

    private static double? Log(double? read, double written) => read is > 0 && written > 0 ? Math.Log(read.Value / written) : null;
}
