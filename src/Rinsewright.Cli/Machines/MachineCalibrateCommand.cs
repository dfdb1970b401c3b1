using System.CommandLine;
using System.Globalization;
using System.Text.Json;
using Rinsewright.Contracts.Language;
using Rinsewright.Contracts.Machines;
using Rinsewright.Engine.Machines;

namespace Rinsewright.Cli.Machines;

/// <summary><c>rinsewright machine calibrate FILE</c>: what readings say about a machine's figures.</summary>
internal sealed class MachineCalibrateCommand
{
    private readonly Argument<string> file = MachineCommand.File();
    private readonly Option<string[]> reading = Options.Many("--reading", "READING");
    private readonly Option<string?> on = Options.One("--on", "DAY");
    private readonly Option<string?> output = Options.One("--output", "FILE");
    private readonly Option<bool> json;
    private readonly Words words;
    private readonly Terminal terminal;

    private MachineCalibrateCommand(Words words, Terminal terminal)
    {
        this.words = words;
        this.terminal = terminal;
        json = MachineCommand.Json(words);
    }

    public static Command Make(Words words, Terminal terminal)
    {
        var made = new MachineCalibrateCommand(words, terminal);
        var command = new DescribedCommand("calibrate", words, MachineCommand.Name) { made.file };
        command.AddSection("readings-of-machine", made.reading, made.on);
        command.AddSection("output", made.output, made.json, Options.Among("--language", "en|es", Words.Languages));
        command.SetAction(made.RunAsync);
        return command;
    }

    private async Task<int> RunAsync(ParseResult parsed, CancellationToken cancellation)
    {
        var day = DateOnly.FromDateTime(terminal.Clock.GetLocalNow().DateTime);
        if (
            parsed.GetValue(on) is { } typed
            && !DateOnly.TryParseExact(typed, "yyyy-MM-dd", CultureInfo.InvariantCulture, DateTimeStyles.None, out day)
        )
        {
            throw new UsageException(words.Say("cli.error.date", ("option", on.Name), ("value", typed)));
        }

        var readings = (parsed.GetValue(reading) ?? []).Select(r => TypedReading.Read(r, day, words)).ToList();
        if (readings.Count == 0)
        {
            throw new UsageException(
                words.Say("cli.error.reading-needed", ("values", string.Join(", ", ReadingKinds.All.Select(k => k.Id))))
            );
        }

        var machine = await MachineInput.ReadAsync(parsed.GetValue(file)!, terminal, words, cancellation);
        var result = MachineCalibration.From(machine, readings);
        if (parsed.GetValue(output) is { } path)
        {
            await OutputFile.CreateAsync(path, MachineFile.Write(result.Machine), words, cancellation);
            terminal.Error.WriteLine(words.Say("cli.machine.written", ("file", path)));
        }

        if (parsed.GetValue(json))
        {
            terminal.Output.WriteLine(JsonSerializer.Serialize(CalibrationDto.Of(result, readings), PlainJson.Machines.CalibrationDto));
        }
        else
        {
            new CalibrationText(terminal.Output, words).Write(result, readings);
        }

        return ExitStatus.Done;
    }
}
