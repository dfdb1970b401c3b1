namespace Rinsewright.Engine.Water;

/// <summary>
/// Carbonate equilibrium in plain numbers: mol/L, eq/L, °C. Equations W20 to W27. Both unknowns of the system lie on a curve that rises with the pH, so one bracketed search
/// always finds them.
/// </summary>
/// <param name="Calcium">Calcium, mol/L.</param>
/// <param name="Carbon">All dissolved carbonate (CO₂, HCO₃⁻, CO₃²⁻), mol/L.</param>
/// <param name="Alkalinity">Alkalinity, eq/L.</param>
/// <param name="IonicStrength">mol/L, held while carbonate falls out.</param>
public readonly record struct CarbonateSystem(double Calcium, double Carbon, double Alkalinity, double IonicStrength)
{
    // pH range searched; nothing that flows from a tap is outside it at any temperature here.
    private const double LowestPH = 0;
    private const double HighestPH = 14;
    private const double Closeness = 1e-13;
    private const int MostSteps = 100;
    private static readonly double Ln10 = Math.Log(10);

    /// <summary>
    /// System from what is measured: the carbonate follows from pH and alkalinity at the temperature of the sample. Null where the alkalinity is less than that pH alone needs: such
    /// a sample cannot be.
    /// </summary>
    public static CarbonateSystem? FromPH(double calcium, double alkalinity, double pH, double ionicStrength, in CarbonateConstants at)
    {
        var s = Speciation.At(pH, at);
        var carbon = (alkalinity - s.Free) / s.Charge;
        return carbon >= 0 ? new CarbonateSystem(calcium, carbon, alkalinity, ionicStrength) : null;
    }

    /// <summary>pH of the system with nothing falling out. Equation W25: charge balance.</summary>
    public double PH(in CarbonateConstants at) => Search(at, precipitate: false);

    /// <summary>Saturation index at a pH: logarithm of how many times the water is saturated. Equation W26.</summary>
    public double SaturationAt(double pH, in CarbonateConstants at)
    {
        var s = Speciation.At(pH, at);
        return Math.Log10(Calcium * Carbon * s.Carbonate) - (8 * at.PF) + at.PKs;
    }

    /// <summary>Carbonate that falls out until the water is just saturated, mol/L; below 0 what it could still dissolve. Equation W27.</summary>
    public double Precipitable(in CarbonateConstants at) => Fallen(Speciation.At(Search(at, precipitate: true), at));

    /// <summary>How far the charges of a solution are from balance, eq/L: for tests.</summary>
    /// <param name="pH">pH of the solution.</param>
    /// <param name="fallen">Calcium carbonate that has fallen out, mol/L.</param>
    /// <param name="at">Constants.</param>
    internal double ChargeGap(double pH, double fallen, in CarbonateConstants at)
    {
        var s = Speciation.At(pH, at);
        return ((Carbon - fallen) * s.Charge) + s.Free - (Alkalinity - (2 * fallen));
    }

    // With x fallen out, charge balance reads (C - x) b + w = Alk - 2 x: x follows from the pH, and both calcium and carbonate left must be above nothing.
    private double Fallen(in Speciation s) => (Alkalinity - s.Free - (Carbon * s.Charge)) / (2 - s.Charge);

    // Chandrupatla's method: inverse quadratic interpolation where three points allow it, halving where they do not, or where an end is not finite. About a dozen steps.
    private double Search(in CarbonateConstants at, bool precipitate)
    {
        var (x1, x2) = (LowestPH, HighestPH);
        var (f1, f2) = (At(x1, at, precipitate), At(x2, at, precipitate));
        var t = 0.5;
        for (var step = 0; step < MostSteps; step++)
        {
            var x = x1 + (t * (x2 - x1));
            var f = At(x, at, precipitate);
            double x3 = x1,
                f3 = f1;
            if (f < 0 != f1 < 0)
            {
                (x3, f3) = (x2, f2);
                (x2, f2) = (x1, f1);
            }

            (x1, f1) = (x, f);
            var best = Math.Abs(f1) < Math.Abs(f2) ? x1 : x2;
            var limit = Closeness / Math.Abs(x2 - x1);
            if (f1 == 0 || limit > 0.5)
            {
                return f1 == 0 ? x1 : best;
            }

            double xi = (x1 - x2) / (x3 - x2),
                phi = (f1 - f2) / (f3 - f2);
            t =
                phi * phi < xi && (1 - phi) * (1 - phi) < 1 - xi
                    ? (f1 / (f2 - f1) * (f3 / (f2 - f3))) + ((x3 - x1) / (x2 - x1) * (f1 / (f3 - f1)) * (f2 / (f3 - f2)))
                    : 0.5;
            t = double.IsFinite(t) ? Math.Clamp(t, limit, 1 - limit) : 0.5;
        }

        return x1;
    }

    private double At(double pH, in CarbonateConstants at, bool precipitate) =>
        precipitate ? Supersaturation(pH, at) : ChargeGap(pH, 0, at);

    private double Supersaturation(double pH, in CarbonateConstants at)
    {
        var s = Speciation.At(pH, at);
        var fallen = Fallen(s);
        var (calcium, carbon) = (Calcium - fallen, Carbon - fallen);
        return calcium > 0 && carbon > 0 ? Math.Log10(calcium * carbon * s.Carbonate) - (8 * at.PF) + at.PKs : double.NegativeInfinity;
    }

    // Shares of the carbonate at a pH, its charge for each mol, and the charge that water itself adds (OH⁻ less H⁺), all as concentrations.
    private readonly record struct Speciation(double Carbonate, double Charge, double Free)
    {
        public static Speciation At(double pH, in CarbonateConstants at)
        {
            var h = Math.Exp(Ln10 * pH);
            var bicarbonate = h * at.Bicarbonate;
            var carbonate = bicarbonate * h * at.Carbonate;
            var all = 1 + bicarbonate + carbonate;
            var free = (h * at.Hydroxide) - (at.Hydrogen / h);
            return new Speciation(carbonate / all, (bicarbonate + (2 * carbonate)) / all, free);
        }
    }
}
