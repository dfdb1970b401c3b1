namespace Rinsewright.Engine.Machines;

/// <summary>One run of a scenario.</summary>
internal sealed class ScenarioRun
{
    private readonly Scenario scenario;
    private readonly IReadOnlyList<FaultAtSeverity> faults;
    private readonly RunOptions options;
    private readonly IProgress<double>? progress;
    private readonly CancellationToken cancellation;
    private readonly ModelParameters atStart;
    private readonly ModelParameters withFaults;
    private readonly Readout readout = new();
    private readonly List<StageReading> stages = [];
    private readonly Recorder? recorder;
    private readonly double planned;
    private double done;
    private double told;
    private double gap;

    public ScenarioRun(
        ModelParameters parameters,
        Scenario scenario,
        IReadOnlyList<FaultAtSeverity> faults,
        RunOptions options,
        IProgress<double>? progress,
        CancellationToken cancellation
    )
    {
        this.scenario = scenario;
        this.faults = faults;
        this.options = options;
        this.progress = progress;
        this.cancellation = cancellation;
        withFaults = MachineFaults.Changed(parameters, faults);
        // One that would never let it get hot is put in when it is.
        atStart = MachineFaults.Changed(parameters, [.. faults.Where(f => !f.Fault.SetsInHot)]);
        recorder = options.SeriesEvery > 0 ? new Recorder(parameters, options.SeriesEvery) : null;
        planned = scenario.Stages.Sum(s => s.ColdStart ? 900 : s.Seconds);
    }

    public RunResult Run()
    {
        var stepper = Stepper(atStart);
        foreach (var stage in scenario.Stages)
        {
            if (stage.ColdStart)
            {
                Start(stepper, stage);
                done = Math.Min(done, 900);
            }
            else
            {
                Go(stepper, stage);
            }
        }

        if (scenario.Stages.Any(s => s.Read && s.RacksPerHour > 0))
        {
            var full = options.FullRate / 3600 ?? Duties.MostRacks(withFaults);
            readout.FullRate(withFaults, new SteadySolver(withFaults.Tanks.Length).Solve(withFaults, full));
        }

        Close(stepper.Simulation);
        progress?.Report(1);
        return new RunResult(scenario, faults, readout.InOrder(), recorder?.Series(), gap) { Stages = stages };
    }

    private Stepper Stepper(ModelParameters p)
    {
        var stepper = new Stepper(new Simulation(p), options.LongestStep ?? Machines.Stepper.UsualStep(p));
        stepper.Stepped = dt => Tell(stepper.Simulation, dt);
        return stepper;
    }

    private void Start(Stepper stepper, Stage stage)
    {
        var meter = new Meter(atStart.Tanks.Length);
        var times = stepper.ColdStart(stage.Seconds, meter);
        if (!ReferenceEquals(atStart, withFaults) && faults.Any(f => f.Fault.SetsInHot))
        {
            // How long the fault itself would take is read from a start of its own.
            var cold = new Stepper(new Simulation(withFaults), options.LongestStep ?? Machines.Stepper.UsualStep(withFaults));
            cold.Stepped = _ => cancellation.ThrowIfCancellationRequested();
            meter = new Meter(withFaults.Tanks.Length);
            times = cold.ColdStart(stage.Seconds, meter);
            Close(cold.Simulation);
            Change(stepper.Simulation, withFaults);
        }

        stages.Add(StageReading.Of(ReadDuring.HeatUp, stepper.Simulation.Parameters, meter));
        readout.Start(times.Fill, times.Heat);
    }

    private void Go(Stepper stepper, Stage stage)
    {
        var s = stepper.Simulation;
        var p = stage.Off ? SwitchedOff(withFaults) : withFaults;
        if (!ReferenceEquals(p, s.Parameters))
        {
            Change(s, p);
        }

        var meter = stage.Read ? new Meter(p.Tanks.Length) : null;
        stepper.Go(stage.Seconds, stage.RacksPerHour / 3600, null, meter);
        if (meter is not null)
        {
            stages.Add(StageReading.Of(stage.RacksPerHour > 0 ? ReadDuring.Load : ReadDuring.Idle, p, meter));
        }

        if (meter is not null && stage.RacksPerHour > 0)
        {
            readout.Load(p, meter);
        }
        else if (meter is not null)
        {
            readout.Idle(meter);
        }
    }

    private static ModelParameters SwitchedOff(ModelParameters p)
    {
        var off = p.WithTanks(t =>
            t with
            {
                Heater = t.Heater is { } heater ? heater with { Share = 0 } : null,
                FillFlow = 0,
                Pump = t.Pump with { Switch = Contact.Off },
            }
        );
        return off with
        {
            Booster = off.Booster is { } booster ? booster with { Heater = booster.Heater with { Share = 0 } } : null,
            Rinse = off.Rinse is { } rinse ? rinse with { Valve = Contact.Off } : null,
        };
    }

    private void Change(Simulation s, ModelParameters p)
    {
        Close(s);
        s.Change(p);
    }

    private void Close(Simulation s) => gap = Math.Max(gap, s.LargestGap());

    private void Tell(Simulation s, double dt)
    {
        recorder?.Take(s);
        done += dt;
        if (done - told < 60)
        {
            return;
        }

        told = done;
        cancellation.ThrowIfCancellationRequested();
        progress?.Report(Math.Min(1, done / planned));
    }
}
