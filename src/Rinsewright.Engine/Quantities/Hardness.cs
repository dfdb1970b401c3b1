namespace Rinsewright.Engine.Quantities;

/// <summary>Hardness of water, counted as calcium carbonate. SI unit kg/m³ as CaCO₃. <c>default</c> is soft water, hardness 0.</summary>
public readonly record struct Hardness : IQuantity<Hardness>
{
    private readonly double si;

    private Hardness(double si) => this.si = Guard.Finite(si, nameof(Hardness));

    /// <inheritdoc/>
    public static Dimension Dimension => Dimension.Hardness;

    /// <summary>Value in mg/L as CaCO₃.</summary>
    public double InMilligramPerLitre => Units.HardnessMilligramPerLitre.FromSI(si);

    /// <summary>Value in grains per US gallon.</summary>
    public double InGrainPerGallon => Units.GrainPerGallon.FromSI(si);

    /// <summary>Value in German degrees (°dH).</summary>
    public double InGermanDegree => Units.GermanDegree.FromSI(si);

    /// <summary>Value in French degrees (°f).</summary>
    public double InFrenchDegree => Units.FrenchDegree.FromSI(si);

    /// <summary>Value in mmol/L of calcium and magnesium together.</summary>
    public double InMillimolePerLitre => Units.HardnessMillimolePerLitre.FromSI(si);

    /// <summary>From mg/L as CaCO₃.</summary>
    public static Hardness FromMilligramPerLitre(double value) => new(Units.HardnessMilligramPerLitre.ToSI(value));

    /// <summary>From grains per US gallon.</summary>
    public static Hardness FromGrainPerGallon(double value) => new(Units.GrainPerGallon.ToSI(value));

    /// <summary>From German degrees (°dH).</summary>
    public static Hardness FromGermanDegree(double value) => new(Units.GermanDegree.ToSI(value));

    /// <summary>From French degrees (°f).</summary>
    public static Hardness FromFrenchDegree(double value) => new(Units.FrenchDegree.ToSI(value));

    /// <summary>From mmol/L of calcium and magnesium together.</summary>
    public static Hardness FromMillimolePerLitre(double value) => new(Units.HardnessMillimolePerLitre.ToSI(value));

    /// <inheritdoc/>
    public static Hardness From(Amount amount) => new(Guard.Measures(amount, Dimension));

    /// <inheritdoc/>
    public Amount In(Unit unit) => Guard.In(si, unit, Dimension);

    /// <summary>Less.</summary>
    public static bool operator <(Hardness left, Hardness right) => left.si < right.si;

    /// <summary>More.</summary>
    public static bool operator >(Hardness left, Hardness right) => left.si > right.si;

    /// <summary>Less or the same.</summary>
    public static bool operator <=(Hardness left, Hardness right) => left.si <= right.si;

    /// <summary>More or the same.</summary>
    public static bool operator >=(Hardness left, Hardness right) => left.si >= right.si;

    /// <inheritdoc/>
    public int CompareTo(Hardness other) => si.CompareTo(other.si);

    /// <summary>For logs and tests, in the invariant culture.</summary>
    public override string ToString() => In(Units.HardnessMilligramPerLitre).ToString();
}
