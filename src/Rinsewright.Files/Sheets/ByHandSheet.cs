using Rinsewright.Contracts;
using Rinsewright.Contracts.Language;
using Rinsewright.Engine.Bench;
using Rinsewright.Engine.Quantities;
using Rinsewright.Engine.Sanitization;

namespace Rinsewright.Files.Sheets;

/// <summary>The card for the wall over the sinks: what goes into each, how hot, how long, what the strip has to show; and lines to write readings on.</summary>
internal sealed class ByHandSheet(ByHandPlan plan, BenchAnswer answer, BenchSheetHead head, BenchSheetWords said)
{
    private const int LogLines = 5;

    // The table of the sinks says these already.
    private static readonly string[] InTable = ["bench.note.hand-change", "bench.note.hand-dry"];

    private Words Words => said.Words;

    private bool Hot => plan.Method == SanitizingMethod.HotWater;

    public SheetModel Model()
    {
        var title = Words["bench.by-hand.name"];
        return said.Model(
            title,
            head,
            [
                new SheetHeading(1, title),
                new SheetParagraph(Words["sheet.by-hand.why"]),
                said.Facts(head),
                new SheetHeading(2, Words["sheet.cautions"]),
                new SheetList([.. answer.Cautions.Select(said.Say)]),
                new SheetHeading(2, Words["sheet.by-hand.first"]),
                new SheetList([Words["sheet.by-hand.scrape"], Words["sheet.by-hand.clean"], Words["sheet.by-hand.label"]]),
                new SheetHeading(2, Words["sheet.by-hand.sinks"]),
                Steps(),
                new SheetParagraph(Must(), Bold: true),
                new SheetList([.. answer.Notes.Where(n => !InTable.Contains(n.Key, StringComparer.Ordinal)).Select(said.Say)]),
                new SheetHeading(2, Words["sheet.by-hand.log"]),
                Log(),
                new SheetParagraph(
                    Words.Say(
                        "sheet.by-hand.rules",
                        ("title", Words.Cited(plan.Rules.Title)),
                        ("edition", Words.Cited(plan.Rules.Edition))
                    ),
                    Small: true
                ),
                new SheetParagraph(Words["client.bench.claims"], Small: true),
            ]
        );
    }

    private SheetTable Steps()
    {
        var temperature = plan.Required.Temperature;
        return new SheetTable(
            Words["sheet.by-hand.sinks"],
            [
                new SheetColumn(Words["sheet.by-hand.sink"], 2.2),
                new SheetColumn(Words["sheet.by-hand.water"], 2),
                new SheetColumn(Words["sheet.by-hand.add"], 3),
                new SheetColumn(Words["sheet.by-hand.warm"], 2.2),
                new SheetColumn(Words["sheet.by-hand.until"], 3.4),
            ],
            [
                Row(
                    "1",
                    "wash",
                    plan.WashSink,
                    Dose(plan.Detergent, "detergent"),
                    Least(plan.Wash?.TemperatureMinimum ?? []),
                    "wash-until"
                ),
                Row("2", "rinse", plan.RinseSink, Words["sheet.by-hand.nothing"], Words["sheet.by-hand.warm-water"], "rinse-until"),
                Row(
                    "3",
                    "sanitize",
                    plan.SanitizingSink,
                    plan.Sanitizer is { } dose ? Dose(dose, "sanitizer") : Words["sheet.by-hand.nothing"],
                    Least(temperature),
                    "sanitize-until"
                ),
                [
                    new SheetCell($"4  {Words["sheet.by-hand.dry"]}", Bold: true),
                    new SheetCell("–"),
                    new SheetCell("–"),
                    new SheetCell("–"),
                    new SheetCell(Words["sheet.by-hand.dry-until"]),
                ],
            ]
        );
    }

    private List<SheetCell> Row(string number, string id, Volume water, string add, string warm, string until) =>
        [
            new($"{number}  {Words["sheet.by-hand." + id]}", Bold: true),
            new(Both(water.In(Units.Gallon), water.In(Units.Litre), 1)),
            new(add, Bold: true),
            new(warm),
            new(
                Words.Say(
                    "sheet.by-hand." + until,
                    ("time", plan.Required.Contact is { } contact ? Words.Show(Wire.From(contact)) : Words["sheet.by-hand.time-by-label"])
                )
            ),
        ];

    // Millilitres, ounces, and spoons where that is what a kitchen has at hand.
    private string Dose(Volume dose, string what)
    {
        var spoons = dose.InMillilitre / 4.92892159375;
        var quarter = Math.Round(spoons * 4) / 4;
        var text = Both(dose.In(Units.Millilitre), dose.In(Units.FluidOunce), dose.InMillilitre >= 20 ? 0 : 1, 1);
        if (quarter is >= 0.25 and <= 12)
        {
            text += Words.Say("sheet.by-hand.spoons", ("count", Quarters(quarter)));
        }

        return $"{text}: {Words["sheet.by-hand." + what + "." + (what == "detergent" ? "any" : Wire.Name(plan.Method))]}";
    }

    private static string Quarters(double value) =>
        (value >= 1 ? ((int)value).ToString(System.Globalization.CultureInfo.InvariantCulture) : "")
        + (value % 1) switch
        {
            0.25 => "¼",
            0.5 => "½",
            0.75 => "¾",
            _ => "",
        };

    private string Both(Amount a, Amount b, int digits, int? otherDigits = null) =>
        $"{Words.Fixed(a.Value, digits)}\u00a0{a.Unit.Symbol} ({Words.Fixed(b.Value, otherDigits ?? digits)}\u00a0{b.Unit.Symbol})";

    private string Least(IReadOnlyList<Amount> printed) =>
        printed is [var first, ..]
            ? Words.Say(
                "sheet.at-least",
                ("limit", Words.Show(Wire.From(first)) + string.Concat(printed.Skip(1).Select(p => $" ({Words.Show(Wire.From(p))})")))
            )
            : Words["sheet.by-hand.warm-by-label"];

    private string Must() =>
        Hot ? Words.Say("sheet.by-hand.must-hot", ("least", Least(plan.Required.Temperature)))
        : plan.Required.Maximum is { } most
            ? Words.Say(
                "sheet.by-hand.must-strip",
                ("least", Words.Show(Wire.From(plan.Required.Minimum!.Value))),
                ("most", Words.Show(Wire.From(most)))
            )
        : Words.Say("sheet.by-hand.must-strip-least", ("least", Words.Show(Wire.From(plan.Required.Minimum!.Value))));

    private SheetTable Log() =>
        new(
            Words["sheet.by-hand.log"],
            [
                new SheetColumn(Words["sheet.by-hand.time"], 2),
                new SheetColumn(Words["sheet.by-hand.wash-read"], 2.5),
                new SheetColumn(Words[Hot ? "sheet.by-hand.hot-read" : "sheet.by-hand.strip-read"], 3),
                new SheetColumn(Words["sheet.by-hand.done"], 3.5),
                new SheetColumn(Words["sheet.by-hand.who"], 2),
            ],
            [
                .. Enumerable
                    .Range(0, LogLines)
                    .Select(_ => (IReadOnlyList<SheetCell>)[.. Enumerable.Range(0, 5).Select(_ => new SheetCell(" \n "))]),
            ]
        );
}
