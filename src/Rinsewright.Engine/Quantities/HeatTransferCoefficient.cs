namespace Rinsewright.Engine.Quantities;

/// <summary>Heat flow per area and kelvin between a surface and the water or air on it. SI unit W/(m²·K), never negative. <c>default</c> is zero.</summary>
public readonly record struct HeatTransferCoefficient : IQuantity<HeatTransferCoefficient>
{
    private readonly double si;

    private HeatTransferCoefficient(double si) => this.si = Guard.NotNegative(si, nameof(HeatTransferCoefficient));

    /// <inheritdoc/>
    public static Dimension Dimension => Dimension.HeatTransferCoefficient;

    /// <summary>Value in W/(m²·K).</summary>
    public double InWattPerSquareMetreKelvin => Units.WattPerSquareMetreKelvin.FromSI(si);

    /// <summary>From W/(m²·K).</summary>
    public static HeatTransferCoefficient FromWattPerSquareMetreKelvin(double value) => new(Units.WattPerSquareMetreKelvin.ToSI(value));

    /// <inheritdoc/>
    public static HeatTransferCoefficient From(Amount amount) => new(Guard.Measures(amount, Dimension));

    /// <inheritdoc/>
    public Amount In(Unit unit) => Guard.In(si, unit, Dimension);

    /// <summary>Less.</summary>
    public static bool operator <(HeatTransferCoefficient left, HeatTransferCoefficient right) => left.si < right.si;

    /// <summary>More.</summary>
    public static bool operator >(HeatTransferCoefficient left, HeatTransferCoefficient right) => left.si > right.si;

    /// <summary>Less or the same.</summary>
    public static bool operator <=(HeatTransferCoefficient left, HeatTransferCoefficient right) => left.si <= right.si;

    /// <summary>More or the same.</summary>
    public static bool operator >=(HeatTransferCoefficient left, HeatTransferCoefficient right) => left.si >= right.si;

    /// <inheritdoc/>
    public int CompareTo(HeatTransferCoefficient other) => si.CompareTo(other.si);

    /// <summary>For logs and tests, in the invariant culture.</summary>
    public override string ToString() => In(Units.WattPerSquareMetreKelvin).ToString();
}
