using Rinsewright.Contracts.Language;
using Rinsewright.Contracts.Visits;
using Rinsewright.Engine.Visits;

namespace Rinsewright.Files.Sheets;

/// <summary>The tag that hangs on a machine nobody may use: why, what makes it safe again, who takes it off. In both languages, for whoever stands before it.</summary>
internal static class VisitTagContent
{
    public static SheetModel? For(VisitPaper paper, SheetOptions options)
    {
        var open = paper.Result.Stops.Where(s => s.Open).ToList();
        if (open.Count == 0)
        {
            return null;
        }

        var said = new VisitSheetWords(paper, options);
        var other = Words.Languages.First(l => l != said.Words.Language);
        List<SheetBlock> blocks = [];
        blocks.AddRange(In(said, open));
        blocks.AddRange(In(new VisitSheetWords(paper, options with { Language = other }), open));
        blocks.AddRange([
            new SheetFacts(
                said.Words["visit.sheet.facts"],
                [
                    (said.Words["sheet.machine"], said.MachineName),
                    (said.Words["sheet.kitchen"], said.Stated(paper.Document.Kitchen)),
                    (said.Words["visit.sheet.time"], said.Words.MomentAndZone(paper.Visit.Ended ?? paper.Visit.Began)),
                    (said.Words["sheet.technician"], said.Stated(paper.Visit.Technician)),
                ]
            ),
            new SheetSignatures(
                [said.Words["visit.sheet.tag-hung"], said.Words["visit.sheet.tag-told"]],
                said.Words["sheet.sign-name"],
                said.Words["sheet.sign-date"]
            ),
        ]);
        return said.Model("visit.sheet.tag", blocks);
    }

    private static IEnumerable<SheetBlock> In(VisitSheetWords said, List<StopReason> open)
    {
        var words = said.Words;
        yield return new SheetBanner(words["visit.sheet.tag"]);
        foreach (var stop in open)
        {
            yield return new SheetHeading(2, $"{words["visit.sheet.tag-why"]}: {said.In(stop.Name)}");
            yield return new SheetParagraph(said.Say(stop.FoundBy));
            yield return new SheetList([
                .. stop.Hazards.Select(h => $"{words["visit.sheet.caution"]}: {said.In(h.Caution)}"),
                $"{words["visit.sheet.tag-until"]}: {words.SafeAgain(stop)}",
            ]);
        }

        yield return new SheetParagraph(words["visit.sheet.tag-by-hand"]);
        yield return new SheetParagraph(words["visit.sheet.tag-remove"]);
        yield return new SheetParagraph(words["visit.sheet.tag-licensed"], Small: true);
    }
}
