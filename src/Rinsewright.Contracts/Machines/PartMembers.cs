using System.Text.Json;
using System.Text.Json.Nodes;

namespace Rinsewright.Contracts.Machines;

/// <summary>A part of a part. <c>null</c> in the file takes an optional one away; one that the typical machine lacks starts from <paramref name="blank"/>.</summary>
/// <param name="name">Name in the file.</param>
/// <param name="shape">Its members.</param>
/// <param name="get">Finds it.</param>
/// <param name="set">Puts it in.</param>
/// <param name="blank">What an added one starts from; null where a machine of a kind without it cannot have it.</param>
/// <param name="optional">May be taken away.</param>
/// <param name="adapt">Turns the former part into a start for what the file describes, where its kind changes.</param>
internal sealed class PartMember<T, TPart>(
    string name,
    Shape<TPart> shape,
    Func<T, TPart?> get,
    Func<T, TPart?, T> set,
    Func<TPart>? blank = null,
    bool optional = false,
    Func<JsonElement, TPart, TPart>? adapt = null
) : Member<T>(name)
    where T : class
    where TPart : class
{
    internal override T Read(JsonElement element, string path, T current, Problems problems)
    {
        if (element.ValueKind == JsonValueKind.Null && (optional || get(current) is null))
        {
            return set(current, null);
        }

        if (element.ValueKind == JsonValueKind.Null)
        {
            problems.Add(path, "needed");
            return current;
        }

        if ((get(current) ?? blank?.Invoke()) is not { } start)
        {
            problems.Add(path, "not-of-kind");
            return current;
        }

        if (adapt is not null && element.ValueKind == JsonValueKind.Object)
        {
            start = adapt(element, start);
        }

        return set(current, shape.Read(element, path, start, problems));
    }

    internal override bool Differs(T left, T right) =>
        (get(left), get(right)) switch
        {
            (null, null) => false,
            ({ } a, { } b) => shape.Differs(a, b),
            _ => true,
        };

    internal override void Write(Utf8JsonWriter writer, T value, T? typical, bool whole)
    {
        if (get(value) is { } part)
        {
            writer.WriteStartObject(Name);
            shape.Write(writer, part, (typical is null ? null : get(typical)) ?? blank?.Invoke(), whole);
            writer.WriteEndObject();
        }
        else if (typical is not null && get(typical) is not null)
        {
            writer.WriteNull(Name);
        }
    }

    internal override JsonObject Schema(SchemaWriter schemas) => schemas.Part(shape, optional || blank is null);

    internal override IEnumerable<FigureView> Figures(T value, string path, string word) =>
        get(value) is { } part ? shape.Figures(part, path) : [];

    internal override IEnumerable<string> WordKeys() => shape.WordKeys();
}

/// <summary>Parts by their id. The kind says which there are; those with a <paramref name="blank"/> may be added and taken away.</summary>
/// <param name="name">Name in the file.</param>
/// <param name="shape">Members of each.</param>
/// <param name="id">Id of a part.</param>
/// <param name="get">Finds them.</param>
/// <param name="set">Puts them in.</param>
/// <param name="blank">What an added one starts from; null where there is none of that id.</param>
/// <param name="ids">Ids that may be added or taken away; empty for none.</param>
/// <param name="order">Sorts them; null keeps the order.</param>
internal sealed class PartsMember<T, TPart>(
    string name,
    Shape<TPart> shape,
    Func<TPart, string> id,
    Func<T, IReadOnlyList<TPart>> get,
    Func<T, IReadOnlyList<TPart>, T> set,
    string[] ids,
    Func<string, T, TPart>? blank = null,
    Comparison<TPart>? order = null
) : Member<T>(name)
    where T : class
    where TPart : class
{
    internal override T Read(JsonElement element, string path, T current, Problems problems)
    {
        var parts = get(current).ToList();
        var known = blank is null ? [.. parts.Select(id)] : ids;
        if (element.ValueKind != JsonValueKind.Object)
        {
            problems.Add(path, "not-by-id", ("ids", string.Join(", ", known)));
            return current;
        }

        problems.Twice(element, path);
        foreach (var property in element.EnumerateObject())
        {
            var at = $"{path}.{property.Name}";
            var index = parts.FindIndex(p => id(p) == property.Name);
            if (!known.Contains(property.Name, StringComparer.Ordinal))
            {
                problems.Add(at, "unknown-part", ("ids", string.Join(", ", known)));
            }
            else if (property.Value.ValueKind == JsonValueKind.Null)
            {
                if (blank is null)
                {
                    problems.Add(at, "needed");
                }
                else if (index >= 0)
                {
                    parts.RemoveAt(index);
                }
            }
            else if (index >= 0)
            {
                parts[index] = shape.Read(property.Value, at, parts[index], problems);
            }
            else
            {
                parts.Add(shape.Read(property.Value, at, blank!(property.Name, current), problems));
            }
        }

        if (order is not null)
        {
            parts.Sort(order);
        }

        return set(current, parts);
    }

    internal override bool Differs(T left, T right)
    {
        var (a, b) = (get(left), get(right));
        return a.Count != b.Count || a.Zip(b).Any(p => id(p.First) != id(p.Second) || shape.Differs(p.First, p.Second));
    }

    internal override void Write(Utf8JsonWriter writer, T value, T? typical, bool whole)
    {
        writer.WriteStartObject(Name);
        var others = typical is null ? [] : get(typical);
        foreach (var part in get(value))
        {
            var other = others.FirstOrDefault(o => id(o) == id(part));
            if (whole || other is null || shape.Differs(part, other))
            {
                writer.WriteStartObject(id(part));
                shape.Write(writer, part, other ?? blank?.Invoke(id(part), value), whole);
                writer.WriteEndObject();
            }
        }

        foreach (var absent in others.Select(id).Except(get(value).Select(id), StringComparer.Ordinal))
        {
            writer.WriteNull(absent);
        }

        writer.WriteEndObject();
    }

    internal override JsonObject Schema(SchemaWriter schemas)
    {
        var properties = new JsonObject();
        foreach (var one in ids)
        {
            properties[one] = schemas.Part(shape, blank is not null);
        }

        return new JsonObject
        {
            ["type"] = "object",
            ["properties"] = properties,
            ["additionalProperties"] = false,
        };
    }

    internal override IEnumerable<FigureView> Figures(T value, string path, string word) =>
        get(value).SelectMany(p => shape.Figures(p, $"{path}.{id(p)}"));

    internal override IEnumerable<string> WordKeys() => shape.WordKeys();
}
