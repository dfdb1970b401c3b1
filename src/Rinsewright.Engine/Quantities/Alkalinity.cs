namespace Rinsewright.Engine.Quantities;

/// <summary>Alkalinity of water or of a wash solution, counted as calcium carbonate. SI unit kg/m³ as CaCO₃. <c>default</c> is no alkalinity.</summary>
public readonly record struct Alkalinity : IQuantity<Alkalinity>
{
    private readonly double si;

    private Alkalinity(double si) => this.si = Guard.Finite(si, nameof(Alkalinity));

    /// <inheritdoc/>
    public static Dimension Dimension => Dimension.Alkalinity;

    /// <summary>Value in mg/L as CaCO₃.</summary>
    public double InMilligramPerLitre => Units.AlkalinityMilligramPerLitre.FromSI(si);

    /// <summary>Value in meq/L.</summary>
    public double InMilliequivalentPerLitre => Units.AlkalinityMilliequivalentPerLitre.FromSI(si);

    /// <summary>Value in grains per US gallon as CaCO₃.</summary>
    public double InGrainPerGallon => Units.AlkalinityGrainPerGallon.FromSI(si);

    /// <summary>From mg/L as CaCO₃.</summary>
    public static Alkalinity FromMilligramPerLitre(double value) => new(Units.AlkalinityMilligramPerLitre.ToSI(value));

    /// <summary>From meq/L.</summary>
    public static Alkalinity FromMilliequivalentPerLitre(double value) => new(Units.AlkalinityMilliequivalentPerLitre.ToSI(value));

    /// <summary>From grains per US gallon as CaCO₃.</summary>
    public static Alkalinity FromGrainPerGallon(double value) => new(Units.AlkalinityGrainPerGallon.ToSI(value));

    /// <inheritdoc/>
    public static Alkalinity From(Amount amount) => new(Guard.Measures(amount, Dimension));

    /// <inheritdoc/>
    public Amount In(Unit unit) => Guard.In(si, unit, Dimension);

    /// <summary>Less.</summary>
    public static bool operator <(Alkalinity left, Alkalinity right) => left.si < right.si;

    /// <summary>More.</summary>
    public static bool operator >(Alkalinity left, Alkalinity right) => left.si > right.si;

    /// <summary>Less or the same.</summary>
    public static bool operator <=(Alkalinity left, Alkalinity right) => left.si <= right.si;

    /// <summary>More or the same.</summary>
    public static bool operator >=(Alkalinity left, Alkalinity right) => left.si >= right.si;

    /// <inheritdoc/>
    public int CompareTo(Alkalinity other) => si.CompareTo(other.si);

    /// <summary>For logs and tests, in the invariant culture.</summary>
    public override string ToString() => In(Units.AlkalinityMilligramPerLitre).ToString();
}
