using Rinsewright.Contracts.Visits;
using Rinsewright.Drawing;
using Rinsewright.Engine.Records;
using Rinsewright.Engine.Sanitization;
using Rinsewright.Engine.Visits;

namespace Rinsewright.Files.Sheets;

/// <summary>The visit report: page 1 for whoever runs the kitchen, the detail behind it. Nothing here computes.</summary>
internal sealed partial class VisitReportContent
{
    private const int MostReasons = 4;
    private const int MostOpen = 6;

    private readonly VisitPaper paper;
    private readonly VisitSheetWords said;

    public VisitReportContent(VisitPaper paper, SheetOptions options)
    {
        this.paper = paper;
        said = new VisitSheetWords(paper, options);
    }

    private VisitResult Result => paper.Result;

    private Contracts.Language.Words Words => said.Words;

    public SheetModel Model()
    {
        List<SheetBlock> blocks =
        [
            new SheetHeading(1, Words["visit.sheet.title"]),
            Verdict(),
            new SheetHeading(2, Words["visit.sheet.facts"]),
            new SheetFacts(Words["visit.sheet.facts"], [.. said.Facts(), .. Complaint()]),
            new SheetHeading(2, Words["visit.sheet.lines"]),
            new SheetList([
                $"{Words["visit.sheet.was"]}: {said.Say(Result.Was)}",
                $"{Words["visit.sheet.done"]}: {said.Say(Result.Done)}",
                $"{Words["visit.sheet.do"]}: {said.Say(Result.YouDo)}",
            ]),
            new SheetHeading(2, Words["visit.sheet.proof"]),
            BeforeAfter(),
            new SheetHeading(2, Words["visit.sheet.open"]),
            new SheetList(Open()),
            new SheetHeading(2, Words["visit.sheet.next"]),
            new SheetParagraph(
                Words.Say(
                    "visit.sheet.next-line",
                    ("date", Words.Day(Result.Next.On)),
                    ("because", said.Say(Result.Next.Because).TrimEnd('.'))
                ),
                Bold: true
            ),
        ];
        blocks.AddRange(new VisitSignatureBlocks(paper, said).Blocks());
        blocks.Add(new SheetPageBreak());
        AddDetail(blocks);
        return said.Model("visit.sheet.title", blocks);
    }

    private string Sentence => Words["visit.sentence." + Contracts.Wire.WordKey(Result.Standing)["visit-standing.".Length..]];

    private SheetVerdict Verdict()
    {
        var reasons = Result.Because.Select(said.Say).ToList();
        List<string> shown = [.. reasons.Take(MostReasons)];
        if (reasons.Count > MostReasons)
        {
            shown.Add(Words.Say("sheet.more", ("count", Words.Number(reasons.Count - MostReasons, 0))));
        }

        return new SheetVerdict(VisitSheetWords.ShapeOf(Result.Standing), said.Word(Result.Standing), Sentence, shown);
    }

    private IEnumerable<(string, string)> Complaint() =>
        paper.Visit.Complaint is { } complaint ? [(Words["visit.sheet.complaint"], $"“{complaint}”")] : [];

    // Every place a rule or the data plate limits, read or not, before and after.
    private SheetTable BeforeAfter()
    {
        var kinds = Result
            .Readings.Where(l => l.Rule?.Limit is not null || IsProof(l))
            .Select(l => l.Reading.Kind)
            .Concat(Result.After.Checks.Where(c => c.Status == ReadingStatus.NotRead).SelectMany(Limited))
            .Distinct(StringComparer.Ordinal)
            .ToList();
        List<IReadOnlyList<SheetCell>> rows = [];
        foreach (var kind in kinds)
        {
            var lines = Result.Readings.Where(l => l.Reading.Kind == kind).ToList();
            var limit = lines.Select(l => l.Rule?.Limit).OfType<Limit>().FirstOrDefault();
            var unit = lines.Select(l => l.Reading.Value?.Unit).FirstOrDefault(u => u is not null) ?? limit?.Printed[0].Unit;
            rows.Add([
                new SheetCell(lines.Count > 0 ? said.Name(lines[0]) : kind, Bold: true),
                Cell([.. lines.Where(l => l.Reading is { Moment: VisitMoment.AsFound, Value: not null })], false),
                Cell([.. lines.Where(l => l.Reading is { Moment: VisitMoment.AsLeft, Value: not null })], !paper.Visit.Touched),
                new SheetCell(limit is { } l && unit is not null ? said.Limit(l, unit) : ""),
            ]);
        }

        return new SheetTable(
            Words["visit.sheet.proof"],
            [
                new SheetColumn(Words["visit.sheet.reading"], 2.4),
                new SheetColumn(Words["visit.sheet.found"], 2.2),
                new SheetColumn(Words["visit.sheet.left"], 2.2),
                new SheetColumn(Words["visit.sheet.limit"], 1.6),
            ],
            rows
        );
    }

