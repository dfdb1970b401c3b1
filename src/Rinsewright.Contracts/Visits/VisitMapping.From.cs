using Rinsewright.Contracts.Sanitization;
using Rinsewright.Engine.Sanitization;
using Rinsewright.Engine.Visits;

namespace Rinsewright.Contracts.Visits;

public static partial class VisitMapping
{
    /// <summary>A visit as it travels: units as they were typed.</summary>
    /// <param name="visit">The engine's visit.</param>
    /// <param name="id">Id of the document.</param>
    /// <param name="kitchen">Kitchen's name.</param>
    /// <param name="ruleSet">Id of the rule set in force.</param>
    /// <param name="ruleSetJson">The service's own set; null for a built-in one.</param>
    public static VisitDocument ToDocument(this Visit visit, Guid id, string kitchen, string ruleSet, string? ruleSetJson = null) =>
        new(id, VisitDocument.CurrentVersion, kitchen, VisitFile.MachineOf(visit.Machine), visit.Began)
        {
            Ended = visit.Ended,
            Technician = visit.Technician,
            RuleSet = ruleSet,
            RuleSetJson = ruleSetJson,
            Label = visit.Label is { } l ? From(l) : null,
            Complaint = visit.Complaint,
            Cause = visit.Cause is { } c ? new VisitCauseDto(c.Fault, Wire.Name(c.Known), Wire.Name(c.Owner)) : null,
            Instruments =
                visit.Instruments.Count > 0
                    ? visit.Instruments.ToDictionary(i => i.Key, i => Wire.From(i.Value), StringComparer.Ordinal)
                    : null,
            TestSupplies =
                visit.TestSupplies.Count > 0
                    ? visit.TestSupplies.ToDictionary(
                        s => s.Key,
                        s => new TestSupplyDto(s.Value.Tests is { } t ? Wire.Name(t) : null, s.Value.Lot, s.Value.Expires),
                        StringComparer.Ordinal
                    )
                    : null,
            Readings = Some(visit.Readings, From),
            Proofs = Some(visit.Proofs, From),
            Ware = Some(visit.Ware, w => new WareSeenDto(w.Result, w.Found, Wire.Name(w.Moment), w.Note)),
            CrewLogs = Some(visit.CrewLogs, From),
            Findings = Some(visit.Findings, f => new VisitFindingDto(f.Id, f.Found, Wire.Name(f.Moment), f.Note)),
            Parts = Some(
                visit.Parts,
                p => new PartLookDto(p.Part, Wire.Name(p.State), Wire.Name(p.Moment), p.Wear.Count > 0 ? p.Wear : null, p.Fault, p.Note)
            ),
            Photos = Some(visit.Photos, p => new VisitPhotoDto(p.Sha256, Wire.Name(p.Moment), p.Zone, p.Part, p.At)),
            Changes = Some(
                visit.Changes,
                c => new VisitChangeDto(
                    Wire.Name(c.Kind),
                    c.What,
                    c.Areas.Count > 0 ? [.. c.Areas.Select(Wire.Name)] : null,
                    c.Part,
                    Wire.From(c.Before),
                    Wire.From(c.After),
                    c.At
                )
            ),
            PartsUsed = Some(visit.PartsUsed, p => new PartUseDto(p.What, p.Count, Wire.Name(p.Where), p.Expected)),
            Supplies = Some(
                visit.Supplies,
                s => new SupplyCountDto(s.Product, s.Feeds is { } f ? Wire.Name(f) : null, s.Count, s.DaysLeft, s.Changed, s.Primed)
            ),
            Leaks = Some(visit.Leaks, l => new LeakLookDto(l.Dry, Wire.Name(l.Moment), l.Where, l.At)),
            Declined = Some(visit.Declined, d => new DeclinedDto(Wire.Name(d.Area), d.Because)),
            Training = Some(visit.Training, t => new TrainingDto(t.Topic, t.Names.Count > 0 ? t.Names : null, t.Shown)),
            Upkeep = Some(visit.Upkeep, u => new UpkeepDto(u.Interval, u.Last)),
            Earlier = Some(visit.Earlier, e => new EarlierReadingDto(e.Kind, Wire.From(e.Value), Wire.Name(e.State), e.On)),
            Signatures = Some(visit.Signatures, s => new VisitSignatureDto(Wire.Name(s.For), s.Name, s.At, s.Image, s.Strokes)),
        };

    private static VisitReadingDto From(VisitReading r) =>
        new(
            r.Kind,
            Wire.From(r.Value),
            Wire.Name(r.Moment),
            Wire.Name(r.State),
            Wire.Name(r.Method),
            r.Instrument,
            r.Supply,
            r.At,
            r.Reached,
            r.RacksPerHour,
            r.NotReadBecause
        );

    private static SanitizerLabelDto From(SanitizerLabel l) =>
        new(
            Wire.From(l.Minimum),
            Wire.From(l.Maximum),
            Wire.From(l.WaterHardnessMaximum),
            Wire.From(l.TemperatureMinimum),
            Wire.From(l.ContactTimeMinimum),
            Wire.From(l.AcidityMaximum)
        );

    private static IReadOnlyList<TOut>? Some<TIn, TOut>(IReadOnlyList<TIn> items, Func<TIn, TOut> map) =>
        items.Count > 0 ? [.. items.Select(map)] : null;
}
