using System.Runtime.CompilerServices;
using Rinsewright.Contracts.Records;
using Rinsewright.Contracts.Visits;
using Rinsewright.Engine.Knowledge;
using Rinsewright.Engine.Visits;
using Rinsewright.Files.Sheets;

namespace Rinsewright.Client.Visits;

/// <summary>The papers of a visit as the screen makes them; apart, so that the page opens without what makes PDFs.</summary>
public static class VisitPrinting
{
    /// <summary>The papers there are.</summary>
    public static IReadOnlyList<string> Papers { get; } = ["report", "inspector", "tag"];

    /// <summary>The PDF; null where the visit has no such paper.</summary>
    [MethodImpl(MethodImplOptions.NoInlining)]
    public static byte[]? Make(
        string which,
        VisitDocument document,
        Visit visit,
        VisitResult result,
        TradeKnowledge trade,
        string paper,
        string language,
        UnitDisplay units,
        IReadOnlyDictionary<string, byte[]>? photos = null
    )
    {
        var options = new SheetOptions(paper == "a4" ? Paper.A4 : Paper.Letter, language, units);
        var judged = new VisitPaper(document, visit, result, document.Rules(), trade) { Photos = photos };
        return which switch
        {
            "inspector" => VisitSheet.Inspector(judged, options),
            "tag" => VisitSheet.Tag(judged, options),
            _ => VisitSheet.Report(judged, options),
        };
    }
}
