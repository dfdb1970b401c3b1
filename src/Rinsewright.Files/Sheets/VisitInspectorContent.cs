using System.Globalization;
using Rinsewright.Contracts;
using Rinsewright.Contracts.Language;
using Rinsewright.Drawing;
using Rinsewright.Engine.Quantities;
using Rinsewright.Engine.Records;
using Rinsewright.Engine.Sanitization;
using Rinsewright.Engine.Visits;

namespace Rinsewright.Files.Sheets;

/// <summary>The inspector's page: what was read before and after, with what, where, when, against which limit of which text.</summary>
internal sealed class VisitInspectorContent
{
    private readonly VisitPaper paper;
    private readonly VisitSheetWords said;

    public VisitInspectorContent(VisitPaper paper, SheetOptions options)
    {
        this.paper = paper;
        said = new VisitSheetWords(paper, options);
    }

    public SheetModel Model()
    {
        var words = said.Words;
        var after = paper.Result.After.Verdict;
        // A machine that must not be used is never shown here as proven.
        var stopped = paper.Result.Stops.Any(s => s.Open);
        List<SheetBlock> blocks =
        [
            new SheetHeading(1, words["visit.sheet.inspector"]),
            new SheetVerdict(
                stopped ? StatusShape.Square : ChartWords.ShapeOfOutcome(Wire.Name(after.Outcome)),
                stopped ? said.Word(paper.Result.Standing) : said.Word(after.Outcome),
                words["visit.sheet.inspector-left"]
                    + ". "
                    + words.Say("visit.sheet.inspector-found", ("outcome", said.Word(paper.Result.Before.Verdict.Outcome))),
                [
                    .. paper.Result.Stops.Where(s => s.Open).Select(s => said.Say(Statement.Of("visit.because.stop", ("what", s.Name)))),
                    .. (after.Outcome == Outcome.Proven ? [] : after.Because).Select(said.Say).Distinct(StringComparer.Ordinal),
                ]
            ),
            new SheetFacts(words["visit.sheet.facts"], said.Facts()),
        ];
        Table(blocks, "visit.sheet.found", VisitMoment.AsFound, paper.Result.Before);
        blocks.Add(new SheetHeading(2, words["visit.sheet.inspector-done"]));
        blocks.Add(new SheetParagraph(said.Say(paper.Result.Done)));
        if (paper.Visit.Touched)
        {
            Table(blocks, "visit.sheet.left", VisitMoment.AsLeft, paper.Result.After);
        }

        blocks.AddRange(new VisitProofTable(paper, said).Blocks());
        blocks.AddRange([
            new SheetParagraph(words["visit.sheet.inspector-note"], Small: true),
            new SheetParagraph(words["sheet.sources-note"], Small: true),
        ]);
        blocks.AddRange(new VisitSignatureBlocks(paper, said).Blocks());
        return said.Model("visit.sheet.inspector", blocks);
    }

    private void Table(List<SheetBlock> blocks, string key, VisitMoment moment, Proof proof)
    {
        var words = said.Words;
        List<IReadOnlyList<SheetCell>> rows = [];
        // Racks read alike stand in one line, each with its value and time.
        var read = paper.Result.Readings.Where(l => l.Reading.Moment == moment && l.Reading.Value is not null && Limited(l));
        foreach (var group in read.GroupBy(l => (l.Reading.Kind, l.Status, How: said.How(l.Reading), Rule: Rule(l))))
        {
            var values = group.Select(l => said.Value(l.Reading)).ToList();
            var times = group.Select(l => l.Reading.At).OfType<DateTimeOffset>().Select(Words.Clock);
            rows.Add([
                new SheetCell(said.Word(group.Key.Status), VisitSheetWords.ShapeOf(group.Key.Status), Bold: true),
                new SheetCell(Place(group.First())),
                new SheetCell(
                    values.Count > 1 && values.Distinct(StringComparer.Ordinal).Count() == 1
                        ? words.Say("visit.sheet.times", ("value", values[0]), ("count", words.Number(values.Count, 0)))
                        : string.Join("; ", values)
                ),
                new SheetCell(string.Join(", ", times.Prepend(group.Key.How))),
                new SheetCell(group.Key.Rule),
            ]);
        }

        foreach (
            var check in proof.Checks.Where(c =>
                c.Status == ReadingStatus.NotRead && c.Limit?.Dimension is not (Dimension.HeatUnits or Dimension.EquivalentTime)
            )
        )
        {
            rows.Add([
                new SheetCell(said.Word(ReadingStatus.NotRead), StatusShape.Ring, Bold: true),
                new SheetCell(Unread(check)),
                new SheetCell(words["sheet.not-read"]),
                new SheetCell(""),
                new SheetCell(check.Limit is { } limit ? $"{said.Limit(limit, limit.Printed[0].Unit)}. {said.Source(limit)}" : ""),
            ]);
        }

        blocks.Add(new SheetHeading(2, words[key]));
        blocks.Add(
            new SheetTable(
                words[key],
                [
                    new SheetColumn(words["visit.sheet.status"], 1.3),
                    new SheetColumn(words["visit.sheet.place"], 1.7),
                    new SheetColumn(words["sheet.value"], 1.3),
                    new SheetColumn(words["visit.sheet.instrument-time"], 2.4),
                    new SheetColumn(words["visit.sheet.rule"], 2.6),
                ],
                rows
            )
        );
    }

    private string Rule(JudgedReading line) =>
        line.Rule?.Limit is { } limit ? $"{said.Limit(limit, line.Reading.Value!.Value.Unit)}. {said.Source(limit)}"
        : line.Rule is { } rule ? said.Say(rule.Because)
        : string.Join(" ", line.Says.Select(said.Say));

    private string Unread(Check check)
    {
        var own = said.Words["sheet.check." + check.Id];
        return !own.StartsWith('[') ? Contracts.Visits.VisitWords.Capital(own)
            : check.Limit is { } limit ? VisitPlaces.Name(said, limit.Point)
            : said.Say(check.Because);
    }

    private static bool Limited(JudgedReading line) =>
        line.Rule is { Status: not ReadingStatus.NoLimit }
        || VisitReadingKinds.Find(line.Reading.Kind) is { Point: MeasuringPoint.WareSurface or MeasuringPoint.SanitizingSolution };

    private string Place(JudgedReading line) =>
        VisitReadingKinds.Find(line.Reading.Kind) is { } kind
        && VisitReadingKinds.PointOn(kind, paper.Visit.Machine)
            is not (MeasuringPoint.Unknown or MeasuringPoint.SanitizingSolution)
                and var point
            ? VisitPlaces.Name(said, point)
            : said.Name(line);
}

/// <summary>Names of places.</summary>
internal static class VisitPlaces
{
    public static string Name(VisitSheetWords said, MeasuringPoint point) => Contracts.Visits.VisitWords.Capital(said.Word(point));
}
