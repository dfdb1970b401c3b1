using Rinsewright.Engine.Heat;

namespace Rinsewright.Engine.Machines;

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
    public SteadyReading Read(ModelParameters p, double racksPerHour, CyclesStepped? cycles = null) =>
        InParts(p, racksPerHour, cycles).Last()!;

    /// <summary>The same in parts: null until the last, which is the reading.</summary>
    public IEnumerable<SteadyReading?> InParts(ModelParameters p, double racksPerHour, CyclesStepped? cycles = null)
    {
        var readout = new Readout();
        var stepped = cycles ?? CyclesStepped.Usual(p);
        var times = new Stepper(new Simulation(p), stepped.StartStep) { Growth = stepped.StartGrowth }.ColdStart(LongestStart);
        readout.Start(times.Fill, times.Heat);
        yield return null;
        var idle = solver.Solve(p, 0);
        readout.Idle(idle);
        var standBy = Consumption.Of(p, idle, 0);
        readout.FullRate(p, solver.Solve(p, Duties.MostRacks(p)));
        var s = solver.Solve(p, racksPerHour / 3600);
        // The ride of the balance is shown; on a conveyor it is also what is read of the plate.
        var (ride, plate) = Ride(p, s);
        if (p.Conveys)
        {
            var load = Solved(readout, p, s, plate);
            yield return new SteadyReading(racksPerHour, readout.InOrder(), load, standBy, ride);
            yield break;
        }

        var run = new CycleRun(p, s, solutes, racksPerHour / 3600, stepped);
        while (run.Next())
        {
            yield return null;
        }

        readout.Load(p, run.Meter);
        yield return new SteadyReading(racksPerHour, readout.InOrder(), Consumption.Of(p, run.Meter), standBy, ride);
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

    /// <summary>Reads a machine with doors under load; see <see cref="CycleRun"/>.</summary>
    public void Stepped(Readout readout, ModelParameters p, SteadySolution s, double racks, CyclesStepped cycles)
    {
        var run = new CycleRun(p, s, solutes, racks, cycles);
        while (run.Next()) { }

        readout.Load(p, run.Meter);
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
