using System.Globalization;
using Rinsewright.Contracts.Language;
using Rinsewright.Contracts.Records;
using Rinsewright.Contracts.Sanitization;
using Rinsewright.Drawing;
using Rinsewright.Engine.Quantities;

namespace Rinsewright.Files.Sheets;

/// <summary>What the inspector's sheet says, block by block. Nothing here computes: it only words the report.</summary>
public sealed partial class ProofSheetContent
{
    private readonly ProofDocument document;
    private readonly ProofReport report;
    private readonly SheetOptions options;
    private readonly Words words;

    private ProofSheetContent(ProofDocument document, SheetOptions options)
    {
        this.document = document;
        this.options = options;
        report = document.Report;
        words = Words.For(options.Language);
    }

    /// <summary>The content of a proof's sheet.</summary>
    public static SheetModel For(ProofDocument document, SheetOptions options) => new ProofSheetContent(document, options).Build();

    private SheetModel Build()
    {
        List<SheetBlock> blocks =
        [
            new SheetHeading(1, words["sheet.title"]),
            Verdict(),
            new SheetHeading(2, words["sheet.facts"]),
            new SheetFacts(words["sheet.facts"], Facts()),
        ];
        if (document.Note is { Length: > 0 } note)
        {
            blocks.Add(new SheetParagraph($"{words["sheet.note"]}: {note}"));
        }

        // Signed where the verdict, the chart and the passes stand: on the first page, unless many passes fill it.
        AddPasses(blocks);
        if (report.Passes.Count > 0)
        {
            AddSignatures(blocks);
            AddChecks(blocks);
        }
        else
        {
            AddChecks(blocks);
            AddSignatures(blocks);
        }

        blocks.AddRange([
            new SheetHeading(2, words["sheet.assumptions"]),
            new SheetList(Assumptions()),
            new SheetHeading(2, words["sheet.file"]),
            new SheetList(File()),
            new SheetHeading(2, words["sheet.not-proof"]),
            new SheetList(Listed("sheet.not-proof.clean", "sheet.not-proof.passes", "sheet.not-proof.surface", "sheet.not-proof.override")),
            new SheetHeading(2, words["sheet.cautions"]),
            new SheetList(Listed("sheet.caution.scald", "sheet.caution.glass", "sheet.caution.chemicals", "sheet.caution.licensed")),
        ]);
        var date = words.MomentAndZone(document.At);
        return new SheetModel(
            words["sheet.title"],
            words.Language == "es" ? "es-US" : "en-US",
            words.Say("sheet.subject", ("machine", document.Machine), ("kitchen", document.Kitchen), ("date", date)),
            document.Technician,
            string.Join(", ", ((string[])[document.Machine, document.Kitchen]).Where(n => n.Length > 0)),
            date,
            words["sheet.page"],
            blocks
        );
    }

    private void AddSignatures(List<SheetBlock> blocks)
    {
        blocks.Add(new SheetHeading(2, words["sheet.signatures"]));
        blocks.Add(
            new SheetSignatures(
                [words["sheet.sign-technician"], words["sheet.sign-kitchen"]],
                words["sheet.sign-name"],
                words["sheet.sign-date"]
            )
        );
    }

    private SheetVerdict Verdict()
    {
        List<string> reasons = report.Reasons.Count > 0 ? [.. report.Reasons.Select(Say)] : [.. report.Because];
        // Whoever signs has to know that the place of the sensor is nobody's word.
        reasons.AddRange(report.Decisions.Where(DecisionWords.IsPlaceAssumed).Select(d => d.Says is { } says ? Say(says) : d.Because));
        if (report.Verdict != "proven")
        {
            var settles = report.Settles.Count > 0 ? report.Settles.Select(Say) : report.WouldSettle;
            reasons.AddRange(settles.Select(s => words.Say("sheet.would-settle", ("says", s))));
        }

        return new SheetVerdict(
            ChartWords.ShapeOfOutcome(report.Verdict),
            words["outcome." + Kebab(report.Verdict)],
            words["sheet.sentence." + report.Verdict],
            reasons
        );
    }

    private List<(string Name, string Value)> Facts()
    {
        var terms = report.Terms;
        var i = terms.Instrument;
        var points = report
            .Channels.Select(c => c.Role)
            .Concat(report.Checks.Where(c => c.Reading is not null).Select(c => c.Reading!.Point))
            .Distinct(StringComparer.Ordinal)
            .Select(PointName);
        var uncertainty = "±" + Show(terms.UncertaintyUsed);
        return
        [
            (words["sheet.kitchen"], Stated(document.Kitchen)),
            (words["sheet.machine"], Stated(document.Machine)),
            (words["sheet.at"], words.MomentAndZone(document.At)),
            (words["sheet.technician"], Stated(document.Technician)),
            (words["sheet.machine-type"], words["machine-type." + Kebab(terms.Machine)]),
            (words["sheet.method"], words["sanitizing-method." + Kebab(terms.Method)]),
            (
                words["sheet.instrument"],
                i is null ? words["sheet.not-stated"]
                : i.Serial is { } s ? words.Say("sheet.serial", ("name", i.Name), ("serial", s))
                : i.Name
            ),
            (
                words["sheet.uncertainty"],
                terms.UncertaintyStated ? uncertainty : words.Say("sheet.uncertainty-assumed", ("value", uncertainty))
            ),
            (words["sheet.calibrated"], Calibration(i)),
            (words["sheet.measured-at"], Stated(string.Join("; ", points))),
            (
                words["sheet.rules"],
                words.Say("sheet.rules-edition", ("title", words.Cited(terms.RuleSetTitle)), ("edition", words.Cited(terms.RuleSetEdition)))
            ),
        ];
    }

