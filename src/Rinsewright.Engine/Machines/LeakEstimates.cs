using Rinsewright.Engine.Heat;
using Rinsewright.Engine.Quantities;
using Rinsewright.Engine.Water;

namespace Rinsewright.Engine.Machines;

/// <summary>Openings of leaks from the fall of a level or from how much the fill runs, closed form. Equations K3 and K4. A description holds no leak, so it stays beside the machine.</summary>
internal sealed class LeakEstimates
{
    private readonly SortedReadings sorted;
    private readonly List<(int Tank, double Opening, double Sigma, IReadOnlyList<int> Places)> estimates = [];

    private LeakEstimates(SortedReadings sorted) => this.sorted = sorted;

    /// <summary>The machine with the leaks that are told.</summary>
    public ModelParameters Applied { get; private set; } = null!;

    public static LeakEstimates Of(SortedReadings sorted)
    {
        var leaks = new LeakEstimates(sorted) { Applied = sorted.Parameters };
        for (var i = 0; i < sorted.Parameters.Tanks.Length; i++)
        {
            leaks.Estimate(i);
        }

        return leaks;
    }

    /// <summary>Leaks as figures, with the quantile of their intervals.</summary>
    public IEnumerable<CalibratedFigure> Figures(double quantile) =>
        estimates.Select(e => new CalibratedFigure(
            $"{sorted.Parameters.Tanks[e.Tank].Id}.leak",
            null,
            Area(Math.Max(0, e.Opening)),
            Area(Math.Max(0, e.Opening - (quantile * e.Sigma))),
            Area(Math.Max(0, e.Opening + (quantile * e.Sigma))),
            Told(e.Opening, e.Sigma),
            e.Places
        ));

    /// <summary>Tanks whose leak nobody has read.</summary>
    public IEnumerable<UnknownFigure> Unknown()
    {
        for (var i = 0; i < sorted.Parameters.Tanks.Length; i++)
        {
            if (!estimates.Exists(e => e.Tank == i))
            {
                var id = sorted.Parameters.Tanks[i].Id;
                yield return new UnknownFigure($"{id}.leak", ReadingKinds.LevelDrop.Id, id, null);
            }
        }
    }

    // An opening is told when it is surely there.
    private static bool Told(double opening, double sigma) => opening > 2 * sigma;

    private static Amount Area(double squareMetres) => new Amount(squareMetres, Units.SquareMetre).In(Units.SquareCentimetre);

    private void Estimate(int tank)
    {
        var p = sorted.Parameters;
        double weights = 0,
            sum = 0;
        List<int> places = [];
        foreach (var reading in sorted.OfLeaks)
        {
            if (reading.Tank != tank)
            {
                continue;
            }

            var (opening, sigma) = reading.Kind == ReadingKinds.LevelDrop ? FromLevel(p.Tanks[tank], reading) : FromFill(p, tank, reading);
            weights += 1 / (sigma * sigma);
            sum += opening / (sigma * sigma);
            places.AddRange(reading.Places);
        }

        if (places.Count == 0)
        {
            return;
        }

        var (best, left) = (sum / weights, 1 / Math.Sqrt(weights));
        estimates.Add((tank, best, left, places));
        if (Told(best, left))
        {
            Applied = Applied.WithTank(tank, t => t with { Leak = best });
        }
    }

    private static (double Opening, double Sigma) FromLevel(TankParameters tank, UsableReading reading)
    {
        var depth = tank.Full / (LiquidWater.Density * tank.Surface);
        var per =
            FromReadings.LeakOpening(tank.Surface, depth, depth - Math.Max(reading.Value, 1e-6), reading.Over)!.Value
            / Math.Max(reading.Value, 1e-6);
        return (per * reading.Value, per * reading.Sigma);
    }

    private static (double Opening, double Sigma) FromFill(ModelParameters p, int tank, UsableReading reading)
    {
        var t = p.Tanks[tank];
        var celsius = t.Heater?.SetPoint ?? p.SupplyTemperature;
        var evaporation = VentExchange
            .Of(p.AirFactor * t.AirIdle, p.AirApproach, celsius, new RoomAir(p.RoomTemperature, p.RoomHumidity))
            .Evaporation;
        var perOpening = Outlet.Of(1, t.Surface).FlowAt((t.Opens + t.Closes) / 2);
        return (
            FromReadings.LeakFromFillDuty(reading.Value, t.FillFlow, evaporation) / perOpening,
            reading.Sigma * t.FillFlow / perOpening
        );
    }
}
