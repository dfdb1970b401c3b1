namespace Rinsewright.Engine.Quantities;

public static partial class Units
{
    // 64.79891 mg in 3.785411784 L, both exact (Q7).
    private const double GrainInKilogram = 0.06479891e-3;

    // Molar mass of calcium carbonate in g/mol; half of it is one equivalent (Q9).
    private const double CalciumCarbonate = 100.087;

    /// <summary>Gram per litre.</summary>
    public static readonly Unit GramPerLitre = new("g/L", "g/L", Dimension.MassConcentration, 1, 1, 0, 2, "kg/m3");

    /// <summary>Kilogram per litre, as the density of a concentrate is printed.</summary>
    public static readonly Unit KilogramPerLitre = new("kg/L", "kg/L", Dimension.MassConcentration, 1000, 1, 0, 3, "g/ml", "g/cm3");

    /// <summary>Milligram per litre; in dilute water the same as parts per million, as strips are printed.</summary>
    public static readonly Unit MilligramPerLitre = new("mg/L", "mg/L", Dimension.MassConcentration, 1, 1000, 0, 1, "ppm", "[ppm]");

    /// <summary>Avoirdupois ounce per US gallon, as detergents are dosed.</summary>
    public static readonly Unit OuncePerGallon = new(
        "[oz_av]/[gal_us]",
        "oz/gal",
        Dimension.MassConcentration,
        PoundInKilogram,
        16 * GallonInCubicMetre,
        0,
        2
    );

    /// <summary>Hardness as calcium carbonate, milligram per litre.</summary>
    public static readonly Unit HardnessMilligramPerLitre = new(
        "mg/L{CaCO3}",
        "mg/L CaCO₃",
        Dimension.Hardness,
        1,
        1000,
        0,
        0,
        "mg/l",
        "ppm",
        "[ppm]",
        "ppmcaco3",
        "mg/lcaco3"
    );

    /// <summary>Hardness, grain of calcium carbonate per US gallon.</summary>
    public static readonly Unit GrainPerGallon = new(
        "[gr]/[gal_us]",
        "gpg",
        Dimension.Hardness,
        GrainInKilogram,
        GallonInCubicMetre,
        0,
        1,
        "gr/gal",
        "grains/gal",
        "grain",
        "grains"
    );

    /// <summary>German degree of hardness, 17.848 mg/L as calcium carbonate. The code is an annotation: UCUM has no unit for it.</summary>
    public static readonly Unit GermanDegree = new("{dH}", "°dH", Dimension.Hardness, 17.848, 1000, 0, 1, "dh", "dgh", "°dgh");

    /// <summary>French degree of hardness, 10 mg/L as calcium carbonate. The code is an annotation: UCUM has no unit for it.</summary>
    public static readonly Unit FrenchDegree = new("{fH}", "°f", Dimension.Hardness, 1, 100, 0, 1, "f", "fh", "°fh", "tf", "°tf");

    /// <summary>Calcium and magnesium together, millimole per litre.</summary>
    public static readonly Unit HardnessMillimolePerLitre = new(
        "mmol/L{CaCO3}",
        "mmol/L",
        Dimension.Hardness,
        CalciumCarbonate,
        1000,
        0,
        2,
        "mmol/lcaco3"
    );

    /// <summary>Alkalinity as calcium carbonate, milligram per litre.</summary>
    public static readonly Unit AlkalinityMilligramPerLitre = new(
        "mg/L{alkalinity}",
        "mg/L CaCO₃",
        Dimension.Alkalinity,
        1,
        1000,
        0,
        0,
        "mg/l",
        "ppm",
        "[ppm]",
        "ppmcaco3",
        "mg/l{caco3}",
        "mg/lcaco3"
    );

    /// <summary>Alkalinity, milliequivalent per litre.</summary>
    public static readonly Unit AlkalinityMilliequivalentPerLitre = new(
        "meq/L",
        "meq/L",
        Dimension.Alkalinity,
        CalciumCarbonate,
        2000,
        0,
        2
    );

    /// <summary>Alkalinity, grain of calcium carbonate per US gallon.</summary>
    public static readonly Unit AlkalinityGrainPerGallon = new(
        "[gr]/[gal_us]{alkalinity}",
        "gpg",
        Dimension.Alkalinity,
        GrainInKilogram,
        GallonInCubicMetre,
        0,
        1,
        "gr/gal",
        "[gr]/[gal_us]",
        "grains/gal"
    );

    /// <summary>Equivalent per litre, on bottles of titrant N.</summary>
    public static readonly Unit EquivalentPerLitre = new("eq/L", "N", Dimension.Normality, 1000, 1, 0, 3, "normal");

    /// <summary>Siemens per metre.</summary>
    public static readonly Unit SiemensPerMetre = new("S/m", "S/m", Dimension.Conductivity, 1, 1, 0, 3);

    /// <summary>Microsiemens per centimetre.</summary>
    public static readonly Unit MicrosiemensPerCentimetre = new("uS/cm", "µS/cm", Dimension.Conductivity, 1, 10000, 0, 0);

    /// <summary>Millisiemens per centimetre.</summary>
    public static readonly Unit MillisiemensPerCentimetre = new("mS/cm", "mS/cm", Dimension.Conductivity, 1, 10, 0, 2);

    /// <summary>pH.</summary>
    public static readonly Unit PH = new("[pH]", "pH", Dimension.Acidity, 1, 1, 0, 1);

    /// <summary>Difference of two pH, as of water that ran off ware and the water supplied.</summary>
    public static readonly Unit PHDifference = new("[pH]{diff}", "pH", Dimension.AcidityDifference, 1, 1, 0, 1);

    private static Unit[] Solutions() =>
        [
            GramPerLitre,
            KilogramPerLitre,
            MilligramPerLitre,
            OuncePerGallon,
            HardnessMilligramPerLitre,
            GrainPerGallon,
            GermanDegree,
            FrenchDegree,
            HardnessMillimolePerLitre,
            AlkalinityMilligramPerLitre,
            AlkalinityMilliequivalentPerLitre,
            AlkalinityGrainPerGallon,
            EquivalentPerLitre,
            SiemensPerMetre,
            MicrosiemensPerCentimetre,
            MillisiemensPerCentimetre,
            PH,
            PHDifference,
        ];
}
