using Rinsewright.Engine.Quantities;
using Rinsewright.Engine.Records;

namespace Rinsewright.Engine.Sanitization;

/// <summary>
/// Finds the heating legs inside one pass: each spray zone lifts the surface towards its own water, and between zones the surface stops rising or
/// dips. Named only where their number fits the machine type; otherwise they stay numbered.
/// </summary>
internal static class ZoneFinder
{
    // °C; a dip or a lift smaller than this is noise or a plate's own swing.
    private const double Step = 0.8;

    // °C/s; slower is a surface close to its water, faster is a new, hotter spray.
    private const double Calm = 0.15;
    private const double Lively = 0.45;

    public static IReadOnlyList<ZoneSeen> Find(Trace trace, PassFinder.Span span, MachineType machine)
    {
        var legs = Legs(trace, span);
        var scale = new Scale(trace.Unit);
        var names = Names(machine, legs.ConvertAll(l => scale.ToCelsius(trace.ValueAt(l.Peak))));
        return
        [
            .. legs.Select(
                (l, n) =>
                    new ZoneSeen(
                        trace.SecondsAt(l.Start),
                        trace.SecondsAt(l.Peak),
                        new Amount(trace.ValueAt(l.Peak), trace.Unit),
                        names?[n]
                    )
            ),
        ];
    }

    private static List<(int Start, int Peak)> Legs(Trace trace, PassFinder.Span span)
    {
        var scale = new Scale(trace.Unit);
        double C(int i) => scale.ToCelsius(trace.ValueAt(i));
        var legs = new List<(int Start, int Peak)>();
        int start = span.First,
            peak = span.First,
            low = span.First;
        bool rising = false,
            calm = false;
        for (var i = span.First + 1; i <= span.Last; i++)
        {
            if (rising)
            {
                var slope = Slope(trace, C, i, span.First);
                if (C(i) > C(peak))
                {
                    // A lift after a calm stretch is the next zone even where nothing dipped.
                    if (calm && slope > Lively && C(i) - C(peak) > Step / 2)
                    {
                        legs.Add((start, peak));
                        (start, calm) = (peak, false);
                    }

                    peak = i;
                }
                else if (C(i) < C(peak) - Step)
                {
                    legs.Add((start, peak));
                    (rising, low, calm) = (false, i, false);
                    continue;
                }

                calm = calm ? slope < Lively : slope < Calm && C(i) - C(start) > 2 * Step;
            }
            else if (C(i) < C(low))
            {
                low = i;
            }
            else if (C(i) > C(low) + Step)
            {
                (rising, start, peak) = (true, low, i);
            }
        }

        if (rising && peak > start)
        {
            legs.Add((start, peak));
        }

        return legs;
    }

    private static double Slope(Trace trace, Func<int, double> celsius, int i, int first)
    {
        var back = i - 1;
        while (back > first && trace.SecondsAt(i) - trace.SecondsAt(back) < 2)
        {
            back--;
        }

        var dt = trace.SecondsAt(i) - trace.SecondsAt(back);
        return dt > 0 ? (celsius(i) - celsius(back)) / dt : 0;
    }

    // A surface that left the first zone this cool came from a prewash, not from a wash (50 °C: ours; washes run at 66 °C and more). One leg of the
    // others is then missing, and which one nobody can tell: the zones stay numbered.
    private const double CoolestWash = 50;

    private static string[]? Names(MachineType machine, List<double> peaks) =>
        (machine, peaks.Count) switch
        {
            (MachineType.MultitankConveyor, 3) when peaks[0] < CoolestWash => null,
            (not MachineType.MultitankConveyor, 2) when peaks[0] < CoolestWash => null,
            (MachineType.MultitankConveyor, 3) => ["zone.wash", "zone.pumped-rinse", "zone.final-rinse"],
            (MachineType.MultitankConveyor, 4) => ["zone.prewash", "zone.wash", "zone.pumped-rinse", "zone.final-rinse"],
            (not MachineType.MultitankConveyor, 2) => ["zone.wash", "zone.final-rinse"],
            _ => null,
        };
}
