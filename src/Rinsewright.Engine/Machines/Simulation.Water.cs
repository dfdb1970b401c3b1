using Rinsewright.Engine.Water;

namespace Rinsewright.Engine.Machines;

// Masses, temperatures and solutes of the tanks: equations M7 to M11.
internal sealed partial class Simulation
{
    private readonly double[] matrix;
    private readonly double[] right;
    private readonly double[] before;
    private readonly double[] share;
    private double captured;
    private double bypassed;

    /// <summary>Final rinse after it has met air and ware, °C.</summary>
    public double RinseSpent { get; private set; }

    /// <summary>Final rinse that by-passes the tanks to the drain, kg/s.</summary>
    public double Bypassed => bypassed;

    /// <summary>Water the final rinse gives to the air, kg/s.</summary>
    public double RinseEvaporation => rinseEvaporation;

    /// <summary>Heat the final rinse gives to the air, W.</summary>
    public double RinseVent => rinseVent;

    private void StepWater(double dt)
    {
        var last = tanks - 1;
        var left = RinseFlow - rinseEvaporation;
        var caught = p.Rinse?.Captured ?? 0;
        captured = caught * (left - (rinseReplaced / dt));
        bypassed = (1 - caught) * (left - (rinseReplaced / dt));
        RinseSpent = left > 0 ? ((RinseFlow * HeatCapacity * Booster) - rinseVent - (rinseToWare / dt)) / (left * HeatCapacity) : Booster;
        for (var i = 0; i < tanks; i++)
        {
            Flows(i);
        }

        for (var i = last; i >= 0; i--)
        {
            var s = tank[i];
            var gain = s.Fill + ((s.FilmIn - s.FilmOut) / dt) - s.Evaporation - s.CrossOn - s.CrossBack - s.Floor - s.Drained;
            gain += i == last ? captured + (rinseReplaced / dt) : 0;
            gain += i > 0 ? tank[i - 1].CrossOn : 0;
            gain += i < last ? tank[i + 1].CrossBack : 0;
            for (var j = i + 1; j < tanks; j++)
            {
                gain += p.Tanks[j].SpillsTo == i ? tank[j].Overflow : 0;
            }

            before[i] = s.Mass;
            var step = Outlet.Of(Opening(i), p.Tanks[i].Surface).Step(s.Mass, gain, p.Tanks[i].Full, dt);
            s.Mass = step.Mass;
            s.Leak = step.Leak;
            s.Overflow = step.Overflow;
        }
    }

    private double Opening(int i) => p.Tanks[i].Leak + (phase == Phase.Dwell && p.Travel.Cycle is { Dumps: true } cycle ? cycle.Dump : 0);

    private void Flows(int i)
    {
        var s = tank[i];
        var pump = p.Tanks[i].Pump;
        double total = s.Spray.Total * LiquidWater.Density,
            cap = s.Spray.Cap * LiquidWater.Density;
        s.CrossOn = i + 1 < tanks ? pump.Cross * total : 0;
        s.CrossBack = i > 0 ? p.Tanks[i - 1].Pump.Cross * total : 0;
        s.Floor = (pump.ThrownOut * total) + (pump.OpenEndOut * cap);
        s.Drained = pump.ToDrain * total;
        s.Vent = 0;
        s.VentSlope = 0;
        s.Evaporation = 0;
        if (s.Mass >= Steams * p.Tanks[i].Full)
        {
            var vent = VentExchange.Of(AirThrough(i), p.AirApproach, s.Celsius, room);
            s.Vent = vent.Heat;
            s.VentSlope = vent.HeatPerKelvin;
            s.Evaporation = vent.Evaporation;
        }
    }

    private double AirThrough(int i)
    {
        var t = p.Tanks[i];
        var open = phase == Phase.Load && p.Travel.Cycle is { } cycle ? cycle.AirOpen : 0;
        return (p.AirFactor * (tank[i].Spray.Total > 0 ? t.AirRunning : t.AirIdle)) + open;
    }

