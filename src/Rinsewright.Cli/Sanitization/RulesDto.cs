using System.Text.Json.Serialization;
using Rinsewright.Contracts.Records;
using Rinsewright.Contracts.Sanitization;

namespace Rinsewright.Cli.Sanitization;

/// <summary>A rule set as <c>rinsewright limits --json</c> prints it.</summary>
internal sealed record RulesDto(
    string Schema,
    string Id,
    string Title,
    string Jurisdiction,
    string Edition,
    string? BasedOn,
    IReadOnlyList<ApplyingLimitDto> Limits,
    IReadOnlyList<SanitizerRowDto> Sanitizers,
    IReadOnlyList<ContactTimeDto> Contact,
    IReadOnlyList<InstrumentRuleDto> Instruments,
    IReadOnlyList<string> Remarks
)
{
    public const string CurrentSchema = "rinsewright.limits/1";
}

/// <summary>A limit and what it applies to; empty lists mean all.</summary>
internal sealed record ApplyingLimitDto(LimitDto Limit, IReadOnlyList<string> Machines, IReadOnlyList<string> Methods);

/// <summary>A row of the sanitizer table.</summary>
internal sealed record SanitizerRowDto(
    string Method,
    AmountDto? Minimum,
    AmountDto? Below,
    double? AcidityMaximum,
    IReadOnlyList<AmountDto> TemperatureMinimum,
    IReadOnlyList<AmountDto> HardnessMaximum,
    CitationDto Citation
);

/// <summary>A contact time and the conditions it is good for.</summary>
internal sealed record ContactTimeDto(
    string Method,
    AmountDto Least,
    AmountDto? Minimum,
    double? AcidityMaximum,
    IReadOnlyList<AmountDto> TemperatureMinimum,
    CitationDto Citation
);

/// <summary>What is asked of an instrument.</summary>
internal sealed record InstrumentRuleDto(string Measures, string Aspect, IReadOnlyList<AmountDto> Maximum, CitationDto Citation);

/// <summary>JSON of the rule sets, in the manner of the contracts.</summary>
[JsonSourceGenerationOptions(
    PropertyNamingPolicy = JsonKnownNamingPolicy.CamelCase,
    DefaultIgnoreCondition = JsonIgnoreCondition.WhenWritingNull
)]
[JsonSerializable(typeof(RulesDto))]
internal sealed partial class RulesJson : JsonSerializerContext;
