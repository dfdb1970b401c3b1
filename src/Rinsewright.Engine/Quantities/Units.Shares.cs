namespace Rinsewright.Engine.Quantities;

public static partial class Units
{
    /// <summary>A share, 1 the whole.</summary>
    public static readonly Unit One = new("1", "", Dimension.Ratio, 1, 1, 0, 3);

    /// <summary>Percent.</summary>
    public static readonly Unit Percent = new("%", "%", Dimension.Ratio, 1, 100, 0, 1, "percent", "pct", "porciento");

    /// <summary>Heat unit equivalent, accumulated. The code is a UCUM annotation: UCUM has no unit for it.</summary>
    public static readonly Unit HeatUnit = new("{HUE}", "HUE", Dimension.HeatUnits, 1, 1, 0, 0, "hue");

    /// <summary>Equivalent second at 80 °C, accumulated (A0).</summary>
    public static readonly Unit A0Second = new("s{A0}", "A0", Dimension.EquivalentTime, 1, 1, 0, 1, "s", "sec");

    private static Unit[] Shares() => [One, Percent, HeatUnit, A0Second];
}
