using Rinsewright.Contracts;
using Rinsewright.Contracts.Language;
using Rinsewright.Contracts.Visits;
using Rinsewright.Drawing;
using Rinsewright.Drawing.History;
using Rinsewright.Engine.Visits;
using Rinsewright.Engine.Visits.History;

namespace Rinsewright.Files.Sheets;

/// <summary>The machine history: page 1 for whoever is about to go there, every reading over time behind it, then findings, parts and proofs. Nothing here computes.</summary>
internal sealed class MachineHistoryContent(HistoryPaper paper, SheetOptions options)
{
    private const int MostReasons = 4;
    private readonly HistoryWords said = new(Words.For(options.Language), options.Units);

    private MachineHistory History => paper.History;

    private Words Words => said.Words;

    public SheetModel Model()
    {
        List<SheetBlock> blocks = [new SheetHeading(1, Words["history.title"])];
        if (History.Last is { } last)
        {
            AddSummary(blocks, last);
            blocks.Add(new SheetPageBreak());
            AddReadings(blocks);
            AddFindings(blocks);
            AddParts(blocks);
            AddProofs(blocks);
        }
        else
        {
            blocks.Add(new SheetParagraph(Words["history.none"]));
        }

        blocks.Add(new SheetParagraph(Words["history.claim"], Small: true));
        var date = Words.Day(History.Today);
        return new SheetModel(
            Words["history.title"],
            Words.Language == "es" ? "es-US" : "en-US",
            Words.Say("history.sheet.subject", ("machine", paper.Machine), ("kitchen", paper.Kitchen), ("date", date)),
            History.Last?.Visit.Technician ?? "",
            string.Join(", ", ((string[])[paper.Machine, paper.Kitchen]).Where(n => n.Length > 0)),
            date,
            Words["sheet.page"],
            blocks
        );
    }

    private void AddSummary(List<SheetBlock> blocks, HistoryVisit last)
    {
        var standing = last.Result.Standing;
        var reasons = last.Result.Because.Select(b => Words.Say(said.InUnits(b))).ToList();
        List<string> shown = [.. reasons.Take(MostReasons)];
        if (reasons.Count > MostReasons)
        {
            shown.Add(Words.Say("sheet.more", ("count", Words.Number(reasons.Count - MostReasons, 0))));
        }

        blocks.AddRange([
            new SheetVerdict(
                VisitSheetWords.ShapeOf(standing),
                Words[Wire.WordKey(standing)],
                Words["visit.sentence." + Wire.WordKey(standing)["visit-standing.".Length..]],
                shown
            ),
            new SheetFacts(
                Words["history.title"],
                [
                    (Words["sheet.kitchen"], paper.Kitchen.Length > 0 ? paper.Kitchen : Words["sheet.not-stated"]),
                    (Words["sheet.machine"], paper.Machine),
                    (Words["history.last"], Words.MomentAndZone(last.Visit.Began)),
                    (Words["sheet.technician"], last.Visit.Technician ?? Words["sheet.not-stated"]),
                    (
                        Words["history.sheet.span"],
                        Words.Say(
                            "history.sheet.span-value",
                            ("count", Words.Number(History.Visits.Count, 0)),
                            ("from", Words.Day(History.Visits[0].Visit.On)),
                            ("to", Words.Day(last.Visit.On))
                        )
                    ),
                ]
            ),
        ]);
        Add(
            blocks,
            "history.open",
            History.Findings.Where(f => f.Open).Select(f => $"{said.Name(f)}, {said.Span(f, History)}"),
            "history.open-none"
        );
        Add(blocks, "history.owed", said.Owed(History), "history.owed-none");
        Add(
            blocks,
            "history.drifts",
            History.Drifting.Select(s => $"{said.Name(s)}: {said.Trend(s)} {said.Forecast(s)}".TrimEnd()),
            History.Series.Any(s => s.Trend.Kind != TrendKind.TooFew) ? "history.drifts-none" : "history.drifts-unknown"
        );
        Add(
            blocks,
            "history.changed",
            History.ChangedSinceLast.Select(c => Words.Say(said.InUnits(c))),
            History.Visits.Count > 1 ? "history.changed-none" : "history.changed-first"
        );
    }

    private void Add(List<SheetBlock> blocks, string key, IEnumerable<string> lines, string none)
    {
        blocks.Add(new SheetHeading(2, Words[key]));
        List<string> all = [.. lines];
        blocks.Add(all.Count > 0 ? new SheetList(all) : new SheetParagraph(Words[none]));
    }

    private void AddReadings(List<SheetBlock> blocks)
    {
        blocks.Add(new SheetHeading(2, Words["history.sheet.summary"]));
        blocks.Add(
            new SheetTable(
                Words["history.sheet.summary"],
                [
                    new SheetColumn(Words["visit.sheet.reading"], 2.4),
                    new SheetColumn(Words["history.sheet.last"], 1.6),
                    new SheetColumn(Words["visit.sheet.limit"], 1.6),
                    new SheetColumn(Words["history.sheet.trend"], 3),
                    new SheetColumn(Words["history.sheet.forecast"], 2.4),
                ],
                [
                    .. History.Series.Select(s =>
                        (IReadOnlyList<SheetCell>)
                            [
                                new SheetCell(said.Name(s), Bold: true),
                                new SheetCell(
                                    $"{said.Show(s.Points[^1].Value)}, {Words[Wire.WordKey(s.Points[^1].Status)]}",
                                    VisitSheetWords.ShapeOf(s.Points[^1].Status)
                                ),
                                new SheetCell(said.Limits(s.Points[^1])),
                                new SheetCell(said.Trend(s), s.Trend.Drifts ? StatusShape.Triangle : null),
                                new SheetCell(said.Forecast(s) ?? Words["history.sheet.no-forecast"]),
                            ]
                    ),
                ]
            )
        );
        blocks.Add(new SheetParagraph(Words["history.legend"], Small: true));
        foreach (var series in History.Series.Concat(History.CrewLogs).Concat(History.Water).Where(s => s.Points.Count > 1))
        {
            blocks.Add(new SheetHeading(2, said.Name(series)));
            List<string> says = [.. said.Earlier(series), said.Trend(series), said.Forecast(series) ?? ""];
            says.AddRange(series.Steps.Select(s => said.Step(series, s)));
            says.AddRange(series.Breaks.Select(b => $"{Words.Day(DateOnly.FromDateTime(b.At.DateTime))}: {said.Break(b)}."));
            blocks.Add(
                new SheetFigure(HistoryChart.Draw(series, HistoryChartSize.Paper, said), string.Join(' ', says.Where(t => t.Length > 0)))
            );
        }
    }

