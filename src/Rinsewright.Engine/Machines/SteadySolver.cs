using Rinsewright.Engine.Heat;
using Rinsewright.Engine.Water;

namespace Rinsewright.Engine.Machines;

/// <summary>
/// Time means at a steady load, without stepping: which heaters hold, which are at their limit, and what temperatures follow. Equations M13 to M18 of this folder's README.
/// Heater states are an active set, the steam to the air is linearised and solved again. One instance may be used again by one caller at a time; it allocates nothing once made.
/// </summary>
/// <param name="tanks">Tanks of the machines to be solved.</param>
internal sealed partial class SteadySolver(int tanks)
{
    private const double HeatCapacity = LiquidWater.HeatCapacity;
    private const int MostRounds = 60;
    private readonly double[] matrix = new double[tanks * tanks];
    private readonly double[] right = new double[tanks];
    private readonly double[] balance = new double[tanks * tanks];
    private readonly double[] known = new double[tanks];
    private ModelParameters p = null!;
    private RoomAir room;

    /// <summary>The last solution.</summary>
    public SteadySolution Solution { get; } = new(tanks);

    /// <summary>Solves for a rate in racks a second; 0 is idle.</summary>
    /// <exception cref="ArgumentException">A machine with another number of tanks.</exception>
    public SteadySolution Solve(ModelParameters parameters, double racks)
    {
        if (parameters.Tanks.Length != tanks)
        {
            throw new ArgumentException($"A solver for {tanks} tanks.", nameof(parameters));
        }

        p = parameters;
        room = new RoomAir(p.RoomTemperature, p.RoomHumidity);
        var s = Solution;
        s.Duties = Duties.At(p, racks);
        SolveRinse(s);
        for (var i = 0; i < tanks; i++)
        {
            ref var t = ref s.Tanks[i];
            var heater = p.Tanks[i].Heater;
            t.Stand = heater is null ? HeaterStand.Off : HeaterStand.Holds;
            t.Celsius = heater is null ? p.SupplyTemperature : heater.SetPoint - heater.SensorOffset;
            t.Mass = p.Tanks[i].Full;
        }

        var round = 0;
        var settled = false;
        while (!settled && round < MostRounds)
        {
            round++;
            var level = BalanceWater(s);
            AssembleHeat(s);
            var change = SolveHeat(s);
            settled = !Flip(s) && change < 1e-9 && !level;
        }

        s.Rounds = round;
        return s;
    }

    private void SolveRinse(SteadySolution s)
    {
        s.Rinse = default;
        s.MeanRinse = 0;
        s.RinseVent = 0;
        s.RinseEvaporation = 0;
        s.RinseTransfer = 0;
        s.FilmKept = 1;
        s.Booster = p.SupplyTemperature;
        s.BoosterPower = 0;
        s.RinseOnWare = p.SupplyTemperature;
        s.Captured = 0;
        s.Bypassed = 0;
        if (p.Rinse is not { } rinse)
        {
            return;
        }

        s.Rinse = rinse.Running;
        var duty = s.Duties.Rinse;
        s.MeanRinse = s.Rinse.Flow * (duty + ((1 - duty) * rinse.Leak));
        if (p.Booster is { } booster)
        {
            var set = booster.Heater.SetPoint - booster.Heater.SensorOffset;
            double through = s.MeanRinse * HeatCapacity,
                most = booster.Heater.HeatAt(set);
            var need = (through * (set - p.SupplyTemperature)) + (booster.Shell * (set - room.Celsius));
            var reached = ((through * p.SupplyTemperature) + (booster.Shell * room.Celsius) + most) / (through + booster.Shell);
            s.Booster = need <= most ? set : reached;
            // Water hotter than the set point needs no heat and is not cooled.
            s.BoosterPower = Math.Clamp(need, 0, most);
            s.Booster =
                need < 0 ? ((through * p.SupplyTemperature) + (booster.Shell * room.Celsius)) / (through + booster.Shell) : s.Booster;
        }

        if (duty > 0 && s.Rinse.Flow > 0)
        {
            var vent = VentExchange.Of(rinse.Air * p.AirFactor, p.AirApproach, s.Booster, room);
            s.RinseVent = duty * vent.Heat;
            s.RinseEvaporation = duty * vent.Evaporation;
            s.RinseOnWare = s.Booster - (vent.Heat / (s.Rinse.Flow * HeatCapacity));
            s.RinseTransfer = Transfers.FinalRinse(p, s.Rinse.Flow);
            s.FilmKept = Math.Exp(-Transfers.FilmExchange(p, s.Rinse.Flow) * Duties.SecondsUnderRinse(p));
        }

        var left = s.MeanRinse - s.RinseEvaporation;
        s.Captured = rinse.Captured * left;
        s.Bypassed = (1 - rinse.Captured) * left;
    }

