namespace Rinsewright.Engine.Quantities;

/// <summary>Mass, as of detergent or ware. SI unit kg. <c>default</c> is 0 kg.</summary>
public readonly record struct Mass : IQuantity<Mass>
{
    private readonly double si;

    private Mass(double si) => this.si = Guard.Finite(si, nameof(Mass));

    /// <inheritdoc/>
    public static Dimension Dimension => Dimension.Mass;

    /// <summary>Value in kg.</summary>
    public double InKilogram => Units.Kilogram.FromSI(si);

    /// <summary>Value in g.</summary>
    public double InGram => Units.Gram.FromSI(si);

    /// <summary>Value in mg.</summary>
    public double InMilligram => Units.Milligram.FromSI(si);

    /// <summary>Value in lb.</summary>
    public double InPound => Units.Pound.FromSI(si);

    /// <summary>Value in oz (avoirdupois).</summary>
    public double InOunce => Units.Ounce.FromSI(si);

    /// <summary>From kg.</summary>
    public static Mass FromKilogram(double value) => new(Units.Kilogram.ToSI(value));

    /// <summary>From g.</summary>
    public static Mass FromGram(double value) => new(Units.Gram.ToSI(value));

    /// <summary>From mg.</summary>
    public static Mass FromMilligram(double value) => new(Units.Milligram.ToSI(value));

    /// <summary>From lb.</summary>
    public static Mass FromPound(double value) => new(Units.Pound.ToSI(value));

    /// <summary>From oz (avoirdupois).</summary>
    public static Mass FromOunce(double value) => new(Units.Ounce.ToSI(value));

    /// <inheritdoc/>
    public static Mass From(Amount amount) => new(Guard.Measures(amount, Dimension));

    /// <inheritdoc/>
    public Amount In(Unit unit) => Guard.In(si, unit, Dimension);

    /// <summary>Sum.</summary>
    public static Mass operator +(Mass left, Mass right) => new(left.si + right.si);

    /// <summary>Difference.</summary>
    public static Mass operator -(Mass left, Mass right) => new(left.si - right.si);

    /// <summary>Multiple.</summary>
    public static Mass operator *(Mass left, double right) => new(left.si * right);

    /// <summary>Multiple.</summary>
    public static Mass operator *(double left, Mass right) => new(left * right.si);

    /// <summary>Part.</summary>
    public static Mass operator /(Mass left, double right) => new(left.si / right);

    /// <summary>How many times the one goes into the other.</summary>
    public static Ratio operator /(Mass left, Mass right) => Ratio.FromFraction(left.si / right.si);

    /// <summary>Concentration of the mass dissolved to this volume of solution.</summary>
    public static MassConcentration operator /(Mass left, Volume right) =>
        MassConcentration.FromKilogramPerCubicMetre(left.si / right.InCubicMetre);

    /// <summary>Volume of solution that holds the mass.</summary>
    public static Volume operator /(Mass left, MassConcentration right) => Volume.FromCubicMetre(left.si / right.InKilogramPerCubicMetre);

    /// <summary>Mean mass flow.</summary>
    public static MassFlow operator /(Mass left, Duration right) => MassFlow.FromKilogramPerSecond(left.si / right.InSecond);

    /// <summary>Time at this mass flow.</summary>
    public static Duration operator /(Mass left, MassFlow right) => Duration.FromSecond(left.si / right.InKilogramPerSecond);

    /// <summary>Less.</summary>
    public static bool operator <(Mass left, Mass right) => left.si < right.si;

    /// <summary>More.</summary>
    public static bool operator >(Mass left, Mass right) => left.si > right.si;

    /// <summary>Less or the same.</summary>
    public static bool operator <=(Mass left, Mass right) => left.si <= right.si;

    /// <summary>More or the same.</summary>
    public static bool operator >=(Mass left, Mass right) => left.si >= right.si;

    /// <inheritdoc/>
    public int CompareTo(Mass other) => si.CompareTo(other.si);

    /// <summary>For logs and tests, in the invariant culture.</summary>
    public override string ToString() => In(Units.Kilogram).ToString();
}
