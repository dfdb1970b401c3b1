using System.Text.Encodings.Web;
using System.Text.Json;
using System.Text.Json.Nodes;
using System.Text.Json.Schema;
using System.Text.Json.Serialization.Metadata;
using Rinsewright.Contracts.Records;
using Rinsewright.Contracts.Visits;
using Rinsewright.Engine.Machines;
using Rinsewright.Engine.Records;
using Rinsewright.Engine.Sanitization;
using Rinsewright.Engine.Visits;

namespace Rinsewright.Contracts;

/// <summary>
/// JSON Schemas (2020-12) of what travels and rests: the visit file, the documents and their operations. They hold the form; that a name stands in the same file or an id in the knowledge is for the
/// program to say.
/// </summary>
public static partial class ContractSchemas
{
    private static readonly JsonSerializerOptions Indented = new(JsonSerializerDefaults.General)
    {
        WriteIndented = true,
        Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping,
    };

    // Words a member may be, by the record it stands in.
    private static readonly Dictionary<(Type Record, string Member), string[]> Words = new()
    {
        [(typeof(VisitReadingDto), "kind")] = [.. VisitReadingKinds.All.Select(k => k.Id)],
        [(typeof(VisitReadingDto), "moment")] = Names<VisitMoment>(),
        [(typeof(VisitReadingDto), "state")] = Names<OperatingState>(),
        [(typeof(VisitReadingDto), "method")] = Names<ReadingMethod>(),
        [(typeof(VisitFindingDto), "moment")] = Names<VisitMoment>(),
        [(typeof(CountedProofDto), "moment")] = Names<VisitMoment>(),
        [(typeof(CountedProofDto), "outcome")] = Names<Outcome>(),
        [(typeof(CountedProofDto), "machine")] = Names<MachineType>(),
        [(typeof(CountedProofDto), "method")] = Names<SanitizingMethod>(),
        [(typeof(WareSeenDto), "moment")] = Names<VisitMoment>(),
        [(typeof(CrewLogDto), "kind")] = [.. VisitReadingKinds.All.Select(k => k.Id)],
        [(typeof(CrewLogDto), "state")] = Names<OperatingState>(),
        [(typeof(PartLookDto), "state")] = Names<PartState>(),
        [(typeof(PartLookDto), "moment")] = Names<VisitMoment>(),
        [(typeof(VisitPhotoDto), "moment")] = Names<VisitMoment>(),
        [(typeof(VisitChangeDto), "kind")] = Names<ChangeKind>(),
        [(typeof(PartUseDto), "where")] = Names<PartWhere>(),
        [(typeof(LeakLookDto), "moment")] = Names<VisitMoment>(),
        [(typeof(DeclinedDto), "area")] = Names<AcceptanceArea>(),
        [(typeof(EarlierReadingDto), "kind")] = [.. VisitReadingKinds.All.Select(k => k.Id)],
        [(typeof(EarlierReadingDto), "state")] = Names<OperatingState>(),
        [(typeof(VisitCauseDto), "known")] = Names<CauseKnown>(),
        [(typeof(VisitCauseDto), "owner")] = Names<CauseOwner>(),
        [(typeof(VisitSignatureDto), "for")] = Names<SignedFor>(),
        [(typeof(SupplyCountDto), "feeds")] = Names<FedProduct>(),
        [(typeof(TestSupplyDto), "tests")] = Names<SanitizingMethod>(),
        [(typeof(FieldDocument), "kind")] = [Kinds.Kitchen, Kinds.Machine, Kinds.Visit],
        [(typeof(Operation), "kind")] = [Kinds.Kitchen, Kinds.Machine, Kinds.Visit, Kinds.Proof],
        [(typeof(Operation), "action")] = ["put", "delete", "set"],
    };

    // Texts that are not empty.
    private static readonly HashSet<(Type Record, string Member)> Filled =
    [
        (typeof(VisitChangeDto), "what"),
        (typeof(PartUseDto), "what"),
        (typeof(SupplyCountDto), "product"),
        (typeof(DeclinedDto), "because"),
        (typeof(VisitSignatureDto), "name"),
        (typeof(CountedProofDto), "name"),
        (typeof(CountedProofDto), "ruleSet"),
    ];

