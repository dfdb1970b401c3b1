namespace Rinsewright.Engine.Machines;

/// <summary>
/// Solutes in the steady state: the flows are known, so each solute is a linear system in the tanks' shares. Equations M19 to M21. One instance may be used again by one
/// caller at a time; it allocates nothing once made.
/// </summary>
/// <param name="tanks">Tanks of the machines to be solved.</param>
internal sealed class SteadySolutes(int tanks)
{
    private readonly double[] matrix = new double[tanks * tanks];
    private readonly double[] right = new double[tanks];
    private ModelParameters p = null!;
    private SteadySolution s = null!;
    private int lastBath;

    /// <summary>Detergent in each tank, kg/kg.</summary>
    public double[] Detergent { get; } = new double[tanks];

    /// <summary>Rinse additive in each tank, kg/kg.</summary>
    public double[] Additive { get; } = new double[tanks];

    /// <summary>Soil in each tank, kg/kg.</summary>
    public double[] Soil { get; } = new double[tanks];

    /// <summary>Detergent fed, kg/s.</summary>
    public double Fed { get; private set; }

    /// <summary>Share of the soil that is still on the ware when it comes out.</summary>
    public double SoilLeft { get; private set; }

    /// <summary>Detergent in the film on the ware, kg/kg.</summary>
    public double DetergentOnWare => OnWare(Detergent);

    /// <summary>Rinse additive in the film on the ware, kg/kg.</summary>
    public double AdditiveOnWare => (s.FilmKept * (lastBath >= 0 ? Additive[lastBath] : 0)) + ((1 - s.FilmKept) * InRinse);

    // Additive does not evaporate with the rinse water.
    private double InRinse => s.MeanRinse > s.RinseEvaporation ? p.Feed.Additive * s.MeanRinse / (s.MeanRinse - s.RinseEvaporation) : 0;

    /// <summary>Solves for the flows of a solution.</summary>
    public void Solve(ModelParameters parameters, SteadySolution solution)
    {
        p = parameters;
        s = solution;
        var film = s.Duties.Racks * p.Ware.CarryOver;
        Assemble(film);
        SolveDetergent();
        SolveAdditive(film);
        SolveSoil();
    }

    private double OnWare(double[] shares) => lastBath >= 0 ? s.FilmKept * shares[lastBath] : 0;

    private void Assemble(double film)
    {
        Array.Clear(matrix);
        var from = -1;
        for (var i = 0; i < tanks; i++)
        {
            ref readonly var t = ref s.Tanks[i];
            matrix[(i * tanks) + i] += t.Out;
            for (var j = 0; j < tanks; j++)
            {
                matrix[(i * tanks) + j] -=
                    (p.Tanks[j].SpillsTo == i ? s.Tanks[j].Overflow : 0)
                    + (i == j + 1 ? s.Tanks[j].CrossOn : 0)
                    + (i == j - 1 ? s.Tanks[j].CrossBack : 0);
            }

            if (t.Transfer <= 0)
            {
                continue;
            }

            matrix[(i * tanks) + i] += film;
            if (from >= 0)
            {
                matrix[(i * tanks) + from] -= film;
            }

            from = i;
        }

        lastBath = from;
        if (from >= 0)
        {
            // What the final rinse takes off the ware falls into the last tank.
            matrix[((tanks - 1) * tanks) + from] -= film * (1 - s.FilmKept);
        }

        for (var i = 0; i < tanks; i++)
        {
            // Nothing leaves an idle or empty tank; anything but 0 keeps its row solvable.
            matrix[(i * tanks) + i] += 1e-12;
        }

        SmallSystem.Factor(matrix, tanks);
    }

    // The controller holds its reading at the set point as long as the feeder can.
    private void SolveDetergent()
    {
        Array.Clear(Detergent);
        Fed = 0;
        var wash = p.Wash;
        ref readonly var t = ref s.Tanks[wash];
        if (p.Feed.Rate <= 0 || p.Feed.Detergent <= 0 || s.Duties.Pumps <= 0 || t.Mass <= p.Tanks[wash].LowWater)
        {
            return;
        }

        Detergent[wash] = 1;
        SmallSystem.Solve(matrix, Detergent, tanks);
        Fed = Math.Min(p.Feed.Detergent / (p.Feed.Probe * Detergent[wash]), p.Feed.Rate * s.Duties.Pumps);
        for (var i = 0; i < tanks; i++)
        {
            Detergent[i] *= Fed;
        }
    }

    private void SolveAdditive(double film)
    {
        Array.Clear(Additive);
        var caught = s.MeanRinse > 0 ? s.Captured / (s.Captured + s.Bypassed) : 0;
        Additive[tanks - 1] = (s.Captured - (caught * film * (1 - s.FilmKept))) * InRinse;
        SmallSystem.Solve(matrix, Additive, tanks);
    }

    private void SolveSoil()
    {
        Array.Clear(Soil);
        var left = 1.0;
        for (var i = 0; i < tanks; i++)
        {
            ref readonly var t = ref s.Tanks[i];
            if (t.Transfer <= 0)
            {
                continue;
            }

            var kept = Math.Exp(-SoilRemoval.Rate(p, i, t.Spray.Spray, t.Celsius, i == p.Wash ? Detergent[i] : 0) * Duties.SecondsIn(p, i));
            Soil[i] = s.Duties.Racks * p.Ware.Soil * left * (1 - kept);
            left *= kept;
        }

        SoilLeft = left;
        SmallSystem.Solve(matrix, Soil, tanks);
    }
}

/// <summary>How fast a spray takes soil off: a teaching number, not physics. Equation M6.</summary>
internal static class SoilRemoval
{
    /// <summary>Share per second.</summary>
    public static double Rate(ModelParameters p, int tank, double spray, double celsius, double detergent)
    {
        var pump = p.Tanks[tank].Pump;
        var chemistry = tank == p.Wash && p.Feed.Needed > 0 ? 0.1 + (0.9 * Math.Min(1.5, detergent / p.Feed.Needed)) : 0.5;
        return 0.20 * (spray / pump.Circuit.Nominal) * pump.Coverage * Math.Pow(2, (celsius - 65) / 15) * chemistry;
    }
}
