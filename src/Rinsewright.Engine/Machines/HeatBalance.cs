namespace Rinsewright.Engine.Machines;

/// <summary>Whether the heat needed for a running temperature is there at all. Equation K15.</summary>
internal static class HeatBalance
{
    // More than any heater, W: the tank is held where it was read, and what that takes is read off.
    private const double Plenty = 1e7;

    /// <summary>Readings of running temperatures that the heater of the plate cannot hold.</summary>
    public static List<Contradiction> Contradictions(ModelParameters p, IReadOnlyList<UsableReading> readings)
    {
        List<Contradiction> found = [];
        var solver = new SteadySolver(p.Tanks.Length);
        foreach (var reading in readings)
        {
            if (reading.Kind != ReadingKinds.TankTemperature || p.Tanks[reading.Tank].Heater is not { } heater)
            {
                continue;
            }

            var needed = Needed(solver, p, reading, heater, reading.Value);
            var duty = readings.FirstOrDefault(r =>
                r.Kind == ReadingKinds.LoadHeaterDuty && r.Tank == reading.Tank && r.Racks == reading.Racks
            );
            var power = heater.HeatAt(reading.Value);
            // A tank near balance takes hardly any heat, and a degree changes that manyfold: the least the readings allow must be too much as well.
            var least = Needed(solver, p, reading, heater, reading.Value - (2 * reading.Sigma));
            var most = Math.Min(1, (duty?.Value ?? 1) + (2 * (duty?.Sigma ?? 0)));
            if (FromReadings.Contradict(needed, power, duty?.Value ?? 1) && FromReadings.Contradict(least, power, most))
            {
                List<int> places = [.. reading.Places, .. duty?.Places ?? []];
                found.Add(new Contradiction(ContradictionKind.HeatBalance, places, needed / (power * (duty?.Value ?? 1))));
            }
        }

        return found;
    }

    // Heat that holds the tank where it was read, W.
    private static double Needed(SteadySolver solver, ModelParameters p, UsableReading reading, HeaterParameters heater, double celsius)
    {
        var held = p.WithTank(
            reading.Tank,
            t => t with { Heater = heater with { Power = Plenty, Coil = 0, SensorOffset = 0, SetPoint = celsius } }
        );
        return solver.Solve(held, reading.Racks).Tanks[reading.Tank].Power;
    }
}
