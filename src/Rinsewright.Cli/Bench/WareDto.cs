using System.Text.Json.Serialization;
using Rinsewright.Contracts.Knowledge;
using Rinsewright.Contracts.Language;
using Rinsewright.Engine.Ware;

namespace Rinsewright.Cli.Bench;

/// <summary>What <c>bench ware --json</c> prints.</summary>
/// <param name="Schema">Format id.</param>
/// <param name="Pictures">Ids of what is seen.</param>
/// <param name="Next">What comes next: <c>stop</c>, <c>rinse</c>, <c>test</c> or <c>cure</c>, with the id of its test or fault and its cautions in words.</param>
/// <param name="OnPiece">Agents on the piece that have to be rinsed off.</param>
/// <param name="Causes">Faults that fit with their share, an expert's estimate.</param>
/// <param name="Tests">Open tests, what tells most per minute first.</param>
/// <param name="Waiting">Ids of tests that wait for a rinse.</param>
/// <param name="LeftToLicence">Ids of tests left to somebody with a licence.</param>
internal sealed record WareDto(
    string Schema,
    IReadOnlyList<string> Pictures,
    WareNextDto Next,
    IReadOnlyList<string> OnPiece,
    IReadOnlyList<WareCauseDto> Causes,
    IReadOnlyList<WareTestDto> Tests,
    IReadOnlyList<string> Waiting,
    IReadOnlyList<string> LeftToLicence
)
{
    public const string CurrentSchema = "rinsewright.ware/1";

    // Below this a share rounds to nothing.
    private const double Least = 0.001;

    public static WareDto Of(WareInquiry inquiry, Words words)
    {
        var trade = inquiry.Knowledge;
        return new WareDto(
            CurrentSchema,
            [.. inquiry.Pictures.Select(p => p.Id)],
            WareNextDto.Of(inquiry, words),
            inquiry.Trail.OnPiece,
            [
                .. inquiry
                    .Causes.Where(c => c.Share >= Least)
                    .Select(c => new WareCauseDto(
                        c.Fault.Id,
                        c.Fault.Name.In(words.Language),
                        c.Share,
                        KnowledgeWords.Source(words, trade, c.Fault.Src)
                    )),
            ],
            [
                .. inquiry.Offers.Select(o => new WareTestDto(
                    o.Finding,
                    o.Name.In(words.Language),
                    o.FoundMeans.In(words.Language),
                    o.Minutes,
                    o.Bits,
                    o.Who,
                    o.Hazard,
                    o.Agents
                )),
            ],
            [.. inquiry.Waiting.Select(o => o.Finding)],
            [.. inquiry.Deferred.Select(o => o.Finding)]
        );
    }
}

/// <summary>What comes next.</summary>
internal sealed record WareNextDto(string Kind, string? Test, string? Fault, IReadOnlyList<string> Do, IReadOnlyList<string> Cautions)
{
    public static WareNextDto Of(WareInquiry inquiry, Words words)
    {
        var (trade, next) = (inquiry.Knowledge, inquiry.Next);
        var cure = next.Fault is { } fault ? inquiry.CureOf(fault) : [];
        var hazards = next.Offer is { } o ? [o.Hazard] : cure.SelectMany(s => s.Hazards).Distinct(StringComparer.Ordinal);
        var agents = next.Offer?.Agents ?? [.. cure.SelectMany(s => s.Agents)];
        return new WareNextDto(
            next.Kind.ToString().ToLowerInvariant(),
            next.Offer?.Finding,
            next.Fault?.Id,
            next.Kind == WareNextKind.Rinse ? [trade.Common.Rinse.Action.In(words.Language)]
                : next.Offer is { } offer ? [offer.How.In(words.Language)]
                : [.. cure.Select(s => s.Action.In(words.Language))],
            next.Kind == WareNextKind.Rinse
                ? [trade.Common.Rinse.Caution.In(words.Language)]
                :
                [
                    .. trade
                        .Common.Agents.Where(a => agents.Contains(a.Id, StringComparer.Ordinal))
                        .Select(a => a.Caution.In(words.Language)),
                    .. hazards.Where(h => h != "none").Select(h => trade.HazardOf(h).Caution.In(words.Language)),
                ]
        );
    }
}

/// <summary>A cause with its share, 0 to 1.</summary>
internal sealed record WareCauseDto(string Fault, string Name, double Share, string Source);

/// <summary>An open test; what it tells, bit.</summary>
internal sealed record WareTestDto(
    string Test,
    string Name,
    string FoundMeans,
    double Minutes,
    double Bits,
    string Who,
    string Hazard,
    IReadOnlyList<string> Agents
);

/// <summary>JSON of ware results.</summary>
[JsonSourceGenerationOptions(
    PropertyNamingPolicy = JsonKnownNamingPolicy.CamelCase,
    DefaultIgnoreCondition = JsonIgnoreCondition.WhenWritingNull
)]
[JsonSerializable(typeof(WareDto))]
internal sealed partial class WareJson : JsonSerializerContext;
