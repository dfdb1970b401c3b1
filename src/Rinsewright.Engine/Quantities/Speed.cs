namespace Rinsewright.Engine.Quantities;

/// <summary>Speed, as of a conveyor. SI unit m/s. <c>default</c> is standstill.</summary>
public readonly record struct Speed : IQuantity<Speed>
{
    private readonly double si;

    private Speed(double si) => this.si = Guard.Finite(si, nameof(Speed));

    /// <inheritdoc/>
    public static Dimension Dimension => Dimension.Speed;

    /// <summary>Value in m/s.</summary>
    public double InMetrePerSecond => Units.MetrePerSecond.FromSI(si);

    /// <summary>Value in m/min.</summary>
    public double InMetrePerMinute => Units.MetrePerMinute.FromSI(si);

    /// <summary>Value in ft/min.</summary>
    public double InFootPerMinute => Units.FootPerMinute.FromSI(si);

    /// <summary>From m/s.</summary>
    public static Speed FromMetrePerSecond(double value) => new(Units.MetrePerSecond.ToSI(value));

    /// <summary>From m/min.</summary>
    public static Speed FromMetrePerMinute(double value) => new(Units.MetrePerMinute.ToSI(value));

    /// <summary>From ft/min.</summary>
    public static Speed FromFootPerMinute(double value) => new(Units.FootPerMinute.ToSI(value));

    /// <inheritdoc/>
    public static Speed From(Amount amount) => new(Guard.Measures(amount, Dimension));

    /// <inheritdoc/>
    public Amount In(Unit unit) => Guard.In(si, unit, Dimension);

    /// <summary>Sum.</summary>
    public static Speed operator +(Speed left, Speed right) => new(left.si + right.si);

    /// <summary>Difference.</summary>
    public static Speed operator -(Speed left, Speed right) => new(left.si - right.si);

    /// <summary>Multiple.</summary>
    public static Speed operator *(Speed left, double right) => new(left.si * right);

    /// <summary>Multiple.</summary>
    public static Speed operator *(double left, Speed right) => new(left * right.si);

    /// <summary>Part.</summary>
    public static Speed operator /(Speed left, double right) => new(left.si / right);

    /// <summary>How many times the one goes into the other.</summary>
    public static Ratio operator /(Speed left, Speed right) => Ratio.FromFraction(left.si / right.si);

    /// <summary>Way travelled.</summary>
    public static Length operator *(Speed left, Duration right) => Length.FromMetre(left.si * right.InSecond);

    /// <summary>Less.</summary>
    public static bool operator <(Speed left, Speed right) => left.si < right.si;

    /// <summary>More.</summary>
    public static bool operator >(Speed left, Speed right) => left.si > right.si;

    /// <summary>Less or the same.</summary>
    public static bool operator <=(Speed left, Speed right) => left.si <= right.si;

    /// <summary>More or the same.</summary>
    public static bool operator >=(Speed left, Speed right) => left.si >= right.si;

    /// <inheritdoc/>
    public int CompareTo(Speed other) => si.CompareTo(other.si);

    /// <summary>For logs and tests, in the invariant culture.</summary>
    public override string ToString() => In(Units.MetrePerMinute).ToString();
}
