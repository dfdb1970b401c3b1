using System.Globalization;
using System.Text.Json;
using System.Text.Json.Nodes;
using Rinsewright.Engine.Machines;
using Rinsewright.Engine.Quantities;

namespace Rinsewright.Contracts.Machines;

/// <summary>
/// Sums kept with a machine: <c>{ "tool": "tank-dosing", "on": "2026-11-26", "by": "…", "choices": {}, "given": { "tank": { "value": 18.5, "unit": "[gal_us]" } }, "found": { … } }</c>,
/// in a list. A tool or field that this version does not know is kept as it stands.
/// </summary>
internal sealed class SetUpsMember() : Member<Machine>("setUps")
{
    private static readonly string[] Fields = ["tool", "on", "by", "choices", "given", "found"];

    internal override Machine Read(JsonElement element, string path, Machine current, Problems problems)
    {
        if (element.ValueKind != JsonValueKind.Array)
        {
            problems.Add(path, "not-a-list");
            return current;
        }

        List<SetUp> read = [];
        foreach (var (i, entry) in element.EnumerateArray().Index())
        {
            if (One(entry, $"{path}[{i}]", problems) is { } setUp)
            {
                read.Add(setUp);
            }
        }

        return current with
        {
            SetUps = read,
        };
    }

    internal override bool Differs(Machine left, Machine right) => left.SetUps.Count > 0 || right.SetUps.Count > 0;

    internal override void Write(Utf8JsonWriter writer, Machine value, Machine? typical, bool whole)
    {
        if (value.SetUps.Count == 0)
        {
            return;
        }

        writer.WriteStartArray(Name);
        foreach (var setUp in value.SetUps)
        {
            writer.WriteStartObject();
            writer.WriteString("tool", setUp.Tool);
            writer.WriteString("on", setUp.On.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture));
            writer.WriteString("by", setUp.By);
            writer.WriteStartObject("choices");
            foreach (var (id, option) in setUp.Choices)
            {
                writer.WriteString(id, option);
            }

            writer.WriteEndObject();
            Figures(writer, "given", setUp.Given);
            Figures(writer, "found", setUp.Found);
            writer.WriteEndObject();
        }

        writer.WriteEndArray();
    }

    internal override JsonObject Schema(SchemaWriter schemas)
    {
        JsonObject Text() => new() { ["type"] = "string" };
        JsonObject Amounts() =>
            new()
            {
                ["type"] = "object",
                ["additionalProperties"] = new JsonObject
                {
                    ["type"] = "object",
                    ["properties"] = new JsonObject
                    {
                        ["value"] = new JsonObject { ["type"] = "number" },
                        ["unit"] = Text(),
                    },
                    ["required"] = new JsonArray("value", "unit"),
                    ["additionalProperties"] = false,
                },
            };
        var day = Text();
        day["format"] = "date";
        return new JsonObject
        {
            ["type"] = "array",
            ["items"] = new JsonObject
            {
                ["type"] = "object",
                ["properties"] = new JsonObject
                {
                    ["tool"] = Text(),
                    ["on"] = day,
                    ["by"] = Text(),
                    ["choices"] = new JsonObject { ["type"] = "object", ["additionalProperties"] = Text() },
                    ["given"] = Amounts(),
                    ["found"] = Amounts(),
                },
                ["required"] = new JsonArray("tool", "on", "by"),
                ["additionalProperties"] = false,
            },
        };
    }

    private static SetUp? One(JsonElement entry, string path, Problems problems)
    {
        if (entry.ValueKind != JsonValueKind.Object)
        {
            problems.Add(path, "not-an-object", ("fields", string.Join(", ", Fields)));
            return null;
        }

        problems.Twice(entry, path);
        foreach (var property in entry.EnumerateObject().Where(p => !Fields.Contains(p.Name, StringComparer.Ordinal)))
        {
            problems.Add($"{path}.{property.Name}", "unknown-field", ("fields", string.Join(", ", Fields)));
        }

        var tool = Text(entry, "tool", path, problems);
        var by = Text(entry, "by", path, problems);
        var on = Text(entry, "on", path, problems);
        DateOnly day = default;
        if (on is not null && !DateOnly.TryParseExact(on, "yyyy-MM-dd", CultureInfo.InvariantCulture, DateTimeStyles.None, out day))
        {
            problems.Add($"{path}.on", "not-a-day", ("value", on));
            on = null;
        }

        List<KeyValuePair<string, string>> choices = [];
        foreach (var choice in Inner(entry, "choices", path, problems))
        {
            if (choice.Value.ValueKind == JsonValueKind.String)
            {
                choices.Add(new(choice.Name, choice.Value.GetString()!));
            }
            else
            {
                problems.Add($"{path}.choices.{choice.Name}", "not-a-text");
            }
        }

        var (given, found) = (Amounts(entry, "given", path, problems), Amounts(entry, "found", path, problems));
        return tool is null || by is null || on is null ? null : new SetUp(tool, day, by, choices, given, found);
    }

    private static string? Text(JsonElement entry, string name, string path, Problems problems)
    {
        if (!entry.TryGetProperty(name, out var value))
        {
            problems.Add($"{path}.{name}", "missing");
            return null;
        }

        if (value.ValueKind != JsonValueKind.String)
        {
            problems.Add($"{path}.{name}", "not-a-text");
            return null;
        }

        return value.GetString();
    }

    private static IEnumerable<JsonProperty> Inner(JsonElement entry, string name, string path, Problems problems)
    {
        if (!entry.TryGetProperty(name, out var value))
        {
            return [];
        }

        if (value.ValueKind == JsonValueKind.Object)
        {
            return value.EnumerateObject();
        }

        problems.Add($"{path}.{name}", "not-an-object", ("fields", "…"));
        return [];
    }

    private static List<KeyValuePair<string, Amount>> Amounts(JsonElement entry, string name, string path, Problems problems)
    {
        List<KeyValuePair<string, Amount>> amounts = [];
        foreach (var figure in Inner(entry, name, path, problems))
        {
            var at = $"{path}.{name}.{figure.Name}";
            if (
                figure.Value.ValueKind == JsonValueKind.Object
                && figure.Value.TryGetProperty("value", out var value)
                && value.ValueKind == JsonValueKind.Number
                && value.TryGetDouble(out var number)
                && figure.Value.TryGetProperty("unit", out var code)
                && code.ValueKind == JsonValueKind.String
                && Units.Find(code.GetString()!) is { } unit
            )
            {
                amounts.Add(new(figure.Name, new Amount(number, unit)));
            }
            else
            {
                problems.Add(at, "not-a-figure", ("unit", "[gal_us]"));
            }
        }

        return amounts;
    }

    private static void Figures(Utf8JsonWriter writer, string name, IReadOnlyList<KeyValuePair<string, Amount>> figures)
    {
        writer.WriteStartObject(name);
        foreach (var (id, amount) in figures)
        {
            writer.WritePropertyName(id);
            writer.WriteRawValue(FigureJson.Line(amount));
        }

        writer.WriteEndObject();
    }
}
