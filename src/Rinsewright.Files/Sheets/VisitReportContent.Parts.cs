using Rinsewright.Contracts.Visits;
using Rinsewright.Drawing.Bench;
using Rinsewright.Engine.Visits;

namespace Rinsewright.Files.Sheets;

internal sealed partial class VisitReportContent
{
    private void AddParts(List<SheetBlock> blocks)
    {
        blocks.Add(new SheetHeading(2, Words["visit.sheet.parts"]));
        var marked = Result.Parts.Where(p => (p.Found ?? p.Left) is { State: not PartState.Sound } or { Note: not null }).ToList();
        if (marked.Count > 0)
        {
            blocks.Add(
                new SheetTable(
                    Words["visit.sheet.parts"],
                    [
                        Column(Words["visit.sheet.part"], 2),
                        Column(Words["visit.sheet.zone"], 1.3),
                        Column(Words["visit.sheet.found"], 1.3),
                        Column(Words["visit.sheet.left"], 1.3),
                        Column(Words["visit.sheet.note"], 4),
                    ],
                    [.. marked.Select(PartRow)]
                )
            );
        }

        List<string> rest = [];
        void Names(string key, IEnumerable<PartLine> parts)
        {
            var list = string.Join(", ", parts.Select(p => p.Part.Name.In(Words.Language)));
            if (list.Length > 0)
            {
                rest.Add(Words.Say(key, ("list", list)));
            }
        }

        Names("visit.sheet.parts-sound", Result.Parts.Where(p => p.State == PartState.Sound && !marked.Contains(p)));
        Names("visit.sheet.parts-unseen", Result.Parts.Where(p => p.State == PartState.NotLookedAt));
        blocks.Add(new SheetList(rest));
        var photos = paper.Visit.Photos.ToLookup(p => p.Moment);
        blocks.Add(
            new SheetParagraph(
                Words.Say(
                    "visit.sheet.photos",
                    ("found", Words.Number(photos[VisitMoment.AsFound].Count(), 0)),
                    ("left", Words.Number(photos[VisitMoment.AsLeft].Count(), 0))
                ),
                Small: true
            )
        );
    }

    private List<SheetCell> PartRow(PartLine line)
    {
        var look = line.Found ?? line.Left!;
        var zone = paper.Knowledge.Common.Zones.FirstOrDefault(z => z.Id == line.Part.Zone);
        List<string> notes = [.. look.Wear.Select(w => said.In(line.Part.Wear[w]))];
        if (look.Fault is { } fault && paper.Knowledge.Faults.TryGetValue(fault, out var known))
        {
            notes.Add(said.In(known.Name));
        }

        notes.AddRange(((string?[])[line.Found?.Note, line.Left?.Note]).OfType<string>().Select(VisitWords.Capital));
        return
        [
            new SheetCell(said.In(line.Part.Name), Bold: true),
            new SheetCell(zone is { } z ? z.Name.In(Words.Language) : ""),
            State(line.Found),
            State(line.Left),
            new SheetCell(string.Join(". ", notes)),
        ];
    }

    private SheetCell State(PartLook? look) =>
        look is { } l ? new SheetCell(said.Word(l.State), VisitSheetWords.ShapeOf(l.State)) : new SheetCell("");

