using System.Globalization;
using System.Text.Json;
using Rinsewright.Engine.Quantities;
using Rinsewright.Engine.Records;

namespace Rinsewright.Engine.Sanitization;

/// <summary>A rule set file that cannot be used: says where and what.</summary>
public sealed class RuleSetException(string path, string problem) : Exception($"{path}: {problem}")
{
    /// <summary>Path in the file, for example <c>limits[3].printed[0]</c>.</summary>
    public string Path { get; } = path;

    /// <summary>What is wrong there and what is allowed.</summary>
    public string Problem { get; } = problem;
}

/// <summary>
/// Reads rule sets from JSON (format <c>rinsewright.rules/1</c>, described in the folder's README). A set that names another one as its base takes
/// that one's rows over and replaces those of the same id, or drops those listed under <c>without</c>.
/// </summary>
public static class RuleSetFile
{
    /// <summary>Format id of the file.</summary>
    public const string Format = "rinsewright.rules/1";

    /// <summary>Reads one rule set.</summary>
    /// <param name="json">The file's text.</param>
    /// <param name="find">Finds the base set by id; null where there is none.</param>
    /// <exception cref="RuleSetException">Something in the file is missing or not allowed.</exception>
    public static RuleSet Parse(string json, Func<string, RuleSet?> find)
    {
        try
        {
            using var document = JsonDocument.Parse(
                json,
                new JsonDocumentOptions { CommentHandling = JsonCommentHandling.Skip, AllowTrailingCommas = true }
            );
            return Read(new Node(document.RootElement, "rule set"), find);
        }
        catch (JsonException e)
        {
            throw new RuleSetException($"line {e.LineNumber + 1}", "this is not JSON: " + e.Message.Split(". Path", 2)[0]);
        }
    }

    private static RuleSet Read(Node root, Func<string, RuleSet?> find)
    {
        if (root.Text("format") is var format && format != Format)
        {
            throw new RuleSetException("format", $"'{format}' is not known; this version reads '{Format}'");
        }

        var basedOn = root.OptionalText("basedOn");
        var parent = basedOn is null ? null : find(basedOn) ?? throw new RuleSetException("basedOn", $"there is no rule set '{basedOn}'");
        var sources = root.List("sources").ToDictionary(s => s.Text("id"), StringComparer.Ordinal);
        Citation Cite(Node row)
        {
            var id = row.Text("cite");
            if (!sources.TryGetValue(id, out var source))
            {
                throw new RuleSetException(row.Path + ".cite", $"there is no source '{id}' under sources");
            }

            return new Citation(
                source.Text("key"),
                row.OptionalText("locator") ?? "",
                source.Text("title"),
                source.OptionalText("jurisdiction"),
                source.OptionalText("edition"),
                row.Has("basis") ? row.Enum<Basis>("basis")
                    : source.Has("basis") ? source.Enum<Basis>("basis")
                    : Basis.Opened
            );
        }

        var limits = root.List("limits").Select(l => ReadLimit(l, Cite)).ToList();
        var without = root.Texts("without").ToHashSet(StringComparer.Ordinal);
        var replaced = limits.Select(l => l.Id).Concat(without).ToHashSet(StringComparer.Ordinal);
        var sanitizers = root.List("sanitizers").Select(r => ReadRow(r, Cite)).ToList();
        var contact = root.List("contact").Select(r => ReadContact(r, Cite)).ToList();
        var byHand = root.List("byHand").Select(r => ReadHand(r, Cite)).ToList();
        return new RuleSet(
            root.Text("id"),
            root.Text("title"),
            root.Text("jurisdiction"),
            root.Text("edition"),
            basedOn,
            [.. (parent?.Limits ?? []).Where(l => !replaced.Contains(l.Id)), .. limits],
            [.. (parent?.Sanitizers ?? []).Where(p => sanitizers.TrueForAll(s => s.Method != p.Method)), .. sanitizers],
            [.. (parent?.Contact ?? []).Where(p => contact.TrueForAll(c => c.Method != p.Method)), .. contact],
            [
                .. parent?.Instruments ?? [],
                .. root.List("instruments")
                    .Select(r => new InstrumentRule(
                        r.Enum<Dimension>("measures"),
                        r.Enum<InstrumentAspect>("aspect"),
                        r.Amounts("maximum"),
                        Cite(r)
                    )),
            ],
            [.. root.Texts("remarks")]
        )
        {
            ByHand = [.. (parent?.ByHand ?? []).Where(p => byHand.TrueForAll(h => (h.Step, h.Method) != (p.Step, p.Method))), .. byHand],
        };
    }

    private static Limit ReadLimit(Node l, Func<Node, Citation> cite)
    {
        var printed = l.Amounts("printed");
        if (printed.Count == 0 || printed.Any(p => p.Unit.Dimension != printed[0].Unit.Dimension))
        {
            throw new RuleSetException(l.Path + ".printed", "give the limit in one or more units of one kind");
        }

        return new Limit(
            l.Text("id"),
            l.Enum<MeasuringPoint>("point"),
            l.Enum<LimitSense>("sense"),
            printed,
            l.Enum<LimitForce>("force"),
            cite(l),
            l.Enums<MachineType>("machines"),
            l.Enums<SanitizingMethod>("methods"),
            l.Flag("besideDataPlate"),
            l.Amounts("while")
        );
    }

