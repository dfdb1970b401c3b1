using Rinsewright.Engine.Quantities;

namespace Rinsewright.Engine.Chemistry;

/// <summary>How much of a substance a product holds.</summary>
/// <param name="Electrolyte">Substance.</param>
/// <param name="Share">Mass of it in the mass of product.</param>
public sealed record Ingredient(Electrolyte Electrolyte, Ratio Share);

/// <summary>
/// Conductivity of a tank with a product in tap water, and back. Equation C12: what each conducts is added up; a mixture conducts 2 to 5 % less than that, so a field factor from one
/// titration belongs to it: (reading − tap) / (computed − tap).
/// </summary>
/// <param name="Ingredients">What conducts in it, from the safety data sheet.</param>
/// <param name="FieldFactor">Found by titration at this machine; 1 until then.</param>
public sealed record ProductConductivity(IReadOnlyList<Ingredient> Ingredients, double FieldFactor = 1)
{
    // Of natural water, per kelvin (customary).
    private const double TapFactor = 0.02;
    private const double MostGramPerLitre = 50;

    /// <summary>Conductivity of the tank at its temperature.</summary>
    /// <param name="strength">Product in it.</param>
    /// <param name="tapAt25">Tap water, referred to 25 °C.</param>
    /// <param name="at">Temperature of the tank.</param>
    public Conductivity Of(MassConcentration strength, Conductivity tapAt25, Temperature at)
    {
        var sum = 0.0;
        foreach (var ingredient in Ingredients)
        {
            sum += SolutionConductivity.Of(ingredient.Electrolyte, ingredient.Share.InFraction * strength, at).InMicrosiemensPerCentimetre;
        }

        return Conductivity.FromMicrosiemensPerCentimetre((FieldFactor * sum) + Tap(tapAt25, at));
    }

    /// <summary>Product in a tank from its conductivity; null where the tap alone conducts more, or beyond 50 g/L.</summary>
    /// <param name="reading">At the temperature of the tank, not compensated by the meter.</param>
    /// <param name="tapAt25">Tap water, referred to 25 °C.</param>
    /// <param name="at">Temperature of the tank.</param>
    public MassConcentration? Strength(Conductivity reading, Conductivity tapAt25, Temperature at)
    {
        var (low, high) = (0.0, MostGramPerLitre);
        if (reading < Of(default, tapAt25, at) || reading > Of(MassConcentration.FromGramPerLitre(high), tapAt25, at))
        {
            return null;
        }

        // Conductivity rises with strength: halving always closes in.
        while (high - low > 1e-12 * high)
        {
            var middle = low + ((high - low) / 2);
            if (middle <= low || middle >= high)
            {
                break;
            }

            (low, high) = Of(MassConcentration.FromGramPerLitre(middle), tapAt25, at) < reading ? (middle, high) : (low, middle);
        }

        return MassConcentration.FromGramPerLitre(low + ((high - low) / 2));
    }

    /// <summary>The same with the field factor that a titration of this tank gives.</summary>
    /// <param name="titrated">Product found by titration.</param>
    /// <param name="reading">Conductivity of the same tank, not compensated.</param>
    /// <param name="tapAt25">Tap water, referred to 25 °C.</param>
    /// <param name="at">Temperature of the tank.</param>
    /// <exception cref="ArgumentOutOfRangeException">Nothing was found, or the tank conducts no more than the tap.</exception>
    public ProductConductivity FittedTo(MassConcentration titrated, Conductivity reading, Conductivity tapAt25, Temperature at)
    {
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(titrated.InGramPerLitre, nameof(titrated));
        var tap = Tap(tapAt25, at);
        var computed = (this with { FieldFactor = 1 }).Of(titrated, tapAt25, at).InMicrosiemensPerCentimetre - tap;
        var factor = (reading.InMicrosiemensPerCentimetre - tap) / computed;
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(factor, nameof(reading));
        return this with { FieldFactor = factor };
    }

    private static double Tap(Conductivity at25, Temperature at) =>
        at25.InMicrosiemensPerCentimetre * (1 + (TapFactor * (at.InCelsius - 25)));
}
