using System.Text.Json;
using Rinsewright.Knowledge;

namespace Rinsewright.KnowledgeCompiler;

/// <summary>Reads a compiled section as the program will.</summary>
internal static class ReadBack
{
    public static object? Section(string file, byte[] json) =>
        file switch
        {
            "common" => JsonSerializer.Deserialize(json, KnowledgeJson.Default.SharedLists),
            "sources" => JsonSerializer.Deserialize(json, KnowledgeJson.Default.IReadOnlyListKnownSource),
            "parts" => JsonSerializer.Deserialize(json, KnowledgeJson.Default.Anatomy),
            "procedures" => JsonSerializer.Deserialize(json, KnowledgeJson.Default.IReadOnlyListProcedure),
            "observables" => JsonSerializer.Deserialize(json, KnowledgeJson.Default.TradeObservables),
            "faults" => JsonSerializer.Deserialize(json, KnowledgeJson.Default.IReadOnlyListTradeFault),
            "likelihoods" => JsonSerializer.Deserialize(json, KnowledgeJson.Default.Likelihoods),
            "ware-results" => JsonSerializer.Deserialize(json, KnowledgeJson.Default.IReadOnlyListWareResult),
            "service-visit" => JsonSerializer.Deserialize(json, KnowledgeJson.Default.ServiceVisit),
            _ => JsonSerializer.Deserialize(json, KnowledgeJson.Default.IReadOnlyListTradeTerm),
        };
}
