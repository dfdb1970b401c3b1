using System.CommandLine;
using System.Text.Json;
using Rinsewright.Contracts;
using Rinsewright.Contracts.Language;
using Rinsewright.Contracts.Records;
using Rinsewright.Contracts.Sanitization;
using Rinsewright.Engine.Quantities;
using Rinsewright.Engine.Sanitization;

namespace Rinsewright.Cli.Sanitization;

/// <summary><c>rinsewright limits</c>: a rule set with its citations, or the list of those there are.</summary>
internal sealed class LimitsCommand
{
    private readonly Option<string?> rules = Options.Among("--rules", "ID", RuleSets.BuiltIn.Select(r => r.Id));
    private readonly Option<string?> rulesFile = Options.One("--rules-file", "FILE");
    private readonly Option<string?> machine = Options.Among("--machine", "TYPE", TradeWords.Shown(TradeWords.Machines));
    private readonly Option<string?> method = Options.Among("--method", "METHOD", TradeWords.Shown(TradeWords.Methods));
    private readonly Option<bool> list = Options.Flag("--list");
    private readonly Option<bool> json = Options.Flag("--json");
    private readonly Words words;
    private readonly Terminal terminal;

    private LimitsCommand(Words words, Terminal terminal)
    {
        this.words = words;
        this.terminal = terminal;
    }

    public static Command Make(Words words, Terminal terminal)
    {
        var limits = new LimitsCommand(words, terminal);
        var command = new DescribedCommand("limits", words);
        command.AddSection("rules", limits.rules, limits.rulesFile, limits.machine, limits.method, limits.list);
        command.AddSection("output", limits.json, Options.Among("--language", "en|es", Words.Languages));
        command.SetAction(limits.RunAsync);
        return command;
    }

    private async Task<int> RunAsync(ParseResult parsed, CancellationToken cancellation)
    {
        var page = new TextPage(terminal.Output);
        if (parsed.GetValue(list))
        {
            foreach (var set in RuleSets.BuiltIn)
            {
                page.Entry($"  {set.Id}", $"{set.Title} ({set.Jurisdiction})", 30);
            }

            return ExitStatus.Done;
        }

        var chosen = await ChosenAsync(parsed, cancellation);
        MachineType? onlyMachine = parsed.GetValue(machine) is { } m
            ? Wire.Parse<MachineType>(TradeWords.Find(TradeWords.Machines, m, machine.Name, words), machine.Name)
            : null;
        SanitizingMethod? onlyMethod = parsed.GetValue(method) is { } s
            ? Wire.Parse<SanitizingMethod>(TradeWords.Find(TradeWords.Methods, s, method.Name, words), method.Name)
            : null;
        chosen = chosen with
        {
            Limits =
            [
                .. chosen.Limits.Where(l =>
                    (onlyMachine is not { } x || l.Machines.Count == 0 || l.Machines.Contains(x))
                    && (onlyMethod is not { } y || l.Methods.Count == 0 || l.Methods.Contains(y))
                ),
            ],
            Sanitizers = [.. chosen.Sanitizers.Where(r => onlyMethod is null || r.Method == onlyMethod)],
            Contact = [.. chosen.Contact.Where(r => onlyMethod is null || r.Method == onlyMethod)],
        };
        if (parsed.GetValue(json))
        {
            terminal.Output.WriteLine(JsonSerializer.Serialize(Dto(chosen), PlainJson.Rules.RulesDto));
        }
        else
        {
            Write(page, chosen, onlyMachine is null, onlyMethod is null);
        }

        return ExitStatus.Done;
    }

    private async Task<RuleSet> ChosenAsync(ParseResult parsed, CancellationToken cancellation)
    {
        if (parsed.GetValue(rulesFile) is { } path)
        {
            return parsed.GetValue(rules) is null
                ? RuleSets.Parse(await InputFile.TextAsync(path, terminal, words, cancellation))
                : throw new UsageException(words.Say("cli.error.either", ("first", rules.Name), ("second", rulesFile.Name)));
        }

        var id = parsed.GetValue(rules) ?? RuleSets.DefaultId;
        return RuleSets.Find(id)
            ?? throw new UsageException(CommandLine.NotAmong(words, rules.Name, id, RuleSets.BuiltIn.Select(r => r.Id)));
    }

