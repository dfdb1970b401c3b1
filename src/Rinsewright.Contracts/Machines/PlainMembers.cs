using System.Text.Json;
using System.Text.Json.Nodes;

namespace Rinsewright.Contracts.Machines;

/// <summary>A text; where <paramref name="among"/> is given, one of these. <c>null</c> in the file takes an optional one away.</summary>
internal sealed class TextMember<T>(
    string name,
    Func<T, string?> get,
    Func<T, string?, T> set,
    string[]? among = null,
    bool optional = true
) : Member<T>(name)
    where T : class
{
    internal override T Read(JsonElement element, string path, T current, Problems problems)
    {
        if (element.ValueKind == JsonValueKind.Null && optional)
        {
            return set(current, null);
        }

        var text = element.ValueKind == JsonValueKind.String ? element.GetString() : null;
        if (among is not null && !among.Contains(text, StringComparer.Ordinal))
        {
            problems.Add(path, "not-among", ("value", element.ToString()), ("values", string.Join(", ", among)));
            return current;
        }

        if (text is null)
        {
            problems.Add(path, "not-a-text");
            return current;
        }

        return set(current, text);
    }

    internal override bool Differs(T left, T right) => get(left) != get(right);

    internal override void Write(Utf8JsonWriter writer, T value, T? typical, bool whole)
    {
        if (get(value) is { } text)
        {
            writer.WriteString(Name, text);
        }
        else if (typical is not null && get(typical) is not null)
        {
            writer.WriteNull(Name);
        }
    }

    internal override JsonObject Schema(SchemaWriter schemas) =>
        among is not null ? SchemaWriter.Choice(among, optional)
        : optional ? new JsonObject { ["type"] = new JsonArray("string", "null") }
        : new JsonObject { ["type"] = "string" };
}

/// <summary>One of an enumeration, in camel case.</summary>
internal sealed class WordMember<T, TWord>(string name, Func<T, TWord> get, Func<T, TWord, T> set) : Member<T>(name)
    where T : class
    where TWord : struct, Enum
{
    internal override T Read(JsonElement element, string path, T current, Problems problems)
    {
        foreach (var word in Enum.GetValues<TWord>())
        {
            if (element.ValueKind == JsonValueKind.String && element.ValueEquals(Wire.Name(word)))
            {
                return set(current, word);
            }
        }

        problems.Add(
            path,
            "not-among",
            ("value", element.ToString()),
            ("values", string.Join(", ", Enum.GetValues<TWord>().Select(Wire.Name)))
        );
        return current;
    }

    internal override bool Differs(T left, T right) => !get(left).Equals(get(right));

    internal override void Write(Utf8JsonWriter writer, T value, T? typical, bool whole) => writer.WriteString(Name, Wire.Name(get(value)));

    internal override JsonObject Schema(SchemaWriter schemas) =>
        SchemaWriter.Choice([.. Enum.GetValues<TWord>().Select(Wire.Name)], optional: false);
}

/// <summary>Yes or no.</summary>
internal sealed class FlagMember<T>(string name, Func<T, bool> get, Func<T, bool, T> set) : Member<T>(name)
    where T : class
{
    internal override T Read(JsonElement element, string path, T current, Problems problems)
    {
        if (element.ValueKind is JsonValueKind.True or JsonValueKind.False)
        {
            return set(current, element.GetBoolean());
        }

        problems.Add(path, "not-a-flag");
        return current;
    }

    internal override bool Differs(T left, T right) => get(left) != get(right);

    internal override void Write(Utf8JsonWriter writer, T value, T? typical, bool whole) => writer.WriteBoolean(Name, get(value));

    internal override JsonObject Schema(SchemaWriter schemas) => new() { ["type"] = "boolean" };
}

/// <summary>A count or a rate per hour without a unit; <c>null</c> takes an optional one away.</summary>
internal sealed class CountMember<T>(string name, double least, double most, bool whole, Func<T, double?> get, Func<T, double?, T> set)
    : Member<T>(name)
    where T : class
{
    internal override T Read(JsonElement element, string path, T current, Problems problems)
    {
        if (element.ValueKind == JsonValueKind.Null && !whole)
        {
            return set(current, null);
        }

        if (element.ValueKind != JsonValueKind.Number || !element.TryGetDouble(out var number) || (whole && number != Math.Floor(number)))
        {
            problems.Add(path, whole ? "not-whole" : "not-a-number");
            return current;
        }

        if (number < least || number > most)
        {
            problems.Add(path, "count-outside", ("least", least), ("most", most), ("value", number));
            return current;
        }

        return set(current, number);
    }

    internal override bool Differs(T left, T right) => get(left) != get(right);

    internal override void Write(Utf8JsonWriter writer, T value, T? typical, bool whole)
    {
        if (get(value) is { } number)
        {
            writer.WriteNumber(Name, number);
        }
        else if (typical is not null && get(typical) is not null)
        {
            writer.WriteNull(Name);
        }
    }

    internal override JsonObject Schema(SchemaWriter schemas) =>
        new()
        {
            ["type"] = whole ? "integer" : new JsonArray("number", "null"),
            ["minimum"] = least,
            ["maximum"] = most,
        };
}
