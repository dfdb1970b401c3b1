using Rinsewright.Contracts.Visits;
using Rinsewright.Engine.Knowledge;
using Rinsewright.Engine.Sanitization;
using Rinsewright.Engine.Visits;

namespace Rinsewright.Files.Sheets;

/// <summary>A visit with what came of it, ready for paper.</summary>
/// <param name="Document">As it travels.</param>
/// <param name="Visit">As the engine has it.</param>
/// <param name="Result">What it amounts to.</param>
/// <param name="Rules">Rule set it was judged by.</param>
/// <param name="Knowledge">Names of parts, readings, faults.</param>
public sealed record VisitPaper(VisitDocument Document, Visit Visit, VisitResult Result, RuleSet Rules, TradeKnowledge Knowledge)
{
    /// <summary>Photographs at hand, JPEG or PNG by their SHA-256; null where nobody looked for them.</summary>
    public IReadOnlyDictionary<string, byte[]>? Photos { get; init; }

    /// <summary>Judges a document.</summary>
    /// <exception cref="Contracts.ContractException">A field cannot be.</exception>
    public static VisitPaper Of(VisitDocument document, TradeKnowledge knowledge)
    {
        var (visit, rules) = (document.ToVisit(knowledge), document.Rules());
        return new VisitPaper(document, visit, VisitJudgement.Judge(visit, knowledge, rules), rules, knowledge);
    }
}

/// <summary>The papers of a visit: tagged PDFs, the same bytes for the same visit and options.</summary>
public static class VisitSheet
{
    /// <summary>The report: a page for the manager, the detail behind it.</summary>
    public static byte[] Report(VisitPaper paper, SheetOptions options) => Print(ReportModel(paper, options), paper, options);

    /// <summary>The inspector's page: before, after, limit with its citation, instrument, place, time.</summary>
    public static byte[] Inspector(VisitPaper paper, SheetOptions options) => Print(InspectorModel(paper, options), paper, options);

    /// <summary>The stop-use tag, in both languages; null where nothing found stops the machine.</summary>
    public static byte[]? Tag(VisitPaper paper, SheetOptions options) =>
        TagModel(paper, options) is { } model ? Print(model, paper, options) : null;

    /// <summary>Content of the report.</summary>
    public static SheetModel ReportModel(VisitPaper paper, SheetOptions options) => new VisitReportContent(paper, options).Model();

    /// <summary>Content of the inspector's page.</summary>
    public static SheetModel InspectorModel(VisitPaper paper, SheetOptions options) => new VisitInspectorContent(paper, options).Model();

    /// <summary>Content of the tag; null where nothing found stops the machine.</summary>
    public static SheetModel? TagModel(VisitPaper paper, SheetOptions options) => VisitTagContent.For(paper, options);

    private static byte[] Print(SheetModel model, VisitPaper paper, SheetOptions options) =>
        SheetPrinter.Print(model, options.Paper, paper.Document.Ended ?? paper.Document.Began, paper.Document.Id);
}
