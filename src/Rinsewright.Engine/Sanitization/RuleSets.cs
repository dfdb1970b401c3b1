namespace Rinsewright.Engine.Sanitization;

/// <summary>The built-in rule sets, from the embedded files in <c>Data/</c>.</summary>
public static class RuleSets
{
    /// <summary>Id of the set taken where nobody chose one.</summary>
    public const string DefaultId = "fda-food-code";

    private static readonly string[] Order =
    [
        DefaultId,
        "fda-food-code-15-25-psi",
        "in-410-iac-7-24",
        "la-lac-51",
        "nv-nac-446",
        "ca-17-ccr-30856",
        "us-vsp-2018",
        "de-din-10510",
        "au-fsanz",
        "uk-rsph-practice",
        "iso-15883-a0-60",
    ];

    private static readonly Lazy<Dictionary<string, RuleSet>> Loaded = new(Load);

    /// <summary>All built-in sets, the default one first.</summary>
    public static IReadOnlyList<RuleSet> BuiltIn => [.. Order.Select(id => Loaded.Value[id])];

    /// <summary>A built-in set by id; null where there is none.</summary>
    public static RuleSet? Find(string id) => Loaded.Value.GetValueOrDefault(id);

    /// <summary>Reads a set of the service's own, which may build on a built-in one.</summary>
    /// <exception cref="RuleSetException">The file cannot be used; the message says where and why.</exception>
    public static RuleSet Parse(string json) => RuleSetFile.Parse(json, Find);

    private static Dictionary<string, RuleSet> Load()
    {
        var sets = new Dictionary<string, RuleSet>(StringComparer.Ordinal);
        foreach (var id in Order)
        {
            using var stream =
                typeof(RuleSets).Assembly.GetManifestResourceStream($"Sanitization/Data/{id}.json")
                ?? throw new InvalidOperationException($"The rule set {id} is not embedded.");
            using var text = new StreamReader(stream);
            sets.Add(id, RuleSetFile.Parse(text.ReadToEnd(), sets.GetValueOrDefault));
        }

        return sets;
    }
}
