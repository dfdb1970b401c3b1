namespace Rinsewright.Engine.Quantities;

/// <summary>Mass of a dissolved substance per volume of solution. SI unit kg/m³. <c>default</c> is none dissolved.</summary>
public readonly record struct MassConcentration : IQuantity<MassConcentration>
{
    private readonly double si;

    private MassConcentration(double si) => this.si = Guard.Finite(si, nameof(MassConcentration));

    /// <inheritdoc/>
    public static Dimension Dimension => Dimension.MassConcentration;

    /// <summary>Value in kg/m³ (the same as g/L).</summary>
    public double InKilogramPerCubicMetre => Units.GramPerLitre.FromSI(si);

    /// <summary>Value in g/L.</summary>
    public double InGramPerLitre => Units.GramPerLitre.FromSI(si);

    /// <summary>Value in mg/L.</summary>
    public double InMilligramPerLitre => Units.MilligramPerLitre.FromSI(si);

    /// <summary>Value in oz per US gal.</summary>
    public double InOuncePerGallon => Units.OuncePerGallon.FromSI(si);

    /// <summary>From kg/m³ (the same as g/L).</summary>
    public static MassConcentration FromKilogramPerCubicMetre(double value) => new(Units.GramPerLitre.ToSI(value));

    /// <summary>From g/L.</summary>
    public static MassConcentration FromGramPerLitre(double value) => new(Units.GramPerLitre.ToSI(value));

    /// <summary>From mg/L.</summary>
    public static MassConcentration FromMilligramPerLitre(double value) => new(Units.MilligramPerLitre.ToSI(value));

    /// <summary>From oz per US gal.</summary>
    public static MassConcentration FromOuncePerGallon(double value) => new(Units.OuncePerGallon.ToSI(value));

    /// <inheritdoc/>
    public static MassConcentration From(Amount amount) => new(Guard.Measures(amount, Dimension));

    /// <inheritdoc/>
    public Amount In(Unit unit) => Guard.In(si, unit, Dimension);

    /// <summary>Multiple.</summary>
    public static MassConcentration operator *(MassConcentration left, double right) => new(left.si * right);

    /// <summary>Multiple.</summary>
    public static MassConcentration operator *(double left, MassConcentration right) => new(left * right.si);

    /// <summary>Part.</summary>
    public static MassConcentration operator /(MassConcentration left, double right) => new(left.si / right);

    /// <summary>How many times the one goes into the other.</summary>
    public static Ratio operator /(MassConcentration left, MassConcentration right) => Ratio.FromFraction(left.si / right.si);

    /// <summary>Mass dissolved in the volume.</summary>
    public static Mass operator *(MassConcentration left, Volume right) => Mass.FromKilogram(left.si * right.InCubicMetre);

    /// <summary>Less.</summary>
    public static bool operator <(MassConcentration left, MassConcentration right) => left.si < right.si;

    /// <summary>More.</summary>
    public static bool operator >(MassConcentration left, MassConcentration right) => left.si > right.si;

    /// <summary>Less or the same.</summary>
    public static bool operator <=(MassConcentration left, MassConcentration right) => left.si <= right.si;

    /// <summary>More or the same.</summary>
    public static bool operator >=(MassConcentration left, MassConcentration right) => left.si >= right.si;

    /// <inheritdoc/>
    public int CompareTo(MassConcentration other) => si.CompareTo(other.si);

    /// <summary>For logs and tests, in the invariant culture.</summary>
    public override string ToString() => In(Units.MilligramPerLitre).ToString();
}