    /// <summary>Every schema by the name of its file, without <c>.schema.json</c>.</summary>
    public static IReadOnlyDictionary<string, string> All =>
        new Dictionary<string, string>(StringComparer.Ordinal)
        {
            ["rinsewright.visit.1"] = Of(
                ContractsJson.Default.VisitDocument,
                "One visit to one machine; what is absent was not looked at."
            ),
            ["rinsewright.fields.1"] = Of(
                ContractsJson.Default.FieldDocument,
                "A kitchen, machine or visit as a document of fields. Fields that are not named here were written by a later program and are kept.",
                FieldsByKind()
            ),
            ["rinsewright.proof.1"] = Of(
                ContractsJson.Default.ProofDocument,
                "A saved proof: what was asked, what came out, whose machine."
            ),
            ["rinsewright.operation.1"] = Of(ContractsJson.Default.Operation, "One change by one person on one device."),
        };

    private static string Of(JsonTypeInfo type, string description, JsonArray? allOf = null)
    {
        var schema = JsonSchemaExporter
            .GetJsonSchemaAsNode(
                type,
                new JsonSchemaExporterOptions { TreatNullObliviousAsNonNullable = true, TransformSchemaNode = Shape }
            )
            .AsObject();
        schema.Insert(0, "$schema", "https://json-schema.org/draft/2020-12/schema");
        schema["description"] = description;
        if (allOf is not null)
        {
            schema["allOf"] = allOf;
        }

        return schema.ToJsonString(Indented) + "\n";
    }

    private static JsonNode Shape(JsonSchemaExporterContext context, JsonNode node)
    {
        if (context.PropertyInfo is { } machine && machine.DeclaringType == typeof(VisitDocument) && machine.Name == "machine")
        {
            // A file of its own: docs/schemas/rinsewright.machine.1.schema.json
            return new JsonObject { ["type"] = "object", ["required"] = new JsonArray("schema", "kind") };
        }

        if (node is JsonObject { } record && record["required"] is JsonArray required && record["properties"] is JsonObject members)
        {
            // What is null is left out when it is written.
            var needed = required.Select(n => n!.GetValue<string>()).Where(n => !MayBeNull(members[n])).ToList();
            record["required"] = new JsonArray([.. needed.Select(n => (JsonNode?)n)]);
        }

        if (node is not JsonObject schema || context.PropertyInfo is not { } member)
        {
            return node;
        }

        var at = (member.DeclaringType, member.Name);
        if (Words.TryGetValue(at, out var words))
        {
            var optional = schema["type"] is JsonArray;
            schema.Remove("type");
            schema["enum"] = new JsonArray([.. words.Select(w => (JsonNode?)w), .. (optional ? (JsonNode?[])[null] : [])]);
        }
        else if (Filled.Contains(at))
        {
            schema["pattern"] = "\\S";
        }
        else if (at == (typeof(FieldChange), "path"))
        {
            schema["description"] = "One of those named in rinsewright.fields.1 for the kind of document.";
        }
        else if (member.Name == "sha256")
        {
            schema["pattern"] = "^[0-9a-f]{64}$";
        }
        else if (at == (typeof(VisitChangeDto), "areas") && schema["items"] is JsonObject)
        {
            schema["items"] = new JsonObject { ["enum"] = new JsonArray([.. Names<AcceptanceArea>().Select(w => (JsonNode?)w)]) };
        }
        else if (at == (typeof(VisitReadingDto), "racksPerHour"))
        {
            schema["exclusiveMinimum"] = 0;
        }
        else if (at is (_, "daysLeft") or (_, "count") && member.DeclaringType == typeof(SupplyCountDto))
        {
            schema["minimum"] = 0;
        }
        else if (at == (typeof(CountedProofDto), "passes"))
        {
            schema["minimum"] = 0;
        }
        else if (at == (typeof(PartUseDto), "count"))
        {
            schema["minimum"] = 1;
        }
        else if (
            at is (_, "days") or (_, "shiftsPerDay") or (_, "shift")
            && member.DeclaringType is var log
            && (log == typeof(CrewLogDto) || log == typeof(CrewEntryDto))
        )
        {
            (schema["minimum"], schema["maximum"]) = (1, member.Name == "days" ? VisitMapping.CrewLogDays : VisitMapping.CrewLogShifts);
        }
        else if (at == (typeof(VisitDocument), "version"))
        {
            schema["const"] = VisitDocument.CurrentVersion;
        }

        return schema;
    }

    private static bool MayBeNull(JsonNode? schema) =>
        schema is JsonObject o
        && (
            o["type"] is JsonArray types && types.Any(t => t?.GetValue<string>() == "null")
            || o["enum"] is JsonArray words && words.Contains(null)
        );

    private static string[] Names<T>()
        where T : struct, Enum => [.. Enum.GetValues<T>().Select(Wire.Name)];
}
