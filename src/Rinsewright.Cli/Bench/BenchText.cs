using Rinsewright.Contracts;
using Rinsewright.Contracts.Language;
using Rinsewright.Contracts.Records;
using Rinsewright.Drawing.Bench;
using Rinsewright.Engine.Bench;
using Rinsewright.Engine.Quantities;

namespace Rinsewright.Cli.Bench;

/// <summary>An answer of the Bench as text: cautions, results, working, what it hangs on, notes.</summary>
internal sealed class BenchText(TextWriter writer, Words words, UnitDisplay units)
{
    private readonly TextPage page = new(writer);

    /// <summary>A number with its unit, as many decimals as it needs, up to four.</summary>
    internal static string Plain(Words words, double value, Unit unit) => $"{words.Number(value, 4)}\u00a0{unit.Symbol}".TrimEnd('\u00a0');

    public void Write(
        BenchTool tool,
        BenchInput typed,
        BenchAnswer answer,
        IEnumerable<MachineFigure> fromMachine,
        IReadOnlySet<string> taken
    )
    {
        var input = BenchShown.Turned(tool, typed, units);
        var sensitivities = tool.Sensitivities(input, UnitFor);
        page.Paragraph(words[$"bench.{tool.Id}.name"]);
        foreach (var known in fromMachine)
        {
            page.Paragraph(
                words.Say(
                    "cli.bench.from-machine",
                    ("field", words[$"bench.field.{known.Field}"]),
                    ("value", Figure(known.Value)),
                    ("basis", words[Wire.WordKey(known.Basis)])
                ),
                2,
                2
            );
        }

        Usual(tool, input, taken);
        foreach (var caution in answer.Cautions)
        {
            page.Paragraph(words.Say("cli.bench.caution", ("text", words.Say(Wire.From(caution)))), 2, 2);
        }

        page.Line();
        page.Table(
            [words["cli.bench.result"], "", ""],
            [.. answer.Results.Select(r => (string[])[words[$"bench.result.{r.Id}"], Show(r.Value, r.Digits), Band(r)])],
            new HashSet<int> { 1 }
        );
        page.Line();
        page.Line("  " + words["cli.bench.working"]);
        foreach (var step in answer.Steps)
        {
            page.Paragraph($"{words.Formula(step.Formula)}  ({step.Equation}, {BenchWords.Source(words, step.Source)})", 2, 2);
        }

        if (sensitivities.Count > 0)
        {
            page.Line();
            page.Line("  " + words.Say("cli.bench.hangs-on", ("result", words[$"bench.result.{answer.Results[0].Id}"])));
            foreach (var s in sensitivities)
            {
                page.Paragraph(
                    words.Say(
                        "cli.bench.nudge",
                        ("step", Plain(words, s.Step.Value, s.Step.Unit)),
                        ("field", words[$"bench.field.{s.Field}"]),
                        ("change", Change(s.Change, answer.Results[0].Digits))
                    ),
                    2,
                    2
                );
            }
        }

        page.Line();
        foreach (var note in answer.Notes)
        {
            page.Paragraph(words.Say(Wire.From(note)), 2, 2);
        }

        page.Line();
        page.Paragraph(words["cli.bench.claims"]);
    }

    // What nobody said is said here, so that no usual figure passes for a reading.
    private void Usual(BenchTool tool, BenchInput input, IReadOnlySet<string> taken)
    {
        string[] figures =
        [
            .. tool
                .Fields.Where(f => taken.Contains(f.Id))
                .Select(f => $"{words[$"bench.field.{f.Id}"]} {Figure(input.Find(f.Id)!.Value)}"),
            .. tool
                .Choices.Where(c => taken.Contains(c.Id))
                .Select(c => $"{words[$"bench.choice.{c.Id}"]}: {words[$"bench.choice.{c.Id}.{c.Usual}"]}"),
        ];
        if (figures.Length > 0)
        {
            page.Paragraph(words.Say("cli.bench.usual-taken", ("figures", string.Join("; ", figures))), 2, 2);
        }
    }

    private Unit UnitFor(Unit unit) => Shown.UnitFor(unit, units);

    private string Figure(Amount amount) => BenchWords.Figure(words, amount, units);

    private string Show(Amount? amount, int digits)
    {
        if (amount is not { } given)
        {
            return words["cli.bench.undetermined"];
        }

        var a = given.In(UnitFor(given.Unit));
        return $"{words.Fixed(a.Value, digits)}\u00a0{a.Unit.Symbol}".TrimEnd('\u00a0');
    }

    private string Change(Amount change, int digits) =>
        (change.Value > 0 ? "+" : "") + $"{words.Number(change.Value, digits + 1)}\u00a0{change.Unit.Symbol}".TrimEnd('\u00a0');

    private string Band(BenchResult r) =>
        r is { Low: { } low, High: { } high }
            ? words.Say(
                "cli.bench.band",
                ("low", words.Fixed(low.In(UnitFor(low.Unit)).Value, r.Digits)),
                ("high", words.Fixed(high.In(UnitFor(high.Unit)).Value, r.Digits))
            )
            : "";
}
