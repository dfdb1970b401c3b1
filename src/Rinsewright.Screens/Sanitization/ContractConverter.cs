using System.Text.Json;
using System.Text.Json.Serialization;
using System.Text.Json.Serialization.Metadata;
using Rinsewright.Contracts;
using Rinsewright.Contracts.Records;
using Rinsewright.Contracts.Sanitization;

namespace Rinsewright.Client.Sanitization;

/// <summary>Writes a contract inside what the client passes as the contracts write it, so that its description is in the program once.</summary>
internal abstract class ContractConverter<T>(JsonTypeInfo<T> contract) : JsonConverter<T>
{
    /// <inheritdoc />
    public override T? Read(ref Utf8JsonReader reader, Type typeToConvert, JsonSerializerOptions options) =>
        JsonSerializer.Deserialize(ref reader, contract);

    /// <inheritdoc />
    public override void Write(Utf8JsonWriter writer, T value, JsonSerializerOptions options) =>
        JsonSerializer.Serialize(writer, value, contract);
}

/// <summary>A report inside another message.</summary>
internal sealed class ProofReportJson() : ContractConverter<ProofReport>(ContractsJson.Default.ProofReport);

/// <summary>A statement inside another message.</summary>
internal sealed class StatementJson() : ContractConverter<StatementDto>(ContractsJson.Default.StatementDto);
