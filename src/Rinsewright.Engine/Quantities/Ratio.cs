namespace Rinsewright.Engine.Quantities;

/// <summary>A share of a whole, or one quantity over another of its kind. May be over 100 %. <c>default</c> is nothing of the whole.</summary>
public readonly record struct Ratio : IQuantity<Ratio>
{
    private readonly double si;

    private Ratio(double si) => this.si = Guard.Finite(si, nameof(Ratio));

    /// <inheritdoc/>
    public static Dimension Dimension => Dimension.Ratio;

    /// <summary>Value in fraction, 1 the whole.</summary>
    public double InFraction => Units.One.FromSI(si);

    /// <summary>Value in %.</summary>
    public double InPercent => Units.Percent.FromSI(si);

    /// <summary>From fraction, 1 the whole.</summary>
    public static Ratio FromFraction(double value) => new(Units.One.ToSI(value));

    /// <summary>From %.</summary>
    public static Ratio FromPercent(double value) => new(Units.Percent.ToSI(value));

    /// <inheritdoc/>
    public static Ratio From(Amount amount) => new(Guard.Measures(amount, Dimension));

    /// <inheritdoc/>
    public Amount In(Unit unit) => Guard.In(si, unit, Dimension);

    /// <summary>Sum.</summary>
    public static Ratio operator +(Ratio left, Ratio right) => new(left.si + right.si);

    /// <summary>Difference.</summary>
    public static Ratio operator -(Ratio left, Ratio right) => new(left.si - right.si);

    /// <summary>Multiple.</summary>
    public static Ratio operator *(Ratio left, double right) => new(left.si * right);

    /// <summary>Multiple.</summary>
    public static Ratio operator *(double left, Ratio right) => new(left * right.si);

    /// <summary>Part.</summary>
    public static Ratio operator /(Ratio left, double right) => new(left.si / right);

    /// <summary>Less.</summary>
    public static bool operator <(Ratio left, Ratio right) => left.si < right.si;

    /// <summary>More.</summary>
    public static bool operator >(Ratio left, Ratio right) => left.si > right.si;

    /// <summary>Less or the same.</summary>
    public static bool operator <=(Ratio left, Ratio right) => left.si <= right.si;

    /// <summary>More or the same.</summary>
    public static bool operator >=(Ratio left, Ratio right) => left.si >= right.si;

    /// <inheritdoc/>
    public int CompareTo(Ratio other) => si.CompareTo(other.si);

    /// <summary>For logs and tests, in the invariant culture.</summary>
    public override string ToString() => In(Units.Percent).ToString();
}
