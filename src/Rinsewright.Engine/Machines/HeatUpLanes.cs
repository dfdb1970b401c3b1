using System.Numerics;
using Rinsewright.Engine.Water;

namespace Rinsewright.Engine.Machines;

/// <summary>
/// The cold start of several machines side by side: fill from empty, heat to the set points. Same steps and order as <see cref="Simulation"/> without ware, pumps and rinse;
/// equations M7 to M9. Where pumps or rinse run without racks, or the rinse valve leaks, <see cref="Fits"/> says no.
/// </summary>
/// <param name="tanks">Tanks of the machines.</param>
internal sealed class HeatUpLanes(int tanks)
{
    private const double HeatCapacity = LiquidWater.HeatCapacity;
    private const double Steams = 0.02;
    private const double Step = 1;
    private const double Longest = 4 * 3600;

    // Rise in a step below which a tank that is not hot never will be, K.
    private const double Stands = 1e-7;

    private readonly TankLanes[] tank = [.. Enumerable.Range(0, tanks).Select(_ => new TankLanes())];
    private readonly Vector<long>[] fills = new Vector<long>[tanks];
    private readonly Vector<long>[] heats = new Vector<long>[tanks];
    private RoomLanes room;
    private Vector<double> approach;
    private Vector<double> supply;

    /// <summary>Until the wash tank's float shuts, s; negative where it never does.</summary>
    public Vector<double> FillTime { get; private set; }

    /// <summary>Until every heated tank is at its set point, s; negative where it never is.</summary>
    public Vector<double> HeatTime { get; private set; }

    /// <summary>Whether nothing but fill and heaters acts on a machine's cold start.</summary>
    public static bool Fits(ModelParameters p)
    {
        foreach (var t in p.Tanks)
        {
            if (t.Pump.Switch == Contact.On)
            {
                return false;
            }
        }

        return p.Rinse is not { } rinse || (rinse.Valve != Contact.On && rinse.Leak == 0);
    }

    /// <summary>Starts each lane's machine.</summary>
    public void Run(ModelParameters[] machines)
    {
        for (var lane = 0; lane < Lanes.Count; lane++)
        {
            var p = machines[lane];
            room.Load(new RoomAir(p.RoomTemperature, p.RoomHumidity), lane);
            Lanes.Set(ref approach, lane, p.AirApproach);
            Lanes.Set(ref supply, lane, p.SupplyTemperature);
            for (var i = 0; i < tanks; i++)
            {
                tank[i].Load(p, i, Duties.Idle(p), lane);
            }
        }

        for (var i = 0; i < tanks; i++)
        {
            tank[i].Mass = Vector<double>.Zero;
            tank[i].Celsius = supply;
            fills[i] = heats[i] = Vector<long>.Zero;
        }

        var never = Vector.Create(-1.0);
        FillTime = HeatTime = never;
        var wash = tank[machines[0].Wash];
        for (double time = Step; time <= Longest; time += Step)
        {
            var still = StepAll();
            var hot = Vector<long>.AllBitsSet;
            foreach (var t in tank)
            {
                hot &= t.Heated ? Vector.GreaterThanOrEqual(t.Celsius, t.SetPoint - Vector.Create(0.1)) : hot;
            }

            var now = Vector.Create(time);
            FillTime = Vector.ConditionalSelect(
                Vector.LessThan(FillTime, Vector<double>.Zero) & Vector.GreaterThanOrEqual(wash.Mass, wash.Closes),
                now,
                FillTime
            );
            HeatTime = Vector.ConditionalSelect(Vector.LessThan(HeatTime, Vector<double>.Zero) & hot, now, HeatTime);
            var open = Vector.LessThan(FillTime, Vector<double>.Zero) | Vector.LessThan(HeatTime, Vector<double>.Zero);
            if (Vector.AndNot(open, still) == Vector<long>.Zero)
            {
                break;
            }
        }

        // Hot from the first step on: nothing to heat, as in Stepper.ColdStart.
        HeatTime = Vector.ConditionalSelect(Vector.Equals(HeatTime, Vector.Create(Step)), FillTime, HeatTime);
    }

