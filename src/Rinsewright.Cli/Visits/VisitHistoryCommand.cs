using System.CommandLine;
using System.CommandLine.Parsing;
using System.Globalization;
using System.Text.Json;
using Rinsewright.Cli.Sanitization;
using Rinsewright.Contracts;
using Rinsewright.Contracts.Language;
using Rinsewright.Contracts.Records;
using Rinsewright.Drawing.History;
using Rinsewright.Engine.Visits;
using Rinsewright.Engine.Visits.History;
using Rinsewright.Files.Sheets;
using Rinsewright.Knowledge;

namespace Rinsewright.Cli.Visits;

/// <summary><c>rinsewright visit history VISIT.json...</c>: what the visits to one machine tell together.</summary>
internal sealed class VisitHistoryCommand
{
    private static readonly string[] States = ["idle", "load", "heat-up"];

    private readonly Argument<string[]> files = new("visits") { HelpName = "VISIT.json...", Arity = ArgumentArity.OneOrMore };
    private readonly Option<bool> json = Options.Flag("--json");
    private readonly Option<string?> today = Options.One("--today", "DAY");
    private readonly Option<string?> state = Options.Among("--state", "idle|load|heat-up", States);
    private readonly Option<string?> sheet = Options.One("--sheet", "FILE.pdf");
    private readonly Option<string?> units = SheetFile.Units();
    private readonly Option<string?> paper = Options.Among("--paper", "a4|letter", ["a4", "letter"]);
    private readonly Words words;
    private readonly Terminal terminal;

    private VisitHistoryCommand(Words words, Terminal terminal)
    {
        this.words = words;
        this.terminal = terminal;
        json.Description = words["cli.option.visit-json"];
        sheet.Description = words["cli.option.history-sheet"];
        state.Description = words["cli.option.history-state"];
    }

    public static Command Make(Words words, Terminal terminal)
    {
        var history = new VisitHistoryCommand(words, terminal);
        var command = new DescribedCommand("history", words, VisitCommand.Name) { history.files };
        command.AddSection(
            "output",
            history.json,
            history.today,
            history.state,
            history.sheet,
            history.paper,
            history.units,
            Options.Among("--language", "en|es", Words.Languages)
        );
        command.SetAction(history.RunAsync);
        return command;
    }

    private async Task<int> RunAsync(ParseResult parsed, CancellationToken cancellation)
    {
        var display = SheetFile.UnitsOf(parsed, units, words);
        OperatingState? only = parsed.GetValue(state) is { } wanted
            ? CommandLine.Among(words, state.Name, wanted, States) switch
            {
                "idle" => OperatingState.Idle,
                "load" => OperatingState.Load,
                _ => OperatingState.HeatUp,
            }
            : null;
        DateOnly? day = parsed.GetValue(today) is { } typed ? Day(typed) : null;
        var size = SheetFile.PaperOf(parsed, paper, words);

        var visits = await ReadAsync(parsed.GetValue(files)!, cancellation);
        var history = MachineHistory.Of(
            visits.Select(v => new HistoryVisit(v.Document.Id.ToString(), v.Visit, v.Result)),
            BuiltInKnowledge.Trade,
            day ?? visits.Max(v => v.Visit.On)
        );
        var said = new HistoryWords(words, display);
        var last = visits.First(v => v.Document.Id.ToString() == history.Last!.Id);
        var about = new HistoryPaper(history, MachineOf(last), last.Document.Kitchen);
        var series = history.Series.Where(s => only is null || s.State == only).ToList();
        var crew = history.CrewLogs.Where(s => only is null || s.State == only).ToList();
        if (parsed.GetValue(json))
        {
            terminal.Output.WriteLine(JsonSerializer.Serialize(HistoryDto.Of(about, series, crew, said), PlainJson.Histories.HistoryDto));
        }
        else
        {
            new HistoryText(terminal.Output, said).Write(about, series, crew);
        }

        if (parsed.GetValue(sheet) is { } path)
        {
            await SheetFile.WriteAsync(
                path,
                HistorySheet.Print(about, new SheetOptions(size, words.Language, display)),
                words,
                cancellation
            );
        }

        return ExitStatus.Done;
    }

    private async Task<List<VisitPaper>> ReadAsync(string[] paths, CancellationToken cancellation)
    {
        List<VisitPaper> visits = [];
        Dictionary<Guid, string> seen = [];
        foreach (var path in paths)
        {
            var visit = await VisitCommand.ReadAsync(path, terminal, words, cancellation);
            if (!seen.TryAdd(visit.Document.Id, path))
            {
                throw new UsageException(words.Say("cli.visit-history.twice", ("file", seen[visit.Document.Id]), ("other", path)));
            }

            visits.Add(visit);
        }

        // A file names its machine and kitchen in words; visits to two machines make no history.
        var machines = visits.Select(v => $"{MachineOf(v)}, {v.Document.Kitchen}").Distinct(StringComparer.OrdinalIgnoreCase).ToList();
        return machines.Count == 1
            ? visits
            : throw new UsageException(words.Say("cli.visit-history.machines", ("machines", string.Join("; ", machines))));
    }

    private string MachineOf(VisitPaper visit) => visit.Visit.Machine.Name ?? words[Wire.WordKey(visit.Visit.Machine.Kind)];

    private DateOnly Day(string typed) =>
        DateOnly.TryParseExact(typed, "yyyy-MM-dd", CultureInfo.InvariantCulture, DateTimeStyles.None, out var day)
            ? day
            : throw new UsageException(words.Say("cli.visit-history.today", ("value", typed)));
}
