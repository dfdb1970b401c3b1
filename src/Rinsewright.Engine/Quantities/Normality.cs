namespace Rinsewright.Engine.Quantities;

/// <summary>Strength of a titrant: equivalents of acid or base per volume. SI unit mol/m³ of equivalents. <c>default</c> is none.</summary>
public readonly record struct Normality : IQuantity<Normality>
{
    private readonly double si;

    private Normality(double si) => this.si = Guard.Finite(si, nameof(Normality));

    /// <inheritdoc/>
    public static Dimension Dimension => Dimension.Normality;

    /// <summary>Value in eq/L, what a bottle calls N.</summary>
    public double InEquivalentPerLitre => Units.EquivalentPerLitre.FromSI(si);

    /// <summary>From eq/L, what a bottle calls N.</summary>
    public static Normality FromEquivalentPerLitre(double value) => new(Units.EquivalentPerLitre.ToSI(value));

    /// <inheritdoc/>
    public static Normality From(Amount amount) => new(Guard.Measures(amount, Dimension));

    /// <inheritdoc/>
    public Amount In(Unit unit) => Guard.In(si, unit, Dimension);

    /// <summary>Less.</summary>
    public static bool operator <(Normality left, Normality right) => left.si < right.si;

    /// <summary>More.</summary>
    public static bool operator >(Normality left, Normality right) => left.si > right.si;

    /// <summary>Less or the same.</summary>
    public static bool operator <=(Normality left, Normality right) => left.si <= right.si;

    /// <summary>More or the same.</summary>
    public static bool operator >=(Normality left, Normality right) => left.si >= right.si;

    /// <inheritdoc/>
    public int CompareTo(Normality other) => si.CompareTo(other.si);

    /// <summary>For logs and tests, in the invariant culture.</summary>
    public override string ToString() => In(Units.EquivalentPerLitre).ToString();
}
