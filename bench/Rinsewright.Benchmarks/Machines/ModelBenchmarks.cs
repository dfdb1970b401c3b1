using System.Diagnostics;
using System.Text;
using Rinsewright.Engine.Machines;

namespace Rinsewright.Benchmarks.Machines;

/// <summary>The machine model: an hour under load against SciPy on the same equations, one steady solve, and the table of every fault. All in one run, so that ratios travel.</summary>
internal static class ModelBenchmarks
{
    private const string Script = "bench/python/machine_baseline.py";
    private const double RacksPerSecond = 150 / 3600.0;

    public static async Task<string> RunAsync(int repeats)
    {
        var machine = await Machine.AskAsync();
        var p = ModelParameters.From(TypicalMachines.Of(MachineKind.RackConveyorTwoTank));
        var hour = Median(repeats, () => Hour(p));
        var scipy = new List<double>();
        for (var i = 0; i < Math.Min(repeats, 3) && machine.Python is not null; i++)
        {
            scipy.Add((await Child.RunAsync(machine.Python, Path.Combine(BenchOptions.Root(), Script), "3600")).Seconds);
        }

        var solve = Median(repeats, () => Solves(p)) / SolvesPerRun;
        var table = Median(repeats, () => Table(TypicalMachines.Of(MachineKind.RackConveyorTwoTank)));
        var page = new StringBuilder();
        void Line(FormattableString text) => page.Append(FormattableString.Invariant(text)).Append('\n');
        Line($"## Machine model");
        Line($"");
        Line($"- Machine: {machine.Processor}, {machine.Cores} cores; {machine.Runtime}; {machine.PythonVersions ?? "no Python"}");
        Line($"- An hour of the two-tank machine at 150 racks an hour, steps of 0.5 s: {hour * 1e3:0.0} ms");
        if (scipy.Count > 0)
        {
            scipy.Sort();
            var theirs = scipy[scipy.Count / 2];
            Line(
                $"- The same hour with solve_ivp (LSODA, rtol 1e-6): {theirs:0.0} s, {theirs / hour:0} times as long; wanted 100: {Met(theirs / hour >= 100)}"
            );
        }

        Line($"- One steady solve at 150 racks an hour: {solve * 1e6:0.0} µs; wanted under 20: {Met(solve < 20e-6)}");
        Line(
            $"- Table of all {MachineFaults.Of(TypicalMachines.Of(MachineKind.RackConveyorTwoTank)).Count} faults, steady state and plate: {table * 1e3:0.0} ms; wanted under 20: {Met(table < 20e-3)}"
        );
        foreach (var kind in Enum.GetValues<MachineKind>())
        {
            var typical = TypicalMachines.Of(kind);
            var racks = UsualRate(kind);
            var sound = Median(repeats, () => Reading(typical, racks, []));
            var (slowest, worst) = Slowest(typical, racks);
            Line(
                $"- Everything a {kind} reads at {racks:0} racks an hour: {sound * 1e3:0.0} ms; slowest with a fault ({slowest}): {worst * 1e3:0.0} ms"
            );
        }

        return page.ToString();
    }

    // As the Machine screen starts with.
    private static double UsualRate(MachineKind kind) =>
        kind switch
        {
            MachineKind.Undercounter => 15,
            MachineKind.DoorHotWater or MachineKind.DoorChemical => 25,
            _ => 150,
        };

    private static double Reading(Engine.Machines.Machine machine, double racks, IReadOnlyList<FaultAtSeverity> faults)
    {
        var clock = Stopwatch.StartNew();
        SteadyState.Of(machine, racks, faults);
        return clock.Elapsed.TotalSeconds;
    }

    private static (string Id, double Seconds) Slowest(Engine.Machines.Machine machine, double racks) =>
        MachineFaults.Of(machine).Select(f => (f.Id, Reading(machine, racks, [f.At(1)]))).MaxBy(f => f.Item2);

    private const int SolvesPerRun = 10_000;

    private static string Met(bool met) => met ? "met" : "**not met**";

    // Settled first, so that the hour is one of service.
    private static double Hour(ModelParameters p)
    {
        var stepper = new Stepper(new Simulation(p), 0.5);
        stepper.Go(900, 0);
        stepper.Go(300, RacksPerSecond);
        var clock = Stopwatch.StartNew();
        stepper.Go(3600, RacksPerSecond);
        return clock.Elapsed.TotalSeconds;
    }

    private static double Solves(ModelParameters p)
    {
        var solver = new SteadySolver(p.Tanks.Length);
        var clock = Stopwatch.StartNew();
        for (var i = 0; i < SolvesPerRun; i++)
        {
            solver.Solve(p, RacksPerSecond);
        }

        return clock.Elapsed.TotalSeconds;
    }

    private static double Table(Engine.Machines.Machine machine)
    {
        var clock = Stopwatch.StartNew();
        FaultTable.Of(machine, 150);
        return clock.Elapsed.TotalSeconds;
    }

    // The first runs compile; they are not counted.
    private static double Median(int repeats, Func<double> run)
    {
        for (var i = 0; i < 3; i++)
        {
            run();
        }

        var times = Enumerable.Range(0, Math.Max(repeats, 5)).Select(_ => run()).Order().ToList();
        return times[times.Count / 2];
    }
}
