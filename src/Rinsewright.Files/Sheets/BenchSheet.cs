using Rinsewright.Contracts;
using Rinsewright.Contracts.Language;
using Rinsewright.Contracts.Records;
using Rinsewright.Drawing;
using Rinsewright.Drawing.Bench;
using Rinsewright.Engine.Bench;
using Rinsewright.Engine.Quantities;
using Rinsewright.Engine.Records;

namespace Rinsewright.Files.Sheets;

/// <summary>Where and by whom a sum was worked.</summary>
/// <param name="Id">Id of the sheet; the same id, figures and options give the same bytes.</param>
/// <param name="At">Moment.</param>
/// <param name="Kitchen">Kitchen; may be empty.</param>
/// <param name="Machine">Machine; may be empty.</param>
/// <param name="By">Who; may be empty.</param>
public sealed record BenchSheetHead(Guid Id, DateTimeOffset At, string Kitchen = "", string Machine = "", string By = "");

/// <summary>A sum of the Bench on paper: cautions, results, what it was worked with, the working with its sources, what it hangs on. Washing by hand has a sheet of its own.</summary>
public static class BenchSheet
{
    /// <summary>Makes the sheet.</summary>
    /// <returns>The PDF file; null while the tool has no answer.</returns>
    /// <param name="tool">The sum.</param>
    /// <param name="input">What it is worked with.</param>
    /// <param name="head">Where and by whom.</param>
    /// <param name="options">Paper, language, units.</param>
    /// <param name="usual">Ids of figures that nobody said; null where that is not known: then those that stand at what is usual.</param>
    public static byte[]? Make(
        BenchTool tool,
        BenchInput input,
        BenchSheetHead head,
        SheetOptions options,
        IReadOnlySet<string>? usual = null
    ) => For(tool, input, head, options, usual) is { } model ? SheetPrinter.Print(model, options.Paper, head.At, head.Id) : null;

    /// <summary>The content of the sheet.</summary>
    public static SheetModel? For(
        BenchTool tool,
        BenchInput input,
        BenchSheetHead head,
        SheetOptions options,
        IReadOnlySet<string>? usual = null
    )
    {
        var said = new BenchSheetWords(Words.For(options.Language), options.Units);
        return ByHandPlan.Of(input) is { } plan && tool.Id == "by-hand"
                ? new ByHandSheet(plan, tool.Solve(input).Answer!, head, said).Model()
            : tool.Solve(input).Answer is { } answer ? Model(tool, BenchShown.Turned(tool, input, options.Units), answer, head, said, usual)
            : null;
    }

    private static SheetModel Model(
        BenchTool tool,
        BenchInput input,
        BenchAnswer answer,
        BenchSheetHead head,
        BenchSheetWords said,
        IReadOnlySet<string>? usual
    )
    {
        var words = said.Words;
        var name = words[$"bench.{tool.Id}.name"];
        List<SheetBlock> blocks = [new SheetHeading(1, name), new SheetParagraph(words[$"bench.{tool.Id}.about"]), said.Facts(head)];
        if (answer.Cautions.Count > 0)
        {
            blocks.Add(new SheetHeading(2, words["sheet.cautions"]));
            blocks.Add(new SheetList([.. answer.Cautions.Select(said.Say)]));
        }

        blocks.Add(new SheetHeading(2, words["cli.bench.result"]));
        blocks.Add(
            new SheetTable(
                words["cli.bench.result"],
                [
                    new SheetColumn(words["sheet.what"], 5),
                    new SheetColumn(words["sheet.bench.value"], 2, true),
                    new SheetColumn(words["sheet.bench.band"], 3),
                ],
                [
                    .. answer.Results.Select(
                        (r, i) =>
                            (IReadOnlyList<SheetCell>)
                                [
                                    new SheetCell(words[$"bench.result.{r.Id}"], Bold: i == 0),
                                    new SheetCell(said.Show(r.Value, r.Digits), Bold: i == 0),
                                    new SheetCell(said.Band(r)),
                                ]
                    ),
                ]
            )
        );
        blocks.Add(new SheetHeading(2, words["sheet.bench.given"]));
        blocks.Add(
            new SheetTable(
                words["sheet.bench.given"],
                [new SheetColumn(words["sheet.what"], 5), new SheetColumn(words["sheet.bench.value"], 3)],
                [.. said.Given(tool, input, usual).Select(g => (IReadOnlyList<SheetCell>)[new SheetCell(g.Name), new SheetCell(g.Value)])]
            )
        );
        blocks.Add(new SheetHeading(2, words["cli.bench.working"]));
        blocks.Add(
            new SheetList([
                .. answer.Steps.Select(s =>
                    $"{BenchSheetWords.Printable(words.Formula(s.Formula))}  ({s.Equation}, {BenchWords.Source(words, s.Source)})"
                ),
            ])
        );
        var hangs = tool.Sensitivities(input, said.UnitFor);
        if (hangs.Count > 0)
        {
            blocks.Add(new SheetHeading(2, words.Say("cli.bench.hangs-on", ("result", words[$"bench.result.{answer.Results[0].Id}"]))));
            blocks.Add(
                new SheetList([
                    .. hangs.Select(s =>
                        words.Say(
                            "cli.bench.nudge",
                            ("step", said.Plain(s.Step)),
                            ("field", words[$"bench.field.{s.Field}"]),
                            (
                                "change",
                                (s.Change.Value > 0 ? "+" : "")
                                    + said.Plain(s.Change with { Value = Math.Round(s.Change.Value, answer.Results[0].Digits + 1) })
                            )
                        )
                    ),
                ])
            );
        }

        if (answer.Notes.Count > 0)
        {
            blocks.Add(new SheetHeading(2, words["sheet.bench.notes"]));
            blocks.Add(new SheetList([.. answer.Notes.Select(said.Say)]));
        }

        blocks.Add(new SheetParagraph(words["client.bench.claims"], Small: true));
        return said.Model(name, head, blocks);
    }
}

