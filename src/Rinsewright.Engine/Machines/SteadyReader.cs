using Rinsewright.Engine.Heat;

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

    /// <summary>Few and coarse: only the difference of two such readings is good. One that dumps is alike in every cycle, once its metal is warm.</summary>
    public static CyclesStepped Few(ModelParameters p) =>
        p.Travel.Cycle is { Dumps: true } ? new(4, 1, 1, 10, 2, 0.01) : new(1, 1, 2, 10, 2, 0.01);
}

/// <summary>Turns steady solutions into observables. One instance may be used again by one caller at a time.</summary>
/// <param name="tanks">Tanks of the machines to be read.</param>
internal sealed class SteadyReader(int tanks)
{
    // As long as a scenario allows.
    private const double LongestStart = 4 * 3600;
    private readonly SteadySolver solver = new(tanks);
    private readonly SteadySolutes solutes = new(tanks);
    private readonly PlatePass pass = new();
    private readonly PlatePhase[] phases = new PlatePhase[PlateWay.Most];
    private readonly int[] places = new int[PlateWay.Most];

    /// <summary>Reads heat-up, idle, load and full rate.</summary>
    /// <param name="p">Machine.</param>
    /// <param name="racksPerHour">Racks an hour asked for.</param>
    /// <param name="cycles">Cycles of a machine with doors; null for the usual.</param>
    public SteadyReading Read(ModelParameters p, double racksPerHour, CyclesStepped? cycles = null)
    {
        var readout = new Readout();
        var stepped = cycles ?? CyclesStepped.Usual(p);
        var times = new Stepper(new Simulation(p), stepped.StartStep) { Growth = stepped.StartGrowth }.ColdStart(LongestStart);
        readout.Start(times.Fill, times.Heat);
        var idle = solver.Solve(p, 0);
        readout.Idle(idle);
        var standBy = Consumption.Of(p, idle, 0);
        readout.FullRate(p, solver.Solve(p, Duties.MostRacks(p)));
        var s = solver.Solve(p, racksPerHour / 3600);
        // The ride of the balance is shown; on a conveyor it is also what is read of the plate.
        var (ride, plate) = Ride(p, s);
        var load = p.Conveys ? Solved(readout, p, s, plate) : Stepped(readout, p, s, racksPerHour / 3600, stepped);
        return new SteadyReading(racksPerHour, readout.InOrder(), load, standBy, ride);
    }

    /// <summary>A plate's ride through a solution.</summary>
    public PlateResult Pass(ModelParameters p, SteadySolution s, PlateCurve? curve = null)
    {
        var count = PlateWay.Phases(p, s, phases, places);
        return pass.Run(p.Ware.Material, p.Ware.Thickness, p.Ware.In, phases.AsSpan(0, count), curve: curve);
    }

    private Consumption Solved(Readout readout, ModelParameters p, SteadySolution s, PlateResult plate)
    {
        solutes.Solve(p, s);
        readout.Load(p, s, solutes, plate);
        return Consumption.Of(p, s, solutes.Fed);
    }

    // The balance is where it starts from; what swings within a cycle comes from stepping.
    private Consumption Stepped(Readout readout, ModelParameters p, SteadySolution s, double racks, CyclesStepped cycles)
    {
        var simulation = new Simulation(p);
        solutes.Solve(p, s);
        // A tank that nothing leaves would hold soil without end.
        simulation.Settle(s, s.Tanks[p.Wash].Out > 0 ? solutes : null);
        var stepper = new Stepper(simulation, cycles.Step) { Waiting = cycles.Waiting };
        var interval = 1 / Math.Min(racks, Duties.MostRacks(p));
        stepper.Go(cycles.Settle * interval, racks);
        var meter = new Meter(p.Tanks.Length);
        stepper.Go(cycles.Read * interval, racks, null, meter);
        readout.Load(p, meter);
        return Consumption.Of(p, meter);
    }

    private (PlateRide Ride, PlateResult Plate) Ride(ModelParameters p, SteadySolution s)
    {
        var curve = new PlateCurve();
        var plate = Pass(p, s, curve);
        var speed = p.Conveys ? Duties.Speed(p) : 0;
        var met = new string[curve.Phase.Count];
        var at = new double[met.Length];
        for (var i = 0; i < met.Length; i++)
        {
            met[i] = places[curve.Phase[i]] switch
            {
                WareGroup.FinalRinse => "final-rinse",
                WareGroup.Gap => "gap",
                WareGroup.Room => "room",
                var tank => p.Tanks[tank].Id,
            };
            at[i] = speed * curve.Seconds[i];
        }

        return (new PlateRide(curve.Seconds, curve.Surface, curve.HeatUnits, met, at), plate);
    }
}
