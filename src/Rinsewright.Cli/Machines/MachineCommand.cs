using System.CommandLine;
using Rinsewright.Contracts.Language;

namespace Rinsewright.Cli.Machines;

/// <summary><c>rinsewright machine</c>: what is done with the description of a machine.</summary>
internal static class MachineCommand
{
    /// <summary>Name of the command.</summary>
    public const string Name = "machine";

    public static Command Make(Words words, Terminal terminal) =>
        new DescribedCommand(Name, words)
        {
            MachineNewCommand.Make(words, terminal),
            MachineCheckCommand.Make(words, terminal),
            MachineShowCommand.Make(words, terminal),
            MachineRunCommand.Make(words, terminal),
            MachineWhatIfCommand.Make(words, terminal),
            MachineCalibrateCommand.Make(words, terminal),
        };

    /// <summary>The machine file of a command.</summary>
    internal static Argument<string> File() => new("file") { HelpName = "FILE", Arity = ArgumentArity.ExactlyOne };

    /// <summary>JSON instead of text.</summary>
    internal static Option<bool> Json(Words words)
    {
        var json = Options.Flag("--json");
        json.Description = words["cli.option.machine-json"];
        return json;
    }
}
