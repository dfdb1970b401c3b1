namespace Rinsewright.Engine.Quantities;

/// <summary>Acidity on the pH scale, a logarithm: neither added nor scaled; two have a difference. <c>default</c> is pH 0, a legal value: a missing reading is absent, never a default one.</summary>
public readonly record struct Acidity : IQuantity<Acidity>
{
    private readonly double si;

    private Acidity(double si) => this.si = Guard.Finite(si, nameof(Acidity));

    /// <inheritdoc/>
    public static Dimension Dimension => Dimension.Acidity;

    /// <summary>Value in pH.</summary>
    public double InPH => Units.PH.FromSI(si);

    /// <summary>From pH.</summary>
    public static Acidity FromPH(double value) => new(Units.PH.ToSI(value));

    /// <inheritdoc/>
    public static Acidity From(Amount amount) => new(Guard.Measures(amount, Dimension));

    /// <inheritdoc/>
    public Amount In(Unit unit) => Guard.In(si, unit, Dimension);

    /// <summary>How much higher one lies on the scale than the other.</summary>
    public static AcidityDifference operator -(Acidity left, Acidity right) => AcidityDifference.FromPH(left.InPH - right.InPH);

    /// <summary>Less.</summary>
    public static bool operator <(Acidity left, Acidity right) => left.si < right.si;

    /// <summary>More.</summary>
    public static bool operator >(Acidity left, Acidity right) => left.si > right.si;

    /// <summary>Less or the same.</summary>
    public static bool operator <=(Acidity left, Acidity right) => left.si <= right.si;

    /// <summary>More or the same.</summary>
    public static bool operator >=(Acidity left, Acidity right) => left.si >= right.si;

    /// <inheritdoc/>
    public int CompareTo(Acidity other) => si.CompareTo(other.si);

    /// <summary>For logs and tests, in the invariant culture.</summary>
    public override string ToString() => In(Units.PH).ToString();
}
