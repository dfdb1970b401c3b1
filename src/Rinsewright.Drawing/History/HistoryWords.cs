using System.Globalization;
using Rinsewright.Contracts;
using Rinsewright.Contracts.Language;
using Rinsewright.Contracts.Records;
using Rinsewright.Contracts.Visits;
using Rinsewright.Engine.Quantities;
using Rinsewright.Engine.Records;
using Rinsewright.Engine.Sanitization;
using Rinsewright.Engine.Visits;
using Rinsewright.Engine.Visits.History;

namespace Rinsewright.Drawing.History;

/// <summary>What a machine history says in words, in one language and one system of units: the same on screen, on paper and on the command line.</summary>
/// <param name="words">Words of the language.</param>
/// <param name="units">Units shown.</param>
public sealed class HistoryWords(Words words, UnitDisplay units)
{
    private const double Month = 30;

    /// <summary>Words of the language.</summary>
    public Words Words => words;

    /// <summary>Units shown.</summary>
    public UnitDisplay Units => units;

    /// <summary>Unit in which a series is shown.</summary>
    public Unit UnitOf(ReadingSeries series) => Shown.UnitFor(series.Unit, units);

    /// <summary>A figure of a series in the unit shown.</summary>
    public static double In(Amount amount, Unit shown) => amount.Unit == shown ? amount.Value : amount.In(shown).Value;

    /// <summary>A difference in the unit of a series, in the unit shown.</summary>
    public static double Span(double difference, Unit unit, Unit shown) =>
        unit == shown ? difference : difference * unit.Numerator / unit.Denominator * shown.Denominator / shown.Numerator;

    /// <summary>What a series is of: the reading and the state of the machine.</summary>
    public string Name(ReadingSeries series)
    {
        var name = words.NameOfReading(series.Known, series.Kind);
        // Of the kitchen's own record of its water, not read at the machine.
        if (series.Place == MeasuringPoint.WaterSupply && VisitReadingKinds.Find(series.Kind)?.Point != MeasuringPoint.WaterSupply)
        {
            name = $"{name} ({words["history.kitchen-water"]})";
        }

        if (series.ByCrew)
        {
            name = $"{name} ({words["history.by-crew"]})";
        }

        return series.State == OperatingState.Unknown ? name : $"{name}, {words[Wire.WordKey(series.State)]}";
    }

    /// <summary>An amount as the unit is sensibly shown.</summary>
    public string Show(Amount amount)
    {
        var shown = Shown.UnitFor(amount.Unit, units);
        return words.Show(new AmountDto(Math.Round(In(amount, shown), shown.Digits), shown.Ucum));
    }

    /// <summary>Day of a point.</summary>
    public string Day(HistoryPoint point) => Day(DateOnly.FromDateTime(point.At.DateTime));

    private string Day(DateOnly day) => words.Day(day);

    /// <summary>How the readings move since the last change.</summary>
    public string Trend(ReadingSeries series) => Trend(series, series.Trend);

    /// <summary>How the readings of one run move.</summary>
    public string Trend(ReadingSeries series, SeriesTrend trend)
    {
        var key = Wire.WordKey(trend.Kind)["trend-kind.".Length..];
        return words.Say(
            $"history.trend.{key}",
            ("count", words.Number(trend.Count, 0)),
            ("needs", words.Number(trend.Needs, 0)),
            ("days", words.Number(Math.Round(trend.Days), 0)),
            ("rate", Rate(series, trend.PerDay)),
            ("slow", Rate(series, trend.Slowest)),
            ("fast", Rate(series, trend.Fastest))
        );
    }

    /// <summary>What drifted before it was mended, the earliest first.</summary>
    public IEnumerable<string> Earlier(ReadingSeries series) =>
        series
            .Segments.SkipLast(1)
            .Where(s => s.Trend.Drifts)
            .Select(s => words.Say("history.earlier", ("date", Day(series.Points[s.Points[^1]])), ("trend", Trend(series, s.Trend))));

