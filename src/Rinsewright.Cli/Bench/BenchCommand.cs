using System.CommandLine;
using System.Text;
using System.Text.Json;
using Rinsewright.Cli.Machines;
using Rinsewright.Cli.Sanitization;
using Rinsewright.Contracts;
using Rinsewright.Contracts.Language;
using Rinsewright.Contracts.Machines;
using Rinsewright.Drawing.Bench;
using Rinsewright.Engine.Bench;
using Rinsewright.Engine.Machines;
using Rinsewright.Engine.Quantities;
using Rinsewright.Files.Sheets;

namespace Rinsewright.Cli.Bench;

/// <summary><c>rinsewright bench TOOL</c>: one of the technician's sums. Each tool is a command of its own, with an option for each figure it asks for.</summary>
internal sealed class BenchCommand
{
    private readonly BenchTool tool;
    private readonly Words words;
    private readonly Terminal terminal;
    private readonly List<(BenchField Field, Option<string?> Option)> fields = [];
    private readonly List<(BenchChoice Choice, Option<string?> Option)> choices = [];
    private readonly Option<string?> machineFile = Options.One("--machine", "FILE");
    private readonly Option<string?> pinTo = Options.One("--pin-to", "FILE");
    private readonly Option<bool> pin = Options.Flag("--pin");
    private readonly Option<string?> by = Options.One("--by", "NAME");
    private readonly Option<string?> sheet = Options.One("--sheet", "FILE.pdf");
    private readonly Option<string?> units = SheetFile.Units();
    private readonly Option<string?> paper = Options.Among("--paper", "a4|letter", ["a4", "letter"]);
    private readonly Option<bool> json;

    private BenchCommand(BenchTool tool, Words words, Terminal terminal)
    {
        this.tool = tool;
        this.words = words;
        this.terminal = terminal;
        json = Options.Flag("--json");
        json.Description = words["cli.option.bench-json"];
        machineFile.Description = words["cli.option.bench-machine"];
        pin.Description = words["cli.option.bench-pin"];
        pinTo.Description = words["cli.option.bench-pin-to"];
        by.Description = words["cli.option.bench-by"];
        units.Description = words["cli.option.bench-units"];
        sheet.Description = words["cli.option.bench-sheet"];
    }

    public static Command Make(Words words, Terminal terminal)
    {
        var bench = new DescribedCommand("bench", words);
        foreach (var one in BenchTools.All)
        {
            bench.Add(new BenchCommand(one, words, terminal).Make());
        }

        bench.Add(WareCommand.Make(words, terminal));
        return bench;
    }

    /// <summary>Option of a field or choice: <c>flowPressure</c> is <c>--flow-pressure</c>.</summary>
    internal static string OptionOf(string id)
    {
        var name = new StringBuilder("--");
        foreach (var c in id)
        {
            _ = char.IsUpper(c) ? name.Append('-').Append(char.ToLowerInvariant(c)) : name.Append(c);
        }

        return name.ToString();
    }

    private DescribedCommand Make()
    {
        var command = new DescribedCommand(tool.Id, words, "bench", "bench-tool", $"bench.{tool.Id}.about");
        foreach (var field in tool.Fields)
        {
            var option = Options.One(OptionOf(field.Id), field.Unit == Units.One ? "N" : "AMOUNT");
            option.Description = About(field);
            fields.Add((field, option));
        }

        foreach (var choice in tool.Choices)
        {
            var option = Options.Among(OptionOf(choice.Id), "WORD", choice.Options);
            option.Description = words.Say(
                "cli.bench.choice",
                ("name", words[$"bench.choice.{choice.Id}"]),
                ("options", string.Join("; ", choice.Options.Select(o => $"{o}: {words[$"bench.choice.{choice.Id}.{o}"]}"))),
                ("usual", choice.Usual)
            );
            choices.Add((choice, option));
        }

        command.AddSection("figures", [.. fields.Select(f => f.Option)]);
        if (choices.Count > 0)
        {
            command.AddSection("choices", [.. choices.Select(c => c.Option)]);
        }

        command.AddSection("from-machine", machineFile, pin, by, pinTo);
        command.AddSection("output", json, units, sheet, paper, Options.Among("--language", "en|es", Words.Languages));
        command.SetAction(RunAsync);
        return command;
    }

    private string About(BenchField field)
    {
        var name = words[$"bench.field.{field.Id}"];
        return field.Usual is { } usual ? words.Say("cli.bench.usual", ("name", name), ("usual", BenchText.Plain(words, usual, field.Unit)))
            : field.Optional ? words.Say("cli.bench.optional", ("name", name), ("unit", field.Unit.Symbol))
            : words.Say("cli.bench.needed", ("name", name), ("unit", field.Unit.Symbol));
    }

