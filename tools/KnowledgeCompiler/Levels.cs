namespace Rinsewright.KnowledgeCompiler;

/// <summary>Levels of a likelihood, the strongest first, and how effects say them.</summary>
internal static class Levels
{
    public static IReadOnlyList<string> Names { get; } = ["always", "usual", "often", "sometimes", "rare", "never"];

    public static IReadOnlyDictionary<string, string> Strength { get; } =
        new Dictionary<string, string>(StringComparer.Ordinal)
        {
            ["always"] = "defining",
            ["usual"] = "strong",
            ["often"] = "medium",
            ["sometimes"] = "weak",
            ["rare"] = "trace",
            ["never"] = "excludes",
        };
}
