using Rinsewright.Contracts.Language;
using Rinsewright.Engine.Machines;
using Rinsewright.Engine.Quantities;

namespace Rinsewright.Cli.Machines;

/// <summary>What readings say, as text: contradictions first, then what is told, then what stays unknown.</summary>
internal sealed class CalibrationText(TextWriter writer, Words words)
{
    private readonly TextPage page = new(writer);

    public void Write(CalibrationResult result, IReadOnlyList<MachineReading> readings)
    {
        foreach (var problem in result.Problems)
        {
            page.Paragraph($"{Name(readings[problem.Reading])}: {words[$"client.calibrate.problem.{problem.Code}"]}", 2, 2);
        }

        foreach (var contradiction in result.Contradictions)
        {
            page.Paragraph(words[contradiction.Kind == ContradictionKind.Misfit ? "client.calibrate.misfit" : "client.calibrate.balance"]);
            foreach (var index in contradiction.Readings)
            {
                page.Paragraph(Name(readings[index]), 4, 2);
            }

            page.Line();
        }

        var told = result.Figures.Where(f => f.Told).ToList();
        if (told.Count == 0)
        {
            page.Paragraph(words["client.calibrate.nothing-told"]);
        }
        else
        {
            page.Table(
                [
                    words["client.calibrate.told"],
                    words["client.calibrate.was"],
                    words["client.calibrate.is"],
                    words["cli.calibrate.interval"],
                ],
                [
                    .. told.Select(f =>
                        (string[])[f.Id, f.Before is { } b ? Show(b) : "", Show(f.Value), $"{Number(f.Low)}–{Number(f.High)}"]
                    ),
                ],
                new HashSet<int> { 1, 2, 3 }
            );
            page.Paragraph(words["client.calibrate.interval-note"], 2);
        }

        page.Line();
        page.Table(
            [words["client.calibrate.value"], "", ""],
            [
                .. result.Fits.Select(f =>
                    (string[])
                        [
                            Name(readings[f.Reading]),
                            f.Expected is { } e ? words.Say("client.calibrate.fits", ("expected", Show(e))) : "",
                            Math.Abs(f.Off) > 3 ? words["client.calibrate.far"] : "",
                        ]
                ),
            ],
            new HashSet<int>()
        );
        page.Line();
        page.Line("  " + words["client.calibrate.unknown"]);
        foreach (var unknown in result.Unknown)
        {
            page.Entry(
                $"  {unknown.Id}",
                unknown.Kind is { } kind
                    ? words.Say(
                        "client.calibrate.would-tell",
                        ("kind", words[$"client.calibrate.kind.{kind}"] + (unknown.Part is { } part ? $" ({part})" : ""))
                    )
                    : words["client.calibrate.none-tells"],
                36
            );
        }

        page.Line();
        page.Paragraph(words["cli.machine.run-claims"]);
    }

    private string Name(MachineReading r) => $"{r.Kind}{(r.Part is { } part ? "@" + part : "")} {Show(r.Value)}";

    private string Show(Amount amount) => $"{Number(amount)}\u00a0{amount.Unit.Symbol}".TrimEnd('\u00a0');

    private string Number(Amount amount)
    {
        var size = Math.Abs(amount.Value);
        return words.Number(
            amount.Value,
            size >= 100 ? 0
                : size >= 10 ? 1
                : size >= 1 ? 2
                : 4
        );
    }
}
