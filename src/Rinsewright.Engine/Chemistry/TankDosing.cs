using Rinsewright.Engine.Quantities;

namespace Rinsewright.Engine.Chemistry;

/// <summary>
/// Detergent in a tank that each rack's rinse water dilutes. Equations C20 to C25: the rinse mixes in while the tank overflows, so that a rack leaves exp(−R/V) of what was there.
/// </summary>
/// <param name="Tank">Water in the tank.</param>
/// <param name="Rinse">Rinse water that reaches the tank for each rack, above 0.</param>
public sealed record TankDosing(Volume Tank, Volume Rinse)
{
    /// <summary>Share of the strength left after so many racks without dosing.</summary>
    public Ratio Left(double racks) => Ratio.FromFraction(Math.Exp(-racks * (Rinse / Tank).InFraction));

    /// <summary>Racks without dosing until half the strength is left.</summary>
    public double RacksToHalf => Math.Log(2) / (Rinse / Tank).InFraction;

    /// <summary>Product for a fill at this strength.</summary>
    public Mass Charge(MassConcentration strength) => strength * Tank;

    /// <summary>Product that holds a strength, fed evenly with each rack.</summary>
    public Mass HoldDose(MassConcentration strength) => strength * Rinse;

    /// <summary>Product that brings the tank back to a strength at the end of each rack, in one pulse: V c (1 − exp(−R/V)).</summary>
    public Mass HoldPulse(MassConcentration strength) => Charge(strength) * (1 - Left(1).InFraction);

    /// <summary>Strength after so many racks from a start, with an even feed for each rack.</summary>
    public MassConcentration After(double racks, MassConcentration start, Mass dose)
    {
        var settled = SettlesAt(dose);
        var left = Left(racks).InFraction;
        return MassConcentration.FromGramPerLitre(settled.InGramPerLitre + ((start.InGramPerLitre - settled.InGramPerLitre) * left));
    }

    /// <summary>Strength that an even feed settles at, whatever the start: dose / rinse.</summary>
    public MassConcentration SettlesAt(Mass dose) => dose / Rinse;

    /// <summary>
    /// Rinse water for each rack that a settled strength with a known dose speaks of: a high strength with a normal dose means that the rinse is short.
    /// </summary>
    /// <param name="dose">Product fed for each rack.</param>
    /// <param name="settled">Strength it has settled at, above 0.</param>
    public static Volume RinseFrom(Mass dose, MassConcentration settled) => dose / settled;

    /// <summary>Product for a day: fills and racks.</summary>
    public Mass Daily(MassConcentration strength, int fills, double racks) => (fills * Charge(strength)) + (racks * HoldDose(strength));
}

/// <summary>Feeding a liquid by time or by cycle. Equations C26 to C28.</summary>
public static class Feeding
{
    /// <summary>Stock for each cycle to reach a strength in the water of a cycle.</summary>
    /// <param name="target">Strength wanted.</param>
    /// <param name="water">Water of a cycle.</param>
    /// <param name="stock">Strength of the stock, above 0.</param>
    public static Volume Dose(MassConcentration target, Volume water, MassConcentration stock) => target * water / stock;

    /// <summary>Strength that a dose gives.</summary>
    public static MassConcentration Strength(Volume dose, MassConcentration stock, Volume water) => stock * dose / water;

    /// <summary>Pump setting: dose over the time it is injected.</summary>
    public static VolumeFlow Setting(Volume dose, Duration injected) => dose / injected;

    /// <summary>Rinse additive for each rack at a share by volume.</summary>
    public static Volume Additive(Ratio share, Volume rinse) => share.InFraction * rinse;

    /// <summary>Time a feeder of a known output has to run for a dose.</summary>
    public static Duration RunTime(Volume dose, VolumeFlow output) => dose / output;

    /// <summary>Liquid that holds a mass of powder-basis product: mass / (density · share).</summary>
    /// <param name="product">Mass on powder basis.</param>
    /// <param name="density">Of the liquid.</param>
    /// <param name="share">Powder-basis product in the liquid, above 0.</param>
    public static Volume Liquid(Mass product, MassConcentration density, Ratio share) => product / (density * share.InFraction);
}
