using System.Text.Json.Serialization;
using Rinsewright.Client.Machines;
using Rinsewright.Client.Records;
using Rinsewright.Client.Sanitization;
using Rinsewright.Client.Shell;

namespace Rinsewright.Client;

/// <summary>JSON of what only the client keeps or passes.</summary>
[JsonSourceGenerationOptions(
    GenerationMode = JsonSourceGenerationMode.Metadata,
    PropertyNamingPolicy = JsonKnownNamingPolicy.CamelCase,
    DefaultIgnoreCondition = JsonIgnoreCondition.WhenWritingNull
)]
[JsonSerializable(typeof(DeviceSettings))]
[JsonSerializable(typeof(ProofLine))]
[JsonSerializable(typeof(ProofLine[]))]
[JsonSerializable(typeof(RecordLine))]
[JsonSerializable(typeof(RecordLine[]))]
[JsonSerializable(typeof(KeptReading))]
[JsonSerializable(typeof(TakenFile))]
[JsonSerializable(typeof(TakenFile[]))]
[JsonSerializable(typeof(ComputeAnswer))]
[JsonSerializable(typeof(SitePrices))]
[JsonSerializable(typeof(IReadOnlyList<KeptReading>))]
[JsonSerializable(typeof(BackupHead))]
[JsonSerializable(typeof(BackupContent))]
[JsonSerializable(typeof(IReadOnlyDictionary<string, string>))]
public sealed partial class ClientJson : JsonSerializerContext;
