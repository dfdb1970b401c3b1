namespace Rinsewright.Engine.Machines;

/// <summary>How a machine with doors is stepped from its balance.</summary>
/// <param name="Settle">Cycles that let it settle.</param>
/// <param name="Read">Cycles that are read.</param>
/// <param name="Step">Longest step, s.</param>
/// <param name="Waiting">Longest step while it waits for a rack, s.</param>
/// <param name="StartStep">Longest step of the cold start, s.</param>
/// <param name="StartGrowth">Share of the time gone by that a step of the cold start may take where that is longer.</param>
internal readonly record struct CyclesStepped(int Settle, int Read, double Step, double Waiting, double StartStep, double StartGrowth)
{
    /// <summary>Enough that gauges and eyes would not tell more of them.</summary>
    public static CyclesStepped Usual(ModelParameters p) => new(4, 4, Stepper.UsualStep(p), 3, 1, 0.002);

    /// <summary>For a draw of a machine that dumps: few cycles, but steps as short as the usual, or the time detergent is fed would be a step too long in some draws.</summary>
    public static CyclesStepped Draw { get; } = new(3, 1, 0.25, 10, 1, 0);

    /// <summary>Few and coarse: only the difference of two such readings is good. One that dumps is alike in every cycle, once its metal is warm.</summary>
    public static CyclesStepped Few(ModelParameters p) =>
        p.Travel.Cycle is { Dumps: true } ? new(4, 1, 1, 10, 2, 0.01) : new(1, 1, 2, 10, 2, 0.01);
}

/// <summary>A machine with doors, stepped a cycle at a time: a balance is where it starts from; what swings within a cycle comes from stepping.</summary>
internal sealed class CycleRun
{
    private readonly Stepper stepper;
    private readonly double racks;
    private readonly double interval;
    private readonly CyclesStepped cycles;
    private int done;

    /// <summary>Starts at a balance.</summary>
    /// <param name="p">Machine.</param>
    /// <param name="balance">Where it starts.</param>
    /// <param name="solutes">Solver of the solutes of that balance.</param>
    /// <param name="racks">Racks a second asked for.</param>
    /// <param name="cycles">How it is stepped.</param>
    public CycleRun(ModelParameters p, SteadySolution balance, SteadySolutes solutes, double racks, CyclesStepped cycles)
    {
        (this.racks, this.cycles) = (racks, cycles);
        interval = 1 / Math.Min(racks, Duties.MostRacks(p));
        solutes.Solve(p, balance);
        var simulation = new Simulation(p);
        // Soil and detergent start where they settle: cycles alone would take an hour to get there. A tank that nothing leaves would hold soil without end.
        simulation.Settle(balance, balance.Tanks[p.Wash].Out > 0 ? solutes : null);
        stepper = new Stepper(simulation, cycles.Step) { Waiting = cycles.Waiting };
        Meter = new Meter(p.Tanks.Length);
    }

    /// <summary>Sums over the cycles that are read.</summary>
    public Meter Meter { get; }

    /// <summary>Goes on by a cycle.</summary>
    /// <returns>Whether there is another.</returns>
    public bool Next()
    {
        stepper.Go(interval, racks, null, done < cycles.Settle ? null : Meter);
        done++;
        return done < cycles.Settle + cycles.Read;
    }
}