    private async Task<int> RunAsync(ParseResult parsed, CancellationToken cancellation)
    {
        var paperSize = SheetFile.PaperOf(parsed, paper, words);
        var display = SheetFile.UnitsOf(parsed, units, words);
        var pinning = Pinning(parsed);
        var machine = parsed.GetValue(machineFile) is { } path ? await MachineInput.ReadAsync(path, terminal, words, cancellation) : null;
        IReadOnlyList<MachineFigure> known = machine is null ? [] : MachineFigures.For(tool, machine);
        var input = Typed(parsed, machine, known);
        var outcome = tool.Solve(input);
        if (outcome.Answer is not { } answer)
        {
            throw new UsageException(
                string.Join("\n  ", outcome.Problems.Select(p => $"{OptionOf(p.Field)}: {words.Say(Wire.From(p.Says))}"))
            );
        }

        var now = terminal.Clock.GetLocalNow();
        var taken = Taken(parsed, input, known);
        if (pinning is { } kept)
        {
            var setUp = BenchSetUps.Keep(machine!, tool, input, answer, DateOnly.FromDateTime(now.DateTime), kept.By);
            await OutputFile.CreateAsync(kept.File, MachineFile.Write(setUp), words, cancellation);
            terminal.Error.WriteLine(words.Say("cli.machine.written", ("file", kept.File)));
        }

        if (parsed.GetValue(sheet) is { } pdf)
        {
            var head = new BenchSheetHead(
                Guid.CreateVersion7(now),
                now,
                machine?.Kitchen ?? "",
                machine is null ? "" : machine.Name ?? words[Wire.WordKey(machine.Kind)],
                parsed.GetValue(by) ?? ""
            );
            await SheetFile.WriteAsync(
                pdf,
                BenchSheet.Make(tool, input, head, new SheetOptions(paperSize, words.Language, display), taken)!,
                words,
                cancellation
            );
        }

        if (parsed.GetValue(json))
        {
            terminal.Output.WriteLine(
                JsonSerializer.Serialize(BenchDto.Of(tool, input, answer, taken, words, display), PlainJson.Bench.BenchDto)
            );
        }
        else
        {
            new BenchText(terminal.Output, words, display).Write(tool, input, answer, known.Where(k => Stands(k, input)), taken);
        }

        return ExitStatus.Done;
    }

    // Figures and choices that nobody typed and no machine says.
    private HashSet<string> Taken(ParseResult parsed, BenchInput input, IReadOnlyList<MachineFigure> known)
    {
        var taken = BenchShown.Usual(tool, input).Select(f => f.Id).ToHashSet(StringComparer.Ordinal);
        taken.ExceptWith(fields.Where(f => parsed.GetValue(f.Option) is not null).Select(f => f.Field.Id));
        taken.ExceptWith(known.Where(k => Stands(k, input)).Select(k => k.Field));
        taken.UnionWith(
            choices
                .Where(c =>
                    parsed.GetValue(c.Option) is null && tool.Asks(c.Choice, input) && input.FindChoice(c.Choice.Id) == c.Choice.Usual
                )
                .Select(c => c.Choice.Id)
        );
        return taken;
    }

    // What was typed stands in front of what the machine says, and that in front of what is usual.
    private BenchInput Typed(ParseResult parsed, Machine? machine, IReadOnlyList<MachineFigure> known)
    {
        var input = known.Aggregate(BenchInput.UsualOf(tool), (i, k) => i.And(k.Field, k.Value));
        if (machine is not null)
        {
            input = MachineFigures.Choices(tool, machine).Aggregate(input, (i, c) => i.And(c.Key, c.Value));
        }

        foreach (var (field, option) in fields)
        {
            if (parsed.GetValue(option) is { } text)
            {
                input = input.And(field.Id, Read(text, field, option.Name));
            }
        }

        foreach (var (choice, option) in choices)
        {
            if (parsed.GetValue(option) is { } text)
            {
                input = input.And(choice.Id, CommandLine.Among(words, option.Name, text, choice.Options));
            }
        }

        return input;
    }

    private (string File, string By)? Pinning(ParseResult parsed) =>
        (parsed.GetValue(pin), parsed.GetValue(machineFile), parsed.GetValue(by), parsed.GetValue(pinTo)) switch
        {
            (false, _, _, null) => null,
            (true, not null, { Length: > 0 } who, { } file) => (file, who),
            _ => throw new UsageException(words["cli.error.pin-needs"]),
        };

    private static bool Stands(MachineFigure known, BenchInput input) => input.Find(known.Field) == known.Value;

    // A bare number is in the unit the help names; a plain number needs none.
    private Amount Read(string text, BenchField field, string option) =>
        AmountText.TryParse(text, field.Unit.Dimension, out var amount, out var problem, assumed: field.Unit)
            ? amount
            : throw new UsageException(
                words.Say(
                    "cli.error.option",
                    ("option", option),
                    (
                        "problem",
                        words.Say(
                            problem!.Key,
                            ("text", problem.Text),
                            ("example", BenchText.Plain(words, field.Usual ?? field.High, field.Unit))
                        )
                    )
                )
            );
}
