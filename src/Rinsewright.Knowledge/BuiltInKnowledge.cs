using Rinsewright.Engine.Knowledge;

namespace Rinsewright.Knowledge;

/// <summary>The knowledge that comes with the program. In the browser this library is fetched first (<c>LateParts.KnowledgeAsync</c>).</summary>
public static class BuiltInKnowledge
{
    private static readonly Lazy<TradeKnowledge> Loaded = new(() => new TradeKnowledge(new Embedded()));

    /// <summary>The knowledge; each section is read when it is first asked for.</summary>
    public static TradeKnowledge Trade => Loaded.Value;

    /// <summary>Bytes of a compiled section, for tests and measurements.</summary>
    internal static byte[] Bytes(string section)
    {
        using var stream =
            typeof(BuiltInKnowledge).Assembly.GetManifestResourceStream($"Knowledge/{section}.bin")
            ?? throw new InvalidOperationException($"The knowledge has no section {section}.");
        var bytes = new byte[stream.Length];
        stream.ReadExactly(bytes);
        return bytes;
    }

    private sealed class Embedded : IKnowledgeSections
    {
        public SharedLists Common() => SectionReaders.Common(Open("common"));

        public IReadOnlyList<KnownSource> Sources() => SectionReaders.Sources(Open("sources"));

        public Anatomy Anatomy() => SectionReaders.Anatomy(Open("parts"));

        public IReadOnlyList<Procedure> Procedures() => SectionReaders.Procedures(Open("procedures"));

        public TradeObservables Observables() => SectionReaders.Observables(Open("observables"));

        public IReadOnlyList<TradeFault> Faults() => SectionReaders.Faults(Open("faults"));

        public Likelihoods Likelihoods() => SectionReaders.Likelihoods(Open("likelihoods"));

        public IReadOnlyList<WareResult> WareResults() => SectionReaders.WareResults(Open("ware-results"));

        public ServiceVisit Visit() => SectionReaders.Visit(Open("service-visit"));

        public IReadOnlyList<TradeTerm> Terms() => SectionReaders.Terms(Open("glossary"));

        private static KnowledgeReader Open(string section) => new(Bytes(section));
    }
}
