using System.Numerics;
using Rinsewright.Engine.Heat;
using Rinsewright.Engine.Water;

namespace Rinsewright.Engine.Machines;

/// <summary>
/// <see cref="SteadySolver"/> for several machines of one kind side by side, a machine a lane: the same equations M13 to M18, the same control flow, masks for what each lane's heaters do.
/// A lane that has settled is left alone, so what it gives does not depend on its neighbours. Agrees with the scalar solver to 1e-9.
/// </summary>
/// <param name="tanks">Tanks of the machines.</param>
internal sealed partial class SteadyLanes(int tanks)
{
    private const double HeatCapacity = LiquidWater.HeatCapacity;
    private const int MostRounds = 60;
    private readonly TankLanes[] tank = [.. Enumerable.Range(0, tanks).Select(_ => new TankLanes())];
    private readonly Duties[] duties = new Duties[Lanes.Count];
    private readonly SteadySolution[] alone = [.. Enumerable.Range(0, Lanes.Count).Select(_ => new SteadySolution(tanks))];
    private ModelParameters[] machines = [];
    private RoomLanes room;
    private Vector<double> approach;
    private Vector<double> supply;
    private Vector<double> captured;

    /// <summary>Solves for a rate in racks a second, each lane its own machine; 0 is idle.</summary>
    /// <param name="parameters">As many machines as there are lanes, alike in all but figures.</param>
    /// <param name="racks">Racks a second; infinite for as many as fit.</param>
    public void Solve(ModelParameters[] parameters, double racks)
    {
        machines = parameters;
        for (var lane = 0; lane < Lanes.Count; lane++)
        {
            Load(lane, racks);
        }

        foreach (var t in tank)
        {
            t.Holds = t.Heated ? Vector<long>.AllBitsSet : Vector<long>.Zero;
            t.Gives = Vector<long>.Zero;
            t.Celsius = t.Heated ? t.SetPoint : supply;
            t.Mass = t.Full;
        }

        var active = Vector<long>.AllBitsSet;
        for (var round = 0; round < MostRounds && active != Vector<long>.Zero; round++)
        {
            var moved = BalanceWater(active);
            AssembleHeat();
            var settled = SolveHeat(active);
            settled = Vector.AndNot(Vector.AndNot(settled, Flip(active)), moved);
            active = Vector.AndNot(active, settled);
        }
    }

    /// <summary>A lane's solution; overwritten with the next solve.</summary>
    public SteadySolution Lane(int lane)
    {
        var s = alone[lane];
        for (var i = 0; i < tanks; i++)
        {
            s.Tanks[i] = tank[i].Read(lane);
        }

        return s;
    }

    // Booster and final rinse do not depend on the tanks, so that they are computed lane by lane, once.
    private void Load(int lane, double racks)
    {
        var p = machines[lane];
        var d = duties[lane] = Duties.At(p, racks);
        var air = new RoomAir(p.RoomTemperature, p.RoomHumidity);
        room.Load(air, lane);
        Lanes.Set(ref approach, lane, p.AirApproach);
        Lanes.Set(ref supply, lane, p.SupplyTemperature);
        for (var i = 0; i < tanks; i++)
        {
            tank[i].Load(p, i, d, lane);
        }

        var s = alone[lane];
        s.Duties = d;
        SteadySolver.SolveRinse(p, air, s);
        Lanes.Set(ref captured, lane, s.Captured);
        LoadHeat(p, s, lane);
    }

    private Vector<long> BalanceWater(Vector<long> active)
    {
        for (var i = 0; i < tanks; i++)
        {
            var t = tank[i];
            var filling = Vector.Min(Vector<double>.One, Vector.Max(Vector<double>.Zero, (t.Mass - (0.35 * t.Full)) / (0.25 * t.Full)));
            filling = Vector.ConditionalSelect(
                Vector.GreaterThan(t.PumpDuty, Vector<double>.Zero) & Vector.GreaterThan(t.TotalFull, Vector<double>.Zero),
                filling,
                Vector<double>.Zero
            );
            var flows = Vector.GreaterThan(filling, Vector<double>.Zero);
            Lanes.Take(ref t.Filling, active, filling);
            var share = Vector.ConditionalSelect(flows, filling, Vector<double>.One);
            // As SprayTransfer.AtFlow at this share of the flow.
            var film = t.FilmFull * Vector.Exp(0.6 * Vector.Log(share));
            film = Vector.ConditionalSelect(flows, film, Vector<double>.Zero);
            var water = SprayTransfer.PumpedHit * LiquidWater.Density * t.SprayFull * filling;
            Lanes.Take(ref t.Transfer, active, Lanes.OfZone(film, t.Area, water));
            Vector<double> total = t.PumpDuty * t.TotalFull * filling * LiquidWater.Density,
                cap = t.PumpDuty * t.CapFull * filling * LiquidWater.Density;
            Lanes.Take(ref t.PumpHeat, active, Vector.ConditionalSelect(flows, t.PumpDuty * t.ShaftPower, Vector<double>.Zero));
            Lanes.Take(ref t.CrossOn, active, i + 1 < tanks ? t.Cross * total : Vector<double>.Zero);
            Lanes.Take(ref t.CrossBack, active, i > 0 ? tank[i - 1].Cross * total : Vector<double>.Zero);
            Lanes.Take(ref t.Floor, active, (t.ThrownOut * total) + (t.OpenEndOut * cap));
            Lanes.Take(ref t.Drained, active, t.ToDrain * total);
            var air = Vector.ConditionalSelect(flows, t.AirWithSpray, t.AirWithout);
            var (heat, evaporation, slope) = Lanes.Vent(air, approach, t.Celsius, room);
            Lanes.Take(ref t.Vent, active, heat);
            Lanes.Take(ref t.VentSlope, active, slope);
            Lanes.Take(ref t.Evaporation, active, evaporation);
        }

        var moved = Vector<long>.Zero;
        for (var i = tanks - 1; i >= 0; i--)
        {
            moved |= BalanceTank(i, active);
        }

        return moved;
    }

