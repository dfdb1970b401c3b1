using Rinsewright.Contracts;
using Rinsewright.Contracts.Language;
using Rinsewright.Contracts.Visits;
using Rinsewright.Engine.Visits;
using Rinsewright.Files.Sheets;

namespace Rinsewright.Cli.Visits;

/// <summary>What a visit amounts to, in words.</summary>
internal sealed class VisitText(TextWriter writer, Words words)
{
    private readonly TextPage page = new(writer);

    public void Write(VisitPaper paper)
    {
        var r = paper.Result;
        var machine = paper.Visit.Machine.Name ?? words[Wire.WordKey(paper.Visit.Machine.Kind)];
        page.Paragraph($"{machine}, {paper.Document.Kitchen}, {words.Day(paper.Visit.On)}");
        page.Line();
        page.Paragraph(
            $"{words[Wire.WordKey(r.Standing)]}. {words["visit.sentence." + Wire.WordKey(r.Standing)["visit-standing.".Length..]]}"
        );
        Each(r.Because.Select(b => words.Say(b)));
        List(
            "visit.sheet.stops",
            r.Stops.Select(s => $"{VisitWords.Capital(s.Name.In(words.Language))}. {words["visit.sheet.safe-again"]}: {words.SafeAgain(s)}")
        );
        page.Line();
        page.Paragraph($"{words["visit.sheet.was"]}: {words.Say(r.Was)}");
        page.Paragraph($"{words["visit.sheet.done"]}: {words.Say(r.Done)}");
        page.Paragraph($"{words["visit.sheet.do"]}: {words.Say(r.YouDo)}");
        List("visit.sheet.clashes", r.Clashes.Select(c => words.Say(c.Says)));
        List("visit.sheet.readings", r.Readings.Where(l => l.Reading.Value is not null).Select(Line));
        List("visit.sheet.crew-log", r.CrewLogs.SelectMany(l => l.Says.Select(l.Of)).Select(s => words.Say(s)));
        if (r.Acceptance.Any(a => a.Standing != AcceptanceStanding.NotNeeded))
        {
            List(
                "visit.sheet.acceptance",
                r.Acceptance.Select(a =>
                    $"{VisitWords.Capital(words[Wire.WordKey(a.Area)])}: {words[Wire.WordKey(a.Standing)]}. {words.Say(a.Because)}"
                )
            );
        }

        List("cli.visit.missing-blocks", r.Missing.Where(m => m.Blocks).Select(m => words.Say(m.Says)));
        List(
            "visit.sheet.missing",
            r.Missing.Where(m => !m.Blocks).Select(m => words.Say(m.Says)).Concat(r.Warnings.Select(w => words.Say(w)))
        );
        page.Line();
        page.Paragraph(
            $"{words["visit.sheet.next"]}: {words.Say("visit.sheet.next-line", ("date", words.Day(r.Next.On)), ("because", words.Say(r.Next.Because).TrimEnd('.')))}"
        );
    }

    private string Line(JudgedReading l)
    {
        var text =
            $"{words.Name(l)}, {words[Wire.WordKey(l.Reading.Moment)]}: {words.Show(Wire.From(l.Reading.Value!.Value))}, {words[Wire.WordKey(l.Status)]}";
        if (l.Own is null && l.Says.Count > 0)
        {
            return $"{text}. {string.Join(" ", l.Says.Select(s => words.Say(s)))}";
        }

        return l.Own is { } own
            ? $"{text} ({words["visit.sheet.band"].ToLowerInvariant()} {words.Say("visit.sheet.range", ("low", words.Number(own.Low.Value, own.Low.Unit.Digits)), ("high", words.Show(Wire.From(own.High))))})"
            : text;
    }

    private void List(string key, IEnumerable<string> items)
    {
        var all = items.ToList();
        if (all.Count > 0)
        {
            page.Line();
            page.Line(words[key]);
            Each(all);
        }
    }

    private void Each(IEnumerable<string> items)
    {
        foreach (var item in items)
        {
            page.Paragraph("- " + item, 2, 2);
        }
    }
}
