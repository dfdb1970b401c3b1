using Rinsewright.Engine.Quantities;

namespace Rinsewright.Engine.Heat;

/// <summary>A stretch of a plate's way in which what it meets stays the same.</summary>
/// <param name="Coefficient">At both faces, W/(m² K), not negative.</param>
/// <param name="Fluid">Water or air it meets, °C.</param>
/// <param name="Seconds">How long, not negative.</param>
internal readonly record struct PlatePhase(double Coefficient, double Fluid, double Seconds);

/// <summary>What became of a plate.</summary>
/// <param name="Peak">Hottest its surface was, °C.</param>
/// <param name="HeatUnits">HUE its surface gathered.</param>
/// <param name="A0">A0 its surface gathered, s.</param>
/// <param name="Mean">Its mean temperature at the end, °C.</param>
/// <param name="Surface">Its surface at the end, °C.</param>
internal readonly record struct PlateResult(double Peak, double HeatUnits, double A0, double Mean, double Surface);

/// <summary>The curve of a pass, one entry a substep and one more at each change of phase, where the surface jumps.</summary>
internal sealed class PlateCurve
{
    private readonly List<double> seconds = [];
    private readonly List<double> surface = [];
    private readonly List<double> heatUnits = [];
    private readonly List<int> phase = [];

    /// <summary>Time since the start, s.</summary>
    public IReadOnlyList<double> Seconds => seconds;

    /// <summary>Surface, °C.</summary>
    public IReadOnlyList<double> Surface => surface;

    /// <summary>HUE gathered so far.</summary>
    public IReadOnlyList<double> HeatUnits => heatUnits;

    /// <summary>Index of the phase.</summary>
    public IReadOnlyList<int> Phase => phase;

    internal void Clear()
    {
        seconds.Clear();
        surface.Clear();
        heatUnits.Clear();
        phase.Clear();
    }

    internal void Add(double at, double celsius, double units, int inPhase)
    {
        seconds.Add(at);
        surface.Add(celsius);
        heatUnits.Add(units);
        phase.Add(inPhase);
    }
}

/// <summary>
/// A plate that rides through phases, both faces alike: surface, peak, heat units, A0. Equations H1 to H6. Exact in time; 16 cells give HUE 0.4 % low against a fully resolved
/// plate, 8 cells 1.6 %. One instance may be used again and again by one caller at a time; a pass allocates nothing.
/// </summary>
internal sealed class PlatePass
{
    /// <summary>Longest substep, s, in which the surface is taken as a straight line when nothing else is said.</summary>
    public const double UsualSubstep = 0.25;

    private static readonly double NoCreditBelow = 143;
    private static readonly double NoMoreAbove = 165;
    private readonly SlabPropagators propagators;
    private readonly double[] cells;
    private readonly DoseRate heatUnits;
    private readonly DoseRate a0;

    /// <summary>A pass with a number of cells over the whole thickness, even.</summary>
    /// <param name="cells">Cells over the whole thickness, even, at least 2.</param>
    /// <param name="heatUnits">Rate of the heat units; null for cap 165 °F and floor 143 °F.</param>
    /// <param name="a0">Rate of A0; null for a floor of 65 °C.</param>
    public PlatePass(int cells = 16, DoseRate? heatUnits = null, DoseRate? a0 = null)
    {
        if (cells < 2 || cells % 2 != 0)
        {
            throw new ArgumentOutOfRangeException(nameof(cells), cells, "An even number of cells, 2 or more.");
        }

        this.cells = new double[cells / 2];
        propagators = new SlabPropagators(16, cells / 2);
        this.heatUnits = heatUnits ?? DoseRate.HeatUnits(NoMoreAbove, NoCreditBelow);
        this.a0 = a0 ?? DoseRate.A0(Fahrenheit(65));
    }

    /// <summary>Cells over the whole thickness.</summary>
    public int Cells => cells.Length * 2;

    /// <summary>Takes a plate through phases.</summary>
    /// <param name="material">What it is made of.</param>
    /// <param name="thickness">m, above 0.</param>
    /// <param name="start">Its temperature at the start, °C.</param>
    /// <param name="phases">Phases in their order.</param>
    /// <param name="substep">Longest substep, s.</param>
    /// <param name="curve">Receives the curve; null where only the result is wanted.</param>
    public PlateResult Run(
        Material material,
        double thickness,
        double start,
        ReadOnlySpan<PlatePhase> phases,
        double substep = UsualSubstep,
        PlateCurve? curve = null
    )
    {
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(thickness);
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(substep);
        cells.AsSpan().Fill(start);
        curve?.Clear();
        double peak = start,
            surface = start,
            units = 0,
            equivalent = 0,
            time = 0;
        for (var p = 0; p < phases.Length; p++)
        {
            var phase = phases[p];
            if (phase.Seconds <= 0)
            {
                continue;
            }

            var steps = (int)Math.Ceiling((phase.Seconds / substep) - 1e-9);
            var dt = phase.Seconds / steps;
            var propagator = propagators.For(Slab.Symmetric(material, thickness, Cells, phase.Coefficient), dt);
            surface = propagator.LeftSurface(cells, phase.Fluid);
            peak = Math.Max(peak, surface);
            curve?.Add(time, surface, units, p);
            for (var i = 1; i <= steps; i++)
            {
                propagator.Step(cells, phase.Fluid, 0);
                var before = surface;
                surface = propagator.LeftSurface(cells, phase.Fluid);
                peak = Math.Max(peak, surface);
                double from = Fahrenheit(before),
                    to = Fahrenheit(surface);
                units += heatUnits.Over(from, to, dt);
                equivalent += a0.Over(from, to, dt);
                curve?.Add(time + (i * dt), surface, units, p);
            }

            time += phase.Seconds;
        }

        return new PlateResult(peak, units, equivalent, SlabPropagator.Mean(cells), surface);
    }

    private static double Fahrenheit(double celsius) => Units.Fahrenheit.FromSI(Units.Celsius.ToSI(celsius));
}
