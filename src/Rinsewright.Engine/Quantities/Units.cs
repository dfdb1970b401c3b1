namespace Rinsewright.Engine.Quantities;

/// <summary>The units the trade uses, by dimension. Definitions and their sources: the folder's README, Q1 to Q10.</summary>
public static partial class Units
{
    /// <summary>Every unit; within a dimension the SI-leaning one first.</summary>
    public static IReadOnlyList<Unit> All => Index.All;

    /// <summary>The unit with this UCUM code, upper and lower case told apart; null where there is none.</summary>
    public static Unit? Find(string ucum) => Index.ByUcum.GetValueOrDefault(ucum);

    /// <summary>The units of one dimension.</summary>
    public static IReadOnlyList<Unit> Of(Dimension dimension) => Index.ByDimension.TryGetValue(dimension, out var units) ? units : [];

    // A class of its own: its fields are set after those of Units, whatever the order of the files.
    private static class Index
    {
        public static readonly Unit[] All =
        [
            .. Thermal(),
            .. Pressures(),
            .. Geometry(),
            .. Masses(),
            .. Times(),
            .. Flows(),
            .. Solutions(),
            .. Electric(),
            .. Shares(),
            .. HeatFlows(),
        ];

        public static readonly Dictionary<string, Unit> ByUcum = All.ToDictionary(u => u.Ucum, StringComparer.Ordinal);

        public static readonly Dictionary<Dimension, Unit[]> ByDimension = All.GroupBy(u => u.Dimension)
            .ToDictionary(g => g.Key, g => g.ToArray());
    }
}
