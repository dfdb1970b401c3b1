using System.CommandLine;
using System.Text.Json;
using Rinsewright.Contracts.Language;
using Rinsewright.Contracts.Machines;
using Rinsewright.Engine.Machines;

namespace Rinsewright.Cli.Machines;

/// <summary><c>rinsewright machine whatif FILE</c>: the same scenario before and after changes.</summary>
internal sealed class MachineWhatIfCommand
{
    private readonly Argument<string> file = MachineCommand.File();
    private readonly Option<string[]> set = Options.Many("--set", "PATH=VALUE");
    private readonly ScenarioOptions scenario = new();
    private readonly PriceOptions prices = new();
    private readonly Option<bool> json;
    private readonly Words words;
    private readonly Terminal terminal;

    private MachineWhatIfCommand(Words words, Terminal terminal)
    {
        this.words = words;
        this.terminal = terminal;
        json = MachineCommand.Json(words);
    }

    public static Command Make(Words words, Terminal terminal)
    {
        var whatIf = new MachineWhatIfCommand(words, terminal);
        var command = new DescribedCommand("whatif", words, MachineCommand.Name) { whatIf.file };
        command.AddSection("change", whatIf.set);
        command.AddSection("scenario", whatIf.scenario.All);
        command.AddSection("cost", whatIf.prices.All);
        command.AddSection("output", whatIf.json, Options.Among("--language", "en|es", Words.Languages));
        command.SetAction(whatIf.RunAsync);
        return command;
    }

    private async Task<int> RunAsync(ParseResult parsed, CancellationToken cancellation)
    {
        var changes = (parsed.GetValue(set) ?? []).Select(Change).ToList();
        if (changes.Count == 0)
        {
            throw new UsageException(words["cli.error.nothing-to-change"]);
        }

        var machine = await MachineInput.ReadAsync(parsed.GetValue(file)!, terminal, words, cancellation);
        var reading = MachineFile.With(machine, changes);
        if (reading.Machine is not { } changed)
        {
            throw new UsageException(string.Join("\n  ", reading.Problems.Select(p => MachineInput.Say(p, words)).Prepend("--set")));
        }

        // Another pressure is a turned regulator on the same nozzles, unless another flow is given with it.
        if (
            machine.FinalRinse is { } rinse
            && changed.FinalRinse is { } turned
            && changes.Exists(c => c.Path == "finalRinse.pressure")
            && !changes.Exists(c => c.Path == "finalRinse.flow")
        )
        {
            changed = changed with { FinalRinse = rinse.TurnedTo(turned.Pressure) };
        }

        var (asked, racks) = scenario.Read(parsed, machine, words);
        var faults = scenario.Faults(parsed, machine, words);
        var terms = prices.Read(parsed, racks, words);
        var before = SettledRun.Of(machine, asked, racks, faults, 0, cancellation);
        var after = SettledRun.Of(changed, asked, racks, faults, 0, cancellation);
        if (parsed.GetValue(json))
        {
            var (old, now) = (RunDto.Of(before, racks), RunDto.Of(after, racks));
            var shows = before.Observables.Where(b => after.Of(b.Observable.Id) is { } a && ObservableText.Shows(b, a));
            var answer = new WhatIfDto(
                WhatIfDto.CurrentSchema,
                old.Scenario,
                old.RacksPerHour,
                [.. changes.Select(c => new ChangeDto(c.Path, c.Text))],
                old.Faults,
                old.Observables,
                now.Observables,
                [.. shows.Select(o => o.Observable.Id)]
            );
            terminal.Output.WriteLine(JsonSerializer.Serialize(answer, PlainJson.Machines.WhatIfDto));
        }
        else
        {
            new ObservableText(terminal.Output, words).Write(machine, before, after, racks);
            new WhatIfText(terminal.Output, words).Write(
                WhatIf.Of(new Situation(machine, racks, faults), terms),
                WhatIf.Of(new Situation(changed, racks, faults), terms)
            );
        }

        return ExitStatus.Done;
    }

    private MachineChange Change(string typed) =>
        typed.Split('=', 2) is [{ Length: > 0 } path, { Length: > 0 } value]
            ? new MachineChange(path.Trim(), value.Trim())
            : throw new UsageException(words.Say("cli.error.set", ("value", typed)));
}
