namespace Rinsewright.KnowledgeCompiler;

/// <summary>Rules that hold for every key of its kind: <c>yaml</c>, <c>null</c>, <c>reference</c>, <c>source</c>, <c>language</c>.</summary>
internal sealed class ShapeRules(KnownIds known)
{
    /// <summary>Everything wrong with the keys of an item, and with what stands in them.</summary>
    public IEnumerable<Problem> Check(Field[] shape, Node item)
    {
        if (item.Keys is not { } keys)
        {
            return [new Problem("yaml", item, "here keys with values are expected")];
        }

        var allowed = shape.SelectMany(f => new[] { f.Key, f.Spanish }).OfType<string>().ToHashSet(StringComparer.Ordinal);
        var unknown = keys.Where(k => !allowed.Contains(k.Key))
            .Select(k => new Problem(
                "yaml",
                k.Value,
                $"{item.Name} has the key '{k.Key}', which nothing reads; allowed: {string.Join(", ", allowed)}"
            ));
        return unknown.Concat(shape.SelectMany(f => Check(f, item)));
    }

    private IEnumerable<Problem> Check(Field field, Node item)
    {
        var value = item[field.Key];
        if (value is null)
        {
            return !field.Needed ? []
                : field is { Key: "src" }
                    ?
                    [
                        new Problem(
                            "source",
                            item,
                            $"{item.Name} has no src; say where it comes from, if only common-practice or from-memory"
                        ),
                    ]
                : [new Problem("yaml", item, $"{item.Name} lacks '{field.Key}'")];
        }

        if (Empty(value))
        {
            return [new Problem("null", value, $"{item.Name}: '{field.Key}' is empty; leave the key out, or write []")];
        }

        return field.Holds switch
        {
            Holds.Text or Holds.Texts => Language(field, value, item),
            Holds.Reference or Holds.References => References(field, value, item),
            Holds.Number => item.Number(field.Key) is null ? [Wrong(value, item, field, "a number")] : [],
            Holds.Flag => value.Scalar is "true" or "false" ? [] : [Wrong(value, item, field, "true or false")],
            Holds.Shape => Check(Schema.Shapes[field.Of!], value),
            Holds.Shapes => value.Items is { } items
                ? items.SelectMany(i => Check(Schema.Shapes[field.Of!], i))
                : [Wrong(value, item, field, "a list")],
            Holds.Map or Holds.Numbers => value.Keys is null ? [Wrong(value, item, field, "names with values")] : Each(value, field, item),
            Holds.Lists => value.Keys is null
                ? [Wrong(value, item, field, "names with lists")]
                : value.Keys.SelectMany(k => References(field, k.Value, item)),
            Holds.Plain => field.Of is { } words && !words.Split('|').Contains(value.Scalar, StringComparer.Ordinal)
                ? [Wrong(value, item, field, "one of " + words.Replace("|", ", ", StringComparison.Ordinal))]
                : [],
            Holds.Plains => value.Items is null ? [Wrong(value, item, field, "a list")] : [],
            _ => [],
        };
    }

    // An empty list says "none"; an empty text, a null and a list with one of them in it say nothing.
    private static bool Empty(Node node) =>
        node.Scalar is { } text
            ? text.Trim().Length == 0 || (!node.Quoted && text is "~" or "null" or "Null" or "NULL")
            : node.Items is { } items && items.Any(Empty);

    private static IEnumerable<Problem> Each(Node value, Field field, Node item) =>
        field.Holds == Holds.Numbers
            ? value.Keys!.Where(k => value.Number(k.Key) is null).Select(k => Wrong(k.Value, item, field, "a number behind each name"))
            : [];

    private static IEnumerable<Problem> Language(Field field, Node value, Node item)
    {
        var spanish = item[field.Spanish!];
        if (field.Holds == Holds.Text ? value.Scalar is null : value.Items is null)
        {
            yield return Wrong(value, item, field, field.Holds == Holds.Text ? "a text" : "a list of texts");
        }
        else if (spanish is null || Empty(spanish))
        {
            yield return new Problem("language", value, $"{item.Name}: '{field.Key}' has no Spanish; add '{field.Spanish}'");
        }
        else if (spanish.Items?.Count != value.Items?.Count)
        {
            yield return new Problem("language", spanish, $"{item.Name}: '{field.Spanish}' must say as many things as '{field.Key}'");
        }
    }

    private IEnumerable<Problem> References(Field field, Node value, Node item)
    {
        IEnumerable<Node> named = value.Items ?? [value];
        return named
            .Where(n => n.Scalar is not { } id || !known[field.Of!].Contains(id))
            .Select(n => new Problem(
                field.Of == "source" ? "source" : "reference",
                n,
                $"{item.Name}: '{field.Key}' names {n.Scalar ?? "a list"}, and there is no {field.Of} of that id"
            ));
    }

    private static Problem Wrong(Node value, Node item, Field field, string expected) =>
        new("yaml", value, $"{item.Name}: '{field.Key}' must be {expected}");
}
