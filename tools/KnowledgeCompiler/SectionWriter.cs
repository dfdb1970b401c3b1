using System.Text;

namespace Rinsewright.KnowledgeCompiler;

/// <summary>Writes checked knowledge as <c>KnowledgeReader</c> reads it: the texts of a section, each once, then its values in the order of <see cref="Schema"/>.</summary>
internal sealed class SectionWriter : IDisposable
{
    private readonly MemoryStream body = new();
    private readonly Dictionary<string, int> numbers = new(StringComparer.Ordinal);

    private SectionWriter() { }

    /// <summary>A file of the knowledge, compiled.</summary>
    public static byte[] Compile(KnowledgeText text, string file, string? only)
    {
        using var writer = new SectionWriter();
        if (only is null)
        {
            writer.Write(Schema.Shapes[file], text[file]!);
        }
        else
        {
            writer.List(Schema.Shapes[file].First(f => f.Key == only), text[file]![only]);
        }

        return writer.Whole();
    }

    public void Dispose() => body.Dispose();

    private byte[] Whole()
    {
        using var whole = new MemoryStream();
        Int(whole, numbers.Count);
        foreach (var text in numbers.OrderBy(n => n.Value).Select(n => Encoding.UTF8.GetBytes(n.Key)))
        {
            Int(whole, text.Length);
            whole.Write(text);
        }

        body.WriteTo(whole);
        return whole.ToArray();
    }

    private void Write(Field[] shape, Node item)
    {
        foreach (var field in shape.Where(f => f.Holds != Holds.Left))
        {
            Write(field, item[field.Key], item);
        }
    }

    private void Write(Field field, Node? value, Node item)
    {
        switch (field.Holds)
        {
            case Holds.Flag:
                body.WriteByte(value?.Scalar == "true" ? (byte)1 : (byte)0);
                break;
            case Holds.References or Holds.Plains:
                Texts(value is null ? [] : item.Texts(field.Key));
                break;
            case Holds.Texts:
                var spanish = item.Texts(field.Spanish!);
                Int(body, value?.Items?.Count ?? 0);
                foreach (var (text, i) in (value?.Items ?? []).Select((t, i) => (t, i)))
                {
                    Text(text.Scalar!);
                    Text(spanish[i]);
                }

                break;
            case Holds.Shape:
                Write(Schema.Shapes[field.Of!], value!);
                break;
            case Holds.Shapes:
                List(field, value);
                break;
            case Holds.Map or Holds.Numbers or Holds.Lists:
                Map(field, value!);
                break;
            default:
                Single(field, value, item);
                break;
        }
    }

    private void Single(Field field, Node? value, Node item)
    {
        if (!field.Needed)
        {
            body.WriteByte(value is null ? (byte)0 : (byte)1);
        }

        if (value is null)
        {
            return;
        }

        if (field.Holds == Holds.Number)
        {
            body.Write(BitConverter.GetBytes(item.Number(field.Key)!.Value));
            return;
        }

        Text(value.Scalar!);
        if (field.Holds == Holds.Text)
        {
            Text(item.Text(field.Spanish!)!);
        }
    }

    private void Map(Field field, Node value)
    {
        Int(body, value.Keys!.Count);
        foreach (var (name, behind) in value.Keys)
        {
            Text(name);
            if (field.Holds == Holds.Numbers)
            {
                body.Write(BitConverter.GetBytes(value.Number(name)!.Value));
            }
            else if (field.Holds == Holds.Lists)
            {
                Texts([.. behind.Items!.Select(i => i.Scalar!)]);
            }
            else
            {
                Text(behind.Scalar!);
            }
        }
    }

    private void List(Field field, Node? value)
    {
        var items = value?.Items ?? [];
        Int(body, items.Count);
        foreach (var item in items)
        {
            Write(Schema.Shapes[field.Of!], item);
        }
    }

    private void Texts(IReadOnlyList<string> texts)
    {
        Int(body, texts.Count);
        foreach (var text in texts)
        {
            Text(text);
        }
    }

    private void Text(string text)
    {
        numbers.TryAdd(text, numbers.Count);
        Int(body, numbers[text]);
    }

    private static void Int(Stream stream, int value)
    {
        var left = (uint)value;
        while (left >= 0x80)
        {
            stream.WriteByte((byte)(left | 0x80));
            left >>= 7;
        }

        stream.WriteByte((byte)left);
    }
}
