namespace Rinsewright.Engine.Quantities;

/// <summary>Heat flow per kelvin of difference, as a tank loses to its room or a steam coil gives to its water. SI unit W/K, never negative. <c>default</c> is zero.</summary>
public readonly record struct HeatConductance : IQuantity<HeatConductance>
{
    private readonly double si;

    private HeatConductance(double si) => this.si = Guard.NotNegative(si, nameof(HeatConductance));

    /// <inheritdoc/>
    public static Dimension Dimension => Dimension.HeatConductance;

    /// <summary>Value in W/K.</summary>
    public double InWattPerKelvin => Units.WattPerKelvin.FromSI(si);

    /// <summary>From W/K.</summary>
    public static HeatConductance FromWattPerKelvin(double value) => new(Units.WattPerKelvin.ToSI(value));

    /// <inheritdoc/>
    public static HeatConductance From(Amount amount) => new(Guard.Measures(amount, Dimension));

    /// <inheritdoc/>
    public Amount In(Unit unit) => Guard.In(si, unit, Dimension);

    /// <summary>Less.</summary>
    public static bool operator <(HeatConductance left, HeatConductance right) => left.si < right.si;

    /// <summary>More.</summary>
    public static bool operator >(HeatConductance left, HeatConductance right) => left.si > right.si;

    /// <summary>Less or the same.</summary>
    public static bool operator <=(HeatConductance left, HeatConductance right) => left.si <= right.si;

    /// <summary>More or the same.</summary>
    public static bool operator >=(HeatConductance left, HeatConductance right) => left.si >= right.si;

    /// <inheritdoc/>
    public int CompareTo(HeatConductance other) => si.CompareTo(other.si);

    /// <summary>For logs and tests, in the invariant culture.</summary>
    public override string ToString() => In(Units.WattPerKelvin).ToString();
}
