using System.Text.Json;
using Rinsewright.Contracts.Records;

namespace Rinsewright.Contracts.Visits;

/// <summary>Fields of a visit besides those of its record.</summary>
public static class VisitPaths
{
    /// <summary>Id of the kitchen's document.</summary>
    public const string Kitchen = "kitchen";

    /// <summary>Id of the machine's document.</summary>
    public const string Machine = "machine";

    /// <summary>Name of the machine, copied so that a list need not open it.</summary>
    public const string MachineName = "machineName";

    /// <summary>Moment it began, round-trip, copied likewise.</summary>
    public const string Began = "began";

    /// <summary>How the machine is left, word of <c>VisitStanding</c>, as judged last on a device; empty where it never was.</summary>
    public const string Standing = "standing";

    /// <summary>Day of the next visit, <c>2026-12-03</c>, as proposed.</summary>
    public const string Next = "next";

    /// <summary>In front of the members of the visit's record, each a field of its own.</summary>
    public const string Record = "record.";

    /// <summary>The parts fitted, on site and ordered, copied into the visit's line so that a day need not open it.</summary>
    public const string PartsUsed = "record.partsUsed";
}

/// <summary>A visit as a document of fields: each member of its record one field, so that what is entered on two devices comes together.</summary>
public static class VisitFields
{
    private const string Id = "id";

    /// <summary>Fields of a record: path and text.</summary>
    public static IReadOnlyList<KeyValuePair<string, string>> Of(VisitDocument visit)
    {
        var fields = new List<KeyValuePair<string, string>>();
        using var record = JsonDocument.Parse(VisitFile.Write(visit));
        foreach (var member in record.RootElement.EnumerateObject())
        {
            if (member.Name != Id && member.Value.ValueKind != JsonValueKind.Null)
            {
                fields.Add(new(VisitPaths.Record + member.Name, member.Value.GetRawText()));
            }
        }

        return fields;
    }

    /// <summary>Fields that differ between two states of a record; what the later no longer has is emptied.</summary>
    /// <param name="visit">The later.</param>
    /// <param name="seen">The earlier.</param>
    public static IReadOnlyList<KeyValuePair<string, string>> Changed(VisitDocument visit, VisitDocument seen)
    {
        var before = new Dictionary<string, string>(Of(seen), StringComparer.Ordinal);
        List<KeyValuePair<string, string>> changed = [];
        foreach (var field in Of(visit))
        {
            if (!before.Remove(field.Key, out var was) || was != field.Value)
            {
                changed.Add(field);
            }
        }

        foreach (var path in before.Keys)
        {
            changed.Add(new(path, ""));
        }

        return changed;
    }

    /// <summary>The record of a document of fields.</summary>
    /// <exception cref="ContractException">It is no visit; says what is wrong.</exception>
    public static VisitDocument Read(FieldDocument document)
    {
        using var bytes = new MemoryStream();
        using (var json = new Utf8JsonWriter(bytes))
        {
            json.WriteStartObject();
            json.WriteString(Id, document.Id);
            foreach (var (path, field) in document.Fields)
            {
                if (field.Value.Length > 0 && path.StartsWith(VisitPaths.Record, StringComparison.Ordinal))
                {
                    json.WritePropertyName(path[VisitPaths.Record.Length..]);
                    try
                    {
                        json.WriteRawValue(field.Value);
                    }
                    catch (JsonException)
                    {
                        throw new ContractException(path, "not what stands there; it was written by another program");
                    }
                }
            }

            json.WriteEndObject();
        }

        return VisitFile.Read(System.Text.Encoding.UTF8.GetString(bytes.ToArray()));
    }
}
