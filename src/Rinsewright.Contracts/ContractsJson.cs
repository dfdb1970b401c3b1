using System.Text.Json.Serialization;
using Rinsewright.Contracts.Records;
using Rinsewright.Contracts.Sanitization;
using Rinsewright.Contracts.Visits;

namespace Rinsewright.Contracts;

/// <summary>JSON of every contract, generated at build time so that it survives trimming: camel case, nulls left out.</summary>
[JsonSourceGenerationOptions(
    GenerationMode = JsonSourceGenerationMode.Metadata,
    PropertyNamingPolicy = JsonKnownNamingPolicy.CamelCase,
    DefaultIgnoreCondition = JsonIgnoreCondition.WhenWritingNull
)]
[JsonSerializable(typeof(ProofRequest))]
[JsonSerializable(typeof(ProofReport))]
[JsonSerializable(typeof(ProofDocument))]
[JsonSerializable(typeof(IReadOnlyList<ProofDocument>))]
[JsonSerializable(typeof(Operation))]
[JsonSerializable(typeof(IReadOnlyList<Operation>))]
[JsonSerializable(typeof(FieldDocument))]
[JsonSerializable(typeof(IReadOnlyList<FieldChange>))]
[JsonSerializable(typeof(IReadOnlyList<LimitDto>))]
[JsonSerializable(typeof(OperationResults))]
[JsonSerializable(typeof(Changes))]
[JsonSerializable(typeof(IReadOnlyList<ProofSummary>))]
[JsonSerializable(typeof(IReadOnlyList<DocumentVersion>))]
[JsonSerializable(typeof(IReadOnlyList<RuleSetDto>))]
[JsonSerializable(typeof(VisitDocument))]
[JsonSerializable(typeof(IReadOnlyList<VisitDocument>))]
public sealed partial class ContractsJson : JsonSerializerContext;
