using System.Globalization;
using Rinsewright.Contracts.Knowledge;
using Rinsewright.Contracts.Language;
using Rinsewright.Contracts.Visits;
using Rinsewright.Engine.Records;
using Rinsewright.Engine.Sanitization;
using Rinsewright.Engine.Visits;

namespace Rinsewright.Files.Sheets;

internal sealed partial class VisitReportContent
{
    private void AddDetail(List<SheetBlock> blocks)
    {
        AddStops(blocks);
        AddReadings(blocks);
        blocks.AddRange(new VisitProofTable(paper, said).Blocks());
        AddList(blocks, "visit.sheet.ware", Ware());
        blocks.AddRange(new VisitCrewLogTable(paper, said).Blocks());
        AddList(blocks, "visit.sheet.clashes", [.. Result.Clashes.Select(c => said.Say(c.Says))]);
        AddList(blocks, "visit.sheet.remarks", Remarks());
        AddChanges(blocks);
        AddAcceptance(blocks);
        AddParts(blocks);
        AddStock(blocks);
        AddSums(blocks);
        AddList(
            blocks,
            "visit.sheet.findings",
            [
                .. paper.Visit.Findings.Select(f =>
                    $"{FindingName(f.Id)}: {Words[f.Found ? "visit.sheet.was-found" : "visit.sheet.was-not-found"]}, {said.Word(f.Moment)}"
                    + (f.Note is { Length: > 0 } note ? $". {VisitWords.Capital(note)}" : "")
                ),
            ]
        );
        AddList(
            blocks,
            "visit.sheet.training",
            [
                .. paper.Visit.Training.Select(t =>
                    said.Say(
                        Statement.Of(
                            t.Shown ? "visit.done.taught-shown" : "visit.done.taught",
                            ("topic", paper.Knowledge.Visit.TrainingTopics.First(k => k.Id == t.Topic).Title),
                            ("names", string.Join(", ", t.Names))
                        )
                    )
                ),
            ]
        );
        AddList(blocks, "visit.sheet.instruments", Instruments());
        AddList(blocks, "visit.sheet.missing", [.. Result.Missing.Select(m => said.Say(m.Says)), .. Result.Warnings.Select(said.Say)]);
        AddList(
            blocks,
            "visit.sheet.next",
            [
                .. Result
                    .Next.Others.Prepend((Result.Next.On, Result.Next.Because))
                    .Select(n =>
                        Words.Say("visit.sheet.next-line", ("date", Words.Day(n.Item1)), ("because", said.Say(n.Item2).TrimEnd('.')))
                    ),
            ]
        );
        AddList(
            blocks,
            "sheet.cautions",
            [Words["sheet.caution.scald"], Words["sheet.caution.glass"], Words["sheet.caution.chemicals"], Words["sheet.caution.licensed"]]
        );
        AddPhotos(blocks);
    }

    private static SheetColumn Column(string head, double share, bool right = false) => new(head, share, right);

    private void AddList(List<SheetBlock> blocks, string key, IReadOnlyList<string> items)
    {
        if (items.Count > 0)
        {
            blocks.Add(new SheetHeading(2, Words[key]));
            blocks.Add(new SheetList(items));
        }
    }

    private void AddStops(List<SheetBlock> blocks)
    {
        if (Result.Stops.Count == 0)
        {
            return;
        }

        blocks.Add(new SheetHeading(2, Words["visit.sheet.stops"]));
        foreach (var stop in Result.Stops)
        {
            blocks.Add(
                new SheetParagraph(
                    Words.Say(
                        stop.Open ? "visit.sheet.stop-open" : "visit.sheet.stop-gone",
                        ("what", said.In(stop.Name)),
                        ("found", said.Say(stop.FoundBy))
                    ),
                    Bold: stop.Open
                )
            );
            blocks.Add(
                new SheetList([
                    .. stop.Hazards.Select(h => $"{Words["visit.sheet.caution"]}: {said.In(h.Caution)}"),
                    $"{Words["visit.sheet.safe-again"]}: {Words.SafeAgain(stop)}",
                ])
            );
        }
    }

    private void AddReadings(List<SheetBlock> blocks)
    {
        blocks.Add(new SheetHeading(2, Words["visit.sheet.readings"]));
        blocks.Add(
            new SheetTable(
                Words["visit.sheet.readings"],
                [
                    Column(Words["visit.sheet.status"], 1.25),
                    Column(Words["visit.sheet.reading"], 2.1),
                    Column(Words["visit.sheet.value"], 2.2),
                    Column(Words["visit.sheet.band"], 1.5),
                    Column(Words["visit.sheet.rule"], 2.4),
                ],
                [.. Result.Readings.Select(Row)]
            )
        );
        blocks.Add(new SheetParagraph(Words["visit.sheet.band-note"], Small: true));
    }

    private List<SheetCell> Row(JudgedReading line)
    {
        var when =
            line.Reading.Value is null ? said.Word(line.Reading.Moment)
            : line.Reading.State == OperatingState.Unknown ? said.Word(line.Reading.Moment)
            : $"{said.Word(line.Reading.Moment)}, {said.Word(line.Reading.State)}";
        return
        [
            new SheetCell(said.Word(line.Status), VisitSheetWords.ShapeOf(line.Status), Bold: true),
            new SheetCell($"{said.Name(line)} ({when})"),
            new SheetCell(said.Found(line)),
            new SheetCell(Band(line)),
            new SheetCell(Rule(line)),
        ];
    }

