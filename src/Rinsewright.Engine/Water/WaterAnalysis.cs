using Rinsewright.Engine.Quantities;

namespace Rinsewright.Engine.Water;

/// <summary>A natural water as a drop kit and two meters give it.</summary>
/// <param name="At">Temperature of the sample when its pH was read, 0 to 90 °C.</param>
/// <param name="PH">pH of the sample, 5 to 11.</param>
/// <param name="CalciumHardness">Calcium hardness. Where only the total is known, it is the most it can be.</param>
/// <param name="Alkalinity">Alkalinity to the M end point.</param>
/// <param name="Dissolved">All dissolved solids; gives the ionic strength.</param>
public sealed record WaterAnalysis(Temperature At, Acidity PH, Hardness CalciumHardness, Alkalinity Alkalinity, MassConcentration Dissolved)
{
    // mol/L for each mg/L of dissolved solids; for each µS/cm [ionic-strength-rules].
    private const double StrengthPerSolids = 2.5e-5;
    private const double StrengthPerConductivity = 1.6e-5;

    // mg of calcium carbonate in a mol, and in an equivalent.
    private const double CarbonatePerMole = 100087;
    private const double CarbonatePerEquivalent = CarbonatePerMole / 2;

    /// <summary>Ionic strength, mol/L = 2.5·10⁻⁵ · dissolved solids in mg/L. Equation W23.</summary>
    public double IonicStrength => StrengthPerSolids * Dissolved.InMilligramPerLitre;

    /// <summary>Dissolved solids that a conductivity stands for, by the ionic strength both give. Equation W23.</summary>
    /// <param name="at25">Conductivity at 25 °C.</param>
    public static MassConcentration DissolvedFrom(Conductivity at25) =>
        MassConcentration.FromMilligramPerLitre(at25.InMicrosiemensPerCentimetre * StrengthPerConductivity / StrengthPerSolids);

    /// <summary>Constants of this water at a temperature.</summary>
    public CarbonateConstants ConstantsAt(Temperature temperature, CarbonateCrystal crystal = CarbonateCrystal.Calcite) =>
        new(temperature.InCelsius, IonicStrength, crystal);

    /// <summary>The carbonate system of this water.</summary>
    /// <exception cref="InvalidOperationException">The alkalinity is less than a pH this high alone needs: one of the two readings is wrong.</exception>
    public CarbonateSystem Carbonates() =>
        CarbonateSystem.FromPH(
            CalciumHardness.InMilligramPerLitre / CarbonatePerMole,
            Alkalinity.InMilligramPerLitre / CarbonatePerEquivalent,
            PH.InPH,
            IonicStrength,
            ConstantsAt(At)
        ) ?? throw new InvalidOperationException("The alkalinity is less than this pH alone needs; read both again.");

    internal static MassConcentration AsCarbonate(double molePerLitre) =>
        MassConcentration.FromMilligramPerLitre(molePerLitre * CarbonatePerMole);
}

/// <summary>What happens to the carbon dioxide while water is heated.</summary>
public enum Heating
{
    /// <summary>Nothing leaves: a pipe, a booster, a closed tank. The pH follows from the balance.</summary>
    Closed,

    /// <summary>The pH stays as it was read. Nearer to a spray or an open tank, which lose carbon dioxide.</summary>
    SamePH,
}

/// <summary>
/// Indices of scale at a temperature. They say which way a water tends, not how much scale there will be; <see cref="Precipitable"/> says how much could fall out. Ion pairs are
/// left out: in hot water they lower the saturation by 0.02 to 0.1 (estimate).
/// </summary>
/// <param name="At">Temperature they hold for.</param>
/// <param name="PH">pH there.</param>
/// <param name="Saturation">Saturation (Langelier) index: logarithm of how many times the water is saturated; above 0 scale forms. Equation W26.</param>
/// <param name="Ryznar">Stability (Ryznar) index, 2 pHs − pH; below 6 scale, 6 to 7 near neutral.</param>
/// <param name="Puckorius">Practical scaling (Puckorius) index, 2 pHs − pHeq, pHeq = 1.465 log₁₀(alkalinity in mg/L) + 4.54; below 6 scale.</param>
/// <param name="Precipitable">Calcium carbonate that falls out until the water is saturated; below 0 what it would dissolve. Equation W27.</param>
public sealed record ScaleIndices(
    Temperature At,
    Acidity PH,
    double Saturation,
    double Ryznar,
    double Puckorius,
    MassConcentration Precipitable
)
{
    /// <summary>Indices of a water at a temperature.</summary>
    /// <param name="water">Analysis.</param>
    /// <param name="at">Temperature, 0 to 90 °C.</param>
    /// <param name="heating">What happens on the way there.</param>
    /// <param name="crystal">Crystal whose solubility counts.</param>
    /// <exception cref="ArgumentException">An analysis that cannot be, or one without calcium or alkalinity: nothing to have an index of.</exception>
    public static ScaleIndices Of(
        WaterAnalysis water,
        Temperature at,
        Heating heating = Heating.Closed,
        CarbonateCrystal crystal = CarbonateCrystal.Calcite
    )
    {
        if (water.CalciumHardness.InMilligramPerLitre <= 0 || water.Alkalinity.InMilligramPerLitre <= 0)
        {
            throw new ArgumentException("No calcium or no alkalinity: such water has no scale index.", nameof(water));
        }

        var constants = water.ConstantsAt(at, crystal);
        var system = water.Carbonates();
        double pH;
        if (heating == Heating.Closed)
        {
            pH = system.PH(constants);
        }
        else
        {
            pH = water.PH.InPH;
            system =
                CarbonateSystem.FromPH(system.Calcium, system.Alkalinity, pH, system.IonicStrength, constants)
                ?? throw new ArgumentException("The alkalinity is less than this pH alone needs.", nameof(water));
        }

        var saturation = system.SaturationAt(pH, constants);
        var saturated = pH - saturation;
        var balanced = (1.465 * Math.Log10(water.Alkalinity.InMilligramPerLitre)) + 4.54;
        return new ScaleIndices(
            at,
            Acidity.FromPH(pH),
            saturation,
            (2 * saturated) - pH,
            (2 * saturated) - balanced,
            WaterAnalysis.AsCarbonate(system.Precipitable(constants))
        );
    }
}
