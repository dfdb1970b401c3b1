using System.Globalization;
using Rinsewright.Contracts;
using Rinsewright.Contracts.Language;
using Rinsewright.Contracts.Records;
using Rinsewright.Contracts.Sanitization;
using Rinsewright.Contracts.Visits;
using Rinsewright.Drawing;
using Rinsewright.Engine.Knowledge;
using Rinsewright.Engine.Quantities;
using Rinsewright.Engine.Records;
using Rinsewright.Engine.Sanitization;
using Rinsewright.Engine.Visits;

namespace Rinsewright.Files.Sheets;

/// <summary>Words and figures as the papers of a visit say them.</summary>
internal sealed class VisitSheetWords(VisitPaper paper, SheetOptions options)
{
    public Words Words { get; } = Words.For(options.Language);

    public UnitDisplay Units => options.Units;

    public string MachineName => paper.Visit.Machine.Name ?? Words[Wire.WordKey(paper.Visit.Machine.Kind)];

    public static StatusShape ShapeOf(VisitStanding standing) =>
        standing switch
        {
            VisitStanding.Sanitary => StatusShape.Circle,
            VisitStanding.Watch or VisitStanding.NotProved => StatusShape.Triangle,
            _ => StatusShape.Square,
        };

    public static StatusShape ShapeOf(ReadingStatus status) => ChartWords.ShapeOf(Wire.Name(status));

    public static StatusShape ShapeOf(AcceptanceStanding standing) =>
        standing switch
        {
            AcceptanceStanding.Passed => StatusShape.Circle,
            AcceptanceStanding.Failed => StatusShape.Square,
            AcceptanceStanding.Declined => StatusShape.Triangle,
            _ => StatusShape.Ring,
        };

    public static StatusShape ShapeOf(PartState state) =>
        state switch
        {
            PartState.Sound => StatusShape.Circle,
            PartState.Worn => StatusShape.Triangle,
            PartState.NotLookedAt => StatusShape.Ring,
            _ => StatusShape.Square,
        };

    public SheetModel Model(string titleKey, IReadOnlyList<SheetBlock> blocks)
    {
        var title = Words[titleKey];
        var date = Words.MomentAndZone(paper.Visit.Began);
        return new SheetModel(
            title,
            Words.Language == "es" ? "es-US" : "en-US",
            Words.Say("visit.sheet.subject", ("machine", MachineName), ("kitchen", paper.Document.Kitchen), ("date", date)),
            paper.Visit.Technician ?? "",
            string.Join(", ", ((string[])[MachineName, paper.Document.Kitchen]).Where(n => n.Length > 0)),
            date,
            Words["sheet.page"],
            blocks
        );
    }

    public string Word(Enum value) => Words[Wire.WordKey(value)];

    public string Capital(Enum value) => VisitWords.Capital(Word(value));

    public string In(Phrase phrase) => VisitWords.Capital(phrase.In(Words.Language));

    public string Say(Statement statement) => Words.Say(Turned(statement));

    public string Say(PlainLine line) => string.Join(" ", line.Parts.Select(Say));

    public string Show(Amount amount) => Words.Show(Wire.From(Turned(amount)));

    public string Bare(Amount amount)
    {
        var turned = Turned(amount);
        return Words.Number(turned.Value, turned.Unit.Digits);
    }

    public string Limit(Limit limit, Unit unit)
    {
        var shown = Shown.LimitFor(ProofReportMapping.Limit(limit), unit.Ucum, options.Units);
        return Words.Say(
            limit.Sense == LimitSense.Maximum ? "sheet.at-most" : "sheet.at-least",
            ("limit", Words.Show(shown with { Value = Math.Round(shown.Value, 1) }))
        );
    }

    public string Source(Limit limit)
    {
        var cited = Words.Show(Wire.From(limit.Citation));
        return limit.Force is LimitForce.Service or LimitForce.Standard ? $"{Word(limit.Force)}: {cited}" : cited;
    }

    public string Stated(string? text) => string.IsNullOrWhiteSpace(text) ? Words["sheet.not-stated"] : text;

    public string Name(JudgedReading line) => Words.Name(line);

    /// <summary>Value with instrument or strip and time; <i>not read</i> where it was not.</summary>
    public string Found(JudgedReading line)
    {
        if (line.Reading.Value is null)
        {
            return Words["sheet.not-read"];
        }

        List<string> with = [Value(line.Reading)];
        with.Add(How(line.Reading));
        if (line.Reading.At is { } at)
        {
            with.Add(Words.Clock(at));
        }

        return string.Join(", ", with);
    }

    /// <summary>Value alone; a label turned or not.</summary>
    public string Value(VisitReading reading) =>
        reading switch
        {
            { Value: null } => Words["sheet.not-read"],
            { Reached: true, Value: { } v } => Words.Say("sheet.label-turned", ("value", Show(v))),
            { Reached: false, Value: { } v } => Words.Say("sheet.label-not-turned", ("value", Show(v))),
            { Value: { } v } => Show(v),
        };

    /// <summary>Instrument with its uncertainty, strip with lot and expiry, or the method alone.</summary>
    public string How(VisitReading reading)
    {
        if (reading.Supply is { } name && paper.Visit.TestSupplies.TryGetValue(name, out var supply))
        {
            return supply.Lot is { } lot ? $"{name} ({lot})" : name;
        }

        return reading.Instrument is { } instrument && paper.Visit.Instruments.TryGetValue(instrument, out var known)
            ? known.Name + (known.Uncertainty is { } u ? $" ±{Show(u)}" : "")
            : Word(reading.Method);
    }

    public List<(string, string)> Facts() =>
        [
            (Words["sheet.kitchen"], Stated(paper.Document.Kitchen)),
            (Words["sheet.machine"], MachineName),
            (Words["visit.sheet.began"], Words.MomentAndZone(paper.Visit.Began)),
            (Words["visit.sheet.ended"], paper.Visit.Ended is { } ended ? Words.MomentAndZone(ended) : Words["sheet.not-stated"]),
            (Words["sheet.technician"], Stated(paper.Visit.Technician)),
            (Words["sheet.method"], Word(paper.Visit.Machine.Sanitizing)),
            (
                Words["visit.sheet.limits-from"],
                paper.Visit.Machine.Plate is null ? RulesName : Words.Say("visit.sheet.plate", ("rules", RulesName))
            ),
        ];

    private string RulesName =>
        Words.Say("sheet.rules-edition", ("title", Words.Cited(paper.Rules.Title)), ("edition", Words.Cited(paper.Rules.Edition)));

    // Converted figures are rounded as their unit is sensibly shown; figures as read stay as they were written.
    private Amount Turned(Amount amount)
    {
        var unit = Shown.UnitFor(amount.Unit, options.Units);
        return unit == amount.Unit ? amount : amount.In(unit) with { Value = Math.Round(amount.In(unit).Value, unit.Digits) };
    }

    private Statement Turned(Statement statement) =>
        new(
            statement.Key,
            [
                .. statement.Values.Select(v =>
                    v.Value switch
                    {
                        Amount a => new StatementValue(v.Name, Turned(a)),
                        Statement s => new StatementValue(v.Name, Turned(s)),
                        _ => v,
                    }
                ),
            ]
        );
}
