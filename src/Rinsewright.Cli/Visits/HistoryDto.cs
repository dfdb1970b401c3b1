using System.Text.Json.Serialization;
using Rinsewright.Contracts;
using Rinsewright.Contracts.Records;
using Rinsewright.Drawing.History;
using Rinsewright.Engine.Visits;
using Rinsewright.Engine.Visits.History;
using Rinsewright.Files.Sheets;

namespace Rinsewright.Cli.Visits;

/// <summary>A point of a series.</summary>
internal sealed record HistoryPointDto(
    string? Visit,
    DateTimeOffset At,
    string Moment,
    AmountDto Value,
    int Count,
    AmountDto Low,
    AmountDto High,
    string Method,
    string? Instrument,
    double? Off,
    AmountDto? BandLow,
    AmountDto? BandHigh,
    AmountDto? LeastLimit,
    AmountDto? MostLimit,
    string Status,
    string Band
);

/// <summary>A trend; slopes a day in the unit of the series.</summary>
internal sealed record HistoryTrendDto(
    string Kind,
    int Count,
    int Needs,
    double Days,
    double? PerDay,
    double? Slowest,
    double? Fastest,
    double? Chance,
    IReadOnlyList<int> Points
);

/// <summary>A forecast.</summary>
internal sealed record HistoryForecastDto(
    string Kind,
    AmountDto Figure,
    string? Limit,
    DateOnly? Earliest,
    DateOnly? Latest,
    DateOnly Until
);

/// <summary>Something that was done.</summary>
internal sealed record HistoryBreakDto(string Visit, DateTimeOffset At, string What, string? Kind, AmountDto? Before, AmountDto? After);

/// <summary>A move that nothing explains.</summary>
internal sealed record HistoryStepDto(int From, int To);

/// <summary>A series.</summary>
internal sealed record HistorySeriesDto(
    string Kind,
    string State,
    string Place,
    string Name,
    string Unit,
    string Says,
    IReadOnlyList<HistoryPointDto> Points,
    IReadOnlyList<HistoryTrendDto> Segments,
    IReadOnlyList<HistoryBreakDto> Breaks,
    IReadOnlyList<HistoryStepDto> Steps,
    HistoryForecastDto? Forecast
);

/// <summary>Something found.</summary>
internal sealed record HistoryFindingDto(
    string Kind,
    string Id,
    string Name,
    string? State,
    string? Note,
    DateOnly Opened,
    DateOnly? Closed,
    int Days,
    bool Open
);

/// <summary>A part owed.</summary>
internal sealed record HistoryOwedDto(string What, int Count, string Where, DateOnly? Expected, DateOnly Since, int Days, bool Late);

/// <summary>How long a part was in.</summary>
internal sealed record HistoryLifeDto(string What, DateOnly Fitted, DateOnly? Replaced, int Days);

/// <summary>A declined part of an acceptance test.</summary>
internal sealed record HistoryDeclinedDto(DateOnly On, string Area, string Because, DateOnly? MadeUp);

/// <summary>A proof.</summary>
internal sealed record HistoryProofDto(DateTimeOffset At, string? Moment, string Outcome);

/// <summary>A visit.</summary>
internal sealed record HistoryVisitDto(string Id, DateTimeOffset Began, string Standing);