    // Gives the lanes in which nothing moves any more.
    private Vector<long> StepAll()
    {
        var still = Vector<long>.AllBitsSet;
        for (var i = tanks - 1; i >= 0; i--)
        {
            var t = tank[i];
            fills[i] = Vector.LessThan(t.Mass, t.Opens) | (fills[i] & Vector.LessThan(t.Mass, t.Closes));
            var low = Vector.LessThan(t.Celsius, t.SetPoint - t.HalfBand);
            var inBand = heats[i] & Vector.LessThanOrEqual(t.Celsius, t.SetPoint + t.HalfBand);
            heats[i] = t.Heated ? Vector.GreaterThan(t.Mass, t.LowWater) & (low | inBand) : Vector<long>.Zero;
            var open =
                t.Float == Contact.On ? Vector<long>.AllBitsSet
                : t.Float == Contact.Off ? Vector<long>.Zero
                : fills[i];
            var fill = t.FillLeak + Vector.ConditionalSelect(open, t.FillFlow, Vector<double>.Zero);
            var power = Vector.ConditionalSelect(heats[i], t.HeatAt(t.Celsius), Vector<double>.Zero);
            var steams = Vector.GreaterThanOrEqual(t.Mass, Steams * t.Full);
            var (heat, evaporation, slope) = Lanes.Vent(t.AirWithout, approach, t.Celsius, room);
            heat = Vector.ConditionalSelect(steams, heat, Vector<double>.Zero);
            slope = Vector.ConditionalSelect(steams, slope, Vector<double>.Zero);
            evaporation = Vector.ConditionalSelect(steams, evaporation, Vector<double>.Zero);
            Vector<double> comes = Vector<double>.Zero,
                brings = Vector<double>.Zero;
            for (var j = i + 1; j < tanks; j++)
            {
                comes += tank[j].SpillsTo == i ? tank[j].Overflow : Vector<double>.Zero;
                brings += tank[j].SpillsTo == i ? tank[j].Overflow * tank[j].Celsius : Vector<double>.Zero;
            }

            var before = t.Mass;
            Level(t, fill + comes - evaporation);
            var capacity = (t.Mass * HeatCapacity) + t.Metal + (Step * ((HeatCapacity * (t.Overflow + t.Leak)) + t.Shell + slope));
            var heatIn =
                (((before * HeatCapacity) + t.Metal) * t.Celsius)
                + (
                    Step
                    * (
                        (fill * HeatCapacity * supply)
                        + (HeatCapacity * brings)
                        + power
                        + (t.Shell * room.Celsius)
                        - heat
                        + (slope * t.Celsius)
                    )
                );
            var next = heatIn / capacity;
            still &= Vector.LessThan(Vector.Abs(next - t.Celsius), Vector.Create(Stands)) & Vector.Equals(before, t.Mass);
            t.Celsius = next;
        }

        return still;
    }

    // Outlet.Step.
    private static void Level(TankLanes t, Vector<double> gain)
    {
        var available = Vector.Max(Vector<double>.Zero, t.Mass + (Step * gain));
        var half = Step * t.Outlet / 2;
        var below = Vector.SquareRoot((half * half) + available) + half;
        var root = available / Vector.Max(below, Vector.Create(1e-300));
        var after = root * root;
        var over = Vector.GreaterThan(after, t.Full);
        var leakFull = t.Outlet * Vector.SquareRoot(t.Full);
        t.Leak = Vector.ConditionalSelect(over, leakFull, t.Outlet * root);
        t.Overflow = Vector.ConditionalSelect(over, ((available - t.Full) / Step) - leakFull, Vector<double>.Zero);
        t.Mass = Vector.ConditionalSelect(over, t.Full, after);
    }
}
