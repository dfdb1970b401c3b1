using System.Text.RegularExpressions;

namespace Rinsewright.KnowledgeCompiler;

/// <summary>Every id by the kind of thing it names.</summary>
internal sealed partial class KnownIds
{
    private readonly Dictionary<string, HashSet<string>> kinds = new(StringComparer.Ordinal);
    private readonly List<Problem> problems = [];

    public KnownIds(KnowledgeText text)
    {
        foreach (
            var (kind, list) in new[]
            {
                ("zone", "zones"),
                ("hazard", "hazards"),
                ("person", "people"),
                ("state", "states"),
                ("frequency", "frequencies"),
                ("impact", "impacts"),
                ("agent", "agents"),
            }
        )
        {
            Add(kind, text.List("common", list), list);
        }

        Add("source", text.List("sources", "sources"), "sources");
        Add("machine-type", text.List("parts", "machine-types"), "machine-types");
        Add("part", text.List("parts", "parts"), "parts");
        Add("fault", text.List("faults", "faults"), "faults");
        Add("procedure", text.List("procedures", "procedures"), "procedures");
        Add("step", [.. text.List("procedures", "procedures").SelectMany(p => p.List("steps"))], "steps");
        Add("symptom", text.List("observables", "symptoms"), "symptoms");
        Add("reading", text.List("observables", "readings"), "readings");
        Add("check", text.List("observables", "checks"), "checks");
        Add("reading-state", [.. text.List("observables", "readings").SelectMany(r => r.List("states"))], "reading-states");
        Add("links", text.List("likelihoods", "faults"), "links");
        Add("ware-result", text.List("ware-results", "results"), "results");
        foreach (
            var list in (string[])["principles", "stations", "verdicts", "report-contents", "intervals", "van-stock", "sign-off", "quiz"]
        )
        {
            Add(list, text.List("service-visit", list), list);
        }

        Add("consumption", text.List("service-visit", "consumption-per-1000-racks"), "consumption-per-1000-racks");
        Add("topic", text.List("service-visit", "training-topics"), "training-topics");
        Add("term", text.List("glossary", "terms"), "terms");
        Add("case", text.List("diagnosis-cases", "cases"), "cases");

        kinds["mode"] = new(StringComparer.Ordinal) { "hot", "chemical" };
        kinds["machine"] = [.. this["machine-type"], .. text["common"]?["groups"]?.Keys?.Keys ?? []];
        kinds["finding"] = [.. this["symptom"], .. this["reading-state"], .. this["check"]];
        kinds["observable"] = [.. this["finding"], .. this["reading"]];
        kinds["agent-or-rinse"] = [.. this["agent"], "rinse"];
    }

    /// <summary>Ids that stand twice or are not written as ids are.</summary>
    public IReadOnlyList<Problem> Problems => problems;

    public IReadOnlySet<string> this[string kind] => kinds[kind];

    private void Add(string kind, IReadOnlyList<Node> items, string list)
    {
        var ids = new HashSet<string>(StringComparer.Ordinal);
        foreach (var item in items)
        {
            if (item.Text("id") is not { } id)
            {
                continue; // the shape says that it is missing
            }

            if (!ids.Add(id))
            {
                problems.Add(new Problem("id", item, $"{id} stands twice in {list}; give one another id"));
            }

            if (kind == "reading-state" ? !StateId().IsMatch(id) : !PlainId().IsMatch(id))
            {
                problems.Add(new Problem("id", item, $"{id}: write ids in small letters, digits and single hyphens"));
            }

            if (
                Schema.Prefixes.TryGetValue(list, out var prefixes)
                && !Array.Exists(prefixes, p => id.StartsWith(p, StringComparison.Ordinal))
            )
            {
                problems.Add(new Problem("id", item, $"{id}: an id of {list} begins with {string.Join(" or ", prefixes)}"));
            }
        }

        kinds[kind] = ids;
    }

    [GeneratedRegex("^[a-z0-9]+(-[a-z0-9]+)*$", RegexOptions.CultureInvariant | RegexOptions.ExplicitCapture, 1000)]
    private static partial Regex PlainId();

    [GeneratedRegex("^rd-[a-z0-9-]+/[a-z-]+$", RegexOptions.CultureInvariant | RegexOptions.ExplicitCapture, 1000)]
    private static partial Regex StateId();
}
