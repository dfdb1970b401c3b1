namespace Rinsewright.Engine.Quantities;

/// <summary>Mass per time, as of detergent fed or steam used. SI unit kg/s. <c>default</c> is no flow.</summary>
public readonly record struct MassFlow : IQuantity<MassFlow>
{
    private readonly double si;

    private MassFlow(double si) => this.si = Guard.Finite(si, nameof(MassFlow));

    /// <inheritdoc/>
    public static Dimension Dimension => Dimension.MassFlow;

    /// <summary>Value in kg/s.</summary>
    public double InKilogramPerSecond => Units.KilogramPerSecond.FromSI(si);

    /// <summary>Value in g/s.</summary>
    public double InGramPerSecond => Units.GramPerSecond.FromSI(si);

    /// <summary>Value in kg/h.</summary>
    public double InKilogramPerHour => Units.KilogramPerHour.FromSI(si);

    /// <summary>Value in g/min.</summary>
    public double InGramPerMinute => Units.GramPerMinute.FromSI(si);

    /// <summary>Value in lb/h.</summary>
    public double InPoundPerHour => Units.PoundPerHour.FromSI(si);

    /// <summary>From kg/s.</summary>
    public static MassFlow FromKilogramPerSecond(double value) => new(Units.KilogramPerSecond.ToSI(value));

    /// <summary>From g/s.</summary>
    public static MassFlow FromGramPerSecond(double value) => new(Units.GramPerSecond.ToSI(value));

    /// <summary>From kg/h.</summary>
    public static MassFlow FromKilogramPerHour(double value) => new(Units.KilogramPerHour.ToSI(value));

    /// <summary>From g/min.</summary>
    public static MassFlow FromGramPerMinute(double value) => new(Units.GramPerMinute.ToSI(value));

    /// <summary>From lb/h.</summary>
    public static MassFlow FromPoundPerHour(double value) => new(Units.PoundPerHour.ToSI(value));

    /// <inheritdoc/>
    public static MassFlow From(Amount amount) => new(Guard.Measures(amount, Dimension));

    /// <inheritdoc/>
    public Amount In(Unit unit) => Guard.In(si, unit, Dimension);

    /// <summary>Sum.</summary>
    public static MassFlow operator +(MassFlow left, MassFlow right) => new(left.si + right.si);

    /// <summary>Difference.</summary>
    public static MassFlow operator -(MassFlow left, MassFlow right) => new(left.si - right.si);

    /// <summary>Multiple.</summary>
    public static MassFlow operator *(MassFlow left, double right) => new(left.si * right);

    /// <summary>Multiple.</summary>
    public static MassFlow operator *(double left, MassFlow right) => new(left * right.si);

    /// <summary>Part.</summary>
    public static MassFlow operator /(MassFlow left, double right) => new(left.si / right);

    /// <summary>How many times the one goes into the other.</summary>
    public static Ratio operator /(MassFlow left, MassFlow right) => Ratio.FromFraction(left.si / right.si);

    /// <summary>Mass that flows in the time.</summary>
    public static Mass operator *(MassFlow left, Duration right) => Mass.FromKilogram(left.si * right.InSecond);

    /// <summary>Less.</summary>
    public static bool operator <(MassFlow left, MassFlow right) => left.si < right.si;

    /// <summary>More.</summary>
    public static bool operator >(MassFlow left, MassFlow right) => left.si > right.si;

    /// <summary>Less or the same.</summary>
    public static bool operator <=(MassFlow left, MassFlow right) => left.si <= right.si;

    /// <summary>More or the same.</summary>
    public static bool operator >=(MassFlow left, MassFlow right) => left.si >= right.si;

    /// <inheritdoc/>
    public int CompareTo(MassFlow other) => si.CompareTo(other.si);

    /// <summary>For logs and tests, in the invariant culture.</summary>
    public override string ToString() => In(Units.KilogramPerHour).ToString();
}