    private void AddFindings(List<SheetBlock> blocks)
    {
        if (History.Findings.Count == 0)
        {
            return;
        }

        blocks.Add(new SheetHeading(2, Words["history.findings"]));
        blocks.Add(
            new SheetTable(
                Words["history.findings"],
                [
                    new SheetColumn(Words["visit.sheet.what"], 3),
                    new SheetColumn(Words["history.sheet.weight"], 1.6),
                    new SheetColumn(Words["history.found-on"], 1.3),
                    new SheetColumn(Words["history.gone-on"], 1.3),
                    new SheetColumn(Words["history.days"], 0.8, Right: true),
                    new SheetColumn(Words["visit.sheet.note"], 2.4),
                ],
                [
                    .. History.Findings.Select(f =>
                        (IReadOnlyList<SheetCell>)
                            [
                                new SheetCell(
                                    said.Name(f),
                                    !f.Open ? StatusShape.Circle
                                        : f.Kind is FollowedKind.Danger or FollowedKind.Sanitizing ? StatusShape.Square
                                        : StatusShape.Triangle,
                                    f.Open
                                ),
                                new SheetCell(Words[Wire.WordKey(f.Kind)]),
                                new SheetCell(Day(f.Opened)),
                                new SheetCell(f.Closed is { } closed ? Day(closed) : Words["history.sheet.open-still"]),
                                new SheetCell(Words.Number(f.Days, 0)),
                                new SheetCell(f.Note is { } note ? VisitWords.Capital(note) : ""),
                            ]
                    ),
                ]
            )
        );
    }

    private void AddParts(List<SheetBlock> blocks)
    {
        if (History.Lives.Count > 0)
        {
            blocks.Add(new SheetHeading(2, Words["history.parts"]));
            blocks.Add(
                new SheetTable(
                    Words["history.parts"],
                    [
                        new SheetColumn(Words["visit.sheet.part"], 4),
                        new SheetColumn(Words["history.fitted"], 1.5),
                        new SheetColumn(Words["history.replaced"], 1.5),
                        new SheetColumn(Words["history.days"], 1, Right: true),
                    ],
                    [
                        .. History.Lives.Select(l =>
                            (IReadOnlyList<SheetCell>)
                                [
                                    new SheetCell(l.What, Bold: true),
                                    new SheetCell(Day(l.Fitted)),
                                    new SheetCell(l.Replaced is { } on ? Day(on) : ""),
                                    new SheetCell(Words.Number(l.Days, 0)),
                                ]
                        ),
                    ]
                )
            );
        }

        var made = History.Declined.Where(d => d.MadeUp is not null).ToList();
        if (made.Count > 0)
        {
            blocks.Add(new SheetHeading(2, Words["visit.sheet.acceptance"]));
            blocks.Add(
                new SheetList([
                    .. made.Select(d =>
                        Words.Say("history.test-owed", ("area", Words[Wire.WordKey(d.Area)]), ("why", d.Because))
                        + $", {Day(d.Visit)}, {Words.Say("history.made-up", ("date", Day(d.MadeUp!.Value)))}"
                    ),
                ])
            );
        }
    }

    private void AddProofs(List<SheetBlock> blocks)
    {
        blocks.Add(new SheetHeading(2, Words["history.proofs"]));
        blocks.Add(
            new SheetTable(
                Words["history.proofs"],
                [
                    new SheetColumn(Words["history.date"], 1.4),
                    new SheetColumn(Words["history.moment"], 1.6),
                    new SheetColumn(Words["history.sheet.outcome"], 1.8),
                    new SheetColumn(Words["history.done"], 5),
                ],
                [
                    .. History.Proofs.Select(p =>
                        (IReadOnlyList<SheetCell>)
                            [
                                new SheetCell(Words.Day(DateOnly.FromDateTime(p.At.DateTime))),
                                new SheetCell(p.Moment is { } moment ? Words[Wire.WordKey(moment)] : Words["history.sheet.apart"]),
                                new SheetCell(Words[Wire.WordKey(p.Outcome)], ChartWords.ShapeOfOutcome(Wire.Name(p.Outcome))),
                                new SheetCell(p is { Visit: { } v, Moment: VisitMoment.AsLeft } ? Done(History.Visits[v].Visit) : ""),
                            ]
                    ),
                ]
            )
        );
    }

    private static string Done(Visit visit) =>
        string.Join(
            "; ",
            visit
                .Changes.Select(c => VisitWords.Capital(c.What))
                .Concat(visit.PartsUsed.Where(p => p.Where == PartWhere.Fitted).Select(p => p.What))
                .Concat(visit.Supplies.Where(s => s.Changed).Select(s => s.Product))
                .Distinct(StringComparer.OrdinalIgnoreCase)
        );

    private string Day(int visit) => Words.Day(History.Visits[visit].Visit.On);
}