    private double AirThrough(int i, in Duties duties)
    {
        var t = p.Tanks[i];
        // Without spray no air is driven.
        var pumps = Solution.Tanks[i].Spray.Total > 0 ? PumpDuty(i, duties) : 0;
        return (p.AirFactor * ((pumps * t.AirRunning) + ((1 - pumps) * t.AirIdle))) + (duties.Open * (p.Travel.Cycle?.AirOpen ?? 0));
    }

    private double PumpDuty(int i, in Duties duties) =>
        p.Tanks[i].Pump.Switch switch
        {
            Contact.On => 1,
            Contact.Off => 0,
            _ => duties.Pumps,
        };

    // Flows between the tanks, floats and levels, from the last tank down. Tells whether a level moved, so that pumps draw other flows.
    private bool BalanceWater(SteadySolution s)
    {
        var moved = false;
        for (var i = 0; i < tanks; i++)
        {
            ref var t = ref s.Tanks[i];
            var pump = p.Tanks[i].Pump;
            var duty = PumpDuty(i, s.Duties);
            var filling = duty > 0 ? SprayCircuit.FillingAt(t.Mass, p.Tanks[i].Full) : 0;
            t.Spray = filling > 0 ? pump.Circuit.At(pump.Condition with { Filling = filling }) : default;
            t.Transfer = t.Spray.Spray > 0 ? Transfers.Spray(p, i, t.Spray) : 0;
            double total = duty * t.Spray.Total * LiquidWater.Density,
                cap = duty * t.Spray.Cap * LiquidWater.Density;
            t.PumpHeat = t.Spray.Total > 0 ? duty * pump.Heat : 0;
            t.CrossOn = i + 1 < tanks ? pump.Cross * total : 0;
            t.CrossBack = i > 0 ? p.Tanks[i - 1].Pump.Cross * total : 0;
            t.Floor = (pump.ThrownOut * total) + (pump.OpenEndOut * cap);
            t.Drained = pump.ToDrain * total;
            var vent = VentExchange.Of(AirThrough(i, s.Duties), p.AirApproach, t.Celsius, room);
            t.Vent = vent.Heat;
            t.VentSlope = vent.HeatPerKelvin;
            t.Evaporation = vent.Evaporation;
        }

        for (var i = tanks - 1; i >= 0; i--)
        {
            moved |= BalanceTank(s, i);
        }

        return moved;
    }

