using Rinsewright.Engine.Records;
using Rinsewright.Engine.Sanitization;
using Rinsewright.Engine.Visits;

namespace Rinsewright.Files.Sheets;

/// <summary>The loggers that were counted with a visit, as every paper of it shows them.</summary>
internal sealed class VisitProofTable(VisitPaper paper, VisitSheetWords said)
{
    /// <summary>Heading, table and what keeps one from counting; nothing where none was counted.</summary>
    public IEnumerable<SheetBlock> Blocks()
    {
        var words = said.Words;
        if (paper.Visit.Proofs.Count == 0)
        {
            yield break;
        }

        yield return new SheetHeading(2, words["visit.sheet.proofs"]);
        yield return new SheetTable(
            words["visit.sheet.proofs"],
            [
                new SheetColumn(words["visit.sheet.proof-verdict"], 1.6),
                new SheetColumn(words["visit.sheet.proof-file"], 3),
                new SheetColumn(words["visit.sheet.proof-moment"], 1.3),
                new SheetColumn(words["visit.sheet.time"], 1.6),
                new SheetColumn(words["visit.sheet.proof-passes"], 0.9, true),
                new SheetColumn(words["visit.sheet.proof-peak"], 1.1, true),
            ],
            [.. paper.Visit.Proofs.OrderBy(p => p.Moment).ThenBy(p => p.At ?? DateTimeOffset.MaxValue).Select(Row)]
        );
        foreach (var refusal in paper.Visit.Proofs.Select(p => p.Refusal(paper.Visit, paper.Rules)).OfType<Statement>())
        {
            yield return new SheetParagraph(said.Say(refusal));
        }
    }

    private IReadOnlyList<SheetCell> Row(CountedProof proof)
    {
        var words = said.Words;
        var counts = proof.Refusal(paper.Visit, paper.Rules) is null;
        var outcome = counts ? proof.Outcome : Outcome.Undetermined;
        return
        [
            new SheetCell(
                counts ? said.Word(proof.Outcome) : words["visit.sheet.proof-nothing"],
                Drawing.ChartWords.ShapeOfOutcome(Contracts.Wire.Name(outcome)),
                Bold: true
            ),
            new SheetCell(proof.Name),
            new SheetCell(said.Word(proof.Moment)),
            new SheetCell(
                (proof.At is { } at ? words.MomentAndZone(at) : words["visit.proof.no-clock"])
                    + (proof.ClockOff ? $" ({words["visit.sheet.proof-clock-off"]})" : "")
            ),
            new SheetCell(words.Number(proof.Passes, 0)),
            new SheetCell(proof.LowestPeak is { } peak ? said.Show(peak) : ""),
        ];
    }
}