    private List<string> Assumptions()
    {
        var terms = report.Terms;
        var says = new List<string>();
        if (report.Channels.Count > 0)
        {
            says.Add(
                words.Say(terms.UncertaintyStated ? "sheet.assume-stated" : "sheet.assume-worst", ("value", Show(terms.UncertaintyUsed)))
            );
        }

        if (report.Passes.Count > 0)
        {
            says.Add(terms.Cap is { } cap ? words.Say("sheet.assume-cap", ("value", Show(cap))) : words["sheet.assume-no-cap"]);
            says.Add(terms.Floor is { } floor ? words.Say("sheet.assume-floor", ("value", Show(floor))) : words["sheet.assume-no-floor"]);
        }

        if (report.Channels is [{ Interval: { } interval }, ..])
        {
            says.Add(words.Say("sheet.assume-sampling", ("value", Show(interval))));
        }

        says.Add(words[document.Request.Plate is null ? "sheet.assume-no-plate" : "sheet.assume-plate"]);
        if (options.Units != UnitDisplay.AsRead)
        {
            says.Add(words.Say("sheet.converted", ("unit", options.Units == UnitDisplay.Us ? "°F, psi" : "°C, kPa")));
        }

        return says;
    }

    private List<string> File()
    {
        if (report.File is null)
        {
            return [words["sheet.no-file"], .. Hashes()];
        }

        List<string> says =
        [
            words.Say("sheet.file-line", ("name", report.File), ("rows", Number(report.Rows)), ("rejected", Number(report.RejectedCount))),
            .. Hashes(),
        ];
        if (report.RejectedCount > 0)
        {
            var lines = report
                .Rejected.Take(4)
                .Select(r =>
                    words.Say(
                        "sheet.rejected-line",
                        ("line", Number(r.Line)),
                        ("reason", (r.Says is null ? r.Reason : Say(r.Says)).TrimEnd('.'))
                    )
                );
            says.Add(words.Say("sheet.rejected", ("lines", Joined(lines, report.RejectedCount, 4))));
        }

        foreach (var channel in report.Channels)
        {
            says.AddRange(channel.Remarks.Count > 0 ? channel.Remarks.Select(Say) : channel.Notes);
            says.Add(
                channel.Marks.Count == 0
                    ? words["sheet.no-holes"]
                    : words.Say(
                        "sheet.holes",
                        ("channel", channel.Name),
                        ("list", Joined(channel.Marks.Take(5).Select(m => ChartWords.Mark(m, words)), channel.Marks.Count, 5, " "))
                    )
            );
        }

        if (report.Decisions.Count > 0)
        {
            says.Add(words.Say("sheet.decisions", ("list", string.Join("; ", report.Decisions.Select(Decided)) + ".")));
        }

        return says;
    }

    // In short: what was decided; the reason too where nothing in the file says so.
    private string Decided(DecisionDto decision)
    {
        var name = DecisionWords.Name(decision.Id, words);
        var value = DecisionWords.Value(decision.Id, decision.Value, words);
        var because = decision.Says is null ? decision.Because : Say(decision.Says);
        return decision.Basis is "assumed" or "open" ? $"{name}: {value} ({because.TrimEnd('.')})" : $"{name}: {value}";
    }

    private IEnumerable<string> Hashes() => document.Files.Select(f => words.Say("sheet.sha", ("sha", f.Sha256)));

    private string Calibration(InstrumentDto? i) =>
        i?.CalibratedOn is not { } on ? words["sheet.not-stated"]
        : i.CalibrationDue is { } due ? words.Say("sheet.calibration-due", ("date", words.Day(on)), ("due", words.Day(due)))
        : words.Day(on);

    private string Joined(IEnumerable<string> shown, long all, int most, string between = ", ")
    {
        var text = string.Join(between, shown);
        return all > most ? $"{text}{between}{words.Say("sheet.more", ("count", Number(all - most)))}" : text;
    }

    private List<string> Listed(params string[] keys) => [.. keys.Select(k => words[k])];

    private string Say(StatementDto statement) => words.Say(Converted(statement));

    private StatementDto Converted(StatementDto s) =>
        options.Units == UnitDisplay.AsRead
            ? s
            : s with
            {
                Values =
                [
                    .. s.Values.Select(v =>
                        v with
                        {
                            Amount = v.Amount is { } a ? Rounded(a) : null,
                            Statement = v.Statement is { } inner ? Converted(inner) : null,
                        }
                    ),
                ],
            };

    // Converted figures are rounded as their unit is sensibly shown; figures as read stay as they were written.
    private AmountDto Rounded(AmountDto amount)
    {
        var shown = Shown.In(amount, options.Units);
        return shown.Unit == amount.Unit ? amount : shown with { Value = Math.Round(shown.Value, Units.Find(shown.Unit)?.Digits ?? 1) };
    }

    private string Show(AmountDto amount) => words.Show(Rounded(amount));

    private string Number(double value) => words.Number(value, 0);

    private string Stated(string? text) => string.IsNullOrWhiteSpace(text) ? words["sheet.not-stated"] : text;

    private string PointName(string point) => words["measuring-point." + Kebab(point)];

    private static string Kebab(string camel) =>
        string.Concat(camel.Select(c => char.IsUpper(c) ? "-" + char.ToLowerInvariant(c) : c.ToString()));
}
