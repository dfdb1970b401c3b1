using System.Text.Json;
using System.Text.Json.Serialization;
using Rinsewright.Engine.Knowledge;

namespace Rinsewright.Knowledge.Tests;

/// <summary>Knowledge as JSON: camel-case names, texts as <c>["English", "Spanish"]</c>. Reads by name what the program reads by place.</summary>
[JsonSourceGenerationOptions(
    PropertyNamingPolicy = JsonKnownNamingPolicy.CamelCase,
    DefaultIgnoreCondition = JsonIgnoreCondition.WhenWritingNull,
    RespectNullableAnnotations = true,
    RespectRequiredConstructorParameters = true,
    UnmappedMemberHandling = JsonUnmappedMemberHandling.Disallow,
    Converters = [typeof(PhraseConverter)]
)]
[JsonSerializable(typeof(SharedLists))]
[JsonSerializable(typeof(IReadOnlyList<KnownSource>))]
[JsonSerializable(typeof(Anatomy))]
[JsonSerializable(typeof(IReadOnlyList<Procedure>))]
[JsonSerializable(typeof(TradeObservables))]
[JsonSerializable(typeof(IReadOnlyList<TradeFault>))]
[JsonSerializable(typeof(Likelihoods))]
[JsonSerializable(typeof(IReadOnlyList<WareResult>))]
[JsonSerializable(typeof(ServiceVisit))]
[JsonSerializable(typeof(IReadOnlyList<TradeTerm>))]
internal sealed partial class KnowledgeJson : JsonSerializerContext;

/// <summary>A phrase as an array of two texts.</summary>
internal sealed class PhraseConverter : JsonConverter<Phrase>
{
    public override Phrase Read(ref Utf8JsonReader reader, Type typeToConvert, JsonSerializerOptions options)
    {
        if (reader.TokenType == JsonTokenType.StartArray && reader.Read() && reader.GetString() is { } english && reader.Read())
        {
            var phrase = new Phrase(english, reader.GetString()!);
            return reader.Read() && reader.TokenType == JsonTokenType.EndArray
                ? phrase
                : throw new JsonException("A text stands in two languages.");
        }

        throw new JsonException("A text stands in two languages.");
    }

    public override void Write(Utf8JsonWriter writer, Phrase value, JsonSerializerOptions options)
    {
        writer.WriteStartArray();
        writer.WriteStringValue(value.English);
        writer.WriteStringValue(value.Spanish);
        writer.WriteEndArray();
    }
}
