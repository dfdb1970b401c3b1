using Rinsewright.Engine.Quantities;
using Rinsewright.Engine.Records;

namespace Rinsewright.Engine.Sanitization;

/// <summary>Longest unbroken time at or above a temperature, on a piecewise-linear trace. Equation S6.</summary>
internal static class HoldTime
{
    /// <summary>Longest hold in s over a window; low and high as the dose bounds are made (colder of the two, hottest of the four neighbours, ± instrument).</summary>
    public static Bounded Longest(Trace trace, int first, int last, Amount atLeast, TemperatureDifference uncertainty)
    {
        var scale = new Scale(trace.Unit);
        // Compared in the logged unit where the limit is printed in it, so that 77.0 °C meets 77 °C.
        double Logged(int i) =>
            trace.Unit == atLeast.Unit ? trace.ValueAt(i) : new Amount(trace.ValueAt(i), trace.Unit).In(atLeast.Unit).Value;
        var step = atLeast.Unit.ToSI(1) - atLeast.Unit.ToSI(0);
        var u = uncertainty.InCelsius / step;
        var limit = atLeast.Value;
        var holes = new Holes(trace.Marks, first);
        double value = 0,
            low = 0,
            high = 0,
            runValue = 0,
            runLow = 0,
            runHigh = 0;
        for (var i = first; i < last; i++)
        {
            var dt = trace.SecondsAt(i + 1) - trace.SecondsAt(i);
            if (holes.Between(i))
            {
                runValue = runLow = 0;
                runHigh += dt;
                high = Math.Max(high, runHigh);
                continue;
            }

            double a = Logged(i),
                b = Logged(i + 1);
            var hottest = Math.Max(Math.Max(a, b), Math.Max(Logged(Math.Max(i - 1, 0)), Logged(Math.Min(i + 2, trace.Count - 1))));
            runLow = Math.Min(a, b) - u >= limit ? runLow + dt : 0;
            runHigh = hottest + u >= limit ? runHigh + dt : 0;
            var share = Share(a, b, limit);
            // A run that starts inside the interval is its rising part; one that ends there is its falling part.
            value = Math.Max(value, runValue + (a >= limit ? share * dt : 0));
            runValue = b >= limit ? (a >= limit ? runValue + dt : share * dt) : 0;
            value = Math.Max(value, runValue);
            low = Math.Max(low, runLow);
            high = Math.Max(high, runHigh);
        }

        return new Bounded(value, low, high);
    }

    private static double Share(double a, double b, double limit) =>
        a >= limit && b >= limit ? 1
        : a < limit && b < limit ? 0
        : (Math.Max(a, b) - limit) / Math.Abs(a - b);
}
