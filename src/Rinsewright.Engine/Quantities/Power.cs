namespace Rinsewright.Engine.Quantities;

/// <summary>Power, as of a booster heater. SI unit W. <c>default</c> is 0 W.</summary>
public readonly record struct Power : IQuantity<Power>
{
    private readonly double si;

    private Power(double si) => this.si = Guard.Finite(si, nameof(Power));

    /// <inheritdoc/>
    public static Dimension Dimension => Dimension.Power;

    /// <summary>Value in W.</summary>
    public double InWatt => Units.Watt.FromSI(si);

    /// <summary>Value in kW.</summary>
    public double InKilowatt => Units.Kilowatt.FromSI(si);

    /// <summary>Value in Btu/h (International Table).</summary>
    public double InBtuPerHour => Units.BtuPerHour.FromSI(si);

    /// <summary>Value in hp (550 ft·lbf/s).</summary>
    public double InHorsepower => Units.Horsepower.FromSI(si);

    /// <summary>From W.</summary>
    public static Power FromWatt(double value) => new(Units.Watt.ToSI(value));

    /// <summary>From kW.</summary>
    public static Power FromKilowatt(double value) => new(Units.Kilowatt.ToSI(value));

    /// <summary>From Btu/h (International Table).</summary>
    public static Power FromBtuPerHour(double value) => new(Units.BtuPerHour.ToSI(value));

    /// <summary>From hp (550 ft·lbf/s).</summary>
    public static Power FromHorsepower(double value) => new(Units.Horsepower.ToSI(value));

    /// <inheritdoc/>
    public static Power From(Amount amount) => new(Guard.Measures(amount, Dimension));

    /// <inheritdoc/>
    public Amount In(Unit unit) => Guard.In(si, unit, Dimension);

    /// <summary>Sum.</summary>
    public static Power operator +(Power left, Power right) => new(left.si + right.si);

    /// <summary>Difference.</summary>
    public static Power operator -(Power left, Power right) => new(left.si - right.si);

    /// <summary>Multiple.</summary>
    public static Power operator *(Power left, double right) => new(left.si * right);

    /// <summary>Multiple.</summary>
    public static Power operator *(double left, Power right) => new(left * right.si);

    /// <summary>Part.</summary>
    public static Power operator /(Power left, double right) => new(left.si / right);

    /// <summary>How many times the one goes into the other.</summary>
    public static Ratio operator /(Power left, Power right) => Ratio.FromFraction(left.si / right.si);

    /// <summary>Energy in the time.</summary>
    public static Energy operator *(Power left, Duration right) => Energy.FromJoule(left.si * right.InSecond);

    /// <summary>Less.</summary>
    public static bool operator <(Power left, Power right) => left.si < right.si;

    /// <summary>More.</summary>
    public static bool operator >(Power left, Power right) => left.si > right.si;

    /// <summary>Less or the same.</summary>
    public static bool operator <=(Power left, Power right) => left.si <= right.si;

    /// <summary>More or the same.</summary>
    public static bool operator >=(Power left, Power right) => left.si >= right.si;

    /// <inheritdoc/>
    public int CompareTo(Power other) => si.CompareTo(other.si);

    /// <summary>For logs and tests, in the invariant culture.</summary>
    public override string ToString() => In(Units.Kilowatt).ToString();
}