    /// <summary>When a drift reaches its limit; null where nothing is told.</summary>
    public string? Forecast(ReadingSeries series)
    {
        if (series.Forecast is not { } forecast)
        {
            return null;
        }

        var key = Wire.WordKey(forecast.Kind)["forecast-kind.".Length..];
        return words.Say(
            $"history.forecast.{key}",
            ("limit", words.Say(forecast.Rule is null ? "history.band-end" : "history.limit-of", ("value", Show(forecast.Figure)))),
            ("from", forecast.Earliest is { } from ? Day(from) : ""),
            ("to", forecast.Latest is { } to ? Day(to) : ""),
            ("until", Day(forecast.Until))
        );
    }

    /// <summary>What was done between two runs.</summary>
    public string Break(SeriesBreak done)
    {
        var what = VisitWords.Capital(done.What);
        return done is { Before: { } before, After: { } after }
            ? words.Say("history.break-set", ("what", what), ("before", Show(before)), ("after", Show(after)))
            : what;
    }

    /// <summary>One point with everything that is known of it.</summary>
    public string Point(HistoryPoint point)
    {
        List<string> says =
        [
            $"{Day(point)} {Moment(point)}: {Show(point.Value)}{Off(point)}",
            .. (
                point.Status == ReadingStatus.NoLimit && point.Band == BandStanding.NoBand
                    ? (string[])[]
                    : [words[Wire.WordKey(point.Status)]]
            ),
        ];
        if (point.Count > 1)
        {
            says.Add(
                words.Say(
                    point.ByCrew ? "history.entries" : "history.racks",
                    ("count", words.Number(point.Count, 0)),
                    ("low", Show(point.Low)),
                    ("high", Show(point.High))
                )
            );
        }

        if (point.ByGauge && !point.ByCrew)
        {
            says.Add(words["history.by-gauge"]);
        }

        return string.Join(", ", says);
    }

    /// <summary>When or by whom a point was read: as found, as left, by the crew.</summary>
    public string Moment(HistoryPoint point) => words[point.ByCrew ? "history.by-crew" : Wire.WordKey(point.Moment)];

    /// <summary>What the instrument may be off, with its sign; empty where nobody knows.</summary>
    public string Off(HistoryPoint point)
    {
        var shown = Shown.UnitFor(point.Value.Unit, units);
        return point.Off is { } off ? $" ± {words.Number(Span(off, point.Value.Unit, shown), Math.Max(1, shown.Digits))}" : "";
    }

    /// <summary>The limits in force on the day of a point; empty for none.</summary>
    public string Limits(HistoryPoint point) =>
        string.Join(
            "; ",
            (
                (string?[])
                    [
                        point.LeastLimit is { } least ? words.Say("sheet.at-least", ("limit", Show(least.Figure))) : null,
                        point.MostLimit is { } most ? words.Say("sheet.at-most", ("limit", Show(most.Figure))) : null,
                    ]
            ).OfType<string>()
        );

    /// <summary>The machine's own band on the day of a point; empty for none.</summary>
    public string Band(HistoryPoint point)
    {
        if (point.Own is not { } own)
        {
            return "";
        }

        var shown = Shown.UnitFor(own.Low.Unit, units);
        return words.Say(
            "visit.sheet.range",
            ("low", words.Number(Math.Round(In(own.Low, shown), shown.Digits), shown.Digits)),
            ("high", Show(own.High))
        );
    }

