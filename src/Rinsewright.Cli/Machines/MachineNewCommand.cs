using System.CommandLine;
using Rinsewright.Contracts.Language;
using Rinsewright.Contracts.Machines;
using Rinsewright.Engine.Machines;

namespace Rinsewright.Cli.Machines;

/// <summary><c>rinsewright machine new</c>: the typical machine of a kind, as a file to fill in.</summary>
internal sealed class MachineNewCommand
{
    private readonly Option<string?> kind = Options.Among("--kind", "KIND", MachineFile.Kinds);
    private readonly Option<string?> name = Options.One("--machine-name", "NAME");
    private readonly Option<string?> kitchen = Options.One("--kitchen", "NAME");
    private readonly Option<bool> known = Options.Flag("--only-known");
    private readonly Option<string?> output = Options.One("--output", "FILE");
    private readonly Words words;
    private readonly Terminal terminal;

    private MachineNewCommand(Words words, Terminal terminal)
    {
        this.words = words;
        this.terminal = terminal;
    }

    public static Command Make(Words words, Terminal terminal)
    {
        var made = new MachineNewCommand(words, terminal);
        var command = new DescribedCommand("new", words, MachineCommand.Name);
        command.AddSection("machine", made.kind, made.name, made.kitchen);
        command.AddSection("output", made.known, made.output, Options.Among("--language", "en|es", Words.Languages));
        command.SetAction(made.RunAsync);
        return command;
    }

    private async Task<int> RunAsync(ParseResult parsed, CancellationToken cancellation)
    {
        if (parsed.GetValue(kind) is not { } id)
        {
            throw new UsageException(words.Say("cli.error.kind-needed", ("values", string.Join(", ", MachineFile.Kinds))));
        }

        var typical = TypicalMachines.Of(
            MachineFile.Kind(id) ?? throw new UsageException(CommandLine.NotAmong(words, kind.Name, id, MachineFile.Kinds))
        );
        var text = MachineFile.Write(
            typical with
            {
                Name = parsed.GetValue(name),
                Kitchen = parsed.GetValue(kitchen),
            },
            whole: !parsed.GetValue(known)
        );
        if (parsed.GetValue(output) is not { } path)
        {
            terminal.Output.Write(text);
            return ExitStatus.Done;
        }

        await OutputFile.CreateAsync(path, text, words, cancellation);
        terminal.Error.WriteLine(words.Say("cli.machine.written", ("file", path)));
        return ExitStatus.Done;
    }
}
