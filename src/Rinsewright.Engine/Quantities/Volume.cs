namespace Rinsewright.Engine.Quantities;

/// <summary>Volume, as of a tank or of the rinse water of a rack. SI unit m³. <c>default</c> is 0 m³.</summary>
public readonly record struct Volume : IQuantity<Volume>
{
    private readonly double si;

    private Volume(double si) => this.si = Guard.Finite(si, nameof(Volume));

    /// <inheritdoc/>
    public static Dimension Dimension => Dimension.Volume;

    /// <summary>Value in m³.</summary>
    public double InCubicMetre => Units.CubicMetre.FromSI(si);

    /// <summary>Value in L.</summary>
    public double InLitre => Units.Litre.FromSI(si);

    /// <summary>Value in mL.</summary>
    public double InMillilitre => Units.Millilitre.FromSI(si);

    /// <summary>Value in US gal.</summary>
    public double InGallon => Units.Gallon.FromSI(si);

    /// <summary>Value in US fl oz.</summary>
    public double InFluidOunce => Units.FluidOunce.FromSI(si);

    /// <summary>From m³.</summary>
    public static Volume FromCubicMetre(double value) => new(Units.CubicMetre.ToSI(value));

    /// <summary>From L.</summary>
    public static Volume FromLitre(double value) => new(Units.Litre.ToSI(value));

    /// <summary>From mL.</summary>
    public static Volume FromMillilitre(double value) => new(Units.Millilitre.ToSI(value));

    /// <summary>From US gal.</summary>
    public static Volume FromGallon(double value) => new(Units.Gallon.ToSI(value));

    /// <summary>From US fl oz.</summary>
    public static Volume FromFluidOunce(double value) => new(Units.FluidOunce.ToSI(value));

    /// <inheritdoc/>
    public static Volume From(Amount amount) => new(Guard.Measures(amount, Dimension));

    /// <inheritdoc/>
    public Amount In(Unit unit) => Guard.In(si, unit, Dimension);

    /// <summary>Sum.</summary>
    public static Volume operator +(Volume left, Volume right) => new(left.si + right.si);

    /// <summary>Difference.</summary>
    public static Volume operator -(Volume left, Volume right) => new(left.si - right.si);

    /// <summary>Multiple.</summary>
    public static Volume operator *(Volume left, double right) => new(left.si * right);

    /// <summary>Multiple.</summary>
    public static Volume operator *(double left, Volume right) => new(left * right.si);

    /// <summary>Part.</summary>
    public static Volume operator /(Volume left, double right) => new(left.si / right);

    /// <summary>How many times the one goes into the other.</summary>
    public static Ratio operator /(Volume left, Volume right) => Ratio.FromFraction(left.si / right.si);

    /// <summary>Mean flow.</summary>
    public static VolumeFlow operator /(Volume left, Duration right) => VolumeFlow.FromCubicMetrePerSecond(left.si / right.InSecond);

    /// <summary>Time to fill or empty at this flow.</summary>
    public static Duration operator /(Volume left, VolumeFlow right) => Duration.FromSecond(left.si / right.InCubicMetrePerSecond);

    /// <summary>Depth of water over the area.</summary>
    public static Length operator /(Volume left, Area right) => Length.FromMetre(left.si / right.InSquareMetre);

    /// <summary>Less.</summary>
    public static bool operator <(Volume left, Volume right) => left.si < right.si;

    /// <summary>More.</summary>
    public static bool operator >(Volume left, Volume right) => left.si > right.si;

    /// <summary>Less or the same.</summary>
    public static bool operator <=(Volume left, Volume right) => left.si <= right.si;

    /// <summary>More or the same.</summary>
    public static bool operator >=(Volume left, Volume right) => left.si >= right.si;

    /// <inheritdoc/>
    public int CompareTo(Volume other) => si.CompareTo(other.si);

    /// <summary>For logs and tests, in the invariant culture.</summary>
    public override string ToString() => In(Units.Litre).ToString();
}
