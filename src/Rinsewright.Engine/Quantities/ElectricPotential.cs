namespace Rinsewright.Engine.Quantities;

/// <summary>Electric potential (voltage). SI unit V. Reading it on live parts is work for a licensed person. <c>default</c> is 0 V.</summary>
public readonly record struct ElectricPotential : IQuantity<ElectricPotential>
{
    private readonly double si;

    private ElectricPotential(double si) => this.si = Guard.Finite(si, nameof(ElectricPotential));

    /// <inheritdoc/>
    public static Dimension Dimension => Dimension.ElectricPotential;

    /// <summary>Value in V.</summary>
    public double InVolt => Units.Volt.FromSI(si);

    /// <summary>Value in mV.</summary>
    public double InMillivolt => Units.Millivolt.FromSI(si);

    /// <summary>From V.</summary>
    public static ElectricPotential FromVolt(double value) => new(Units.Volt.ToSI(value));

    /// <summary>From mV.</summary>
    public static ElectricPotential FromMillivolt(double value) => new(Units.Millivolt.ToSI(value));

    /// <inheritdoc/>
    public static ElectricPotential From(Amount amount) => new(Guard.Measures(amount, Dimension));

    /// <inheritdoc/>
    public Amount In(Unit unit) => Guard.In(si, unit, Dimension);

    /// <summary>Sum.</summary>
    public static ElectricPotential operator +(ElectricPotential left, ElectricPotential right) => new(left.si + right.si);

    /// <summary>Difference.</summary>
    public static ElectricPotential operator -(ElectricPotential left, ElectricPotential right) => new(left.si - right.si);

    /// <summary>Multiple.</summary>
    public static ElectricPotential operator *(ElectricPotential left, double right) => new(left.si * right);

    /// <summary>Multiple.</summary>
    public static ElectricPotential operator *(double left, ElectricPotential right) => new(left * right.si);

    /// <summary>Part.</summary>
    public static ElectricPotential operator /(ElectricPotential left, double right) => new(left.si / right);

    /// <summary>How many times the one goes into the other.</summary>
    public static Ratio operator /(ElectricPotential left, ElectricPotential right) => Ratio.FromFraction(left.si / right.si);

    /// <summary>Less.</summary>
    public static bool operator <(ElectricPotential left, ElectricPotential right) => left.si < right.si;

    /// <summary>More.</summary>
    public static bool operator >(ElectricPotential left, ElectricPotential right) => left.si > right.si;

    /// <summary>Less or the same.</summary>
    public static bool operator <=(ElectricPotential left, ElectricPotential right) => left.si <= right.si;

    /// <summary>More or the same.</summary>
    public static bool operator >=(ElectricPotential left, ElectricPotential right) => left.si >= right.si;

    /// <inheritdoc/>
    public int CompareTo(ElectricPotential other) => si.CompareTo(other.si);

    /// <summary>For logs and tests, in the invariant culture.</summary>
    public override string ToString() => In(Units.Volt).ToString();
}
