using System.Diagnostics;
using System.Globalization;
using System.Text;
using Rinsewright.Engine.Water;

namespace Rinsewright.Benchmarks.Water;

/// <summary>The carbonate equilibrium of a million random waters, how well each closes, and the same work with SciPy on a share of them. In one run, so that the ratio travels.</summary>
internal static class CarbonateBenchmarks
{
    private const int Count = 1_000_000;
    private const int ForScript = 20_000;
    private const string Script = "bench/python/carbonate_baseline.py";

    public static async Task<string> RunAsync(int repeats)
    {
        var machine = await Machine.AskAsync();
        var (waters, refused) = Invent();
        var found = new (double PH, double Fallen)[waters.Length];
        List<double> times = [];
        for (var repeat = -1; repeat < repeats; repeat++)
        {
            var before = Processor();
            Solve(waters, found);
            if (repeat >= 0)
            {
                times.Add(Processor() - before);
            }
        }

        times.Sort();
        var each = times[times.Count / 2] / waters.Length;
        var (gap, saturation, open) = Closes(waters, found);
        var page = new StringBuilder();
        void Line(FormattableString text) => page.Append(FormattableString.Invariant(text)).Append('\n');
        Line($"## Carbonate equilibrium");
        Line($"");
        Line(
            $"{waters.Length:N0} random waters, seed {Seed}: calcium hardness 0 to 1500 mg/L, alkalinity 1 to 1000 mg/L, pH 5 to 11, sample and hot temperature 0 to 95 °C, 30 to 3000 mg/L of dissolved solids; {refused:N0} more were thrown away because their alkalinity cannot have their pH. Each: pH after closed heating and what falls out; {repeats} times, median of processor time, one thread."
        );
        Line($"");
        Line($"- {each * 1e6:0.00} µs a water, {each * waters.Length:0.00} s for all");
        Line(
            $"- not converged: {open:N0}; charges closed to {gap:0.0e+0} of all carbonate and alkalinity at most; wanted 1e-9: {Met(gap <= 1e-9 && open == 0)}"
        );
        Line($"- what is left after falling out is saturated to {saturation:0.0e+0} (logarithm) at most");
        if (
            machine.Python is { } python
            && await Child.AskAsync(python, "-c", "import scipy.optimize;print(1)") is not null
            && await ScriptAsync(python, waters, found) is { } script
        )
        {
            var version = await Child.AskAsync(python, "-c", "import scipy;print(scipy.__version__)");
            Line(
                $"- SciPy {version} `brentq` on the first {ForScript:N0} of them ({machine.PythonVersions}): {script.Each * 1e6:0} µs a water, {script.Each / each:0} times as long; wanted 20: {Met(script.Each / each >= 20)}"
            );
            Line(
                $"- pH differs from the script's by {script.PH:0.0e+0} at most, what falls out by {script.Fallen:0.0e+0} of it or of 1e-9 mol/L"
            );
        }

        return page.ToString();
    }

    private const int Seed = 20261126;

    // Time of the processor, on both sides: a machine that others use as well slows the clock on the wall, not this one.
    private static double Processor()
    {
        using var me = Process.GetCurrentProcess();
        return me.TotalProcessorTime.TotalSeconds;
    }

    private static string Met(bool met) => met ? "met" : "**not met**";

    private static ((CarbonateSystem System, Sample Given, double Hot)[] Waters, int Refused) Invent()
    {
        var random = new Random(Seed);
        double Between(double low, double high) => low + ((high - low) * random.NextDouble());
        var waters = new List<(CarbonateSystem, Sample, double)>(Count);
        var refused = 0;
        while (waters.Count < Count)
        {
            var given = new Sample(
                Between(1e-3, 1500) / 100087,
                Between(1, 1000) / 50043.5,
                Between(5, 11),
                Between(0, 95),
                2.5e-5 * Between(30, 3000)
            );
            var system = CarbonateSystem.FromPH(
                given.Calcium,
                given.Alkalinity,
                given.PH,
                given.Strength,
                new CarbonateConstants(given.Celsius, given.Strength)
            );
            var hot = Between(0, 95);
            if (system is { Carbon: > 0 } fits)
            {
                waters.Add((fits, given, hot));
            }
            else
            {
                refused++;
            }
        }

        return ([.. waters], refused);
    }

