namespace Rinsewright.Engine.Quantities;

/// <summary>Pressure counted from vacuum. SI unit Pa, never below zero. <c>default</c> is vacuum.</summary>
public readonly record struct AbsolutePressure : IQuantity<AbsolutePressure>
{
    private readonly double si;

    private AbsolutePressure(double si) => this.si = Guard.NotNegative(si, nameof(AbsolutePressure));

    /// <inheritdoc/>
    public static Dimension Dimension => Dimension.AbsolutePressure;

    /// <summary>Value in Pa.</summary>
    public double InPascal => Units.PascalAbsolute.FromSI(si);

    /// <summary>Value in kPa.</summary>
    public double InKilopascal => Units.KilopascalAbsolute.FromSI(si);

    /// <summary>Value in bar.</summary>
    public double InBar => Units.BarAbsolute.FromSI(si);

    /// <summary>Value in psi.</summary>
    public double InPsi => Units.PsiAbsolute.FromSI(si);

    /// <summary>From Pa.</summary>
    public static AbsolutePressure FromPascal(double value) => new(Units.PascalAbsolute.ToSI(value));

    /// <summary>From kPa.</summary>
    public static AbsolutePressure FromKilopascal(double value) => new(Units.KilopascalAbsolute.ToSI(value));

    /// <summary>From bar.</summary>
    public static AbsolutePressure FromBar(double value) => new(Units.BarAbsolute.ToSI(value));

    /// <summary>From psi.</summary>
    public static AbsolutePressure FromPsi(double value) => new(Units.PsiAbsolute.ToSI(value));

    /// <inheritdoc/>
    public static AbsolutePressure From(Amount amount) => new(Guard.Measures(amount, Dimension));

    /// <inheritdoc/>
    public Amount In(Unit unit) => Guard.In(si, unit, Dimension);

    /// <summary>The same pressure as a gauge shows it, under a stated atmosphere.</summary>
    /// <param name="atmosphere">Pressure of the surrounding air, stated by the caller.</param>
    public GaugePressure ToGauge(AbsolutePressure atmosphere) => GaugePressure.From(new Amount(si - atmosphere.si, Units.Pascal));

    /// <summary>Less.</summary>
    public static bool operator <(AbsolutePressure left, AbsolutePressure right) => left.si < right.si;

    /// <summary>More.</summary>
    public static bool operator >(AbsolutePressure left, AbsolutePressure right) => left.si > right.si;

    /// <summary>Less or the same.</summary>
    public static bool operator <=(AbsolutePressure left, AbsolutePressure right) => left.si <= right.si;

    /// <summary>More or the same.</summary>
    public static bool operator >=(AbsolutePressure left, AbsolutePressure right) => left.si >= right.si;

    /// <inheritdoc/>
    public int CompareTo(AbsolutePressure other) => si.CompareTo(other.si);

    /// <summary>For logs and tests, in the invariant culture.</summary>
    public override string ToString() => In(Units.KilopascalAbsolute).ToString();
}
