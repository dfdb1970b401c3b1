using System.CommandLine;
using System.Text;
using System.Text.Json;
using Rinsewright.Contracts;
using Rinsewright.Contracts.Language;
using Rinsewright.Engine.Bench;
using Rinsewright.Engine.Quantities;

namespace Rinsewright.Cli.Bench;

/// <summary><c>rinsewright bench TOOL</c>: one of the technician's sums. Each tool is a command of its own, with an option for each figure it asks for.</summary>
internal sealed class BenchCommand
{
    private readonly BenchTool tool;
    private readonly Words words;
    private readonly Terminal terminal;
    private readonly List<(BenchField Field, Option<string?> Option)> fields = [];
    private readonly List<(BenchChoice Choice, Option<string?> Option)> choices = [];
    private readonly Option<bool> json;

    private BenchCommand(BenchTool tool, Words words, Terminal terminal)
    {
        this.tool = tool;
        this.words = words;
        this.terminal = terminal;
        json = Options.Flag("--json");
        json.Description = words["cli.option.bench-json"];
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

        command.AddSection("output", json, Options.Among("--language", "en|es", Words.Languages));
        command.SetAction(Run);
        return command;
    }

    private string About(BenchField field)
    {
        var name = words[$"bench.field.{field.Id}"];
        return field.Usual is { } usual ? words.Say("cli.bench.usual", ("name", name), ("usual", BenchText.Plain(words, usual, field.Unit)))
            : field.Optional ? words.Say("cli.bench.optional", ("name", name), ("unit", field.Unit.Symbol))
            : words.Say("cli.bench.needed", ("name", name), ("unit", field.Unit.Symbol));
    }

    private int Run(ParseResult parsed)
    {
        var input = BenchInput.UsualOf(tool);
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
                input = choice.Options.Contains(text, StringComparer.Ordinal)
                    ? input.And(choice.Id, text)
                    : throw new UsageException(CommandLine.NotAmong(words, option.Name, text, choice.Options));
            }
        }

        var outcome = tool.Solve(input);
        if (outcome.Answer is not { } answer)
        {
            throw new UsageException(
                string.Join("\n  ", outcome.Problems.Select(p => $"{OptionOf(p.Field)}: {words.Say(Wire.From(p.Says))}"))
            );
        }

        if (parsed.GetValue(json))
        {
            terminal.Output.WriteLine(JsonSerializer.Serialize(BenchDto.Of(tool, input, answer, words), PlainJson.Bench.BenchDto));
        }
        else
        {
            new BenchText(terminal.Output, words).Write(tool, answer, tool.Sensitivities(input));
        }

        return ExitStatus.Done;
    }

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
