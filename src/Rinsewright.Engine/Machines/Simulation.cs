using Rinsewright.Engine.Heat;
using Rinsewright.Engine.Water;

namespace Rinsewright.Engine.Machines;

/// <summary>
/// The machine in time: one implicit step after another. Equations M1 to M12 of this folder's README. A step is stable at any length, keeps masses positive and closes the
/// ledgers of water, heat and solutes to rounding. It allocates nothing, and the same calls give the same digits.
/// </summary>
internal sealed partial class Simulation
{
    private const double HeatCapacity = LiquidWater.HeatCapacity;

    // Below this share of full a tank gives off no steam: there is nothing to take it from.
    private const double Steams = 0.02;

    // In °F: no credit below 143, none more above 165; A0 from 65 °C.
    private static readonly DoseRate HeatUnitRate = DoseRate.HeatUnits(165, 143);
    private static readonly DoseRate A0Rate = DoseRate.A0(149);

    private readonly int tanks;
    private readonly TankState[] tank;
    private readonly double[] solutes;
    private readonly WareGroup[] ring;
    private readonly SlabPropagators propagators;
    private int first;
    private int groups;
    private ModelParameters p;
    private RoomAir room;

    /// <summary>A machine as it stands before the day: tanks empty at supply temperature, booster warm.</summary>
    public Simulation(ModelParameters parameters)
    {
        p = parameters;
        tanks = parameters.Tanks.Length;
        tank = new TankState[tanks];
        for (var i = 0; i < tanks; i++)
        {
            tank[i] = new TankState();
        }

        solutes = new double[tanks * Solute.Count];
        matrix = new double[tanks * tanks];
        right = new double[tanks];
        before = new double[tanks];
        share = new double[tanks * Solute.Count];
        var travel = parameters.Travel;
        var racks = parameters.Conveys ? ((travel.End + (30 * 2 * travel.Speed)) / parameters.Ware.RackLength) + 4 : 8;
        ring = new WareGroup[(int)Math.Ceiling(racks * parameters.Ware.Groups) + 8];
        for (var i = 0; i < ring.Length; i++)
        {
            ring[i] = new WareGroup();
        }

        propagators = new SlabPropagators(16, WareGroup.Cells);
        contacts = new Contacts(tanks);
        Start();
    }

    /// <summary>What it computes with now.</summary>
    public ModelParameters Parameters => p;

    /// <summary>Time since the start, s.</summary>
    public double Time { get; private set; }

    /// <summary>Tanks in the order the ware travels.</summary>
    public ReadOnlySpan<TankState> Tanks => tank;

    /// <summary>Booster, or where there is none the supply, °C.</summary>
    public double Booster { get; private set; }

    /// <summary>Whether the booster heats.</summary>
    public bool BoosterOn { get; private set; }

    /// <summary>Water ledger, kg.</summary>
    public Ledger Water { get; } = new();

    /// <summary>Heat ledger, J above liquid water at 0 °C.</summary>
    public Ledger Heat { get; } = new();

    /// <summary>Ledgers of the solutes, kg; soil on the ware counts with that in the water.</summary>
    public Ledger[] Content { get; } = [new(), new(), new(), new()];

    /// <summary>Groups on their way, in the order they came.</summary>
    public int Groups => groups;

    /// <summary>The group that came <paramref name="index"/> after the oldest.</summary>
    public WareGroup Group(int index) => ring[(first + index) % ring.Length];

    /// <summary>Solute in a tank, kg/kg; 0 in an empty one.</summary>
    public double Share(int tankIndex, int solute) =>
        tank[tankIndex].Mass > 0 ? solutes[(tankIndex * Solute.Count) + solute] / tank[tankIndex].Mass : 0;

    /// <summary>Whether every heated tank is within 0.1 K of its set point, as its thermostat has it.</summary>
    public bool IsHot
    {
        get
        {
            for (var i = 0; i < tanks; i++)
            {
                if (p.Tanks[i].Heater is { } heater && tank[i].Celsius + heater.SensorOffset < heater.SetPoint - 0.1)
                {
                    return false;
                }
            }

            return true;
        }
    }

    /// <summary>Goes on from a steady state, without ware; without solutes where they are not given.</summary>
    public void Settle(SteadySolution steady, SteadySolutes? dissolved = null)
    {
        Start();
        for (var i = 0; i < tanks; i++)
        {
            tank[i].Mass = steady.Tanks[i].Mass;
            tank[i].Celsius = steady.Tanks[i].Celsius;
            tank[i].Fills = false;
            if (dissolved is not null)
            {
                var at = i * Solute.Count;
                solutes[at + Solute.Detergent] = dissolved.Detergent[i] * tank[i].Mass;
                solutes[at + Solute.Additive] = dissolved.Additive[i] * tank[i].Mass;
                solutes[at + Solute.Soil] = dissolved.Soil[i] * tank[i].Mass;
            }
        }

        Booster = steady.Booster;
        OpenLedgers();
    }

