using System.Text.Json;
using System.Text.Json.Serialization.Metadata;
using Rinsewright.Engine.Knowledge;

namespace Rinsewright.Knowledge;

/// <summary>The knowledge that comes with the program. In the browser this library is fetched first (<c>LateParts.KnowledgeAsync</c>).</summary>
public static class BuiltInKnowledge
{
    private static readonly Lazy<TradeKnowledge> Loaded = new(() => new TradeKnowledge(new Embedded()));

    /// <summary>The knowledge; each section is read when it is first asked for.</summary>
    public static TradeKnowledge Trade => Loaded.Value;

    /// <summary>Names of the sections, for tests and measurements.</summary>
    internal static IReadOnlyList<string> Sections { get; } =
    ["common", "sources", "parts", "procedures", "observables", "faults", "likelihoods", "ware-results", "service-visit", "glossary"];

    internal static Stream Open(string section) =>
        typeof(BuiltInKnowledge).Assembly.GetManifestResourceStream($"Knowledge/{section}.json")
        ?? throw new InvalidOperationException($"The knowledge has no section {section}.");

    private static T Read<T>(string section, JsonTypeInfo<T> type)
    {
        using var stream = Open(section);
        var bytes = new byte[stream.Length];
        stream.ReadExactly(bytes);
        return JsonSerializer.Deserialize(bytes, type) ?? throw new InvalidOperationException($"The section {section} is empty.");
    }

    private sealed class Embedded : IKnowledgeSections
    {
        public SharedLists Common() => Read("common", KnowledgeJson.Default.SharedLists);

        public IReadOnlyList<KnownSource> Sources() => Read("sources", KnowledgeJson.Default.IReadOnlyListKnownSource);

        public Anatomy Anatomy() => Read("parts", KnowledgeJson.Default.Anatomy);

        public IReadOnlyList<Procedure> Procedures() => Read("procedures", KnowledgeJson.Default.IReadOnlyListProcedure);

        public TradeObservables Observables() => Read("observables", KnowledgeJson.Default.TradeObservables);

        public IReadOnlyList<TradeFault> Faults() => Read("faults", KnowledgeJson.Default.IReadOnlyListTradeFault);

        public Likelihoods Likelihoods() => Read("likelihoods", KnowledgeJson.Default.Likelihoods);

        public IReadOnlyList<WareResult> WareResults() => Read("ware-results", KnowledgeJson.Default.IReadOnlyListWareResult);

        public ServiceVisit Visit() => Read("service-visit", KnowledgeJson.Default.ServiceVisit);

        public IReadOnlyList<TradeTerm> Terms() => Read("glossary", KnowledgeJson.Default.IReadOnlyListTradeTerm);
    }
}
