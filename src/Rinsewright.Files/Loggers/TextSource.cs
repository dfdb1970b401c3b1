using System.Text;

namespace Rinsewright.Files.Loggers;

/// <summary>The text of a file, from its start as often as wanted.</summary>
internal sealed class TextSource(Stream stream, Encoding encoding, int skip)
{
    public Stream Stream => stream;

    /// <summary>Opens the text; dispose it before opening it again.</summary>
    public StreamReader Open()
    {
        stream.Position = skip;
        return new StreamReader(stream, encoding, detectEncodingFromByteOrderMarks: false, bufferSize: 1 << 16, leaveOpen: true);
    }

    /// <summary>The last line where no end of line closes it; empty otherwise.</summary>
    public string LastLine()
    {
        var length = (int)Math.Min(4096, stream.Length - skip) & ~1;
        var bytes = new byte[length];
        stream.Position = stream.Length - length;
        var n = stream.ReadAtLeast(bytes, length, throwOnEndOfStream: false);
        var text = encoding.GetString(bytes, 0, n);
        return text[(text.LastIndexOfAny(['\r', '\n']) + 1)..];
    }

    /// <summary>The first lines, and whether they are all.</summary>
    public (List<string> Lines, bool Whole) Sample(int mostLines, int mostCharacters)
    {
        using var reader = Open();
        var lines = new List<string>();
        var source = new LineReader(reader);
        var characters = 0;
        while (lines.Count < mostLines && characters < mostCharacters)
        {
            if (!source.TryRead(out var line))
            {
                return (lines, true);
            }

            lines.Add(line.ToString());
            characters += line.Length;
        }

        return (lines, false);
    }
}
