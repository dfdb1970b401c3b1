using System.CommandLine;
using Rinsewright.Cli.Sanitization;
using Rinsewright.Contracts;
using Rinsewright.Contracts.Language;
using Rinsewright.Contracts.Visits;
using Rinsewright.Files.Sheets;
using Rinsewright.Knowledge;

namespace Rinsewright.Cli.Visits;

/// <summary><c>rinsewright visit</c>: what a visit amounts to, on the screen and on paper.</summary>
internal static class VisitCommand
{
    /// <summary>Name of the command.</summary>
    public const string Name = "visit";

    public static Command Make(Words words, Terminal terminal) =>
        new DescribedCommand(Name, words)
        {
            VisitCheckCommand.Make(words, terminal),
            VisitReportCommand.Make(words, terminal),
            VisitHistoryCommand.Make(words, terminal),
        };

    /// <summary>The visit of a command.</summary>
    internal static Argument<string> File() => new("visit") { HelpName = "VISIT.json", Arity = ArgumentArity.ExactlyOne };

    /// <summary>Reads and judges a visit.</summary>
    /// <exception cref="InputException">It is no visit, or something in it cannot be.</exception>
    internal static async Task<VisitPaper> ReadAsync(string path, Terminal terminal, Words words, CancellationToken cancellation)
    {
        var text = await InputFile.TextAsync(path, terminal, words, cancellation);
        try
        {
            return VisitPaper.Of(VisitFile.Read(text), BuiltInKnowledge.Trade);
        }
        catch (ContractException e)
        {
            var problem = e.Says is { } says ? $"{e.Field}: {words.Say(Wire.From(says))}" : e.Message;
            throw new InputException(
                ExitStatus.UnreadableData,
                words.Say("cli.visit.cannot-be", ("file", path == "-" ? words["cli.standard-input"] : path), ("problem", problem))
            );
        }
    }
}
