namespace Rinsewright.Engine.Quantities;

/// <summary>Heat to warm a body by one kelvin, as of the wetted metal of a tank. SI unit J/K, never negative. <c>default</c> is zero.</summary>
public readonly record struct HeatCapacity : IQuantity<HeatCapacity>
{
    private readonly double si;

    private HeatCapacity(double si) => this.si = Guard.NotNegative(si, nameof(HeatCapacity));

    /// <inheritdoc/>
    public static Dimension Dimension => Dimension.HeatCapacity;

    /// <summary>Value in J/K.</summary>
    public double InJoulePerKelvin => Units.JoulePerKelvin.FromSI(si);

    /// <summary>Value in kJ/K.</summary>
    public double InKilojoulePerKelvin => Units.KilojoulePerKelvin.FromSI(si);

    /// <summary>From J/K.</summary>
    public static HeatCapacity FromJoulePerKelvin(double value) => new(Units.JoulePerKelvin.ToSI(value));

    /// <summary>From kJ/K.</summary>
    public static HeatCapacity FromKilojoulePerKelvin(double value) => new(Units.KilojoulePerKelvin.ToSI(value));

    /// <inheritdoc/>
    public static HeatCapacity From(Amount amount) => new(Guard.Measures(amount, Dimension));

    /// <inheritdoc/>
    public Amount In(Unit unit) => Guard.In(si, unit, Dimension);

    /// <summary>Less.</summary>
    public static bool operator <(HeatCapacity left, HeatCapacity right) => left.si < right.si;

    /// <summary>More.</summary>
    public static bool operator >(HeatCapacity left, HeatCapacity right) => left.si > right.si;

    /// <summary>Less or the same.</summary>
    public static bool operator <=(HeatCapacity left, HeatCapacity right) => left.si <= right.si;

    /// <summary>More or the same.</summary>
    public static bool operator >=(HeatCapacity left, HeatCapacity right) => left.si >= right.si;

    /// <inheritdoc/>
    public int CompareTo(HeatCapacity other) => si.CompareTo(other.si);

    /// <summary>For logs and tests, in the invariant culture.</summary>
    public override string ToString() => In(Units.JoulePerKelvin).ToString();
}