    /// <summary>Puts a solute into a tank by hand, kg.</summary>
    public void Dissolve(int tankIndex, int solute, double kilogram)
    {
        solutes[(tankIndex * Solute.Count) + solute] += kilogram;
        Content[solute].Gain(kilogram);
    }

    /// <summary>Goes on with other figures: a fault that sets in on a running machine.</summary>
    /// <exception cref="ArgumentException">Another number of tanks or of parts to a rack.</exception>
    public void Change(ModelParameters parameters)
    {
        if (parameters.Tanks.Length != tanks || parameters.Ware.Groups != p.Ware.Groups)
        {
            throw new ArgumentException("A running machine keeps its tanks and the parts of its racks.", nameof(parameters));
        }

        // What is on the ware and in the booster changes hands with the figures; the ledgers are opened anew.
        p = parameters;
        room = new RoomAir(p.RoomTemperature, p.RoomHumidity);
        OpenLedgers();
    }

    /// <summary>Back to the start of the day.</summary>
    public void Start()
    {
        Time = 0;
        room = new RoomAir(p.RoomTemperature, p.RoomHumidity);
        for (var i = 0; i < tanks; i++)
        {
            tank[i].Start(p.SupplyTemperature);
        }

        Array.Clear(solutes);
        groups = 0;
        first = 0;
        Booster = p.Booster is { } booster ? booster.Heater.SetPoint - StandBy(booster) : p.SupplyTemperature;
        BoosterOn = false;
        Dosing = false;
        asksForDetergent = false;
        hold = 0;
        phase = Phase.Idle;
        phaseLeft = 0;
        OpenLedgers();
    }

    // A booster that stood over night sits inside its band, a third of it below the middle.
    private static double StandBy(BoosterParameters booster) => booster.Heater.Band / 3;

    /// <summary>Opens the ledgers at what is there now.</summary>
    public void OpenLedgers()
    {
        Water.Open(StoredWater());
        Heat.Open(StoredHeat());
        for (var k = 0; k < Solute.Count; k++)
        {
            Content[k].Open(StoredSolute(k));
        }
    }

    /// <summary>Largest relative gap of all ledgers.</summary>
    public double LargestGap()
    {
        var gap = Math.Max(Water.Gap(StoredWater()), Heat.Gap(StoredHeat()));
        for (var k = 0; k < Solute.Count; k++)
        {
            gap = Math.Max(gap, Content[k].Gap(StoredSolute(k)));
        }

        return gap;
    }

    /// <summary>One step of <paramref name="dt"/> seconds; on a door machine not past the end of a phase, see <see cref="UntilPhaseEnds"/>.</summary>
    public void Step(double dt)
    {
        Move(dt);
        Control();
        HeatBooster(dt);
        StepWare(dt);
        StepWater(dt);
        StepHeat(dt);
        StepSolutes(dt);
        LeaveBaths();
        Book(dt);
        Time += dt;
        NextPhase(dt);
        Drop();
    }

    private double StoredWater()
    {
        double sum = 0;
        for (var i = 0; i < tanks; i++)
        {
            sum += tank[i].Mass;
        }

        for (var g = 0; g < groups; g++)
        {
            sum += Group(g).Bath < 0 ? GroupFilm : 0;
        }

        return sum;
    }

    private double StoredHeat()
    {
        var sum = p.Booster is { } booster ? booster.Capacity * Booster : 0;
        for (var i = 0; i < tanks; i++)
        {
            sum += ((tank[i].Mass * HeatCapacity) + p.Tanks[i].Metal) * tank[i].Celsius;
        }

        for (var g = 0; g < groups; g++)
        {
            sum += HeatOf(Group(g));
        }

        return sum;
    }

    private double StoredSolute(int k)
    {
        double sum = 0;
        for (var i = 0; i < tanks; i++)
        {
            sum += solutes[(i * Solute.Count) + k];
        }

        for (var g = 0; g < groups; g++)
        {
            sum += SoluteOf(Group(g), k);
        }

        return sum;
    }

    private double GroupFilm => p.Ware.CarryOver / p.Ware.Groups;

    private double HeatOf(WareGroup group) =>
        ((p.Ware.PieceHeat * group.Mean) + (p.Ware.RackHeat * group.Rack)) / p.Ware.Groups
        + (group.Bath < 0 ? GroupFilm * HeatCapacity * group.Film : 0);

    private double SoluteOf(WareGroup group, int k) =>
        (group.Bath < 0 ? GroupFilm * group.FilmShare[k] : 0) + (k == Solute.Soil ? group.Soil : 0);
}
