using System.CommandLine;
using System.Text.Json;
using Rinsewright.Contracts;
using Rinsewright.Contracts.Language;
using Rinsewright.Contracts.Machines;
using Rinsewright.Drawing;
using Rinsewright.Drawing.Section;
using Rinsewright.Engine.Machines;

namespace Rinsewright.Cli.Machines;

/// <summary><c>rinsewright machine show FILE</c>: the machine with every figure and where it comes from; its section as a drawing.</summary>
internal sealed class MachineShowCommand
{
    // As the Machine screen draws them, so that both say the same.
    private const ulong Seed = 1;
    private const int Draws = 400;
    private readonly Argument<string> file = MachineCommand.File();
    private readonly Option<string?> svg = Options.One("--svg", "FILE");
    private readonly Option<bool> json;
    private readonly Words words;
    private readonly Terminal terminal;

    private MachineShowCommand(Words words, Terminal terminal)
    {
        this.words = words;
        this.terminal = terminal;
        json = MachineCommand.Json(words);
    }

    public static Command Make(Words words, Terminal terminal)
    {
        var show = new MachineShowCommand(words, terminal);
        var command = new DescribedCommand("show", words, MachineCommand.Name) { show.file };
        command.AddSection("output", show.svg, show.json, Options.Among("--language", "en|es", Words.Languages));
        command.SetAction(show.RunAsync);
        return command;
    }

    private async Task<int> RunAsync(ParseResult parsed, CancellationToken cancellation)
    {
        var machine = await MachineInput.ReadAsync(parsed.GetValue(file)!, terminal, words, cancellation);
        if (parsed.GetValue(svg) is { } path)
        {
            var drawing = SectionDrawing.Of(machine, new SectionOptions { Words = words });
            var text = SvgWriter.Write(drawing.Scene(), standalone: true);
            if (path == "-")
            {
                terminal.Output.Write(text);
                return ExitStatus.Done;
            }

            // A drawing can be made again any time: unlike a machine file it may be written over.
            await File.WriteAllTextAsync(path, text, cancellation);
            terminal.Error.WriteLine(words.Say("cli.machine.written", ("file", path)));
        }

        var figures = MachineFile.Figures(machine);
        var racks = SteadyState.UsualRate(machine);
        var healthy = SteadyState.Of(machine, racks);
        var bands = MachineSpread.Of(machine, Scenario.Steady(racks), Seed, Draws);
        if (parsed.GetValue(json))
        {
            var shown = new MachineShowDto(
                MachineShowDto.CurrentSchema,
                MachineFile.KindId(machine.Kind),
                machine.Name,
                machine.Kitchen,
                [.. figures.Where(f => f.Written is not null).Select(Dto)],
                RunDto.Of(healthy),
                bands.Bands.ToDictionary(b => b.Observable.Id, BandDto.Of, StringComparer.Ordinal)
            );
            terminal.Output.WriteLine(JsonSerializer.Serialize(shown, PlainJson.Machines.MachineShowDto));
        }
        else
        {
            new ObservableText(terminal.Output, words).Write(machine, healthy, bands);
            terminal.Output.WriteLine();
            Write(machine, figures);
        }

        return ExitStatus.Done;
    }

    private void Write(Machine machine, IReadOnlyList<FigureView> figures)
    {
        var page = new TextPage(terminal.Output);
        var kind = words[Wire.WordKey(machine.Kind)];
        page.Paragraph(string.Join(". ", new[] { machine.Name, machine.Kitchen, kind }.OfType<string>()) + ".");
        foreach (var basis in Enum.GetValues<Provenance>())
        {
            var rows = figures.Where(f => f.Written is not null && f.Basis == basis).ToList();
            if (rows.Count == 0)
            {
                continue;
            }

            page.Line();
            page.Line(words[$"cli.machine.{(basis == Provenance.DataPlate ? "data-plate" : Wire.Name(basis))}"]);
            foreach (var row in rows)
            {
                page.Entry($"  {row.Path}", Value(row), 36);
            }
        }

        page.Line();
        page.Paragraph(words["cli.machine.claims"]);
    }

    private string Value(FigureView figure)
    {
        var known = new[] { figure.Source, figure.On is { } on ? words.Day(on) : null };
        var from = string.Join(", ", known.OfType<string>());
        return Exact(figure) + (from.Length > 0 ? $"  ({from})" : "");
    }

    // As written, not rounded to what a reading in this unit shows: 0.0284 m/s is not 0.03.
    private string Exact(FigureView figure)
    {
        var written = figure.Written!.Value;
        return $"{words.Number(written.Value, 6)}\u00a0{written.Unit.Symbol}".TrimEnd('\u00a0');
    }

    private static MachineFigureDto Dto(FigureView f) =>
        new(f.Path, f.Written!.Value.Value, f.Written.Value.Unit.Ucum, Wire.Name(f.Basis), f.Source, f.On);
}
