using System.Text.Json.Serialization;
using Rinsewright.Contracts;
using Rinsewright.Contracts.Language;
using Rinsewright.Contracts.Records;
using Rinsewright.Contracts.Visits;
using Rinsewright.Engine.Visits;
using Rinsewright.Files.Sheets;

namespace Rinsewright.Cli.Visits;

/// <summary>Something said: its key for programs, its words for people.</summary>
internal sealed record SaidDto(string Key, string Text);

/// <summary>A line of readings.</summary>
internal sealed record VisitLineDto(
    string Kind,
    string Moment,
    string State,
    AmountDto? Value,
    string Status,
    string Band,
    AmountDto? Low,
    AmountDto? High,
    IReadOnlyList<SaidDto> Says
);

/// <summary>A reason to stop.</summary>
internal sealed record VisitStopDto(string Kind, string Id, string Name, bool Open, string SafeAgain);

/// <summary>A log of the crew. <c>Chance</c> is the most chance that real readings agree so, absent where it is not known; <c>Finding</c> is the check it finds, absent where it finds none.</summary>
internal sealed record VisitCrewLogDto(
    string Kind,
    DateOnly From,
    DateOnly Until,
    int Expected,
    int Missing,
    int Unread,
    double? SameValue,
    int? SameCount,
    double? Chance,
    int? Outside,
    AmountDto? Middle,
    string? Finding,
    IReadOnlyList<SaidDto> Says
);

/// <summary>A part of the acceptance test.</summary>
internal sealed record VisitAcceptanceDto(string Area, string Standing, SaidDto Because, IReadOnlyList<string> Needs);

/// <summary>Something missing.</summary>
internal sealed record VisitMissingDto(bool Blocks, SaidDto Says);

/// <summary>What a visit amounts to, as JSON.</summary>
internal sealed record VisitDto(
    string Schema,
    string Standing,
    string StandingText,
    bool MayBeSigned,
    IReadOnlyList<SaidDto> Because,
    IReadOnlyList<VisitStopDto> Stops,
    string ProofAsFound,
    string ProofAsLeft,
    IReadOnlyList<VisitLineDto> Readings,
    IReadOnlyList<SaidDto> Clashes,
    IReadOnlyList<SaidDto> Unexplained,
    IReadOnlyList<VisitCrewLogDto> CrewLogs,
    IReadOnlyList<VisitAcceptanceDto> Acceptance,
    IReadOnlyList<VisitMissingDto> Missing,
    IReadOnlyList<SaidDto> Warnings,
    DateOnly NextVisit,
    SaidDto NextBecause,
    string Was,
    string Done,
    string YouDo
)
{
    public const string CurrentSchema = "rinsewright.visit-check/1";

    public static VisitDto Of(VisitPaper paper, Words words)
    {
        var r = paper.Result;
        SaidDto Said(Engine.Records.Statement s) => new(s.Key, words.Say(s));
        return new VisitDto(
            CurrentSchema,
            Wire.Name(r.Standing),
            words[Wire.WordKey(r.Standing)],
            r.MayBeSigned,
            [.. r.Because.Select(Said)],
            [.. r.Stops.Select(s => new VisitStopDto(Wire.Name(s.Kind), s.Id, s.Name.In(words.Language), s.Open, words.SafeAgain(s)))],
            Wire.Name(r.Before.Verdict.Outcome),
            Wire.Name(r.After.Verdict.Outcome),
            [
                .. r.Readings.Select(l => new VisitLineDto(
                    l.Reading.Kind,
                    Wire.Name(l.Reading.Moment),
                    Wire.Name(l.Reading.State),
                    Wire.From(l.Reading.Value),
                    Wire.Name(l.Status),
                    Wire.Name(l.Band),
                    l.Own is { } low ? Wire.From(low.Low) : null,
                    l.Own is { } high ? Wire.From(high.High) : null,
                    [.. l.Says.Select(Said)]
                )),
            ],
            [.. r.Clashes.Select(c => Said(c.Says))],
            [.. r.Unexplained.Select(Said)],
            [
                .. r.CrewLogs.Select(l => new VisitCrewLogDto(
                    l.Log.Kind,
                    l.Log.From,
                    l.Log.Until,
                    l.Expected,
                    l.Missing,
                    l.Log.LookedUnread.Count,
                    l.Same?.Value.Value,
                    l.Same?.Count,
                    l.Same?.Chance,
                    l.Outside?.Count,
                    l.Middle is { } m ? Wire.From(m.Middle) : null,
                    l.Gaps ? CrewLogJudgement.Finding : null,
                    [.. l.Says.Select(Said)]
                )),
            ],
            [.. r.Acceptance.Select(a => new VisitAcceptanceDto(Wire.Name(a.Area), Wire.Name(a.Standing), Said(a.Because), a.Needs))],
            [.. r.Missing.Select(m => new VisitMissingDto(m.Blocks, Said(m.Says)))],
            [.. r.Warnings.Select(Said)],
            r.Next.On,
            Said(r.Next.Because),
            words.Say(r.Was),
            words.Say(r.Done),
            words.Say(r.YouDo)
        );
    }
}

/// <summary>JSON of visits.</summary>
[JsonSourceGenerationOptions(
    PropertyNamingPolicy = JsonKnownNamingPolicy.CamelCase,
    DefaultIgnoreCondition = JsonIgnoreCondition.WhenWritingNull
)]
[JsonSerializable(typeof(VisitDto))]
internal sealed partial class VisitsJson : JsonSerializerContext;