    private bool BalanceTank(SteadySolution s, int i)
    {
        var tank = p.Tanks[i];
        ref var t = ref s.Tanks[i];
        var comes =
            (i == tanks - 1 ? s.Captured : 0)
            + (i > 0 ? s.Tanks[i - 1].CrossOn : 0)
            + (i + 1 < tanks ? s.Tanks[i + 1].CrossBack : 0)
            + tank.FillLeak
            + (tank.Float == Contact.On ? tank.FillFlow : 0);
        for (var j = i + 1; j < tanks; j++)
        {
            comes += p.Tanks[j].SpillsTo == i ? s.Tanks[j].Overflow : 0;
        }

        var goes = t.CrossOn + t.CrossBack + t.Floor + t.Drained + t.Evaporation;
        var outlet = Outlet.Of(tank.Leak, tank.Surface);
        var before = t.Mass;
        t.Fill = tank.FillLeak + (tank.Float == Contact.On ? tank.FillFlow : 0);
        t.Leak = outlet.FlowAt(tank.Full);
        t.Mass = tank.Full;
        t.Overflow = comes - goes - t.Leak;
        if (t.Overflow < 0)
        {
            t.Overflow = 0;
            // The float holds the level between opening and closing.
            t.Mass = (tank.Opens + tank.Closes) / 2;
            t.Leak = outlet.FlowAt(t.Mass);
            var lacks = goes + t.Leak - comes;
            var can = tank.Float == Contact.Works ? tank.FillFlow : 0;
            var fill = Math.Clamp(lacks, 0, can);
            t.Fill += fill;
            if (lacks > can && outlet.MassHolding(Math.Max(0, comes + can - goes)) is { } held)
            {
                t.Mass = Math.Min(held, tank.Full);
                t.Leak = outlet.FlowAt(t.Mass);
            }
        }

        return Math.Abs(t.Mass - before) > 1e-9 * tank.Full;
    }

    private double SolveHeat(SteadySolution s)
    {
        balance.CopyTo(matrix, 0);
        known.CopyTo(right, 0);
        for (var i = 0; i < tanks; i++)
        {
            ref readonly var t = ref s.Tanks[i];
            var heater = p.Tanks[i].Heater;
            if (t.Stand == HeaterStand.Holds)
            {
                matrix.AsSpan(i * tanks, tanks).Clear();
                matrix[(i * tanks) + i] = 1;
                right[i] = heater!.SetPoint - heater.SensorOffset;
            }
            else if (t.Stand == HeaterStand.Full && heater is { Coil: > 0 })
            {
                matrix[(i * tanks) + i] += heater.Share * heater.Coil;
                right[i] += heater.Share * heater.Coil * heater.Steam;
            }
            else if (t.Stand == HeaterStand.Full)
            {
                right[i] += heater!.HeatAt(0);
            }
        }

        SmallSystem.Factor(matrix, tanks);
        SmallSystem.Solve(matrix, right, tanks);
        double change = 0;
        for (var i = 0; i < tanks; i++)
        {
            ref var t = ref s.Tanks[i];
            change = Math.Max(change, Math.Abs(right[i] - t.Celsius));
            t.Vent += t.VentSlope * (right[i] - t.Celsius);
            t.Celsius = right[i];
        }

        for (var i = 0; i < tanks; i++)
        {
            double power = -known[i];
            for (var j = 0; j < tanks; j++)
            {
                power += balance[(i * tanks) + j] * s.Tanks[j].Celsius;
            }

            s.Tanks[i].Power = s.Tanks[i].Stand == HeaterStand.Off ? 0 : power;
        }

        return change;
    }

    private bool Flip(SteadySolution s)
    {
        var flipped = false;
        for (var i = 0; i < tanks; i++)
        {
            if (p.Tanks[i].Heater is not { } heater)
            {
                continue;
            }

            ref var t = ref s.Tanks[i];
            var set = heater.SetPoint - heater.SensorOffset;
            var stand =
                t.Mass <= p.Tanks[i].LowWater
                    ? HeaterStand.Off
                    : t.Stand switch
                    {
                        HeaterStand.Holds when t.Power > heater.HeatAt(set) => HeaterStand.Full,
                        HeaterStand.Holds when t.Power < 0 => HeaterStand.Off,
                        HeaterStand.Full when t.Celsius > set => HeaterStand.Holds,
                        HeaterStand.Off when t.Celsius < set => HeaterStand.Holds,
                        _ => t.Stand,
                    };
            flipped |= stand != t.Stand;
            t.Stand = stand;
        }

        return flipped;
    }
}
