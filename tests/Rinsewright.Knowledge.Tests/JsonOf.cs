using System.Text;
using System.Text.Json;
using Rinsewright.KnowledgeCompiler;

namespace Rinsewright.Knowledge.Tests;

/// <summary>Writes checked knowledge as JSON, the other way round: camel-case names, texts as an array of English and Spanish, empty lists where a list is left out.</summary>
internal static class JsonOf
{
    private static readonly JsonWriterOptions Compact = new()
    {
        Encoder = System.Text.Encodings.Web.JavaScriptEncoder.UnsafeRelaxedJsonEscaping,
    };

    /// <summary>A file of the knowledge as JSON.</summary>
    public static byte[] Compile(KnowledgeText text, string file, string? only)
    {
        using var stream = new MemoryStream();
        using (var json = new Utf8JsonWriter(stream, Compact))
        {
            if (only is null)
            {
                Write(json, Schema.Shapes[file], text[file]!);
            }
            else
            {
                WriteList(json, Schema.Shapes[file].First(f => f.Key == only), text[file]![only]!);
            }
        }

        return stream.ToArray();
    }

    private static void Write(Utf8JsonWriter json, Field[] shape, Node item)
    {
        json.WriteStartObject();
        foreach (var field in shape.Where(f => f.Holds != Holds.Left))
        {
            var name = Camel(field.As ?? field.Key);
            if (item[field.Key] is { } value)
            {
                json.WritePropertyName(name);
                Write(json, field, value, item);
            }
            else if (field.Holds is Holds.References or Holds.Texts or Holds.Plains or Holds.Shapes)
            {
                json.WriteStartArray(name);
                json.WriteEndArray();
            }
            else if (field.Holds == Holds.Flag && field.Key == "licensed")
            {
                json.WriteBoolean(name, false);
            }
        }

        json.WriteEndObject();
    }

    private static void Write(Utf8JsonWriter json, Field field, Node value, Node item)
    {
        switch (field.Holds)
        {
            case Holds.Text:
                Phrase(json, value.Scalar!, item.Text(field.Spanish!)!);
                break;
            case Holds.Texts:
                json.WriteStartArray();
                foreach (var (english, spanish) in value.Items!.Zip(item[field.Spanish!]!.Items!))
                {
                    Phrase(json, english.Scalar!, spanish.Scalar!);
                }

                json.WriteEndArray();
                break;
            case Holds.References or Holds.Plains:
                Strings(json, value.Scalar is { } one ? [one] : [.. value.Items!.Select(i => i.Scalar!)]);
                break;
            case Holds.Number:
                json.WriteRawValue(value.Scalar!);
                break;
            case Holds.Flag:
                json.WriteBooleanValue(value.Scalar == "true");
                break;
            case Holds.Shape:
                Write(json, Schema.Shapes[field.Of!], value);
                break;
            case Holds.Shapes:
                WriteList(json, field, value);
                break;
            case Holds.Map or Holds.Numbers or Holds.Lists:
                WriteMap(json, field, value);
                break;
            default:
                json.WriteStringValue(value.Scalar);
                break;
        }
    }

    private static void WriteMap(Utf8JsonWriter json, Field field, Node value)
    {
        json.WriteStartObject();
        foreach (var (name, behind) in value.Keys!)
        {
            json.WritePropertyName(name);
            if (field.Holds == Holds.Numbers)
            {
                json.WriteRawValue(behind.Scalar!);
            }
            else if (field.Holds == Holds.Lists)
            {
                Strings(json, [.. behind.Items!.Select(i => i.Scalar!)]);
            }
            else
            {
                json.WriteStringValue(behind.Scalar);
            }
        }

        json.WriteEndObject();
    }

    private static void WriteList(Utf8JsonWriter json, Field field, Node value)
    {
        json.WriteStartArray();
        foreach (var item in value.Items!)
        {
            Write(json, Schema.Shapes[field.Of!], item);
        }

        json.WriteEndArray();
    }

    private static void Strings(Utf8JsonWriter json, IEnumerable<string> texts)
    {
        json.WriteStartArray();
        foreach (var text in texts)
        {
            json.WriteStringValue(text);
        }

        json.WriteEndArray();
    }

    private static void Phrase(Utf8JsonWriter json, string english, string spanish) => Strings(json, [english, spanish]);

    private static string Camel(string key)
    {
        var name = new StringBuilder(key.Length);
        var up = false;
        foreach (var c in key)
        {
            if (c == '-')
            {
                up = true;
                continue;
            }

            name.Append(up ? char.ToUpperInvariant(c) : c);
            up = false;
        }

        return name.ToString();
    }
}
