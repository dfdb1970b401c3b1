namespace Rinsewright.Engine.Quantities;

public static partial class Units
{
    // Pound-force over square inch, both exact (Q4).
    private const double PoundForceInNewton = 4.4482216152605;
    private const double SquareInchInSquareMetre = 0.00064516;

    /// <summary>Pascal, gauge.</summary>
    public static readonly Unit Pascal = new("Pa", "Pa", Dimension.GaugePressure, 1, 1, 0, 0, "pascal", "pascals");

    /// <summary>Kilopascal, gauge.</summary>
    public static readonly Unit Kilopascal = new("kPa", "kPa", Dimension.GaugePressure, 1000, 1, 0, 0, "kpag", "kpa(g)");

    /// <summary>Bar, gauge.</summary>
    public static readonly Unit Bar = new("bar", "bar", Dimension.GaugePressure, 100000, 1, 0, 2, "barg", "bar(g)");

    /// <summary>Pound-force per square inch, gauge. Exact: 4.4482216152605 N over (0.0254 m)².</summary>
    public static readonly Unit Psi = new(
        "[psi]",
        "psi",
        Dimension.GaugePressure,
        PoundForceInNewton,
        SquareInchInSquareMetre,
        0,
        1,
        "psig",
        "psi(g)",
        "lbf/in2",
        "lb/in2",
        "[lbf_av]/[sin_i]"
    );

    /// <summary>Pascal above vacuum. UCUM has no absolute pressure; the annotation tells it apart.</summary>
    public static readonly Unit PascalAbsolute = new("Pa{abs}", "Pa abs", Dimension.AbsolutePressure, 1, 1, 0, 0, "pa", "pa(a)");

    /// <summary>Kilopascal above vacuum.</summary>
    public static readonly Unit KilopascalAbsolute = new(
        "kPa{abs}",
        "kPa abs",
        Dimension.AbsolutePressure,
        1000,
        1,
        0,
        1,
        "kpa",
        "kpa(a)",
        "kpaa"
    );

    /// <summary>Bar above vacuum.</summary>
    public static readonly Unit BarAbsolute = new(
        "bar{abs}",
        "bar abs",
        Dimension.AbsolutePressure,
        100000,
        1,
        0,
        3,
        "bar",
        "bar(a)",
        "bara"
    );

    /// <summary>Pound-force per square inch above vacuum.</summary>
    public static readonly Unit PsiAbsolute = new(
        "[psi]{abs}",
        "psi abs",
        Dimension.AbsolutePressure,
        PoundForceInNewton,
        SquareInchInSquareMetre,
        0,
        1,
        "psi",
        "psia",
        "psi(a)"
    );

    private static Unit[] Pressures() => [Pascal, Kilopascal, Bar, Psi, PascalAbsolute, KilopascalAbsolute, BarAbsolute, PsiAbsolute];
}
