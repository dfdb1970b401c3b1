using Rinsewright.Engine.Quantities;

namespace Rinsewright.Engine.Machines;

/// <summary>Writes the course of a run down, every so many seconds.</summary>
internal sealed class Recorder
{
    private readonly double every;
    private readonly List<double> seconds = [];
    private readonly List<(string Id, Unit Unit, Func<Simulation, double> Read, List<double> Values)> lines = [];
    private double next;

    public Recorder(ModelParameters p, double every)
    {
        this.every = every;
        for (var i = 0; i < p.Tanks.Length; i++)
        {
            var at = i;
            var id = p.Tanks[i].Id;
            Line($"{id}TankTemperature", Units.Fahrenheit, s => Fahrenheit(s.Tanks[at].Celsius));
            Line($"{id}TankLevel", Units.Percent, s => 100 * s.Tanks[at].Mass / s.Parameters.Tanks[at].Full);
            Line($"{id}HeaterPower", Units.Kilowatt, s => s.Tanks[at].Power / 1000);
            Line($"{id}ArmPressure", Units.Psi, s => Units.Psi.FromSI(s.Tanks[at].Spray.ArmPressure));
            Line($"{id}Detergent", Units.GramPerLitre, s => s.Share(at, Solute.Detergent) * Water.LiquidWater.Density);
        }

        if (p.Rinse is not null)
        {
            Line("finalRinseTemperature", Units.Fahrenheit, s => Fahrenheit(s.Booster));
            Line("finalRinseFlow", Units.GallonPerMinute, s => 60 * Readout.Gallons(s.RinseFlow));
            Line("boosterPower", Units.Kilowatt, s => s.BoosterPower / 1000);
        }
    }

    /// <summary>Takes the state after a step, when it is time.</summary>
    public void Take(Simulation s)
    {
        if (s.Time < next - 1e-9)
        {
            return;
        }

        next += every;
        seconds.Add(s.Time);
        foreach (var line in lines)
        {
            line.Values.Add(line.Read(s));
        }
    }

    /// <summary>What was written.</summary>
    public Series Series() => new(seconds, [.. lines.Select(l => new SeriesLine(l.Id, l.Unit, l.Values))]);

    private void Line(string id, Unit unit, Func<Simulation, double> read) => lines.Add((id, unit, read, []));

    private static double Fahrenheit(double celsius) => (celsius * 1.8) + 32;
}