    private string Band(JudgedReading line)
    {
        if (line.Own is not { } own)
        {
            return "";
        }

        var range = own.RacksPerHour is { } racks
            ? Words.Say(
                "visit.sheet.range-load",
                ("low", said.Bare(own.Low)),
                ("high", said.Show(own.High)),
                ("racks", Words.Number(racks, 0))
            )
            : Words.Say("visit.sheet.range", ("low", said.Bare(own.Low)), ("high", said.Show(own.High)));
        return $"{range}: {said.Word(line.Band)}";
    }

    private string Rule(JudgedReading line)
    {
        if (line.Rule?.Limit is { } limit && line.Reading.Value is { } value)
        {
            return $"{said.Limit(limit, value.Unit)}. {said.Source(limit)}";
        }

        return line.Usual is { } usual
                ? Words.Say(
                    "visit.sheet.usual",
                    ("low", usual.Low is { } low ? said.Bare(low) : "–"),
                    ("high", usual.High is { } high ? said.Show(high) : "–")
                ) + $". {KnowledgeWords.Source(Words, paper.Knowledge, line.UsualSource)}"
            : line.Rule is { } rule && line.Status != ReadingStatus.NoLimit ? said.Say(rule.Because)
            : "";
    }

    private List<string> Ware() =>
        [
            .. paper
                .Visit.Ware.OrderBy(w => w.Moment)
                .Select(w =>
                    Words.Say(
                        "visit.sheet.ware-line",
                        ("result", said.In(paper.Knowledge.WareResults.First(r => r.Id == w.Result).Name)),
                        ("found", Words[w.Found ? "visit.sheet.was-found" : "visit.sheet.was-not-found"]),
                        ("moment", said.Word(w.Moment))
                    ) + (w.Note is { Length: > 0 } note ? $". {Contracts.Visits.VisitWords.Capital(note)}" : "")
                ),
        ];

    private List<string> Remarks() =>
        [
            .. Result
                .Readings.Where(l => l.Reading.Value is not null || l.Says.Count > 0)
                .SelectMany(l => l.Says.Select(s => $"{said.Name(l)} ({said.Word(l.Reading.Moment)}): {said.Say(s)}"))
                .Concat(Result.Unexplained.Select(said.Say))
                .Distinct(StringComparer.Ordinal),
        ];

    private void AddChanges(List<SheetBlock> blocks)
    {
        if (paper.Visit.Changes.Count == 0)
        {
            return;
        }

        blocks.Add(new SheetHeading(2, Words["visit.sheet.changes"]));
        blocks.Add(
            new SheetTable(
                Words["visit.sheet.changes"],
                [
                    Column(Words["visit.sheet.what"], 4),
                    Column(Words["visit.sheet.kind"], 1.3),
                    Column(Words["visit.sheet.before"], 1.3),
                    Column(Words["visit.sheet.after"], 1.3),
                    Column(Words["visit.sheet.time"], 1),
                ],
                [
                    .. paper
                        .Visit.Changes.OrderBy(c => c.At ?? DateTimeOffset.MaxValue)
                        .Select(c =>
                            (IReadOnlyList<SheetCell>)
                                [
                                    new SheetCell(c.What),
                                    new SheetCell(said.Word(c.Kind)),
                                    new SheetCell(c.Before is { } b ? said.Show(b) : ""),
                                    new SheetCell(c.After is { } a ? said.Show(a) : ""),
                                    new SheetCell(c.At is { } at ? Words.Clock(at) : ""),
                                ]
                        ),
                ]
            )
        );
    }

    private void AddAcceptance(List<SheetBlock> blocks)
    {
        blocks.Add(new SheetHeading(2, Words["visit.sheet.acceptance"]));
        if (Result.Acceptance.All(a => a.Standing == AcceptanceStanding.NotNeeded))
        {
            blocks.Add(new SheetParagraph(Words["visit.accept.not-needed"]));
            return;
        }

        blocks.Add(
            new SheetTable(
                Words["visit.sheet.acceptance"],
                [Column(Words["visit.sheet.area"], 1), Column(Words["visit.sheet.status"], 1.4), Column(Words["visit.sheet.because"], 5)],
                [
                    .. Result.Acceptance.Select(a =>
                        (IReadOnlyList<SheetCell>)
                            [
                                new SheetCell(said.Capital(a.Area), Bold: true),
                                new SheetCell(said.Word(a.Standing), VisitSheetWords.ShapeOf(a.Standing)),
                                new SheetCell(
                                    said.Say(a.Because)
                                        + (
                                            a.Needs.Count > 0
                                                ? " "
                                                    + Words.Say(
                                                        "visit.sheet.needs",
                                                        ("readings", string.Join(", ", a.Needs.Select(NameOf)))
                                                    )
                                                : ""
                                        )
                                ),
                            ]
                    ),
                ]
            )
        );
    }

    private string NameOf(string kind) => Words.NameOfReading(paper.Knowledge.Observables.Readings.FirstOrDefault(r => r.Id == kind), kind);

    private string FindingName(string id) =>
        paper.Knowledge.FindCheck(id) is { } check ? said.In(check.Name)
        : paper.Knowledge.FindSymptom(id) is { } symptom ? said.In(symptom.Name)
        : paper.Knowledge.FindState(id) is { } state ? $"{said.In(state.Kind.Name)}: {state.State.When.In(Words.Language)}"
        : id;
}
