using System.Diagnostics;
using System.Text;
using Rinsewright.Engine.Machines;

namespace Rinsewright.Benchmarks.Machines;

/// <summary>Two thousand draws of a machine side by side, against the same machine read one at a time, and shared among the processors; in turn, in one run.</summary>
internal static class SpreadBenchmarks
{
    private const double RacksPerHour = 150;
    private const ulong Seed = 20261125;

    public static async Task<string> RunAsync(int repeats)
    {
        var machine = TypicalMachines.Of(MachineKind.RackConveyorTwoTank);
        var scenario = Scenario.Steady(RacksPerHour);
        List<double> spread = [],
            single = [],
            shared = [];
        // One round for the compiler, the rest counts.
        for (var repeat = -1; repeat < repeats; repeat++)
        {
            var one = Seconds(() => MachineSpread.Of(machine, scenario, Seed));
            var reading = Seconds(() => ReadOneByOne(machine, MachineSpread.UsualDraws / 10)) * 10;
            var together = Seconds(() => Together(machine, scenario));
            if (repeat >= 0)
            {
                spread.Add(one);
                single.Add(reading);
                shared.Add(together);
            }
        }

        return Page(await Machine.AskAsync(), Median(spread), Median(single), Median(shared), repeats);
    }

    private static void ReadOneByOne(Engine.Machines.Machine machine, int times)
    {
        for (var i = 0; i < times; i++)
        {
            // Another rate each time, so that nothing could be remembered.
            SteadyState.Of(machine, RacksPerHour + (i * 1e-6));
        }
    }

    private static void Together(Engine.Machines.Machine machine, Scenario scenario)
    {
        var ranges = Environment.ProcessorCount;
        var parts = new SpreadDraws[ranges];
        Parallel.For(
            0,
            ranges,
            r =>
            {
                int first = MachineSpread.UsualDraws * r / ranges,
                    end = MachineSpread.UsualDraws * (r + 1) / ranges;
                parts[r] = MachineSpread.Draw(machine, scenario, Seed, first, end - first);
            }
        );
        MachineSpread.Bands(parts);
    }

    private static double Seconds(Action action)
    {
        var watch = Stopwatch.StartNew();
        action();
        return watch.Elapsed.TotalSeconds;
    }

    private static double Median(List<double> times)
    {
        times.Sort();
        return times[times.Count / 2];
    }

    private static string Page(Machine on, double spread, double single, double shared, int repeats)
    {
        var page = new StringBuilder();
        void Line(FormattableString text) => page.Append(FormattableString.Invariant(text)).Append('\n');
        Line($"## Spread of a machine");
        Line($"");
        Line($"- Machine: {on.Processor}, {on.Cores} cores; {on.Runtime}");
        Line($"");
        Line(
            $"Two-tank conveyor at {RacksPerHour} racks an hour, {MachineSpread.UsualDraws:N0} draws, cold start, idle, load and full rate with every observable; {repeats} times in turn, medians."
        );
        Line(
            $"*One at a time* reads the same machine as often with `SteadyState`; *ranges* shares the draws among {Environment.ProcessorCount} processors."
        );
        Line($"");
        Line(
            $"| draws side by side, one thread | one at a time | ranges on all processors | side by side : one at a time | ranges : one thread |"
        );
        Line($"| ---: | ---: | ---: | ---: | ---: |");
        Line(
            $"| {spread:0.000} s | {single:0.000} s | {shared:0.000} s | {single / spread:0.0}x as fast | {spread / shared:0.0}x as fast |"
        );
        Line($"");
        Line($"- 2,000 draws in less than a second on one thread: {(spread < 1 ? "met" : "**not met**")}");
        return page.ToString();
    }
}
