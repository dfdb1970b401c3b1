using System.CommandLine;
using System.Text.Json;
using Rinsewright.Contracts.Language;
using Rinsewright.Contracts.Machines;
using Rinsewright.Engine.Knowledge;
using Rinsewright.Engine.Visits;
using Rinsewright.Engine.Ware;
using Rinsewright.Knowledge;

namespace Rinsewright.Cli.Bench;

/// <summary><c>rinsewright bench ware PICTURE ...</c>: from what is seen on the ware to the next test, the causes and the cure.</summary>
internal sealed class WareCommand
{
    private const string Prefix = "wr-";
    private static readonly string[] Ways = ["hot", "chemical"];
    private static readonly string[] People = ["crew", "supervisor", "technician"];

    private readonly Words words;
    private readonly Terminal terminal;
    private readonly Argument<string[]> pictures = new("PICTURE") { Arity = ArgumentArity.ZeroOrMore };
    private readonly Option<string[]> found = Options.Many("--found", "TEST");
    private readonly Option<string[]> notFound = Options.Many("--not-found", "TEST");
    private readonly Option<bool> rinsed = Options.Flag("--rinsed");
    private readonly Option<string?> machine = Options.Among("--machine", "KIND", MachineFile.Kinds);
    private readonly Option<string?> sanitizing = Options.Among("--sanitizing", "hot|chemical", Ways);
    private readonly Option<string?> who = Options.Among("--who", "WORD", People);
    private readonly Option<bool> json = Options.Flag("--json");

    private WareCommand(Words words, Terminal terminal)
    {
        this.words = words;
        this.terminal = terminal;
        pictures.Description = words["cli.argument.picture"];
        found.Description = words["cli.option.ware-found"];
        notFound.Description = words["cli.option.ware-not-found"];
        rinsed.Description = words["cli.option.ware-rinsed"];
        machine.Description = words.Say("cli.option.ware-machine", ("kinds", string.Join(", ", MachineFile.Kinds)));
        sanitizing.Description = words["cli.option.ware-sanitizing"];
        who.Description = words["cli.option.ware-who"];
        json.Description = words["cli.option.ware-json"];
    }

    public static Command Make(Words words, Terminal terminal)
    {
        var ware = new WareCommand(words, terminal);
        var command = new DescribedCommand("ware", words, "bench") { ware.pictures };
        command.AddSection("answers", ware.found, ware.notFound, ware.rinsed);
        command.AddSection("machine", ware.machine, ware.sanitizing, ware.who);
        command.AddSection("output", ware.json, Options.Among("--language", "en|es", Words.Languages));
        command.SetAction(ware.Run);
        return command;
    }

    private int Run(ParseResult parsed)
    {
        var trade = BuiltInKnowledge.Trade;
        var seen = (parsed.GetValue(pictures) ?? []).Select(p => Known(trade, p)).ToList();
        if (seen.Count == 0)
        {
            new WareText(terminal.Output, words, trade).List();
            return ExitStatus.Done;
        }

        var inquiry = Answered(WareInquiry.Begin(trade, seen, Setting(trade, parsed)), parsed);
        if (parsed.GetValue(json))
        {
            terminal.Output.WriteLine(JsonSerializer.Serialize(WareDto.Of(inquiry, words), PlainJson.Ware.WareDto));
        }
        else
        {
            new WareText(terminal.Output, words, trade).Write(inquiry);
        }

        return ExitStatus.Done;
    }

    private WareSetting Setting(TradeKnowledge trade, ParseResult parsed)
    {
        var typed = parsed.GetValue(machine);
        var type = typed is not null && MachineFile.Kind(typed) is { } kind ? PartOrder.TypeOf(kind) : typed;
        return type is null || trade.Anatomy.MachineTypes.Any(m => m.Id == type)
            ? new WareSetting(type, parsed.GetValue(sanitizing), parsed.GetValue(who) ?? "technician")
            : throw new UsageException(CommandLine.NotAmong(words, machine.Name, type, MachineFile.Kinds));
    }

    // What was answered is past: looks and readings come first, then in the order typed each test that puts something on the piece, which had its rinse before the next.
    // After the last of those the rinse has to be said.
    private WareInquiry Answered(WareInquiry inquiry, ParseResult parsed)
    {
        var tokens = parsed.Tokens.Select(t => t.Value).ToList();
        var answers = tokens
            .Zip(tokens.Skip(1), (option, test) => (Option: option, Test: test))
            .Where(t => t.Option == found.Name || t.Option == notFound.Name)
            .Select(t => (t.Test, Found: t.Option == found.Name))
            .OrderBy(a => WareTrail.AgentsOf(inquiry.Knowledge, a.Test).Count > 0);
        foreach (var (test, yes) in answers)
        {
            inquiry = inquiry.Trail.OnPiece.Count > 0 ? inquiry.Rinse() : inquiry;
            inquiry = inquiry.Offers.Concat(inquiry.Deferred).Any(o => o.Finding == test)
                ? inquiry.Answer(test, yes)
                : throw new UsageException(
                    words.Say("cli.ware.problem.test", ("test", test), ("open", string.Join(", ", inquiry.Offers.Select(o => o.Finding))))
                );
        }

        return RinsedLast(inquiry, parsed) && inquiry.Trail.OnPiece.Count > 0 ? inquiry.Rinse() : inquiry;
    }

    // A rinse that was said before a test of today is not the rinse after it: the command line grows by one answer at a time.
    private bool RinsedLast(WareInquiry inquiry, ParseResult parsed)
    {
        var tokens = parsed.Tokens.Select(t => t.Value).ToList();
        return tokens.LastIndexOf(rinsed.Name) > tokens.FindLastIndex(t => WareTrail.AgentsOf(inquiry.Knowledge, t).Count > 0);
    }

    // The id, or words of the name: "film" where only one picture is called so.
    private string Known(TradeKnowledge trade, string typed)
    {
        var id = typed.StartsWith(Prefix, StringComparison.Ordinal) ? typed : Prefix + typed;
        if (trade.WareResults.Any(r => r.Id == id))
        {
            return id;
        }

        var named = trade
            .WareResults.Where(r => Words.Languages.Any(l => r.Name.In(l).Contains(typed, StringComparison.OrdinalIgnoreCase)))
            .Select(r => r.Id)
            .ToList();
        return named is [var one]
            ? one
            : throw new UsageException(
                words.Say(
                    named.Count > 0 ? "cli.ware.problem.pictures" : "cli.ware.problem.picture",
                    ("picture", typed),
                    (
                        "known",
                        string.Join(", ", (named.Count > 0 ? named : trade.WareResults.Select(r => r.Id)).Select(id => id[Prefix.Length..]))
                    )
                )
            );
    }
}
