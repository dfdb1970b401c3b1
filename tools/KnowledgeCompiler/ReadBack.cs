using Rinsewright.Knowledge;

namespace Rinsewright.KnowledgeCompiler;

/// <summary>Reads a compiled section through the reader of the program.</summary>
internal static class ReadBack
{
    /// <summary>The section; the reader must come out exactly at its end.</summary>
    /// <exception cref="InvalidDataException">Schema and reader do not agree.</exception>
    public static object Section(string file, byte[] bytes)
    {
        var reader = new KnowledgeReader(bytes);
        object read = file switch
        {
            "common" => SectionReaders.Common(reader),
            "sources" => SectionReaders.Sources(reader),
            "parts" => SectionReaders.Anatomy(reader),
            "procedures" => SectionReaders.Procedures(reader),
            "observables" => SectionReaders.Observables(reader),
            "faults" => SectionReaders.Faults(reader),
            "likelihoods" => SectionReaders.Likelihoods(reader),
            "ware-results" => SectionReaders.WareResults(reader),
            "service-visit" => SectionReaders.Visit(reader),
            _ => SectionReaders.Terms(reader),
        };
        return reader.AtEnd ? read : throw new InvalidDataException($"{file}: schema and reader do not agree; see SectionReaders.cs");
    }
}
