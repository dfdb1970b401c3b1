using System.Text.Json;
using System.Text.Json.Nodes;

namespace Rinsewright.Contracts.Machines;

/// <summary>
/// How a part of the description stands in the file: its members in order. One table serves reading, writing, the list of figures and the JSON Schema.
/// </summary>
/// <param name="name">Part, as the words of its members name it.</param>
internal sealed class Shape<T>(string name, params Member<T>[] members)
    where T : class
{
    /// <summary>Part, as the words of its members name it.</summary>
    internal string Name => name;

    /// <summary>Lays what the file says over what is known so far. On a problem the member keeps its former value.</summary>
    internal T Read(JsonElement element, string path, T current, Problems problems, params ReadOnlySpan<string> except)
    {
        if (element.ValueKind != JsonValueKind.Object)
        {
            problems.Add(path, "not-an-object", ("fields", string.Join(", ", members.Select(m => m.Name))));
            return current;
        }

        problems.Twice(element, path);
        foreach (var property in element.EnumerateObject())
        {
            var at = path.Length == 0 ? property.Name : $"{path}.{property.Name}";
            if (except.Contains(property.Name))
            {
                continue;
            }

            if (Array.Find(members, m => m.Name == property.Name) is { } member)
            {
                current = member.Read(property.Value, at, current, problems);
            }
            else
            {
                problems.Add(at, "unknown-field", ("fields", string.Join(", ", members.Select(m => m.Name))));
            }
        }

        return current;
    }

    /// <summary>Writes the members.</summary>
    /// <param name="writer">Takes them.</param>
    /// <param name="value">The part.</param>
    /// <param name="typical">What reading starts from; null where it starts from nothing.</param>
    /// <param name="whole">Write those too that are as in <paramref name="typical"/>.</param>
    internal void Write(Utf8JsonWriter writer, T value, T? typical, bool whole)
    {
        foreach (var member in members)
        {
            if (whole || typical is null || member.Differs(value, typical))
            {
                member.Write(writer, value, typical, whole);
            }
        }
    }

    internal bool Differs(T left, T right) => Array.Exists(members, m => m.Differs(left, right));

    internal IEnumerable<FigureView> Figures(T value, string path) =>
        members.SelectMany(m => m.Figures(value, path.Length == 0 ? m.Name : $"{path}.{m.Name}", Word(m)));

    /// <summary>JSON Schema of the part.</summary>
    internal JsonObject Schema(SchemaWriter schemas)
    {
        var properties = new JsonObject();
        foreach (var member in members)
        {
            var schema = member.Schema(schemas);
            schema["description"] = schemas.Words[Word(member)];
            properties[member.Name] = schema;
        }

        return new JsonObject
        {
            ["type"] = "object",
            ["properties"] = properties,
            ["additionalProperties"] = false,
        };
    }

    /// <summary>Keys of the words that name the members.</summary>
    internal IEnumerable<string> WordKeys() => members.Select(Word).Concat(members.SelectMany(m => m.WordKeys()));

    private string Word(Member<T> member) => $"machine-field.{name}.{member.Name}";
}

/// <summary>One member of a part.</summary>
/// <param name="name">Name in the file.</param>
internal abstract class Member<T>(string name)
    where T : class
{
    /// <summary>Name in the file.</summary>
    internal string Name => name;

    internal abstract T Read(JsonElement element, string path, T current, Problems problems);

    internal abstract bool Differs(T left, T right);

    /// <summary>Writes name and value; what is absent is written as <c>null</c> where <paramref name="typical"/> has it.</summary>
    internal abstract void Write(Utf8JsonWriter writer, T value, T? typical, bool whole);

    internal abstract JsonObject Schema(SchemaWriter schemas);

    internal virtual IEnumerable<FigureView> Figures(T value, string path, string word) => [];

    internal virtual IEnumerable<string> WordKeys() => [];
}
