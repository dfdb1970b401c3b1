using System.Numerics;
using Rinsewright.Engine.Heat;

namespace Rinsewright.Engine.Machines;

/// <summary>
/// <see cref="PlatePass"/> for several machines side by side. In time by a two-stage implicit rule of second order that damps what is fast (L-stable), u' = (1 + √2) M⁻² u − √2 M⁻¹ u with
/// M = 1 − (1 − 1/√2) Δt A: a thin steel plate and a thick bowl take the same steps. Within 0.2 % of the exact propagators at the same steps.
/// </summary>
internal sealed class PlateLanes
{
    // Cells over half a plate; as the scalar pass.
    private const int Cells = 8;
    private const double Celsius165 = 73.88888888888889;
    private static readonly double Gamma = 1 - (1 / Math.Sqrt(2));
    private static readonly double Root2 = Math.Sqrt(2);
    private static readonly DoseLanes HeatUnitDose = new(DoseRate.HeatUnits(165, 143));
    private static readonly DoseLanes A0Dose = new(DoseRate.A0(149));

    private readonly Vector<double>[] u = new Vector<double>[Cells];
    private readonly Vector<double>[] v = new Vector<double>[Cells];
    private readonly Vector<double>[] w = new Vector<double>[Cells];
    private readonly Vector<double>[] pivot = new Vector<double>[Cells];
    private readonly PlatePhase[][] phases = [.. Enumerable.Range(0, Lanes.Count).Select(_ => new PlatePhase[PlateWay.Most])];
    private Vector<double> conductivity;
    private Vector<double> width;
    private Vector<double> capacity;
    private Vector<double> off;

    /// <summary>Hottest surface, °C.</summary>
    public Vector<double> Peak { get; private set; }

    /// <summary>HUE.</summary>
    public Vector<double> HeatUnits { get; private set; }

    /// <summary>A0, s.</summary>
    public Vector<double> A0 { get; private set; }

    /// <summary>Mean at the end, °C.</summary>
    public Vector<double> Mean { get; private set; }

    /// <summary>A lane's result.</summary>
    public PlateResult Lane(int lane) => new(Peak[lane], HeatUnits[lane], A0[lane], Mean[lane], double.NaN);

    /// <summary>Takes a plate through each machine.</summary>
    /// <param name="machines">One a lane.</param>
    /// <param name="solved">Their solutions.</param>
    /// <param name="substeps">Substeps of each phase, the same whoever the neighbours are.</param>
    public void Run(ModelParameters[] machines, SteadyLanes solved, ReadOnlySpan<int> substeps)
    {
        Vector<double> start = default;
        for (var lane = 0; lane < Lanes.Count; lane++)
        {
            var p = machines[lane];
            PlateWay.Phases(p, solved.Lane(lane), phases[lane]);
            var half = p.Ware.Thickness / 2 / Cells;
            Lanes.Set(ref conductivity, lane, p.Ware.Material.Conductivity);
            Lanes.Set(ref width, lane, half);
            Lanes.Set(ref capacity, lane, p.Ware.Material.HeatPerVolume * half);
            Lanes.Set(ref start, lane, p.Ware.In);
        }

        Peak = start;
        HeatUnits = A0 = Vector<double>.Zero;
        Array.Fill(u, start);
        var fluid = Vector<double>.Zero;
        for (var k = 0; k < substeps.Length; k++)
        {
            if (substeps[k] > 0)
            {
                fluid = Phase(k, substeps[k], fluid);
            }
        }

        Mean = fluid;
        foreach (var cell in u)
        {
            Mean += cell / Cells;
        }
    }

