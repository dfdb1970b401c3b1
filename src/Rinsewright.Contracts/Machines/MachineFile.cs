using System.Text;
using System.Text.Encodings.Web;
using System.Text.Json;
using System.Text.Json.Nodes;
using Rinsewright.Contracts.Language;
using Rinsewright.Engine.Machines;
using Rinsewright.Engine.Quantities;

namespace Rinsewright.Contracts.Machines;

/// <summary>What came of reading a machine file.</summary>
/// <param name="Machine">The machine; null where there is any problem.</param>
/// <param name="Problems">Everything that cannot be, in the order of the file, then what the figures contradict each other in.</param>
public sealed record MachineReading(Machine? Machine, IReadOnlyList<MachineProblem> Problems);

/// <summary>One change of a what-if: a figure, a word, a count, or <c>none</c> for an optional part.</summary>
/// <param name="Path">Place as in the file, for example <c>supply.water</c>.</param>
/// <param name="Text">What was typed, for example <c>120 F</c>.</param>
public sealed record MachineChange(string Path, string Text);

/// <summary>
/// The machine file, <c>rinsewright.machine/1</c>. It says the kind and what is known of the machine; every figure it leaves out is the typical one of the
/// kind, so that a technician's file holds only what somebody has looked at. Described in the handbook.
/// </summary>
public static class MachineFile
{
    /// <summary>Schema id of the file.</summary>
    public const string Schema = "rinsewright.machine/1";

    private static readonly JsonDocumentOptions Reading = new() { CommentHandling = JsonCommentHandling.Skip, AllowTrailingCommas = true };

    /// <summary>Kinds as the file and the command line name them.</summary>
    public static IReadOnlyList<string> Kinds { get; } = [.. Enum.GetValues<MachineKind>().Select(KindId)];

    /// <summary>Id of a kind, for example <c>rack-conveyor-two-tank</c>.</summary>
    public static string KindId(MachineKind kind) => Wire.WordKey(kind)["machine-kind.".Length..];

    /// <summary>Kind of an id; null where there is none.</summary>
    public static MachineKind? Kind(string id)
    {
        foreach (var kind in Enum.GetValues<MachineKind>())
        {
            if (KindId(kind) == id)
            {
                return kind;
            }
        }

        return null;
    }

    /// <summary>Reads a machine. Collects every problem, not only the first; never throws for what is in the file.</summary>
    public static MachineReading Read(string json)
    {
        var problems = new Problems();
        try
        {
            using var document = JsonDocument.Parse(json, Reading);
            var machine = Read(document.RootElement, problems);
            return new MachineReading(problems.All.Count == 0 ? machine : null, problems.All);
        }
        catch (JsonException e)
        {
            problems.Add("", "not-json", ("line", (e.LineNumber ?? 0) + 1), ("column", (e.BytePositionInLine ?? 0) + 1));
            return new MachineReading(null, problems.All);
        }
    }

    /// <summary>Writes a machine so that <see cref="Read"/> gives it back.</summary>
    /// <param name="machine">The machine.</param>
    /// <param name="whole">Every figure, the typical ones too; otherwise only what differs from the typical machine of the kind.</param>
    public static string Write(Machine machine, bool whole = true)
    {
        using var stream = new MemoryStream();
        // Text of its own file, never inside a web page: °F stays °F. The same line ends on every system.
        var options = new JsonWriterOptions
        {
            Indented = true,
            NewLine = "\n",
            Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping,
        };
        using (var writer = new Utf8JsonWriter(stream, options))
        {
            writer.WriteStartObject();
            writer.WriteString("schema", Schema);
            writer.WriteString("kind", KindId(machine.Kind));
            MachineShape.Machine.Write(writer, machine, TypicalMachines.Of(machine.Kind), whole);
            writer.WriteEndObject();
        }

        return Encoding.UTF8.GetString(stream.ToArray()) + "\n";
    }

    /// <summary>Every figure of a machine with its place in the file, in the order of the file; absent optional ones included.</summary>
    public static IReadOnlyList<FigureView> Figures(Machine machine) => [.. MachineShape.Machine.Figures(machine, "")];

    /// <summary>Says what the figures of a machine contradict each other in; for machines that were not read from a file.</summary>
    public static IReadOnlyList<MachineProblem> Check(Machine machine) => Read(Write(machine)).Problems;

    /// <summary>The machine with changes laid over it, checked like a file.</summary>
    /// <param name="machine">The machine as it stands.</param>
    /// <param name="changes">Changes in their order. A changed figure becomes typical: a what-if makes nothing known.</param>
    public static MachineReading With(Machine machine, IEnumerable<MachineChange> changes)
    {
        var problems = new Problems();
        foreach (var change in changes)
        {
            if (Overlay(machine, change, problems) is { } overlay)
            {
                using var document = JsonDocument.Parse(overlay.ToJsonString());
                machine = MachineShape.Machine.Read(document.RootElement, "", machine, problems);
            }
        }

        new MachineLaws(machine, problems).Check();
        return new MachineReading(problems.All.Count == 0 ? machine : null, problems.All);
    }