    private static bool IsProof(JudgedReading line) => line.Reading.Kind is "rd-ware-surface-temp" or "rd-sanitizer";

    private IEnumerable<string> Limited(Check check) =>
        check.Limit is not { } limit
            ? []
            : VisitReadingKinds
                .All.Where(k =>
                    VisitReadingKinds.PointOn(k, paper.Visit.Machine) == limit.Point
                    && k.Unit.Dimension == limit.Dimension
                    && Result.Readings.Any(l => l.Reading.Kind == k.Id)
                )
                .Select(k => k.Id)
                .Take(1);

    // The worst of several racks stands there; all of them stand in the detail.
    private SheetCell Cell(IReadOnlyList<JudgedReading> lines, bool untouched)
    {
        if (lines.Count == 0)
        {
            return new SheetCell(
                Words[untouched ? "visit.sheet.untouched" : "sheet.not-read"],
                untouched ? null : Drawing.StatusShape.Ring
            );
        }

        var worst = lines.OrderByDescending(l => Rank(l.Status)).First();
        var values = lines.Select(l => said.Value(l.Reading)).Distinct(StringComparer.Ordinal).ToList();
        return new SheetCell(
            $"{string.Join("; ", values)}: {said.Word(worst.Status)}",
            VisitSheetWords.ShapeOf(worst.Status),
            worst.Status == ReadingStatus.OutOfRange
        );
    }

    private static int Rank(ReadingStatus status) =>
        status switch
        {
            ReadingStatus.OutOfRange => 5,
            ReadingStatus.Open => 4,
            ReadingStatus.NearLimit => 3,
            ReadingStatus.NotRead => 2,
            ReadingStatus.NoLimit => 1,
            _ => 0,
        };

    private List<string> Open()
    {
        List<string> open =
        [
            .. Result.Stops.Where(s => s.Open).Select(s => $"{said.In(s.Name)}: {Words.SafeAgain(s)}"),
            .. Result
                .Acceptance.Where(a => a.Standing is AcceptanceStanding.NotRun or AcceptanceStanding.Failed or AcceptanceStanding.Declined)
                .Select(a => said.Say(Statement.Of("visit.because.acceptance", ("area", a.Area), ("says", a.Because)))),
            .. Result
                .Parts.Where(p => p.State is PartState.Worn or PartState.Broken or PartState.Missing)
                .Select(p => said.Say(Statement.Of("visit.because.part", ("part", p.Part.Name), ("state", p.State)))),
            .. paper
                .Visit.PartsUsed.Where(p => p.Where != PartWhere.Fitted)
                .Select(p => $"{p.What}: {said.Word(p.Where)}{(p.Expected is { } day ? $", {Words.Day(day)}" : "")}"),
            .. Result.Clashes.Select(c => said.Say(c.Says)),
            .. Result.Unexplained.Select(said.Say),
        ];
        return open.Count == 0
                // What is not proved is open, whatever else is done.
                ? [Result.Standing is VisitStanding.NotSanitary or VisitStanding.NotProved ? Sentence : Words["visit.sheet.nothing-open"]]
            : open.Count <= MostOpen ? open
            : [.. open.Take(MostOpen), Words.Say("sheet.more", ("count", Words.Number(open.Count - MostOpen, 0)))];
    }
}
