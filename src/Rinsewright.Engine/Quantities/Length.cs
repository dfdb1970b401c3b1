namespace Rinsewright.Engine.Quantities;

/// <summary>Length, as of a belt, a pipe or a rack. SI unit m. <c>default</c> is 0 m.</summary>
public readonly record struct Length : IQuantity<Length>
{
    private readonly double si;

    private Length(double si) => this.si = Guard.Finite(si, nameof(Length));

    /// <inheritdoc/>
    public static Dimension Dimension => Dimension.Length;

    /// <summary>Value in m.</summary>
    public double InMetre => Units.Metre.FromSI(si);

    /// <summary>Value in mm.</summary>
    public double InMillimetre => Units.Millimetre.FromSI(si);

    /// <summary>Value in in.</summary>
    public double InInch => Units.Inch.FromSI(si);

    /// <summary>Value in ft.</summary>
    public double InFoot => Units.Foot.FromSI(si);

    /// <summary>From m.</summary>
    public static Length FromMetre(double value) => new(Units.Metre.ToSI(value));

    /// <summary>From mm.</summary>
    public static Length FromMillimetre(double value) => new(Units.Millimetre.ToSI(value));

    /// <summary>From in.</summary>
    public static Length FromInch(double value) => new(Units.Inch.ToSI(value));

    /// <summary>From ft.</summary>
    public static Length FromFoot(double value) => new(Units.Foot.ToSI(value));

    /// <inheritdoc/>
    public static Length From(Amount amount) => new(Guard.Measures(amount, Dimension));

    /// <inheritdoc/>
    public Amount In(Unit unit) => Guard.In(si, unit, Dimension);

    /// <summary>Sum.</summary>
    public static Length operator +(Length left, Length right) => new(left.si + right.si);

    /// <summary>Difference.</summary>
    public static Length operator -(Length left, Length right) => new(left.si - right.si);

    /// <summary>Multiple.</summary>
    public static Length operator *(Length left, double right) => new(left.si * right);

    /// <summary>Multiple.</summary>
    public static Length operator *(double left, Length right) => new(left * right.si);

    /// <summary>Part.</summary>
    public static Length operator /(Length left, double right) => new(left.si / right);

    /// <summary>How many times the one goes into the other.</summary>
    public static Ratio operator /(Length left, Length right) => Ratio.FromFraction(left.si / right.si);

    /// <summary>Area of a rectangle.</summary>
    public static Area operator *(Length left, Length right) => Area.FromSquareMetre(left.si * right.si);

    /// <summary>Mean speed.</summary>
    public static Speed operator /(Length left, Duration right) => Speed.FromMetrePerSecond(left.si / right.InSecond);

    /// <summary>Time a conveyor takes over the length.</summary>
    public static Duration operator /(Length left, Speed right) => Duration.FromSecond(left.si / right.InMetrePerSecond);

    /// <summary>Less.</summary>
    public static bool operator <(Length left, Length right) => left.si < right.si;

    /// <summary>More.</summary>
    public static bool operator >(Length left, Length right) => left.si > right.si;

    /// <summary>Less or the same.</summary>
    public static bool operator <=(Length left, Length right) => left.si <= right.si;

    /// <summary>More or the same.</summary>
    public static bool operator >=(Length left, Length right) => left.si >= right.si;

    /// <inheritdoc/>
    public int CompareTo(Length other) => si.CompareTo(other.si);

    /// <summary>For logs and tests, in the invariant culture.</summary>
    public override string ToString() => In(Units.Metre).ToString();
}
