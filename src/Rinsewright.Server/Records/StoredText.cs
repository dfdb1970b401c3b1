using System.Text.Encodings.Web;
using System.Text.Json;
using Rinsewright.Contracts;
using Rinsewright.Contracts.Records;

namespace Rinsewright.Server.Records;

/// <summary>Documents and what operations carried, from and to the text they rest as.</summary>
public static class StoredText
{
    // A field is often JSON itself: each of its quotation marks takes two characters here, six as for a web page. This text rests in the store and is never part of one.
    private static readonly ContractsJson Short = new(
        new JsonSerializerOptions(ContractsJson.Default.Options) { Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping }
    );

    /// <summary>A proof.</summary>
    public static ProofDocument? Proof(string? json) =>
        json is null ? null : JsonSerializer.Deserialize(json, ContractsJson.Default.ProofDocument);

    /// <summary>A document of fields.</summary>
    public static FieldDocument? Document(string? json) =>
        json is null ? null : JsonSerializer.Deserialize(json, ContractsJson.Default.FieldDocument);

    /// <summary>Fields an operation wrote.</summary>
    public static IReadOnlyList<FieldChange>? Fields(string? json) =>
        json is null ? null : JsonSerializer.Deserialize(json, ContractsJson.Default.IReadOnlyListFieldChange);

    /// <summary>A document of fields as text.</summary>
    public static string Of(FieldDocument document) => JsonSerializer.Serialize(document, Short.FieldDocument);

    /// <summary>Fields as text.</summary>
    public static string Of(IReadOnlyList<FieldChange> fields) => JsonSerializer.Serialize(fields, Short.IReadOnlyListFieldChange);
}
