using Rinsewright.Engine.Quantities;

namespace Rinsewright.Engine.Heat;

/// <summary>
/// Rate of a heat dose: it grows exponentially with the temperature of the surface, between a floor and a cap. Equations S1 to S3 of Sanitization. Temperatures in °F,
/// as the source of the heat units has them; the one kernel of every dose here.
/// </summary>
internal sealed class DoseRate
{
    private readonly double atReference;
    private readonly double reference;

    private DoseRate(double atReference, double reference, double exponent, double? cap, double? floor)
    {
        this.atReference = atReference;
        this.reference = reference;
        Exponent = exponent;
        Cap = cap ?? double.PositiveInfinity;
        Floor = floor ?? double.NegativeInfinity;
        AtCap = double.IsFinite(Cap) ? Uncapped(Cap) : double.PositiveInfinity;
    }

    /// <summary>Growth per °F.</summary>
    public double Exponent { get; }

    /// <summary>No further credit above it, °F; infinite where there is no cap.</summary>
    public double Cap { get; }

    /// <summary>No credit below it, °F; minus infinity where all counts.</summary>
    public double Floor { get; }

    /// <summary>Rate at the cap, per second; infinite where there is no cap.</summary>
    public double AtCap { get; }

    /// <summary>Heat unit equivalents, equation S1 [hue-history-2009]; cap and floor in °F, null for none.</summary>
    public static DoseRate HeatUnits(double? cap, double? floor) => new(3.03438e-17, 0, 0.265972, cap, floor);

    /// <summary>A0, equation S3 [iso-15883-1]; floor in °F, null for none.</summary>
    public static DoseRate A0(double? floor) => new(1, Units.Fahrenheit.FromSI(Units.Celsius.ToSI(80)), Math.Log(10) / 18, null, floor);

    /// <summary>Rate at a surface temperature in °F, per second, without floor and cap.</summary>
    public double Uncapped(double surface) => atReference * Math.Exp(Exponent * (surface - reference));

    /// <summary>Rate at a surface temperature in °F, per second.</summary>
    public double At(double surface) =>
        surface < Floor ? 0
        : surface >= Cap ? AtCap
        : Uncapped(surface);

    /// <summary>Dose of a stretch in which the surface goes straight from one temperature to another, both °F. Equation S2, exact.</summary>
    /// <param name="from">At its start.</param>
    /// <param name="to">At its end.</param>
    /// <param name="seconds">Its length.</param>
    public double Over(double from, double to, double seconds)
    {
        double low = Math.Min(from, to),
            high = Math.Max(from, to);
        if (high < Floor || seconds <= 0)
        {
            return 0;
        }

        if (low >= Cap)
        {
            return AtCap * seconds;
        }

        var span = high - low;
        if (span < 1e-9)
        {
            return At(low) * seconds;
        }

        double a = Math.Max(low, Floor),
            b = Math.Min(high, Cap),
            perDegree = seconds / span;
        var rising = b > a ? perDegree * Uncapped(a) * Expm1(Exponent * (b - a)) / Exponent : 0;
        return rising + (high > Cap ? perDegree * (high - Cap) * AtCap : 0);
    }

    // exp(x) − 1 without cancellation for the small steps of a fast logger.
    private static double Expm1(double x) => Math.Abs(x) < 1e-3 ? x * (1 + (x * (0.5 + (x * ((1.0 / 6) + (x / 24)))))) : Math.Exp(x) - 1;
}
