namespace Rinsewright.Engine.Quantities;

/// <summary>Pressure above the surrounding air, as the gauge beside a rinse valve shows it. SI unit Pa. Below zero is a vacuum. <c>default</c> is the pressure of the surrounding air.</summary>
public readonly record struct GaugePressure : IQuantity<GaugePressure>
{
    private readonly double si;

    private GaugePressure(double si) => this.si = Guard.Finite(si, nameof(GaugePressure));

    /// <inheritdoc/>
    public static Dimension Dimension => Dimension.GaugePressure;

    /// <summary>Value in kPa.</summary>
    public double InKilopascal => Units.Kilopascal.FromSI(si);

    /// <summary>Value in bar.</summary>
    public double InBar => Units.Bar.FromSI(si);

    /// <summary>Value in psi.</summary>
    public double InPsi => Units.Psi.FromSI(si);

    /// <summary>From kPa.</summary>
    public static GaugePressure FromKilopascal(double value) => new(Units.Kilopascal.ToSI(value));

    /// <summary>From bar.</summary>
    public static GaugePressure FromBar(double value) => new(Units.Bar.ToSI(value));

    /// <summary>From psi.</summary>
    public static GaugePressure FromPsi(double value) => new(Units.Psi.ToSI(value));

    /// <inheritdoc/>
    public static GaugePressure From(Amount amount) => new(Guard.Measures(amount, Dimension));

    /// <inheritdoc/>
    public Amount In(Unit unit) => Guard.In(si, unit, Dimension);

    /// <summary>The same pressure counted from vacuum, under a stated atmosphere.</summary>
    /// <param name="atmosphere">Pressure of the surrounding air, stated by the caller: it falls with height above the sea.</param>
    public AbsolutePressure ToAbsolute(AbsolutePressure atmosphere) => AbsolutePressure.FromPascal(si + atmosphere.InPascal);

    /// <summary>Less.</summary>
    public static bool operator <(GaugePressure left, GaugePressure right) => left.si < right.si;

    /// <summary>More.</summary>
    public static bool operator >(GaugePressure left, GaugePressure right) => left.si > right.si;

    /// <summary>Less or the same.</summary>
    public static bool operator <=(GaugePressure left, GaugePressure right) => left.si <= right.si;

    /// <summary>More or the same.</summary>
    public static bool operator >=(GaugePressure left, GaugePressure right) => left.si >= right.si;

    /// <inheritdoc/>
    public int CompareTo(GaugePressure other) => si.CompareTo(other.si);

    /// <summary>For logs and tests, in the invariant culture.</summary>
    public override string ToString() => In(Units.Kilopascal).ToString();
}
