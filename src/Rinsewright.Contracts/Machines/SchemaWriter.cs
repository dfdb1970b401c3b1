using System.Text.Json.Nodes;
using Rinsewright.Contracts.Language;
using Rinsewright.Engine.Machines;
using Rinsewright.Engine.Quantities;

namespace Rinsewright.Contracts.Machines;

/// <summary>Collects the definitions of a JSON Schema while the shapes describe themselves.</summary>
internal sealed class SchemaWriter(Words words)
{
    private readonly JsonObject definitions = [];

    /// <summary>Words of the descriptions.</summary>
    internal Words Words => words;

    /// <summary>The definitions collected so far.</summary>
    internal JsonObject Definitions => definitions;

    /// <summary>A member that is one of these words.</summary>
    internal static JsonObject Choice(string[] among, bool optional)
    {
        var list = new JsonArray([.. among.Select(a => (JsonNode)a)]);
        if (optional)
        {
            list.Add(null);
        }

        return new JsonObject { ["enum"] = list };
    }

    /// <summary>A part, defined once under its name.</summary>
    internal JsonObject Part<T>(Shape<T> shape, bool optional)
        where T : class
    {
        if (!definitions.ContainsKey(shape.Name))
        {
            definitions[shape.Name] = new JsonObject();
            definitions[shape.Name] = shape.Schema(this);
        }

        return Reference(shape.Name, optional);
    }

    /// <summary>A figure of a dimension. Bounds other than zero depend on the unit and are left to the program.</summary>
    internal JsonObject Figure(Dimension dimension, Bounds bounds, bool optional)
    {
        var name = Wire.Name(dimension);
        if (!definitions.ContainsKey(name))
        {
            definitions[name] = new JsonObject
            {
                ["type"] = "object",
                ["properties"] = new JsonObject
                {
                    ["value"] = new JsonObject { ["type"] = "number" },
                    ["unit"] = Codes(dimension),
                    ["basis"] = new JsonObject
                    {
                        ["enum"] = new JsonArray([.. Enum.GetValues<Provenance>().Select(p => (JsonNode)Wire.Name(p))]),
                    },
                    ["source"] = new JsonObject { ["type"] = "string" },
                    ["on"] = new JsonObject { ["type"] = "string", ["format"] = "date" },
                },
                ["required"] = new JsonArray("value", "unit", "basis"),
                ["additionalProperties"] = false,
            };
        }

        var reference = Reference(name, optional);
        if (bounds is { Least: { Value: 0, Unit.Offset: 0 } })
        {
            reference["properties"] = new JsonObject { ["value"] = new JsonObject { [bounds.Open ? "exclusiveMinimum" : "minimum"] = 0 } };
        }

        return reference;
    }

    /// <summary>A limit of the plate: value and unit.</summary>
    internal JsonObject PlateAmount(Dimension dimension)
    {
        var name = Wire.Name(dimension) + "OnPlate";
        if (!definitions.ContainsKey(name))
        {
            definitions[name] = new JsonObject
            {
                ["type"] = "object",
                ["properties"] = new JsonObject
                {
                    ["value"] = new JsonObject { ["type"] = "number" },
                    ["unit"] = Codes(dimension),
                },
                ["required"] = new JsonArray("value", "unit"),
                ["additionalProperties"] = false,
            };
        }

        return Reference(name, optional: true);
    }

    private static JsonObject Codes(Dimension dimension)
    {
        var codes = Units.Of(dimension).Select(u => u.Ucum);
        if (dimension == Dimension.TemperatureDifference)
        {
            codes = codes.Concat(["[degF]", "K", "Cel"]);
        }

        return new JsonObject { ["enum"] = new JsonArray([.. codes.Select(c => (JsonNode)c)]) };
    }

    private static JsonObject Reference(string name, bool optional)
    {
        var reference = new JsonObject { ["$ref"] = $"#/$defs/{name}" };
        return optional ? new JsonObject { ["anyOf"] = new JsonArray(reference, new JsonObject { ["type"] = "null" }) } : reference;
    }
}
