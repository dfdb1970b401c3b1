using Rinsewright.Engine.Water;

namespace Rinsewright.Engine.Machines;

/// <summary>Where a door machine is in its cycle.</summary>
internal enum Phase
{
    /// <summary>Closed, waiting.</summary>
    Idle,

    /// <summary>Wash pump runs.</summary>
    Wash,

    /// <summary>Waits, or dumps.</summary>
    Dwell,

    /// <summary>Fills for the rinse.</summary>
    Refill,

    /// <summary>Final rinse, or pump in the sanitizing water.</summary>
    Rinse,

    /// <summary>Closed after the rinse.</summary>
    End,

    /// <summary>Open.</summary>
    Load,
}

// Movement, switches, thermostats, floats and dosing: equations M1 and M2, from the state before the step.
internal sealed partial class Simulation
{
    private double hold;
    private Phase phase;
    private double phaseLeft;
    private bool moving;
    private bool asksForDetergent;

    /// <summary>Phase of a door machine.</summary>
    public Phase Phase => phase;

    /// <summary>Whether detergent is fed.</summary>
    public bool Dosing { get; private set; }

    /// <summary>Whether the final rinse sprays.</summary>
    public bool Rinsing { get; private set; }

    /// <summary>Final rinse through the booster, kg/s: spray, or what passes a shut valve.</summary>
    public double RinseFlow { get; private set; }

    /// <summary>Seconds until the phase ends; infinite on a conveyor and while waiting.</summary>
    public double UntilPhaseEnds => phase == Phase.Idle ? double.PositiveInfinity : phaseLeft;

    /// <summary>Whether this is a machine with doors that waits for a rack.</summary>
    public bool Waits => !p.Conveys && phase == Phase.Idle;

    /// <summary>Seconds until the oldest ware outside a machine with doors is done with; infinite where there is none.</summary>
    public double UntilWareIsGone =>
        groups > 0 && Group(0).Outside is >= 0 and < SecondsInRoom ? SecondsInRoom - Group(0).Outside : double.PositiveInfinity;

    /// <summary>Whether a rack can go in now: always on a conveyor, on a door machine when the last cycle is over.</summary>
    public bool CanLoad => p.Conveys || phase == Phase.Idle;

    /// <summary>Puts a rack in: at the load end, or into the chamber with the cycle started.</summary>
    public void Load()
    {
        var ware = p.Ware;
        for (var j = 0; j < ware.Groups; j++)
        {
            if (groups == ring.Length)
            {
                throw new InvalidOperationException("More racks than the machine holds.");
            }

            var group = Group(groups++);
            group.Enter(-(j + 0.5) * ware.RackLength / ware.Groups, ware.In, ware.Soil / ware.Groups);
            Water.Gain(GroupFilm);
            Heat.Gain(HeatOf(group));
            Content[Solute.Soil].Gain(group.Soil);
        }

        if (p.Travel.Cycle is { } cycle)
        {
            phase = Phase.Wash;
            phaseLeft = cycle.Wash;
        }
    }

    private void Move(double dt)
    {
        if (p.Travel.Cycle is not null)
        {
            for (var g = 0; g < groups; g++)
            {
                var group = Group(g);
                group.Outside += group.Outside >= 0 ? dt : 0;
            }

            return;
        }

        var half = p.Ware.RackLength / (2 * p.Ware.Groups);
        var inside = false;
        var made = false;
        var rinse = p.Rinse;
        for (var g = 0; g < groups; g++)
        {
            var group = Group(g);
            group.Position += p.Travel.Speed * p.Travel.SpeedFactor * dt;
            double from = group.Position - half,
                to = group.Position + half;
            inside |= to > 0 && from < p.Travel.End;
            made |= rinse is not null && to > rinse.SwitchFrom && from < rinse.SwitchTo;
        }

        hold = inside ? p.Travel.Hold : Math.Max(0, hold - dt);
        moving = inside || hold > 0;
        Rinsing = rinse is { WhileMoving: true } ? moving : made;
    }

    private void Control()
    {
        var cycle = p.Travel.Cycle;
        if (cycle is not null)
        {
            moving = phase == Phase.Wash || (phase == Phase.Rinse && cycle.Dumps);
            Rinsing = phase == Phase.Rinse && p.Rinse is not null;
        }

        if (p.Rinse is { } rinse)
        {
            Rinsing = Made(rinse.Valve, Rinsing);
            RinseFlow = (Rinsing ? 1 : rinse.Leak) * rinse.Running.Flow;
        }

        for (var i = 0; i < tanks; i++)
        {
            ControlTank(p.Tanks[i], tank[i]);
        }

        if (p.Booster is { } booster)
        {
            BoosterOn = Heats(booster.Heater, BoosterOn, Booster);
        }

        var wash = p.Wash;
        double strength = Share(wash, Solute.Detergent) * p.Feed.Probe,
            half = p.Feed.Band / 2;
        asksForDetergent = strength < p.Feed.Detergent - half || (asksForDetergent && strength <= p.Feed.Detergent + half);
        Dosing =
            asksForDetergent
            && tank[wash].Pumps
            && tank[wash].Mass > p.Tanks[wash].LowWater
            && !(cycle is { Dumps: true } && phase != Phase.Wash);
    }

    private void ControlTank(TankParameters t, TankState s)
    {
        var dumping = phase == Phase.Dwell && p.Travel.Cycle is { Dumps: true };
        s.Fills = s.Mass < t.Opens || (s.Fills && s.Mass < t.Closes);
        s.Fill = (Made(t.Float, s.Fills) && !dumping ? t.FillFlow : 0) + t.FillLeak;
        s.Heats = t.Heater is { } heater && s.Mass > t.LowWater && Heats(heater, s.Heats, s.Celsius);
        s.Power = s.Heats ? t.Heater!.HeatAt(s.Celsius) : 0;
        s.Pumps = Made(t.Pump.Switch, moving);
        var filling = s.Pumps ? SprayCircuit.FillingAt(s.Mass, t.Full) : 0;
        s.Spray = filling > 0 ? t.Pump.Circuit.At(t.Pump.Condition with { Filling = filling }) : default;
    }

    // On below the band, off above it, in between as it was.
    private static bool Heats(HeaterParameters heater, bool on, double celsius)
    {
        var read = celsius + heater.SensorOffset;
        return read < heater.SetPoint - (heater.Band / 2) || (on && read <= heater.SetPoint + (heater.Band / 2));
    }

    private static bool Made(Contact contact, bool asked) => contact == Contact.Works ? asked : contact == Contact.On;

    // Ends the step of a door machine: what phase comes, and what that does to the rack.
    private void NextPhase(double dt)
    {
        if (p.Travel.Cycle is not { } cycle || phase == Phase.Idle)
        {
            return;
        }

        phaseLeft -= dt;
        while (phaseLeft <= 1e-9 && phase != Phase.Idle)
        {
            phase = phase == Phase.Load ? Phase.Idle : phase + 1;
            phaseLeft += phase switch
            {
                Phase.Dwell => cycle.Dwell,
                Phase.Refill => cycle.Refill,
                Phase.Rinse => cycle.Rinse,
                Phase.End => cycle.End,
                Phase.Load => cycle.Load,
                _ => 0,
            };
            if (phase == Phase.Load)
            {
                TakeOut();
            }
        }
    }

    private void TakeOut()
    {
        for (var g = 0; g < groups; g++)
        {
            var group = Group(g);
            group.Outside = group.Outside < 0 ? 0 : group.Outside;
        }
    }
}
