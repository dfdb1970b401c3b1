using System.Globalization;
using Rinsewright.Contracts.Language;
using Rinsewright.Contracts.Records;
using Rinsewright.Contracts.Sanitization;

namespace Rinsewright.Cli.Sanitization;

/// <summary>A report as plain text: the verdict first, then passes, checks, limits, decisions and rejected rows.</summary>
internal sealed class ProofText(TextWriter writer, Words words, bool machineGiven, bool working)
{
    private const int RejectedShown = 20;
    private readonly TextPage page = new(writer);

    public void Write(ProofReport report, bool first)
    {
        if (!first)
        {
            page.Line();
            page.Line(new string('=', 80));
        }

        Head(report);
        page.Line();
        page.Line(Outcome(report.Verdict).ToUpperInvariant());
        Sentences(report.Because);
        Sentences(report.WouldSettle, words["cli.would-settle"]);
        Passes(report);
        Checks(report);
        Limits(report);
        Decisions(report);
        Rejected(report);
        page.Line();
        page.Paragraph(words["cli.overridden"]);
    }

    private void Head(ProofReport report)
    {
        if (report.File is { } file)
        {
            page.Line(file);
            page.Paragraph(
                words.Say("cli.rows", ("rows", words.Number(report.Rows, 0)), ("refused", words.Number(report.RejectedCount, 0))),
                2
            );
            foreach (var channel in report.Channels)
            {
                page.Paragraph(Channel(channel), 2, 2);
                foreach (var note in channel.Notes)
                {
                    page.Paragraph(note, 4);
                }
            }
        }

        var terms = report.Terms;
        page.Paragraph(
            words.Say(
                machineGiven ? "cli.judged-by" : "cli.judged-by-assumed",
                ("machine", words[Key("machine-type", terms.Machine)]),
                ("method", words[Key("sanitizing-method", terms.Method)]),
                ("rules", words.Cited(terms.RuleSetTitle))
            ),
            report.File is null ? 0 : 2,
            2
        );
        if (report.File is not null)
        {
            page.Paragraph(
                words.Say(
                    terms.UncertaintyStated ? "cli.uncertainty-stated" : "cli.uncertainty-assumed",
                    ("uncertainty", words.Show(terms.UncertaintyUsed)),
                    ("instrument", terms.Instrument?.Name ?? words["cli.instrument-unnamed"])
                ),
                2,
                2
            );
        }
    }

    private string Channel(ChannelDto channel) =>
        words.Say(
            "cli.channel",
            ("name", channel.Name),
            ("role", words[Key("measuring-point", channel.Role)]),
            ("samples", words.Number(channel.Samples, 0)),
            ("interval", channel.Interval is { } i ? words.Show(i) : words["cli.no-interval"]),
            ("start", channel.Start is { } s ? words.Second(s) : words["cli.no-clock"])
        );

    private void Passes(ProofReport report)
    {
        foreach (var channel in report.Passes.GroupBy(p => p.Channel, StringComparer.Ordinal))
        {
            var passes = channel.ToList();
            page.Line();
            page.Line(words.Say("cli.passes", ("channel", channel.Key)));
            string[] heads =
            [
                "#",
                words["cli.head.start"],
                words["cli.head.peak"],
                words["cli.head.hue"],
                words["cli.head.bounds"],
                "A0",
                words["cli.head.verdict"],
            ];
            page.Table(
                heads,
                [.. passes.Select(Row)],
                new HashSet<int> { 0, 2, 3, 4, 5 },
                i =>
                {
                    if (passes[i].Verdict != "proven" || working)
                    {
                        Sentences(passes[i].Because, indent: 6);
                    }

                    if (working)
                    {
                        Working(passes[i].Checks.SelectMany(c => c.Derivation), 8);
                    }
                }
            );
        }
    }

