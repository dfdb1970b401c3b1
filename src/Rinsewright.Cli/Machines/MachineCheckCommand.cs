using System.CommandLine;
using System.Text.Json;
using Rinsewright.Cli.Sanitization;
using Rinsewright.Contracts.Language;
using Rinsewright.Contracts.Machines;
using Rinsewright.Engine.Machines;

namespace Rinsewright.Cli.Machines;

/// <summary><c>rinsewright machine check FILE</c>: everything in a machine file that cannot be.</summary>
internal sealed class MachineCheckCommand
{
    private readonly Argument<string> file = MachineCommand.File();
    private readonly Option<bool> json;
    private readonly Words words;
    private readonly Terminal terminal;

    private MachineCheckCommand(Words words, Terminal terminal)
    {
        this.words = words;
        this.terminal = terminal;
        json = MachineCommand.Json(words);
    }

    public static Command Make(Words words, Terminal terminal)
    {
        var check = new MachineCheckCommand(words, terminal);
        var command = new DescribedCommand("check", words, MachineCommand.Name) { check.file };
        command.AddSection("output", check.json, Options.Among("--language", "en|es", Words.Languages));
        command.SetAction(check.RunAsync);
        return command;
    }

    private async Task<int> RunAsync(ParseResult parsed, CancellationToken cancellation)
    {
        var path = parsed.GetValue(file)!;
        var reading = MachineFile.Read(await InputFile.TextAsync(path, terminal, words, cancellation));
        if (parsed.GetValue(json))
        {
            var report = new MachineCheckDto(
                MachineCheckDto.CurrentSchema,
                reading.Machine is not null,
                [.. reading.Problems.Select(p => new MachineProblemDto(p.Path, words.Say(p.Says), p.Says))]
            );
            terminal.Output.WriteLine(JsonSerializer.Serialize(report, PlainJson.Machines.MachineCheckDto));
        }
        else if (reading.Machine is { } machine)
        {
            var known = MachineFile.Figures(machine).Where(f => f.Written is not null).ToLookup(f => f.Basis);
            terminal.Output.WriteLine(
                words.Say(
                    "cli.machine.sound",
                    ("kind", words[Contracts.Wire.WordKey(machine.Kind)]),
                    ("measured", Count(known[Provenance.Measured])),
                    ("plate", Count(known[Provenance.DataPlate])),
                    ("typical", Count(known[Provenance.Typical]))
                )
            );
        }
        else
        {
            terminal.Error.WriteLine(words.Say("cli.error", ("message", MachineInput.Say(path, reading.Problems, words))));
        }

        return reading.Machine is null ? ExitStatus.UnreadableData : ExitStatus.Done;
    }

    private string Count(IEnumerable<FigureView> figures) => words.Number(figures.Count(), 0);
}
