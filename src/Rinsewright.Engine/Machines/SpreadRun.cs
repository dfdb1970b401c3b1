using Rinsewright.Engine.Heat;
using Rinsewright.Engine.Numerics;

namespace Rinsewright.Engine.Machines;

/// <summary>
/// Draws machines and reads them, as many side by side as the processor takes. Made once with <see cref="MachineSpread.Begin"/> and drawn from as often as wanted, so that a screen stays live
/// between; one caller at a time.
/// </summary>
public sealed class SpreadRun
{
    private readonly Scenario scenario;
    private readonly ulong seed;
    private readonly IReadOnlyList<FaultAtSeverity> faults;
    private readonly IReadOnlyList<UncertainFigure> figures;
    private readonly double[] sigmas;
    private readonly ModelParameters sound;
    private readonly double racksPerHour;
    private readonly bool readsStart;
    private readonly bool readsIdle;
    private readonly int[] substeps;
    private readonly SteadyLanes solver;
    private readonly SteadySolutes solutes;
    private readonly SteadyReader reader;
    private readonly HeatUpLanes start;
    private readonly PlateLanes plate = new();
    private readonly CycleAnchor? anchor;

    internal SpreadRun(Machine machine, Scenario scenario, ulong seed, IReadOnlyList<FaultAtSeverity> faults)
    {
        this.scenario = scenario;
        this.seed = seed;
        this.faults = faults;
        sound = ModelParameters.From(machine);
        MachineRun.Check(sound, faults);
        figures = UncertainFigures.Of(machine);
        sigmas = [.. figures.Select(f => f.Sigma(machine))];
        readsStart = scenario.Stages.Any(s => s.ColdStart);
        readsIdle = scenario.Stages.Any(s => s.Read && s.RacksPerHour <= 0);
        racksPerHour = scenario.Stages.Where(s => s.Read).Select(s => s.RacksPerHour).DefaultIfEmpty(0).Max();
        var tanks = sound.Tanks.Length;
        solver = new SteadyLanes(tanks);
        solutes = new SteadySolutes(tanks);
        reader = new SteadyReader(tanks);
        start = new HeatUpLanes(tanks);
        substeps = Substeps();
        anchor = racksPerHour > 0 && !sound.Conveys ? Anchor() : null;
    }

    // Fills and dumps with every rack: there is no balance to solve, so that each draw is stepped.
    private bool Dumps => sound.Travel.Cycle is { Dumps: true };

    /// <summary>A range of draws.</summary>
    /// <param name="first">First draw, not negative.</param>
    /// <param name="count">Number of draws, above 0.</param>
    /// <param name="cancellation">Ends it.</param>
    /// <exception cref="ArgumentOutOfRangeException">A negative first draw, or no draws.</exception>
    public SpreadDraws Draw(int first, int count, CancellationToken cancellation = default)
    {
        ArgumentOutOfRangeException.ThrowIfNegative(first);
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(count);
        var values = new double[Observables.All.Count][];
        for (var k = 0; k < values.Length; k++)
        {
            values[k] = new double[count];
            Array.Fill(values[k], double.NaN);
        }

        var machines = new ModelParameters[Lanes.Count];
        for (var done = 0; done < count; done += Lanes.Count)
        {
            cancellation.ThrowIfCancellationRequested();
            // The last lanes of a range may have nothing to do: they repeat its last draw.
            for (var lane = 0; lane < Lanes.Count; lane++)
            {
                machines[lane] = Machine(first + Math.Min(done + lane, count - 1));
            }

            Read(machines, done, Math.Min(Lanes.Count, count - done), values);
        }

        return new SpreadDraws(scenario, seed, first, count, values);
    }

    /// <summary>The machine of a draw.</summary>
    internal ModelParameters Machine(int draw)
    {
        var source = new CounterNormal(seed);
        var p = sound;
        for (var j = 0; j < figures.Count; j++)
        {
            p = figures[j].Change(p, sigmas[j] * source.At(draw, j));
        }

        return MachineFaults.Changed(p, faults);
    }

    private void Read(ModelParameters[] machines, int done, int lanes, double[][] values)
    {
        var readouts = new Readout[lanes];
        for (var lane = 0; lane < lanes; lane++)
        {
            readouts[lane] = new Readout();
        }

        if (readsStart)
        {
            ReadStart(machines, readouts);
        }

        if (readsIdle)
        {
            solver.Solve(machines, 0);
            for (var lane = 0; lane < lanes; lane++)
            {
                readouts[lane].Idle(solver.Lane(lane));
                if (racksPerHour <= 0)
                {
                    readouts[lane].TanksWithoutRacks(machines[lane], solver.Lane(lane));
                }
            }
        }

        if (racksPerHour > 0)
        {
            solver.Solve(machines, double.MaxValue);
            for (var lane = 0; lane < lanes; lane++)
            {
                readouts[lane].FullRate(machines[lane], solver.Lane(lane));
            }

            ReadLoad(machines, readouts);
        }

        for (var lane = 0; lane < lanes; lane++)
        {
            readouts[lane].WriteTo(values, done + lane);
            anchor?.Move(values, done + lane);
        }
    }

    private void ReadLoad(ModelParameters[] machines, Readout[] readouts)
    {
        solver.Solve(machines, racksPerHour / 3600);
        if (Dumps)
        {
            for (var lane = 0; lane < readouts.Length; lane++)
            {
                reader.Stepped(readouts[lane], machines[lane], solver.Lane(lane), racksPerHour / 3600, CyclesStepped.Draw);
            }

            return;
        }

        plate.Run(machines, solver, substeps);
        for (var lane = 0; lane < readouts.Length; lane++)
        {
            var s = solver.Lane(lane);
            solutes.Solve(machines[lane], s);
            readouts[lane].Load(machines[lane], s, solutes, plate.Lane(lane));
        }
    }

    // Moves every draw to what a full reading of the machine as described gives.
    private CycleAnchor Anchor()
    {
        var machines = new ModelParameters[Lanes.Count];
        Array.Fill(machines, MachineFaults.Changed(sound, faults));
        Readout quick = new(),
            full = new();
        ReadLoad(machines, [quick]);
        reader.Stepped(full, machines[0], solver.Lane(0), racksPerHour / 3600, CyclesStepped.Usual(machines[0]));
        return new CycleAnchor(quick.InOrder(), full.InOrder());
    }

    private void ReadStart(ModelParameters[] machines, Readout[] readouts)
    {
        var fits = HeatUpLanes.Fits(machines[0]);
        if (fits)
        {
            start.Run(machines);
        }

        for (var lane = 0; lane < readouts.Length; lane++)
        {
            var (fill, heat) = fits
                ? (start.FillTime[lane], start.HeatTime[lane])
                : new Stepper(new Simulation(machines[lane]), 1).ColdStart(4 * 3600);
            readouts[lane].Start(fill, heat);
        }
    }

    // As many substeps as the machine as described needs, in every draw: a lane must not wait for its neighbours.
    private int[] Substeps()
    {
        var p = MachineFaults.Changed(sound, faults);
        Span<PlatePhase> phases = new PlatePhase[PlateWay.Most];
        var count = PlateWay.Phases(p, new SteadySolver(p.Tanks.Length).Solve(p, racksPerHour / 3600), phases);
        var steps = new int[count];
        for (var k = 0; k < count; k++)
        {
            steps[k] = (int)Math.Ceiling((phases[k].Seconds / PlatePass.UsualSubstep) - 1e-9);
        }

        return steps;
    }
}
