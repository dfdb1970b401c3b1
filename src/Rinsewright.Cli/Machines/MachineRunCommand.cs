using System.CommandLine;
using System.Globalization;
using System.Text.Json;
using Rinsewright.Contracts.Language;
using Rinsewright.Engine.Machines;

namespace Rinsewright.Cli.Machines;

/// <summary><c>rinsewright machine run FILE</c>: what the machine would read, healthy or with faults, in a scenario.</summary>
internal sealed class MachineRunCommand
{
    private readonly Argument<string> file = MachineCommand.File();
    private readonly ScenarioOptions scenario = new();
    private readonly Option<bool> csv = Options.Flag("--csv");
    private readonly Option<bool> json;
    private readonly Words words;
    private readonly Terminal terminal;

    private MachineRunCommand(Words words, Terminal terminal)
    {
        this.words = words;
        this.terminal = terminal;
        json = MachineCommand.Json(words);
    }

    public static Command Make(Words words, Terminal terminal)
    {
        var run = new MachineRunCommand(words, terminal);
        var command = new DescribedCommand("run", words, MachineCommand.Name) { run.file };
        command.AddSection("scenario", run.scenario.All);
        command.AddSection("output", run.json, run.csv, Options.Among("--language", "en|es", Words.Languages));
        command.SetAction(run.RunAsync);
        return command;
    }

    private async Task<int> RunAsync(ParseResult parsed, CancellationToken cancellation)
    {
        var (asJson, asCsv) = (parsed.GetValue(json), parsed.GetValue(csv));
        if (asJson && asCsv)
        {
            throw new UsageException(words.Say("cli.error.either", ("first", json.Name), ("second", csv.Name)));
        }

        var machine = await MachineInput.ReadAsync(parsed.GetValue(file)!, terminal, words, cancellation);
        var (asked, racks) = scenario.Read(parsed, machine, words);
        var faults = scenario.Faults(parsed, machine, words);
        var result = SettledRun.Of(machine, asked, racks, faults, asCsv ? RunOptions.Usual.SeriesEvery : 0, cancellation);
        if (asJson)
        {
            terminal.Output.WriteLine(JsonSerializer.Serialize(RunDto.Of(result, racks), PlainJson.Machines.RunDto));
        }
        else if (asCsv)
        {
            WriteSeries(result.Series!);
        }
        else
        {
            new ObservableText(terminal.Output, words).Write(machine, result, racks);
        }

        return ExitStatus.Done;
    }

    private void WriteSeries(Series series)
    {
        terminal.Output.Write(string.Join(',', series.Lines.Select(l => $"{l.Id} {l.Unit.Ucum}").Prepend("seconds")) + "\n");
        for (var i = 0; i < series.Seconds.Count; i++)
        {
            terminal.Output.Write(
                string.Join(',', series.Lines.Select(l => Number(l.Values[i])).Prepend(Number(series.Seconds[i]))) + "\n"
            );
        }
    }

    private static string Number(double value) => double.IsFinite(value) ? value.ToString("R", CultureInfo.InvariantCulture) : "";
}