    private void StepHeat(double dt)
    {
        var last = tanks - 1;
        for (var i = 0; i < tanks; i++)
        {
            var t = p.Tanks[i];
            var s = tank[i];
            for (var j = 0; j < tanks; j++)
            {
                matrix[(i * tanks) + j] = i == j ? 0 : -dt * HeatCapacity * Between(j, i);
            }

            matrix[(i * tanks) + i] =
                (s.Mass * HeatCapacity) + t.Metal + (dt * ((HeatCapacity * LiquidOut(i, dt)) + t.Shell + s.VentSlope));
            right[i] =
                (((before[i] * HeatCapacity) + t.Metal) * s.Celsius)
                + (
                    dt
                    * (
                        (s.Fill * HeatCapacity * p.SupplyTemperature)
                        + s.Power
                        + PumpHeat(i)
                        + (t.Shell * room.Celsius)
                        - s.Vent
                        + (s.VentSlope * s.Celsius)
                    )
                )
                - s.ToWare
                + s.FilmHeat;
        }

        right[last] += dt * captured * HeatCapacity * RinseSpent;
        for (var g = 0; g < groups; g++)
        {
            var group = Group(g);
            if (group.FilmKept < 1)
            {
                right[last] += (1 - group.FilmKept) * GroupFilm * HeatCapacity * group.Film;
            }
        }

        SmallSystem.Factor(matrix, tanks);
        SmallSystem.Solve(matrix, right, tanks);
        for (var i = 0; i < tanks; i++)
        {
            tank[i].Vent += tank[i].VentSlope * (right[i] - tank[i].Celsius);
            tank[i].Celsius = right[i];
        }
    }

    private double PumpHeat(int i) => tank[i].Spray.Total > 0 ? p.Tanks[i].Pump.Heat : 0;

    private double Between(int from, int to) =>
        (p.Tanks[from].SpillsTo == to ? tank[from].Overflow : 0)
        + (to == from + 1 ? tank[from].CrossOn : 0)
        + (to == from - 1 ? tank[from].CrossBack : 0);

    private double LiquidOut(int i, double dt)
    {
        var s = tank[i];
        return s.Overflow + s.Leak + s.Floor + s.Drained + s.CrossOn + s.CrossBack + (s.FilmOut / dt);
    }

    private void StepSolutes(double dt)
    {
        AddSources(dt);
        if (!HoldsSolutes())
        {
            Array.Clear(share);
            return;
        }

        for (var i = 0; i < tanks; i++)
        {
            for (var j = 0; j < tanks; j++)
            {
                matrix[(i * tanks) + j] = i == j ? tank[i].Mass + (dt * LiquidOut(i, dt)) : -dt * Between(j, i);
            }
        }

        for (var i = 0; i < tanks; i++)
        {
            // An empty tank holds nothing; anything but 0 keeps its row solvable.
            matrix[(i * tanks) + i] = Math.Max(matrix[(i * tanks) + i], 1e-12);
        }

        SmallSystem.Factor(matrix, tanks);
        for (var k = 0; k < Solute.Count; k++)
        {
            for (var i = 0; i < tanks; i++)
            {
                right[i] = solutes[(i * Solute.Count) + k] + tank[i].Source[k];
            }

            SmallSystem.Solve(matrix, right, tanks);
            for (var i = 0; i < tanks; i++)
            {
                share[(i * Solute.Count) + k] = right[i];
                solutes[(i * Solute.Count) + k] = right[i] * tank[i].Mass;
            }
        }

        UseUpSanitizer(dt);
    }

    // A machine that heats up holds none yet: there is nothing to solve for.
    private bool HoldsSolutes()
    {
        var any = solutes.AsSpan().ContainsAnyExcept(0);
        for (var i = 0; i < tanks && !any; i++)
        {
            any = tank[i].Source.AsSpan().ContainsAnyExcept(0);
        }

        return any;
    }
}
