using Rinsewright.Engine.Quantities;
using Rinsewright.Engine.Records;

namespace Rinsewright.Engine.Tests.Sanitization;

/// <summary>
/// Invented surface traces: a plate follows what surrounds it with a time constant (first-order lag), sampled at a fixed interval. Values are made up for
/// the tests; they are no measurements.
/// </summary>
internal sealed class Surface(double intervalSeconds = 1, double noiseC = 0, int seed = 1)
{
    private readonly List<double> seconds = [];
    private readonly List<double> celsius = [];
    private readonly Random random = new(seed);
    private double now;
    private double next;
    private double plate = 24;

    /// <summary>Time in water or air of a temperature: <paramref name="tau"/> s is the plate's time constant there.</summary>
    public Surface In(double aroundC, double tau, double lasting)
    {
        const double Step = 0.1;
        for (double t = 0; t < lasting - 1e-9; t += Step)
        {
            if (now >= next - 1e-9)
            {
                seconds.Add(Math.Round(next, 3));
                celsius.Add(Math.Round(plate + (noiseC * ((2 * random.NextDouble()) - 1)), 2));
                next += intervalSeconds;
            }

            plate += (aroundC - plate) * (1 - Math.Exp(-Step / tau));
            now += Step;
        }

        return this;
    }

    /// <summary>Straight to a temperature, for a dip or a jump.</summary>
    public Surface Counter(double lasting) => In(22, 240, lasting);

    /// <summary>A healthy two-tank conveyor: wash 68 °C, pumped rinse 73 °C, final rinse 84 °C, then the unload end.</summary>
    public Surface TwoTankPass(double finalC = 84) =>
        In(68, 9, 18).In(60, 30, 4).In(73, 7, 14).In(66, 30, 3).In(finalC, 5, 9).In(40, 90, 25);

    /// <summary>A door machine: wash 67 °C for 45 s, dwell, final rinse 12 s, door opened.</summary>
    public Surface DoorCycle(double finalC = 84) => In(67, 12, 45).In(62, 40, 5).In(finalC, 6, 12).In(30, 120, 20);

    public Trace Trace(Unit? unit = null)
    {
        unit ??= Units.Celsius;
        var values = celsius.Select(c => unit == Units.Celsius ? c : Math.Round(unit.FromSI(Units.Celsius.ToSI(c)), 2)).ToArray();
        return TraceBuilder.From("plate", unit, seconds.ToArray(), values, new DateTime(2031, 4, 8, 21, 0, 0));
    }
}