    private string[] Row(PassDto pass) =>
        [
            words.Number(pass.Number, 0),
            pass.Start is { } start
                ? start.ToString("MM-dd HH:mm:ss", CultureInfo.InvariantCulture)
                : TimeSpan.FromSeconds(Math.Round(pass.StartSeconds)).ToString("c", CultureInfo.InvariantCulture),
            words.Show(pass.Peak),
            words.Number(pass.HeatUnits.Value, 0),
            words.Say("cli.bounds", ("low", words.Number(pass.HeatUnits.Low, 0)), ("high", words.Number(pass.HeatUnits.High, 0))),
            words.Number(pass.A0.Value, 1),
            Outcome(pass.Verdict),
        ];

    private void Checks(ProofReport report)
    {
        if (report.Checks.Count == 0)
        {
            return;
        }

        page.Line();
        page.Line(words["cli.checks"]);
        foreach (var check in report.Checks)
        {
            page.Entry($"  {words[Key("reading-status", check.Status)]}", check.Because, 17);
            if (working)
            {
                Working(check.Derivation, 17);
            }
        }
    }

    private void Working(IEnumerable<StepDto> steps, int indent)
    {
        foreach (var step in steps)
        {
            // Figures and sources that the sentence itself names are not said twice.
            var result = step.Result is { } r && !step.Text.Contains(words.Show(r), StringComparison.Ordinal) ? $" = {words.Show(r)}" : "";
            var source =
                step.Citation is { } c && !step.Text.Contains(words.Show(c), StringComparison.Ordinal) ? $" [{words.Show(c)}]" : "";
            page.Paragraph($"{(step.Equation.Length > 0 ? step.Equation + " " : "")}{step.Text}{result}{source}", indent, 3);
        }
    }

    private void Limits(ProofReport report)
    {
        if (report.Limits.Count == 0)
        {
            return;
        }

        page.Line();
        page.Line(words["cli.limits"]);
        foreach (var limit in report.Limits)
        {
            LimitText.Write(page, words, limit);
        }
    }

    private void Decisions(ProofReport report)
    {
        if (report.Decisions.Count == 0)
        {
            return;
        }

        page.Line();
        page.Line(words["cli.decisions"]);
        foreach (var decision in report.Decisions)
        {
            var change =
                decision.Basis is not ("given" or "read") && DialectOptions.Overriding(decision.Id) is { } option
                    ? words.Say("cli.change", ("option", option))
                    : "";
            page.Entry(
                $"  {Name(decision.Id)}",
                $"{decision.Value} ({words["cli.basis." + decision.Basis]}). {decision.Because} {change}".TrimStart(),
                22
            );
        }
    }

    private void Rejected(ProofReport report)
    {
        if (report.RejectedCount == 0)
        {
            return;
        }

        page.Line();
        page.Line(words["cli.rejected"]);
        foreach (var row in report.Rejected.Take(RejectedShown))
        {
            page.Entry($"  {words.Say("cli.line", ("line", words.Number(row.Line, 0)))}", row.Reason, 16);
        }

        if (report.RejectedCount > RejectedShown)
        {
            page.Line(
                "  "
                    + words.Say(
                        "cli.more-rejected",
                        ("count", words.Number(report.RejectedCount - Math.Min(RejectedShown, report.Rejected.Count), 0))
                    )
            );
        }
    }

    private void Sentences(IReadOnlyList<string> sentences, string lead = "", int indent = 2)
    {
        foreach (var sentence in sentences)
        {
            page.Paragraph(lead.Length > 0 ? $"{lead} {sentence}" : sentence, indent, 2);
        }
    }

    // Columns are counted from 1, as in a spreadsheet and after --role.
    private string Name(string decision)
    {
        var at = decision.IndexOf('[', StringComparison.Ordinal);
        return at > 0 && int.TryParse(decision[(at + 1)..].TrimEnd(']'), NumberStyles.None, CultureInfo.InvariantCulture, out var column)
            ? words.Say("cli.decision-column", ("decision", decision[..at]), ("column", words.Number(column + 1, 0)))
            : decision;
    }

    private string Outcome(string verdict) => words[Key("outcome", verdict)];

    /// <summary>Word key of a camel-case name: <c>washTank</c> under <c>measuring-point</c>.</summary>
    internal static string Key(string kind, string name) =>
        $"{kind}.{string.Concat(name.Select(c => char.IsUpper(c) ? $"-{char.ToLowerInvariant(c)}" : c.ToString()))}";
}
