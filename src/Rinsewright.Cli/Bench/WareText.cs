using Rinsewright.Contracts.Knowledge;
using Rinsewright.Contracts.Language;
using Rinsewright.Engine.Knowledge;
using Rinsewright.Engine.Ware;

namespace Rinsewright.Cli.Bench;

/// <summary>Ware results as text: what is seen, what comes next with its cautions, causes with their cure, other tests, the usual mistake.</summary>
internal sealed class WareText(TextWriter writer, Words words, TradeKnowledge trade)
{
    private const int Causes = 5;
    private readonly TextPage page = new(writer);

    /// <summary>The pictures there are.</summary>
    public void List()
    {
        page.Line(words["cli.ware.pictures"]);
        foreach (var picture in trade.WareResults)
        {
            page.Entry($"  {picture.Id[3..]}", $"{T(picture.Name)}: {T(picture.Look)}", 20);
        }
    }

    /// <summary>How it stands.</summary>
    public void Write(WareInquiry inquiry)
    {
        foreach (var picture in inquiry.Pictures)
        {
            page.Paragraph($"{T(picture.Name)}: {T(picture.Look)}.");
        }

        page.Line();
        Next(inquiry);
        page.Line();
        page.Line(words["ware.causes"]);
        var shown = inquiry.Causes.Take(Causes).ToList();
        foreach (var cause in shown)
        {
            page.Entry($"  {Percent(cause.Share), 5}", T(cause.Fault.Name), 9);
        }

        page.Entry($"  {Percent(Math.Max(0, 1 - shown.Sum(c => c.Share))), 5}", words["ware.something-else"], 9);
        page.Paragraph(words["ware.causes-note"], 2);
        if (inquiry.Next.Kind != WareNextKind.Stop)
        {
            Others(inquiry);
        }

        page.Line();
        foreach (var picture in inquiry.Pictures)
        {
            page.Paragraph(words.Say("ware.mistake", ("mistake", T(picture.Mistake))));
        }

        page.Line();
        page.Paragraph(words["ware.claims"]);
    }

    private void Next(WareInquiry inquiry)
    {
        var next = inquiry.Next;
        switch (next.Kind)
        {
            case WareNextKind.Stop:
                page.Paragraph($"{words["ware.next.stop"]}: {T(next.Fault!.Name)}");
                Cautions(next.Fault.Safety, []);
                page.Paragraph(T(next.Fault.Cure) + ".", 2);
                break;
            case WareNextKind.Rinse:
                page.Paragraph($"{words["ware.next"]}: {words["ware.next.rinse"]}");
                Caution(T(trade.Common.Rinse.Caution));
                page.Paragraph(T(trade.Common.Rinse.Action) + ".", 2);
                page.Paragraph(words.Say("ware.rinsed-check", ("check", T(trade.Common.Rinse.Check))), 2);
                page.Paragraph(words["cli.ware.rinsed"], 2);
                break;
            case WareNextKind.Test:
                var offer = next.Offer!;
                page.Paragraph($"{words["ware.next"]}: {T(offer.Name)} ({offer.Finding})");
                Cautions([offer.Hazard], offer.Agents);
                page.Paragraph(T(offer.How) + ".", 2);
                page.Paragraph(words.Say("ware.found", ("what", T(offer.FoundMeans))), 2);
                page.Paragraph(words.Say("cli.ware.answer", ("test", offer.Finding)), 2);
                page.Paragraph(
                    words.Say(
                        "ware.facts",
                        ("minutes", words.Number(offer.Minutes, 1)),
                        ("machine", T(trade.Common.States.First(s => s.Id == offer.Machine).Name)),
                        ("who", Person(offer.Who))
                    )
                        + " "
                        + KnowledgeWords.Source(words, trade, offer.Src),
                    2
                );
                break;
            default:
                Cure(inquiry, next.Fault!);
                break;
        }
    }

    private void Cure(WareInquiry inquiry, TradeFault fault)
    {
        page.Paragraph(words.Say("ware.next.cure", ("fault", T(fault.Name))));
        var steps = inquiry.CureOf(fault);
        Cautions([.. steps.SelectMany(s => s.Hazards).Distinct(StringComparer.Ordinal)], [.. steps.SelectMany(s => s.Agents)]);
        foreach (var step in steps)
        {
            page.Paragraph($"- {T(step.Action)}.", 2, 2);
        }

        page.Paragraph(
            words.Say("ware.cure-facts", ("minutes", words.Number(fault.Minutes, 0)), ("who", Person(fault.Who)))
                + " "
                + KnowledgeWords.Source(words, trade, fault.Src),
            2
        );
    }

    private void Others(WareInquiry inquiry)
    {
        page.Line();
        page.Line(words["ware.others"]);
        foreach (var offer in inquiry.Offers)
        {
            page.Entry($"  {offer.Finding}", $"{T(offer.Name)}: {T(offer.FoundMeans)}", 32);
        }

        foreach (var offer in inquiry.Waiting)
        {
            page.Entry($"  {offer.Finding}", $"{T(offer.Name)} ({words["ware.waits"]})", 32);
        }

        foreach (var offer in inquiry.Deferred)
        {
            page.Entry($"  {offer.Finding}", $"{T(offer.Name)} ({words.Say("ware.licensed", ("who", Person(offer.Who)))})", 32);
        }
    }

    private void Cautions(IReadOnlyList<string> hazards, IReadOnlyList<string> agents)
    {
        foreach (var agent in trade.Common.Agents.Where(a => agents.Contains(a.Id, StringComparer.Ordinal)))
        {
            Caution(T(agent.Caution));
        }

        foreach (var hazard in hazards.Where(h => h != "none"))
        {
            Caution(T(trade.HazardOf(hazard).Caution));
        }
    }

    private void Caution(string text) => page.Paragraph(words.Say("cli.ware.caution", ("text", text)) + ".", 2, 2);

    private string Person(string id) => T(trade.Common.People.First(p => p.Id == id).Name);

    private string Percent(double share) => words.Say("ware.share", ("percent", words.Number(Math.Round(100 * share), 0)));

    private string T(Phrase phrase) => phrase.In(words.Language);
}