    private void AddStock(List<SheetBlock> blocks)
    {
        if (paper.Visit.PartsUsed.Count > 0)
        {
            blocks.Add(new SheetHeading(2, Words["visit.sheet.parts-used"]));
            blocks.Add(
                new SheetTable(
                    Words["visit.sheet.parts-used"],
                    [
                        Column(Words["visit.sheet.what"], 4),
                        Column(Words["visit.sheet.count"], 1, right: true),
                        Column(Words["visit.sheet.where"], 2.4),
                        Column(Words["visit.sheet.expected"], 1.6),
                    ],
                    [
                        .. paper
                            .Visit.PartsUsed.OrderBy(p => p.Where)
                            .Select(p =>
                                (IReadOnlyList<SheetCell>)
                                    [
                                        new SheetCell(p.What),
                                        new SheetCell(Words.Number(p.Count, 0)),
                                        new SheetCell(said.Word(p.Where)),
                                        new SheetCell(p.Expected is { } day ? Words.Day(day) : ""),
                                    ]
                            ),
                    ]
                )
            );
        }

        if (paper.Visit.Supplies.Count == 0)
        {
            return;
        }

        blocks.Add(new SheetHeading(2, Words["visit.sheet.supplies"]));
        blocks.Add(
            new SheetTable(
                Words["visit.sheet.supplies"],
                [
                    Column(Words["visit.sheet.product"], 3.4),
                    Column(Words["visit.sheet.feeds"], 1.8),
                    Column(Words["visit.sheet.containers"], 1.1, right: true),
                    Column(Words["visit.sheet.days-left"], 1.2, right: true),
                    Column(Words["visit.sheet.changed"], 2.2),
                ],
                [
                    .. paper.Visit.Supplies.Select(s =>
                        (IReadOnlyList<SheetCell>)
                            [
                                new SheetCell(s.Product),
                                new SheetCell(s.Feeds is { } f ? said.Word(f) : ""),
                                new SheetCell(Words.Number(s.Count, 2)),
                                new SheetCell(s.DaysLeft is { } days ? Words.Number(days, 0) : ""),
                                new SheetCell(!s.Changed ? "" : Words[s.Primed ? "visit.sheet.primed" : "visit.sheet.not-primed"]),
                            ]
                    ),
                ]
            )
        );
    }

    // Sums kept with the visit; what they were worked from stands beside what they gave.
    private void AddSums(List<SheetBlock> blocks)
    {
        if (paper.Visit.Machine.SetUps.Count == 0)
        {
            return;
        }

        blocks.Add(new SheetHeading(2, Words["visit.sheet.sums"]));
        blocks.Add(
            new SheetTable(
                Words["visit.sheet.sums"],
                [
                    Column(Words["visit.sheet.sum"], 2),
                    Column(Words["visit.sheet.sum-found"], 4),
                    Column(Words["visit.sheet.sum-given"], 4),
                    Column(Words["visit.sheet.sum-by"], 1.4),
                ],
                [
                    .. paper.Visit.Machine.SetUps.Select(s =>
                        (IReadOnlyList<SheetCell>)
                            [
                                new SheetCell(BenchWords.Name(Words, s), Bold: true),
                                new SheetCell(BenchWords.Found(Words, s, said.Units)),
                                new SheetCell(BenchWords.Given(Words, s, said.Units)),
                                new SheetCell(s.By),
                            ]
                    ),
                ]
            )
        );
        blocks.Add(new SheetParagraph(Words["visit.sheet.sums-claim"], Small: true));
    }

    private List<string> Instruments() =>
        [
            .. paper
                .Visit.Instruments.Values.OrderBy(i => i.Name, StringComparer.Ordinal)
                .Select(i =>
                    Words.Say(
                        "visit.sheet.instrument-line",
                        ("name", i.Serial is { } serial ? Words.Say("sheet.serial", ("name", i.Name), ("serial", serial)) : i.Name),
                        ("on", Written(i.CalibratedOn)),
                        ("due", Written(i.CalibrationDue)),
                        ("uncertainty", i.Uncertainty is { } u ? "±" + said.Show(u) : Words["visit.sheet.not-written"])
                    )
                ),
            .. paper
                .Visit.TestSupplies.OrderBy(s => s.Key, StringComparer.Ordinal)
                .Select(s =>
                    Words.Say(
                        "visit.sheet.strip",
                        ("name", s.Key),
                        ("kind", s.Value.Tests is { } t ? said.Word(t) : Words["visit.sheet.label-kind"]),
                        ("lot", s.Value.Lot ?? Words["visit.sheet.not-written"]),
                        ("date", Written(s.Value.Expires))
                    )
                ),
        ];

    private string Written(DateOnly? day) => day is { } d ? Words.Day(d) : Words["visit.sheet.not-written"];
}
