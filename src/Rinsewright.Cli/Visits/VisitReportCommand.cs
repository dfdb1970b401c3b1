using System.CommandLine;
using Rinsewright.Contracts.Language;
using Rinsewright.Contracts.Records;
using Rinsewright.Drawing;
using Rinsewright.Files.Sheets;

namespace Rinsewright.Cli.Visits;

/// <summary><c>rinsewright visit report VISIT.json --sheet FILE.pdf</c>: report, inspector's page or stop-use tag on paper.</summary>
internal sealed class VisitReportCommand
{
    private static readonly string[] Pages = ["report", "inspector", "tag"];

    private readonly Argument<string> file = VisitCommand.File();
    private readonly Option<string?> sheet = Options.One("--sheet", "FILE.pdf");
    private readonly Option<string?> page = Options.Among("--page", "report|inspector|tag", Pages);
    private readonly Option<string?> units = SheetFile.Units();
    private readonly Option<string?> paper = Options.Among("--paper", "a4|letter", ["a4", "letter"]);
    private readonly Words words;
    private readonly Terminal terminal;

    private VisitReportCommand(Words words, Terminal terminal)
    {
        this.words = words;
        this.terminal = terminal;
        sheet.Description = words["cli.option.visit-sheet"];
    }

    public static Command Make(Words words, Terminal terminal)
    {
        var report = new VisitReportCommand(words, terminal);
        var command = new DescribedCommand("report", words, VisitCommand.Name) { report.file };
        command.AddSection(
            "output",
            report.sheet,
            report.page,
            report.paper,
            report.units,
            Options.Among("--language", "en|es", Words.Languages)
        );
        command.SetAction(report.RunAsync);
        return command;
    }

    private async Task<int> RunAsync(ParseResult parsed, CancellationToken cancellation)
    {
        var path = parsed.GetValue(sheet) ?? throw new UsageException(words["cli.visit.needs-sheet"]);
        var wanted = CommandLine.Among(words, page.Name, parsed.GetValue(page) ?? Pages[0], Pages);
        var display = SheetFile.UnitsOf(parsed, units, words);
        var options = new SheetOptions(SheetFile.PaperOf(parsed, paper, words), words.Language, display);
        var visit = await VisitCommand.ReadAsync(parsed.GetValue(file)!, terminal, words, cancellation);
        var pdf = wanted switch
        {
            "inspector" => VisitSheet.Inspector(visit, options),
            "tag" => VisitSheet.Tag(visit, options) ?? throw new UsageException(words["visit.sheet.not-stopped"]),
            _ => VisitSheet.Report(visit, options),
        };
        await SheetFile.WriteAsync(path, pdf, words, cancellation);
        return ExitStatus.Done;
    }
}