    // u is the temperature above the fluid of the phase, of the first phase above 0.
    private Vector<double> Phase(int k, int steps, Vector<double> before)
    {
        Vector<double> coefficient = default,
            fluid = default,
            dt = default;
        for (var lane = 0; lane < Lanes.Count; lane++)
        {
            var phase = phases[lane][k];
            Lanes.Set(ref coefficient, lane, phase.Coefficient);
            Lanes.Set(ref fluid, lane, phase.Fluid);
            Lanes.Set(ref dt, lane, phase.Seconds / steps);
        }

        for (var i = 0; i < Cells; i++)
        {
            u[i] += before - fluid;
        }

        Factor(coefficient, dt);
        var inside = 2 * conductivity / width;
        var weight = inside / (inside + coefficient);
        var surface = fluid + (weight * u[0]);
        Peak = Vector.Max(Peak, surface);
        for (var step = 0; step < steps; step++)
        {
            u.CopyTo(v, 0);
            Solve(v);
            v.CopyTo(w, 0);
            Solve(w);
            for (var i = 0; i < Cells; i++)
            {
                u[i] = ((1 + Root2) * w[i]) - (Root2 * v[i]);
            }

            var next = fluid + (weight * u[0]);
            Peak = Vector.Max(Peak, next);
            HeatUnits += HeatUnitDose.Over(surface, next, dt);
            A0 += A0Dose.Over(surface, next, dt);
            surface = next;
        }

        return fluid;
    }

    // M is symmetric and tridiagonal, with the same number beside the diagonal everywhere.
    private void Factor(Vector<double> coefficient, Vector<double> dt)
    {
        var scale = Gamma * dt / capacity;
        var between = scale * conductivity / width;
        var face = scale / ((Vector<double>.One / Vector.Max(coefficient, Vector.Create(1e-12))) + (width / (2 * conductivity)));
        off = -between;
        for (var i = 0; i < Cells; i++)
        {
            var diagonal = Vector<double>.One + (i == 0 ? face : between) + (i == Cells - 1 ? Vector<double>.Zero : between);
            pivot[i] = Vector<double>.One / (i == 0 ? diagonal : diagonal - (off * off * pivot[i - 1]));
        }
    }

    private void Solve(Vector<double>[] x)
    {
        for (var i = 1; i < Cells; i++)
        {
            x[i] -= off * pivot[i - 1] * x[i - 1];
        }

        x[Cells - 1] *= pivot[Cells - 1];
        for (var i = Cells - 2; i >= 0; i--)
        {
            x[i] = (x[i] - (off * x[i + 1])) * pivot[i];
        }
    }

    // DoseRate.Over, equation S2, in °C.
    private readonly struct DoseLanes(DoseRate rate)
    {
        private readonly double floor = Below(rate.Floor);
        private readonly double cap = Below(rate.Cap);
        private readonly double growth = rate.Exponent * 1.8;
        private readonly double atReference = rate.Uncapped((Celsius165 * 1.8) + 32);
        private readonly double atCap = double.IsFinite(rate.Cap) ? rate.AtCap : 0;

        public Vector<double> Over(Vector<double> from, Vector<double> to, Vector<double> seconds)
        {
            Vector<double> low = Vector.Min(from, to),
                high = Vector.Max(from, to);
            if (!Vector.GreaterThanAny(high, Vector.Create(floor)))
            {
                return Vector<double>.Zero;
            }

            Vector<double> a = Vector.Min(Vector.Max(low, Vector.Create(floor)), Vector.Create(cap)),
                b = Vector.Max(a, Vector.Min(high, Vector.Create(cap)));
            var span = Vector.Max(high - low, Vector.Create(1e-9));
            var rising = (Rate(b) - Rate(a)) / growth;
            // A surface that stands still has no slope to divide by.
            var still = Vector.LessThan(high - low, Vector.Create(1e-6));
            var inside = Vector.ConditionalSelect(still & Vector.GreaterThan(low, Vector.Create(floor)), Rate(a) * span, rising);
            var above = Vector.Max(Vector<double>.Zero, high - Vector.Max(low, Vector.Create(cap))) * atCap;
            inside = Vector.ConditionalSelect(still & Vector.GreaterThan(low, Vector.Create(cap)), Vector<double>.Zero, inside);
            above = Vector.ConditionalSelect(still & Vector.GreaterThan(low, Vector.Create(cap)), atCap * span, above);
            return seconds / span * (inside + above);
        }

        private Vector<double> Rate(Vector<double> celsius) => atReference * Vector.Exp(growth * (celsius - Vector.Create(Celsius165)));

        private static double Below(double fahrenheit) => double.IsPositiveInfinity(fahrenheit) ? 1e3 : (fahrenheit - 32) / 1.8;
    }
}
