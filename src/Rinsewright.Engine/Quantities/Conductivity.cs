namespace Rinsewright.Engine.Quantities;

/// <summary>Electrical conductivity of water or of a wash solution, at the temperature it was read at. SI unit S/m. <c>default</c> is none.</summary>
public readonly record struct Conductivity : IQuantity<Conductivity>
{
    private readonly double si;

    private Conductivity(double si) => this.si = Guard.Finite(si, nameof(Conductivity));

    /// <inheritdoc/>
    public static Dimension Dimension => Dimension.Conductivity;

    /// <summary>Value in S/m.</summary>
    public double InSiemensPerMetre => Units.SiemensPerMetre.FromSI(si);

    /// <summary>Value in µS/cm.</summary>
    public double InMicrosiemensPerCentimetre => Units.MicrosiemensPerCentimetre.FromSI(si);

    /// <summary>Value in mS/cm.</summary>
    public double InMillisiemensPerCentimetre => Units.MillisiemensPerCentimetre.FromSI(si);

    /// <summary>From S/m.</summary>
    public static Conductivity FromSiemensPerMetre(double value) => new(Units.SiemensPerMetre.ToSI(value));

    /// <summary>From µS/cm.</summary>
    public static Conductivity FromMicrosiemensPerCentimetre(double value) => new(Units.MicrosiemensPerCentimetre.ToSI(value));

    /// <summary>From mS/cm.</summary>
    public static Conductivity FromMillisiemensPerCentimetre(double value) => new(Units.MillisiemensPerCentimetre.ToSI(value));

    /// <inheritdoc/>
    public static Conductivity From(Amount amount) => new(Guard.Measures(amount, Dimension));

    /// <inheritdoc/>
    public Amount In(Unit unit) => Guard.In(si, unit, Dimension);

    /// <summary>Less.</summary>
    public static bool operator <(Conductivity left, Conductivity right) => left.si < right.si;

    /// <summary>More.</summary>
    public static bool operator >(Conductivity left, Conductivity right) => left.si > right.si;

    /// <summary>Less or the same.</summary>
    public static bool operator <=(Conductivity left, Conductivity right) => left.si <= right.si;

    /// <summary>More or the same.</summary>
    public static bool operator >=(Conductivity left, Conductivity right) => left.si >= right.si;

    /// <inheritdoc/>
    public int CompareTo(Conductivity other) => si.CompareTo(other.si);

    /// <summary>For logs and tests, in the invariant culture.</summary>
    public override string ToString() => In(Units.MicrosiemensPerCentimetre).ToString();
}