    /// <summary>All a chart shows, in sentences: whoever cannot see it loses nothing.</summary>
    public string Describe(ReadingSeries series)
    {
        var points = series.Points;
        List<string> says = [.. Earlier(series), Trend(series)];
        if (Forecast(series) is { } forecast)
        {
            says.Add(forecast);
        }

        if (Limits(points[^1]) is { Length: > 0 } limits)
        {
            says.Add(words.Say("history.says-limit", ("limit", limits)));
        }

        if (Band(points[^1]) is { Length: > 0 } band)
        {
            says.Add(words.Say("history.says-band", ("band", band)));
        }

        says.AddRange(points.Select(p => Point(p) + "."));
        says.AddRange(
            series.Breaks.Select(b =>
                words.Say("history.says-break", ("date", Day(DateOnly.FromDateTime(b.At.DateTime))), ("what", Break(b)))
            )
        );
        says.AddRange(series.Steps.Select(s => Step(series, s)));
        return string.Join(' ', says);
    }

    /// <summary>A move that nothing on record explains.</summary>
    public string Step(ReadingSeries series, SeriesStep step)
    {
        var (from, to) = (series.Points[step.From], series.Points[step.To]);
        return words.Say("history.step", ("before", Show(from.Value)), ("date", Day(from)), ("now", Show(to.Value)), ("then", Day(to)));
    }

    /// <summary>Parts and tests that are owed, each in a line.</summary>
    public IEnumerable<string> Owed(MachineHistory history) =>
        [
            .. history.Owed.Select(o =>
                words.Say(
                    o.Expected is null ? "history.part-owed"
                        : o.Late ? "history.part-late"
                        : "history.part-expected",
                    ("count", words.Number(o.Count, 0)),
                    ("what", o.What),
                    ("where", words[Wire.WordKey(o.Where)]),
                    ("date", o.Expected is { } day ? Day(day) : "")
                ) + $" ({words.Say("history.since", ("date", Day(history.Visits[o.Since].Visit.On)), ("days", words.Number(o.Days, 0)))})"
            ),
            .. history
                .Declined.Where(d => d.MadeUp is null)
                .Select(d =>
                    words.Say("history.test-owed", ("area", words[Wire.WordKey(d.Area)]), ("why", d.Because))
                    + $" ({Day(history.Visits[d.Visit].Visit.On)})"
                ),
        ];

    /// <summary>A statement with its amounts in the units shown.</summary>
    public Statement InUnits(Statement statement) =>
        new(
            statement.Key,
            [
                .. statement.Values.Select(v =>
                    v.Value switch
                    {
                        Amount a when Shown.UnitFor(a.Unit, units) is var shown => new StatementValue(
                            v.Name,
                            new Amount(Math.Round(In(a, shown), shown.Digits), shown)
                        ),
                        Statement s => new StatementValue(v.Name, InUnits(s)),
                        _ => v,
                    }
                ),
            ]
        );

    /// <summary>What a finding is called; of a part with its state.</summary>
    public string Name(FindingHistory finding) =>
        VisitWords.Capital(finding.Name.In(words.Language)) + (finding.State is { } state ? $", {words[Wire.WordKey(state)]}" : "");

    /// <summary>From when to when something was open.</summary>
    public string Span(FindingHistory finding, MachineHistory history) =>
        finding.Closed is { } closed
            ? words.Say(
                "history.from-to",
                ("from", Day(history.Visits[finding.Opened].Visit.On)),
                ("to", Day(history.Visits[closed].Visit.On)),
                ("days", words.Number(finding.Days, 0))
            )
            : words.Say("history.since", ("date", Day(history.Visits[finding.Opened].Visit.On)), ("days", words.Number(finding.Days, 0)));

    private string Rate(ReadingSeries series, double? perDay)
    {
        if (perDay is not { } rate)
        {
            return "";
        }

        var shown = UnitOf(series);
        var month = Math.Abs(Span(rate, series.Unit, shown)) * Month;
        // Two figures that count: a slope is never known better.
        var digits = month > 0 ? Math.Clamp(1 - (int)Math.Floor(Math.Log10(month)), 0, 4) : 0;
        return $"{words.Number(Math.Round(month, digits), digits)}\u00a0{shown.Symbol}".TrimEnd('\u00a0');
    }
}
