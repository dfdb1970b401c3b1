using Rinsewright.Engine.Heat;
using Rinsewright.Engine.Quantities;
using Rinsewright.Engine.Records;

namespace Rinsewright.Engine.Sanitization;

/// <summary>
/// Heat dose of a surface: a rate that grows exponentially with the surface temperature, integrated exactly over the piecewise-linear trace,
/// with bounds for what the samples and the instrument leave open. Equations S1 to S5 of this folder's README.
/// </summary>
public sealed class HeatDose
{
    private const int Block = 1024;
    private readonly DoseRate rate;

    private HeatDose(DoseRate rate) => this.rate = rate;

    /// <summary>Rate at the cap, per second; infinite where there is no cap.</summary>
    public double CapRate => rate.AtCap;

    /// <summary>
    /// Heat unit equivalents (HUE). Equation S1, [hue-history-2009]: rate = 3.03438·10⁻¹⁷ · exp(0.265972 · T), T the ware surface in °F, per second.
    /// The source gives no further credit above 165 °F; whether anything below 143 °F counts it does not say, so the floor is a named option.
    /// </summary>
    public static HeatDose HeatUnits(HeatUnitOptions options) =>
        new(DoseRate.HeatUnits(options.Cap?.InFahrenheit, options.Floor?.InFahrenheit));

    /// <summary>
    /// A0, equivalent seconds at 80 °C. Equation S3, [iso-15883-1] Annex B: rate = 10^((T − 80)/10), T in °C. Practice counts from 65 °C up
    /// ([a0-concept]); <paramref name="floor"/> null counts everything.
    /// </summary>
    public static HeatDose A0(Temperature? floor) => new(DoseRate.A0(floor?.InFahrenheit));

    /// <summary>Rate at a surface temperature, per second.</summary>
    public double RateAt(Temperature surface) => rate.At(surface.InFahrenheit);

    /// <summary>Dose over samples <paramref name="first"/> to <paramref name="last"/> of a trace of the ware's surface.</summary>
    /// <param name="trace">Trace in a temperature unit.</param>
    /// <param name="first">Index of the first sample.</param>
    /// <param name="last">Index of the last sample.</param>
    /// <param name="uncertainty">Half-width ± of the instrument.</param>
    /// <returns>Value over what was sampled; <c>Low</c> and <c>High</c> as equations S4 and S5 say.</returns>
    /// <remarks>Neighbours outside the window still bound its edges, so splitting a window changes nothing.</remarks>
    public Bounded Over(Trace trace, int first, int last, TemperatureDifference uncertainty)
    {
        double value = 0,
            low = 0,
            high = 0;
        Walk(
            trace,
            first,
            last,
            uncertainty.InFahrenheit,
            (_, v, l, h) =>
            {
                value += v;
                low += l;
                high += h;
            }
        );
        return new Bounded(value, low, high);
    }

    /// <summary>Dose gathered up to each sample of a window; the first entry is 0.</summary>
    public double[] Gathered(Trace trace, int first, int last)
    {
        var gathered = new double[last - first + 1];
        Walk(trace, first, last, 0, (i, v, _, _) => gathered[i - first + 1] = gathered[i - first] + v);
        return gathered;
    }

    /// <summary>Dose of one linear stretch. Equation S2.</summary>
    /// <param name="from">Surface at its start.</param>
    /// <param name="to">Surface at its end.</param>
    /// <param name="seconds">Its length in s, not negative.</param>
    public double Over(Temperature from, Temperature to, double seconds) => rate.Over(from.InFahrenheit, to.InFahrenheit, seconds);

    private void Walk(Trace trace, int first, int last, double uncertaintyF, Action<int, double, double, double> interval)
    {
        if (trace.Unit.Dimension != Dimension.Temperature)
        {
            throw new ArgumentException($"A heat dose needs temperatures, not {trace.Unit.Ucum}.", nameof(trace));
        }

        if (first < 0 || last >= trace.Count || last < first)
        {
            throw new ArgumentOutOfRangeException(nameof(first), first, $"A window inside 0 to {trace.Count - 1}.");
        }

        var holes = new Holes(trace.Marks, first);
        var scale = new Scale(trace.Unit);
        // One exponential a sample: exp(k(T ± u)) is exp(kT) times a constant.
        double colder = Math.Exp(-rate.Exponent * uncertaintyF),
            hotter = 1 / colder;
        var most = Math.Min(Block, last - first) + 3;
        Span<double> seconds = stackalloc double[most];
        Span<double> samples = stackalloc double[most];
        Span<double> rates = stackalloc double[most];
        for (var start = first; start < last; start += Block)
        {
            var end = Math.Min(start + Block, last);
            int before = Math.Max(start - 1, 0),
                after = Math.Min(end + 1, trace.Count - 1);
            var n = after - before + 1;
            trace.CopyTo(before, seconds[..n], samples[..n]);
            for (var k = 0; k < n; k++)
            {
                samples[k] = scale.ToFahrenheit(samples[k]);
                rates[k] = samples[k] + uncertaintyF < rate.Floor ? 0 : rate.Uncapped(samples[k]);
            }

            for (var i = start; i < end; i++)
            {
                var k = i - before;
                var dt = seconds[k + 1] - seconds[k];
                double a = samples[k],
                    b = samples[k + 1];
                // Neighbours across a hole say nothing about this interval, but they only widen the upper bound.
                int from = Math.Max(k - 1, 0),
                    to = Math.Min(k + 2, n - 1);
                var hottest = Math.Max(Math.Max(a, b), Math.Max(samples[from], samples[to]));
                if (hottest + uncertaintyF < rate.Floor && !holes.Any)
                {
                    interval(i, 0, 0, 0);
                }
                else if (holes.Between(i))
                {
                    interval(i, 0, 0, dt * (double.IsFinite(CapRate) ? CapRate : rate.At(hottest + uncertaintyF)));
                }
                else
                {
                    var highest = Math.Max(Math.Max(rates[k], rates[k + 1]), Math.Max(rates[from], rates[to]));
                    var low = Clip(Math.Min(a, b) - uncertaintyF, Math.Min(rates[k], rates[k + 1]) * colder);
                    interval(i, rate.Over(a, b, dt), dt * low, dt * Clip(hottest + uncertaintyF, highest * hotter));
                }
            }
        }
    }

    private double Clip(double surfaceF, double unclipped) =>
        surfaceF < rate.Floor ? 0
        : surfaceF >= rate.Cap ? CapRate
        : unclipped;
}
