using System.Globalization;
using Rinsewright.Contracts.Visits;
using Rinsewright.Engine.Quantities;
using Rinsewright.Engine.Visits;

namespace Rinsewright.Files.Sheets;

/// <summary>The crew's logs that were looked through: what they say, and what was copied.</summary>
internal sealed class VisitCrewLogTable(VisitPaper paper, VisitSheetWords said)
{
    /// <summary>Heading, then each log with its table; nothing where none was looked through.</summary>
    public IEnumerable<SheetBlock> Blocks()
    {
        var logs = paper.Result.CrewLogs.Where(l => l.Log.LookedThrough).ToList();
        if (logs.Count == 0)
        {
            yield break;
        }

        yield return new SheetHeading(2, said.Words["visit.sheet.crew-log"]);
        foreach (var log in logs)
        {
            yield return new SheetParagraph(Name(log), Bold: true);
            yield return new SheetList([.. log.Says.Select(said.Say)]);
            yield return Table(log);
        }
    }

    private string Name(JudgedCrewLog judged) =>
        said.Words.Say(
            "visit.sheet.crew-log-of",
            ("reading", said.Words.NameOfReading(judged.Known, judged.Log.Kind)),
            ("from", said.Words.Day(judged.Log.From)),
            ("until", said.Words.Day(judged.Log.Until))
        );

    private SheetTable Table(JudgedCrewLog judged)
    {
        var (words, log) = (said.Words, judged.Log);
        var written = log.Looked.ToDictionary(e => (e.On, e.Shift), e => said.Show(new Amount(e.Value, log.Unit)));
        foreach (var unread in log.LookedUnread)
        {
            written[(unread.On, unread.Shift)] = $"“{unread.Text}”";
        }

        var counts = log.Counts;
        return new SheetTable(
            Name(judged),
            [
                new SheetColumn(words["visit.sheet.crew-log-day"], 2),
                .. Enumerable
                    .Range(1, log.ShiftsPerDay)
                    .Select(shift => new SheetColumn(
                        words.Say("visit.sheet.crew-log-shift", ("shift", shift.ToString(CultureInfo.InvariantCulture))),
                        1,
                        true
                    )),
            ],
            [
                .. Enumerable
                    .Range(0, log.Days)
                    .Select(log.From.AddDays)
                    .Where(day => counts is { } c && day >= c.First && day <= c.Last)
                    .Select(day =>
                        (IReadOnlyList<SheetCell>)
                            [
                                new SheetCell(
                                    said.Words.Day(day) + (log.Closed.Contains(day) ? $" ({words["visit.sheet.crew-log-closed"]})" : "")
                                ),
                                .. Enumerable
                                    .Range(1, log.ShiftsPerDay)
                                    .Select(shift => new SheetCell(
                                        written.GetValueOrDefault((day, shift)) ?? (log.Closed.Contains(day) ? "" : "–")
                                    )),
                            ]
                    ),
            ]
        );
    }
}
