using System.Text;
using Rinsewright.Engine.Knowledge;

namespace Rinsewright.Knowledge;

/// <summary>
/// Reads a compiled section. It begins with its texts, each once; what follows names them by number. Keys stand in the order of the compiler's <c>Schema</c> without
/// their names, so that a browser reads everything in a moment; reader and schema are held together by a test that goes round by another way.
/// </summary>
internal sealed class KnowledgeReader
{
    private readonly byte[] bytes;
    private readonly string[] texts;
    private int at;

    /// <summary>Over the bytes of a section.</summary>
    public KnowledgeReader(byte[] bytes)
    {
        this.bytes = bytes;
        texts = new string[Int()];
        for (var i = 0; i < texts.Length; i++)
        {
            var length = Int();
            texts[i] = Encoding.UTF8.GetString(bytes, at, length);
            at += length;
        }
    }

    /// <summary>Whether everything was read.</summary>
    public bool AtEnd => at == bytes.Length;

    /// <summary>A whole number that is not negative, seven bits a byte, the lowest first.</summary>
    public int Int()
    {
        var (value, shift) = (0, 0);
        while (true)
        {
            var b = bytes[at++];
            value |= (b & 0x7f) << shift;
            if (b < 0x80)
            {
                return value;
            }

            shift += 7;
        }
    }

    /// <summary>A number.</summary>
    public double Number()
    {
        var value = BitConverter.ToDouble(bytes, at);
        at += sizeof(double);
        return value;
    }

    /// <summary>A number without decimals.</summary>
    public int Whole() => (int)Number();

    /// <summary>True or false.</summary>
    public bool Flag() => bytes[at++] != 0;

    /// <summary>A text.</summary>
    public string Text() => texts[Int()];

    /// <summary>A text that may be left out.</summary>
    public string? TextOrNull() => Flag() ? Text() : null;

    /// <summary>A number that may be left out.</summary>
    public double? NumberOrNull() => Flag() ? Number() : null;

    /// <summary>A text in both languages.</summary>
    public Phrase Phrase()
    {
        var english = Text();
        return new Phrase(english, Text());
    }

    /// <summary>A text in both languages that may be left out.</summary>
    public Phrase? PhraseOrNull() => Flag() ? Phrase() : null;

    /// <summary>Texts.</summary>
    public IReadOnlyList<string> Texts()
    {
        var found = new string[Int()];
        for (var i = 0; i < found.Length; i++)
        {
            found[i] = Text();
        }

        return found;
    }

    /// <summary>Texts in both languages.</summary>
    public IReadOnlyList<Phrase> Phrases()
    {
        var found = new Phrase[Int()];
        for (var i = 0; i < found.Length; i++)
        {
            found[i] = Phrase();
        }

        return found;
    }

    /// <summary>Items, each by its own reader.</summary>
    public IReadOnlyList<T> List<T>(Func<KnowledgeReader, T> read)
    {
        var found = new T[Int()];
        for (var i = 0; i < found.Length; i++)
        {
            found[i] = read(this);
        }

        return found;
    }

    /// <summary>Names with what stands behind them.</summary>
    public IReadOnlyDictionary<string, T> Map<T>(Func<KnowledgeReader, T> read)
    {
        var count = Int();
        var found = new Dictionary<string, T>(count, StringComparer.Ordinal);
        for (var i = 0; i < count; i++)
        {
            var name = Text();
            found.Add(name, read(this));
        }

        return found;
    }
}