    private void Write(TextPage page, RuleSet set, bool everyMachine, bool everyMethod)
    {
        page.Line(set.Title);
        page.Paragraph($"{set.Id}. {set.Jurisdiction}. {set.Edition}.", 2, 2);
        page.Line();
        page.Line(words["cli.limits"]);
        foreach (var limit in set.Limits)
        {
            var applies = limit
                .Machines.Where(_ => everyMachine)
                .Select(m => words[Wire.WordKey(m)])
                .Concat(limit.Methods.Where(_ => everyMethod).Select(m => words[Wire.WordKey(m)]))
                .ToList();
            LimitText.Write(
                page,
                words,
                ProofReportMapping.Limit(limit),
                applies.Count > 0 ? $". {words.Say("cli.applies-to", ("list", string.Join("; ", applies)))}" : ""
            );
        }

        Section(page, "cli.sanitizers", set.Sanitizers.Select(r => (words[Wire.WordKey(r.Method)], Row(r))));
        Section(page, "cli.contact", set.Contact.Select(c => (words[Wire.WordKey(c.Method)], Contact(c))));
        Section(
            page,
            "cli.instruments",
            set.Instruments.Select(i =>
                (
                    words[$"cli.measures.{Wire.Name(i.Measures)}"],
                    words.Say($"cli.aspect.{Wire.Name(i.Aspect)}", ("most", Printed(i.Maximum))) + $"; {Show(i.Citation)}"
                )
            )
        );
        if (set.Remarks.Count > 0)
        {
            page.Line();
            page.Line(words["cli.remarks"]);
            foreach (var remark in set.Remarks)
            {
                page.Paragraph($"- {remark}", 2, 2);
            }
        }

        page.Line();
        page.Paragraph(words["cli.overridden"]);
    }

    private void Section(TextPage page, string title, IEnumerable<(string Name, string Text)> rows)
    {
        var all = rows.ToList();
        if (all.Count == 0)
        {
            return;
        }

        page.Line();
        page.Line(words[title]);
        foreach (var (name, text) in all)
        {
            page.Entry($"  {name}", text, 30);
        }
    }

    private string Row(SanitizerRow r)
    {
        List<string> parts =
        [
            r.Minimum is { } least
                ? r.Below is { } below
                    ? words.Say("cli.strength-range", ("least", words.Show(Wire.From(least))), ("below", words.Show(Wire.From(below))))
                    : words.Say("cli.strength-from", ("least", words.Show(Wire.From(least))))
                : words["cli.strength-by-label"],
        ];
        if (r.AcidityMaximum is { } ph)
        {
            parts.Add(words.Say("cli.ph-most", ("ph", words.Number(ph, 1))));
        }

        if (r.TemperatureMinimum.Count > 0)
        {
            parts.Add(words.Say("cli.temperature-least", ("temperature", Printed(r.TemperatureMinimum))));
        }

        if (r.HardnessMaximum.Count > 0)
        {
            parts.Add(words.Say("cli.hardness-most", ("hardness", Printed(r.HardnessMaximum))));
        }

        return $"{string.Join(", ", parts)}; {Show(r.Citation)}";
    }

    private string Contact(ContactTime c)
    {
        List<string> parts = [words.Show(Wire.From(c.Least))];
        if (c.Minimum is { } least)
        {
            parts.Add(words.Say("cli.strength-from", ("least", words.Show(Wire.From(least)))));
        }

        if (c.AcidityMaximum is { } ph)
        {
            parts.Add(words.Say("cli.ph-most", ("ph", words.Number(ph, 1))));
        }

        if (c.TemperatureMinimum.Count > 0)
        {
            parts.Add(words.Say("cli.temperature-least", ("temperature", Printed(c.TemperatureMinimum))));
        }

        return $"{string.Join(", ", parts)}; {Show(c.Citation)}";
    }

    private string Show(Engine.Records.Citation citation) => words.Show(Wire.From(citation));

    private string Printed(IReadOnlyList<Amount> printed) =>
        words.Show(Wire.From(printed[0])) + string.Concat(printed.Skip(1).Select(p => $" ({words.Show(Wire.From(p))})"));

    private static List<AmountDto> Amounts(IReadOnlyList<Amount> printed) => [.. printed.Select(Wire.From)];

    private static RulesDto Dto(RuleSet s) =>
        new(
            RulesDto.CurrentSchema,
            s.Id,
            s.Title,
            s.Jurisdiction,
            s.Edition,
            s.BasedOn,
            [
                .. s.Limits.Select(l => new ApplyingLimitDto(
                    ProofReportMapping.Limit(l),
                    [.. l.Machines.Select(Wire.Name)],
                    [.. l.Methods.Select(Wire.Name)]
                )),
            ],
            [
                .. s.Sanitizers.Select(r => new SanitizerRowDto(
                    Wire.Name(r.Method),
                    Wire.From(r.Minimum),
                    Wire.From(r.Below),
                    r.AcidityMaximum,
                    Amounts(r.TemperatureMinimum),
                    Amounts(r.HardnessMaximum),
                    Wire.From(r.Citation)
                )),
            ],
            [
                .. s.Contact.Select(c => new ContactTimeDto(
                    Wire.Name(c.Method),
                    Wire.From(c.Least),
                    Wire.From(c.Minimum),
                    c.AcidityMaximum,
                    Amounts(c.TemperatureMinimum),
                    Wire.From(c.Citation)
                )),
            ],
            [
                .. s.Instruments.Select(i => new InstrumentRuleDto(
                    Wire.Name(i.Measures),
                    Wire.Name(i.Aspect),
                    Amounts(i.Maximum),
                    Wire.From(i.Citation)
                )),
            ],
            s.Remarks
        );
}
