using System.Numerics;
using Rinsewright.Engine.Water;

namespace Rinsewright.Engine.Machines;

/// <summary>One tank of several machines side by side: figures and steady state, a machine a lane.</summary>
internal sealed class TankLanes
{
    /// <summary>kg at the overflow.</summary>
    public Vector<double> Full;

    /// <summary>Float shuts, kg.</summary>
    public Vector<double> Closes;

    /// <summary>Float opens, kg.</summary>
    public Vector<double> Opens;

    /// <summary>Cut-out, kg.</summary>
    public Vector<double> LowWater;

    /// <summary>k of leak = k √mass, kg^½/s.</summary>
    public Vector<double> Outlet;

    /// <summary>W/K.</summary>
    public Vector<double> Shell;

    /// <summary>J/K.</summary>
    public Vector<double> Metal;

    /// <summary>kg/s while the valve is open.</summary>
    public Vector<double> FillFlow;

    /// <summary>kg/s always.</summary>
    public Vector<double> FillLeak;

    /// <summary>Dry air through the zone on the mean of the load, kg/s, with and without spray.</summary>
    public Vector<double> AirWithSpray;

    /// <summary>Without spray.</summary>
    public Vector<double> AirWithout;

    /// <summary>Set point as the thermostat has it, °C.</summary>
    public Vector<double> SetPoint;

    /// <summary>Half of the thermostat's band, K.</summary>
    public Vector<double> HalfBand;

    /// <summary>Heater, W; 0 where a coil.</summary>
    public Vector<double> Power;

    /// <summary>Coil, W/K.</summary>
    public Vector<double> Coil;

    /// <summary>Steam, °C.</summary>
    public Vector<double> Steam;

    /// <summary>Share of the time its pump runs.</summary>
    public Vector<double> PumpDuty;

    /// <summary>Shaft power, W.</summary>
    public Vector<double> ShaftPower;

    /// <summary>Flow at a full suction, m³/s.</summary>
    public Vector<double> TotalFull;

    /// <summary>Of it through the jets.</summary>
    public Vector<double> SprayFull;

    /// <summary>Of it out of an open end.</summary>
    public Vector<double> CapFull;

    /// <summary>Arm pressure at a full suction, Pa.</summary>
    public Vector<double> ArmFull;

    /// <summary>Suction loss at a full suction, Pa.</summary>
    public Vector<double> SuctionFull;

    /// <summary>Film coefficient at a full suction, W/(m² K).</summary>
    public Vector<double> FilmFull;

    /// <summary>Wetted ware in its zone, m².</summary>
    public Vector<double> Area;

    /// <summary>Time ware is in it, s.</summary>
    public Vector<double> Seconds;

    /// <summary>Share that crosses on and back.</summary>
    public Vector<double> Cross;

    /// <summary>Share onto the floor; of an open end; to the drain.</summary>
    public Vector<double> ThrownOut,
        OpenEndOut,
        ToDrain;

    /// <summary>State: °C, kg.</summary>
    public Vector<double> Celsius,
        Mass;

    /// <summary>Heater holds the set point; gives all it has.</summary>
    public Vector<long> Holds,
        Gives;

    /// <summary>Heat and flows of the solution; names as in <see cref="SteadyTank"/>.</summary>
    public Vector<double> Heat,
        PumpHeat,
        Fill,
        Overflow,
        Leak,
        Floor,
        Drained,
        CrossOn,
        CrossBack,
        Evaporation,
        Vent,
        VentSlope,
        Transfer,
        Filling;

    /// <summary>Whether a float works, always fills or never, in every lane.</summary>
    public Contact Float { get; private set; }

    /// <summary>Where it spills to in every lane; −1 for the drain.</summary>
    public int SpillsTo { get; private set; }

    /// <summary>Whether it has a heater.</summary>
    public bool Heated { get; private set; }

    /// <summary>All liquid that leaves, kg/s.</summary>
    public Vector<double> Out => Overflow + Leak + Floor + Drained + CrossOn + CrossBack;

    /// <summary>Heat with the heater on at a temperature, W.</summary>
    public Vector<double> HeatAt(Vector<double> celsius) => Power + (Coil * Vector.Max(Vector<double>.Zero, Steam - celsius));

