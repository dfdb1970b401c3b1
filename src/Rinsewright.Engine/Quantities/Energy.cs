namespace Rinsewright.Engine.Quantities;

/// <summary>Energy, as of heat put into water. SI unit J. <c>default</c> is 0 J.</summary>
public readonly record struct Energy : IQuantity<Energy>
{
    private readonly double si;

    private Energy(double si) => this.si = Guard.Finite(si, nameof(Energy));

    /// <inheritdoc/>
    public static Dimension Dimension => Dimension.Energy;

    /// <summary>Value in J.</summary>
    public double InJoule => Units.Joule.FromSI(si);

    /// <summary>Value in MJ.</summary>
    public double InMegajoule => Units.Megajoule.FromSI(si);

    /// <summary>Value in kWh.</summary>
    public double InKilowattHour => Units.KilowattHour.FromSI(si);

    /// <summary>Value in Btu (International Table).</summary>
    public double InBtu => Units.Btu.FromSI(si);

    /// <summary>From J.</summary>
    public static Energy FromJoule(double value) => new(Units.Joule.ToSI(value));

    /// <summary>From MJ.</summary>
    public static Energy FromMegajoule(double value) => new(Units.Megajoule.ToSI(value));

    /// <summary>From kWh.</summary>
    public static Energy FromKilowattHour(double value) => new(Units.KilowattHour.ToSI(value));

    /// <summary>From Btu (International Table).</summary>
    public static Energy FromBtu(double value) => new(Units.Btu.ToSI(value));

    /// <inheritdoc/>
    public static Energy From(Amount amount) => new(Guard.Measures(amount, Dimension));

    /// <inheritdoc/>
    public Amount In(Unit unit) => Guard.In(si, unit, Dimension);

    /// <summary>Sum.</summary>
    public static Energy operator +(Energy left, Energy right) => new(left.si + right.si);

    /// <summary>Difference.</summary>
    public static Energy operator -(Energy left, Energy right) => new(left.si - right.si);

    /// <summary>Multiple.</summary>
    public static Energy operator *(Energy left, double right) => new(left.si * right);

    /// <summary>Multiple.</summary>
    public static Energy operator *(double left, Energy right) => new(left * right.si);

    /// <summary>Part.</summary>
    public static Energy operator /(Energy left, double right) => new(left.si / right);

    /// <summary>How many times the one goes into the other.</summary>
    public static Ratio operator /(Energy left, Energy right) => Ratio.FromFraction(left.si / right.si);

    /// <summary>Mean power.</summary>
    public static Power operator /(Energy left, Duration right) => Power.FromWatt(left.si / right.InSecond);

    /// <summary>Time at this power.</summary>
    public static Duration operator /(Energy left, Power right) => Duration.FromSecond(left.si / right.InWatt);

    /// <summary>Less.</summary>
    public static bool operator <(Energy left, Energy right) => left.si < right.si;

    /// <summary>More.</summary>
    public static bool operator >(Energy left, Energy right) => left.si > right.si;

    /// <summary>Less or the same.</summary>
    public static bool operator <=(Energy left, Energy right) => left.si <= right.si;

    /// <summary>More or the same.</summary>
    public static bool operator >=(Energy left, Energy right) => left.si >= right.si;

    /// <inheritdoc/>
    public int CompareTo(Energy other) => si.CompareTo(other.si);

    /// <summary>For logs and tests, in the invariant culture.</summary>
    public override string ToString() => In(Units.KilowattHour).ToString();
}
