namespace Rinsewright.Engine.Machines;

/// <summary>Drives a <see cref="Simulation"/>: racks at their times, steps that end with phases, what is to be recorded.</summary>
internal sealed class Stepper(Simulation simulation, double longestStep)
{
    private double next = double.NegativeInfinity;

    /// <summary>The machine.</summary>
    public Simulation Simulation { get; } = simulation;

    /// <summary>Longest step while a machine with doors waits for a rack, s; null for as long as any other.</summary>
    public double? Waiting { get; init; }

    /// <summary>Share of the time gone by that a step may take where that is longer; 0 for none.</summary>
    public double Growth { get; init; }

    /// <summary>Called after every step with its length.</summary>
    public Action<double>? Stepped { get; set; }

    /// <summary>Usual longest step of a kind, s.</summary>
    public static double UsualStep(ModelParameters p) => p.Conveys ? 0.5 : 0.25;

    /// <summary>Goes on for a time at a rate.</summary>
    /// <param name="seconds">How long, s.</param>
    /// <param name="racks">Racks a second asked for; 0 for none. A door machine takes them as fast as its cycle allows.</param>
    /// <param name="until">Ends early where it says so; null for never.</param>
    /// <param name="meter">Receives sums; null for none.</param>
    /// <returns>Whether it ended early.</returns>
    public bool Go(double seconds, double racks, Func<bool>? until = null, Meter? meter = null)
    {
        var s = Simulation;
        s.Left = meter is null ? null : meter.Take;
        var interval = racks > 0 ? s.Parameters.Travel.Slip / Math.Min(racks, Duties.MostRacks(s.Parameters)) : double.PositiveInfinity;
        next = Math.Max(next, s.Time);
        if (s.Parameters.Travel.Cycle is not null && racks > 0)
        {
            // Whole cycles, so that means are those of a cycle.
            seconds = Math.Max(1, Math.Floor((seconds / interval) + 1e-9)) * interval;
        }

        var end = s.Time + seconds;
        while (s.Time < end - 1e-9)
        {
            if (racks > 0 && s.Time >= next - 1e-9 && s.CanLoad)
            {
                s.Load();
                // A machine that was busy does not make up for lost racks.
                next = (s.Parameters.Conveys ? next : s.Time) + interval;
            }

            var dt = Math.Min(Math.Min(Longest(racks), end - s.Time), s.UntilPhaseEnds);
            s.Step(dt);
            meter?.Take(s, dt);
            Stepped?.Invoke(dt);
            if (until is not null && until())
            {
                return true;
            }
        }

        return false;
    }

    private double Longest(double racks)
    {
        var s = Simulation;
        if (Waiting is { } waiting && racks > 0 && s.Waits)
        {
            // Not past the next rack, nor past the moment when ware outside is done with.
            return Math.Min(Math.Min(waiting, Math.Max(next - s.Time, 1e-9)), s.UntilWareIsGone);
        }

        return Math.Max(longestStep, Growth * s.Time);
    }

    /// <summary>Goes on from empty and cold until the wash tank is full and everything is at its temperature.</summary>
    /// <param name="longest">Longest it may take, s.</param>
    /// <param name="meter">Receives sums; null for none.</param>
    /// <returns>Times from the start, s; negative where they are not reached.</returns>
    public (double Fill, double Heat) ColdStart(double longest, Meter? meter = null)
    {
        var s = Simulation;
        double fill = -1,
            heat = -1,
            first = -1;
        Go(
            longest,
            0,
            () =>
            {
                var p = s.Parameters;
                first = first < 0 ? s.Time : first;
                fill = fill < 0 && s.Tanks[p.Wash].Mass >= p.Tanks[p.Wash].Closes ? s.Time : fill;
                heat = heat < 0 && s.IsHot ? s.Time : heat;
                return fill >= 0 && heat >= 0;
            },
            meter
        );
        // Hot from the first step on: filled with water that is hot enough, it has nothing to heat and is ready when it is full.
        return (fill, heat >= 0 && heat <= first ? fill : heat);
    }
}
