namespace Rinsewright.Engine.Quantities;

/// <summary>Volume per time, as of the final rinse. SI unit m³/s. <c>default</c> is no flow.</summary>
public readonly record struct VolumeFlow : IQuantity<VolumeFlow>
{
    private readonly double si;

    private VolumeFlow(double si) => this.si = Guard.Finite(si, nameof(VolumeFlow));

    /// <inheritdoc/>
    public static Dimension Dimension => Dimension.VolumeFlow;

    /// <summary>Value in m³/s.</summary>
    public double InCubicMetrePerSecond => Units.CubicMetrePerSecond.FromSI(si);

    /// <summary>Value in L/min.</summary>
    public double InLitrePerMinute => Units.LitrePerMinute.FromSI(si);

    /// <summary>Value in L/h.</summary>
    public double InLitrePerHour => Units.LitrePerHour.FromSI(si);

    /// <summary>Value in mL/min.</summary>
    public double InMillilitrePerMinute => Units.MillilitrePerMinute.FromSI(si);

    /// <summary>Value in US gal/min.</summary>
    public double InGallonPerMinute => Units.GallonPerMinute.FromSI(si);

    /// <summary>Value in US gal/h.</summary>
    public double InGallonPerHour => Units.GallonPerHour.FromSI(si);

    /// <summary>From m³/s.</summary>
    public static VolumeFlow FromCubicMetrePerSecond(double value) => new(Units.CubicMetrePerSecond.ToSI(value));

    /// <summary>From L/min.</summary>
    public static VolumeFlow FromLitrePerMinute(double value) => new(Units.LitrePerMinute.ToSI(value));

    /// <summary>From L/h.</summary>
    public static VolumeFlow FromLitrePerHour(double value) => new(Units.LitrePerHour.ToSI(value));

    /// <summary>From mL/min.</summary>
    public static VolumeFlow FromMillilitrePerMinute(double value) => new(Units.MillilitrePerMinute.ToSI(value));

    /// <summary>From US gal/min.</summary>
    public static VolumeFlow FromGallonPerMinute(double value) => new(Units.GallonPerMinute.ToSI(value));

    /// <summary>From US gal/h.</summary>
    public static VolumeFlow FromGallonPerHour(double value) => new(Units.GallonPerHour.ToSI(value));

    /// <inheritdoc/>
    public static VolumeFlow From(Amount amount) => new(Guard.Measures(amount, Dimension));

    /// <inheritdoc/>
    public Amount In(Unit unit) => Guard.In(si, unit, Dimension);

    /// <summary>Sum.</summary>
    public static VolumeFlow operator +(VolumeFlow left, VolumeFlow right) => new(left.si + right.si);

    /// <summary>Difference.</summary>
    public static VolumeFlow operator -(VolumeFlow left, VolumeFlow right) => new(left.si - right.si);

    /// <summary>Multiple.</summary>
    public static VolumeFlow operator *(VolumeFlow left, double right) => new(left.si * right);

    /// <summary>Multiple.</summary>
    public static VolumeFlow operator *(double left, VolumeFlow right) => new(left * right.si);

    /// <summary>Part.</summary>
    public static VolumeFlow operator /(VolumeFlow left, double right) => new(left.si / right);

    /// <summary>How many times the one goes into the other.</summary>
    public static Ratio operator /(VolumeFlow left, VolumeFlow right) => Ratio.FromFraction(left.si / right.si);

    /// <summary>Volume that flows in the time.</summary>
    public static Volume operator *(VolumeFlow left, Duration right) => Volume.FromCubicMetre(left.si * right.InSecond);

    /// <summary>Dissolved mass carried by the flow.</summary>
    public static MassFlow operator *(VolumeFlow left, MassConcentration right) =>
        MassFlow.FromKilogramPerSecond(left.si * right.InKilogramPerCubicMetre);

    /// <summary>Less.</summary>
    public static bool operator <(VolumeFlow left, VolumeFlow right) => left.si < right.si;

    /// <summary>More.</summary>
    public static bool operator >(VolumeFlow left, VolumeFlow right) => left.si > right.si;

    /// <summary>Less or the same.</summary>
    public static bool operator <=(VolumeFlow left, VolumeFlow right) => left.si <= right.si;

    /// <summary>More or the same.</summary>
    public static bool operator >=(VolumeFlow left, VolumeFlow right) => left.si >= right.si;

    /// <inheritdoc/>
    public int CompareTo(VolumeFlow other) => si.CompareTo(other.si);

    /// <summary>For logs and tests, in the invariant culture.</summary>
    public override string ToString() => In(Units.LitrePerMinute).ToString();
}