/// <summary>Words and figures as the sheets of the Bench say them.</summary>
internal sealed class BenchSheetWords(Words words, UnitDisplay units)
{
    // Letters that the font of the sheets has not.
    private static readonly (string Letter, string Plain)[] Lacking =
    [
        ("Σ", "sum "),
        ("κ", "k"),
        ("π", "pi"),
        ("ρ", "rho"),
        ("ᵢ", "i"),
        ("⁶", "^6"),
        ("⁷", "^7"),
        ("⁻", "-"),
        ("ₛ", "s"),
    ];

    public Words Words => words;

    /// <summary>A formula in letters that the sheets have.</summary>
    public static string Printable(string formula) =>
        Lacking.Aggregate(formula, (f, l) => f.Replace(l.Letter, l.Plain, StringComparison.Ordinal));

    public SheetModel Model(string title, BenchSheetHead head, IReadOnlyList<SheetBlock> blocks)
    {
        var date = words.Moment(head.At);
        var where = string.Join(", ", ((string[])[head.Machine, head.Kitchen]).Where(n => n.Length > 0));
        return new SheetModel(
            title,
            words.Language == "es" ? "es-US" : "en-US",
            string.Join(", ", ((string[])[title, where, date]).Where(n => n.Length > 0)),
            head.By,
            where.Length > 0 ? $"{title}: {where}" : title,
            date,
            words["sheet.page"],
            blocks
        );
    }

    public SheetFacts Facts(BenchSheetHead head) =>
        new(
            words["sheet.facts"],
            [
                (words["sheet.kitchen"], Stated(head.Kitchen)),
                (words["sheet.machine"], Stated(head.Machine)),
                (words["sheet.at"], words.Moment(head.At)),
                (words["sheet.technician"], Stated(head.By)),
            ]
        );

    public string Say(Statement statement) => words.Say(Wire.From(statement));

    public string Show(Amount? amount, int digits)
    {
        if (amount is not { } a)
        {
            return words["cli.bench.undetermined"];
        }

        var shown = Turned(a);
        return $"{words.Fixed(shown.Value, digits)}\u00a0{shown.Unit.Symbol}".TrimEnd('\u00a0');
    }

    public string Plain(Amount amount) =>
        $"{words.Number(amount.Value, Math.Abs(amount.Value) >= 100 ? 1 : 4)}\u00a0{amount.Unit.Symbol}".TrimEnd('\u00a0');

    public string Band(BenchResult r) =>
        r is { Low: { } low, High: { } high }
            ? words.Say(
                "cli.bench.band",
                ("low", words.Fixed(Turned(low).Value, r.Digits)),
                ("high", words.Fixed(Turned(high).Value, r.Digits))
            )
            : "";

    public IReadOnlyList<(string Name, string Value)> Given(BenchTool tool, BenchInput input, IReadOnlySet<string>? nobodySaid)
    {
        var usual = nobodySaid ?? BenchShown.Usual(tool, input).Select(f => f.Id).ToHashSet(StringComparer.Ordinal);
        return
        [
            .. tool
                .Fields.Where(f => tool.Asks(f, input) && input.Find(f.Id) is not null)
                .Select(f =>
                    (
                        words[$"bench.field.{f.Id}"],
                        Plain(Turned(input.Find(f.Id)!.Value)) + (usual.Contains(f.Id) ? words["bench.is-usual"] : "")
                    )
                ),
            .. tool
                .Choices.Where(c => tool.Asks(c, input))
                .Select(c => (words[$"bench.choice.{c.Id}"], words[$"bench.choice.{c.Id}.{input.FindChoice(c.Id) ?? c.Usual}"])),
        ];
    }

    public Unit UnitFor(Unit unit) => Shown.UnitFor(unit, units);

    public Amount Turned(Amount amount) => amount.In(UnitFor(amount.Unit));

    private string Stated(string text) => text.Length > 0 ? text : words["sheet.not-stated"];
}
