using Rinsewright.Contracts.Language;
using Rinsewright.Engine.Knowledge;
using Rinsewright.Engine.Records;

namespace Rinsewright.Contracts.Knowledge;

/// <summary>Words about the knowledge that screens and the command line share.</summary>
public static class KnowledgeWords
{
    /// <summary>Where an item comes from in one line; what rests on memory or on common practice alone is called an expert's estimate.</summary>
    public static string Source(Words words, TradeKnowledge trade, IReadOnlyList<string> src)
    {
        var texts = src.Select(s => trade.Sources[s])
            .Where(s => s.Known is Basis.Opened or Basis.SecondHand || s.Bib is not null)
            .Select(s =>
                s.Known == Basis.SecondHand ? $"{s.Label.In(words.Language)} ({words["basis.second-hand"]})" : s.Label.In(words.Language)
            )
            .ToList();
        var named = string.Join("; ", texts);
        return texts.Count == 0 ? words["ware.estimate"]
            : trade.BasisOf(src) is Basis.FromMemory or Basis.CommonPractice ? words.Say("ware.source-estimate", ("source", named))
            : words.Say("ware.source", ("source", named));
    }
}
