using System.CommandLine;
using System.Text.Json;
using Rinsewright.Contracts.Language;
using Rinsewright.Engine.Knowledge;
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
    private readonly Option<string?> machine = Options.One("--machine", "TYPE");
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
        machine.Description = words["cli.option.ware-machine"];
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
        var type = parsed.GetValue(machine);
        var types = trade.Anatomy.MachineTypes.Select(m => m.Id).ToList();
        return type is null || types.Contains(type, StringComparer.Ordinal)
            ? new WareSetting(type, parsed.GetValue(sanitizing), parsed.GetValue(who) ?? "technician")
            : throw new UsageException(CommandLine.NotAmong(words, machine.Name, type, types));
    }

    // What was answered is past, and the order between found and not found is not told: looks and readings come first, and each test that puts something on the piece had its rinse before the next.
    // After the last of those the rinse has to be said.
    private WareInquiry Answered(WareInquiry inquiry, ParseResult parsed)
    {
        var answers = (parsed.GetValue(found) ?? [])
            .Select(t => (Test: t, Found: true))
            .Concat((parsed.GetValue(notFound) ?? []).Select(t => (Test: t, Found: false)))
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

        return parsed.GetValue(rinsed) && inquiry.Trail.OnPiece.Count > 0 ? inquiry.Rinse() : inquiry;
    }

    private string Known(TradeKnowledge trade, string typed)
    {
        var id = typed.StartsWith(Prefix, StringComparison.Ordinal) ? typed : Prefix + typed;
        return trade.WareResults.Any(r => r.Id == id)
            ? id
            : throw new UsageException(
                words.Say(
                    "cli.ware.problem.picture",
                    ("picture", typed),
                    ("known", string.Join(", ", trade.WareResults.Select(r => r.Id[Prefix.Length..])))
                )
            );
    }
}
