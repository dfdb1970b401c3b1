using System.Runtime.CompilerServices;
using System.Runtime.InteropServices;
using Rinsewright.Engine.Records;

namespace Rinsewright.Engine.Sanitization;

/// <summary>
/// Splits a trace of a ware's surface into passes through the machine. One sweep over the samples finds the turning points (a low, then a rise,
/// then a fall); rises that only water can make are passes, slow ones are drift; falls too quick for air stay inside one pass.
/// </summary>
public static class PassFinder
{
    /// <summary>Where one pass lies.</summary>
    /// <param name="First">First sample.</param>
    /// <param name="Peak">Hottest sample.</param>
    /// <param name="Last">Last sample.</param>
    [StructLayout(LayoutKind.Auto)]
    public readonly record struct Span(int First, int Peak, int Last);

    /// <summary>What a sweep found.</summary>
    /// <param name="Passes">Passes in time order.</param>
    /// <param name="Drifts">Rises too slow to be water.</param>
    public sealed record Found(IReadOnlyList<Span> Passes, int Drifts);

    /// <summary>Finds the passes of a trace in a temperature unit.</summary>
    /// <param name="trace">Surface trace.</param>
    /// <param name="doseFloor">°C below which no dose is counted: a pass ends there.</param>
    /// <param name="rules">Working values.</param>
    public static Found Find(Trace trace, double doseFloor, PassRules rules)
    {
        var legs = Legs(trace, rules);
        var view = new TraceView(trace);
        var merged = Merge(view, legs, new Scale(trace.Unit), rules);
        var passes = new List<Span>();
        var drifts = 0;
        var scale = new Scale(trace.Unit);
        for (var n = 0; n < merged.Count; n++)
        {
            var leg = merged[n];
            if (scale.ToCelsius(view.ValueAt(leg.Peak)) < rules.WarmPeak)
            {
                continue;
            }

            var (slope, steepest) = Steepest(view, leg.Low, leg.Peak, scale);
            if (slope < rules.WaterSlope)
            {
                drifts++;
                continue;
            }

            var next = n + 1 < merged.Count ? merged[n + 1].Low : trace.Count - 1;
            passes.Add(new Span(StartOf(view, leg.Low, steepest, scale), leg.Peak, EndOf(view, leg.Peak, next, doseFloor, scale, rules)));
        }

        return new Found(passes, drifts);
    }

    // Turning points: the low before each rise of at least Reversal and the peak before each fall of at least Reversal.
    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    private static List<Leg> Legs(Trace trace, PassRules rules)
    {
        const int Block = 4096;
        var legs = new List<Leg>();
        if (trace.Count == 0)
        {
            return legs;
        }

        var scale = new Scale(trace.Unit);
        var reversal = scale.DifferenceFromCelsius(rules.Reversal);
        var samples = new double[Block];
        int low = 0,
            peak = 0;
        double lowest = trace.ValueAt(0),
            highest = lowest;
        var rising = false;
        for (var start = 0; start < trace.Count; start += Block)
        {
            var n = Math.Min(Block, trace.Count - start);
            trace.CopyTo(start, samples.AsSpan(0, n));
            for (var k = 0; k < n; k++)
            {
                var v = samples[k];
                if (rising)
                {
                    if (v > highest)
                    {
                        (highest, peak) = (v, start + k);
                    }
                    else if (v <= highest - reversal)
                    {
                        legs.Add(new Leg(low, peak));
                        rising = false;
                        (lowest, low) = (v, start + k);
                    }
                }
                else if (v < lowest)
                {
                    (lowest, low) = (v, start + k);
                }
                else if (v >= lowest + reversal)
                {
                    rising = true;
                    (highest, peak) = (v, start + k);
                }
            }
        }

        if (rising)
        {
            legs.Add(new Leg(low, peak));
        }

        return legs;
    }

    // Legs parted by a fall too quick for air, and small late rises, belong to one pass.
    private static List<Leg> Merge(TraceView view, List<Leg> legs, Scale scale, PassRules rules)
    {
        var rise = scale.DifferenceFromCelsius(rules.Rise);
        var merged = new List<Leg>();
        foreach (var leg in legs)
        {
            if (merged.Count > 0)
            {
                var last = merged[^1];
                var quick = FallsQuickly(view, last.Latest, leg.Low, scale, rules.QuickFall);
                if (quick)
                {
                    var peak = view.ValueAt(leg.Peak) > view.ValueAt(last.Peak) ? leg.Peak : last.Peak;
                    merged[^1] = new Leg(last.Low, peak, leg.Peak);
                    continue;
                }
            }

            merged.Add(leg);
        }

        return [.. merged.Where(l => view.ValueAt(l.Peak) - view.ValueAt(l.Low) >= rise)];
    }

    // Whether a sample within 1 °C of the peak lies less than QuickFall before the low: on a plateau the hottest sample may come early.
    private static bool FallsQuickly(TraceView view, int peak, int low, Scale scale, double quickFall)
    {
        var near = view.ValueAt(peak) - scale.DifferenceFromCelsius(1);
        var at = view.SecondsAt(low);
        for (var i = low; i >= peak && at - view.SecondsAt(i) < quickFall; i--)
        {
            if (view.ValueAt(i) >= near)
            {
                return true;
            }
        }

        return false;
    }

    // Steepest rise, °C/s, over at least two seconds, and the sample where it begins.
    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    private static (double Slope, int Index) Steepest(TraceView view, int low, int peak, Scale scale)
    {
        double best = 0;
        var index = low;
        var j = low;
        for (var i = low + 1; i <= peak; i++)
        {
            while (j + 1 < i && view.SecondsAt(i) - view.SecondsAt(j + 1) >= 2)
            {
                j++;
            }

            var dt = view.SecondsAt(i) - view.SecondsAt(j);
            if (dt <= 0)
            {
                continue;
            }

            var slope = (scale.ToCelsius(view.ValueAt(i)) - scale.ToCelsius(view.ValueAt(j))) / Math.Max(dt, 2);
            if (slope > best)
            {
                (best, index) = (slope, j);
            }
        }

        return (best, index);
    }

    // Back from the steepest rise while the surface was still climbing: the ware enters the machine.
    private static int StartOf(TraceView view, int low, int steepest, Scale scale)
    {
        var i = steepest;
        while (i > low)
        {
            var back = i - 1;
            while (back > low && view.SecondsAt(i) - view.SecondsAt(back) < 3)
            {
                back--;
            }

            if (scale.ToCelsius(view.ValueAt(i)) - scale.ToCelsius(view.ValueAt(back)) < 0.5)
            {
                break;
            }

            i--;
        }

        return i;
    }

    private static int EndOf(TraceView view, int peak, int next, double doseFloor, Scale scale, PassRules rules)
    {
        var peakValue = scale.ToCelsius(view.ValueAt(peak));
        // A pass that never reached the dose floor ends when it has clearly turned down.
        var end = peakValue > doseFloor ? Math.Min(doseFloor, peakValue - rules.Reversal) : peakValue - rules.Reversal;
        var at = view.SecondsAt(peak);
        var i = peak;
        while (i < next && view.SecondsAt(i + 1) - at <= rules.Cooling && scale.ToCelsius(view.ValueAt(i)) >= end)
        {
            i++;
        }

        return i;
    }

    [StructLayout(LayoutKind.Auto)]
    private readonly record struct Leg(int Low, int Peak, int Latest)
    {
        public Leg(int low, int peak)
            : this(low, peak, peak) { }
    }
}
