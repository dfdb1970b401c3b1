using System.Text.Encodings.Web;
using System.Text.Json;
using Rinsewright.Contracts.Machines;
using Rinsewright.Contracts.Records;
using Rinsewright.Engine.Machines;
using Rinsewright.Engine.Quantities;
using Rinsewright.Engine.Visits;

namespace Rinsewright.Contracts.Visits;

/// <summary>A visit as a text of JSON.</summary>
public static class VisitFile
{
    private static readonly ContractsJson Plain = new(
        new JsonSerializerOptions(ContractsJson.Default.Options)
        {
            Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping,
            ReadCommentHandling = JsonCommentHandling.Skip,
            AllowTrailingCommas = true,
            TypeInfoResolver = null,
        }
    );

    /// <summary>Reads a visit of this version or an earlier one.</summary>
    /// <exception cref="ContractException">It is no visit; says where, what, and what is allowed.</exception>
    public static VisitDocument Read(string json)
    {
        VisitDocument? document;
        try
        {
            document = JsonSerializer.Deserialize(json, Plain.VisitDocument);
        }
        catch (JsonException e)
        {
            var place = e.Path is { Length: > 2 } path ? path[2..] : "visit";
            throw new ContractException(place, $"not what stands there, at line {(e.LineNumber ?? 0) + 1}; see docs/handbook/visit.md");
        }

        return document switch
        {
            null => throw new ContractException("visit", "empty; a visit is a JSON object"),
            { Version: < 1 } => throw new ContractException("version", "absent or below 1; a visit says its version, now 1"),
            { Version: > VisitDocument.CurrentVersion } => throw new ContractException(
                "version",
                $"{document.Version} is of a later program; this one reads up to {VisitDocument.CurrentVersion}, so update it"
            ),
            { Id: var id } when id == Guid.Empty => throw new ContractException("id", "absent; a visit has a UUID"),
            { Kitchen: null } => throw new ContractException("kitchen", "absent; the kitchen's name, or an empty text"),
            { Machine.ValueKind: not JsonValueKind.Object } => throw new ContractException(
                "machine",
                "absent; the machine file of that day, for example { \"schema\": \"rinsewright.machine/1\", \"kind\": \"door-chemical\" }"
            ),
            { Began: var began } when began == default => throw new ContractException(
                "began",
                "absent; a moment such as 2026-11-24T09:10:00-07:00"
            ),
            _ => document with
            {
                Readings = Each(document.Readings, r => r is { Value: { } v } && WasAcidity(r.Kind, v) ? r with { Value = Rise(v) } : r),
                Earlier = Each(document.Earlier, e => e is { Value: { } v } && WasAcidity(e.Kind, v) ? e with { Value = Rise(v) } : e),
            },
        };
    }

    // Visits of before the difference of two pH had a unit of its own.
    private static bool WasAcidity(string kind, AmountDto value) =>
        value.Unit == Units.PH.Ucum && VisitReadingKinds.Find(kind)?.Unit == Units.PHDifference;

    private static AmountDto Rise(AmountDto value) => value with { Unit = Units.PHDifference.Ucum };

    private static IReadOnlyList<T>? Each<T>(IReadOnlyList<T>? items, Func<T, T> renew) => items is null ? null : [.. items.Select(renew)];

    /// <summary>Writes a visit so that <see cref="Read"/> gives it back.</summary>
    public static string Write(VisitDocument document) => JsonSerializer.Serialize(document, Plain.VisitDocument);

    /// <summary>A machine as the element a visit carries.</summary>
    public static JsonElement MachineOf(Machine machine)
    {
        using var document = JsonDocument.Parse(MachineFile.Write(machine, whole: false));
        return document.RootElement.Clone();
    }
}
