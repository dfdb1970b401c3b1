using Rinsewright.Engine.Quantities;

namespace Rinsewright.Engine.Chemistry;

/// <summary>A builder that holds calcium in solution.</summary>
public enum Builder
{
    /// <summary>Sodium tripolyphosphate.</summary>
    Tripolyphosphate,

    /// <summary>EDTA, tetrasodium.</summary>
    Edta,

    /// <summary>NTA, trisodium.</summary>
    Nta,

    /// <summary>MGDA, trisodium.</summary>
    Mgda,

    /// <summary>GLDA, tetrasodium.</summary>
    Glda,

    /// <summary>Trisodium citrate dihydrate; weak at the pH of a wash.</summary>
    Citrate,
}

/// <summary>
/// Builder that hardness asks for. Equation C45: one mol for each mol of calcium. With tripolyphosphate the film is worst at 5 calcium to 2 and least at 1 to 1 [vance-1969], so half the
/// detergent is much worse than half as good.
/// </summary>
public static class Sequestrant
{
    private const double LimeMolarMass = 100.087;

    /// <summary>Grams for each gram of hardness as calcium carbonate, one to one.</summary>
    public static double PerGram(Builder builder) =>
        builder switch
        {
            Builder.Tripolyphosphate => 367.86 / LimeMolarMass,
            Builder.Edta => 380.17 / LimeMolarMass,
            Builder.Nta => 257.08 / LimeMolarMass,
            Builder.Mgda => 271.11 / LimeMolarMass,
            Builder.Glda => 351.1 / LimeMolarMass,
            Builder.Citrate => 294.10 / LimeMolarMass,
            _ => throw new ArgumentOutOfRangeException(nameof(builder)),
        };

    /// <summary>Builder that holds all of a hardness.</summary>
    public static MassConcentration Needed(Hardness hardness, Builder builder) =>
        MassConcentration.FromMilligramPerLitre(PerGram(builder) * hardness.InMilligramPerLitre);

    /// <summary>Tripolyphosphate at which the film is worst: 2 for 5 calcium.</summary>
    public static MassConcentration WorstFilm(Hardness hardness) => Needed(hardness, Builder.Tripolyphosphate) * 0.4;

    /// <summary>Product with a share of builder that holds all of a hardness.</summary>
    public static MassConcentration Product(Hardness hardness, Builder builder, Ratio share)
    {
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(share.InFraction, nameof(share));
        return Needed(hardness, builder) / share.InFraction;
    }
}
