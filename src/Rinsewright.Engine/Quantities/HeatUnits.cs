namespace Rinsewright.Engine.Quantities;

/// <summary>Accumulated heat unit equivalents (HUE). <c>default</c> is no dose.</summary>
public readonly record struct HeatUnits : IQuantity<HeatUnits>
{
    private readonly double si;

    private HeatUnits(double si) => this.si = Guard.Finite(si, nameof(HeatUnits));

    /// <inheritdoc/>
    public static Dimension Dimension => Dimension.HeatUnits;

    /// <summary>Value in HUE.</summary>
    public double InHue => Units.HeatUnit.FromSI(si);

    /// <summary>From HUE.</summary>
    public static HeatUnits FromHue(double value) => new(Units.HeatUnit.ToSI(value));

    /// <inheritdoc/>
    public static HeatUnits From(Amount amount) => new(Guard.Measures(amount, Dimension));

    /// <inheritdoc/>
    public Amount In(Unit unit) => Guard.In(si, unit, Dimension);

    /// <summary>Sum.</summary>
    public static HeatUnits operator +(HeatUnits left, HeatUnits right) => new(left.si + right.si);

    /// <summary>Difference.</summary>
    public static HeatUnits operator -(HeatUnits left, HeatUnits right) => new(left.si - right.si);

    /// <summary>Less.</summary>
    public static bool operator <(HeatUnits left, HeatUnits right) => left.si < right.si;

    /// <summary>More.</summary>
    public static bool operator >(HeatUnits left, HeatUnits right) => left.si > right.si;

    /// <summary>Less or the same.</summary>
    public static bool operator <=(HeatUnits left, HeatUnits right) => left.si <= right.si;

    /// <summary>More or the same.</summary>
    public static bool operator >=(HeatUnits left, HeatUnits right) => left.si >= right.si;

    /// <inheritdoc/>
    public int CompareTo(HeatUnits other) => si.CompareTo(other.si);

    /// <summary>For logs and tests, in the invariant culture.</summary>
    public override string ToString() => In(Units.HeatUnit).ToString();
}
