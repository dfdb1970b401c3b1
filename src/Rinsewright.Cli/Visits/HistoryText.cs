using Rinsewright.Contracts;
using Rinsewright.Contracts.Language;
using Rinsewright.Contracts.Visits;
using Rinsewright.Drawing.History;
using Rinsewright.Engine.Visits;
using Rinsewright.Engine.Visits.History;
using Rinsewright.Files.Sheets;

namespace Rinsewright.Cli.Visits;

/// <summary>A machine history in words.</summary>
internal sealed class HistoryText(TextWriter writer, HistoryWords said)
{
    private readonly TextPage page = new(writer);

    private Words Words => said.Words;

    public void Write(HistoryPaper paper, IReadOnlyList<ReadingSeries> series, IReadOnlyList<ReadingSeries> crew)
    {
        var history = paper.History;
        var last = history.Last!;
        page.Paragraph(
            $"{paper.Machine}, {paper.Kitchen}. {Words.Say("history.sheet.span-value", ("count", Words.Number(history.Visits.Count, 0)), ("from", Words.Day(history.Visits[0].Visit.On)), ("to", Words.Day(last.Visit.On)))}"
        );
        page.Line();
        page.Paragraph($"{Words["history.state"]}: {Words[Wire.WordKey(last.Result.Standing)]}");
        List(
            "history.open",
            history.Findings.Where(f => f.Open).Select(f => $"{said.Name(f)}, {said.Span(f, history)}"),
            "history.open-none"
        );
        List("history.owed", said.Owed(history), "history.owed-none");
        List(
            "history.drifts",
            history.Drifting.Where(series.Contains).Select(s => $"{said.Name(s)}: {said.Trend(s)} {said.Forecast(s)}".TrimEnd()),
            history.Series.Any(s => s.Trend.Kind != TrendKind.TooFew) ? "history.drifts-none" : "history.drifts-unknown"
        );
        List(
            "history.changed",
            history.ChangedSinceLast.Select(c => Words.Say(said.InUnits(c))),
            history.Visits.Count > 1 ? "history.changed-none" : "history.changed-first"
        );
        Write("history.trends", series);
        if (crew.Count > 0)
        {
            Write("history.crew", crew);
            page.Line();
            page.Paragraph(Words["history.crew-note"], 2, 2);
        }

        Items("history.closed", history.Findings.Where(f => !f.Open).Select(f => $"{said.Name(f)}, {said.Span(f, history)}"));
        Items(
            "history.parts",
            history.Lives.Select(l =>
                $"{l.What}, {Words.Day(history.Visits[l.Fitted].Visit.On)}: {Words.Say(l.Replaced is null ? "history.in-now" : "history.lasted", ("days", Words.Number(l.Days, 0)))}"
            )
        );
        Items(
            "history.proofs",
            history.Proofs.Select(p =>
                $"{Words.Day(DateOnly.FromDateTime(p.At.DateTime))} {(p.Moment is { } m ? Words[Wire.WordKey(m)] : "")}: {Words[Wire.WordKey(p.Outcome)]}"
            )
        );
        page.Line();
        page.Paragraph(Words["history.claim"]);
    }

    private void Write(string key, IReadOnlyList<ReadingSeries> series)
    {
        page.Line();
        page.Line(Words[key]);
        foreach (var s in series)
        {
            page.Line();
            page.Paragraph(
                string.Join(' ', said.Earlier(s).Prepend(said.Name(s) + ".").Append($"{said.Trend(s)} {said.Forecast(s)}".TrimEnd())),
                2,
                2
            );
            var events = s
                .Points.Select(p => (p.At, Text: said.Point(p)))
                .Concat(s.Breaks.Select(b => (b.At, Text: $"{Words.Day(DateOnly.FromDateTime(b.At.DateTime))}: {said.Break(b)}")))
                .OrderBy(e => e.At);
            foreach (var (_, text) in events)
            {
                page.Paragraph("- " + text, 4, 2);
            }

            foreach (var step in s.Steps)
            {
                page.Paragraph("- " + said.Step(s, step), 4, 2);
            }
        }
    }

    private void List(string key, IEnumerable<string> items, string none)
    {
        List<string> all = [.. items];
        Items(key, all.Count > 0 ? all : [Words[none]]);
    }

    private void Items(string key, IEnumerable<string> items)
    {
        List<string> all = [.. items];
        if (all.Count == 0)
        {
            return;
        }

        page.Line();
        page.Line(Words[key]);
        foreach (var item in all)
        {
            page.Paragraph("- " + item, 2, 2);
        }
    }
}