    private Vector<long> BalanceTank(int i, Vector<long> active)
    {
        var t = tank[i];
        var always = t.FillLeak + (t.Float == Contact.On ? t.FillFlow : Vector<double>.Zero);
        var comes =
            always
            + (i == tanks - 1 ? captured : Vector<double>.Zero)
            + (i > 0 ? tank[i - 1].CrossOn : Vector<double>.Zero)
            + (i + 1 < tanks ? tank[i + 1].CrossBack : Vector<double>.Zero);
        for (var j = i + 1; j < tanks; j++)
        {
            comes += tank[j].SpillsTo == i ? tank[j].Overflow : Vector<double>.Zero;
        }

        var goes = t.CrossOn + t.CrossBack + t.Floor + t.Drained + t.Evaporation;
        var leakFull = t.Outlet * Vector.SquareRoot(t.Full);
        var over = comes - goes - leakFull;
        var lacks = Vector.LessThan(over, Vector<double>.Zero);

        // Where water lacks, the float holds the level between opening and closing, or the leak does.
        var middle = (t.Opens + t.Closes) / 2;
        var leakMiddle = t.Outlet * Vector.SquareRoot(middle);
        var needed = goes + leakMiddle - comes;
        var can = t.Float == Contact.Works ? t.FillFlow : Vector<double>.Zero;
        var fill = Vector.Min(can, Vector.Max(Vector<double>.Zero, needed));
        var leaky = Vector.GreaterThan(needed, can) & Vector.GreaterThan(t.Outlet, Vector<double>.Zero);
        var root = Vector.Max(Vector<double>.Zero, comes + can - goes) / Vector.ConditionalSelect(leaky, t.Outlet, Vector<double>.One);
        var low = Vector.ConditionalSelect(leaky, Vector.Min(root * root, t.Full), middle);
        var mass = Vector.ConditionalSelect(lacks, low, t.Full);
        var before = t.Mass;
        Lanes.Take(ref t.Fill, active, Vector.ConditionalSelect(lacks, always + fill, always));
        Lanes.Take(ref t.Overflow, active, Vector.ConditionalSelect(lacks, Vector<double>.Zero, over));
        Lanes.Take(ref t.Leak, active, t.Outlet * Vector.SquareRoot(mass));
        Lanes.Take(ref t.Mass, active, mass);
        return active & Vector.GreaterThan(Vector.Abs(mass - before), 1e-9 * t.Full);
    }

    private Vector<long> Flip(Vector<long> active)
    {
        var flipped = Vector<long>.Zero;
        foreach (var t in tank)
        {
            if (!t.Heated)
            {
                continue;
            }

            var dry = Vector.LessThanOrEqual(t.Mass, t.LowWater);
            var off = ~(t.Holds | t.Gives);
            var lacking = t.Holds & Vector.GreaterThan(t.Heat, t.HeatAt(t.SetPoint));
            var none = Vector.AndNot(t.Holds & Vector.LessThan(t.Heat, Vector<double>.Zero), lacking);
            var reached = t.Gives & Vector.GreaterThan(t.Celsius, t.SetPoint);
            var cold = off & Vector.LessThan(t.Celsius, t.SetPoint);
            var holds = Vector.AndNot((Vector.AndNot(Vector.AndNot(t.Holds, lacking), none)) | reached | cold, dry);
            var gives = Vector.AndNot(Vector.AndNot(t.Gives, reached) | lacking, dry);
            flipped |= (holds ^ t.Holds) | (gives ^ t.Gives);
            t.Holds = Vector.ConditionalSelect(active, holds, t.Holds);
            t.Gives = Vector.ConditionalSelect(active, gives, t.Gives);
        }

        return flipped & active;
    }
}