    private static void Solve((CarbonateSystem System, Sample Given, double Hot)[] waters, (double PH, double Fallen)[] found)
    {
        for (var i = 0; i < waters.Length; i++)
        {
            ref readonly var w = ref waters[i];
            var cold = new CarbonateConstants(w.Given.Celsius, w.Given.Strength);
            var system = CarbonateSystem.FromPH(w.Given.Calcium, w.Given.Alkalinity, w.Given.PH, w.Given.Strength, cold)!.Value;
            var hot = new CarbonateConstants(w.Hot, w.Given.Strength);
            found[i] = (system.PH(hot), system.Precipitable(hot));
        }
    }

    // Worst gap of charge, worst distance from saturation of what is left, and how many did not end in figures.
    private static (double Gap, double Saturation, int Open) Closes(
        (CarbonateSystem System, Sample Given, double Hot)[] waters,
        (double PH, double Fallen)[] found
    )
    {
        double gap = 0,
            saturation = 0;
        var open = 0;
        for (var i = 0; i < waters.Length; i++)
        {
            var (system, given, celsius) = waters[i];
            var hot = new CarbonateConstants(celsius, given.Strength);
            if (!double.IsFinite(found[i].PH) || !double.IsFinite(found[i].Fallen))
            {
                open++;
                continue;
            }

            var size = Math.Abs(system.Alkalinity) + system.Carbon;
            gap = Math.Max(gap, Math.Abs(system.ChargeGap(found[i].PH, 0, hot)) / size);
            var left = system with
            {
                Calcium = system.Calcium - found[i].Fallen,
                Carbon = system.Carbon - found[i].Fallen,
                Alkalinity = system.Alkalinity - (2 * found[i].Fallen),
            };
            var pH = left.PH(hot);
            gap = Math.Max(gap, Math.Abs(left.ChargeGap(pH, 0, hot)) / (Math.Abs(left.Alkalinity) + left.Carbon));
            saturation = Math.Max(saturation, Math.Abs(left.SaturationAt(pH, hot)));
        }

        return (gap, saturation, open);
    }

    private static async Task<(double Each, double PH, double Fallen)?> ScriptAsync(
        string python,
        (CarbonateSystem System, Sample Given, double Hot)[] waters,
        (double PH, double Fallen)[] found
    )
    {
        var folder = Directory.CreateTempSubdirectory("carbonate");
        try
        {
            var (input, output) = (Path.Combine(folder.FullName, "waters"), Path.Combine(folder.FullName, "results"));
            await File.WriteAllLinesAsync(
                input,
                waters
                    .Take(ForScript)
                    .Select(w =>
                        string.Create(
                            CultureInfo.InvariantCulture,
                            $"{w.Given.Calcium:R};{w.Given.Alkalinity:R};{w.Given.PH:R};{w.Given.Celsius:R};{w.Hot:R};{w.Given.Strength:R}"
                        )
                    )
            );
            var child = await Child.RunAsync(python, Path.Combine(BenchOptions.Root(), Script), input, output);
            var theirs = (await File.ReadAllLinesAsync(output))
                .Select(l => l.Split(';'))
                .Select(l =>
                    (PH: double.Parse(l[0], CultureInfo.InvariantCulture), Fallen: double.Parse(l[1], CultureInfo.InvariantCulture))
                )
                .ToArray();
            return (
                child.Seconds / ForScript,
                theirs.Select((t, i) => Math.Abs(t.PH - found[i].PH)).Max(),
                theirs.Select((t, i) => Math.Abs(t.Fallen - found[i].Fallen) / Math.Max(1e-9, Math.Abs(t.Fallen))).Max()
            );
        }
        finally
        {
            folder.Delete(recursive: true);
        }
    }

    private readonly record struct Sample(double Calcium, double Alkalinity, double PH, double Celsius, double Strength);
}
