using System.Globalization;
using Rinsewright.Contracts.Records;
using Rinsewright.Contracts.Sanitization;
using Rinsewright.Drawing;

namespace Rinsewright.Files.Sheets;

public sealed partial class ProofSheetContent
{
    private void AddPasses(List<SheetBlock> blocks)
    {
        if (report.DecidingPass() is not { } deciding)
        {
            if (report.Channels.Count > 0)
            {
                blocks.Add(new SheetHeading(2, words["sheet.passes"]));
                blocks.Add(new SheetParagraph(words["sheet.no-pass"], Bold: true));
            }

            return;
        }

        blocks.Add(
            new SheetHeading(2, words.Say("sheet.chart", ("number", Number(deciding.Number)), ("count", Number(report.Passes.Count))))
        );
        blocks.Add(
            new SheetFigure(
                ProofChart.Draw(report, deciding, ChartSize.Paper, words, options.Units),
                words["sheet.chart-caption"],
                [.. ChartSize.LowerPaper.Select(size => ProofChart.Draw(report, deciding, size, words, options.Units))]
            )
        );
        blocks.Add(new SheetHeading(2, words["sheet.passes"]));
        var channels = report.Passes.Select(p => p.Channel).Distinct(StringComparer.Ordinal).Count() > 1;
        blocks.Add(
            new SheetTable(
                words["sheet.passes"],
                [
                    new SheetColumn(words["sheet.pass"], channels ? 1.6 : 0.6),
                    new SheetColumn(words["sheet.start"], 1.3),
                    new SheetColumn(words["sheet.peak"], 1, Right: true),
                    new SheetColumn(words["sheet.dose"], 1.45, Right: true),
                    new SheetColumn(words["sheet.low-high"], 1.35, Right: true),
                    new SheetColumn(words["sheet.a0"], 0.7, Right: true),
                    new SheetColumn(words["sheet.result"], 1.5),
                ],
                [.. report.Passes.Select(p => PassRow(p, channels))]
            )
        );
    }

    private List<SheetCell> PassRow(PassDto pass, bool channels) =>
        [
            new(channels ? $"{Number(pass.Number)}, {pass.Channel}" : Number(pass.Number), Bold: true),
            new(
                pass.Start is { } start
                    ? words.Second(start)
                    : words.Say("sheet.after", ("time", ChartWords.Seconds(pass.StartSeconds, words)))
            ),
            new(Show(pass.Peak)),
            new(Number(pass.HeatUnits.Value)),
            new($"{Number(pass.HeatUnits.Low)} – {Number(pass.HeatUnits.High)}"),
            new(words.Number(pass.A0.Value, 1)),
            new(words["outcome." + Kebab(pass.Verdict)], ChartWords.ShapeOfOutcome(pass.Verdict), Bold: true),
        ];

    private void AddChecks(List<SheetBlock> blocks)
    {
        var deciding = report.DecidingPass();
        List<IReadOnlyList<SheetCell>> rows =
        [
            .. (deciding?.Checks ?? []).Select(c => CheckRow(c, deciding!.Number, deciding.Peak.Unit)),
            .. report.Checks.Select(c => CheckRow(c, null, null)),
        ];
        if (rows.Count == 0)
        {
            return;
        }

        blocks.Add(new SheetHeading(2, words["sheet.checks"]));
        blocks.Add(
            new SheetTable(
                words["sheet.checks"],
                [
                    new SheetColumn(words["sheet.status"], 1.25),
                    new SheetColumn(words["sheet.what"], 1.8),
                    new SheetColumn(words["sheet.value"], 2.3),
                    new SheetColumn(words["sheet.limit"], 1.3),
                    new SheetColumn(words["sheet.source"], 2),
                ],
                rows
            )
        );
        blocks.Add(new SheetParagraph(words["sheet.sources-note"], Small: true));
    }

    private List<SheetCell> CheckRow(CheckDto check, int? pass, string? unit)
    {
        var name = CheckName(check);
        return
        [
            new(words["reading-status." + Kebab(check.Status)], ChartWords.ShapeOf(check.Status), Bold: true),
            new(pass is { } n ? words.Say("sheet.in-pass", ("what", name), ("number", Number(n))) : name),
            new(Found(check)),
            new(check.Limit is { } limit ? LimitText(limit, check.Value?.Unit ?? unit) : Say(check.Says)),
            new(check.Limit is { } cited ? Source(cited) : ""),
        ];
    }

    private string CheckName(CheckDto check)
    {
        var key = "sheet.check." + check.Id;
        var own = words[key];
        return own != $"[{key}]" ? own
            : (check.Reading?.Point ?? check.Limit?.Point) is { } point ? PointName(point)
            : check.Id;
    }

    private string Found(CheckDto check)
    {
        if (check.Value is not { } value || check.Status == "notRead")
        {
            return words["sheet.not-read"];
        }

        var shown = check.Reading?.Reached switch
        {
            true => words.Say("sheet.label-turned", ("value", Show(value))),
            false => words.Say("sheet.label-not-turned", ("value", Show(value))),
            null when check is { Low: { } low, High: { } high } => words.Say(
                "sheet.between",
                ("value", Show(value)),
                ("low", Bare(low)),
                ("high", Bare(high))
            ),
            _ => Show(value),
        };
        List<string> with = [shown];
        if (check.Reading is { } reading)
        {
            var instrument = reading.Instrument?.Name ?? words["reading-method." + Kebab(reading.Method)];
            var uncertainty = reading.Instrument?.Uncertainty is { } u ? $" ±{Show(u)}" : "";
            with.Add(instrument + uncertainty);
            if (reading.At is { } at)
            {
                with.Add(words.Moment(at));
            }
        }

        return string.Join(", ", with);
    }

    private string Bare(AmountDto amount)
    {
        var shown = Rounded(amount);
        return words.Number(shown.Value, Engine.Quantities.Units.Find(shown.Unit)?.Digits ?? 1);
    }

    private string LimitText(LimitDto limit, string? unit)
    {
        var shown = Shown.LimitFor(limit, unit ?? limit.Printed[0].Unit, options.Units);
        var text = words.Show(shown with { Value = Math.Round(shown.Value, 1) });
        return words.Say(limit.Sense == "maximum" ? "sheet.at-most" : "sheet.at-least", ("limit", text));
    }

    private string Source(LimitDto limit)
    {
        var cited = words.Show(limit.Citation);
        return limit.Force is "dataPlate" or "service" or "standard" ? $"{words["limit-force." + Kebab(limit.Force)]}: {cited}" : cited;
    }
}