    private static SanitizerRow ReadRow(Node r, Func<Node, Citation> cite) =>
        new(
            r.Enum<SanitizingMethod>("method"),
            r.OptionalAmount("minimum"),
            r.OptionalAmount("below"),
            r.OptionalNumber("acidityMaximum"),
            r.Amounts("temperatureMinimum"),
            r.Amounts("hardnessMaximum"),
            cite(r)
        );

    private static ContactTime ReadContact(Node r, Func<Node, Citation> cite) =>
        new(
            r.Enum<SanitizingMethod>("method"),
            r.OptionalAmount("least") ?? throw new RuleSetException(r.Path + ".least", "is missing"),
            r.OptionalAmount("minimum"),
            r.OptionalNumber("acidityMaximum"),
            r.Amounts("temperatureMinimum"),
            cite(r)
        );

    private static HandRule ReadHand(Node r, Func<Node, Citation> cite) =>
        new(
            r.Enum<HandStep>("step"),
            r.Has("method") ? r.Enum<SanitizingMethod>("method") : null,
            r.OptionalAmount("minimum"),
            r.Amounts("temperatureMinimum"),
            r.OptionalAmount("least"),
            cite(r)
        );

    // A JSON object with the path that leads to it, so that every complaint says where.
    private sealed class Node(JsonElement element, string path)
    {
        public string Path => path;

        public bool Has(string name) => element.TryGetProperty(name, out var v) && v.ValueKind != JsonValueKind.Null;

        public string Text(string name) => OptionalText(name) ?? throw new RuleSetException($"{path}.{name}", "is missing");

        public string? OptionalText(string name) =>
            !Has(name) ? null
            : element.GetProperty(name) is { ValueKind: JsonValueKind.String } v ? v.GetString()
            : throw new RuleSetException($"{path}.{name}", "must be a text in quotation marks");

        public double? OptionalNumber(string name) =>
            !Has(name) ? null
            : element.GetProperty(name) is { ValueKind: JsonValueKind.Number } v ? v.GetDouble()
            : throw new RuleSetException($"{path}.{name}", "must be a number");

        public bool Flag(string name) => Has(name) && element.GetProperty(name).ValueKind == JsonValueKind.True;

        public T Enum<T>(string name)
            where T : struct, Enum => ParseEnum<T>(Text(name), $"{path}.{name}");

        public IReadOnlyList<T> Enums<T>(string name)
            where T : struct, Enum => [.. Texts(name).Select((t, i) => ParseEnum<T>(t, $"{path}.{name}[{i}]"))];

        public Amount? OptionalAmount(string name) => OptionalText(name) is { } t ? ParseAmount(t, $"{path}.{name}") : null;

        public IReadOnlyList<Amount> Amounts(string name) => [.. Texts(name).Select((t, i) => ParseAmount(t, $"{path}.{name}[{i}]"))];

        public IEnumerable<string> Texts(string name) =>
            Array(name)
                .Select(
                    (e, i) =>
                        e.ValueKind == JsonValueKind.String
                            ? e.GetString()!
                            : throw new RuleSetException($"{path}.{name}[{i}]", "must be a text in quotation marks")
                );

        public IEnumerable<Node> List(string name) =>
            Array(name)
                .Select(
                    (e, i) =>
                        e.ValueKind == JsonValueKind.Object
                            ? new Node(e, $"{name}[{i}]")
                            : throw new RuleSetException($"{name}[{i}]", "must be an object in braces")
                );

        private IEnumerable<JsonElement> Array(string name) =>
            !Has(name) ? []
            : element.GetProperty(name) is { ValueKind: JsonValueKind.Array } v ? v.EnumerateArray()
            : throw new RuleSetException($"{path}.{name}", "must be a list in square brackets");

        private static T ParseEnum<T>(string text, string path)
            where T : struct, Enum =>
            System.Enum.TryParse<T>(text, true, out var value) && System.Enum.IsDefined(value)
                ? value
                : throw new RuleSetException(
                    path,
                    $"'{text}' is not known; use one of {string.Join(", ", System.Enum.GetNames<T>().Select(CamelCase))}"
                );

        private static Amount ParseAmount(string text, string path)
        {
            var parts = text.Split(' ', 2, StringSplitOptions.TrimEntries);
            return
                parts.Length == 2
                && double.TryParse(parts[0], NumberStyles.Float, CultureInfo.InvariantCulture, out var value)
                && double.IsFinite(value)
                && Units.Find(parts[1]) is { } unit
                ? new Amount(value, unit)
                : throw new RuleSetException(path, $"'{text}' is not a number, a space and a UCUM unit such as '180 [degF]' or '82 Cel'");
        }

        private static string CamelCase(string name) => char.ToLowerInvariant(name[0]) + name[1..];
    }
}
