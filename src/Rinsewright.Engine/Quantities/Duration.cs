namespace Rinsewright.Engine.Quantities;

/// <summary>Time span. SI unit s. <c>default</c> is 0 s.</summary>
public readonly record struct Duration : IQuantity<Duration>
{
    private readonly double si;

    private Duration(double si) => this.si = Guard.Finite(si, nameof(Duration));

    /// <inheritdoc/>
    public static Dimension Dimension => Dimension.Duration;

    /// <summary>Value in s.</summary>
    public double InSecond => Units.Second.FromSI(si);

    /// <summary>Value in min.</summary>
    public double InMinute => Units.Minute.FromSI(si);

    /// <summary>Value in h.</summary>
    public double InHour => Units.Hour.FromSI(si);

    /// <summary>Value in d of 24 h.</summary>
    public double InDay => Units.Day.FromSI(si);

    /// <summary>From s.</summary>
    public static Duration FromSecond(double value) => new(Units.Second.ToSI(value));

    /// <summary>From min.</summary>
    public static Duration FromMinute(double value) => new(Units.Minute.ToSI(value));

    /// <summary>From h.</summary>
    public static Duration FromHour(double value) => new(Units.Hour.ToSI(value));

    /// <summary>From d of 24 h.</summary>
    public static Duration FromDay(double value) => new(Units.Day.ToSI(value));

    /// <inheritdoc/>
    public static Duration From(Amount amount) => new(Guard.Measures(amount, Dimension));

    /// <inheritdoc/>
    public Amount In(Unit unit) => Guard.In(si, unit, Dimension);

    /// <summary>Sum.</summary>
    public static Duration operator +(Duration left, Duration right) => new(left.si + right.si);

    /// <summary>Difference.</summary>
    public static Duration operator -(Duration left, Duration right) => new(left.si - right.si);

    /// <summary>Multiple.</summary>
    public static Duration operator *(Duration left, double right) => new(left.si * right);

    /// <summary>Multiple.</summary>
    public static Duration operator *(double left, Duration right) => new(left * right.si);

    /// <summary>Part.</summary>
    public static Duration operator /(Duration left, double right) => new(left.si / right);

    /// <summary>How many times the one goes into the other.</summary>
    public static Ratio operator /(Duration left, Duration right) => Ratio.FromFraction(left.si / right.si);

    /// <summary>Less.</summary>
    public static bool operator <(Duration left, Duration right) => left.si < right.si;

    /// <summary>More.</summary>
    public static bool operator >(Duration left, Duration right) => left.si > right.si;

    /// <summary>Less or the same.</summary>
    public static bool operator <=(Duration left, Duration right) => left.si <= right.si;

    /// <summary>More or the same.</summary>
    public static bool operator >=(Duration left, Duration right) => left.si >= right.si;

    /// <inheritdoc/>
    public int CompareTo(Duration other) => si.CompareTo(other.si);

    /// <summary>For logs and tests, in the invariant culture.</summary>
    public override string ToString() => In(Units.Second).ToString();
}
