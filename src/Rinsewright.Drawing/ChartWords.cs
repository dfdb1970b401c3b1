using System.Globalization;
using Rinsewright.Contracts.Language;
using Rinsewright.Contracts.Records;
using Rinsewright.Contracts.Sanitization;

namespace Rinsewright.Drawing;

/// <summary>What drawings say in words.</summary>
public static class ChartWords
{
    /// <summary>Shape of a status; the ring where there is none.</summary>
    public static StatusShape ShapeOf(string? status) =>
        status switch
        {
            "inRange" => StatusShape.Circle,
            "nearLimit" or "open" => StatusShape.Triangle,
            "outOfRange" => StatusShape.Square,
            _ => StatusShape.Ring,
        };

    /// <summary>Shape of an outcome.</summary>
    public static StatusShape ShapeOfOutcome(string outcome) =>
        outcome switch
        {
            "proven" => StatusShape.Circle,
            "undetermined" => StatusShape.Triangle,
            _ => StatusShape.Square,
        };

    /// <summary>A limit on its line, for example <c>plate, at least 160 °F</c>.</summary>
    public static string Limit(LimitDto limit, AmountDto shown, Words words) =>
        words.Say(
            limit.Sense == "maximum" ? "chart.at-most" : "chart.at-least",
            ("point", words["chart.point." + limit.Point]),
            ("limit", words.Show(new AmountDto(Math.Round(shown.Value, 1), shown.Unit)))
        );

    /// <summary>A marked stretch in words.</summary>
    public static string Mark(MarkDto mark, Words words) =>
        words.Say(
            "chart.mark." + mark.Kind,
            ("from", Seconds(mark.FromSeconds, words)),
            ("to", Seconds(mark.ToSeconds, words)),
            ("rows", words.Number(mark.Rows, 0)),
            ("reason", mark.Reason)
        );

    /// <summary>All that a pass chart shows, in sentences.</summary>
    public static string Describe(ProofReport report, PassDto pass, Words words, UnitDisplay units)
    {
        var peak = Rounded(Shown.In(pass.Peak, units));
        List<string> says =
        [
            pass is { Start: { } start, End: { } end }
                ? words.Say("chart.says-clock", ("from", Clock(start)), ("to", Clock(end)))
                : words.Say("chart.says-elapsed", ("from", Seconds(pass.StartSeconds, words)), ("to", Seconds(pass.EndSeconds, words))),
            words.Say("chart.says-peak", ("value", words.Show(peak)), ("after", Seconds(pass.PeakSeconds - pass.StartSeconds, words))),
            words.Say(
                "chart.says-dose",
                ("value", words.Show(new AmountDto(Math.Round(pass.HeatUnits.Value), "{HUE}"))),
                ("low", words.Number(Math.Round(pass.HeatUnits.Low), 0)),
                ("high", words.Number(Math.Round(pass.HeatUnits.High), 0))
            ),
        ];
        foreach (var check in pass.Checks.Where(c => c.Limit is not null))
        {
            var limit = Shown.LimitFor(check.Limit!, check.Value?.Unit ?? check.Limit!.Printed[0].Unit, units);
            says.Add(
                words.Say(
                    "chart.says-check",
                    ("limit", Limit(check.Limit!, limit, words)),
                    ("status", words["chart.status." + check.Status])
                )
            );
        }

        for (var i = 0; i < pass.Zones.Count; i++)
        {
            var zone = pass.Zones[i];
            says.Add(
                words.Say(
                    "chart.says-zone",
                    ("zone", Zone(zone.Name, i + 1, words)),
                    ("value", words.Show(Rounded(Shown.In(zone.Peak, units)))),
                    ("at", Seconds(zone.PeakSeconds - pass.StartSeconds, words))
                )
            );
        }

        says.Add(words.Say("chart.says-verdict", ("verdict", words["chart.outcome." + pass.Verdict])));
        return string.Join(' ', says);
    }

    /// <summary>Name of a zone; its number from 1 where the machine type does not name it.</summary>
    internal static string Zone(string? name, int number, Words words) =>
        name is null ? words.Say("chart.zone-number", ("number", words.Number(number, 0))) : words[name];

    /// <summary>A span of time in seconds, or in minutes and seconds from two minutes on.</summary>
    public static string Seconds(double seconds, Words words)
    {
        var whole = (long)Math.Round(seconds);
        return Math.Abs(seconds) < 120
            ? $"{words.Number(Math.Round(seconds, 1), 1)}\u00a0s"
            : string.Create(CultureInfo.InvariantCulture, $"{whole / 60}\u00a0min {whole % 60}\u00a0s");
    }

    internal static string Clock(DateTime at) => at.ToString("HH:mm:ss", CultureInfo.InvariantCulture);

    internal static AmountDto Rounded(AmountDto amount) => amount with { Value = Math.Round(amount.Value, 1) };
}
