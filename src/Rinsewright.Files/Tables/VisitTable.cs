using System.Text;
using Rinsewright.Contracts;
using Rinsewright.Contracts.Records;
using Rinsewright.Contracts.Visits;
using Rinsewright.Engine.Quantities;

namespace Rinsewright.Files.Tables;

/// <summary>
/// Visits as tables for a spreadsheet (CSV), each row with the id of its visit, kitchen, machine and day: the visits themselves, their readings, findings and parts, and the follow-ups of kitchens. Values
/// stand in the unit they were typed in, ids and words of enumerations as in the visit's record. Heads are English, as those of <see cref="KitchenTable"/> are written.
/// </summary>
public sealed class VisitTable
{
    private static readonly string[] Place = ["visit", "kitchen", "machine", "date"];
    private readonly StringBuilder visits = CsvText.Headed([
        .. Place,
        "began",
        "ended",
        "technician",
        "rule set",
        "complaint",
        "cause",
        "cause known",
        "standing",
        "next visit",
    ]);
    private readonly StringBuilder readings = CsvText.Headed([
        .. Place,
        "reading",
        "moment",
        "state",
        "value",
        "unit",
        "label turned",
        "method",
        "instrument",
        "strip or label",
        "time",
        "racks per hour",
        "not read because",
    ]);
    private readonly StringBuilder findings = CsvText.Headed([.. Place, "finding", "found", "moment", "note"]);
    private readonly StringBuilder parts = CsvText.Headed([.. Place, "part", "count", "where", "expected"]);
    private readonly StringBuilder followUps = CsvText.Headed(["kitchen", "what", "due", "take", "done"]);

    /// <summary>One row for a visit.</summary>
    public string Visits => visits.ToString();

    /// <summary>One row for a reading; one that was not read has its reason and no value.</summary>
    public string Readings => readings.ToString();

    /// <summary>One row for a symptom or check, found or not found.</summary>
    public string Findings => findings.ToString();

    /// <summary>One row for a part fitted, on site or ordered.</summary>
    public string Parts => parts.ToString();

    /// <summary>One row for a follow-up of a kitchen, done or not.</summary>
    public string FollowUps => followUps.ToString();

    /// <summary>Visits whose record could not be read: they have their row, with what a line of the list knows of them, and no others.</summary>
    public int Unread { get; private set; }

    /// <summary>Takes a visit in.</summary>
    /// <param name="visit">Document of a visit.</param>
    public void Add(FieldDocument visit)
    {
        VisitDocument? record = null;
        try
        {
            record = VisitFields.Read(visit);
        }
        catch (ContractException)
        {
            Unread++;
        }

        object?[] place = [visit.Id, record?.Kitchen, visit[VisitPaths.MachineName], record is null ? null : DayOf(record.Began)];
        CsvText.Row(
            visits,
            [
                .. place,
                record is null ? visit[VisitPaths.Began] : record.Began,
                record?.Ended,
                record?.Technician,
                record?.RuleSet,
                record?.Complaint,
                record?.Cause?.Fault,
                record?.Cause?.Known,
                visit[VisitPaths.Standing],
                visit[VisitPaths.Next],
            ]
        );
        foreach (var r in record?.Readings ?? [])
        {
            CsvText.Row(
                readings,
                [
                    .. place,
                    r.Kind,
                    r.Moment,
                    r.State,
                    r.Value?.Value,
                    r.Value is { } v ? Units.Find(v.Unit)?.Symbol ?? v.Unit : null,
                    r.Reached,
                    r.Method,
                    r.Instrument,
                    r.Supply,
                    r.At,
                    r.RacksPerHour,
                    r.NotReadBecause,
                ]
            );
        }

        foreach (var f in record?.Findings ?? [])
        {
            CsvText.Row(findings, [.. place, f.Id, f.Found, f.Moment, f.Note]);
        }

        foreach (var p in record?.PartsUsed ?? [])
        {
            CsvText.Row(parts, [.. place, p.What, p.Count, p.Where, p.Expected]);
        }
    }

    /// <summary>Takes the follow-ups of a kitchen in.</summary>
    /// <param name="kitchen">Document of a kitchen.</param>
    public void AddFollowUps(FieldDocument kitchen)
    {
        foreach (var item in kitchen.Items(KitchenPaths.FollowUps))
        {
            string At(string part) => kitchen[$"{KitchenPaths.FollowUps}.{item}.{part}"];
            CsvText.Row(followUps, [kitchen[KitchenPaths.Name], At("what"), At("due"), At("take"), At("done") == FieldDocument.Yes]);
        }
    }

    private static DateOnly DayOf(DateTimeOffset at) => DateOnly.FromDateTime(at.DateTime);
}