    /// <summary>The machine with figures laid over it that were found by measuring, checked like a file.</summary>
    /// <param name="machine">The machine as it stands.</param>
    /// <param name="measured">Places and amounts.</param>
    /// <param name="source">The readings they follow from.</param>
    /// <param name="on">Day of the readings.</param>
    public static MachineReading Measured(Machine machine, IEnumerable<(string Path, Amount Value)> measured, string source, DateOnly on)
    {
        var problems = new Problems();
        foreach (var (path, value) in measured)
        {
            var overlay = Nested(path, JsonNode.Parse(FigureJson.Line(value, Provenance.Measured, source, on)));
            using var document = JsonDocument.Parse(overlay.ToJsonString());
            machine = MachineShape.Machine.Read(document.RootElement, "", machine, problems);
        }

        new MachineLaws(machine, problems).Check();
        return new MachineReading(problems.All.Count == 0 ? machine : null, problems.All);
    }

    /// <summary>JSON Schema (2020-12) of the file, with the descriptions in one language.</summary>
    public static string JsonSchema(Words words)
    {
        var schemas = new SchemaWriter(words);
        var root = MachineShape.Machine.Schema(schemas);
        var properties = root["properties"]!.AsObject();
        properties.Insert(0, "$schema", new JsonObject { ["type"] = "string" });
        properties.Insert(0, "kind", SchemaWriter.Choice([.. Kinds], optional: false));
        properties.Insert(0, "schema", new JsonObject { ["const"] = Schema });
        var file = new JsonObject
        {
            ["$schema"] = "https://json-schema.org/draft/2020-12/schema",
            ["title"] = Schema,
            ["description"] = words["machine-file.about"],
            ["type"] = "object",
            ["required"] = new JsonArray("schema", "kind"),
            ["properties"] = properties.DeepClone(),
            ["additionalProperties"] = false,
            ["$defs"] = schemas.Definitions,
        };
        return file.ToJsonString(
                new JsonSerializerOptions
                {
                    WriteIndented = true,
                    NewLine = "\n",
                    Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping,
                }
            ) + "\n";
    }

    private static Machine? Read(JsonElement root, Problems problems)
    {
        if (root.ValueKind != JsonValueKind.Object)
        {
            problems.Add("", "not-a-machine", ("schema", Schema));
            return null;
        }

        if (!root.TryGetProperty("schema", out var schema) || schema.ValueKind != JsonValueKind.String || !schema.ValueEquals(Schema))
        {
            problems.Add(
                "schema",
                "schema",
                ("value", schema.ValueKind == JsonValueKind.Undefined ? "" : schema.ToString()),
                ("schema", Schema)
            );
        }

        var id = root.TryGetProperty("kind", out var text) ? text.ToString() : "";
        if (Kind(id) is not { } kind)
        {
            problems.Add("kind", id.Length == 0 ? "kind-missing" : "not-among", ("value", id), ("values", string.Join(", ", Kinds)));
            return null;
        }

        // "$schema" points an editor to the JSON Schema.
        var machine = MachineShape.Machine.Read(root, "", TypicalMachines.Of(kind), problems, "schema", "kind", "$schema");
        new MachineLaws(machine, problems).Check();
        return machine;
    }

    private static JsonNode? Overlay(Machine machine, MachineChange change, Problems problems)
    {
        if (change.Text is "none")
        {
            return Nested(change.Path, null);
        }

        if (Figures(machine).FirstOrDefault(f => f.Path == change.Path) is { } figure)
        {
            if (AmountText.TryParse(change.Text, figure.Dimension, out var amount, out var problem))
            {
                return Nested(change.Path, JsonNode.Parse(FigureJson.Line(amount, Provenance.Typical, null, null)));
            }

            problems.Add(
                change.Path,
                "not-read",
                ("text", change.Text),
                ("why", new Engine.Records.Statement(problem!.Key, [new("text", problem.Text), new("example", Example(figure.Dimension))]))
            );
            return null;
        }

        return Nested(
            change.Path,
            double.TryParse(change.Text, System.Globalization.CultureInfo.InvariantCulture, out var number) ? JsonValue.Create(number)
                : bool.TryParse(change.Text, out var flag) ? JsonValue.Create(flag)
                : JsonValue.Create(change.Text)
        );
    }

    private static string Example(Dimension dimension) =>
        dimension == Dimension.Temperature ? "120 °F" : $"1 {Units.Of(dimension)[^1].Symbol}";

    private static JsonObject Nested(string path, JsonNode? value)
    {
        var parts = path.Split('.');
        JsonNode? node = value;
        foreach (var part in parts.Reverse())
        {
            node = new JsonObject { [part] = node };
        }

        return (JsonObject)node!;
    }
}