    /// <summary>Takes a lane's machine.</summary>
    public void Load(ModelParameters p, int i, in Duties duties, int lane)
    {
        var t = p.Tanks[i];
        var pump = t.Pump;
        Float = t.Float;
        SpillsTo = t.SpillsTo;
        Heated = t.Heater is not null;
        Lanes.Set(ref Full, lane, t.Full);
        Lanes.Set(ref Closes, lane, t.Closes);
        Lanes.Set(ref Opens, lane, t.Opens);
        Lanes.Set(ref LowWater, lane, t.LowWater);
        Lanes.Set(ref Outlet, lane, Water.Outlet.Of(t.Leak, t.Surface).Coefficient);
        Lanes.Set(ref Shell, lane, t.Shell);
        Lanes.Set(ref Metal, lane, t.Metal);
        Lanes.Set(ref FillFlow, lane, t.FillFlow);
        Lanes.Set(ref FillLeak, lane, t.FillLeak);
        var duty = pump.Switch switch
        {
            Contact.On => 1,
            Contact.Off => 0,
            _ => duties.Pumps,
        };
        var open = duties.Open * (p.Travel.Cycle?.AirOpen ?? 0);
        Lanes.Set(ref AirWithSpray, lane, (p.AirFactor * ((duty * t.AirRunning) + ((1 - duty) * t.AirIdle))) + open);
        Lanes.Set(ref AirWithout, lane, (p.AirFactor * t.AirIdle) + open);
        if (t.Heater is { } heater)
        {
            Lanes.Set(ref SetPoint, lane, heater.SetPoint - heater.SensorOffset);
            Lanes.Set(ref HalfBand, lane, heater.Band / 2);
            Lanes.Set(ref Power, lane, heater.Coil > 0 ? 0 : heater.Share * heater.Power);
            Lanes.Set(ref Coil, lane, heater.Share * heater.Coil);
            Lanes.Set(ref Steam, lane, heater.Steam);
        }

        var spray = pump.Circuit.At(pump.Condition with { Filling = 1 });
        Lanes.Set(ref PumpDuty, lane, duty);
        Lanes.Set(ref ShaftPower, lane, pump.Heat);
        Lanes.Set(ref TotalFull, lane, spray.Total);
        Lanes.Set(ref SprayFull, lane, spray.Spray);
        Lanes.Set(ref CapFull, lane, spray.Cap);
        Lanes.Set(ref ArmFull, lane, spray.ArmPressure);
        Lanes.Set(ref SuctionFull, lane, spray.SuctionLoss);
        Lanes.Set(
            ref FilmFull,
            lane,
            Rinsewright.Engine.Heat.SprayTransfer.AtFlow(
                pump.Transfer,
                spray.Spray / pump.Circuit.Nominal,
                (1 - pump.Condition.Plugged) * pump.Coverage
            )
        );
        Lanes.Set(ref Area, lane, Transfers.ZoneArea(p, t.ZoneTo - t.ZoneFrom));
        Lanes.Set(ref Seconds, lane, Duties.SecondsIn(p, i));
        Lanes.Set(ref Cross, lane, pump.Cross);
        Lanes.Set(ref ThrownOut, lane, pump.ThrownOut);
        Lanes.Set(ref OpenEndOut, lane, pump.OpenEndOut);
        Lanes.Set(ref ToDrain, lane, pump.ToDrain);
    }

    /// <summary>Gives a lane's state.</summary>
    public SteadyTank Read(int lane) =>
        new()
        {
            Celsius = Celsius[lane],
            Mass = Mass[lane],
            Stand =
                Holds[lane] != 0 ? HeaterStand.Holds
                : Gives[lane] != 0 ? HeaterStand.Full
                : HeaterStand.Off,
            Power = Heat[lane],
            PumpHeat = PumpHeat[lane],
            Fill = Fill[lane],
            Overflow = Overflow[lane],
            Leak = Leak[lane],
            Floor = Floor[lane],
            Drained = Drained[lane],
            CrossOn = CrossOn[lane],
            CrossBack = CrossBack[lane],
            Evaporation = Evaporation[lane],
            Vent = Vent[lane],
            VentSlope = VentSlope[lane],
            Transfer = Transfer[lane],
            Spray = SprayAt(lane),
        };

    private SprayFlow SprayAt(int lane)
    {
        var filling = Filling[lane];
        return new SprayFlow(
            TotalFull[lane] * filling,
            SprayFull[lane] * filling,
            CapFull[lane] * filling,
            ArmFull[lane] * filling * filling,
            SuctionFull[lane] * filling * filling
        );
    }
}