/// <summary>A machine history as JSON.</summary>
internal sealed record HistoryDto(
    string Schema,
    string Machine,
    string Kitchen,
    DateOnly Today,
    IReadOnlyList<HistoryVisitDto> Visits,
    IReadOnlyList<SaidDto> ChangedSinceLast,
    IReadOnlyList<HistorySeriesDto> Series,
    IReadOnlyList<HistorySeriesDto> CrewLogs,
    IReadOnlyList<HistoryFindingDto> Findings,
    IReadOnlyList<HistoryOwedDto> Owed,
    IReadOnlyList<HistoryLifeDto> Parts,
    IReadOnlyList<HistoryDeclinedDto> Declined,
    IReadOnlyList<HistoryProofDto> Proofs
)
{
    public const string CurrentSchema = "rinsewright.machine-history/1";

    public static HistoryDto Of(
        HistoryPaper paper,
        IReadOnlyList<ReadingSeries> series,
        IReadOnlyList<ReadingSeries> crew,
        HistoryWords said
    )
    {
        var h = paper.History;
        DateOnly On(int visit) => h.Visits[visit].Visit.On;
        return new HistoryDto(
            CurrentSchema,
            paper.Machine,
            paper.Kitchen,
            h.Today,
            [.. h.Visits.Select(v => new HistoryVisitDto(v.Id, v.Visit.Began, Wire.Name(v.Result.Standing)))],
            [.. h.ChangedSinceLast.Select(c => new SaidDto(c.Key, Contracts.Visits.VisitWords.Say(said.Words, said.InUnits(c))))],
            [.. series.Select(s => SeriesOf(s, h, said))],
            [.. crew.Select(s => SeriesOf(s, h, said))],
            [
                .. h.Findings.Select(f => new HistoryFindingDto(
                    Wire.Name(f.Kind),
                    f.Id,
                    f.Name.In(said.Words.Language),
                    f.State is { } state ? Wire.Name(state) : null,
                    f.Note,
                    On(f.Opened),
                    f.Closed is { } closed ? On(closed) : null,
                    f.Days,
                    f.Open
                )),
            ],
            [.. h.Owed.Select(o => new HistoryOwedDto(o.What, o.Count, Wire.Name(o.Where), o.Expected, On(o.Since), o.Days, o.Late))],
            [.. h.Lives.Select(l => new HistoryLifeDto(l.What, On(l.Fitted), l.Replaced is { } r ? On(r) : null, l.Days))],
            [
                .. h.Declined.Select(d => new HistoryDeclinedDto(
                    On(d.Visit),
                    Wire.Name(d.Area),
                    d.Because,
                    d.MadeUp is { } made ? On(made) : null
                )),
            ],
            [.. h.Proofs.Select(p => new HistoryProofDto(p.At, p.Moment is { } m ? Wire.Name(m) : null, Wire.Name(p.Outcome)))]
        );
    }

    private static HistorySeriesDto SeriesOf(ReadingSeries s, MachineHistory h, HistoryWords said) =>
        new(
            s.Kind,
            Wire.Name(s.State),
            Wire.Name(s.Place),
            said.Name(s),
            s.Unit.Ucum,
            $"{said.Trend(s)} {said.Forecast(s)}".TrimEnd(),
            [
                .. s.Points.Select(p => new HistoryPointDto(
                    p.Visit is { } v ? h.Visits[v].Id : null,
                    p.At,
                    Wire.Name(p.Moment),
                    Wire.From(p.Value),
                    p.Count,
                    Wire.From(p.Low),
                    Wire.From(p.High),
                    Wire.Name(p.Method),
                    p.Instrument?.Name,
                    p.Off,
                    p.Own is { } low ? Wire.From(low.Low) : null,
                    p.Own is { } high ? Wire.From(high.High) : null,
                    p.LeastLimit is { } least ? Wire.From(least.Figure) : null,
                    p.MostLimit is { } most ? Wire.From(most.Figure) : null,
                    Wire.Name(p.Status),
                    Wire.Name(p.Band)
                )),
            ],
            [
                .. s.Segments.Select(x => new HistoryTrendDto(
                    Wire.Name(x.Trend.Kind),
                    x.Trend.Count,
                    x.Trend.Needs,
                    x.Trend.Days,
                    x.Trend.PerDay,
                    Finite(x.Trend.Slowest),
                    Finite(x.Trend.Fastest),
                    x.Trend.Chance,
                    x.Points
                )),
            ],
            [
                .. s.Breaks.Select(b => new HistoryBreakDto(
                    h.Visits[b.Visit].Id,
                    b.At,
                    b.What,
                    b.Kind is { } kind ? Wire.Name(kind) : null,
                    Wire.From(b.Before),
                    Wire.From(b.After)
                )),
            ],
            [.. s.Steps.Select(x => new HistoryStepDto(x.From, x.To))],
            s.Forecast is { } f
                ? new HistoryForecastDto(Wire.Name(f.Kind), Wire.From(f.Figure), f.Rule?.Id, f.Earliest, f.Latest, f.Until)
                : null
        );

    private static double? Finite(double? value) => value is { } v && double.IsFinite(v) ? v : null;
}

/// <summary>JSON of histories.</summary>
[JsonSourceGenerationOptions(
    PropertyNamingPolicy = JsonKnownNamingPolicy.CamelCase,
    DefaultIgnoreCondition = JsonIgnoreCondition.WhenWritingNull
)]
[JsonSerializable(typeof(HistoryDto))]
internal sealed partial class HistoriesJson : JsonSerializerContext;
