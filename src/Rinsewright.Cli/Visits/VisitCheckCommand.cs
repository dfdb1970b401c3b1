using System.CommandLine;
using System.Text.Json;
using Rinsewright.Contracts.Language;
using Rinsewright.Engine.Visits;

namespace Rinsewright.Cli.Visits;

/// <summary><c>rinsewright visit check VISIT.json</c>: how the machine was left, why, and what is missing.</summary>
internal sealed class VisitCheckCommand
{
    private readonly Argument<string> file = VisitCommand.File();
    private readonly Option<bool> json = Options.Flag("--json");
    private readonly Words words;
    private readonly Terminal terminal;

    private VisitCheckCommand(Words words, Terminal terminal)
    {
        this.words = words;
        this.terminal = terminal;
        json.Description = words["cli.option.visit-json"];
    }

    public static Command Make(Words words, Terminal terminal)
    {
        var check = new VisitCheckCommand(words, terminal);
        var command = new DescribedCommand("check", words, VisitCommand.Name) { check.file };
        command.AddSection("output", check.json, Options.Among("--language", "en|es", Words.Languages));
        command.SetAction(check.RunAsync);
        return command;
    }

    private async Task<int> RunAsync(ParseResult parsed, CancellationToken cancellation)
    {
        var paper = await VisitCommand.ReadAsync(parsed.GetValue(file)!, terminal, words, cancellation);
        if (parsed.GetValue(json))
        {
            terminal.Output.WriteLine(JsonSerializer.Serialize(VisitDto.Of(paper, words), PlainJson.Visits.VisitDto));
        }
        else
        {
            new VisitText(terminal.Output, words).Write(paper);
        }

        return paper.Result.Standing switch
        {
            VisitStanding.StopUse or VisitStanding.NotSanitary => ExitStatus.NotProven,
            VisitStanding.NotProved => ExitStatus.Undetermined,
            _ => ExitStatus.Proven,
        };
    }
}
