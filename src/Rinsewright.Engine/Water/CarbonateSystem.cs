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
    private const int MostSteps = 200;

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
    public double Precipitable(in CarbonateConstants at) => Fallen(Search(at, precipitate: true), at);

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
    private double Fallen(double pH, in CarbonateConstants at)
    {
        var s = Speciation.At(pH, at);
        return (Alkalinity - s.Free - (Carbon * s.Charge)) / (2 - s.Charge);
    }

    private double Search(in CarbonateConstants at, bool precipitate)
    {
        var (low, high) = (LowestPH, HighestPH);
        var (pH, before) = (8.0, double.NaN);
        var (fLow, fHigh) = (double.NegativeInfinity, double.PositiveInfinity);
        for (var step = 0; step < MostSteps && high - low > Closeness; step++)
        {
            var f = precipitate ? Supersaturation(pH, at) : ChargeGap(pH, 0, at);
            if (f == 0)
            {
                return pH;
            }

            if (f < 0)
            {
                (low, fLow) = (pH, f);
            }
            else
            {
                (high, fHigh) = (pH, f);
            }

            // Secant through the bracket where it shrinks well; halving where it does not, or where an end is not finite.
            var next = low + ((high - low) * (fLow / (fLow - fHigh)));
            var slow = step % 3 == 2 || !(next > low && next < high);
            before = pH;
            pH = slow ? low + ((high - low) / 2) : next;
            if (pH == before)
            {
                return pH;
            }
        }

        return pH;
    }

    private double Supersaturation(double pH, in CarbonateConstants at)
    {
        var fallen = Fallen(pH, at);
        var (calcium, carbon) = (Calcium - fallen, Carbon - fallen);
        return calcium > 0 && carbon > 0
            ? Math.Log10(calcium * carbon * Speciation.At(pH, at).Carbonate) - (8 * at.PF) + at.PKs
            : double.NegativeInfinity;
    }

    // Shares of the carbonate at a pH, its charge for each mol, and the charge that water itself adds (OH⁻ less H⁺), all as concentrations.
    private readonly record struct Speciation(double Carbonate, double Charge, double Free)
    {
        public static Speciation At(double pH, in CarbonateConstants at)
        {
            var bicarbonate = Math.Pow(10, pH - at.PK1 + at.PF);
            var carbonate = bicarbonate * Math.Pow(10, pH - at.PK2 + (3 * at.PF));
            var all = 1 + bicarbonate + carbonate;
            var free = Math.Pow(10, pH + at.PF - at.PKw) - Math.Pow(10, at.PF - pH);
            return new Speciation(carbonate / all, (bicarbonate + (2 * carbonate)) / all, free);
        }
    }
}
